using TheoryKit.Drawing.Ladders;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Relations;

namespace TheoryKit.Drawing.Theory;

/// <summary>What a chord's page says.</summary>
internal static class ChordPageSheet
{
    public static Sheet Of(ChordPage page)
    {
        var chord = page.Chord;
        var blocks = new List<Block>
        {
            new Block.Title(Words.Of(chord), Chords.Described(chord)),
            new Block.Beside([Ladder(chord), new Block.Group(Tones(chord))]),
        };
        if (page.Neck is not null)
        {
            blocks.Add(NeckBlocks.Of(page.Neck, chord, page.FirstFret, page.LastFret, page.Labels, page.IsLeftHanded));
        }

        if (page.ShowsRelations)
        {
            blocks.AddRange(RelationBlocks.Of(chord.Formula.Relations(), chord.Root));
        }

        return new(blocks);
    }

    private static Block Ladder(Chord chord) => Formulas.Ladder(new LadderColumn(chord.Formula, chord.Root, ""));

    private static Block.Table Tones(Chord chord)
    {
        var rows = new List<IReadOnlyList<Cell>>();
        if (chord.FunctionOf(chord.Bass) is null)
        {
            var interval = chord.Root.To(chord.Bass);
            rows.Add([
                Words.Of(chord.Bass),
                Words.None,
                InWords.Of(interval),
                interval.Semitones,
                "bass, not in the formula",
            ]);
        }

        foreach (var degree in chord.Formula)
        {
            var (tone, role) = (chord.Root + degree.Interval, ToneRoles.Of(degree, chord.Formula));
            var isBass = chord.Bass != chord.Root && chord.Bass.IsEnharmonicTo(tone);
            rows.Add([
                Words.Of(tone),
                new(Words.Of(degree), role),
                InWords.Of(degree.Interval),
                degree.Semitones,
                ToneRoles.Words(role) + (isBass ? ", bass" : ""),
            ]);
        }

        return new(
            "Tones and functions",
            ["tone", "function", "above the root", new("semitones", IsNumber: true), "role"],
            rows
        );
    }
}
