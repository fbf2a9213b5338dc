using System.Text.RegularExpressions;

namespace TheoryKit.Cli;

/// <summary>Says what stands where a number should, with its option: the command line's own words name a type.</summary>
internal static partial class WrongNumber
{
    /// <summary>The same in a reader's words; null where something else is wrong.</summary>
    /// <param name="message">What is wrong.</param>
    /// <param name="args">The command.</param>
    public static string? Said(string message, IReadOnlyList<string> args)
    {
        if (Conversion().Match(message) is not { Success: true } match)
        {
            return null;
        }

        var text = match.Groups["text"].Value;
        var option = args.Zip(args.Skip(1), static (name, value) => (Name: name, Value: value))
            .Where(each => each.Value == text && each.Name.StartsWith('-'))
            .Select(static each => each.Name)
            .Concat(
                args.Where(each => each.EndsWith($"={text}", StringComparison.Ordinal))
                    .Select(each => each[..^(text.Length + 1)])
            )
            .FirstOrDefault();
        var number = match.Groups["type"].Value is "Double" ? "number" : "whole number";
        return $"{(option is null ? "" : $"{option}: ")}\"{text}\" is not a {number}.";
    }

    [GeneratedRegex("Failed to convert '(?<text>.*)' to (?<type>Int32|Double)", RegexOptions.CultureInvariant)]
    private static partial Regex Conversion();
}
