using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Fingering.Zones;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Fingering.Zones;

public class ZoneTests
{
    private const double Tolerance = 1e-9;

    // A hand to which nothing is far or a stretch.
    private static readonly Hand Free = new()
    {
        IndexToMiddle = Hand.MaxReach,
        MiddleToRing = Hand.MaxReach,
        RingToLittle = Hand.MaxReach,
        IndexToRing = Hand.MaxReach,
        MiddleToLittle = Hand.MaxReach,
        IndexToLittle = Hand.MaxReach,
        Weights = new()
        {
            Stretch = 0,
            Crowding = 0,
            Upper = 0,
        },
    };

    private static readonly NoteName[] Roots =
    [
        .. from letter in "CDEFGAB" from sign in new[] { "b", "", "#" } select NoteName.Parse($"{letter}{sign}"),
    ];

    // Every known quality of four tones with a seventh, the altered and suspended ones too.
    private static readonly ChordQuality[] Sevenths =
    [
        .. ChordQuality.Known.Where(quality => quality.Formula.Count == 4 && quality.Formula.WithNumber(7) is not null),
    ];

    [Fact]
    public void StandardTuningHasFiveCompleteZonesAnOctaveInTheOrderEDCAG()
    {
        Assert.True(Sevenths.Length >= 8);
        foreach (var hand in new[] { Hand.Average, Hand.Large })
        {
            foreach (var root in Roots)
            {
                foreach (var quality in Sevenths)
                {
                    var zones = new Chord(root, quality.Formula).Zones(Neck.Guitar, hand);
                    var letters = string.Concat(zones.Select(zone => zone.Form.Letter));
                    Assert.Equal(zones.Count, letters.Length);
                    Assert.Contains(letters, "EDCAGEDCAGEDCAG", StringComparison.Ordinal);
                    Assert.Equal(5, zones.Count(zone => LowerRootFret(zone) < 12));
                    Assert.All(zones, zone => Assert.True(zone.Shape.IsComplete, $"{zone.Chord} {zone}"));
                    Assert.Equal(zones.Count, zones.Select(zone => zone.Window).Distinct().Count());
                    Obeys(zones, hand);
                }
            }
        }
    }

    [Fact]
    public void AllFourthsHaveSixZonesAnOctave()
    {
        var neck = new Neck(Tuning.Parse("E2 A2 D3 G3 C4 F4"));
        foreach (var root in Roots)
        {
            foreach (var quality in Sevenths)
            {
                var zones = new Chord(root, quality.Formula).Zones(neck);
                Assert.Equal(6, zones.Count(zone => zone.Form.Upper.Count > 0 && LowerRootFret(zone) < 12));
                Assert.All(zones, zone => Assert.Null(zone.Form.Letter));
                Assert.All(zones, zone => Assert.True(zone.Shape.IsComplete));
                Obeys(zones, Hand.Average);
            }
        }
    }

    [Fact]
    public void ZonesOfAnyTuningObeyTheDefinition() =>
        Gen.Select(
                FingeringGens.Tuning(3, 8),
                Gen.Int[2, 24],
                Gen.Int[0, 2],
                Gens.UsualNoteName,
                Gens.UsualFormula,
                FingeringGens.UsualHand
            )
            .Sample(
                (tuning, frets, capo, root, formula, hand) =>
                    Obeys(new Chord(root, formula).Zones(new(tuning, 648, frets, capo), hand), hand),
                iter: 400
            );

    [Fact]
    public void AWindowsShapeIsTheLeastEffortChoiceOfPositionsAndFingers() =>
        Gen.Select(
                FingeringGens.Neck(3, 4, 5, 12),
                Gens.UsualNoteName,
                FingeringGens.OneOf("1 5", "1 3 5", "1 b3 5 b7", "1 4"),
                Gen.OneOf(FingeringGens.UsualHand, FingeringGens.Hand),
                Gen.Int[0, 9],
                Gen.Int[1, 4]
            )
            .Sample(
                (neck, root, text, hand, first, width) =>
                {
                    var formula = Formula.Parse(text);
                    first = Math.Min(first, neck.Frets - width + 1);
                    var window = new Window(Math.Max(0, first), Math.Max(0, first) + width - 1);
                    var shape = new WindowShapes(new(new HandOnNeck(neck, hand)), root, formula).In(window);
                    var (effort, pitches) = BestShape(neck, hand, root, formula, window);
                    if (shape is null)
                    {
                        Assert.True(double.IsInfinity(effort) || pitches == 0);
                        return;
                    }

                    Assert.Equal(effort, shape.Effort, Tolerance);
                    Assert.Equal(pitches, shape.Notes.Count);
                },
                iter: 400
            );

