using TheoryKit.Drawing.Grips;
using TheoryKit.Drawing.Hands;
using TheoryKit.Drawing.Lines;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Lines;
using TheoryKit.Fingering.Moving;
using TheoryKit.Fingering.Words;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Turns;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Tunings;

/// <summary>What is said about a tune in another tuning.</summary>
internal static class MovedSheets
{
    private static readonly string Css = """
        .tk-moves{grid-column:1/-1;display:flex;flex-wrap:wrap;gap:.9em 2.6em;min-width:0}
        .tk-move{break-inside:avoid}
        """;

    /// <summary>Changes moved.</summary>
    public static Sheet Changes(MovedChanges moved)
    {
        var blocks = new List<Block>
        {
            new Block.Title(
                Words.Join(", ", moved.Grips.Select(static each => each.Chord)),
                (Words)$"from {TuningWords.Way(moved.Scordatura)}"
            ),
            new Block.Facts(Facts(moved)),
        };
        if (moved.Before.Reason is { } before)
        {
            blocks.Add(new Block.Prose($"In the old tuning: {Words.Said(before.InWords)}"));
        }

        if (moved.Easiest.Reason is { } without)
        {
            blocks.Add(new Block.Prose($"In the new tuning: {Words.Said(without.InWords)}"));
            blocks.Add(Table(moved));
            blocks.AddRange(TuningWords.CautionOf(moved.Scordatura));
            return new(blocks);
        }

        blocks.Add(Pairs(moved, "The easiest version", static each => each.Easiest!));
        if (!moved.Kept.Grips.SequenceEqual(moved.Easiest.Grips))
        {
            blocks.Add(Pairs(moved, "Keeping what can stay", static each => each.Kept!));
        }

        blocks.Add(Table(moved));
        blocks.AddRange(TuningWords.CautionOf(moved.Scordatura));
        return new(blocks);
    }

    /// <summary>One grip moved.</summary>
    public static Sheet Grip(MovedGrip moved)
    {
        var blocks = new List<Block>
        {
            new Block.Title(
                Words.Of(moved.Chord),
                moved.Before is null ? "no grip before"
                    : moved.CanStay ? "its grip can stay"
                    : "its grip must move"
            ),
        };
        if (moved.Reason is { } reason)
        {
            blocks.Add(
                new Block.Prose(Words.Said((format, naming) => Printed.Capital(reason.InWords(format, naming)) + "."))
            );
        }

        if (moved.Easiest is { } easiest)
        {
            blocks.Add(Pairs([Pair(moved, easiest)], "", "", easiest.Neck));
        }

        if (moved.Positions.Count > 0)
        {
            blocks.Add((Block.Table)MovingValues.Positions.Table(moved.Positions).Blocks[0]);
        }

        return new(blocks);
    }

    /// <summary>A line moved.</summary>
    public static Sheet Line(MovedLine moved)
    {
        var blocks = new List<Block>
        {
            new Block.Title(
                $"A line of {English.Count(moved.Notes.Count, "note")}",
                (Words)$"from {TuningWords.Way(moved.Scordatura)}"
            ),
        };
        var facts = new List<Fact>
        {
            new("turned", Turned(moved.Scordatura)),
            new("stay where they are", $"{moved.Staying} of {English.Count(moved.Notes.Count, "note")}"),
        };
        Add("effort before", moved.Before);
        Add("effort of the easiest version", moved.Easiest);
        Add("effort keeping what stays", moved.Kept);
        blocks.Add(new Block.Facts(facts));
        if (moved.ReasonBefore is { } before)
        {
            blocks.Add(new Block.Prose($"In the old tuning: {Words.Said(before.InWords)}"));
        }

        if (moved.Reason is { } reason)
        {
            blocks.Add(new Block.Prose($"In the new tuning: {Words.Said(reason.InWords)}"));
        }
        else if (moved.ReasonKept is { } kept)
        {
            blocks.Add(new Block.Prose($"Keeping what stays: {Words.Said(kept.InWords)}"));
        }

        var necks = new List<(NeckDrawing Drawing, Words Title)>();
        AddNeck(moved.Before, moved.From, (Words)$"Before, in {TuningWords.Named(moved.From.Tuning)}");
        AddNeck(moved.Easiest, moved.To, (Words)$"The easiest, in {TuningWords.Named(moved.To.Tuning)}");
        if (moved.Kept is not null && !Same(moved.Kept, moved.Easiest))
        {
            AddNeck(moved.Kept, moved.To, (Words)$"Keeping what stays, in {TuningWords.Named(moved.To.Tuning)}");
        }

        if (necks.Count > 0)
        {
            blocks.Add(Necks(necks));
        }

        blocks.Add(Table(moved));
        blocks.AddRange(TuningWords.CautionOf(moved.Scordatura));
        return new(blocks);

        void Add(string name, FingeredLine? line)
        {
            if (line is not null)
            {
                facts.Add(new(name, GripWords.Effort(line.Effort)));
            }
        }

        void AddNeck(FingeredLine? line, Neck neck, Words title)
        {
            if (line is not null)
            {
                necks.Add((FingeredLines.Drawing(new(line, neck)), title));
            }
        }
    }

