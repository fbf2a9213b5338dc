using System.Text;
using TheoryKit.Values;

namespace TheoryKit.Theory.Notes;

/// <summary>Reads and writes runs of sharps and flats; what they mean is a count of semitones.</summary>
internal static class Accidentals
{
    public const string Expected = "an accidental (#, b, x for a double sharp, ♯, ♭, ♮)";

    /// <summary>
    /// Reads any run of one kind of sign: # ♯ x 𝄪 raise (by 1, 1, 2, 2), b ♭ 𝄫 lower (by 1, 1, 2), one ♮ is nothing.
    /// Always succeeds unless the run goes beyond <paramref name="limit"/>.
    /// </summary>
    public static bool Read(ref TextCursor cursor, int limit, out int alteration)
    {
        alteration = 0;
        if (cursor.Take('♮'))
        {
            return true;
        }

        while (true)
        {
            var (size, length) = Sign(cursor.Rest);
            if (length == 0 || (alteration != 0 && Math.Sign(size) != Math.Sign(alteration)))
            {
                return true;
            }

            if (Math.Abs(alteration + size) > limit)
            {
                return cursor.Fail($"at most {limit} sharps or flats");
            }

            alteration += size;
            cursor.Position += length;
        }
    }

    public static void Write(StringBuilder text, int alteration, bool printed)
    {
        var sign = (alteration > 0, printed) switch
        {
            (true, false) => '#',
            (true, true) => '♯',
            (false, false) => 'b',
            (false, true) => '♭',
        };
        text.Append(sign, Math.Abs(alteration));
    }

    private static (int Size, int Length) Sign(ReadOnlySpan<char> text) =>
        text switch
        {
            ['#' or '♯', ..] => (1, 1),
            ['b' or '♭', ..] => (-1, 1),
            ['x', ..] => (2, 1),
            ['\uD834', '\uDD2A', ..] => (2, 2),
            ['\uD834', '\uDD2B', ..] => (-2, 2),
            _ => (0, 0),
        };
}

/// <summary>The format strings that values of this library know.</summary>
internal static class TextFormat
{
    /// <summary>Whether the format asks for printed signs: "P" does, "G", empty and null do not.</summary>
    /// <exception cref="FormatException">Any other format.</exception>
    public static bool IsPrinted(string? format) =>
        format switch
        {
            null or "" or "G" or "g" => false,
            "P" or "p" => true,
            _ => throw new FormatException(
                $"\"{format}\" is no format here; use \"G\" (plain: Bb, F#) or \"P\" (printed: B♭, F♯)."
            ),
        };
}
