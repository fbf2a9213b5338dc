using System.Globalization;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Licks.Words;

/// <summary>How the values in a sentence are written: with plain or printed signs, and with whose note names.</summary>
internal sealed class Speech
{
    private readonly string? format;
    private readonly IFormatProvider? naming;

    /// <param name="format">"G" (or null) for plain signs, "P" for printed ones.</param>
    /// <param name="naming">A <see cref="NoteNaming"/>; null for English.</param>
    /// <exception cref="FormatException">Another format.</exception>
    public Speech(string? format, IFormatProvider? naming)
    {
        (this.format, this.naming) = (format, naming);
        _ = TextFormat.IsPrinted(format);
    }

    /// <summary>A sentence or a part of one.</summary>
    public string Say(FormattableString sentence) =>
        string.Format(
            CultureInfo.InvariantCulture,
            sentence.Format,
            Array.ConvertAll(sentence.GetArguments(), object (value) => Text(value))
        );

    /// <summary>A value of the library in the reader's way; any other as it is everywhere.</summary>
    public string Text<T>(T value) =>
        value switch
        {
            string text => text,
            Tuning tuning => NoteByNote(tuning),
            // Numbers have formats of their own: "P" would be a percentage.
            IFormattable own when own.GetType().Assembly == typeof(Pitch).Assembly => own.ToString(format, naming),
            IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
            _ => value?.ToString() ?? "",
        };

    private string NoteByNote(Tuning tuning) =>
        string.Join(
            ' ',
            tuning.ToString().Split(' ').Select(each => Pitch.TryParse(each, null, out var pitch) ? Text(pitch) : each)
        );
}
