using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Fingering.Zones;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Strings;

namespace TheoryKit.Tests.Fingering.Retuning;

public class TuningComparisonTests
{
    private const double Tolerance = 1e-9;

    private static readonly IReadOnlyList<Chord> CopperWeather = Chord.ParseList("Dadd9 Bm7 Gmaj7 A7sus4");

    private static readonly Tuning[] Four =
    [
        Tuning.Standard,
        Tuning.Find("DADGAD")!,
        Tuning.Find("Open D")!,
        Tuning.Find("Double drop D")!,
    ];

    private static readonly TuningComparison Comparison = TuningComparison.Of(Neck.Guitar, Four, CopperWeather);

    [Fact]
    public void NoNeckAndNoChordIsNull()
    {
        Assert.Throws<ArgumentException>(() => TuningComparison.Of([Neck.Guitar], [null!]));
        Assert.Throws<ArgumentException>(() => TuningComparison.Of([null!], [Chord.Parse("D")]));
    }

    [Fact]
    public void Grips_are_all_that_a_plain_search_finds()
    {
        var neck = FingeringGens.Neck(3, 4, 3, 8);
        Gen.Select(neck, neck, FingeringGens.SmallChord, FingeringGens.SmallChord, FingeringGens.UsualHand, Gen.Bool)
            .Sample(
                (first, second, one, other, hand, anyBass) =>
                {
                    var limits = new GripLimits { AnyBass = anyBass, InnerMutes = true };
                    var comparison = TuningComparison.Of([first, second], [one, other], hand, limits);
                    foreach (var column in comparison.Columns)
                    {
                        var shapes = new HashSet<string>();
                        foreach (var cell in column.Cells)
                        {
                            var expected = BruteForce.Grips(limits.For(cell.Chord, cell.Neck, hand));
                            Assert.Equal(expected.Count, cell.Count);
                            var moved = expected.Keys.Select(key => Moved(cell.Neck, key)).ToHashSet();
                            Assert.Equal(moved.Count, cell.DistinctShapes);
                            shapes.UnionWith(moved);
                            if (expected.Count == 0)
                            {
                                Assert.Null(cell.LeastEffort);
                                Assert.Null(cell.OpenStringsInUse);
                                Assert.NotNull(cell.Grips.Reason);
                                continue;
                            }

                            Assert.Equal(expected.Values.Min(), cell.LeastEffort!.Value, Tolerance);
                            var best = BruteForce.Key(cell.Best!.Grip);
                            Assert.Equal(expected.Values.Min(), expected[best], Tolerance);
                            Assert.Equal(
                                Moved(cell.Neck, best).Split(' ').Count(text => text == "o"),
                                cell.OpenStringsInUse
                            );
                        }

                        Assert.Equal(shapes.Count, column.DistinctShapes);
                        Assert.Equal(column.Cells.Sum(cell => cell.Count), column.Count);
                        Assert.Equal(column.Cells.Count(cell => cell.Count > 0), column.Playable);
                        Assert.Equal(column.Playable == 2, column.LeastEffort is not null);
                    }
                },
                iter: 60
            );
    }

    [Fact]
    public void Zones_are_those_of_the_chord()
    {
        foreach (var cell in Comparison.Columns.SelectMany(column => column.Cells))
        {
            var zones = cell.Chord.Zones(cell.Neck, Hand.Average);
            Assert.Equal(zones, cell.Zones);
            Assert.Equal(zones.Count(zone => zone.Shape.Missing.Count == 0), cell.CompleteZones);
        }

        var column = Comparison.Columns[1];
        Assert.Equal(column.Cells.Sum(cell => cell.Zones.Count), column.Zones);
        Assert.Equal(column.Cells.Sum(cell => cell.CompleteZones), column.CompleteZones);
    }

