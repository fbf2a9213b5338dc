using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Markup;

/// <summary>
/// Writes nested elements into one string. Every text and attribute value is escaped here, so that no value can break out
/// of its place; <see cref="Raw"/> is for markup written by another writer.
/// </summary>
/// <remarks>For one thread and one fragment. Elements are closed by the writer, so that the markup is always well formed.</remarks>
/// <typeparam name="TSelf">The deriving writer, so that calls chain.</typeparam>
public abstract class MarkupWriter<TSelf>
    where TSelf : MarkupWriter<TSelf>
{
    /// <summary>The most characters that room is made for at the start: 16,777,216.</summary>
    private protected const int MaxCapacity = 1 << 24;

    private readonly StringBuilder text;
    private readonly Stack<string> open = new();
    private bool inTag;

    private static ReadOnlySpan<char> Special => "&<>\"";

    private protected MarkupWriter(int capacity) => text = new(Check.Range(capacity, 0, MaxCapacity));

    private TSelf This => (TSelf)this;

    /// <summary>Begins an element; attributes may follow.</summary>
    public TSelf Open(string name)
    {
        EndTag();
        text.Append('<').Append(name);
        open.Push(name);
        inTag = true;
        return This;
    }

    /// <summary>Begins an element of a class.</summary>
    public TSelf Open(string name, string cssClass) => Open(name).Attribute("class", cssClass);

    /// <summary>An attribute of the element just begun, in double quotes; none if the value is null.</summary>
    /// <exception cref="InvalidOperationException">Content has been written already.</exception>
    public TSelf Attribute(string name, string? value)
    {
        if (value is null)
        {
            return This;
        }

        BeginAttribute(name);
        Escape(value, inAttribute: true);
        text.Append('"');
        return This;
    }

    /// <summary>An attribute of the element just begun: a number with at most two decimals, whatever the culture.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number, or 1,000,000,000 or more either way.</exception>
    /// <exception cref="InvalidOperationException">Content has been written already.</exception>
    public TSelf Attribute(string name, double value) => Number(name, value);

    /// <summary>A number as an attribute, called in a refusal what the caller calls it.</summary>
    private protected TSelf Number(
        string name,
        double value,
        [CallerArgumentExpression(nameof(value))] string argument = ""
    )
    {
        BeginAttribute(name);
        Append(value, argument);
        text.Append('"');
        return This;
    }

    /// <summary>Text inside the element.</summary>
    public TSelf Text(string? value)
    {
        EndTag();
        Escape(value, inAttribute: false);
        return This;
    }

    /// <summary>An element of a class (none if null) that holds a text only.</summary>
    public TSelf Element(string name, string? cssClass, string? content) =>
        Open(name).Attribute("class", cssClass).Text(content).Close();

    /// <summary>Markup as it is: only what another writer, or this library, has written.</summary>
    public TSelf Raw(string? markup)
    {
        EndTag();
        text.Append(markup);
        return This;
    }

    /// <summary>Ends the element begun last.</summary>
    /// <exception cref="InvalidOperationException">No element is open.</exception>
    public TSelf Close()
    {
        var name = open.Pop();
        if (!inTag)
        {
            text.Append("</").Append(name).Append('>');
        }
        else if (IsVoid(name))
        {
            text.Append(VoidEnd);
        }
        else
        {
            text.Append("></").Append(name).Append('>');
        }

        inTag = false;
        return This;
    }

    /// <summary>What was written.</summary>
    /// <exception cref="InvalidOperationException">An element is still open.</exception>
    public override string ToString() =>
        open.Count == 0 ? text.ToString() : throw new InvalidOperationException($"<{open.Peek()}> is still open.");

    /// <summary>Whether an element without content is written without an end tag.</summary>
    private protected abstract bool IsVoid(string name);

    /// <summary>How such an element ends.</summary>
    private protected abstract string VoidEnd { get; }

    /// <summary>A number with at most two decimals.</summary>
    private protected void Append(double value, [CallerArgumentExpression(nameof(value))] string argument = "")
    {
        if (!(Math.Abs(value) < 1e9))
        {
            throw new ArgumentOutOfRangeException(
                argument,
                value,
                "A measure in a picture is a finite number, less than 1,000,000,000 either way."
            );
        }

        var hundredths = (long)Math.Round(value * 100, MidpointRounding.AwayFromZero);
        if (hundredths < 0)
        {
            text.Append('-');
            hundredths = -hundredths;
        }

        Span<char> digits = stackalloc char[20];
        (hundredths / 100).TryFormat(digits, out var length, default, CultureInfo.InvariantCulture);
        text.Append(digits[..length]);
        var decimals = (int)(hundredths % 100);
        if (decimals != 0)
        {
            text.Append('.').Append((char)('0' + (decimals / 10)));
            if (decimals % 10 != 0)
            {
                text.Append((char)('0' + (decimals % 10)));
            }
        }
    }

    private protected void Append(char value) => text.Append(value);

    private protected void BeginAttribute(string name)
    {
        if (!inTag)
        {
            throw new InvalidOperationException($"Attribute {name} comes after content.");
        }

        text.Append(' ').Append(name).Append("=\"");
    }

    private void EndTag()
    {
        if (inTag)
        {
            text.Append('>');
            inTag = false;
        }
    }

    // XML 1.0, section 2.2: control characters and lone surrogates have no place in a document, escaped or not.
    private void Escape(ReadOnlySpan<char> value, bool inAttribute)
    {
        if (!value.ContainsAnyExceptInRange(' ', '\uD7FF') && !value.ContainsAny(Special))
        {
            text.Append(value);
            return;
        }

        for (var i = 0; i < value.Length; i++)
        {
            var c = value[i];
            switch (c)
            {
                case '&':
                    text.Append("&amp;");
                    break;
                case '<':
                    text.Append("&lt;");
                    break;
                case '>':
                    text.Append("&gt;");
                    break;
                case '"' when inAttribute:
                    text.Append("&quot;");
                    break;
                case '\n' or '\t' or '\r' when inAttribute:
                    text.Append(CultureInfo.InvariantCulture, $"&#{(int)c};");
                    break;
                case >= ' ' and < '\uD800' or '\n' or '\t' or (>= '\uE000' and <= '\uFFFD'):
                    text.Append(c);
                    break;
                case >= '\uD800' and < '\uDC00' when i + 1 < value.Length && char.IsLowSurrogate(value[i + 1]):
                    text.Append(c).Append(value[++i]);
                    break;
                case '\r':
                    text.Append("&#13;");
                    break;
                default:
                    text.Append('\uFFFD');
                    break;
            }
        }
    }
}
