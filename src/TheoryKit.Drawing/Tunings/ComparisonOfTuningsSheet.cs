using TheoryKit.Drawing.Grips;
using TheoryKit.Drawing.Hands;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Fingering.Words;
using TheoryKit.Tunings.Strings;
using TheoryKit.Tunings.Words;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Tunings;

/// <summary>What a comparison of tunings says.</summary>
internal static class ComparisonOfTuningsSheet
{
    private static readonly string Css = """
        .tk-tuning{grid-column:1/-1;margin-top:.6em;break-inside:avoid;min-width:0}
        .tk-tuning>p{margin:0;font:600 1.1em SERIF}
        .tk-tuning>.tk-without{font:inherit;color:var(--tk-quiet);margin-top:.3em}
        @media print{.tk-neck.tk-tunings{break-inside:auto}}
        """.Replace("SERIF", Look.Serif, StringComparison.Ordinal);

    public static Sheet Of(TuningComparison comparison) => Of(new ComparisonOfTunings(comparison));

    public static Sheet Of(ComparisonOfTunings page)
    {
        var comparison = page.Comparison;
        var blocks = new List<Block>
        {
            new Block.Title(
                Words.Join(", ", comparison.Chords),
                $"in {English.Count(comparison.Columns.Count, "tuning")}"
            ),
            new Block.Facts(Facts(comparison)),
            Efforts(comparison),
            Traits(comparison),
            Necks(page),
        };
        if (page.ShowsGrips)
        {
            blocks.Add(Grips(page));
        }

        if (comparison.Strings is not null)
        {
            blocks.AddRange(Tensions(comparison));
        }

        if (
            comparison.Columns.Any(static column =>
                column.Tensions?.Caution is not null || column.Retuned?.Any(static steps => steps > 0) == true
            )
        )
        {
            blocks.Add(new Block.Prose(Cautions.Strings));
        }

        if (page.ShowsNumbers)
        {
            blocks.Add(Numbers(comparison));
        }

        return new(blocks);
    }

    private static List<Fact> Facts(TuningComparison comparison)
    {
        var facts = new List<Fact>
        {
            new("hand", HandValues.Name(comparison.Hand)),
            new("a grip", Words.Join(", ", Asked(comparison))),
        };
        if (comparison.Columns.Count > 1)
        {
            facts.Add(new("retuned from", Words.Of(comparison.Columns[0])));
        }

        var whole = comparison.Columns.Where(static column => column.LeastEffort is not null).ToList();
        if (whole.Count > 1 && comparison.Chords.Count > 1)
        {
            var (least, most) = (
                whole.MinBy(static column => column.LeastEffort)!,
                whole.MaxBy(static column => column.LeastEffort)!
            );
            if (Effort(least.LeastEffort) == Effort(most.LeastEffort))
            {
                facts.Add(new("effort, all chords", $"{Effort(least.LeastEffort)} in every tuning"));
            }
            else
            {
                facts.Add(new("least effort, all chords", (Words)$"{least}, {Effort(least.LeastEffort)}"));
                facts.Add(new("most effort, all chords", (Words)$"{most}, {Effort(most.LeastEffort)}"));
            }
        }

        return facts;
    }

    /// <summary>How many strings sound in a grip, and what else is asked that is not common practice.</summary>
    private static IEnumerable<Words> Asked(TuningComparison comparison)
    {
        var (chord, neck) = (comparison.Chords[0], comparison.Reference);
        var asked = comparison.Limits.For(chord, neck, comparison.Hand);
        var usual = GripLimits.Default.For(chord, neck, comparison.Hand);
        foreach (var trait in GripValues.Queries.Traits)
        {
            var (value, other) = (trait.Value(asked)?.Words, trait.Value(usual)?.Words);
            if (value is not null && (trait == GripValues.Sounding || value.Plain(null) != other?.Plain(null)))
            {
                yield return trait == GripValues.Sounding ? (Words)$"{value}" : (Words)$"{trait.Name}: {value}";
            }
        }
    }

