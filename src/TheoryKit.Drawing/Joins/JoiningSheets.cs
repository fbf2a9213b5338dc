using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Zones;
using TheoryKit.Paths.Joins;
using TheoryKit.Paths.Words;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Joins;

/// <summary>The sheet of an exercise that joins changes, and that of a table of them.</summary>
internal static class JoiningSheets
{
    /// <summary>The most chords that are written out; the path has them all.</summary>
    private const int MostWritten = 64;

    /// <summary>An exercise: its extent, the shapes, chord by chord what is played, and which joins occur.</summary>
    public static Sheet Exercise(JoinedChanges joined)
    {
        var query = joined.Query;
        var blocks = new List<Block>
        {
            new Block.Title(
                $"{Joinings.Names(query.Changes)} joined",
                $"{Joinings.Where(query)}, {Joinings.Notes(query)}"
            ),
            new Block.Facts([.. Facts(joined)]),
            Shapes(joined),
        };
        if (joined.LeadIn.Chords > 0)
        {
            blocks.Add(Written(joined, "What leads in", 0, joined.LeadIn.Chords));
        }

        blocks.Add(Written(joined, "The cycle", joined.LeadIn.Chords, joined.Cycle.Chords));
        blocks.Add(Joins(joined));
        return new(blocks);
    }

    /// <summary>A table: the cycles, and which of them stand out.</summary>
    public static Sheet Table(JoinTable table)
    {
        var blocks = new List<Block>
        {
            new Block.Title(
                $"{Joinings.Names(table.Changes)} joined",
                (Words)
                    $"{English.Count(table.Windows.Length, "zone")}, {(table.Notes.Length == 1 ? $"{table.Notes[0]}" : $"{table.Notes[0]} to {table.Notes[^1]}")} notes per chord"
            ),
        };
        if (table.Longest is not { } longest)
        {
            blocks.Add(new Block.Prose("None of the chords has a tone in any of these zones."));
            return new(blocks);
        }

        blocks.Add(new Block.Facts([.. Facts(table, longest)]));
        blocks.Add(
            new Block.Prose(
                "Chords in the cycle by zone and notes per chord; before a plus the chords that lead in. The longest stand out."
            )
        );
        blocks.Add(
            new Block.Table(
                "How many chords until it comes round",
                ["frets", .. table.Notes.Select(static notes => new Column(Words.Of(notes), IsNumber: true))],
                [
                    .. table.Windows.Select(
                        (window, row) =>
                            (IReadOnlyList<Cell>)
                                [
                                    $"{window.First}\u00a0to\u00a0{window.Last}",
                                    .. Enumerable
                                        .Range(0, table.Notes.Length)
                                        .Select(column => Cycle(table[row, column], longest)),
                                ]
                    ),
                ]
            )
        );
        return new(blocks);
    }

    private static IEnumerable<Fact> Facts(JoinedChanges joined)
    {
        yield return new("leads in", joined.LeadIn.Chords == 0 ? "nothing" : joined.LeadIn.InWords());
        yield return new("cycle", joined.Cycle.InWords());
        yield return new("starts", StartOf(joined));
        yield return new("rule", joined.Query.Rule.InWords());
        yield return new("each time round", Ways(joined));
        yield return new("joins made", (Words)$"{Joinings.Made(joined)} that there are in this zone");
        if (joined.Silent.Count > 0)
        {
            yield return new(
                "silent",
                (Words)$"{Words.Join(", ", joined.Silent.Select(static span => span.Chord).Distinct())}: no tone here"
            );
        }
    }

    private static Words StartOf(JoinedChanges joined)
    {
        var first = joined.Chords[0];
        return $"on {first.Entry.Pitch}, the {first.Span.Chord!.DegreeOf(first.Entry.Pitch.Name)} of {first.Span.Chord}, string {first.Entry.Position.String}, fret {first.Entry.Position.Fret}";
    }

    private static string Ways(JoinedChanges joined) =>
        Said(
            (joined.WentOn, "it goes on"),
            (joined.Turned, "it turns"),
            (joined.Held, "it holds its pitch"),
            (joined.Approached, "a semitone leads in")
        );

    private static string Said(params (int Count, string What)[] ways) =>
        English.List(ways.Where(static way => way.Count > 0).Select(static way => $"{way.What} {Times(way.Count)}"));

