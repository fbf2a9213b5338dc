using System.Text.RegularExpressions;
using Fractions;
using TheoryKit.Licks.Analysis;
using TheoryKit.Licks.Tests.Tab;
using TheoryKit.Licks.Words;
using TheoryKit.Paths;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Licks.Tests.Analysis;

public partial class LickAnalysisTests
{
    private static readonly Changes[] SomeChanges =
    [
        .. new[]
        {
            "4/4, F major: Gm9 | C13 | Fmaj9 | Dm7",
            "3/4, Eb major: Ebmaj7 | Cm7 | Fm7 | Bb7",
            "4/4, D major: D | G6 A7sus4",
            "5/4: E7alt / / Am / | Cm7/F",
            "6/8: Am | N.C. E7",
        }.Select(static text => Changes.Parse(text)),
    ];

    /// <summary>Lines that go by small steps, eighths and longer, with a rest now and then: full of what leads to something.</summary>
    private static readonly Gen<Path> Walks =
        from changes in Gen.Int[0, SomeChanges.Length - 1].Select(static index => SomeChanges[index])
        from steps in Gen.Select(Gen.Int[-3, 3], Gen.Int[0, 9], Gen.Bool).Array[1, 24]
        select Walk(changes, steps);

    internal static readonly Gen<Path> Paths = Gen.OneOf(TabGens.Path, Walks);

    private static readonly IReadOnlyList<Interval> Moves =
    [
        .. "m2 M2 m3 P4 -M2 -m3".Split(' ').Select(static text => Interval.Parse(text)),
    ];