    /// <summary>A row for every chord, a column for every tuning; the least of each row stands out.</summary>
    private static Block.Table Efforts(TuningComparison comparison)
    {
        var rows = comparison
            .Chords.Select(
                (chord, place) =>
                    Row(
                        Words.Of(chord),
                        [.. comparison.Columns.Select(column => column.Cells[place].LeastEffort)],
                        static _ => "no grip"
                    )
            )
            .ToList();
        if (comparison.Chords.Count > 1)
        {
            rows.Add(
                Row(
                    "together",
                    [.. comparison.Columns.Select(static column => column.LeastEffort)],
                    place => $"{comparison.Columns[place].Playable} of {comparison.Chords.Count}"
                )
            );
        }

        return new(
            "Effort of the easiest grip",
            ["chord", .. comparison.Columns.Select(static column => new Column(Words.Of(column), IsNumber: true))],
            rows
        );
    }

    private static IReadOnlyList<Cell> Row(Words name, IReadOnlyList<double?> efforts, Func<int, string> without)
    {
        var least = efforts.Min();
        return
        [
            name,
            .. efforts.Select(
                (effort, place) =>
                    effort is null
                        ? new Cell(without(place))
                        : new Cell(Effort(effort), IsStrong: efforts.Count > 1 && effort == least)
            ),
        ];
    }

    /// <summary>A row for every trait of a tuning, a column for every tuning.</summary>
    private static Block.Table Traits(TuningComparison comparison) =>
        new(
            "What the tunings are and hold",
            ["in each", .. comparison.Columns.Select(static column => new Column(Words.Of(column)))],
            [
                .. TuningValues.Columns.Traits.Select(trait =>
                    (IReadOnlyList<Cell>)
                        [
                            trait.Name,
                            .. comparison.Columns.Select(column => trait.Value(column) ?? new Cell(Words.None)),
                        ]
                ),
            ]
        );

    /// <summary>A row for every string, a column for every tuning; then what is amiss and what is not known.</summary>
    private static IEnumerable<Block> Tensions(TuningComparison comparison)
    {
        var reports = comparison.Columns.Select(static column => column.Tensions!).ToList();
        var rows = new List<IReadOnlyList<Cell>>();
        for (var number = comparison.Strings!.Count; number >= 1; number--)
        {
            rows.Add([
                $"{number}: {comparison.Strings[number]}",
                .. reports.Select(report => Tension(report.Strings[number - 1])),
            ]);
        }

        rows.Add(["together", .. reports.Select(static report => Newtons(report.Total, report.TotalChange))]);
        // A heading of its own, which stays in sight where the table is wider than the page.
        yield return new Block.Heading(
            comparison.Strings.Name is { } name ? $"Tension of the strings, {name}" : "Tension of the strings"
        );
        yield return new Block.Table(
            "Tension of the strings",
            ["string", .. comparison.Columns.Select(static column => new Column(Words.Of(column), IsNumber: true))],
            rows
        )
        {
            HasQuietCaption = true,
        };
        foreach (var column in comparison.Columns)
        {
            var report = column.Tensions!;
            foreach (var warning in report.Warnings)
            {
                yield return new Block.Prose($"{column}: {Words.Said(warning.InWords)}");
            }
        }

        foreach (var note in reports.SelectMany(static report => report.Notes).Distinct())
        {
            yield return new Block.Prose(note.InWords());
        }
    }

    private static Cell Tension(StringTension each) =>
        each.State == StringState.Comfortable
            ? Newtons(each.Tension, each.Change)
            : (Words)$"{Newtons(each.Tension, each.Change)}, {StringValues.State(each.State)}";

    /// <summary>"72.6 N", "61.1 N (-11.5 N)".</summary>
    private static Words Newtons(Tension tension, Tension? change) =>
        change is { Newtons: var more } && Math.Round(more, 1) != 0
            ? (Words)$"{StringValues.Newtons(tension)} ({new StringValues.Signed(more)})"
            : StringValues.Newtons(tension);

