using Plotly.NET;
using TheoryKit.Charts.Figures;
using TheoryKit.Paths;
using TheoryKit.Paths.Joins;

namespace TheoryKit.Charts.Paths;

/// <summary>
/// How many chords the cycles of joined changes have, by zone and by notes per chord: the long ones stand out from the short loops that
/// most fold into.
/// </summary>
public sealed class JoinMapChart : StudyChart
{
    /// <summary>A chart of a table.</summary>
    public JoinMapChart(JoinTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        Shown = table;
    }

    /// <summary>What is shown.</summary>
    public JoinTable Shown { get; }

    /// <inheritdoc/>
    public override string Title => "Chords until the line comes round";

    /// <inheritdoc/>
    public override string Description
    {
        get
        {
            var text =
                $"How many chords the cycle of joined changes has in {Names.Some(Shown.Windows.Length, "zone")}, for {Shown.Notes[0]} to {Shown.Notes[^1]} notes per chord.";
            if (Shown.Longest is not { } longest)
            {
                return $"{text} None of the chords has a tone there.";
            }

            var cells = Shown.Cells.ToList();
            var once = cells.Count(static cell => cell.Rounds == 1);
            return $"{text} The longest: {Names.Some(longest.Cycle, "chord")} at frets {longest.Window} with {Names.Some(longest.NotesPerChord, "note")} per chord; {once} of {cells.Count} come round after one time through the changes.";
        }
    }

    internal override ChartTable Tabulate(string? format) =>
        new(
            Shown.Notes.Select(static notes => $"{notes} per chord").Prepend("frets"),
            Shown.Windows.Select(
                (window, row) =>
                    Shown
                        .Notes.Select((_, column) => Shown[row, column] is { } cell ? $"{cell.Cycle}" : "-")
                        .Prepend($"{window}")
            )
        );

    internal override GenericChart Draw(Palette palette)
    {
        var most = Math.Max(1, (Shown.Longest?.Rounds ?? 1) - 1);
        return Matrix
            .Draw(
                palette,
                Title,
                ([.. Shown.Windows.Select(static window => $"{window}")], "frets"),
                ([.. Shown.Notes.Select(static notes => $"{notes}")], "notes per chord"),
                (row, column) =>
                    Shown[row, column] is { } cell
                        ? new((cell.Rounds - 1.0) / most, $"{cell.Cycle}", Hover(cell))
                        : new(0, "", $"<b>Frets {Shown.Windows[row]}</b><br>no tone here")
            )
            .ToPlotly();
    }

    private static string Hover(JoinCell cell) =>
        string.Join(
            "<br>",
            $"<b>Frets {cell.Window}, {Names.Some(cell.NotesPerChord, "note")} per chord</b>",
            $"cycle: {Names.Some(cell.Cycle, "chord")}, {Names.Some(cell.CycleNotes, "note")}",
            cell.LeadIn == 0 ? "nothing leads in" : $"{Names.Some(cell.LeadIn, "chord")} before it",
            $"{cell.Joins} of {Names.Some(cell.PossibleJoins, "join")}",
            $"starts on {cell.Start.ToString("P", null)} going {(cell.Direction == Direction.Up ? "up" : "down")}"
        );
}
