using System.Text.Json;

namespace TheoryKit.Interactive.Cells;

/// <summary>
/// The options on the line that names a cell's language: <c>#!tab --name lowTide --changes "Gm9 | C13"</c>. Each has one value, in quotation
/// marks (and there as a JSON string) where it has blanks. The host reads the line too, but passes over what it does not understand.
/// </summary>
internal static class CellDirective
{
    /// <summary>The values by option; what the host itself fills in (<c>@name</c>) is left to it.</summary>
    /// <param name="line">The line.</param>
    /// <param name="known">The options that there are.</param>
    /// <exception cref="CellException">Something is no option with a value; its line is 1.</exception>
    public static Dictionary<string, string> Options(string line, IReadOnlyCollection<string> known)
    {
        var given = new Dictionary<string, string>(StringComparer.Ordinal);
        var words = Words(line);
        for (var index = 1; index < words.Count; index += 2)
        {
            var (option, at) = words[index];
            if (!known.Contains(option))
            {
                var all = words
                    .Skip(index - 1)
                    .Select(static word => word.Text)
                    .TakeWhile(word => !known.Contains(word));
                throw Error(
                    index > 1 && !option.StartsWith("--", StringComparison.Ordinal)
                        ? $"a value with blanks stands in quotation marks: {words[index - 2].Text} \"{string.Join(' ', all)}\""
                        : $"{option} is no option; there are {string.Join(", ", known)}",
                    at,
                    option.Length
                );
            }

            if (index + 1 == words.Count || known.Contains(words[index + 1].Text))
            {
                throw Error($"{option} has no value; expected {option} and its value behind it", at, option.Length);
            }

            var (value, place) = words[index + 1];
            if (!value.StartsWith('@') && !given.TryAdd(option, Unquoted(value)))
            {
                throw Error($"{option} is there twice", place, value.Length);
            }
        }

        return given;

        static CellException Error(string message, int at, int length) => new(message, 1, at + 1, length);

        static List<(string Text, int At)> Words(string text)
        {
            var found = new List<(string Text, int At)>();
            var at = 0;
            while (at < text.Length)
            {
                if (char.IsWhiteSpace(text[at]))
                {
                    at++;
                    continue;
                }

                var isQuoted = text[at] == '"';
                var end = isQuoted ? Closing(text, at) + 1 : at;
                while (end < text.Length && !char.IsWhiteSpace(text[end]))
                {
                    if (isQuoted)
                    {
                        throw Error("expected a blank after the quotation mark; inside a value it is \\\"", end, 1);
                    }

                    end++;
                }

                found.Add((text[at..end], at));
                at = end;
            }

            return found;
        }

        static int Closing(string text, int from)
        {
            for (var at = from + 1; at < text.Length; at++)
            {
                if (text[at] == '"')
                {
                    return at;
                }

                at += text[at] == '\\' ? 1 : 0;
            }

            throw Error("this quotation mark is not closed", from, text.Length - from);
        }
    }

    /// <summary>A value without its quotation marks.</summary>
    public static string Unquoted(string value)
    {
        if (value is not ['"', .., '"'])
        {
            return value;
        }

        try
        {
            return JsonSerializer.Deserialize<string>(value) ?? "";
        }
        catch (JsonException)
        {
            return value[1..^1];
        }
    }
}
