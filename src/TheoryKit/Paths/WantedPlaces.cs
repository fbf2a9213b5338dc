using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Paths;

/// <summary>Where moved notes are played: string and fret of each, and fingers where the hand was asked.</summary>
internal sealed record PlacedNotes(IReadOnlyList<Position> Positions, IReadOnlyList<Finger?>? Fingers);

/// <summary>Finds places for moved notes.</summary>
/// <remarks>
/// <para>A line of one note at a time goes to the solver of lines, exact over strings, frets, fingers and places of the hand. Notes that sound on
/// from one another (hammered, pulled off, slid to, released) are a run: the solver keeps every run on one string where some string has all of its
/// notes, as far as it has them otherwise.</para>
/// <para>Notes that sound together go through a search of their own, exact over strings and the place of a hand that spans four frets:
/// a note costs what the hand has to shift for it, what it spreads beyond four frets from others that sound, and a little for each string
/// crossed. Open strings cost nothing. It follows at most <see cref="MostWays"/> ways at once, the best ones.</para>
/// </remarks>
internal sealed class WantedPlaces(Neck neck, Hand hand, IReadOnlyList<WantedNote> wanted)
{
    /// <summary>How many ways the search for chords follows at once.</summary>
    public const int MostWays = 3000;

    /// <summary>How many frets outside a note of a run may lie, so that the run is kept on one string.</summary>
    public const int Farther = 2;

    private const int Span = 3; // from the hand's place to the farthest fret in reach

    /// <summary>How many frets a position is outside of where the notes are to be; 0 unless told.</summary>
    public Func<Position, int> Outside { get; init; } = static _ => 0;

    /// <summary>The place that the hand would rather keep to; null for none.</summary>
    public int? Preferred { get; init; }

    /// <summary>The one place of a note that is not to move; null where it may.</summary>
    public Func<int, Position?> Fixed { get; init; } = static _ => null;

    /// <summary>Whether two of the notes sound at once.</summary>
    public bool IsTogether => Overlapping(wanted);

    public static bool Overlapping(IReadOnlyList<WantedNote> wanted)
    {
        var end = Fractions.Fraction.Zero;
        foreach (var each in wanted.OrderBy(static each => each.Note.Start))
        {
            if (each.Note.Start < end)
            {
                return true;
            }

            end = each.Note.End;
        }

        return false;
    }

    /// <summary>
    /// Places for all notes but those left out, the least effort; null where there are none, which is only so where notes sound together.
    /// </summary>
    /// <param name="stuck">The first note that has no place beside the others; -1 where all have one.</param>
    public PlacedNotes? Find(out int stuck)
    {
        stuck = -1;
        var all = wanted.Select((each, index) => Fixed(index) is { } place ? [place] : each.Places(neck)).ToList();
        var (candidates, stays) = Candidates(all);
        if (!IsTogether)
        {
            // First as asked; then anywhere; then as far as no hand is asked for.
            if (Solve(candidates, stays) is { } found)
            {
                return found;
            }

            if (
                candidates.Where((each, index) => each.Count < all[index].Count).Any() && Solve(all, stays) is { } wider
            )
            {
                return wider;
            }
        }

        return Search(candidates, stays, out _)
            ?? Search(all, stays, out _)
            ?? Search(all, new bool[wanted.Count], out stuck);
    }

    /// <summary>Fingers for positions, where the hand can hold them; null where it can't.</summary>
    public static IReadOnlyList<Finger?>? Fingers(
        Neck neck,
        Hand hand,
        IReadOnlyList<WantedNote> wanted,
        IReadOnlyList<Position> positions
    )
    {
        // A solver's line is in the order of time; what starts together from the thickest string on.
        var order = Enumerable
            .Range(0, positions.Count)
            .Where(index => !wanted[index].IsLeftOut)
            .OrderBy(index => wanted[index].Note.Start)
            .ThenByDescending(index => positions[index].String)
            .ToList();
        var notes = new List<LineNote>(order.Count);
        for (var at = 0; at < order.Count; at++)
        {
            var rings = 0;
            while (
                at + rings + 1 < order.Count && wanted[order[at + rings + 1]].Note.Start < wanted[order[at]].Note.End
            )
            {
                rings++;
            }

            notes.Add(LineNote.At(positions[order[at]]) with { Rings = rings });
        }

        var answer = LineSearch.Find(
            new()
            {
                Neck = neck,
                Hand = hand,
                Notes = notes,
            }
        );
        if (answer.Count == 0)
        {
            return null;
        }

        var fingers = new Finger?[positions.Count];
        for (var at = 0; at < order.Count; at++)
        {
            fingers[order[at]] = answer[0][at].Finger;
        }

        return fingers;
    }

