using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;
using TheoryKit.Licks.Tab.Reading;
using TheoryKit.Values;

namespace TheoryKit.Licks.Practice;

/// <summary>Dates and names of licks in a practice log: the name in quotation marks, those inside it and backslashes after a backslash.</summary>
internal static class QuotedName
{
    public static string Checked(string name, string parameter) =>
        LickText.OneLine(name, parameter) is { Length: > 0 } line
            ? line
            : throw new ArgumentException("A lick has a name.", parameter);

    public static string Write(string name) =>
        $"\"{name.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";

    public static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out string name)
    {
        name = null;
        var start = cursor.Position;
        if (!cursor.Take('"'))
        {
            return cursor.Fail("the lick's name in quotation marks (as in \"Low tide turn\")");
        }

        var text = new StringBuilder();
        while (!cursor.AtEnd && cursor.Current is not '"')
        {
            if (cursor.Take('\\') && cursor.Current is not ('"' or '\\'))
            {
                return cursor.Fail("\" or \\ after the backslash");
            }

            text.Append(cursor.Current);
            cursor.Position++;
        }

        var length = cursor.Position - start;
        if (!cursor.Take('"'))
        {
            return cursor.Fail("the quotation mark that ends the name");
        }

        var end = cursor.Position;
        cursor.Position = start;
        if (!IsLine(ref cursor, length))
        {
            return false;
        }

        cursor.Position = end;
        name = text.ToString().Trim();
        return name.Length > 0 || cursor.Fail(start, "a name between the quotation marks");
    }

    /// <summary>Whether the next characters hold no control character nor half a character; the error is at the first.</summary>
    public static bool IsLine(ref TextCursor cursor, int length)
    {
        for (var index = 0; index < length; index++)
        {
            var c = cursor.Rest[index];
            var isPair = index + 1 < length && char.IsSurrogatePair(c, cursor.Rest[index + 1]);
            if (char.IsControl(c) || (char.IsSurrogate(c) && !isPair))
            {
                return cursor.Fail(cursor.Position + index, "text without control characters or halves of characters");
            }

            index += isPair ? 1 : 0;
        }

        return true;
    }

    public static bool ReadDate(ref TextCursor cursor, out DateOnly date)
    {
        date = default;
        const string Format = "yyyy-MM-dd";
        var length = Math.Min(Format.Length, cursor.Rest.Length);
        if (
            !DateOnly.TryParseExact(
                cursor.Rest[..length],
                Format,
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out date
            )
        )
        {
            return cursor.Fail("a day, year first (as in 2026-11-24)");
        }

        cursor.Position += length;
        return true;
    }
}