    private static List<Fact> Facts(MovedChanges moved)
    {
        var facts = new List<Fact> { new("turned", Turned(moved.Scordatura)) };
        if (moved.Before.Grips.Count > 0)
        {
            facts.Add(new("can stay", $"{moved.Staying} of {English.Count(moved.Grips.Count, "grip")}"));
            facts.Add(new("effort and motion before", GripWords.Effort(moved.Before.Cost)));
        }

        if (moved.Easiest.Grips.Count > 0)
        {
            facts.Add(new("of the easiest version", GripWords.Effort(moved.Easiest.Cost)));
        }

        if (moved.Staying > 0 && moved.Kept.Grips.Count > 0)
        {
            facts.Add(new("keeping what can stay", GripWords.Effort(moved.Kept.Cost)));
        }

        return facts;
    }

    private static Cell Turned(Scordatura scordatura) =>
        scordatura.Steps.Count == 0
            ? "nothing"
            : Words.Join(
                ", ",
                scordatura.Steps.Select(static turn => (Words)$"string {turn.Number} {turn.From} to {turn.To}")
            );

    private static Block.Table Table(MovedChanges moved)
    {
        List<Column> columns = ["chord", "old grip", "because"];
        columns.Add(new("effort before", IsNumber: true));
        columns.Add(new("easiest", IsNumber: true));
        columns.Add(new("keeping", IsNumber: true));
        var rows = moved.Grips.Select(each =>
            (IReadOnlyList<Cell>)
                [
                    new(Words.Of(each.Chord)),
                    new(
                        each.Before is null ? "none"
                        : each.CanStay ? "can stay"
                        : "must move"
                    ),
                    new(
                        each.Reason is { } reason ? Words.Said(reason.InWords)
                        : each.Before is null ? Words.None
                        : (Words)"the same frets sound the chord"
                    ),
                    new(Effort(each.Before)),
                    new(Effort(each.Easiest)),
                    new(Effort(each.Kept)),
                ]
        );
        return new("Chord by chord", columns, [.. rows]);
    }

    private static Words Effort(ChordGrip? grip) => grip is null ? Words.None : GripWords.Effort(grip.Effort)!;

    private static Block.Table Table(MovedLine moved)
    {
        var showsKept = moved.Kept is not null && !Same(moved.Kept, moved.Easiest);
        List<Column> columns =
        [
            new("no.", IsNumber: true),
            "note",
            "before",
            "so it",
            "easiest",
            new("finger", IsNumber: true),
        ];
        if (showsKept)
        {
            columns.AddRange(["keeping", new("finger", IsNumber: true)]);
        }

        var rows = new List<IReadOnlyList<Cell>>();
        for (var index = 0; index < moved.Notes.Count; index++)
        {
            var note = moved.Notes[index];
            var row = new List<Cell>
            {
                index + 1,
                new(Words.Of(note.Pitch)),
                new(Words.Of(note.Before)),
                new(note.Stays ? "stays" : "must move"),
                new(At(note.Easiest, note.Before)),
                new(moved.Easiest is null ? Words.None : HandValues.Sign(moved.Easiest[index].Finger)!),
            };
            if (showsKept)
            {
                row.Add(new(At(note.Kept, note.Before)));
                row.Add(new(HandValues.Sign(moved.Kept![index].Finger)!));
            }

            rows.Add(row);
        }

        return new("Note by note, string and fret", columns, rows);
    }

