using Fractions;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Fingering.Zones;
using TheoryKit.Paths.Routes;
using TheoryKit.Paths.Timing;
using TheoryKit.Paths.Words;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Paths.Routes;

public class RoutesTests
{
    private static readonly Changes NineTinBoats = Changes.Parse("4/4, F major: Gm9 | C13 | Fmaj9 | Dm7");
    private static readonly Changes KestrelStairs = Changes.Parse("3/4, Eb major: Ebmaj7 | Cm7 | Fm7 | Bb7");
    private static readonly Neck Small = new(Tuning.Parse("D3 G3 B3"), frets: 9);

    private static readonly Gen<Chord> SmallChords = OneOf("Gm7", "C7", "F", "Dm", "Bbmaj7", "E5", "A7sus4")
        .Select(static text => Chord.Parse(text));

    private static readonly Gen<RoutePlan> Plans = Gen.OneOf(
        Gen.Int[1, 3].Select(static least => (RoutePlan)new RoutePlan.Roam(least)),
        Gen.Select(Gen.Int[0, 9], Gen.Int[0, 9], static (from, goal) => (RoutePlan)new RoutePlan.Climb(from, goal)),
        Gen.Int[0, 6].Select(static first => (RoutePlan)new RoutePlan.Stay(new Window(first, first + 3)))
    );

    private static readonly Gen<IReadOnlyList<int>> Targets = OneOf<IReadOnlyList<int>>([], [], [3], [3, 7]);

    private static readonly Gen<RouteQuery> SmallQueries = Gen.Select(
        SmallChords.Array[2, 3],
        Plans,
        Targets,
        Gen.Int[1, 5],
        Gen.Int[1, 6],
        static (chords, plan, targets, notes, best) =>
            new RouteQuery
            {
                Changes = new(chords.Select(static chord => Bar.Of(4, [chord]))),
                Neck = Small,
                Plan = plan,
                Targets = targets,
                NotesPerChord = notes,
                Best = best,
            }
    );

    private static readonly Gen<RouteQuery> Queries = Gen.Select(
        OneOf(NineTinBoats, KestrelStairs, Changes.Parse("Am7 D7 | Gmaj7 N.C. | G6 | %")),
        Gen.OneOf(
            Gen.Int[1, 4].Select(static least => (RoutePlan)new RoutePlan.Roam(least)),
            Gen.Select(
                Gen.Int[1, 12],
                Gen.Int[1, 12],
                static (from, goal) => (RoutePlan)new RoutePlan.Climb(from, goal) { By = 1 }
            ),
            Gen.Const((RoutePlan)new RoutePlan.Stay())
        ),
        Targets,
        OneOf<string?>(null, "1/2", "3/2> 1/2 r1 1/3 1/3 1/3"),
        Gen.Bool,
        OneOf(Fraction.Zero, new Fraction(1, 2)),
        Gen.Int[1, 2],
        static (changes, plan, targets, rhythm, triads, ahead, times) =>
            new RouteQuery
            {
                Changes = changes,
                Neck = Neck.Guitar,
                Plan = plan,
                Targets = targets,
                Rhythm = rhythm is null ? null : Rhythm.Parse(rhythm),
                UpperTriads = triads,
                Anticipation = ahead,
                Times = times,
                Best = 2,
            }
    );

    [Fact]
    public void The_best_routes_are_those_of_trying_everything() =>
        SmallQueries.Sample(
            static query =>
            {
                var hand = new LineSolver(new(query.Neck, query.Hand));
                var all = RouteBruteForce.All(
                    query,
                    chord =>
                        query.Plan is RoutePlan.Stay { Place: { } place }
                            ? new WindowShapes(hand, chord.Root, chord.Formula).In(place) is { } shape
                                ? [(place, shape)]
                                : []
                            : chord
                                .Zones(query.Neck, query.Hand)
                                .Select(static zone => (zone.Window, zone.Shape))
                                .DistinctBy(static each => each.Window)
                );
                var answer = RouteSearch.Find(query);
                Assert.Equal(Math.Min(query.Best, all.Count), answer.Count);
                Assert.Equal(answer.Count == 0, answer.Reason is not null);
                var least = all.Values.Order().Take(answer.Count).ToList();
                var keys = answer.Select(KeyOf).ToList();
                Assert.Equal(keys.Distinct(), keys);
                for (var index = 0; index < answer.Count; index++)
                {
                    Assert.Equal(least[index], answer[index].Cost.Total, 1e-4);
                    Assert.Equal(all[keys[index]], answer[index].Cost.Total, 1e-4);
                }
            },
            iter: 60
        );