    [Fact]
    public void The_layout_of_any_two_necks_is_plain_arithmetic()
    {
        var neck = FingeringGens.Neck(3, 8, 6, 24);
        Gen.Select(neck, neck)
            .Sample(
                (first, second) =>
                {
                    var comparison = TuningComparison.Of([first, second], [CopperWeather[0]]);
                    foreach (var column in comparison.Columns)
                    {
                        var strings = Enumerable.Range(1, column.Neck.StringCount).ToArray();
                        // What each string sounds open: as tuned, and a semitone for each fret that the capo lies beyond its start.
                        var open = strings.ToDictionary(
                            number => number,
                            number =>
                                column.Neck.Tuning[number].Open.MidiNumber
                                + Math.Max(0, column.Neck.Capo - column.Neck.Tuning[number].Start)
                        );
                        var last = strings.Max(number =>
                            column.Neck.Tuning[number].Open.MidiNumber
                            + column.Neck.Frets
                            - column.Neck.Tuning[number].Start
                        );
                        Assert.Equal(open.Values, column.OpenPitches.Select(pitch => pitch.MidiNumber));
                        Assert.Equal(open.Values.Min(), column.Lowest.MidiNumber);
                        Assert.Equal(last, column.Highest.MidiNumber);
                        Assert.Equal(last - open.Values.Min(), column.Range);
                        Assert.Equal(
                            strings
                                .Skip(1)
                                .Reverse()
                                .Select(number =>
                                    column.Neck.Tuning[number - 1].Open.MidiNumber
                                    - column.Neck.Tuning[number].Open.MidiNumber
                                ),
                            column.OpenIntervals.Select(interval => interval.Semitones)
                        );
                        Assert.Equal(Pairs(open, 1000), Pairs(column.Unisons));
                        Assert.Equal(Pairs(open, 12), Pairs(column.Doublings));
                    }

                    Assert.Equal(0, comparison.Columns[0].RetuneDistance);
                    var isRetunable =
                        first.StringCount == second.StringCount
                        && Enumerable
                            .Range(1, first.StringCount)
                            .All(number => first.Tuning[number].Start == second.Tuning[number].Start);
                    var retuned = comparison.Columns[1].Retuned;
                    Assert.Equal(isRetunable, retuned is not null);
                    for (var number = 1; number <= retuned?.Count; number++)
                    {
                        Assert.Equal(
                            second.Tuning[number].Open.MidiNumber,
                            first.Tuning[number].Open.MidiNumber + retuned[number - 1]
                        );
                    }

                    Assert.Equal(
                        retuned?.Where(step => step > 0).Sum() - retuned?.Where(step => step < 0).Sum(),
                        comparison.Columns[1].RetuneDistance
                    );
                }
            );
    }

    [Fact]
    public void DADGAD_is_three_strings_a_whole_tone_down_and_doubles_two_notes()
    {
        var column = Comparison.Columns[1];
        Assert.Equal("DADGAD", column.Name);
        Assert.Equal([-2, -2, 0, 0, 0, -2], column.Retuned);
        Assert.Equal(6, column.RetuneDistance);
        Assert.Equal("P5 P4 P4 M2 P4", string.Join(' ', column.OpenIntervals));
        Assert.Empty(column.Unisons);
        Assert.Equal(["6 4 1", "5 2"], column.Doublings.Select(group => string.Join(' ', group)));
        Assert.Equal("D2 to C6", $"{column.Lowest} to {column.Highest}");
    }

    [Fact]
    public void Unisons_are_strings_of_the_same_pitch()
    {
        var column = TuningComparison.Of(Neck.Guitar, [Tuning.Parse("D2 A2 A2 F#3 G#3 Ab3")], CopperWeather).Columns[0];
        Assert.Equal(["5 4", "2 1"], column.Unisons.Select(group => string.Join(' ', group)));
        Assert.Equal(["5 4", "2 1"], column.Doublings.Select(group => string.Join(' ', group)));
    }

