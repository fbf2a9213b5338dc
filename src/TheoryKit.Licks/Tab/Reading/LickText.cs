namespace TheoryKit.Licks.Tab.Reading;

/// <summary>What text may stand in a lick: valid Unicode without control characters, so that a file gives it back.</summary>
internal static class LickText
{
    /// <summary>One line, without white space at its ends.</summary>
    /// <exception cref="ArgumentException">It has a control character (a line break) or half a surrogate pair.</exception>
    public static string OneLine(string text, string parameter)
    {
        ArgumentNullException.ThrowIfNull(text, parameter);
        var trimmed = text.Trim();
        return IsLine(trimmed)
            ? trimmed
            : throw new ArgumentException(
                $"\"{trimmed}\" is not one line of text: it has a line break, a control character or half a character.",
                parameter
            );
    }

    /// <summary>Lines without white space at their ends nor empty ones before and after.</summary>
    public static string Lines(string text, string parameter)
    {
        ArgumentNullException.ThrowIfNull(text, parameter);
        var lines = text.ReplaceLineEndings("\n").Split('\n').Select(static line => line.TrimEnd().Replace('\t', ' '));
        var joined = string.Join('\n', lines).Trim('\n');
        return joined.Split('\n').All(static line => IsLine(line))
            ? joined
            : throw new ArgumentException(
                "These are not lines of text: there is a control character or half a character.",
                parameter
            );
    }

    /// <summary>A line with a replacement for each control character and half of a character, and spaces for tabs.</summary>
    public static string Cleaned(string line) =>
        string.Concat(
            line.EnumerateRunes()
                .Select(static rune =>
                    rune.Value == '\t' ? " "
                    : System.Text.Rune.IsControl(rune) ? "\uFFFD"
                    : rune.ToString()
                )
        );

    public static bool IsLine(ReadOnlySpan<char> text)
    {
        for (var index = 0; index < text.Length; index++)
        {
            var c = text[index];
            if (char.IsControl(c) || char.IsLowSurrogate(c))
            {
                return false;
            }

            if (char.IsHighSurrogate(c))
            {
                index++;
                if (index == text.Length || !char.IsLowSurrogate(text[index]))
                {
                    return false;
                }
            }
        }

        return true;
    }
}