    [Fact]
    public void Every_note_lies_in_its_chords_shape_and_time_is_exact() =>
        Queries.Sample(
            static query =>
            {
                foreach (var route in RouteSearch.Find(query))
                {
                    Holds(query, route);
                }
            },
            iter: 40
        );

    [Fact]
    public void The_same_question_has_the_same_answer() =>
        Queries.Sample(static query => Assert.Equal(RouteSearch.Find(query), RouteSearch.Find(query)), iter: 10);

    [Fact]
    public void A_climb_goes_on_and_arrives()
    {
        foreach (var (from, goal) in new[] { (3, 12), (12, 2) })
        {
            var answer = RouteSearch.Find(
                new()
                {
                    Changes = NineTinBoats,
                    Neck = Neck.Guitar,
                    Plan = new RoutePlan.Climb(from, goal) { By = 2 },
                    Times = 3,
                    Best = 5,
                }
            );
            Assert.Equal(5, answer.Count);
            foreach (var route in answer)
            {
                var homes = route.Stops.Select(static stop => Math.Max(1, stop.Window.First)).ToList();
                Assert.Equal(goal > from ? homes.Order() : homes.OrderDescending(), homes);
                Assert.True(route.Stops[0].Window.Contains(from));
                Assert.All(route.Stops.Skip(7), stop => Assert.True(stop.Window.Contains(goal)));
                Assert.True(route.Windows.Count >= 4, $"{route}");
            }
        }
    }

    [Fact]
    public void A_route_that_stays_has_one_window_where_every_shape_is_complete()
    {
        var route = RouteSearch.Find(
            new()
            {
                Changes = KestrelStairs,
                Neck = Neck.Guitar,
                Plan = new RoutePlan.Stay(),
                Times = 4,
            }
        )[0];
        Assert.Single(route.Windows);
        Assert.Equal(0, route.Moves);
        Assert.Equal(0, route.Cost.Shifts);
        Assert.All(route.Stops, static stop => Assert.True(stop.Shape.IsComplete));
    }

    [Fact]
    public void More_zones_asked_for_cost_no_less()
    {
        var costs = Enumerable
            .Range(1, 5)
            .Select(static least =>
            {
                var route = RouteSearch.Find(
                    new()
                    {
                        Changes = NineTinBoats,
                        Neck = Neck.Guitar,
                        Plan = new RoutePlan.Roam(least),
                        Times = 2,
                    }
                )[0];
                Assert.True(route.Windows.Count >= least);
                return route.Cost.Total;
            })
            .ToList();
        Assert.Equal(costs.Order(), costs);
    }

    [Fact]
    public void An_anticipated_third_sounds_before_its_chord()
    {
        var half = new Fraction(1, 2);
        var route = RouteSearch.Find(
            new()
            {
                Changes = NineTinBoats,
                Neck = Neck.Guitar,
                Targets = [3],
                Anticipation = half,
            }
        )[0];
        Assert.Equal(31 - 3 + 1, route.Path.Notes.Count); // each anticipation takes the place of the note before it
        foreach (var bar in new[] { 4, 8, 12 })
        {
            var note = route.Path.Notes.Single(note => note.Start == bar - half);
            Assert.Equal(1, note.Length);
            Assert.Equal(3, NineTinBoats.At(bar).Chord!.DegreeOf(note.Pitch.Name).Number);
            Assert.Equal(half, Assert.IsType<RouteReason.Anticipates>(note.Why).Ahead);
        }
    }

    [Theory]
    [InlineData("Gm7 | C7sus4", "Chord 2, C7sus4, can't start on 3: no shape of it has such a tone.")]
    [InlineData("N.C.", "No chord gets a note.")]
    public void Where_there_is_no_route_the_answer_says_why(string changes, string reason)
    {
        var answer = RouteSearch.Find(
            new()
            {
                Changes = Changes.Parse(changes),
                Neck = Neck.Guitar,
                Targets = [3],
            }
        );
        Assert.Empty(answer);
        Assert.Equal(reason, answer.Reason?.InWords());
    }

    [Fact]
    public void More_zones_than_chords_are_no_route()
    {
        var answer = RouteSearch.Find(
            new()
            {
                Changes = Changes.Parse("Gm7 | C7"),
                Neck = Neck.Guitar,
                Plan = new RoutePlan.Roam(3),
            }
        );
        Assert.Equal(new NoRouteReason.TooFewWindows(3, 2), answer.Reason);
    }