    [Fact]
    public void A_shape_found_again_an_octave_up_counts_once()
    {
        // Four drop 2 grips on four strings up the octave, the first of them again at fret 13, and one close grip.
        var limits = new GripLimits
        {
            Strings = new HashSet<int> { 1, 2, 3, 4 },
            AllStrings = true,
            AnyBass = true,
            Optional = Formula.Empty,
            OpenStrings = OpenStrings.None,
            LastFret = 13,
        };
        var column = TuningComparison.Of([Neck.Guitar], [Chord.Parse("Fm7")], null, limits).Columns[0];
        Assert.Equal(6, column.Count);
        Assert.Equal(5, column.DistinctShapes);
    }

    [Fact]
    public void Names_tell_columns_apart()
    {
        var comparison = TuningComparison.Of(
            [
                Neck.Guitar,
                Neck.Guitar.WithCapo(2),
                Neck.Parse("D2 A2 D3 G3 A3 D4, 628 mm"),
                Neck.Parse("D2 A2 D3 G3 A3 D4, 24 frets"),
                Neck.Parse("Db2 A2 D3 F#3 A3 E4"),
                new(Tuning.Find("Drop C#")!),
            ],
            CopperWeather
        );
        Assert.Equal(
            [
                "Standard",
                "Standard, capo 2",
                "DADGAD, 628 mm, 22 frets",
                "DADGAD, 648 mm, 24 frets",
                "Db2 A2 D3 F#3 A3 E4",
                "Drop C#",
            ],
            comparison.Columns.Select(column => column.Name)
        );
        Assert.Equal("D♭2 A2 D3 F♯3 A3 E4", comparison.Columns[4].ToString("P"));
        Assert.Equal("Drop C♯", comparison.Columns[5].ToString("P"));
    }

    [Fact]
    public void A_chord_without_a_grip_has_no_effort_and_leaves_the_sum_open()
    {
        var bass = new Neck(Tuning.Parse("E1 E2 E3"), frets: 3);
        var comparison = TuningComparison.Of([Neck.Guitar, bass], CopperWeather);
        var column = comparison.Columns[1];
        Assert.Equal(0, column.Playable);
        Assert.Null(column.LeastEffort);
        Assert.Null(column.Retuned);
        Assert.Null(column.RetuneDistance);
        Assert.Equal(0, column.OpenStringsInUse);
        Assert.NotEmpty(column.Cells[0].ToString());
    }

    [Fact]
    public void Comparisons_of_the_same_are_equal()
    {
        var same = TuningComparison.Of(Four.Select(tuning => new Neck(tuning)), CopperWeather, Hand.Average);
        Assert.Equal(Comparison, same);
        Assert.Equal(Comparison.GetHashCode(), same.GetHashCode());
        Assert.Equal(Comparison.Columns[2], same.Columns[2]);
        Assert.Equal(Comparison.Columns[2].GetHashCode(), same.Columns[2].GetHashCode());
        Assert.Equal(Comparison.Columns[2].Cells[1], same.Columns[2].Cells[1]);
        Assert.NotEqual(Comparison.Columns[2], Comparison.Columns[1]);
        Assert.NotEqual(Comparison, TuningComparison.Of(Neck.Guitar, Four, CopperWeather, Hand.Small));
        Assert.NotEqual(Comparison, TuningComparison.Of(Neck.Guitar, Four.Reverse(), CopperWeather));
        Assert.NotEqual(Comparison, TuningComparison.Of(Neck.Guitar, Four, CopperWeather.Take(2)));
        Assert.NotEqual(
            Comparison,
            TuningComparison.Of(Neck.Guitar, Four, CopperWeather, null, new() { AnyBass = true })
        );
    }

