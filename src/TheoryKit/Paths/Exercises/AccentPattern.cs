using System.Diagnostics.CodeAnalysis;
using TheoryKit.Values;

namespace TheoryKit.Paths.Exercises;

/// <summary>
/// Which notes in a row are louder, repeated as often as needed, whatever their rhythm is. Equal when every sign is.
/// </summary>
/// <remarks>Text: <c>&gt;</c> for a louder note and <c>-</c> for a plain one, 1 to <see cref="MaxNotes"/> of them: <c>&gt;--</c>.</remarks>
[ReadAs("a pattern of accents")]
[EqualBy(nameof(signs))]
public sealed partial class AccentPattern : IEquatable<AccentPattern>, ISpanParsable<AccentPattern>
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

    /// <summary>The pattern as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() => signs;

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
