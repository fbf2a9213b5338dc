using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Relations;
using TheoryKit.Theory.Scales;

namespace TheoryKit.Drawing.Theory;

/// <summary>What lies inside a formula, around it and next to it, as parts of a page; over a root with the notes.</summary>
internal static class RelationBlocks
{
    private const int MostScales = 12;

    public static IEnumerable<Block> Of(FormulaRelations relations, NoteName? root)
    {
        yield return Pair(Inside(relations, root), Rotations(relations, root));
        yield return Pair(Scales(relations, root), AsSet(relations));
        yield return new Block.Group(Neighbours(relations, root));
    }

    public static Sheet Sheet(FormulaRelations relations) =>
        new([new Block.Title(Words.Of(relations.Formula), "and its relations"), .. Of(relations, null)]);

    private static Block.Beside Pair(Block first, Block second) =>
        new([new Block.Group(first), new Block.Group(second)]);

    private static Block Inside(FormulaRelations relations, NoteName? root)
    {
        const string Caption = "Chords inside";
        var inside = relations.Triads.Concat(relations.Sevenths).ToList();
        return inside.Count == 0
            ? Nothing(Caption, "No triad and no seventh chord lies inside.")
            : Table(
                Caption,
                ["chord", .. If(root is not null, "in words"), "stands on", "its tones here"],
                inside.Select(chord =>
                    (
                        (IReadOnlyList<Cell>)
                            [
                                .. Name(chord, root),
                                Chords.Function(chord.On, relations.Formula),
                                Words.Join("\u00a0", chord.Functions.Select(static each => each.Outer)),
                            ],
                        (DegreeChord?)chord
                    )
                ),
                root
            );
    }

    private static Block Rotations(FormulaRelations relations, NoteName? root)
    {
        const string Caption = "The same notes from another root";
        var isScale = ScaleType.Find(relations.Formula) is not null && ChordQuality.Find(relations.Formula) is null;
        var known = relations
            .Rotations.Where(each => each.Quality is not null || (isScale && each.Scale is not null))
            .ToList();
        var nameless = relations.Rotations.Count - known.Count;
        if (known.Count == 0)
        {
            return Nothing(Caption, "From another root these notes have no usual name.");
        }

        var table = Table(
            Caption,
            [isScale ? "scale" : "chord", .. If(root is not null && !isScale, "in words"), "stands on"],
            known.Select(each =>
                (
                    (IReadOnlyList<Cell>)
                        [
                            .. each.Quality is null ? Mode(each.Scale!, each.On, root) : Name(each, root),
                            Chords.Function(each.On, relations.Formula),
                        ],
                    (DegreeChord?)each
                )
            ),
            root
        );
        return nameless == 0
            ? table
            : new Block.Group(table, new Block.Prose($"{Printed.Capital(Relations.Nameless(nameless))}."));
    }

    private static Block Scales(FormulaRelations relations, NoteName? root)
    {
        const string Caption = "Scales around it";
        var shown = relations.Scales.Take(MostScales).ToList();
        if (shown.Count == 0)
        {
            return Nothing(Caption, "No scale of the catalogue holds all of its tones.");
        }

        var isCut = relations.Scales.Count > MostScales;
        var respells = shown.Exists(static scale => scale.IsRespelled);
        return Table(
            isCut ? $"{Caption}, the first {MostScales} of {relations.Scales.Count}" : Caption,
            ["scale", "adds", .. If(root is not null, "added notes"), .. If(respells, "respells")],
            shown.Select(scale =>
                (IReadOnlyList<Cell>)
                    [
                        root is { } tonic ? Words.Of(scale.Type.On(tonic)) : Words.Of(scale.Type),
                        scale.Added.Count == 0 ? "nothing" : Words.Join("\u00a0", scale.Added),
                        .. root is { } from ? new Cell[] { Words.Tones(scale.Added.Tones(from)) } : [],
                        .. respells ? new Cell[] { Relations.Respellings(scale) } : [],
                    ]
            )
        );
    }