    private static Words At(Position? position, Position before) =>
        position is not { } at ? Words.None
        : at == before ? "as before"
        : Words.Of(at);

    private static bool Same(FingeredLine line, FingeredLine? other) =>
        other is not null
        && line.Select(static note => note.Position).SequenceEqual(other.Select(static note => note.Position));

    private static Block.Picture Necks(List<(NeckDrawing Drawing, Words Title)> necks)
    {
        // The same frets in all, so that what stays stands under itself.
        var (first, last) = (necks.Min(static n => n.Drawing.FirstFret), necks.Max(static n => n.Drawing.LastFret));
        var drawings = necks.ConvertAll(each => (Drawing: each.Drawing.WithFrets(first, last), each.Title));
        return new(
            (context, naming) =>
            {
                NeckDrawing[] all =
                [
                    .. drawings.Select(each => each.Drawing.WithNaming(naming).WithTitle(each.Title.Printed(naming))),
                ];
                return NeckFigure.Write(
                    "The order of the notes",
                    "",
                    NeckFigure.OfferedBy(all),
                    all[0].Labels,
                    context,
                    html => NeckFigure.WriteParts(html, all, context),
                    "tk-necks"
                );
            },
            naming =>
                string.Join(
                    "\n\n",
                    drawings.Select(each =>
                        each.Drawing.WithNaming(naming).WithTitle(each.Title.Plain(naming)).ToString()
                    )
                )
        );
    }

    private static Block.Picture Pairs(MovedChanges moved, string title, Func<MovedGrip, ChordGrip> choose) =>
        Pairs([.. moved.Grips.Select(each => Pair(each, choose(each)))], title, "old grip, then new", moved.To);

    /// <summary>The old box and the new one, in which what is as before stands back.</summary>
    private static GripBox[] Pair(MovedGrip moved, ChordGrip now)
    {
        if (moved.Before is not { } before)
        {
            return [new(GripDrawing.Of(now), Under(now))];
        }

        var isSame = moved.Same is { } same && same.Equals(now);
        var kept = now.Grip.Positions.Intersect(before.Grip.Positions).Count();
        return
        [
            new(GripDrawing.Of(before), Under(before)),
            new(GripDrawing.Of(now) with { Against = isSame ? null : before.Grip }, Under(now))
            {
                Motion =
                [
                    isSame ? "stays"
                    : kept == 0 ? "all moves"
                    : $"{English.Count(kept, "string")} held as before",
                ],
            },
        ];
    }

    private static Words[] Under(ChordGrip grip) =>
        [TuningWords.Named(grip.Neck.Tuning), $"effort {GripWords.Effort(grip.Effort)}"];

    private static Block.Picture Pairs(IReadOnlyList<GripBox[]> pairs, string title, string detail, Neck neck)
    {
        var boxes = pairs.SelectMany(static pair => pair).ToList();
        return new(
            (context, naming) =>
                NeckFigure.Write(
                    title,
                    detail,
                    boxes.SelectMany(static box => box.Drawing.Offered).Distinct().Order(),
                    boxes[0].Drawing.Labels,
                    context,
                    html =>
                    {
                        html.Style(Css).Open("div", "tk-moves");
                        foreach (var pair in pairs)
                        {
                            html.Open("div", "tk-move");
                            GripBoxes.WriteBoxes(html, pair, context, naming, withStyle: pair == pairs[0]);
                            html.Close();
                        }

                        html.Close();
                    }
                ),
            naming =>
                (title.Length > 0 ? $"{title}  ({Printed.Of(neck.Tuning, naming, "G")})\n\n" : "")
                + string.Join("\n\n", pairs.Select(pair => GripBoxes.Text(pair, naming)))
        );
    }
}
