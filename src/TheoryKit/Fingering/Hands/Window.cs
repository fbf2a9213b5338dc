using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Hands;

/// <summary>Frets that one hand covers without shifting, first and last included. The default is the open strings alone.</summary>
/// <remarks>Fret 0, or the capo, stands for the open strings. Text: <c>5-8</c>.</remarks>
[ReadAs("a window of frets")]
public readonly partial record struct Window : ISpanParsable<Window>
{
    /// <summary>A window of frets.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0 to <see cref="Position.MaxFret"/>, or the last before the first.</exception>
    public Window(int first, int last)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(first);
        ArgumentOutOfRangeException.ThrowIfLessThan(last, first);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(last, Position.MaxFret);
        First = first;
        Last = last;
    }

    /// <summary>The first fret.</summary>
    public int First { get; }

    /// <summary>The last fret.</summary>
    public int Last { get; }

    /// <summary>How many frets.</summary>
    public int Width => Last - First + 1;

    /// <summary>Whether a fret lies in it.</summary>
    public bool Contains(int fret) => fret >= First && fret <= Last;

    /// <summary>The window as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() => $"{First}-{Last}";

    private static bool Read(ref TextCursor cursor, out Window window)
    {
        window = default;
        if (!cursor.TakeNumber(2, out var first) || first > Position.MaxFret)
        {
            return cursor.Fail(0, $"a fret from 0 to {Position.MaxFret}");
        }

        if (!cursor.Take('-'))
        {
            return cursor.Fail("a hyphen between the first and the last fret (as in 5-8)");
        }

        var start = cursor.Position;
        if (!cursor.TakeNumber(2, out var last) || last > Position.MaxFret || last < first)
        {
            return cursor.Fail(start, $"a last fret from {first} to {Position.MaxFret}");
        }

        window = new(first, last);
        return true;
    }
}