    [Fact]
    public void ShapesMoveUpTheNeckWithTheirRoot() =>
        Gen.Select(FingeringGens.Tuning(4, 7), Gens.UsualFormula, Gen.Int[1, 5], Gen.Int[1, 8])
            .Sample(
                (tuning, formula, first, up) =>
                {
                    // What is left without millimetres is which tones lie where.
                    var hand = Free;
                    var neck = new Neck(tuning);
                    var root = NoteName.Parse("C");
                    var moved = Pitch.FromMidi(60 + up).Name;
                    Shape? In(NoteName name, int fret) =>
                        new WindowShapes(new(new HandOnNeck(neck, hand)), name, formula).In(new(fret, fret + 3));
                    if (In(root, first + 2) is not { } here)
                    {
                        return;
                    }

                    var there = In(moved, first + 2 + up)!;
                    Assert.Equal(
                        here.Missing.Select(each => each.MidiNumber + up),
                        there.Missing.Select(each => each.MidiNumber)
                    );
                    Assert.Equal(
                        here.Places.Select(each => each.Position with { }).Select(p => (p.String, p.Fret + up)),
                        there.Places.Select(each => (each.Position.String, each.Position.Fret))
                    );
                },
                iter: 200
            );

    [Fact]
    public void TheGripOfAZoneLiesInItsWindow()
    {
        foreach (var text in "Ebmaj7 Cm7 Fm7 Bb7 Gm9 C13 Am7b5 Bdim7".Split(' '))
        {
            foreach (var zone in Chord.Parse(text).Zones(Neck.Guitar))
            {
                Assert.NotNull(zone.Grip);
                Assert.All(zone.Grip.Grip.Positions, position => Assert.True(zone.Window.Contains(position.Fret)));
                Assert.Contains(new Degree(3, zone.Chord.Formula.WithNumber(3)!.Value.Alteration), zone.Grip.Functions);
            }
        }
    }

    [Fact]
    public void AllTwelveRootsHaveAShapeInOneWindow()
    {
        var zone = Chord.Parse("Cm7").Zones(Neck.Guitar)[1];
        var shapes = zone.AllRoots();
        Assert.Equal(12, shapes.Count);
        Assert.Equal(12, shapes.Select(shape => shape.Root.PitchClass).Distinct().Count());
        Assert.All(shapes, shape => Assert.Equal(zone.Window, shape.Window));
        Assert.All(shapes, shape => Assert.Equal(zone.Chord.Formula, shape.Formula));
        Assert.Equal(zone.Shape, shapes[0]);
    }

    [Fact]
    public void AlternativesSoundTheSamePitch()
    {
        foreach (var zone in Chord.Parse("Fm7").Zones(Neck.Guitar))
        {
            var alternatives = zone.Alternatives();
            Assert.NotEmpty(alternatives);
            Assert.All(
                alternatives,
                each => Assert.Equal(each.Note.Place.Pitch.MidiNumber, Neck.Guitar.MidiNumberAt(each.Position))
            );
            Assert.All(alternatives, each => Assert.NotEqual(each.Note.Place.Position, each.Position));
        }
    }

    [Fact]
    public void BehindACapoNothingIsPlayed()
    {
        var neck = Neck.Guitar.WithCapo(3);
        foreach (var zone in Chord.Parse("Ebmaj7").Zones(neck))
        {
            Assert.True(zone.Window.First >= 3);
            Assert.All(zone.Shape.Notes, note => Assert.True(note.Place.Position.Fret >= 3));
            Assert.All(zone.Shape.Notes, note => Assert.Equal(note.Place.Position.Fret == 3, note.Finger is null));
        }

        // With a capo the zones are those of the chord so much lower on a shorter neck, but for where its body begins.
        var hand = new Hand { Weights = new() { Upper = 0 } };
        var lower = Chord.Parse("Cmaj7").Zones(new(Tuning.Standard, 648 / Math.Pow(2, 3 / 12.0), 19), hand);
        Assert.Equal(
            lower.Select(zone => (zone.Window.First + 3, zone.Window.Last + 3, zone.Form.Letter)),
            Chord
                .Parse("Ebmaj7")
                .Zones(neck, hand)
                .Select(zone => (zone.Window.First, zone.Window.Last, zone.Form.Letter))
        );
    }