    [Fact]
    public void What_can_not_be_asked_is_refused()
    {
        var query = new RouteQuery { Changes = NineTinBoats, Neck = Neck.Guitar };
        Assert.Throws<ArgumentOutOfRangeException>(() => query with { NotesPerChord = 0 });
        Assert.Throws<ArgumentOutOfRangeException>(() => query with { Targets = [0] });
        Assert.Throws<ArgumentOutOfRangeException>(() => query with { Anticipation = -1 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new RoutePlan.Roam(9));
        Assert.Throws<ArgumentOutOfRangeException>(() => new RoutePlan.Climb(1, 2) { By = 0 });
        Assert.Throws<ArgumentException>(() => RouteSearch.Find(query with { Plan = new RoutePlan.Climb(1, 23) }));
        Assert.Throws<ArgumentException>(() =>
            RouteSearch.Find(query with { Plan = new RoutePlan.Climb(1, 9) { By = 2 } })
        );
        Assert.Throws<ArgumentException>(() => RouteSearch.Find(query with { Anticipation = 4 }));
    }

    [Fact]
    public void Questions_are_equal_when_all_settings_are()
    {
        RouteQuery Query() =>
            new()
            {
                Changes = Changes.Parse("Gm7 | C7"),
                Neck = Neck.Guitar,
                Targets = [7, 3],
                Plan = new RoutePlan.Climb(3, 8),
            };
        Assert.Equal(Query(), Query());
        Assert.NotEqual(Query(), Query() with { UpperTriads = true });
    }

    private static Gen<T> OneOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(index => values[index]);

    private static string KeyOf(Route route) =>
        RouteBruteForce.Key(
            route.Stops.Select(static stop => stop.Window),
            route.Path.Notes.Select(static note => note.Position.ToString())
        );

    /// <summary>What every route holds to, checked note by note.</summary>
    private static void Holds(RouteQuery query, Route route)
    {
        Assert.Equal((Fraction)(query.Changes.Beats * query.Times), route.Path.Beats);
        Assert.Equal(route.Path.Notes.Count, route.Stops.Sum(static stop => stop.Notes));
        for (var index = 1; index < route.Path.Notes.Count; index++)
        {
            Assert.True(route.Path.Notes[index - 1].End <= route.Path.Notes[index].Start);
        }

        if (query.Rhythm is null && query.Anticipation == Fraction.Zero)
        {
            foreach (var stop in route.Stops)
            {
                var lengths = route
                    .Path.Notes.Where(note => note.Start >= stop.Span.Start && note.Start < stop.Span.End)
                    .Select(static note => note.Length);
                Assert.Equal(stop.Span.Length, lengths.Aggregate(Fraction.Zero, static (sum, each) => sum + each));
            }
        }

        var at = 0;
        foreach (var stop in route.Stops)
        {
            var notes = route.Path.Notes.Skip(at).Take(stop.Notes).ToList();
            at += stop.Notes;
            Assert.Equal(stop.Entry.Place.Position, notes[0].Position);
            Assert.True(query.Targets.Count == 0 || query.Targets.Contains(stop.Entry.Place.Function.Number));
            var order = new List<int>();
            foreach (var note in notes)
            {
                var tone = stop.Shape.Notes.Single(tone => tone.Place.Position == note.Position);
                order.Add(stop.Shape.Notes.ToList().IndexOf(tone));
                Assert.Equal((tone.Place.Pitch, tone.Finger), (note.Pitch, note.Finger));
                Assert.True(stop.Window.Contains(note.Position.Fret));
                Assert.True(stop.Chord.PitchClasses.Contains(note.Pitch.PitchClass));
                if (stop.Triad is { } triad)
                {
                    Assert.NotEqual(0, triad.On.PitchClass);
                    Assert.True(triad.Over(stop.Chord.Root).PitchClasses.Contains(note.Pitch.PitchClass));
                }
            }

            for (var index = 1; index < order.Count; index++)
            {
                Assert.Equal(stop.Shape.Notes.Count == 1 ? 0 : 1, Math.Abs(order[index] - order[index - 1]));
                Assert.False(
                    index > 1
                        && order[index] == order[index - 2]
                        && order[index - 1] > 0
                        && order[index - 1] < stop.Shape.Notes.Count - 1,
                    "A line turns only at the last tone of a shape."
                );
            }
        }

        Assert.All(route.Stops, stop => Assert.Equal(query.UpperTriads, stop.Triad is not null));
    }
}
