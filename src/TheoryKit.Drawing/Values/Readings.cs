using TheoryKit.Theory;

namespace TheoryKit.Drawing;

/// <summary>How readings of notes as chords are described.</summary>
internal static class Readings
{
    public static Description<ChordReading> All { get; } =
        new(
            new("reading", "readings"),
            static reading => Words.Of(reading.Chord),
            [
                new("tones", static reading => Words.Tones(reading.Chord.Tones)),
                new("cost", static reading => reading.Cost, IsNumber: true),
                new("because", static reading => Because(reading)),
            ]
        )
        {
            InWords = static reading => Chords.Described(reading.Chord),
        };

    public static Description<ReadingTerm> Terms { get; } =
        new(
            new("reason", "reasons"),
            static term => Words.Of(new InWords(term.Words)),
            [new("cost", static term => term.Cost, IsNumber: true)]
        );

    /// <summary>The terms with what each costs.</summary>
    public static Words Because(ChordReading reading) =>
        Words.Of(
            new InWords(
                string.Join(
                    ", ",
                    reading.Terms.Select(static term => term.Cost == 0 ? term.Words : $"{term.Words} (+{term.Cost})")
                )
            )
        );

    /// <summary>Words of the library, in which signs are printed, with plain signs in plain text.</summary>
    private sealed record InWords(string Printed) : IFormattable
    {
        public string ToString(string? format, IFormatProvider? formatProvider) =>
            format == "P" ? Printed : Printed.Replace('♭', 'b').Replace('♯', '#');
    }
}