    /// <summary>Of the formulas one tone away, those that have a name over some root; the others are counted.</summary>
    private static Block Neighbours(FormulaRelations relations, NoteName? root)
    {
        const string Caption = "One tone away";
        var rows = new List<(IReadOnlyList<Cell> Cells, DegreeChord? Chord)>();
        foreach (var near in relations.Neighbours)
        {
            var name = Relations.NameOf(near);
            var reading = near is { Quality: null, Readings: [var first, ..] } ? first : null;
            IReadOnlyList<Cell>? cells =
                reading is not null ? Name(reading, root)
                : name is null ? null
                : root is { } on ? [Words.Of(new Chord(on, near.Formula)), name]
                : [name];
            if (cells is not null)
            {
                IReadOnlyList<Cell> row =
                [
                    Relations.Change(near),
                    root is { } over ? Notes(near, over) : Words.Of(near.Formula),
                    .. cells,
                ];
                rows.Add((row, reading));
            }
        }

        if (rows.Count == 0)
        {
            return Nothing(Caption, "No chord that has a usual name lies one tone away.");
        }

        var table = Table(
            Caption,
            ["change", root is null ? "formula" : "notes", "chord", .. If(root is not null, "in words")],
            rows,
            root
        );
        var nameless = relations.Neighbours.Count - rows.Count;
        return nameless == 0
            ? table
            : new Block.Group(
                table,
                new Block.Prose(
                    nameless == 1
                        ? "1 other change gives a chord without a usual name."
                        : $"{nameless} other changes give chords without a usual name."
                )
            );
    }

    private static Block.Table Table(
        string caption,
        IEnumerable<string> columns,
        IEnumerable<IReadOnlyList<Cell>> rows
    ) => new(caption, [.. columns.Select(static head => new Column(head))], [.. rows]);

    private static string[] If(bool isShown, string head) => isShown ? [head] : [];

    private static Block.Group AsSet(FormulaRelations relations)
    {
        var facts = Sets.Classes.Card(relations.SetClass).Blocks.OfType<Block.Facts>().Single().List;
        return new(
            new Block.Heading("As a set of pitch classes"),
            new Block.Facts([new Fact("prime form", Words.Of(relations.SetClass)), .. facts])
        );
    }

    private static Block.Group Nothing(Words caption, Words words) =>
        new(new Block.Heading(caption), new Block.Prose(words));

    private static Words Notes(FormulaNeighbour near, NoteName root) =>
        near.Change switch
        {
            FormulaChange.Moved => (Words)$"{Note(root, near.From)}\u00a0to\u00a0{Note(root, near.To)}",
            FormulaChange.Added => (Words)$"add\u00a0{Note(root, near.To)}",
            _ => (Words)$"leave out {Note(root, near.From)}",
        };

    private static NoteName Note(NoteName root, Degree? degree) => root + degree!.Value.Interval;

    /// <summary>What a chord on a degree is called: over a root its symbol and its name, else its name and the degree.</summary>
    private static Cell[] Name(DegreeChord chord, NoteName? root)
    {
        var words = chord.Quality is { } quality ? quality.Name : Words.Of(chord.Formula);
        return root is { } outer ? [Words.Of(chord.SimplestOver(outer)), words] : [(Words)$"{words} on {chord.On}"];
    }

    /// <summary>Which notes of the outer formula a chord spells differently, its root spelled simply: "B# as C".</summary>
    private static Words Respellings(DegreeChord chord, NoteName outer)
    {
        var on = chord.SimplestOver(outer).Root;
        return Words.Join(
            ", ",
            chord
                .Functions.Select(each => (Here: outer + each.Outer.Interval, Own: on + each.Own.Interval))
                .Where(static each => each.Own != each.Here)
                .Select(static each => (Words)$"{each.Here}\u00a0as\u00a0{each.Own}")
        );
    }

    /// <summary>Rows about chords, with a column of what they spell differently if any does.</summary>
    private static Block.Table Table(
        string caption,
        IEnumerable<string> columns,
        IEnumerable<(IReadOnlyList<Cell> Cells, DegreeChord? Chord)> rows,
        NoteName? root
    )
    {
        var all = rows.Select(row =>
                (
                    row.Cells,
                    Respells: row.Chord is { } chord && root is { } outer ? Respellings(chord, outer) : Words.None
                )
            )
            .ToList();
        var respells = all.Exists(static row => !row.Respells.IsEmpty);
        return Table(
            caption,
            [.. columns, .. If(respells, "respells")],
            all.Select(row => (IReadOnlyList<Cell>)[.. row.Cells, .. respells ? new Cell[] { row.Respells } : []])
        );
    }

    private static Cell[] Mode(ScaleType type, Degree on, NoteName? root) =>
        root is { } outer
            ? [Words.Of(type.On((outer + on.Interval).Simplest()))]
            : [(Words)$"{Words.Of(type)} on {on}"];
}
