using System.Globalization;
using System.Text;

namespace TheoryKit.Drawing.Licks;

/// <summary>
/// Text that a user wrote, as it can stand among other words: what it says about the direction of writing ends with it.
/// </summary>
internal static class UserText
{
    private const char Isolate = '\u2068';
    private const char EndOfIsolate = '\u2069';

    /// <summary>
    /// The text; where it is written from right to left or overrides directions, in an isolate of its own (Unicode Standard Annex 9,
    /// section 2), which also ends every embedding that it leaves open.
    /// </summary>
    public static string Of(string text)
    {
        if (!text.Any(static c => IsRightToLeft(c) || IsControl(c)))
        {
            return text;
        }

        var isolated = new StringBuilder(text.Length + 4).Append(Isolate);
        var open = 0;
        foreach (var c in text)
        {
            if (c is >= '\u2066' and <= '\u2068')
            {
                open++;
            }
            else if (c == EndOfIsolate && --open < 0)
            {
                open = 0; // would end the isolate around it
                continue;
            }

            isolated.Append(c);
        }

        return isolated.Append(EndOfIsolate, open + 1).ToString();
    }

    /// <summary>The text in at most so many columns, where a character of East Asian writing or a picture takes two; cut with an ellipsis.</summary>
    public static string Short(string text, int columns)
    {
        var elements = new List<string>();
        for (var rest = StringInfo.GetTextElementEnumerator(text); rest.MoveNext(); )
        {
            elements.Add(rest.GetTextElement());
        }

        if (elements.Sum(Width) <= columns)
        {
            return Of(text);
        }

        var (used, kept) = (0, new StringBuilder());
        foreach (var element in elements)
        {
            used += Width(element);
            if (used >= columns)
            {
                break; // the ellipsis takes one
            }

            kept.Append(element);
        }

        return Of(kept.ToString().TrimEnd()) + "…";

        static int Width(string element) => element[0] >= '\u1100' ? 2 : 1;
    }

    private static bool IsControl(char c) =>
        c is (>= '\u202a' and <= '\u202e') or (>= '\u2066' and <= '\u2069') or '\u200e' or '\u200f' or '\u061c';

    // The blocks of the scripts written so, U+0590 to U+08FF and their presentation forms; those beyond the first plane by their surrogates, U+10800 to U+10FFF and U+1E800 to U+1EFFF.
    private static bool IsRightToLeft(char c) =>
        c
            is (>= '\u0590' and <= '\u08ff')
                or (>= '\ufb1d' and <= '\ufdff')
                or (>= '\ufe70' and <= '\ufefc')
                or '\ud802'
                or '\ud803'
                or '\ud83a'
                or '\ud83b';
}
