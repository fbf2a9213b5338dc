using TheoryKit.Drawing.Ladders;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Theory.Relations;

namespace TheoryKit.Drawing.Theory;

/// <summary>What a comparison says.</summary>
internal static class ComparisonSheet
{
    public static Sheet Of(ComparisonPage page)
    {
        var comparison = page.Comparison;
        var blocks = Blocks(comparison);
        if (page.Neck is { } neck)
        {
            blocks.Add(
                NeckBlocks.Of(neck, comparison.Chords, page.FirstFret, page.LastFret, page.Labels, page.IsLeftHanded)
            );
        }

        if (comparison.Pairs.Count > 0)
        {
            blocks.AddRange(Pairs(comparison));
        }

        return new(blocks);
    }

    /// <summary>The comparison by itself, with no neck.</summary>
    public static Sheet Of(ChordComparison comparison) => Of(new ComparisonPage(comparison) { Neck = null });

    private static List<Block> Blocks(ChordComparison comparison)
    {
        var chords = comparison.Chords;
        var facts = new List<Fact>();
        if (chords.Count > 1)
        {
            facts.Add(new("shared by all", Names(comparison.Shared)));
            for (var i = 0; i < chords.Count; i++)
            {
                if (comparison.OnlyIn(i) is { Count: > 0 } own)
                {
                    facts.Add(new($"only in {chords[i]}", Names(own)));
                }
            }
        }

        return
        [
            new Block.Title(Words.Join(", ", chords), "side by side"),
            .. facts.Count == 0 ? Array.Empty<Block>() : [new Block.Facts(facts)],
            new Block.Beside([LadderRenderer.Picture(LadderDrawing.Of(chords)), new Block.Group(Sounds(comparison))]),
        ];
    }

    private static Words Names(IReadOnlyList<ComparedTone> tones) =>
        tones.Count == 0 ? "nothing" : Words.Join(", ", tones.Select(Chords.Names));

    /// <summary>A row for every sound, the highest first as on the ladder; a column for every chord.</summary>
    private static Block.Table Sounds(ChordComparison comparison)
    {
        var rows = new List<IReadOnlyList<Cell>>();
        foreach (var tone in comparison.Tones.Reverse())
        {
            var row = new List<Cell> { Chords.Names(tone) };
            for (var i = 0; i < comparison.Chords.Count; i++)
            {
                row.Add(
                    tone.Tones[i] switch
                    {
                        null => "",
                        { Function: { } function } => Chords.Function(function, comparison.Chords[i].Formula) with
                        {
                            IsStrong = tone.IsShared && comparison.Chords.Count > 1,
                        },
                        _ => "bass",
                    }
                );
            }

            row.Add(
                comparison.Chords.Count == 1 ? ""
                : tone.IsShared ? "all"
                : tone.OnlyIn is { } only ? (Words)$"{comparison.Chords[only]} alone"
                : $"{tone.Holders.Count} of {comparison.Chords.Count}"
            );
            rows.Add(row);
        }

        return new(
            "Sounds and functions",
            ["sound", .. comparison.Chords.Select(chord => new Column(Words.Of(chord))), "in"],
            rows
        );
    }

    private static IEnumerable<Block> Pairs(ChordComparison comparison)
    {
        var table = Chords.Pairs.Table(comparison.Pairs).Blocks.OfType<Block.Table>().Single();
        yield return table with
        {
            Caption = "Two by two",
        };
    }
}
