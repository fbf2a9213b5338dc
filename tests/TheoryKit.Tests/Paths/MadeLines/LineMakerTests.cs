using Fractions;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Paths;
using TheoryKit.Paths.MadeLines;
using TheoryKit.Paths.Timing;
using TheoryKit.Tests.Fingering;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Theory.Scales;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Tests.Paths.MadeLines;

public class LineMakerTests
{
    private static readonly LineRequest NineTinBoats = new()
    {
        Neck = Neck.Guitar,
        Changes = Changes.Parse("4/4, F major: Gm9 | C13 | Fmaj9 | Dm7"),
        Window = new(4, 9),
    };

    private static readonly Gen<LineRequest> Request =
        from changes in FingeringGens.OneOf(
            "4/4, F major: Gm9 | C13 | Fmaj9 | Dm7",
            "3/4, Eb major: Ebmaj7 | Cm7 | Fm7 | Bb7",
            "4/4: Am7 D7 | Gmaj7 | F#m7b5 B7b9 | Em6 | % | C7sus4 / / C7",
            "6/8: D | A7sus4 | N.C. | Bm7 G",
            "4/4: N.C. G7 | Cdim7 N.C."
        )
        from seed in Gen.ULong
        from first in Gen.Int[0, 10]
        from width in Gen.Int[5, 12]
        from anywhere in Gen.Bool
        from few in Gen.Int[0, 4]
        from more in Gen.Int[2, 6]
        from times in Gen.Int[1, 2]
        from approached in Gen.OneOf(Gen.Double[0, 1], Gen.Const(0.0), Gen.Const(1.0))
        from passing in Gen.Bool
        from targets in FingeringGens.OneOf("3 7", "1", "5", "2 3")
        select new LineRequest
        {
            Neck = Neck.Guitar,
            Changes = Changes.Parse(changes),
            Seed = seed,
            Window = anywhere ? null : new Window(first, first + width),
            Lowest = anywhere ? Pitch.Parse("A2") : null,
            Highest = anywhere ? Pitch.Parse("C5") : null,
            FewestPerBar = few,
            MostPerBar = few + more,
            Times = times,
            Approached = approached,
            Passing = passing,
            Targets = [.. targets.Split(' ').Select(int.Parse)],
        };

    [Fact]
    public void TheGeneratorIsThePublishedOne()
    {
        // The first numbers of the reference implementation from seed 1234567.
        var random = new SplitMix64(1234567);
        ulong[] expected =
        [
            6457827717110365317,
            3203168211198807973,
            9817491932198370423,
            4593380528125082431,
            16408922859458223821,
        ];
        Assert.Equal(expected, Enumerable.Range(0, 5).Select(_ => random.Next()));
    }

    [Fact]
    public void EveryNoteIsThereForTheReasonItGives() =>
        Request.Sample(
            request =>
            {
                var line = Made(request);
                if (line is not null)
                {
                    Check(line);
                }
            },
            iter: 150
        );

    [Fact]
    public void TimeAddsUpAndRangeAndDensityAreKept() =>
        Request.Sample(
            request =>
            {
                if (Made(request) is not { Path: var path })
                {
                    return;
                }

                Assert.Equal((Fraction)(request.Changes.Beats * request.Times), path.Beats);
                var end = Fraction.Zero;
                foreach (var note in path.Notes)
                {
                    Assert.True(note.Start >= end);
                    end = note.End;
                    Assert.NotNull(path.ChordAt(note.Start));
                    Assert.True(request.Window?.Contains(note.Position.Fret) ?? true);
                    Assert.True(!(note.Pitch.MidiNumber < request.Lowest?.MidiNumber));
                    Assert.True(!(note.Pitch.MidiNumber > request.Highest?.MidiNumber));
                }

                for (var bar = 0; bar < path.BarCount; bar++)
                {
                    var chords = request.Changes.Bars[bar % request.Changes.Bars.Count].Chords;
                    if (chords.All(span => span.Chord is not null))
                    {
                        Assert.InRange(path.InBar(bar).Count(), request.FewestPerBar, request.MostPerBar);
                        Assert.All(path.InBar(bar), note => Assert.True(note.End <= (bar + 1) * path.Time.Beats));
                    }
                }

                // Where a chord begins, a target sounds.
                for (var beat = 0; beat < request.Changes.Beats * request.Times; beat++)
                {
                    foreach (
                        var span in request.Changes.Chords.Where(span => span.Start == beat % request.Changes.Beats)
                    )
                    {
                        var before = beat == 0 ? null : path.ChordAt(beat - new Fraction(1, 1000));
                        Assert.Equal(
                            span.Chord is not null && span.Chord != before,
                            path.Notes.Any(note => note.Start == beat && note.Why is MadeReason.Target)
                        );
                    }
                }
            },
            iter: 150
        );

