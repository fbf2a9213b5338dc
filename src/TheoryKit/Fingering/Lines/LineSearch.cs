using System.Collections;
using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Lines;

/// <summary>The best ways to play a line, from the least effort; where there is none, why.</summary>
public sealed class LineAnswer : IReadOnlyList<FingeredLine>
{
    private readonly IReadOnlyList<FingeredLine> lines;

    internal LineAnswer(LineQuery query, IReadOnlyList<FingeredLine> lines, NoLineReason? reason) =>
        (Query, this.lines, Reason) = (query, lines, reason);

    /// <summary>What was asked.</summary>
    public LineQuery Query { get; }

    /// <inheritdoc/>
    public int Count => lines.Count;

    /// <inheritdoc/>
    public FingeredLine this[int index] => lines[Check.Index(index, Count)];

    /// <summary>The first note that can't be played, and why; null where there is a way.</summary>
    public NoLineReason? Reason { get; }

    /// <inheritdoc/>
    public IEnumerator<FingeredLine> GetEnumerator() => lines.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}

/// <summary>Fingers lines whose positions are given, and places lines of bare pitches.</summary>
public static class LineSearch
{
    /// <summary>
    /// The least-effort ways to play a line, exact over (position, finger, place of the hand), from the best on. Ties break
    /// the same way every time. The time is linear in the number of notes.
    /// </summary>
    /// <remarks>
    /// Two ways with the same positions and fingers are the same to a player: they are one answer, with those places of the
    /// hand that cost least.
    /// </remarks>
    /// <param name="query">What is asked.</param>
    /// <param name="cancellation">Ends the search.</param>
    /// <exception cref="ArgumentException">A position is not on the neck, or the lowest place of the hand is above the highest.</exception>
    /// <exception cref="OperationCanceledException">The search was cancelled.</exception>
    public static LineAnswer Find(LineQuery query, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(query);
        if (query.FirstPlace > query.LastPlace)
        {
            throw new ArgumentException(
                $"The lowest place of the hand asked for, {query.FirstPlace}, is above the highest, {query.LastPlace}.",
                nameof(query)
            );
        }

        var hand = new HandOnNeck(query.Neck, query.Hand);
        var solver = new LineSolver(hand, query.FirstPlace, query.LastPlace, query.PreferredPlace)
        {
            Cancellation = cancellation,
        };
        var candidates = new IReadOnlyList<Position>[query.Notes.Count];
        for (var index = 0; index < candidates.Length; index++)
        {
            var positions = query.Notes[index].Positions;
            foreach (var position in positions)
            {
                if (!query.Neck.Has(position))
                {
                    throw new ArgumentException(
                        $"Note {index + 1} is at {position}, which is not on the neck {query.Neck}.",
                        nameof(query)
                    );
                }
            }

            candidates[index] =
                query.OpenStrings || positions.Length == 1
                    ? positions
                    : positions.RemoveAll(position => position.Fret == query.Neck.OpenFret(position.String));
        }

        var lines = Solve(query, candidates, solver, candidates.Length, query.Best);
        return new(query, lines, lines.Count > 0 ? null : Why(query, candidates, solver));
    }

    /// <summary>Fingers positions played one after the other.</summary>
    public static LineAnswer Finger(Neck neck, IEnumerable<Position> positions, Hand? hand = null, int best = 1) =>
        Find(
            new()
            {
                Neck = neck,
                Notes = [.. OnNeck(neck, positions).Select(LineNote.At)],
                Hand = hand ?? Hand.Average,
                Best = best,
            }
        );

    /// <summary>Chooses strings and fingers for bare pitches.</summary>
    public static LineAnswer Place(Neck neck, IEnumerable<Pitch> pitches, Hand? hand = null, int best = 1) =>
        Find(
            new()
            {
                Neck = neck,
                Notes = [.. Check.NotNull(pitches).Select(pitch => LineNote.Of(pitch, neck))],
                Hand = hand ?? Hand.Average,
                Best = best,
            }
        );

    private static List<Position> OnNeck(Neck neck, IEnumerable<Position> positions)
    {
        ArgumentNullException.ThrowIfNull(neck);
        ArgumentNullException.ThrowIfNull(positions);
        var all = positions.ToList();
        var odd = all.FindIndex(position => !neck.Has(position));
        return odd < 0
            ? all
            : throw new ArgumentException(
                $"Note {odd + 1} is at {all[odd]}, which is not on the neck {neck}.",
                nameof(positions)
            );
    }

    /// <summary>The best lines of the first notes.</summary>
    private static IReadOnlyList<FingeredLine> Solve(
        LineQuery query,
        IReadOnlyList<Position>[] candidates,
        LineSolver solver,
        int count,
        int best
    )
    {
        bool[]? stays = query.Notes.Any(static note => note.StaysOnString)
            ? [.. query.Notes.Take(count).Select(static note => note.StaysOnString)]
            : null;
        return query.Notes.Any(static note => note.Rings > 0)
            ? new RingingLineSolver(solver).Solve(
                candidates[..count],
                [.. query.Notes.Take(count).Select(static note => note.Rings)],
                best,
                stays
            )
            : solver.Solve(candidates[..count], best, staysOnString: stays);
    }

    private static NoLineReason Why(LineQuery query, IReadOnlyList<Position>[] candidates, LineSolver solver)
    {
        var (first, last) = (solver.FirstPlace, solver.LastPlace);
        var states = new List<FingeredNote>();
        for (var index = 0; index < candidates.Length; index++)
        {
            if (candidates[index].Count == 0)
            {
                return query.Notes[index].Positions.IsEmpty
                    ? new NoLineReason.NowhereOnNeck(index, query.Neck)
                    : new NoLineReason.OnlyOnOpenStrings(index);
            }

            states.Clear();
            foreach (var position in candidates[index])
            {
                solver.AddStates(position, states);
            }

            if (states.Count == 0)
            {
                return first > last
                    ? new NoLineReason.NoPlaceForHand(index, query.FirstPlace, query.LastPlace, query.Neck)
                    : new NoLineReason.OutOfReach(index, first, last, candidates[index].Min(solver.ExcessOf));
            }
        }

        // A line that can be played can be played up to any note, so the first note that can't is found by halving.
        var (playable, not) = (1, candidates.Length);
        while (not - playable > 1)
        {
            var middle = (playable + not) / 2;
            (playable, not) =
                Solve(query, candidates, solver, middle, 1).Count > 0 ? (middle, not) : (playable, middle);
        }

        return query.Notes.Any(static note => note.Rings > 0) ? new NoLineReason.OthersRingOn(not - 1, first, last)
            : query.Notes[not - 1].StaysOnString
            && !candidates[not - 1].Any(to => candidates[not - 2].Any(from => from.String == to.String))
                ? new NoLineReason.OffItsString(not - 1)
            : new NoLineReason.CannotFollow(not - 1, first, last);
    }
}
