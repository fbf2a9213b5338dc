using TheoryKit.Drawing.Sheets;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Naming;
using TheoryKit.Theory.Words;

namespace TheoryKit.Drawing.Theory;

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
            static term => Words.Said(term.Reason.InWords),
            [new("cost", static term => term.Cost, IsNumber: true)]
        );

    /// <summary>The terms with what each costs.</summary>
    public static Words Because(ChordReading reading) =>
        Words.Join(
            ", ",
            reading.Terms.Select(static term =>
                term.Cost == 0
                    ? Words.Said(term.Reason.InWords)
                    : (Words)$"{Words.Said(term.Reason.InWords)} (+{term.Cost})"
            )
        );
}
