using System.Collections.Immutable;
using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Paths.Joins;

/// <summary>Where the exercises of a table start.</summary>
public enum JoinStarts
{
    /// <summary>On the lowest root of the first chord, or its lowest tone where the zone has no root, going up.</summary>
    LowestRoot,

    /// <summary>Where the longest cycle enters the first chord; of equally long ones that with the most joins, then the lowest.</summary>
    LongestCycle,

    /// <summary>Where the cycle with the most joins enters the first chord; of equal ones the shortest, then the lowest.</summary>
    MostJoins,
}

/// <summary>One zone and number of notes of a table: what becomes of the exercise there. Equal when all of it agrees.</summary>
/// <param name="Window">The frets of the zone.</param>
/// <param name="NotesPerChord">How many notes every chord gets.</param>
/// <param name="Start">The first note.</param>
/// <param name="Direction">In which direction it starts.</param>
/// <param name="LeadIn">How many chords lead in.</param>
/// <param name="Cycle">How many chords the cycle has.</param>
/// <param name="Rounds">How many times it goes through the changes.</param>
/// <param name="Joins">How many of the joins that there are the cycle makes; see <see cref="JoinedChanges.PossibleJoins"/>.</param>
/// <param name="PossibleJoins">How many there are.</param>
[Checked]
public sealed partial record JoinCell(
    Window Window,
    int NotesPerChord,
    Pitch Start,
    Direction Direction,
    int LeadIn,
    int Cycle,
    int Rounds,
    int Joins,
    int PossibleJoins
)
{
    /// <summary>How many notes the cycle has.</summary>
    public int CycleNotes => Cycle * NotesPerChord;

    /// <summary>Whether the cycle makes every join that there is.</summary>
    public bool VisitsEveryJoin => Joins == PossibleJoins;
}

/// <summary>
/// How long the cycles of joined changes are, by zone and by notes per chord: most fold into a short loop, and a player wants those that don't.
/// Equal when all that was asked is.
/// </summary>
[EqualBy(nameof(Changes), nameof(Neck), nameof(Rule), nameof(Hand), nameof(Starts), nameof(Windows), nameof(Notes))]
public sealed partial class JoinTable : IEquatable<JoinTable>
{
    private readonly JoinCell?[] cells;
    private readonly int[][] made; // by cell: the numbers of the joins that its cycle makes

    internal JoinTable(
        Changes changes,
        Neck neck,
        ImmutableArray<Window> windows,
        int fewest,
        int most,
        JoinRule rule,
        Hand hand,
        JoinStarts starts,
        CancellationToken cancellation
    )
    {
        (Changes, Neck, Windows, Rule, Hand, Starts) = (changes, neck, windows, rule, hand, starts);
        Notes = [.. Enumerable.Range(fewest, most - fewest + 1)];
        cells = new JoinCell?[windows.Length * Notes.Length];
        made = new int[cells.Length][];
        var shapes = new JoinShapes(neck, hand);
        for (var row = 0; row < windows.Length; row++)
        {
            cancellation.ThrowIfCancellationRequested();
            var ground = new JoinGround(changes, shapes.In(changes, windows[row], nameof(windows)), rule);
            if (ground.Stops.Count > 0)
            {
                new Row(this, row, ground).Fill();
            }
        }
    }

    /// <summary>The changes.</summary>
    public Changes Changes { get; }

    /// <summary>The neck.</summary>
    public Neck Neck { get; }

    /// <summary>How chords are joined.</summary>
    public JoinRule Rule { get; }

    /// <summary>The hand.</summary>
    public Hand Hand { get; }

    /// <summary>Where the exercises start.</summary>
    public JoinStarts Starts { get; }

    /// <summary>The frets of the zones: the rows.</summary>
    public ImmutableArray<Window> Windows { get; }

    /// <summary>The numbers of notes per chord: the columns.</summary>
    public ImmutableArray<int> Notes { get; }

    /// <summary>What becomes of the exercise; null where no chord has a tone in the zone.</summary>
    /// <param name="row">The zone, from 0.</param>
    /// <param name="column">The number of notes, from 0.</param>
    public JoinCell? this[int row, int column] =>
        cells[(Check.Index(row, Windows.Length) * Notes.Length) + Check.Index(column, Notes.Length)];

    /// <summary>Every exercise that there is, zone by zone.</summary>
    public IEnumerable<JoinCell> Cells => cells.OfType<JoinCell>();

    /// <summary>The exercise with the longest cycle in chords; of equals the one with the most joins, then the fewest notes, then the lowest zone.</summary>
    public JoinCell? Longest =>
        Cells
            .OrderByDescending(static cell => cell.Cycle)
            .ThenByDescending(static cell => cell.Joins)
            .ThenBy(static cell => cell.NotesPerChord)
            .FirstOrDefault();

