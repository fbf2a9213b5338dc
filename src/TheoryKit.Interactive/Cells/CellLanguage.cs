using Microsoft.CodeAnalysis;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.CSharp;
using Microsoft.DotNet.Interactive.Directives;
using Microsoft.DotNet.Interactive.Events;
using Microsoft.DotNet.Interactive.Formatting;
using Diagnostic = Microsoft.DotNet.Interactive.Diagnostic;

namespace TheoryKit.Interactive.Cells;

/// <summary>
/// A language that cells may be written in. A cell is read into a value, which is shown and left in C# under a name; what can't be read
/// is underlined and told with the line and a caret.
/// </summary>
/// <remarks>Text and options are data: the name reaches C# only if it is an identifier, the value as an object.</remarks>
internal abstract class CellLanguage : Kernel, IKernelCommandHandler<SubmitCode>
{
    private readonly (string Name, string Description)[] options;

    /// <summary>A language.</summary>
    /// <param name="name">What stands after <c>#!</c>.</param>
    /// <param name="title">What it is called in lists of languages.</param>
    /// <param name="options">The options besides <c>--name</c>.</param>
    protected CellLanguage(string name, string title, params (string Name, string Description)[] options)
        : base(name)
    {
        this.options = [("--name", "The C# variable that is left"), .. options];
        KernelInfo.LanguageName = title;
        KernelInfo.DisplayName = $"{name}: {title}";
        KernelInfo.Description = title;
    }

    /// <inheritdoc/>
    public override KernelSpecifierDirective KernelSpecifierDirective
    {
        get
        {
            var directive = base.KernelSpecifierDirective;
            foreach (var (option, description) in options)
            {
                if (directive.Parameters.All(parameter => parameter.Name != option))
                {
                    directive.Parameters.Add(new(option, description));
                }
            }

            return directive;
        }
    }

    /// <summary>What a cell says.</summary>
    /// <exception cref="CellException">It can't be read.</exception>
    protected abstract CellValue Read(CellSource source, CellOptions given);

    async Task IKernelCommandHandler<SubmitCode>.HandleAsync(SubmitCode command, KernelInvocationContext context)
    {
        var source = new CellSource(command, Name);
        CellValue read;
        try
        {
            read = Read(source, new(command, source, [.. options.Select(static option => option.Name)]));
        }
        catch (CellException error)
        {
            Underline(
                context,
                command,
                source,
                DiagnosticSeverity.Error,
                error.Line,
                error.Column,
                error.Length,
                error.Message
            );
            context.Fail(command, message: error.Message);
            return;
        }

        foreach (var (line, column, length, text) in read.Remarks)
        {
            Underline(context, command, source, DiagnosticSeverity.Info, line, column, length, text);
        }

        foreach (var shown in read.Shown)
        {
            context.Display(shown);
        }

        await Leave(command, context, read).ConfigureAwait(false);
    }

    private async Task Leave(SubmitCode command, KernelInvocationContext context, CellValue read)
    {
        if (RootKernel.FindKernels(static kernel => kernel is CSharpKernel).FirstOrDefault() is not { } csharp)
        {
            return;
        }

        var formatted = new FormattedValue(PlainTextFormatter.MimeType, read.Value.ToString() ?? "");
        var sent = await csharp.SendAsync(new SendValue(read.Variable, read.Value, formatted)).ConfigureAwait(false);
        if (sent.Events.OfType<CommandFailed>().FirstOrDefault() is { } failed)
        {
            context.Fail(command, message: $"The value could not be left as {read.Variable}: {failed.Message}");
        }
    }

    /// <summary>The event counts lines from the text's first; the host adds those before it.</summary>
    private static void Underline(
        KernelInvocationContext context,
        SubmitCode command,
        CellSource source,
        DiagnosticSeverity severity,
        int line,
        int column,
        int length,
        string message
    )
    {
        var at = line - 1 - source.Before;
        var span = new LinePositionSpan(new(at, column - 1), new(at, column - 1 + length));
        var diagnostic = new Diagnostic(span, severity, "TK", message.Split('\n')[0]);
        var text = new FormattedValue(PlainTextFormatter.MimeType, message);
        context.Publish(new DiagnosticsProduced([diagnostic], [text], command));
    }
}

/// <summary>What a cell was read into.</summary>
/// <param name="Variable">The variable that it is left in.</param>
/// <param name="Value">The value.</param>
/// <param name="Shown">What is shown, in order.</param>
internal sealed record CellValue(string Variable, object Value, params IReadOnlyList<object> Shown)
{
    /// <summary>What is underlined without being wrong: line and character of the cell from 1, how many characters, words.</summary>
    public IReadOnlyList<(int Line, int Column, int Length, string Text)> Remarks { get; init; } = [];
}
