using System.Globalization;
using TheoryKit.Paths;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Licks.Tab.Reading;

/// <summary>A place on the line of a string, within a bar.</summary>
internal sealed class TabCursor(TabLine line, int from, int to)
{
    /// <summary>The highest fret to which something is bent.</summary>
    public const int HighestBent = Position.MaxFret + (PathNote.MaxBend / 100);

    private readonly string text = line.Text;

    public TabLine Line { get; } = line;

    /// <summary>The column that is read next.</summary>
    public int At { get; set; } = from;

    /// <summary>The column after the last.</summary>
    public int End { get; } = Math.Min(to, line.Text.Length);

    public bool AtEnd => At >= End;

    /// <summary>What stands here; not at the end.</summary>
    public char Here => text[At];

    public char this[int column] => text[column];

    public string Taken(int from) => text[from..At];

    public bool Is(int column, char c) => column < End && text[column] == c;

    public bool IsDigit(int column) => column < End && char.IsAsciiDigit(text[column]);

    public int Number(int digits) => int.Parse(text.AsSpan(At, digits), CultureInfo.InvariantCulture);

    /// <summary>Takes as many of the same character as there are here.</summary>
    public void TakeSame()
    {
        var c = text[At];
        while (!AtEnd && text[At] == c)
        {
            At++;
        }
    }

    public bool Take(string word)
    {
        if (!text.AsSpan(At, End - At).StartsWith(word, StringComparison.OrdinalIgnoreCase))
        {
            return false;
        }

        At += word.Length;
        return true;
    }

    /// <summary>Half a fret: ½ or .5.</summary>
    public bool TakeHalf()
    {
        var length =
            Is(At, '\u00bd') ? 1
            : Is(At, '.') && Is(At + 1, '5') ? 2
            : 0;
        At += length;
        return length > 0;
    }

    /// <summary>A fret of one or two digits at a column, without taking it.</summary>
    public bool FretAt(int from, out int fret, out int after)
    {
        (fret, after) = (0, from);
        while (after < from + 2 && IsDigit(after))
        {
            fret = (fret * 10) + text[after++] - '0';
        }

        if (after - from == 2 && fret > HighestBent)
        {
            after--;
            fret /= 10;
        }

        return after > from;
    }
}
