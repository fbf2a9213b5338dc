using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Events;
using Microsoft.DotNet.Interactive.Formatting;

namespace TheoryKit.Cli.Running;

/// <summary>Gathers what a cell shows from the kernel's events. A value that is updated stays where it was first shown.</summary>
internal sealed class OutputCollector
{
    /// <summary>Version notes about packages' references, which no cell can act on.</summary>
    private static readonly string[] Unhelpful = ["CS1701", "CS1702", "CS1705"];

    private readonly Lock sync = new();
    private readonly List<(string? Id, CellOutput Output)> shown = [];

    /// <summary>The compiler's errors, each with its place in the cell.</summary>
    public IReadOnlyList<string> Errors { get; private set; } = [];

    public ImmutableList<CellOutput> Outputs
    {
        get
        {
            lock (sync)
            {
                return [.. shown.Select(static entry => entry.Output)];
            }
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
                    shown.Add((display.ValueId, Value(display)));
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
            shown.Add((null, new WarningOutput(text)));
        }
    }

    private void Update(string id, ValueOutput value)
    {
        for (var i = 0; i < shown.Count; i++)
        {
            if (id is not null && shown[i].Id == id)
            {
                shown[i] = (id, value);
            }
        }
    }

    private void Write(string text, bool isError)
    {
        if (shown is [.., (_, ConsoleOutput last)] && last.IsError == isError)
        {
            shown[^1] = (null, last with { Text = last.Text + text });
        }
        else
        {
            shown.Add((null, new ConsoleOutput(text, isError)));
        }
    }

    private void Note(IReadOnlyCollection<Microsoft.DotNet.Interactive.Diagnostic> diagnostics)
    {
        shown.AddRange(
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
