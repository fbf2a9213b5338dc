using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Events;
using Microsoft.DotNet.Interactive.Formatting;
using TheoryKit.Cli.Running.Channel;
using Diagnostic = Microsoft.DotNet.Interactive.Diagnostic;

namespace TheoryKit.Cli.Running.Inside;

/// <summary>Passes on what the kernel's events show. What no page could take is not sent.</summary>
/// <param name="send">Takes it.</param>
internal sealed class KernelEvents(Action<Message> send)
{
    /// <summary>Version notes about packages' references, which no cell can act on.</summary>
    private static readonly string[] Unhelpful = ["CS1701", "CS1702", "CS1705"];

    /// <summary>The compiler's errors in the cell, each with its place.</summary>
    public IReadOnlyList<string> Errors { get; private set; } = [];

    public void BeginCell() => Errors = [];

    public void Receive(KernelEvent happened)
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
                Show(update.ValueId, isUpdate: true, Forms(update));
                break;
            case DisplayEvent display when display.FormattedValues.Any(static form => !form.SuppressDisplay):
                Show(display.ValueId, isUpdate: false, Forms(display));
                break;
            case DiagnosticsProduced diagnostics:
                Note(diagnostics.Diagnostics);
                break;
        }
    }

    public void Warn(string text) => send(new Warned(OutputLimits.Error(text)));

    private void Write(string text, bool isError)
    {
        var start = OutputLimits.Start(text, OutputLimits.CellCharacters);
        send(new Wrote(start, isError));
        if (start.Length < text.Length)
        {
            send(new LeftOut(text.Length - start.Length, 0));
        }
    }

    private void Show(string? id, bool isUpdate, ImmutableDictionary<string, string> forms)
    {
        var length = forms.Sum(static form => (long)form.Key.Length + form.Value.Length);
        send(length <= OutputLimits.CellCharacters ? new Showed(id, isUpdate, forms) : new LeftOut(length, 1));
    }

    private void Note(IReadOnlyCollection<Diagnostic> diagnostics)
    {
        foreach (
            var warning in diagnostics.Where(static d =>
                d.Severity == DiagnosticSeverity.Warning && !Unhelpful.Contains(d.Code)
            )
        )
        {
            Warn(Placed("warning", warning));
        }

        Errors =
        [
            .. diagnostics
                .Where(static d => d.Severity == DiagnosticSeverity.Error)
                .Select(static d => Placed("error", d)),
        ];
    }

    private static string Placed(string kind, Diagnostic diagnostic)
    {
        var start = diagnostic.LinePositionSpan.Start;
        return $"line {start.Line + 1}, column {start.Character + 1}: {kind} {diagnostic.Code}: {diagnostic.Message}";
    }

    private static ImmutableDictionary<string, string> Forms(DisplayEvent display) =>
        display
            .FormattedValues.Where(static form => !form.SuppressDisplay)
            .GroupBy(static form => form.MimeType)
            .ToImmutableDictionary(static forms => forms.Key, static forms => forms.Last().Value);

    private static string Text(DisplayEvent display) =>
        display.FormattedValues.FirstOrDefault(static form => form.MimeType == PlainTextFormatter.MimeType)?.Value
        ?? display.Value?.ToString()
        ?? "";
}