    /// <summary>Of a line, which notes stay on the string of the one before: those that sound on from it, as far as some string has the run.</summary>
    public static bool[] StayOnString(IReadOnlyList<WantedNote> wanted, IReadOnlyList<List<Position>> places)
    {
        var stays = new bool[wanted.Count];
        var strings = new HashSet<int>();
        for (var index = 0; index < stays.Length; index++)
        {
            var here = places[index].Select(static each => each.String).ToHashSet();
            stays[index] = index > 0 && wanted[index].Before == index - 1 && strings.Overlaps(here);
            if (stays[index])
            {
                strings.IntersectWith(here);
            }
            else
            {
                strings = here;
            }
        }

        return stays;
    }

    /// <summary>
    /// For each note where it may be played: inside where it can be, on strings that keep its run together; and whether it stays on the
    /// string of the note it is joined to.
    /// </summary>
    private (List<List<Position>> Candidates, bool[] Stays) Candidates(List<List<Position>> all)
    {
        var candidates = all.ToList();
        var stays = new bool[all.Count];
        var runs = new List<List<int>>();
        var runOf = new Dictionary<int, List<int>>();
        for (var index = 0; index < all.Count; index++)
        {
            if (
                wanted[index].Before is { } before
                && runOf.TryGetValue(before, out var run)
                && run[^1] == before
                && Strings([.. run, index]).Count > 0
            )
            {
                run.Add(index);
                stays[index] = true;
            }
            else
            {
                runs.Add(run = [index]);
            }

            runOf[index] = run;
        }

        foreach (var run in runs)
        {
            var strings = Strings(run);
            if (strings.Count == 0)
            {
                continue; // a note that lies nowhere
            }

            (int Count, int Frets) Cost(int number)
            {
                var outside = run.Select(index => all[index].Where(each => each.String == number).Min(Outside))
                    .ToList();
                return (outside.Count(static frets => frets > 0), outside.Sum());
            }

            var least = strings.Min(Cost);
            var best = strings.Where(number => Cost(number) == least).ToHashSet();
            foreach (var index in run)
            {
                var here = all[index].FindAll(each => best.Contains(each.String));
                candidates[index] =
                [
                    .. here.Where(each =>
                        Outside(each) == here.Where(other => other.String == each.String).Min(Outside)
                    ),
                ];
            }
        }

        return (candidates, stays);

        List<int> Strings(List<int> run) =>
            [
                .. Enumerable
                    .Range(1, neck.StringCount)
                    .Where(number =>
                        run.TrueForAll(index =>
                            all[index].Exists(each => each.String == number && (run.Count == 1 || IsNear(each, index)))
                        )
                    ),
            ];

        // A run may leave where it is to be by a little, and by no more than its notes have to anyway.
        bool IsNear(Position position, int index) => Outside(position) <= Math.Max(Farther, all[index].Min(Outside));
    }

    private PlacedNotes? Solve(List<List<Position>> candidates, bool[] stays)
    {
        if (candidates.Exists(static each => each.Count == 0))
        {
            return null;
        }

        var answer = LineSearch.Find(
            new()
            {
                Neck = neck,
                Hand = hand,
                PreferredPlace = Preferred,
                Notes =
                [
                    .. candidates.Select(
                        (each, index) =>
                            LineNote.Of(each) with
                            {
                                StaysOnString = stays[index] && wanted[index].Before == index - 1,
                            }
                    ),
                ],
            }
        );
        return answer.Count == 0
            ? null
            : new(
                [.. answer[0].Select(static note => note.Position)],
                [.. answer[0].Select(static note => note.Finger)]
            );
    }