    public static TheoryData<string> Names => [.. HandLabelled.All.Select(static lick => lick.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_note_is_what_the_hand_label_says(string name)
    {
        var lick = HandLabelled.All.Single(lick => lick.Name == name);
        var analysis = lick.Path.Analyse();
        Assert.Equal(lick.Labels, analysis.Notes.Select(note => HandLabelled.LabelOf(analysis, note)));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_lick_moved_with_its_changes_keeps_every_label(string name)
    {
        var lick = HandLabelled.All.Single(lick => lick.Name == name);
        foreach (var interval in Moves)
        {
            var moved = lick.Path.Transpose(interval).Analyse();
            var labels = moved.Notes.Select(Label);
            var own = lick.Path.Analyse();
            Assert.Equal(own.Notes.Select(Label), labels);
        }
    }

    [Fact]
    public void A_random_line_moved_with_its_changes_keeps_every_part() =>
        Gen.Select(Walks, Gen.Int[0, Moves.Count - 1])
            .Sample(
                static (path, move) =>
                {
                    var (own, moved) = (path.Analyse(), path.Transpose(Moves[move]).Analyse());
                    Assert.Equal(own.Notes.Select(Label), moved.Notes.Select(Label));
                },
                iter: 1000
            );

    [Fact]
    public void Every_note_is_analysed_once_at_its_sounding_pitch() =>
        Paths.Sample(
            static path =>
            {
                var analysis = path.Analyse();
                Assert.Equal(path.Notes, analysis.Notes.Select(static note => note.Note));
                Assert.Equal(Enumerable.Range(0, path.Notes.Count), analysis.Notes.Select(static note => note.Index));
                Assert.Equal(analysis.Notes, analysis.Bars.SelectMany(static bar => bar.Notes));
                foreach (var note in analysis.Notes.Where(static note => note.Counts))
                {
                    Assert.Equal(path.SoundingPitch(note.Note), note.Sounding);
                    Assert.Equal(path.ChordAt(note.Note.Start), note.Chord);
                    Assert.Equal(path.FunctionOf(note.Note), note.Function);
                    Assert.Equal(note.Note.Start, note.Beat + (note.Bar * path.Time.Beats));
                }
            },
            iter: 1000
        );

    [Fact]
    public void Parts_are_what_their_words_say() =>
        Paths.Sample(
            static path =>
            {
                var analysis = path.Analyse();
                var pulse = new Fraction(path.Time.Beats, path.Time.Pulses);
                foreach (var note in analysis.Notes)
                {
                    var isTone = note.Role is ToneRole.Root or ToneRole.ChordTone;
                    var target = analysis.TargetOf(note);
                    switch (note.Part)
                    {
                        case NotePart.Dead:
                            Assert.True(note.Note.Has(Technique.Dead));
                            Assert.Null(note.Function);
                            break;
                        case NotePart.Grace:
                            Assert.True(target!.Note.Has(Technique.Slide));
                            Assert.Equal(target.Sounding.MidiNumber, note.Sounding.MidiNumber);
                            break;
                        case NotePart.ChordTone:
                            Assert.True(isTone);
                            break;
                        case NotePart.ColourTone:
                            Assert.Equal(ToneRole.ColourTone, note.Role);
                            break;
                        case NotePart.Anticipation:
                            Assert.InRange(note.Ahead!.Value, new Fraction(1, 1000), pulse);
                            Assert.Equal(note.Anticipates, path.ChordAt(note.Note.Start + note.Ahead.Value));
                            Assert.True(
                                note.Anticipates!.FunctionOf(note.Sounding.Name) is not null
                                    || note.Anticipates.Bass.PitchClass == note.Sounding.PitchClass
                            );
                            break;
                        case NotePart.Approach or NotePart.Passing or NotePart.Neighbour:
                            Assert.False(isTone);
                            Assert.True(target!.Index > note.Index && target.Note.Start > note.Note.Start);
                            Assert.InRange(Math.Abs(note.Step), 1, 6);
                            break;
                        case NotePart.Enclosure:
                            Assert.False(isTone);
                            Assert.InRange(Math.Abs(note.Step), 1, 2);
                            Assert.Contains(
                                analysis.Notes,
                                other => other.Target == note.Target && Math.Sign(other.Step) == -Math.Sign(note.Step)
                            );
                            break;
                        case NotePart.Outside:
                            Assert.Equal(ToneRole.Other, note.Role);
                            break;
                        default:
                            Assert.Null(note.Chord);
                            break;
                    }

                    Assert.Equal(target is null ? 0 : target.Sounding.MidiNumber - note.Sounding.MidiNumber, note.Step);
                    Assert.Equal(note.Part == NotePart.Anticipation, note.Anticipates is not null);
                }
            },
            iter: 1000
        );

    /// <summary>A slow look at lines of single notes: what goes by step to a chord tone struck next, and is none itself, is not left outside.</summary>
    [Fact]
    public void No_step_into_a_chord_tone_is_missed() =>
        Walks.Sample(
            static path =>
            {
                var line = path.Analyse().Notes.Where(static note => note.Counts).ToList();
                foreach (var (note, next) in line.Zip(line.Skip(1)))
                {
                    if (
                        next.Role is ToneRole.Root or ToneRole.ChordTone
                        && note.Note.End == next.Note.Start
                        && Math.Abs(next.Sounding.MidiNumber - note.Sounding.MidiNumber) is 1 or 2
                    )
                    {
                        Assert.NotEqual(NotePart.Outside, note.Part);
                    }
                }
            },
            iter: 2000
        );

    [Fact]
    public void Counts_and_shares_add_up() =>
        Paths.Sample(
            static path =>
            {
                var sum = path.Analyse().Summary;
                Assert.Equal(path.Notes.Count, sum.Parts.Sum(static part => part.Count));
                Assert.Equal(sum.Count == 0 ? 0 : 1, sum.Parts.Sum(static part => part.Share), 9);
                var analysis = path.Analyse();
                Assert.Equal(
                    analysis.Notes.Count(static note => note is { Counts: true, Function: not null }),
                    sum.Functions.Sum(static count => count.Total)
                );
                Assert.Equal(sum.Count, analysis.Bars.Sum(static bar => bar.Summary.Count));
            },
            iter: 500
        );

    [Fact]
    public void The_same_path_gives_the_same_analysis_and_words() =>
        Paths.Sample(
            static path =>
            {
                var (one, other) = (path.Analyse(), path.Analyse());
                Assert.Equal(one, other);
                Assert.Equal(one.Notes, other.Notes);
                Assert.Equal(one.Bars, other.Bars);
                Assert.Equal(one.Changes, other.Changes);
                Assert.Equal(one.Remarks, other.Remarks);
                Assert.Equal(
                    one.Bars.SelectMany(static bar => bar.Remarks),
                    other.Bars.SelectMany(static bar => bar.Remarks)
                );
            },
            iter: 300
        );

    [Fact]
    public void Words_are_sentences() =>
        Paths.Sample(
            static path =>
            {
                var analysis = path.Analyse();
                foreach (
                    var sentence in analysis.InWords().Concat(analysis.Bars.SelectMany(static bar => bar.InWords()))
                )
                {
                    Assert.Matches(@"^[A-Z0-9].*\.$", sentence);
                    Assert.DoesNotMatch(Clumsy(), sentence);
                }

                Assert.DoesNotMatch(@"[A-G][b#]|[b#]\d", string.Join(' ', analysis.InWords("P")));
            },
            iter: 1000
        );

    [Fact]
    public void Another_format_is_refused() =>
        Assert.Throws<FormatException>(static () => HandLabelled.All[0].Path.Analyse().InWords("X"));

    [Fact]
    public void Notes_of_a_grip_are_each_led_to_the_nearest()
    {
        var changes = Changes.Parse("4/4, F major: Gm9 | C13");
        var path = new Path(
            Neck.Guitar,
            [
                Struck(3, 0, 0, 2), // G3
                Struck(2, 8, 0, 2), // G4
                Struck(4, 1, 3, 1), // D#3, half a step below E3
                Struck(3, 10, 3, 1), // F4: seventh of Gm9
                Struck(4, 2, 4, 4),
                Struck(3, 9, 4, 4),
            ],
            changes: changes
        );
        var analysis = path.Analyse();
        Assert.Equal(
            ["1 chord tone", "1 chord tone", "#5 approach > E3", "b7 chord tone", "3 chord tone", "3 chord tone"],
            analysis.Notes.Select(note => HandLabelled.LabelOf(analysis, note))
        );
        Assert.True(analysis.Changes.Single().Resolves);
    }

    [Fact]
    public void A_pickup_over_no_chord_may_lead_into_the_first()
    {
        var path = new Path(
            Neck.Guitar,
            [Struck(3, 8, 3, 1), Struck(3, 9, 4, 4)],
            changes: Changes.Parse("4/4: N.C. | C13")
        );
        var analysis = path.Analyse();
        Assert.Equal(
            ["- approach > E4", "3 chord tone"],
            analysis.Notes.Select(note => HandLabelled.LabelOf(analysis, note))
        );
    }

    [Fact]
    public void A_change_is_told_with_the_notes_that_join_it()
    {
        var analysis = HandLabelled.All[0].Path.Analyse();
        var change = analysis.Changes.Single();
        Assert.Equal("Gm9 > C13: b7 > 3", change.ToString());
        Assert.Equal((-1, true, true, true), (change.Step, change.IsMet, change.HitsGuideTone, change.Resolves));
        Assert.Contains(new LineRemark.OneChange(change), analysis.Remarks);
        var early = HandLabelled.All[2].Path.Analyse().Changes.Single();
        Assert.Equal((true, true, new Degree(3)), (early.IsMet, early.HitsGuideTone, early.Function!.Value));
    }

    [Fact]
    public void A_bar_is_told_in_words()
    {
        var bend = HandLabelled.All.Single(static lick => lick.Name.Contains("a bend", StringComparison.Ordinal)).Path;
        Assert.Equal(
            "Bar 1 lands on the fifth of Fmaj9. It bends the 9 up to the third and has the 9 as colour. "
                + "Its strong beats carry the fifth and the 9. It ends on the seventh.",
            string.Join(' ', bend.Analyse().Bars[0].InWords())
        );
        var around = HandLabelled.All[1].Path.Transpose(Interval.Parse("m2")).Analyse();
        Assert.Equal(
            "Bar 2 lands on the third of D♭13. It ends on the fifth.",
            string.Join(' ', around.Bars[1].InWords("P"))
        );
    }

    [Fact]
    public void Zones_are_those_of_each_chord_with_most_of_its_notes()
    {
        var path = HandLabelled.All[0].Path;
        var zones = path.Analyse().Zones();
        Assert.Equal(["Gm9", "C13"], zones.Select(static use => use.Zone.Chord.ToString()));
        foreach (var use in zones)
        {
            var over = path.Notes.Where(note => path.ChordAt(note.Start) == use.Zone.Chord).ToList();
            Assert.Equal(over.Count, use.Count);
            Assert.Equal(over.Count(note => use.Zone.Window.Contains(note.Position.Fret)), use.Inside);
        }
    }

    [Fact]
    public void Nothing_to_analyse_is_said_so()
    {
        var empty = new Path(Neck.Guitar, [], changes: Changes.Parse("Gm9"));
        Assert.Equal([new LineRemark.Nothing()], empty.Analyse().Remarks);
        Assert.Empty(empty.Analyse().Bars);
        var silent = new Path(Neck.Guitar, [], changes: Changes.Parse("Gm9 | C13"), beats: 8);
        Assert.Equal(
            [new LineRemark.Rests(1), new LineRemark.Rests(2)],
            silent.Analyse().Bars.Select(static bar => Assert.Single(bar.Remarks))
        );
        Assert.Empty(silent.Analyse().Zones());
    }

    private static object Label(AnalysedNote note) =>
        (note.Function, note.Part, note.Target, note.Step, note.IsChromatic, note.AnticipatedFunction, note.IsStrong);

    private static Path Walk(Changes changes, (int Step, int Length, bool IsJoined)[] steps)
    {
        var (sound, at, notes) = (64, Fraction.Zero, new List<PathNote>());
        foreach (var (step, length, isJoined) in steps)
        {
            sound = Math.Clamp(sound + step, 50, 76);
            var position = Neck.Guitar.PositionsOf(Pitch.FromMidi(sound)).MinBy(static each => Math.Abs(each.Fret - 7));
            var isSlid = isJoined && notes.Count > 0 && notes[^1].Position.String == position.String && step != 0;
            notes.Add(
                new()
                {
                    Pitch = changes.At((at % changes.Beats).Reduce()).Chord?.Spell(sound) ?? Pitch.FromMidi(sound),
                    Position = position,
                    Start = at,
                    Length = new(Math.Max(1, length - 5), length == 0 ? 8 : 2),
                    Techniques = isSlid && notes[^1].End == at ? [Technique.Slide] : [],
                }
            );
            at = notes[^1].End + (length == 9 ? 1 : 0);
        }

        return new(Neck.Guitar, notes, changes: changes);
    }

    private static PathNote Struck(int number, int fret, int start, int length) =>
        new()
        {
            Position = new(number, fret),
            Pitch = Pitch.FromMidi(Neck.Guitar.MidiNumberAt(new(number, fret))),
            Start = start,
            Length = length,
        };

    [GeneratedRegex(
        @"  |\.\.|,,| ,|(?<!(Bar|beat|\d) |[./#b])\b1 \w+s\b|\ba [aeiou]ight|\bon on\b|\ba octave|\b([2-9]|\d\d+) (note|bar|approach)\b(?<!/\d+ note)"
    )]
    private static partial Regex Clumsy();
}
