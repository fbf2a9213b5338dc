using System.Diagnostics.CodeAnalysis;
using TheoryKit.Theory;
using TheoryKit.Theory.Text;

namespace TheoryKit.Paths;

/// <summary>
/// Which notes in a row are louder, repeated as often as needed, whatever their rhythm is. Equal when every sign is.
/// </summary>
/// <remarks>Text: <c>&gt;</c> for a louder note and <c>-</c> for a plain one, 1 to <see cref="MaxNotes"/> of them: <c>&gt;--</c>.</remarks>
public sealed class AccentPattern : IEquatable<AccentPattern>, ISpanParsable<AccentPattern>
{
    /// <summary>The longest pattern: 64 notes.</summary>
    public const int MaxNotes = 64;

    private readonly string signs;

    private AccentPattern(string signs) => this.signs = signs;

    /// <summary>The first of so many notes, 1 to <see cref="MaxNotes"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Another number.</exception>
    public static AccentPattern Every(int notes)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(notes, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(notes, MaxNotes);
        return new(">".PadRight(notes, '-'));
    }

    /// <summary>How many notes it has before it is repeated.</summary>
    public int Count => signs.Length;

    /// <summary>Whether a note is louder, counted from 0.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public bool this[int note]
    {
        get
        {
            ArgumentOutOfRangeException.ThrowIfNegative(note);
            return signs[note % signs.Length] == '>';
        }
    }

    /// <inheritdoc/>
    public bool Equals(AccentPattern? other) => other is not null && signs == other.signs;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as AccentPattern);

    /// <inheritdoc/>
    public override int GetHashCode() => signs.GetHashCode(StringComparison.Ordinal);

    /// <summary>The pattern as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() => signs;

    /// <summary>The pattern read from a text.</summary>
    /// <exception cref="FormatException">The text is not one; the message says where and what would have worked.</exception>
    public static AccentPattern Parse(string s, IFormatProvider? provider = null)
    {
        ArgumentNullException.ThrowIfNull(s);
        return Parse(s.AsSpan(), provider);
    }

    /// <inheritdoc cref="Parse(string, IFormatProvider?)"/>
    public static AccentPattern Parse(ReadOnlySpan<char> s, IFormatProvider? provider = null) =>
        Parsing.Parse<AccentPattern>(s, "a pattern of accents", Read);

    /// <summary>Reads a pattern; false if the text is none.</summary>
    public static bool TryParse(
        [NotNullWhen(true)] string? s,
        IFormatProvider? provider,
        [MaybeNullWhen(false)] out AccentPattern result
    ) => TryParse(s.AsSpan(), provider, out result);

    /// <summary>Reads a pattern; false if the text is none.</summary>
    public static bool TryParse(
        ReadOnlySpan<char> s,
        IFormatProvider? provider,
        [MaybeNullWhen(false)] out AccentPattern result
    ) => Parsing.TryParse(s, Read, out result);

    private static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out AccentPattern pattern)
    {
        pattern = null;
        var start = cursor.Position;
        while (!cursor.AtEnd && cursor.Current is '>' or '-')
        {
            if (cursor.Position - start == MaxNotes)
            {
                return cursor.Fail($"no more than {MaxNotes} notes");
            }

            cursor.Position++;
        }

        if (cursor.Position == start)
        {
            return cursor.Fail("> for a louder note or - for a plain one (as in >--)");
        }

        pattern = new(cursor.Text[start..cursor.Position].ToString());
        return true;
    }
}