    /// <summary>A way so far: the hand's place, and where the notes that still matter lie.</summary>
    private sealed record Way(double Cost, int Place, Way? From, Position Position)
    {
        public IReadOnlyList<(int Note, Position Position)> Sounding { get; init; } = [];
    }

    private PlacedNotes? Search(List<List<Position>> candidates, bool[] stays, out int stuck)
    {
        // A position is remembered as long as the note sounds or another is joined to it.
        var needed = new int[wanted.Count];
        for (var index = 0; index < needed.Length; index++)
        {
            needed[index] = index;
            for (var later = index + 1; later < needed.Length; later++)
            {
                if (
                    wanted[later].Note.Start < wanted[index].Note.End
                    || (stays[later] && wanted[later].Before == index)
                )
                {
                    needed[index] = later;
                }
            }
        }

        List<Way> ways = [new(0, 0, null, default)];
        for (var index = 0; index < wanted.Count; index++)
        {
            if (wanted[index].IsLeftOut)
            {
                continue;
            }

            var best = new Dictionary<string, Way>(StringComparer.Ordinal);
            foreach (var way in ways)
            {
                foreach (var position in candidates[index])
                {
                    if (Step(way, index, position, stays[index]) is not { } next)
                    {
                        continue;
                    }

                    next = next with
                    {
                        Sounding =
                        [
                            .. way.Sounding.Where(each => needed[each.Note] > index),
                            .. needed[index] > index ? [(index, position)] : Array.Empty<(int, Position)>(),
                        ],
                    };
                    var key = $"{next.Place}|{position}|{string.Join(' ', next.Sounding)}";
                    if (!best.TryGetValue(key, out var other) || next.Cost < other.Cost)
                    {
                        best[key] = next;
                    }
                }
            }

            if (best.Count == 0)
            {
                stuck = index;
                return null;
            }

            ways = [.. best.Values.OrderBy(static way => way.Cost).Take(MostWays)];
        }

        var positions = new Position[wanted.Count];
        var at = ways[0];
        for (var index = wanted.Count - 1; index >= 0; index--)
        {
            if (wanted[index].IsLeftOut)
            {
                continue;
            }

            (positions[index], at) = (at.Position, at.From!);
        }

        stuck = -1;
        return new(positions, Fingers(neck, hand, wanted, positions));
    }

    private Way? Step(Way way, int index, Position position, bool stays)
    {
        var note = wanted[index].Note;
        var (low, high) = (int.MaxValue, 0);
        foreach (var (other, at) in way.Sounding)
        {
            if (stays && wanted[index].Before == other)
            {
                if (at.String != position.String)
                {
                    return null;
                }
            }
            else if (wanted[other].Note.End > note.Start)
            {
                if (at.String == position.String)
                {
                    return null;
                }

                if (at.Fret > neck.OpenFret(at.String))
                {
                    (low, high) = (Math.Min(low, at.Fret), Math.Max(high, at.Fret));
                }
            }
        }

        var crossed = way.From is null ? 0 : 0.1 * Math.Abs(way.Position.String - position.String);
        var outside = 5.0 * Outside(position);
        if (position.Fret == neck.OpenFret(position.String))
        {
            return new(way.Cost + crossed + outside, way.Place, way, position);
        }

        var home = way.Place == 0 ? Math.Max(1, Preferred ?? position.Fret) : way.Place;
        var place = Math.Clamp(home, Math.Max(1, position.Fret - Span), position.Fret);
        var shift = way.Place == 0 && Preferred is null ? 0 : Math.Abs(place - home);
        var spread = Math.Max(high, position.Fret) - Math.Min(low, position.Fret);
        var spreading = spread > Span ? 10.0 * (spread - Span) : 0;
        return new(way.Cost + shift + crossed + outside + spreading + (0.01 * position.Fret), place, way, position);
    }
}
