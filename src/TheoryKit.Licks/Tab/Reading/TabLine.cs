using TheoryKit.Values;

namespace TheoryKit.Licks.Tab.Reading;

/// <summary>A line of a tab's text, with the signs that players type for the same thing made one.</summary>
internal sealed class TabLine
{
    private const int TabStop = 8;

    // Where each character of Text stands in Raw; null where that is its own place.
    private readonly int[]? places;

    public TabLine(int number, string raw)
    {
        (Number, Raw, Text) = (number, raw, raw);
        if (!NeedsChange(raw))
        {
            return;
        }

        var (text, map) = (new System.Text.StringBuilder(raw.Length + 16), new List<int>(raw.Length + 16));
        for (var index = 0; index < raw.Length; index++)
        {
            var c = raw[index];
            var count = c == '\t' ? TabStop - (text.Length % TabStop) : 1;
            text.Append(c == '\t' ? ' ' : Same(c), count);
            for (; count > 0; count--)
            {
                map.Add(index);
            }
        }

        (Text, places) = (text.ToString(), [.. map]);
    }

    private TabLine(int number, string raw, string text, int[] places) =>
        (Number, Raw, Text, this.places) = (number, raw, text, places);

    /// <summary>The same line with its columns moved: each has a character and the column where it stood.</summary>
    public TabLine Moved(string text, int[] columns) =>
        new(Number, Raw, text, [.. columns.Select(column => Column(column) - 1)]);

    /// <summary>The number of the line, from 1.</summary>
    public int Number { get; }

    /// <summary>The line as it stands.</summary>
    public string Raw { get; }

    /// <summary>The line as it is read: a character for each column.</summary>
    public string Text { get; }

    /// <summary>Where a column of <see cref="Text"/> stands in <see cref="Raw"/>, from 1; one beyond the end for those that it has not.</summary>
    public int Column(int at) =>
        1
        + (
            places is null ? Math.Min(at, Raw.Length)
            : at < places.Length ? places[at]
            : Raw.Length
        );

    public override string ToString() => Raw;

    /// <summary>The error that something else was expected at a column.</summary>
    public PlacedFormatException Wrong(int at, int length, string expected) =>
        PlacedFormatException.WithCaret(
            PlainTab.What,
            Number,
            Raw,
            Column(at),
            Math.Max(1, Column(at + length) - Column(at)),
            expected
        );

    private static bool NeedsChange(string raw)
    {
        foreach (var c in raw)
        {
            if (c is '\t' or '_' or > '\u007e')
            {
                return true;
            }
        }

        return false;
    }

    private static char Same(char c) =>
        c switch
        {
            '\u2010' or '\u2011' or '\u2012' or '\u2013' or '\u2014' or '\u2015' or '\u2212' or '_' or '\u00af' => '-',
            '\u2500' or '\u2501' or '\u2504' or '\u2505' or '\u2508' or '\u2509' or '\u254c' or '\u254d' => '-',
            '\u2550' => '=',
            '\u2502' or '\u2503' or '\u2551' or '\u00a6' or '\u2016' or (>= '\u250c' and <= '\u254b') => '|',
            >= '\u2552' and <= '\u256c' => '|',
            '\u223c' or '\u301c' or '\u2053' => '~',
            '\u266d' => 'b',
            '\u266f' => '#',
            '\u2022' or '\u00b7' or '\u25cf' => '*',
            '\u2215' or '\u2044' => '/',
            '\u00a0' => ' ',
            _ => c,
        };
}
