using TheoryKit.Theory;

namespace TheoryKit.Drawing;

/// <summary>The renderers of this library: a line for every type of value.</summary>
public static class DrawingRenderers
{
    /// <summary>All of them, with English note names.</summary>
    public static RendererSet All { get; } = Named(null);

    /// <summary>All of them, with notes named in the reader's way.</summary>
    /// <param name="naming">A <see cref="NoteNaming"/>; null for English.</param>
    public static RendererSet Named(IFormatProvider? naming) =>
        new Described(naming)
            .Add(Notes.NoteNames)
            .Add(Notes.Pitches)
            .Add(Notes.Intervals)
            .Add(Notes.Degrees)
            .Add(Formulas.All)
            .Add(Formulas.Qualities)
            .Add(Chords.All)
            .Add(Chords.Tones)
            .Add(Chords.CommonTones)
            .Add(Chords.Moves)
            .Add(Chords.Motions)
            .Add(Chords.Pairs)
            .Add(Chords.ComparedTones)
            .Add(Relations.ToneFunctions)
            .Add(Relations.DegreeChords)
            .Add(Relations.Neighbours)
            .Add(Relations.ScalesAround)
            .Add(Scales.Types)
            .Add(Scales.All)
            .Add(Scales.Keys)
            .Add(Scales.Times)
            .Add(Scales.Numerals)
            .Add(Scales.Spans)
            .Add(Readings.All)
            .Add(Readings.Terms)
            .Add(Sets.All)
            .Add(Sets.Classes)
            .Add(Sets.Vectors)
            .Add(Places.Positions)
            .Add(Places.All)
            .Add(Instruments.All)
            .Add(Instruments.Known)
            .Add(Instruments.TunedStrings)
            .Add(Instruments.Necks)
            .Set.Add(new NeckDrawingRenderer(naming))
            .Add(new LadderRenderer(naming))
            .Add(new SheetRenderer<FormulaRelations>(RelationBlocks.Sheet, naming))
            .Add(new SheetRenderer<Changes>(Scales.Changes, naming))
            .Add(new SheetRenderer<Bar>(Scales.Bar, naming))
            .Add(new SheetRenderer<ChordPage>(ChordPageSheet.Of, naming))
            .Add(new SheetRenderer<ComparisonPage>(ComparisonSheet.Of, naming))
            .Add(new SheetRenderer<ChordComparison>(ComparisonSheet.Of, naming));

    /// <summary>Adds for each description the renderer of a value and that of a sequence.</summary>
    private readonly struct Described(IFormatProvider? naming, RendererSet? set = null)
    {
        public RendererSet Set => set ?? RendererSet.Empty;

        public Described Add<T>(Description<T> description)
            where T : notnull =>
            new(
                naming,
                Set.Add(new SheetRenderer<T>(description.Card, naming))
                    .Add(new SheetRenderer<IEnumerable<T>>(description.Table, naming))
            );
    }
}
