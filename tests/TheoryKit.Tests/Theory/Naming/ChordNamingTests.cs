using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Naming;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Words;

namespace TheoryKit.Tests.Theory.Naming;

public sealed class ChordNamingTests
{
    [Theory]
    [InlineData("G Bb D F A", "Gm9", "Bbmaj7/G")]
    [InlineData("C E G A", "C6", "Am7/C")]
    [InlineData("A C E G", "Am7", "C6/A", "C/A")]
    [InlineData("D F Ab C", "Dm7b5", "Fm6/D", "Fm/D")]
    [InlineData("F Ab C D", "Fm6", "Dm7b5/F")]
    [InlineData("E G C", "C/E")]
    [InlineData("G B D F Ab", "G7b9", "Bdim7/G")]
    [InlineData("C G D", "Csus2", "Gsus4/C")]
    [InlineData("D C E G", "D9sus4(no5)")]
    [InlineData("C E G B D F# A", "Cmaj13#11")]
    [InlineData("G# B# D# F#", "G#7")]
    [InlineData("C E Gb Bb Db", "C7(b5,b9)")]
    [InlineData("C E Bb D# G#", "C7(#5,#9)")]
    [InlineData("C Eb G A D", "Cm6/9")]
    // Inversions of plain chords before suspended, altered or thinned ones over the bass.
    [InlineData("G C E", "C/G")]
    [InlineData("E A C", "Am/E")]
    [InlineData("C F A", "F/C")]
    [InlineData("C E A", "Am/C")]
    [InlineData("C Eb A", "Adim/C")]
    [InlineData("F G B D", "G7/F")]
    [InlineData("B D F G", "G7/B")]
    [InlineData("D F G B", "G7/D")]
    [InlineData("C D F# A", "D7/C")]
    [InlineData("A C E F", "Fmaj7/A")]
    [InlineData("E F A C", "Fmaj7/E")]
    [InlineData("E G B C", "Cmaj7/E")]
    [InlineData("B C E G", "Cmaj7/B")]
    [InlineData("G A C E", "Am7/G")]
    [InlineData("E G# B C", "Cmaj7#5/E")]
    [InlineData("E G C D", "Cadd9/E")]
    [InlineData("F B G", "G7(no5)/F")]
    // But a chord that stands on its bass comes first.
    [InlineData("C E G D", "Cadd9")]
    [InlineData("G B D E", "G6", "Em7/G")]
    [InlineData("C F Bb", "C7sus4(no5)", "Fsus4/C")]
    [InlineData("C F G", "Csus4", "Fsus2/C")]
    [InlineData("C E G#", "Caug")]
    [InlineData("C E Bb", "C7(no5)")]
    // The given root keeps its name where chords are written on it.
    [InlineData("Db F G B", "Db7b5", "G7b5/Db")]
    [InlineData("Ab C D F#", "Ab7b5", "D7b5/Ab")]
    [InlineData("Ab B D F", "Abdim7")]
    [InlineData("C Eb F# A", "Cdim7")]
    [InlineData("F# A# C E", "F#7b5")]
    [InlineData("A# D F", "Bb")]
    [InlineData("D# G Bb", "Eb")]
    [InlineData("Db E G# B", "C#m7")]
    public void The_first_readings_are_those_of_practice(string notes, params string[] expected) =>
        Assert.Equal(
            expected,
            ChordNaming
                .Readings(NoteName.ParseList(notes))
                .Take(expected.Length)
                .Select(reading => reading.Chord.ToString())
        );

    [Theory]
    [InlineData("C E G A", "C6", "root in the bass, all four tones, nothing missing")]
    [InlineData("C E G A", "Am7/C", "♭3 in the bass, all four tones, nothing missing")]
    [InlineData("D C E G", "C/D", "over a foreign bass, D, all three tones, nothing missing")]
    [InlineData("C D# G", "Cm", "root in the bass, all three tones, nothing missing, D♯ respelled as E♭")]
    [InlineData("C E Bb", "C7(no5)", "root in the bass, three tones, without the fifth")]
    [InlineData(
        "E Bb D",
        "C9(no1,no5)/E",
        "3 in the bass, three tones over a root that is not played, without the root, without the fifth"
    )]
    [InlineData("G B D F Ab", "G7b9", "root in the bass, all five tones, nothing missing, flat nine")]
    [InlineData("C", "C[1]", "a single note")]
    [InlineData("C G", "C5", "root in the bass, both tones, nothing missing, a power chord")]
    [InlineData("C F A", "F/C", "5 in the bass, all three tones, nothing missing")]
    [InlineData(
        "A C E F",
        "Amb6",
        "root in the bass, all four tones, nothing missing, flat six, a change that players rarely mean"
    )]
    public void The_reason_is_given_in_words(string notes, string chord, string reason)
    {
        var reading = Assert.Single(
            ChordNaming.Readings(NoteName.ParseList(notes)),
            reading => reading.Chord.ToString() == chord
        );
        Assert.Equal(reason, reading.InWords("P"));
        Assert.Equal($"{chord}: {reading.Cost}", reading.ToString());
    }