    [Fact]
    public void Tensions_are_those_of_each_neck_against_the_tuning_of_the_first()
    {
        var strings = StringSet.Find("Light electric 10-46")!;
        var comparison = TuningComparison.Of(Neck.Guitar, Four, CopperWeather, strings: strings);
        Assert.All(Comparison.Columns, column => Assert.Null(column.Tensions));
        foreach (var column in comparison.Columns)
        {
            Assert.Equal(column.Neck.Tensions(strings, Tuning.Standard), column.Tensions);
            foreach (var each in column.Tensions!.Strings)
            {
                // Tension goes with the square of the frequency: by a semitone with the sixth root of two.
                var before = each.Tension.Newtons / Math.Pow(2, column.Retuned![each.Number - 1] / 6.0);
                Assert.Equal(each.Tension.Newtons - before, each.Change!.Value.Newtons, Tolerance);
            }
        }

        // 0.010 in of 7850 kg/m3 at E4 on 648 mm, worked by hand.
        Assert.Equal(72.6, comparison.Columns[0].Tensions!.Strings[0].Tension.Newtons, 0.05);
        Assert.NotEqual(Comparison, comparison);
        Assert.Equal(comparison, TuningComparison.Of(Neck.Guitar, Four, CopperWeather, strings: strings));
        var limits = new TensionLimits(new(50), new(60), 0.5);
        var strict = TuningComparison.Of(Neck.Guitar, Four, CopperWeather, strings: strings, tensionLimits: limits);
        Assert.NotEqual(comparison, strict);
        Assert.Equal(limits, strict.Columns[3].Tensions!.Limits);
    }

    [Fact]
    public void Where_no_retuning_leads_tensions_have_no_change()
    {
        var strings = StringSet.Find("Light banjo 9-20")!;
        var banjo = new Neck(Tuning.Find("Banjo")!, 667);
        var nut = banjo.With(Tuning.Parse("G3 D3 G3 B3 D4"));
        var comparison = TuningComparison.Of([banjo, nut], CopperWeather, strings: strings);
        Assert.NotNull(comparison.Columns[0].Tensions!.TotalChange);
        Assert.Null(comparison.Columns[1].Tensions!.TotalChange);
    }

    [Fact]
    public void Nonsense_is_refused()
    {
        var neck = Assert.Throws<ArgumentException>(() => TuningComparison.Of([], CopperWeather));
        Assert.Contains("no tuning to compare", neck.Message, StringComparison.Ordinal);
        var chord = Assert.Throws<ArgumentException>(() => TuningComparison.Of([Neck.Guitar], []));
        Assert.Contains("no chord", chord.Message, StringComparison.Ordinal);
        var strings = StringSet.Find("Bass 45-105");
        var set = Assert.Throws<ArgumentException>(() =>
            TuningComparison.Of(Neck.Guitar, Four, CopperWeather, strings: strings)
        );
        Assert.Contains("The set has 4 strings, the neck 6", set.Message, StringComparison.Ordinal);
        var limits = new GripLimits { Strings = new HashSet<int> { 5 } };
        var bass = new Neck(Tuning.Find("Bass")!);
        Assert.Throws<ArgumentException>(() => TuningComparison.Of([Neck.Guitar, bass], CopperWeather, null, limits));
    }

    /// <summary>A grip's frets counted from the lowest held one, open strings kept.</summary>
    private static string Moved(Neck neck, string key)
    {
        var frets = key.Split(' ');
        var held = frets.Select((text, index) => text != "x" && int.Parse(text) > neck.OpenFret(index + 1)).ToArray();
        var lowest = frets.Where((_, index) => held[index]).Select(int.Parse).DefaultIfEmpty().Min();
        return string.Join(
            ' ',
            frets.Select(
                (text, index) =>
                    text == "x" ? text
                    : held[index] ? $"{int.Parse(text) - lowest}"
                    : "o"
            )
        );
    }

    /// <summary>Every two strings whose sounds differ by a multiple of so many semitones, the higher number first.</summary>
    private static IEnumerable<(int, int)> Pairs(Dictionary<int, int> open, int period) =>
        from one in open.Keys
        from other in open.Keys
        where one > other && (open[one] - open[other]) % period == 0
        orderby one, other
        select (one, other);

    private static IEnumerable<(int, int)> Pairs(IReadOnlyList<IReadOnlyList<int>> groups) =>
        from pair in (
            from strings in groups
            from one in strings
            from other in strings
            where one > other
            select (one, other)
        )
        orderby pair.one, pair.other
        select pair;
}
