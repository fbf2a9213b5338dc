using TheoryKit.Fingering;
using TheoryKit.Paths;
using TheoryKit.Theory;
using TheoryKit.Tunings;

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
            .Add(StringValues.Materials)
            .Add(StringValues.Strings)
            .Add(StringValues.KnownSets)
            .Add(StringValues.Sets)
            .Add(StringValues.Tensions)
            .Add(StringValues.Limits)
            .Add(StringValues.Choices)
            .Add(StringValues.StringTensions)
            .Add(MovingValues.Turns)
            .Add(MovingValues.Checks)
            .Add(MovingValues.Positions)
            .Add(MovingValues.Notes)
            .Add(MovingValues.Roles)
            .Add(MovingValues.Shapes)
            .Add(Hands.All)
            .Add(Hands.Weights)
            .Add(GripValues.Grips)
            .Add(GripValues.Strings)
            .Add(GripValues.Queries)
            .Add(ZoneValues.Windows)
            .Add(ZoneValues.Forms)
            .Add(ZoneValues.Notes)
            .Add(ZoneValues.Shapes)
            .Add(ZoneValues.Alternatives)
            .Add(ZoneValues.Rules)
            .Add(FingeredLines.Notes)
            .Add(FingeredLines.Asked)
            .Add(FingeredLines.Queries)
            .Add(PathValues.Techniques)
            .Add(PathValues.Notes)
            .Add(PathValues.Strokes)
            .Add(PathValues.Rhythms)
            .Add(PathValues.Swings)
            .Add(PathValues.Values)
            .Add(PathValues.Sounding)
            .Add(TuningValues.Columns)
            .Add(TuningValues.Cells)
            .Set.Add(new NeckDrawingRenderer(naming))
            .Add(new LadderRenderer(naming))
            .Add(new TabDrawingRenderer(naming))
            .Add(new PathRenderer(naming))
            .Add(new PathNeckRenderer(naming))
            .Add(new SheetRenderer<Performance>(PathValues.Performance, naming))
            .Add(new SheetRenderer<TensionReport>(StringValues.Report, naming))
            .Add(new SheetRenderer<StringTension>(StringValues.One, naming))
            .Add(new SheetRenderer<IEnumerable<StringTension>>(StringValues.StringTensions.Table, naming))
            .Add(new SheetRenderer<ChordGrip>(GripValues.Grip, naming))
            .Add(new SheetRenderer<IEnumerable<ChordGrip>>(GripValues.Boxes, naming))
            .Add(new SheetRenderer<GripAnswer>(GripValues.Answer, naming))
            .Add(new SheetRenderer<GripProgression>(GripValues.Progression, naming))
            .Add(new SheetRenderer<GripSheet>(GripValues.Boxes, naming))
            .Add(new GripDrawingRenderer(naming))
            .Add(new SheetRenderer<Scordatura>(ScordaturaSheets.Of, naming))
            .Add(new SheetRenderer<ScordaturaSheet>(ScordaturaSheets.Of, naming))
            .Add(new SheetRenderer<MovedChanges>(MovedSheets.Changes, naming))
            .Add(new SheetRenderer<MovedGrip>(MovedSheets.Grip, naming))
            .Add(new SheetRenderer<MovedLine>(MovedSheets.Line, naming))
            .Add(new SheetRenderer<OpenStringsReading>(OpenStringsSheet.Of, naming))
            .Add(new SheetRenderer<Zone>(static zone => ZoneSheets.Page(new(zone)), naming))
            .Add(new SheetRenderer<IEnumerable<Zone>>(ZoneSheets.Zones, naming))
            .Add(new SheetRenderer<ZoneMap>(static map => new(ZoneSheets.Map(map)), naming))
            .Add(new SheetRenderer<ZonePage>(ZoneSheets.Page, naming))
            .Add(new SheetRenderer<RootSheet>(ZoneSheets.Roots, naming))
            .Add(new SheetRenderer<ZoneAcrossQualities>(ZoneSheets.Across, naming))
            .Add(new SheetRenderer<FingeredLine>(FingeredLines.Line, naming))
            .Add(new SheetRenderer<LineDrawing>(FingeredLines.Line, naming))
            .Add(new SheetRenderer<LineAnswer>(FingeredLines.Answer, naming))
            .Add(new SheetRenderer<FormulaRelations>(RelationBlocks.Sheet, naming))
            .Add(new SheetRenderer<Changes>(Scales.Changes, naming))
            .Add(new SheetRenderer<Bar>(Scales.Bar, naming))
            .Add(new SheetRenderer<TuningComparison>(ComparisonOfTuningsSheet.Of, naming))
            .Add(new SheetRenderer<ComparisonOfTunings>(ComparisonOfTuningsSheet.Of, naming))
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
