using System.Collections;
using System.Net;
using Microsoft.DotNet.Interactive.Formatting;
using TheoryKit.Drawing.Rendering;

namespace TheoryKit.Interactive;

/// <summary>Gives a notebook's formatters the renderers of a set: for each value type, and for sequences of it.</summary>
internal sealed class ValueFormatters(RendererSet renderers, InteractiveOptions options)
{
    private readonly ChartScriptCarrier script = new();

    public void Register()
    {
        foreach (var type in renderers.Types)
        {
            Register(type, WriteHtml, WriteText);

            // The set may have a renderer of its own for a sequence; any other shows its values one after another.
            var sequence = typeof(IEnumerable<>).MakeGenericType(type);
            if (!type.IsInterface && !renderers.Types.Contains(sequence))
            {
                Register(sequence, WriteAllHtml, WriteAllText);
            }
        }
    }

    private static void Register(Type type, Action<object, TextWriter> html, Action<object, TextWriter> text)
    {
        Formatter.Register(type, html, HtmlFormatter.MimeType);
        Formatter.Register(type, text, PlainTextFormatter.MimeType);

        // Both go into the notebook: the text is for readers and programs that show no HTML.
        Formatter.SetPreferredMimeTypesFor(type, HtmlFormatter.MimeType, PlainTextFormatter.MimeType);
    }

    private void WriteHtml(object value, TextWriter writer) => Write(writer, Html(value));

    private void WriteText(object value, TextWriter writer) => writer.Write(renderers.Text(value));

    private void WriteAllHtml(object values, TextWriter writer)
    {
        var (shown, more) = Limited((IEnumerable)values);
        var items = shown.Select(value => $"<div>{Html(value)}</div>");
        Write(
            writer,
            "<div class=\"tk-values\" style=\"display:flex;flex-wrap:wrap;gap:1em 1.5em;align-items:flex-start\">"
                + $"{string.Concat(items)}</div>{(more is null ? "" : $"<p>{more}</p>")}"
        );
    }

    private void WriteAllText(object values, TextWriter writer)
    {
        var (shown, more) = Limited((IEnumerable)values);
        var texts = shown.Select(Text).ToList();
        writer.Write(string.Join(texts.Exists(static text => text.Contains('\n')) ? "\n\n" : "\n", texts));
        writer.Write(more is null ? "" : $"\n{more}");
    }

    private string Html(object? value) =>
        value is null ? WebUtility.HtmlEncode(Formatter.NullString) : renderers.Html(value, options.Context);

    private string Text(object? value) => value is null ? Formatter.NullString : renderers.Text(value);

    private void Write(TextWriter writer, string html) =>
        writer.Write(options.ChartsBringScript ? script.With(html) : html);

    /// <summary>As many values as the notebook lists at most, and what to say of the rest. A sequence may have no end.</summary>
    private static (List<object?> Shown, string? More) Limited(IEnumerable values)
    {
        var limit = Formatter.ListExpansionLimit;
        var shown = values.Cast<object?>().Take(limit + 1).ToList();
        if (shown.Count <= limit)
        {
            return (shown, null);
        }

        shown.RemoveAt(limit);
        return (shown, values is ICollection all ? $"… and {all.Count - limit} more" : "… and more");
    }
}
