using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Events;
using Microsoft.DotNet.Interactive.Formatting;

namespace TheoryKit.Cli.Running;

/// <summary>
/// Gathers what the cells of a notebook show from the kernel's events. A value that is updated stays where it was first
/// shown, also when a later cell updates it.
/// </summary>
internal sealed class OutputCollector
{
    /// <summary>Version notes about packages' references, which no cell can act on.</summary>
    private static readonly string[] Unhelpful = ["CS1701", "CS1702", "CS1705"];

    private readonly Lock sync = new();
    private readonly List<List<(string? Id, CellOutput Output)>> cells = [];

    private readonly HashSet<string> updated = new(StringComparer.Ordinal);

    /// <summary>The compiler's errors, each with its place in the cell.</summary>
    public IReadOnlyList<string> Errors { get; private set; } = [];

    private List<(string? Id, CellOutput Output)> Shown => cells[^1];

    /// <summary>What follows belongs to the next cell.</summary>
    public void BeginCell()
    {
        lock (sync)
        {
            cells.Add([]);
            Errors = [];
        }
    }

    /// <summary>What a cell has shown, as it stands now.</summary>
    /// <param name="cell">0 for the first cell begun.</param>
    public ImmutableList<CellOutput> Outputs(int cell)
    {
        lock (sync)
        {
            return [.. cells[cell].Select(static entry => entry.Output)];
        }
    }

    public void Receive(KernelEvent happened)
    {
        lock (sync)
        {
            switch (happened)
            {
                case DisplayEvent { Value: InstallPackagesMessage }:
                case ReturnValueProduced { Value: DisplayedValue }:
                    break;
                case StandardOutputValueProduced output:
                    Write(Text(output), isError: false);
                    break;
                case StandardErrorValueProduced or ErrorProduced:
                    Write(Text((DisplayEvent)happened), isError: true);
                    break;
                case DisplayedValueUpdated update:
                    Update(update.ValueId, Value(update));
                    break;
                case DisplayEvent display when display.FormattedValues.Any(static form => !form.SuppressDisplay):
                    Shown.Add((display.ValueId, Value(display)));
                    break;
                case DiagnosticsProduced diagnostics:
                    Note(diagnostics.Diagnostics);
                    break;
            }
        }
    }

    public void Warn(string text)
    {
        lock (sync)
        {
            Shown.Add((null, new WarningOutput(text)));
        }
    }

    private void Update(string id, ValueOutput value)
    {
        foreach (var cell in cells)
        {
            var place = cell.FindIndex(entry => entry.Id == id);
            if (place >= 0)
            {
                cell[place] = (id, value);
                return;
            }
        }

        // display(...) announces a value under one name and hands out another: the first update tells which value
        // went with it, if there is only one left that it can be.
        var open = Shown.FindAll(entry => entry is (not null, ValueOutput) && !updated.Contains(entry.Id));
        if (open.Count == 1)
        {
            Shown[Shown.IndexOf(open[0])] = (id, value);
        }
        else
        {
            Shown.Add((id, value));
        }

        updated.Add(id);
    }

    private void Write(string text, bool isError)
    {
        if (Shown is [.., (_, ConsoleOutput last)] && last.IsError == isError)
        {
            Shown[^1] = (null, last with { Text = last.Text + text });
        }
        else
        {
            Shown.Add((null, new ConsoleOutput(text, isError)));
        }
    }

    private void Note(IReadOnlyCollection<Microsoft.DotNet.Interactive.Diagnostic> diagnostics)
    {
        Shown.AddRange(
            diagnostics
                .Where(static d => d.Severity == DiagnosticSeverity.Warning && !Unhelpful.Contains(d.Code))
                .Select(static d => ((string?)null, (CellOutput)new WarningOutput(Placed("warning", d))))
        );
        Errors =
        [
            .. diagnostics
                .Where(static d => d.Severity == DiagnosticSeverity.Error)
                .Select(static d => Placed("error", d)),
        ];
    }

    private static string Placed(string kind, Microsoft.DotNet.Interactive.Diagnostic diagnostic)
    {
        var start = diagnostic.LinePositionSpan.Start;
        return $"line {start.Line + 1}, column {start.Character + 1}: {kind} {diagnostic.Code}: {diagnostic.Message}";
    }

    private static ValueOutput Value(DisplayEvent display) =>
        new(
            display
                .FormattedValues.Where(static form => !form.SuppressDisplay)
                .GroupBy(static form => form.MimeType)
                .ToImmutableDictionary(static forms => forms.Key, static forms => forms.Last().Value)
        );

    private static string Text(DisplayEvent display) =>
        display.FormattedValues.FirstOrDefault(static form => form.MimeType == PlainTextFormatter.MimeType)?.Value
        ?? display.Value?.ToString()
        ?? "";
}
