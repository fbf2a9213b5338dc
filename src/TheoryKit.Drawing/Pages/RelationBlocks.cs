using TheoryKit.Theory;

namespace TheoryKit.Drawing;

/// <summary>What lies inside a formula, around it and next to it, as parts of a page; over a root with the notes.</summary>
internal static class RelationBlocks
{
    private const int MostScales = 12;

    public static IEnumerable<Block> Of(FormulaRelations relations, NoteName? root)
    {
        yield return Pair(Inside(relations, root), Rotations(relations, root));
        yield return Pair(Scales(relations, root), null);
        yield return Pair(Neighbours(relations, root), AsSet(relations));
    }

    public static Sheet Sheet(FormulaRelations relations) =>
        new([new Block.Title(Words.Of(relations.Formula), "and its relations"), .. Of(relations, null)]);

    private static Block.Beside Pair(Block first, Block? second) =>
        new(second is null ? [new Block.Group(first)] : [new Block.Group(first), new Block.Group(second)]);

    private static Block Inside(FormulaRelations relations, NoteName? root)
    {
        const string Caption = "Chords inside";
        var inside = relations.Triads.Concat(relations.Sevenths).ToList();
        return inside.Count == 0
            ? Nothing(Caption, "No triad and no seventh chord lies inside.")
            : new Block.Table(Caption, ["chord", "in words", "stands on", "its tones here"], [.. inside.Select(Row)]);

        IReadOnlyList<Cell> Row(DegreeChord chord) =>
            [
                Name(chord, root),
                chord.Quality?.Name ?? "",
                Chords.Function(chord.On, relations.Formula),
                Words.Join("\u00a0", chord.Functions.Select(static each => each.Outer)),
            ];
    }

    private static Block Rotations(FormulaRelations relations, NoteName? root)
    {
        const string Caption = "The same notes from another root";
        var known = relations.Rotations.Where(static chord => chord.Quality is not null).ToList();
        return known.Count == 0
            ? Nothing(Caption, "From another root these notes have no usual name.")
            : new Block.Table(Caption, ["chord", "in words", "stands on"], [.. known.Select(Row)]);

        IReadOnlyList<Cell> Row(DegreeChord chord) =>
            [Name(chord, root), chord.Quality!.Name, Chords.Function(chord.On, relations.Formula)];
    }

    private static Block Scales(FormulaRelations relations, NoteName? root)
    {
        var all = relations.Scales;
        return all.Count == 0
            ? Nothing("Scales around it", "No scale of the catalogue holds all of its tones.")
            : new Block.Table(
                all.Count > MostScales ? $"Scales around it, the first {MostScales} of {all.Count}" : "Scales around it",
                ["scale", root is null ? "adds" : "adds, as degrees", .. root is null ? [] : new Column[] { "adds" }, "respells"],
                [.. all.Take(MostScales).Select(Row)]
            );

        IReadOnlyList<Cell> Row(ScaleAround scale) =>
            [
                root is { } tonic ? Words.Of(scale.Type.On(tonic)) : scale.Type.Name,
                scale.Added.Count == 0 ? "nothing" : Words.Of(scale.Added),
                .. root is { } from ? new Cell[] { Words.Tones(scale.Added.Tones(from)) } : [],
                Words.Join(
                    ", ",
                    scale
                        .Functions.Where(static each => each.Own.Simple != each.Outer)
                        .Select(static each => (Words)$"{each.Own} as {each.Outer}")
                ),
            ];
    }

    /// <summary>Of the formulas one tone away, those that have a name over some root.</summary>
    private static Block Neighbours(FormulaRelations relations, NoteName? root)
    {
        const string Caption = "One tone away";
        var rows = new List<IReadOnlyList<Cell>>();
        foreach (var near in relations.Neighbours)
        {
            var own = near.Quality;
            var reading = own is null && near.Readings is [var first, ..] ? first : null;
            if (own is not null || reading is not null)
            {
                rows.Add(
                    [
                        Relations.Change(near),
                        root is { } over ? Notes(near, over) : Words.Of(near.Formula),
                        reading is not null ? Name(reading, root)
                            : root is { } on ? Words.Of(new Chord(on, near.Formula))
                            : own!.Name,
                        own?.Name ?? reading!.Quality!.Name,
                    ]
                );
            }
        }

        return rows.Count == 0
            ? Nothing(Caption, "No chord that has a name lies one tone away.")
            : new Block.Table(Caption, ["change", root is null ? "formula" : "notes", "chord", "in words"], rows);
    }

    private static Block.Group AsSet(FormulaRelations relations)
    {
        var facts = Sets.Classes.Card(relations.SetClass).Blocks.OfType<Block.Facts>().Single().List;
        return new(
            new Block.Heading("As a set of pitch classes"),
            new Block.Facts([new Fact("prime form", Words.Of(relations.SetClass)), .. facts])
        );
    }

    private static Block.Group Nothing(Words caption, Words words) => new(new Block.Heading(caption), new Block.Prose(words));

    private static Words Notes(FormulaNeighbour near, NoteName root) =>
        near.Change switch
        {
            FormulaChange.Moved => $"{Note(root, near.From)} to {Note(root, near.To)}",
            FormulaChange.Added => $"add {Note(root, near.To)}",
            _ => $"leave out {Note(root, near.From)}",
        };

    private static NoteName Note(NoteName root, Degree? degree) => root + degree!.Value.Interval;

    private static Words Name(DegreeChord chord, NoteName? root) =>
        root is { } outer ? Words.Of(chord.SimplestOver(outer)) : (Words)$"{chord.Quality?.Name ?? $"{chord.Formula}"} on {chord.On}";
}
