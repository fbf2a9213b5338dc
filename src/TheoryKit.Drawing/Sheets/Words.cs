using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;

namespace TheoryKit.Drawing.Sheets;

/// <summary>
/// A piece of text with values in it that can be written in two ways: as printed (B♭) for HTML, and plainly (Bb), as the
/// parsers read it, for a terminal. An interpolated string becomes one by itself.
/// </summary>
[InterpolatedStringHandler]
internal sealed class Words
{
    private readonly List<object> parts;

    public Words(int literalLength, int formattedCount) =>
        parts = new((2 * formattedCount) + Math.Min(literalLength, 1));

    private Words(List<object> parts) => this.parts = parts;

    public static Words None { get; } = new(0, 0);

    public bool IsEmpty => parts.Count == 0;

    [return: NotNullIfNotNull(nameof(text))]
    public static implicit operator Words?(string? text) =>
        text is null ? null
        : text.Length == 0 ? None
        : new([text]);

    /// <summary>A value in its own notation.</summary>
    public static Words Of(object? value) => value is null ? None : new([value]);

    /// <summary>A sentence of the library with notes in it, written in the reader's way.</summary>
    public static Words Said(Func<string?, IFormatProvider?, string> say) => new([new Sentence(say)]);

    /// <summary>Notes one after the other on one line.</summary>
    public static Words Tones(IEnumerable<NoteName> tones) => Join("\u00a0", tones);

    /// <summary>Values one after the other.</summary>
    public static Words Join<T>(string separator, IEnumerable<T> values)
    {
        var all = new List<object>();
        foreach (var value in values)
        {
            if (all.Count > 0)
            {
                all.Add(separator);
            }

            if (value is not null)
            {
                all.Add(value);
            }
        }

        return new(all);
    }

    public void AppendLiteral(string text) => parts.Add(text);

    public void AppendFormatted<T>(T value)
    {
        if (value is not null)
        {
            parts.Add(value);
        }
    }

    public void AppendFormatted<T>(T value, string format)
        where T : IFormattable => parts.Add(value.ToString(format, null));

    public string Plain(IFormatProvider? naming) => Write("G", naming);

    public string Printed(IFormatProvider? naming) => Write("P", naming);

    private string Write(string format, IFormatProvider? naming) =>
        string.Concat(
            parts.Select(part =>
                part switch
                {
                    string text => text,
                    Words words => words.Write(format, naming),
                    // Numbers have formats of their own: "P" would be a percentage.
                    int number => number.ToString(System.Globalization.CultureInfo.InvariantCulture),
                    ScaleType type => format == "P" ? PrintedName(type.Name) : type.Name,
                    // A short formula stays on one line.
                    Formula { Count: <= 9 } formula => formula.ToString(format).Replace(' ', '\u00a0'),
                    IFormattable value => value.ToString(format, naming),
                    _ => part.ToString(),
                }
            )
        );

    /// <summary>A name with the signs before its numbers as printed: lydian ♯2.</summary>
    private static string PrintedName(string name)
    {
        var printed = name.ToCharArray();
        for (var i = printed.Length - 2; i >= 0; i--)
        {
            if (char.IsAsciiDigit(printed[i + 1]) || printed[i + 1] is '♭' or '♯')
            {
                printed[i] = printed[i] switch
                {
                    'b' => '♭',
                    '#' => '♯',
                    var other => other,
                };
            }
        }

        return new(printed);
    }

    private sealed record Sentence(Func<string?, IFormatProvider?, string> Say) : IFormattable
    {
        public string ToString(string? format, IFormatProvider? formatProvider) => Say(format, formatProvider);
    }
}