    [Fact]
    public void AShortStringIsPlayedFromWhereItBegins()
    {
        var banjo = new Neck(Tuning.Parse("G4@5 D3 G3 B3 D4"), 670);
        var zones = Chord.Parse("G").Zones(banjo);
        Assert.NotEmpty(zones);
        Obeys(zones, Hand.Average);
        Assert.All(
            zones.SelectMany(zone => zone.Shape.Places).Where(place => place.Position.String == 5),
            place => Assert.True(place.Position.Fret >= 5)
        );
    }

    [Fact]
    public void AReentrantTuningHasEachPitchOnce()
    {
        var ukulele = new Neck(Tuning.Parse("G4 C4 E4 A4"), 350, 15);
        foreach (var chord in new[] { "C6", "Am7", "F", "G7" })
        {
            var zones = Chord.Parse(chord).Zones(ukulele);
            Assert.NotEmpty(zones);
            Obeys(zones, Hand.Average);
        }
    }

    [Fact]
    public void ASmallHandHasCompleteZonesOrOneForEachRootFret()
    {
        foreach (var root in Roots)
        {
            foreach (var quality in Sevenths)
            {
                var zones = new Chord(root, quality.Formula).Zones(Neck.Guitar, Hand.Small);
                Obeys(zones, Hand.Small);
            }
        }
    }

    [Fact]
    public void ZonesAreEqualByValue()
    {
        var chord = Chord.Parse("Bb7");
        Assert.Equal(chord.Zones(Neck.Guitar), Chord.Parse("Bb7").Zones(Neck.Parse(Neck.Guitar.ToString())));
        Assert.Equal(
            chord.Zones(Neck.Guitar).Select(zone => zone.GetHashCode()),
            chord.Zones(Neck.Guitar).Select(zone => zone.GetHashCode())
        );
        Assert.NotEqual(chord.Zones(Neck.Guitar)[0], chord.Zones(Neck.Guitar)[1]);
    }

    /// <summary>What the definition says of zones in any tuning.</summary>
    private static void Obeys(ZoneAnswer zones, Hand hand)
    {
        if (zones.Count == 0)
        {
            var (root, on) = (zones.Query.Chord.Root, zones.Query.Neck);
            if (on.Capo >= on.Frets)
            {
                Assert.Equal(new NoZoneReason.NoFrets(on.Capo), zones.Reason);
                return;
            }

            for (var number = 1; number <= on.StringCount; number++)
            {
                for (var fret = on.OpenFret(number); fret <= on.Frets; fret++)
                {
                    Assert.NotEqual(root.PitchClass, on.MidiNumberAt(new(number, fret)) % 12);
                }
            }

            Assert.Equal(new NoZoneReason.RootNowhere(root, on.Capo, on.Frets), zones.Reason);
            return;
        }

        Assert.Null(zones.Reason);

        var (chord, neck) = (zones[0].Chord, zones[0].Neck);
        Assert.Equal(zones.OrderBy(zone => zone.Window.First).ThenBy(zone => zone.Window.Last), zones);
        foreach (var zone in zones)
        {
            var home = Math.Max(neck.Capo + 1, zone.Window.First);
            var span = BruteForce.Tip(neck, zone.Window.Last) - BruteForce.Tip(neck, home);
            Assert.True(span <= hand.IndexToLittle + Tolerance);
            var tones = Tones(neck, chord.Root, chord.Formula, zone.Window).Distinct().Order().ToArray();
            Assert.Equal(tones, zone.Shape.Places.Select(place => place.Pitch.MidiNumber));
            Assert.All(zone.Shape.Places, place => Assert.True(zone.Window.Contains(place.Position.Fret)));
            Assert.All(
                zone.Shape.Places,
                place => Assert.Equal(place.Pitch.MidiNumber, neck.MidiNumberAt(place.Position))
            );
            var between = Enumerable
                .Range(tones[0], tones[^1] - tones[0] + 1)
                .Where(midi => chord.Formula.At(midi - chord.Root.PitchClass) is not null)
                .Except(tones);
            Assert.Equal(between, zone.Shape.Missing.Select(pitch => pitch.MidiNumber));
            Assert.Equal(zone.Shape.Missing.Count == 0, zone.Shape.IsComplete);
        }

        // Every tone between the first and the last zone is in one.
        var (first, last) = (zones.Min(zone => zone.Window.First), zones.Max(zone => zone.Window.Last));
        for (var fret = first; fret <= last; fret++)
        {
            Assert.True(
                zones.Any(zone => zone.Window.Contains(fret))
                    || !Tones(neck, chord.Root, chord.Formula, new(fret, fret)).Any()
            );
        }

        // Between two neighbouring root frets lies a zone, where a complete window within reach holds both.
        var roots = Enumerable
            .Range(0, neck.Frets + 1)
            .Where(fret => Tones(neck, chord.Root, Formula.Parse("1"), new(fret, fret)).Any())
            .ToArray();
        foreach (var (lower, upper) in roots.Zip(roots.Skip(1)))
        {
            var holdsBoth = zones.Where(zone => zone.Window.Contains(lower) && zone.Window.Contains(upper)).ToArray();
            var windows = Windows(neck, hand, lower, upper)
                .Where(window => IsComplete(neck, chord, window))
                .Where(window =>
                    new WindowShapes(new(new HandOnNeck(neck, hand)), chord.Root, chord.Formula).In(window) is not null
                )
                .ToArray();
            Assert.True(windows.Length == 0 || holdsBoth.Length > 0, $"{chord} on {neck}: {lower} {upper}");
            if (windows.Any(window => roots.Count(window.Contains) == 2))
            {
                Assert.Contains(holdsBoth, zone => roots.Count(zone.Window.Contains) == 2);
            }
        }
    }

