using TheoryKit.Fingering.Lines;
using TheoryKit.Fingering.Zones;
using TheoryKit.Paths.Exercises;
using TheoryKit.Tests.Fingering;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Paths.Exercises;

public class ZoneTravelTests
{
    private const double Tolerance = 1e-9;

    private static readonly ZoneAnswer Dm7 = Chord.Parse("Dm7").Zones(Neck.Guitar);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void NoOtherHingesCostLess(bool isDown) =>
        Gen.Select(
                FingeringGens.OneOf("Dm7", "Ebmaj7", "G", "A7sus4", "Bm7b5", "F13"),
                FingeringGens.OneOf("Standard", "DADGAD", "All fourths", "Ukulele"),
                FingeringGens.UsualHand,
                Gen.Int[0, 7],
                Gen.Int[2, 3]
            )
            .Sample(
                (symbol, tuning, hand, first, count) =>
                {
                    var neck = new Neck(Tuning.Find(tuning)!);
                    var zones = Chord.Parse(symbol).Zones(neck, hand).DistinctBy(zone => zone.Window).ToList();
                    zones = [.. zones.Skip(Math.Min(first, Math.Max(0, zones.Count - count))).Take(count)];
                    if (zones.Count == 0)
                    {
                        return;
                    }

                    var travel = ZoneTravel.Of(zones, isDown);
                    var own = LineSearch.Finger(neck, travel.Path.Notes.Select(note => note.Position), hand)[0];
                    Assert.Equal(own.Effort, travel.Effort, Tolerance);
                    if (isDown)
                    {
                        zones.Reverse();
                    }

                    var least = Every(zones, isDown)
                        .Select(line => LineSearch.Finger(neck, line, hand))
                        .Where(answer => answer.Count > 0)
                        .Min(answer => answer[0].Effort);
                    Assert.Equal(least, travel.Effort, Tolerance);
                },
                iter: 25
            );

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void EveryZoneIsPlayedThroughInOneDirectionAndVisitedInOrder(bool isDown)
    {
        var travel = ZoneTravel.Of(Dm7, isDown, accents: AccentPattern.Every(4));
        Assert.True(travel.Path.IsWholeBars);
        Assert.Equal(Dm7.Count - 1, travel.Hinges.Count);
        var windows = travel.Zones.Select(zone => zone.Window.First).ToList();
        Assert.Equal(isDown ? windows.OrderDescending() : windows.Order(), windows);
        var notes = travel.Path.Notes;
        Assert.Equal(travel.Zones[0].Chord.Root.PitchClass, notes[0].Pitch.PitchClass);
        Assert.Equal(travel.Zones[0].Chord.Root.PitchClass, notes[^1].Pitch.PitchClass);
        var first = notes.Take(travel.Hinges[0].Note).Select(each => each.Position).ToHashSet();
        Assert.All(travel.Zones[0].Shape.Places, place => Assert.Contains(place.Position, first));
        for (var hinge = 0; hinge < travel.Hinges.Count; hinge++)
        {
            var (note, from, to) = travel.Hinges[hinge];
            Assert.Equal((travel.Zones[hinge], travel.Zones[hinge + 1]), (from, to));
            Assert.Equal(to.Window, Assert.IsType<DrillReason.IntoZone>(notes[note].Why).Window);
            var until = hinge + 1 < travel.Hinges.Count ? travel.Hinges[hinge + 1].Note : notes.Count;
            var played = notes.Skip(note).Take(until - note).Select(each => each.Position).ToHashSet();
            Assert.All(to.Shape.Places, place => Assert.Contains(place.Position, played));
        }
    }

    [Fact]
    public void NoToneIsLostOnTheWay() =>
        FingeringGens
            .OneOf("Dm7", "Ebmaj7", "G7", "Cm9", "Bm7b5")
            .Sample(
                symbol =>
                {
                    var chord = Chord.Parse(symbol);
                    foreach (var isDown in (ReadOnlySpan<bool>)[false, true])
                    {
                        var pitches = ZoneTravel
                            .Of(chord.Zones(Neck.Guitar), isDown)
                            .Path.Notes.Select(note => note.Pitch.MidiNumber)
                            .ToList();
                        for (var index = 1; index < pitches.Count; index++)
                        {
                            var (low, high) = (
                                Math.Min(pitches[index - 1], pitches[index]),
                                Math.Max(pitches[index - 1], pitches[index])
                            );
                            Assert.True(low < high);
                            Assert.DoesNotContain(
                                Enumerable.Range(low + 1, high - low - 1),
                                between => chord.Formula.At(between - chord.Root.PitchClass) is not null
                            );
                        }
                    }
                },
                iter: 5
            );