    /// <summary>The exercise with the fewest notes among those whose cycle makes every join that there is in its zone; null if none does.</summary>
    public JoinCell? VisitingEveryJoin =>
        Cells.Where(static cell => cell.VisitsEveryJoin).OrderBy(static cell => cell.CycleNotes).FirstOrDefault();

    /// <summary>The exercise that makes the greatest part of the joins in its zone; of equals the one with the fewest notes.</summary>
    public JoinCell? MostJoins =>
        Cells
            .OrderByDescending(static cell => (double)cell.Joins / Math.Max(1, cell.PossibleJoins))
            .ThenBy(static cell => cell.CycleNotes)
            .FirstOrDefault();

    /// <summary>
    /// A few exercises of a zone that together make every join that any of its exercises makes, since one alone seldom makes them all: at each
    /// step the one that adds the most, of equals the one with the fewest notes. Empty where nothing sounds.
    /// </summary>
    /// <param name="row">The zone, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such row.</exception>
    public IReadOnlyList<JoinCell> Covering(int row)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(row);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(row, Windows.Length);
        var chosen = new List<JoinCell>();
        var covered = new HashSet<int>();
        while (true)
        {
            var best = Enumerable
                .Range(row * Notes.Length, Notes.Length)
                .Where(index => cells[index] is not null)
                .Select(index => (Index: index, Adds: made[index].Count(join => !covered.Contains(join))))
                .Where(static each => each.Adds > 0)
                .OrderByDescending(static each => each.Adds)
                .ThenBy(each => cells[each.Index]!.CycleNotes)
                .Select(static each => (int?)each.Index)
                .FirstOrDefault();
            if (best is not { } next)
            {
                return chosen;
            }

            chosen.Add(cells[next]!);
            covered.UnionWith(made[next]);
        }
    }

    /// <summary>The whole exercise of a cell.</summary>
    /// <exception cref="ArgumentException">The cell is none of this table.</exception>
    public JoinedChanges Exercise(JoinCell cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        if (!cells.Contains(cell))
        {
            throw new ArgumentException($"This is no cell of the table: {cell}.", nameof(cell));
        }

        return JoinSearch.Find(
            new()
            {
                Changes = Changes,
                Neck = Neck,
                Window = cell.Window,
                Hand = Hand,
                NotesPerChord = cell.NotesPerChord,
                Rule = Rule,
                Start = Starts == JoinStarts.LowestRoot ? null : cell.Start,
                Direction = cell.Direction,
            }
        );
    }

    /// <summary>The changes and the rule.</summary>
    public override string ToString() => $"{Changes}: {Rule}";

    /// <summary>Fills a row.</summary>
    private sealed class Row(JoinTable table, int row, JoinGround ground)
    {
        private readonly int[] seen = new int[ground.States];
        private readonly int[] notes = new int[ground.Stops.Count];
        private readonly int[] visited = new int[ground.Joins];
        private readonly List<int> way = [];
        private readonly List<int> made = [];
        private int stamp = 1;
        private int visit;

        public void Fill()
        {
            for (var column = 0; column < table.Notes.Length; column++)
            {
                notes.AsSpan().Fill(table.Notes[column]);
                var index = (row * table.Notes.Length) + column;
                (table.cells[index], table.made[index]) =
                    table.Starts == JoinStarts.LowestRoot ? From(ground.Start(null, Direction.Up, "")) : Best();
            }
        }

        private (JoinCell, int[]) Best()
        {
            var all = JoinSearch.Cycles(ground, notes, seen, ref stamp).Select(cycle => From(cycle.Start));
            return table.Starts == JoinStarts.LongestCycle
                ? all.MaxBy(static each => (each.Cell.Cycle, each.Cell.Joins))
                : all.MaxBy(static each => (each.Cell.Joins, -each.Cell.Cycle));
        }

        private (JoinCell Cell, int[] Joins) From(int start)
        {
            var leadIn = ground.Walk(start, notes, way, seen, ref stamp);
            made.Clear();
            visit++;
            for (var index = leadIn; index < way.Count; index++)
            {
                if (ground.JoinFrom(ground.Last(way[index], notes[0])) is >= 0 and var join && visited[join] != visit)
                {
                    visited[join] = visit;
                    made.Add(join);
                }
            }

            return (
                new(
                    table.Windows[row],
                    notes[0],
                    ground.StopOf(start).Shape.Notes[ground.ToneOf(start)].Place.Pitch,
                    JoinGround.DirectionOf(start),
                    leadIn,
                    way.Count - leadIn,
                    (way.Count - leadIn) / notes.Length,
                    made.Count,
                    ground.Joins
                ),
                [.. made]
            );
        }
    }
}