    /// <summary>The shapes of the chords; tones on which a chord is never entered are small.</summary>
    private static Block.Picture Shapes(JoinedChanges joined)
    {
        var chords = joined.Query.Changes.Chords;
        var entries = joined
            .Chords.Skip(joined.LeadIn.Chords)
            .Select(static chord => (chord.Span.Chord, chord.Entry.Position))
            .ToHashSet();
        var necks = joined
            .Shapes.Select((shape, index) => (Shape: shape, chords[index].Chord))
            .Where(static each => each.Shape is not null)
            .DistinctBy(static each => (each.Chord, each.Shape))
            .Select(each =>
                (
                    Drawing: ZoneSheets
                        .Drawing(joined.Query.Neck, each.Shape!, joined.Query.Window ?? each.Shape!.Window)
                        .WithEach(mark => mark with { IsPale = !entries.Contains((each.Chord, mark.Position)) }),
                    Title: Words.Of(each.Chord)
                )
            );
        return ZoneSheets.Necks([.. necks], "Where the cycle enters each chord (small marks: passed only)");
    }

    /// <summary>Chord by chord what is played.</summary>
    private static Block.Table Written(JoinedChanges joined, string caption, int first, int count)
    {
        var path = joined.Path;
        var note = joined.Chords.Take(first).Sum(static chord => chord.Notes);
        var rows = new List<IReadOnlyList<Cell>>();
        for (var index = first; index < first + Math.Min(count, MostWritten); index++)
        {
            var chord = joined.Chords[index];
            var played = path.Notes.Skip(note).Take(chord.Notes).ToList();
            note += chord.Notes;
            var bar = (chord.Span.Start / joined.Query.Changes.Time.Beats).ToDecimal();
            rows.Add([
                (int)Math.Floor(bar) + 1,
                Words.Of(chord.Span.Chord),
                Joinings.Tone(chord.Entry, chord.Span.Chord!),
                Words.Join(" ", played.Select(static each => each.Pitch)),
                chord.Way is { } way ? Joinings.Way(way) : "starts",
            ]);
        }

        return new(
            count <= MostWritten ? caption : $"{caption}, its first {MostWritten} of {count} chords",
            [new("bar", IsNumber: true), "chord", "entered on", "notes", "the line"],
            rows
        );
    }

    /// <summary>The joins, a row for each change.</summary>
    private static Block.Table Joins(JoinedChanges joined) =>
        new(
            "From function to function",
            ["change", "made (times)", "left out"],
            [
                .. joined
                    .Joins.Concat(joined.Missed)
                    .GroupBy(static join => (join.From, join.To))
                    .Select(change =>
                        (IReadOnlyList<Cell>)
                            [
                                (Words)$"{change.Key.From} to {change.Key.To}",
                                Words.Join(
                                    ", ",
                                    change
                                        .Where(static join => join.Count > 0)
                                        .GroupBy(static join => (join.FromFunction, join.ToFunction))
                                        .Select(static pair =>
                                            (Words)
                                                $"{pair.Key.FromFunction}→{pair.Key.ToFunction}{Often(pair.Sum(static join => join.Count))}"
                                        )
                                ),
                                Words.Join(
                                    ", ",
                                    change
                                        .Where(static join => join.Count == 0)
                                        .Select(static join => (Words)$"{join.FromFunction}→{join.ToFunction}")
                                ),
                            ]
                    ),
            ]
        );

    private static string Times(int count) =>
        count switch
        {
            1 => "once",
            2 => "twice",
            _ => $"{count} times",
        };

    private static string Often(int count) => count == 1 ? "" : $"\u00a0({count})";

    private static IEnumerable<Fact> Facts(JoinTable table, JoinCell longest)
    {
        yield return new("the longest", Exercise(longest));
        yield return table.VisitingEveryJoin is { } every
            ? new("makes every join", Exercise(every))
            : new("makes the most joins", Exercise(table.MostJoins!));
        var cells = table.Cells.ToList();
        var once = cells.Count(static cell => cell.Rounds == 1);
        yield return new("folded", $"{once} of {cells.Count} come round after one time through the changes");
        yield return new("rule", table.Rule.InWords());
        yield return new(
            "starts",
            table.Starts switch
            {
                JoinStarts.LowestRoot => "on the lowest root of the first chord, going up",
                JoinStarts.LongestCycle => "where the longest cycle enters the first chord",
                _ => "where the cycle with the most joins enters the first chord",
            }
        );
    }

    private static Words Exercise(JoinCell cell) =>
        $"{ZoneWords.Frets(cell.Window)}, {English.Count(cell.NotesPerChord, "note")} per chord: {English.Count(cell.Cycle, "chord")}, {English.Count(cell.CycleNotes, "note")}, {cell.Joins} of {cell.PossibleJoins} joins";

    private static Cell Cycle(JoinCell? cell, JoinCell longest) =>
        cell is null
            ? new(Words.None)
            : new(
                cell.LeadIn == 0 ? $"{cell.Cycle}" : $"{cell.LeadIn}+{cell.Cycle}",
                IsStrong: cell.Cycle == longest.Cycle
            );
}