    /// <summary>Every neck with the tones of one chord.</summary>
    private static Block.Picture Necks(ComparisonOfTunings page)
    {
        var chord = page.Chord ?? page.Comparison.Chords[0];
        var drawings = page
            .Comparison.Columns.Select(column =>
                (
                    Column: column,
                    Drawing: NeckDrawing
                        .Of(column.Neck, chord)
                        .WithFrets(Math.Clamp(page.FirstFret, 0, Last(column)), Last(column))
                        .WithLabels(page.Labels)
                        .WithLeftHand(page.IsLeftHanded)
                )
            )
            .ToList();
        return new(
            (context, naming) =>
            {
                var named = drawings
                    .Select(each => each.Drawing.WithNaming(naming).WithTitle(each.Column.ToString("P", naming)))
                    .ToList();
                return NeckFigure.Write(
                    $"{chord.ToString("P", naming)} in each tuning",
                    "",
                    NeckFigure.OfferedBy(named),
                    page.Labels,
                    context,
                    html => NeckFigure.WriteParts(html, named, context),
                    "tk-necks"
                );
            },
            naming =>
                string.Join(
                    "\n\n",
                    drawings.Select(each =>
                        each.Drawing.WithNaming(naming)
                            .WithTitle($"{chord.ToString(null, naming)} in {each.Column.ToString(null, naming)}")
                            .ToString()
                    )
                )
        );

        int Last(TuningColumn column) => Math.Clamp(page.LastFret, 1, column.Neck.Frets);
    }

    /// <summary>A row of boxes for every tuning, with one switch for the labels of all.</summary>
    private static Block.Picture Grips(ComparisonOfTunings page)
    {
        var rows = page
            .Comparison.Columns.Select(column =>
                (
                    Column: column,
                    Boxes: column
                        .Cells.Where(static cell => cell.Best is not null)
                        .Select(cell => new GripBox(
                            GripDrawing.Of(cell.Best!) with
                            {
                                IsLeftHanded = page.IsLeftHanded,
                            },
                            GripWords.Under(cell.Best!)
                        ))
                        .ToList(),
                    Without: column.Cells.Where(static cell => cell.Best is null).ToList()
                )
            )
            .ToList();
        return new(
            (context, naming) =>
                NeckFigure.Write(
                    "The easiest grips",
                    "",
                    rows.SelectMany(static row => row.Boxes)
                        .SelectMany(static box => box.Drawing.Offered)
                        .Distinct()
                        .Order(),
                    Labels.Fingers,
                    context,
                    html =>
                    {
                        html.Style(Css);
                        foreach (var (column, boxes, without) in rows)
                        {
                            html.Open("div", "tk-tuning").Element("p", null, column.ToString("P", naming));
                            GripBoxes.WriteBoxes(html, boxes, context, naming);
                            foreach (var cell in without)
                            {
                                html.Element("p", "tk-without", Without(cell, "P", naming));
                            }

                            html.Close();
                        }
                    },
                    "tk-tunings"
                ),
            naming =>
                string.Join(
                    "\n\n",
                    rows.Select(row =>
                        $"The easiest grips in {row.Column.ToString(null, naming)}\n\n"
                        + (row.Boxes.Count > 0 ? GripBoxes.Text(row.Boxes, naming).TrimEnd('\n') : "")
                        + string.Concat(row.Without.Select(cell => $"\n{Without(cell, null, naming)}"))
                    )
                )
        );
    }

    private static string Without(TuningCell cell, string? format, IFormatProvider? naming) =>
        $"{cell.Chord.ToString(format, naming)}: no grip. {cell.Grips.Reason?.InWords(format, naming)}";

    /// <summary>A row for every chord in every tuning.</summary>
    private static Block.Table Numbers(TuningComparison comparison)
    {
        var traits = TuningValues.Cells.Traits.Where(static trait => trait != TuningValues.OpenStrings).ToList();
        return new(
            "Chord by chord",
            ["chord", "tuning", .. traits.Select(static trait => new Column(trait.Name, trait.IsNumber))],
            [
                .. comparison.Chords.SelectMany(
                    (chord, place) =>
                        comparison.Columns.Select(column =>
                            (IReadOnlyList<Cell>)
                                [
                                    Words.Of(chord),
                                    Words.Of(column),
                                    .. traits.Select(trait => trait.Value(column.Cells[place]) ?? new Cell(Words.None)),
                                ]
                        )
                ),
            ]
        );
    }

    private static string Effort(double? effort) => effort is { } sum ? GripWords.Effort(sum) : "";
}
