using Microsoft.DotNet.Interactive.Commands;

namespace TheoryKit.Interactive.Cells;

/// <summary>A part of a cell in one of our languages: its text, and where it stands in the cell.</summary>
internal sealed class CellSource
{
    private readonly string[] lines;

    public CellSource(SubmitCode command, string language)
    {
        Code = command.Code.ReplaceLineEndings("\n");
        var cell = Code;
        for (var parent = command.Parent; parent is not null; parent = parent.Parent)
        {
            if (parent is SubmitCode { Code: var whole })
            {
                cell = whole.ReplaceLineEndings("\n");
            }
        }

        lines = cell.Split('\n');
        Directive = -1;
        // The host takes away the blanks before the text; in its first line they are columns.
        var (text, end) = (Code.TrimStart(), 0);
        for (var line = 0; line < lines.Length; line++)
        {
            end += lines[line].Length + 1;
            if (!IsDirective(lines[line], language) || end > cell.Length)
            {
                continue;
            }

            var rest = cell.AsSpan(end).TrimStart();
            if (rest.StartsWith(text))
            {
                var at = cell.Length - rest.Length;
                Directive = line;
                Before = cell.AsSpan(0, at).Count('\n');
                Code = cell[(cell.LastIndexOf('\n', at - 1) + 1)..(at + text.Length)];
                break;
            }
        }
    }

    /// <summary>The text, without the line that names the language.</summary>
    public string Code { get; }

    /// <summary>How many lines of the cell stand before it.</summary>
    public int Before { get; }

    /// <summary>The text after as many empty lines as stand before it in the cell, so that places in it are those in the cell.</summary>
    public string InPlace => new string('\n', Before) + Code;

    /// <summary>Where the line that names the language is, from 0; -1 for nowhere.</summary>
    private int Directive { get; }

    /// <summary>The values of the options, as they are typed; none where the line is not at hand.</summary>
    /// <param name="known">The options that there are.</param>
    /// <exception cref="CellException">Something on the line is no option with a value.</exception>
    public Dictionary<string, string> Options(IReadOnlyCollection<string> known)
    {
        if (Directive < 0)
        {
            return [];
        }

        try
        {
            return CellDirective.Options(lines[Directive], known);
        }
        catch (CellException error)
        {
            throw Error($"In line {Directive + 1}: {error.Message}", Directive + 1, error.Column, error.Length);
        }
    }

    private static bool IsDirective(string line, string language)
    {
        var name = $"#!{language}";
        line = line.Trim();
        return line == name
            || (line.StartsWith(name, StringComparison.Ordinal) && char.IsWhiteSpace(line[name.Length]));
    }

    /// <summary>An error at a place of the cell.</summary>
    public CellException Error(string message, int line, int column, int length) =>
        CellException.At(message, line <= lines.Length ? lines[line - 1] : "", line, column, length);

    /// <summary>An error at a value of an option.</summary>
    /// <param name="message">What is wrong.</param>
    /// <param name="option">The option.</param>
    /// <param name="value">Its value.</param>
    /// <param name="offset">Where in the value it is wrong, from 0; null for all of it.</param>
    public CellException Error(string message, string option, string value, int? offset = null)
    {
        if (Directive < 0)
        {
            return new($"{option}: {message}", Before + 1, 1, 1);
        }

        var line = lines[Directive];
        var from = line.IndexOf(option, StringComparison.Ordinal);
        from = from < 0 ? 0 : from;
        var place = value.Length == 0 ? -1 : line.IndexOf(value, from, StringComparison.Ordinal);
        var (column, length) =
            place < 0 ? (from + 1, Math.Max(1, line.TrimEnd().Length - from))
            : offset is { } at ? (place + at + 1, 1)
            : (place + 1, value.Length);
        return Error($"{option} in line {Directive + 1}: {message}", Directive + 1, column, length);
    }
}
