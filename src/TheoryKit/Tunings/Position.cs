using System.Diagnostics.CodeAnalysis;
using TheoryKit.Theory.Text;

namespace TheoryKit.Tunings;

/// <summary>
/// One string and one fret. String 1 is the one nearest the floor when played. Frets count from the nut, also behind a
/// capo and on a short string: an open string is at <see cref="Neck.OpenFret"/>, fret 0 where there is neither. Ordered by
/// string, then fret. The default value is no position (string 0).
/// </summary>
/// <remarks>Text: string, colon, fret, as in <c>6:3</c>.</remarks>
public readonly record struct Position : IComparable<Position>, ISpanParsable<Position>
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
        ArgumentOutOfRangeException.ThrowIfLessThan(@string, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(@string, MaxString);
        ArgumentOutOfRangeException.ThrowIfNegative(fret);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(fret, MaxFret);
        this.@string = (byte)@string;
        this.fret = (byte)fret;
    }

    /// <summary>The string, from 1.</summary>
    public int String => @string;

    /// <summary>The fret, counted from the nut; 0 is the nut itself.</summary>
    public int Fret => fret;

    /// <inheritdoc/>
    public int CompareTo(Position other) => @string != other.@string ? @string - other.@string : fret - other.fret;

    /// <summary>Orders by string, then fret.</summary>
    public static bool operator <(Position left, Position right) => left.CompareTo(right) < 0;

    /// <summary>Orders by string, then fret.</summary>
    public static bool operator >(Position left, Position right) => left.CompareTo(right) > 0;

    /// <summary>Orders by string, then fret.</summary>
    public static bool operator <=(Position left, Position right) => left.CompareTo(right) <= 0;

    /// <summary>Orders by string, then fret.</summary>
    public static bool operator >=(Position left, Position right) => left.CompareTo(right) >= 0;

    /// <summary>The position as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() => $"{@string}:{fret}";

    /// <summary>The position read from a text.</summary>
    /// <exception cref="FormatException">The text is not a position; the message says where and what would have worked.</exception>
    public static Position Parse(string s, IFormatProvider? provider = null)
    {
        ArgumentNullException.ThrowIfNull(s);
        return Parse(s.AsSpan(), provider);
    }

    /// <inheritdoc cref="Parse(string, IFormatProvider?)"/>
    public static Position Parse(ReadOnlySpan<char> s, IFormatProvider? provider = null) =>
        Parsing.Parse<Position>(s, "a position", Read);

    /// <summary>Reads a position; false if the text is none.</summary>
    public static bool TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out Position result) =>
        TryParse(s.AsSpan(), provider, out result);

    /// <summary>Reads a position; false if the text is none.</summary>
    public static bool TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, out Position result) =>
        Parsing.TryParse(s, Read, out result);

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