    [Theory]
    [InlineData("C E G", "Em#5/B#")]
    [InlineData("C E G", "G6sus4(no5)/C")]
    public void A_far_fetched_reading_of_a_plain_triad_costs_far_more(string notes, string farFetched)
    {
        var readings = ChordNaming.Readings(NoteName.ParseList(notes));
        Assert.Equal(0, readings[0].Cost);
        Assert.All(
            readings.Where(reading => reading.Chord.ToString() == farFetched),
            far => Assert.True(far.Cost >= 6)
        );
    }

    [Fact]
    public void The_bass_may_be_given_apart()
    {
        var notes = NoteName.ParseList("C E G");
        Assert.Equal("C/E", ChordNaming.Readings(notes, NoteName.Parse("E"))[0].Chord.ToString());
        Assert.Contains(ChordNaming.Readings(notes, NoteName.Parse("D")), reading => reading.Chord.ToString() == "C/D");
    }

    [Fact]
    public void Pitch_classes_are_named_with_no_bass_or_one()
    {
        var sixth = Chord.Parse("C6").PitchClasses;
        var readings = ChordNaming.Readings(sixth);
        Assert.Equal(["C6", "Am7"], readings.Take(2).Select(reading => reading.Chord.ToString()));
        Assert.All(readings.Take(2), reading => Assert.Equal(0, reading.Cost));
        Assert.Equal("Am7", ChordNaming.Readings(sixth, 9)[0].Chord.ToString());
    }

    [Fact]
    public void Without_a_note_there_is_nothing_to_name()
    {
        Assert.Throws<ArgumentException>(() => ChordNaming.Readings(Array.Empty<NoteName>()));
        Assert.Throws<ArgumentException>(() => ChordNaming.Readings(default(PitchClassSet)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ChordNaming.Readings(new PitchClassSet(1), 12));
    }

    [Fact]
    public void Every_reading_sounds_just_the_notes_and_they_come_by_cost() =>
        Gens
            .NoteName.Array[1, 8]
            .Sample(
                notes =>
                {
                    var sound = new PitchClassSet(
                        (ushort)notes.Aggregate(0, (mask, note) => mask | (1 << note.PitchClass))
                    );
                    var readings = ChordNaming.Readings(notes);
                    Assert.NotEmpty(readings);
                    Assert.Equal(
                        readings.Select(reading => reading.Cost).Order(),
                        readings.Select(reading => reading.Cost)
                    );
                    Assert.Equal(readings.Count, readings.Select(reading => reading.Chord).Distinct().Count());
                    Assert.All(
                        readings,
                        reading =>
                        {
                            Assert.Equal(sound, reading.Chord.PitchClasses);
                            Assert.Equal(notes[0].PitchClass, reading.Chord.Bass.PitchClass);
                            Assert.All(reading.Terms, term => Assert.True(term.Cost >= 0));
                        }
                    );
                },
                iter: 300
            );

    [Fact]
    public void Whatever_is_respelled_is_said() =>
        Gens
            .UsualNoteName.Array[2, 5]
            .Sample(
                notes =>
                {
                    var given = notes.DistinctBy(note => note.PitchClass).ToList();
                    foreach (var reading in ChordNaming.Readings(given))
                    {
                        var spelled = reading.Chord.Tones.Append(reading.Chord.Bass).ToHashSet();
                        var respelled = given.Where(note => !spelled.Contains(note)).ToList();
                        Assert.All(
                            respelled,
                            note =>
                                Assert.Single(
                                    reading.Terms,
                                    term => term.Reason is ReadingReason.Respelled { From: var from } && from == note
                                )
                        );
                        Assert.Equal(
                            respelled.Count,
                            reading.Terms.Count(term => term.Reason is ReadingReason.Respelled)
                        );
                    }
                },
                iter: 300
            );

    [Fact]
    public void Every_known_chord_is_among_the_readings_of_its_tones_and_a_plain_one_comes_first()
    {
        foreach (var quality in ChordQuality.Known)
        {
            foreach (var root in NoteName.ParseList("C F#"))
            {
                var readings = ChordNaming.Readings(quality.Formula.Tones(root), root);
                // Registers are not heard: add2 and add9 are the same set of notes.
                Assert.Contains(
                    readings,
                    reading =>
                        reading.Chord.Root == root
                        && reading.Chord.Bass == root
                        && reading.Chord.Formula.Simple == quality.Formula.Simple
                );
                if (ChordSymbol.Cost(quality.Formula) == 0)
                {
                    Assert.Equal(quality.On(root), readings[0].Chord);
                }
            }
        }
    }

    [Fact]
    public void A_transposed_set_has_transposed_readings() =>
        Gen.Select(Gen.Int[1, 0xFFF], Gen.Int[0, 11])
            .Sample(
                (mask, by) =>
                {
                    var moved = ((mask << by) | (mask >> (12 - by))) & 0xFFF;
                    var readings = ChordNaming.Readings(new PitchClassSet((ushort)mask));
                    Assert.All(readings, reading => Assert.Equal(mask, reading.Chord.PitchClasses.Mask));
                    var transposed = ChordNaming.Readings(new PitchClassSet((ushort)moved));
                    if (readings[0].Chord.Symbol is not null)
                    {
                        Assert.Equal(Facts(readings, by), Facts(transposed, 0));
                    }
                },
                iter: 200
            );

    private static IEnumerable<(int Root, int Cost)> Facts(IEnumerable<ChordReading> readings, int by) =>
        readings.Select(reading => ((reading.Chord.Root.PitchClass + by) % 12, reading.Cost)).Order();
}