    [Fact]
    public void AHandCanPlayIt() =>
        Request.Sample(
            request =>
            {
                if (Made(request) is { } line)
                {
                    var fingered = LineSearch.Finger(request.Neck, line.Path.Notes.Select(note => note.Position));
                    Assert.True(fingered.Count > 0);
                    Assert.All(
                        line.Path.Notes,
                        note =>
                            Assert.Equal(
                                note.Position.Fret == request.Neck.OpenFret(note.Position.String),
                                note.Finger is null
                            )
                    );
                }
            },
            iter: 50
        );

    [Fact]
    public void TheSameSeedMakesTheSameLineAndOthersMakeOthers()
    {
        Request.Sample(request => Assert.Equal(Made(request), Made(request)), iter: 20);
        var lines = Enumerable
            .Range(0, 50)
            .Select(seed => LineMaker.Make(NineTinBoats with { Seed = (ulong)seed }).Path);
        Assert.Equal(50, lines.Distinct().Count());
    }

    [Fact]
    public void AsManyTargetsAreApproachedAsAsked()
    {
        // Three of four chords come after another one; at six notes or more a bar there is room before each.
        double Part(double approached) =>
            Enumerable
                .Range(0, 100)
                .Average(seed =>
                {
                    var notes = LineMaker
                        .Make(NineTinBoats with { Seed = (ulong)seed, Approached = approached, FewestPerBar = 6 })
                        .Path.Notes;
                    return notes
                            .Zip(notes.Skip(1))
                            .Count(pair => pair is { First.Why: MadeReason.Leading, Second.Why: MadeReason.Target })
                        / 3.0;
                });

        Assert.Equal(0, Part(0));
        Assert.Equal(1, Part(1));
        // Of 300 draws; five times the standard deviation.
        Assert.InRange(Part(0.3), 0.3 - (5 * Math.Sqrt(0.3 * 0.7 / 300)), 0.3 + (5 * Math.Sqrt(0.3 * 0.7 / 300)));
        Assert.InRange(
            Part(0.75),
            0.75 - (5 * Math.Sqrt(0.75 * 0.25 / 300)),
            0.75 + (5 * Math.Sqrt(0.75 * 0.25 / 300))
        );
    }

    [Fact]
    public void EveryKnownApproachIsUsedByItself()
    {
        foreach (var way in Approach.Known)
        {
            var line = LineMaker.Make(
                NineTinBoats with
                {
                    Approaches = [way],
                    Approached = 1,
                    FewestPerBar = 6,
                    Figures = [Rhythm.Parse("1/2 1/2")],
                    MostPerBar = 8,
                    Passing = false,
                }
            );
            Check(line);
            var approaching = line.Path.Notes.Count(note =>
                note.Why is MadeReason.Leading leading && leading.Way == way
            );
            Assert.Equal(3 * way.Neighbours.Count, approaching); // three of the four chords come after another
            Assert.Equal(way, Approach.Find(way.Name));
        }
    }

    [Fact]
    public void WhatCanNotBeMadeIsSaid()
    {
        string Message(LineRequest request) => Assert.Throws<ArgumentException>(() => LineMaker.Make(request)).Message;

        Assert.Contains(
            "bar 1 with 1 to 128 notes",
            Message(NineTinBoats with { FewestPerBar = 1, Figures = [Rhythm.Parse("3")] })
        );
        Assert.Contains("they can't fill it at all", Message(NineTinBoats with { Figures = [Rhythm.Parse("3")] }));
        Assert.Contains(
            "they can with 4",
            Message(NineTinBoats with { Figures = [Rhythm.Parse("1")], MostPerBar = 3 })
        );
        Assert.Contains(
            "Bar 1: none of b3, b7 of Gm9",
            Message(NineTinBoats with { Lowest = Pitch.Parse("G3"), Highest = Pitch.Parse("G3") })
        );
        Assert.Throws<ArgumentException>(() => NineTinBoats with { Figures = [] });
        Assert.Throws<ArgumentException>(() => NineTinBoats with { Targets = [9] });
        Assert.Throws<ArgumentOutOfRangeException>(() => NineTinBoats with { Approached = 1.1 });
    }

    [Theory]
    [InlineData("Gm9", "b3 b7")]
    [InlineData("C6", "3 6")]
    [InlineData("A7sus4", "4 b7")]
    [InlineData("G5", "1 5")]
    [InlineData("Dsus2", "2")]
    [InlineData("C7#9", "3 b7")]
    public void TargetsAreThirdsAndSeventhsOrWhatStandsInForThem(string chord, string targets) =>
        Assert.Equal(targets, NineTinBoats.TargetsOf(Chord.Parse(chord)).ToString());