    private static bool IsComplete(Neck neck, Chord chord, Window window)
    {
        var tones = Tones(neck, chord.Root, chord.Formula, window).ToHashSet();
        return tones.Count > 0
            && Enumerable
                .Range(tones.Min(), tones.Max() - tones.Min() + 1)
                .All(midi => tones.Contains(midi) || chord.Formula.At(midi - chord.Root.PitchClass) is null);
    }

    private static IEnumerable<Window> Windows(Neck neck, Hand hand, int lower, int upper) =>
        from first in Enumerable.Range(neck.Capo, Math.Max(0, lower - neck.Capo + 1))
        from last in Enumerable.Range(upper, neck.Frets - upper + 1)
        let home = Math.Max(neck.Capo + 1, first)
        where last >= home && BruteForce.Tip(neck, last) - BruteForce.Tip(neck, home) <= hand.IndexToLittle
        select new Window(first, last);

    private static IEnumerable<int> Tones(Neck neck, NoteName root, Formula formula, Window window) =>
        from number in Enumerable.Range(1, neck.StringCount)
        from fret in Enumerable.Range(window.First, window.Width)
        where neck.Has(new(number, fret))
        let midi = neck.MidiNumberAt(new(number, fret))
        where formula.At(midi - root.PitchClass) is not null
        select midi;

    private static int LowerRootFret(Zone zone) =>
        Enumerable
            .Range(zone.Window.First, zone.Window.Width)
            .First(fret =>
                zone.Neck.Has(new(zone.Form.Lower[0], fret))
                && (zone.Neck.MidiNumberAt(new(zone.Form.Lower[0], fret)) - zone.Chord.Root.PitchClass) % 12 == 0
            );

    /// <summary>The least effort over every position and finger for each pitch of a window, and how many pitches there are.</summary>
    private static (double Effort, int Pitches) BestShape(
        Neck neck,
        Hand hand,
        NoteName root,
        Formula formula,
        Window window
    )
    {
        var home = Math.Max(neck.Capo + 1, window.First);
        var pitches = Tones(neck, root, formula, window).Distinct().Order().ToArray();
        if (home > window.Last || BruteForce.Tip(neck, window.Last) - BruteForce.Tip(neck, home) > hand.IndexToLittle)
        {
            return (double.PositiveInfinity, pitches.Length);
        }

        var query = new LineQuery
        {
            Neck = neck,
            Hand = hand,
            FirstPlace = home,
            LastPlace = home,
            Notes =
            [
                .. pitches.Select(midi =>
                    LineNote.Of(neck.PositionsOf(Pitch.FromMidi(midi)).Where(p => window.Contains(p.Fret)))
                ),
            ],
        };
        var states = query.Notes.Select(note => BruteForce.States(query, note)).ToArray();
        return (Least(0, null), pitches.Length);

        double Least(int index, FingeredNote? before) =>
            index == states.Length
                ? 0
                : states[index]
                    .Select(state =>
                        (before is { } last ? BruteForce.StepCost(query, last, state) : 0) is var step
                        && double.IsInfinity(step)
                            ? step
                            : step + BruteForce.NoteCost(query, state) + Least(index + 1, state)
                    )
                    .DefaultIfEmpty(double.PositiveInfinity)
                    .Min();
    }
}
