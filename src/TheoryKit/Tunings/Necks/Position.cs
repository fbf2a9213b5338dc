using TheoryKit.Values;

namespace TheoryKit.Tunings.Necks;

/// <summary>
/// One string and one fret. String 1 is the one nearest the floor when played. Frets count from the nut, also behind a
/// capo and on a short string: an open string is at <see cref="Neck.OpenFret"/>, fret 0 where there is neither. Ordered by
/// string, then fret. The default value is no position (string 0).
/// </summary>
/// <remarks>Text: string, colon, fret, as in <c>6:3</c>.</remarks>
[ReadAs("a position")]
[Ordered]
public readonly partial record struct Position : IComparable<Position>, ISpanParsable<Position>
{
    /// <summary>The most strings: 12.</summary>
    public const int MaxString = 12;

    /// <summary>The highest fret: 36.</summary>
    public const int MaxFret = 36;

    private readonly byte @string;
    private readonly byte fret;

    /// <summary>A string and a fret.</summary>
    /// <exception cref="ArgumentOutOfRangeException">String not 1 to <see cref="MaxString"/>, or fret not 0 to <see cref="MaxFret"/>.</exception>
    public Position(int @string, int fret)
    {
        this.@string = (byte)Check.Range(@string, 1, MaxString, nameof(@string));
        this.fret = (byte)Check.Range(fret, 0, MaxFret);
    }

    /// <summary>The string, from 1.</summary>
    public int String => @string;

    /// <summary>The fret, counted from the nut; 0 is the nut itself.</summary>
    public int Fret => fret;

    /// <inheritdoc/>
    public int CompareTo(Position other) => @string != other.@string ? @string - other.@string : fret - other.fret;

    /// <summary>The position as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() => $"{@string}:{fret}";

    internal static bool Read(ref TextCursor cursor, out Position position)
    {
        position = default;
        var stringStart = cursor.Position;
        if (!cursor.TakeNumber(2, out var @string) || @string is < 1 or > MaxString)
        {
            return cursor.Fail(stringStart, $"a string from 1 to {MaxString}");
        }

        if (!cursor.Take(':'))
        {
            return cursor.Fail("a colon between string and fret (as in 6:3)");
        }

        var fretStart = cursor.Position;
        if (!cursor.TakeNumber(2, out var fret) || fret > MaxFret)
        {
            return cursor.Fail(fretStart, $"a fret from 0 to {MaxFret}");
        }

        position = new(@string, fret);
        return true;
    }
}