    [Theory]
    [InlineData("C13", "F major")]
    [InlineData("C7alt", "C altered")]
    [InlineData("Ebm7", "Eb dorian")]
    public void NeighboursComeFromTheKeyOrTheScaleAroundTheChord(string chord, string scale)
    {
        var found = NineTinBoats.ScaleOf(Chord.Parse(chord))!;
        Assert.True(found.Contains(new Chord(Chord.Parse(chord).Root, Chord.Parse(chord).Formula)));
        if (scale == "F major")
        {
            Assert.Equal(Scale.Parse(scale), found);
        }
        else
        {
            Assert.Equal(Chord.Parse(chord).Root, found.Tonic);
        }
    }

    private static MadeLine? Made(LineRequest request)
    {
        try
        {
            return LineMaker.Make(request);
        }
        catch (ArgumentException e)
        {
            Assert.Matches("can't fill bar|none of|can't play any", e.Message);
            return null;
        }
    }

    /// <summary>Reads every reason and sees for itself whether it is so.</summary>
    private static void Check(MadeLine line)
    {
        var (path, notes) = (line.Path, line.Path.Notes);
        for (var index = 0; index < notes.Count; index++)
        {
            var note = notes[index];
            var chord = path.ChordAt(note.Start)!;
            if (note.Why is MadeReason.Target target)
            {
                Sounds(note, target.Function, target.Chord, chord);
                var number = target.Function.Simple.Number;
                var names = chord.Formula.Select(degree => degree.Simple.Number).ToList();
                Assert.True(
                    line.Request.Targets.Contains(number)
                        || (number is 4 or 2 && line.Request.Targets.Contains(3) && !names.Contains(3))
                        || (number == 6 && line.Request.Targets.Contains(7) && !names.Contains(7))
                        || !line.Request.Targets.Any(names.Contains),
                    $"{note.Why}"
                );
            }
            else if (note.Why is MadeReason.ChordTone tone)
            {
                Sounds(note, tone.Function, tone.Chord, chord);
            }
            else if (note.Why is MadeReason.Passing passing)
            {
                var (before, next) = (notes[index - 1], notes[index + 1]);
                Sounds(next, passing.Function, passing.Chord, chord);
                Assert.Equal(chord, path.ChordAt(next.Start));
                Assert.NotNull(chord.FunctionOf(before.Pitch.Name));
                Assert.Null(chord.FunctionOf(note.Pitch.Name));
                Assert.False(note.Start.Denominator.IsOne);
                Assert.Contains(note.Pitch.Name, passing.Scale.Tones);
                var (one, two) = (
                    note.Pitch.MidiNumber - before.Pitch.MidiNumber,
                    next.Pitch.MidiNumber - note.Pitch.MidiNumber
                );
                Assert.Equal(Math.Sign(one), Math.Sign(two));
                Assert.InRange(Math.Abs(one), 1, 2);
                Assert.InRange(Math.Abs(two), 1, 2);
            }
            else
            {
                var lead = Assert.IsType<MadeReason.Leading>(note.Why);
                // The goal is the next note that is no neighbour; all between lead to it too.
                var goal = index + 1;
                while (notes[goal].Why is MadeReason.Leading)
                {
                    goal++;
                }

                Assert.InRange(goal - index, 1, 2);
                Assert.IsType<MadeReason.Target>(notes[goal].Why);
                Sounds(notes[goal], lead.Function, lead.Chord, path.ChordAt(notes[goal].Start)!);
                var (from, to) = (note.Pitch.MidiNumber, notes[goal].Pitch.MidiNumber);
                Assert.Equal(lead.IsAbove, from > to);
                var step = lead.Way.Neighbours[lead.Stage];
                if (lead.Scale is { } scale)
                {
                    Assert.Contains(note.Pitch.Name, scale.Tones);
                    Assert.DoesNotContain(
                        Enumerable.Range(Math.Min(from, to) + 1, Math.Abs(from - to) - 1),
                        between => scale.PitchClasses.Contains(between % 12)
                    );
                }
                else
                {
                    Assert.Equal(
                        step is Neighbour.SemitoneBelow or Neighbour.SemitoneAbove ? 1 : 2,
                        Math.Abs(from - to)
                    );
                }

                if (lead.Way.IsEnclosure)
                {
                    // The other neighbour is on the other side.
                    var other = notes[index + 1].Why is MadeReason.Leading ? notes[index + 1] : notes[index - 1];
                    Assert.Equal(lead.Way, Assert.IsType<MadeReason.Leading>(other.Why).Way);
                    Assert.Equal(-Math.Sign(from - to), Math.Sign(other.Pitch.MidiNumber - to));
                }
            }
        }
    }

    private static void Sounds(PathNote note, Degree function, Chord of, Chord chord)
    {
        Assert.Equal(chord, of);
        Assert.Contains(function, chord.Formula);
        Assert.Equal(chord.Root.Add(function), note.Pitch.Name);
    }
}