    [Fact]
    public void OneZoneIsTheDrillUpAndDown() =>
        Assert.Equal(
            Dm7[2].Drill(Drill.UpAndDown, grips: false).Notes.Select(note => note.Position),
            ZoneTravel.Of([Dm7[2]]).Path.Notes.Select(note => note.Position)
        );

    [Fact]
    public void ZonesThatDoNotBelongTogetherAreRefused()
    {
        Assert.Throws<ArgumentException>(() => ZoneTravel.Of([]));
        Assert.Contains(
            "not of one chord",
            Assert
                .Throws<ArgumentException>(() => ZoneTravel.Of([Dm7[0], Chord.Parse("G7").Zones(Neck.Guitar)[0]]))
                .Message
        );
    }

    /// <summary>Every line there is: for each way from a zone to the next every tone after which it may change.</summary>
    private static IEnumerable<List<Position>> Every(List<Zone> zones, bool isDown)
    {
        var rising = zones.ConvertAll(zone => zone.Shape.Places.ToList());
        var roots = rising.ConvertAll(tones =>
            Math.Max(0, tones.FindIndex(tone => tone.Function.Simple == Degree.Root))
        );
        // The first zone from its root to one end, then to the other.
        var (below, above) = (rising[0].Take(roots[0]), rising[0].Skip(roots[0]));
        var start =
            isDown && zones.Count > 1
                ? rising[0].Skip(roots[0]).Take(1).Concat(below.Reverse()).Concat(rising[0].Skip(1))
                : above.Concat(Enumerable.Reverse(rising[0]).Skip(1));
        IEnumerable<List<Position>> lines =
        [
            [.. start.Select(place => place.Position)],
        ];
        for (var zone = 0; zone + 1 < zones.Count; zone++)
        {
            var from = isDown ? Enumerable.Reverse(rising[zone]).ToList() : rising[zone];
            var to = isDown ? Enumerable.Reverse(rising[zone + 1]).ToList() : rising[zone + 1];
            var back = Enumerable.Reverse(to).Skip(1).Select(place => place.Position).ToList();
            // At a turn the tone is there already.
            lines =
            [
                .. lines.SelectMany(line =>
                    Ways(from, to, isDown ? -1 : 1).Select(way => (List<Position>)[.. line, .. way.Skip(1), .. back])
                ),
            ];
        }

        // All down to the bottom (or up to the top) is played; back to the root.
        var (last, root) = (rising[^1].ConvertAll(place => place.Position), roots[^1]);
        return lines.Select(line =>
        {
            List<Position> end =
                isDown && zones.Count > 1
                    ? [.. Enumerable.Reverse(last.Skip(root)).Skip(1)]
                    : [.. last.Take(root + 1).Skip(1)];
            return (List<Position>)[.. line, .. end];
        });
    }

    private static List<List<Position>> Ways(List<Place> from, List<Place> to, int direction)
    {
        var ways = new List<(int Lost, List<Position> Way)>();
        for (var count = 1; count <= from.Count; count++)
        {
            var left = from.Take(count).ToList();
            var entered = to.Where(place => Sign(place, left[^1]) > 0).ToList();
            if (entered.Count == 0)
            {
                continue;
            }

            var played = left.Concat(entered).Select(place => place.Pitch.MidiNumber).ToHashSet();
            var all = from.Concat(to.Where(place => Sign(place, from[0]) > 0)).Select(place => place.Pitch.MidiNumber);
            ways.Add(
                (
                    all.Distinct().Count(pitch => !played.Contains(pitch)),
                    [.. left.Concat(entered).Select(place => place.Position)]
                )
            );
        }

        return ways.Count == 0
            ?
            [
                [.. from.Select(place => place.Position), to[^1].Position],
            ]
            : [.. ways.Where(way => way.Lost == ways.Min(each => each.Lost)).Select(way => way.Way)];

        int Sign(Place place, Place than) => Math.Sign(place.Pitch.MidiNumber - than.Pitch.MidiNumber) * direction;
    }
}
