using TheoryKit.Drawing.Grips;
using TheoryKit.Drawing.Hands;
using TheoryKit.Drawing.Joins;
using TheoryKit.Drawing.Ladders;
using TheoryKit.Drawing.Licks;
using TheoryKit.Drawing.Lines;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Paths;
using TheoryKit.Drawing.Practice;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Routes;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tab;
using TheoryKit.Drawing.Theory;
using TheoryKit.Drawing.Tunings;
using TheoryKit.Drawing.Zones;
using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Learning;
using TheoryKit.Fingering.Lines;
using TheoryKit.Fingering.Moving;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Fingering.Zones;
using TheoryKit.Licks;
using TheoryKit.Licks.Analysis;
using TheoryKit.Licks.Folders;
using TheoryKit.Licks.Moves;
using TheoryKit.Licks.Practice;
using TheoryKit.Licks.Search;
using TheoryKit.Licks.Tab;
using TheoryKit.Paths.Exercises;
using TheoryKit.Paths.Joins;
using TheoryKit.Paths.MadeLines;
using TheoryKit.Paths.Routes;
using TheoryKit.Paths.Sounding;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Theory.Relations;
using TheoryKit.Tunings.Strings;
using TheoryKit.Tunings.Turns;

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
            .Add(HandValues.All)
            .Add(HandValues.Weights)
            .Add(GripValues.Grips)
            .Add(GripValues.Strings)
            .Add(GripValues.Queries)
            .Add(ZoneValues.Queries)
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
            .Add(PathValues.Points)
            .Add(Joinings.Rules)
            .Add(Joinings.Queries)
            .Add(Joinings.Extents)
            .Add(Joinings.Chords)
            .Add(Joinings.Joins)
            .Add(Joinings.Cells)
            .Add(PracticeValues.Drills)
            .Add(PracticeValues.Accents)
            .Add(PracticeValues.Cycles)
            .Add(PracticeValues.Rules)
            .Add(PracticeValues.Stroke)
            .Add(PracticeValues.Ladders)
            .Add(PracticeValues.Hinges)
            .Add(PracticeValues.Approaches)
            .Add(PracticeValues.Requests)
            .Add(LearnedHands.Notes)
            .Add(LearnedHands.Lines)
            .Add(LearnedHands.Terms)
            .Add(LearnedHands.TermDifferences)
            .Add(LearnedHands.Weights)
            .Add(LearnedHands.Agreements)
            .Add(LearnedHands.BeforeAndAfter)
            .Add(LearnedHands.Options)
            .Add(RouteSheets.Plans)
            .Add(RouteSheets.Weights)
            .Add(RouteSheets.Costs)
            .Add(RouteSheets.Stops)
            .Add(RouteSheets.Queries)
            .Add(TuningValues.Columns)
            .Add(TuningValues.Cells)
            .Add(SearchValues.Chords)
            .Add(SearchValues.Requirements)
            .Add(SearchValues.Cuts)
            .Add(SearchValues.Limits)
            .Add(SearchValues.Queries)
            .Add(ReasonValues.OfReadings)
            .Add(ReasonValues.Warnings)
            .Add(ReasonValues.GaugeWarnings)
            .Add(ReasonValues.Advice)
            .Add(ReasonValues.Notes)
            .Add(ReasonValues.OfGrips)
            .Add(ReasonValues.WithoutGrip)
            .Add(ReasonValues.OfLines)
            .Add(ReasonValues.OfZones)
            .Add(ReasonValues.OfMoving)
            .Add(ReasonValues.Foreign)
            .Add(ReasonValues.OfTunings)
            .Add(ReasonValues.OfNoTuning)
            .Add(ReasonValues.OfNotes)
            .Add(ReasonValues.OfRoutes)
            .Add(ReasonValues.OfTechniques)
            .Add(ReasonValues.Lacks)
            .Add(LickAnalysisSheets.Notes)
            .Add(LickAnalysisSheets.Bars)
            .Add(LickAnalysisSheets.Changes)
            .Add(LickAnalysisSheets.Functions)
            .Add(LickAnalysisSheets.Parts)
            .Add(LickAnalysisSheets.Summaries)
            .Add(LickAnalysisSheets.Zones)
            .Add(PracticeSheets.Outcomes)
            .Add(PracticeSheets.Entries)
            .Add(PracticeSheets.Renames)
            .Add(PracticeSheets.Broken)
            .Add(PracticeSheets.Days)
            .Add(PracticeSheets.Histories)
            .Add(PracticeSheets.Due)
            .Add(PracticeSheets.Options)
            .Add(PracticeSheets.Counts)
            .Add(LickSheets.Headers)
            .Add(LickSheets.Remarks)
            .Add(LickSheets.Options)
            .Add(LickSheets.WriteOptions)
            .Add(MovedLickSheets.Remarks)
            .Add(MovedLickSheets.Tones)
            .Add(LickFolderValues.Kept)
            .Add(LickFolderValues.Broken)
            .Add(LickFolderValues.Found)
            .Add(LickFolderValues.Similar)
            .Add(LickFolderValues.Differences)
            .Add(LickFolderValues.Lines)
            .Add(LickFolderValues.Criteria)
            .Add(LickFolderValues.Queries)
            .Set.Add(new NeckDrawingRenderer(naming))
            .Add(new LadderRenderer(naming))
            .Add(new TabDrawingRenderer(naming))
            .Add(new PathRenderer(naming))
            .Add(new PathNeckRenderer(naming))
            .Add(new SheetRenderer<Lick>(static lick => LickSheets.Drawing(new(lick)), naming))
            .Add(new SheetRenderer<LickDrawing>(LickSheets.Drawing, naming))
            .Add(new SheetRenderer<IEnumerable<Lick>>(LickSheets.Licks.Table, naming))
            .Add(new SheetRenderer<LickComparison>(ComparedLicks.Of, naming))
            .Add(new SheetRenderer<MovedLick>(MovedLickSheets.One, naming))
            .Add(new SheetRenderer<IEnumerable<MovedLick>>(MovedLickSheets.Several, naming))
            .Add(new SheetRenderer<TabReading>(LickSheets.Reading, naming))
            .Add(new SheetRenderer<PickStrokes>(PracticeValues.Strokes, naming))
            .Add(new SheetRenderer<ZoneTravel>(PracticeValues.Travel, naming))
            .Add(new SheetRenderer<MadeLine>(PracticeValues.Made, naming))
            .Add(new SheetRenderer<Route>(RouteSheets.One, naming))
            .Add(new SheetRenderer<RouteAnswer>(RouteSheets.Answer, naming))
            .Add(new RouteMapRenderer(naming))
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
            .Add(new SheetRenderer<JoinedChanges>(JoiningSheets.Exercise, naming))
            .Add(new SheetRenderer<IEnumerable<JoinedChanges>>(Joinings.Exercises.Table, naming))
            .Add(new SheetRenderer<JoinTable>(JoiningSheets.Table, naming))
            .Add(new SheetRenderer<LineDifference>(LearnedHands.Difference, naming))
            .Add(new SheetRenderer<LearnedHand>(LearnedHands.Learned, naming))
            .Add(new SheetRenderer<FormulaRelations>(RelationBlocks.Sheet, naming))
            .Add(new SheetRenderer<Changes>(Scales.Changes, naming))
            .Add(new SheetRenderer<Bar>(Scales.Bar, naming))
            .Add(new SheetRenderer<TuningComparison>(ComparisonOfTuningsSheet.Of, naming))
            .Add(new SheetRenderer<ComparisonOfTunings>(ComparisonOfTuningsSheet.Of, naming))
            .Add(new SheetRenderer<TuningProgress>(SearchValues.Progress, naming))
            .Add(new SheetRenderer<FoundTuning>(SearchValues.Found, naming))
            .Add(new SheetRenderer<IEnumerable<FoundTuning>>(SearchValues.Found, naming))
            .Add(new SheetRenderer<TuningAnswer>(SearchValues.Answer, naming))
            .Add(new SheetRenderer<LickAnalysis>(LickAnalysisSheets.Of, naming))
            .Add(new SheetRenderer<ChordPage>(ChordPageSheet.Of, naming))
            .Add(new SheetRenderer<Likeness>(LickFolderValues.Alike, naming))
            .Add(new SheetRenderer<LickFolder>(LickFolderValues.Folder, naming))
            .Add(new LickResultsRenderer(naming))
            .Add(new SheetRenderer<ComparisonPage>(ComparisonSheet.Of, naming))
            .Add(new SheetRenderer<ChordComparison>(ComparisonSheet.Of, naming))
            .Add(new SheetRenderer<PracticeDay>(PracticeSheets.Today, naming))
            .Add(new SheetRenderer<PracticeHistory>(PracticeSheets.History, naming))
            .Add(new SheetRenderer<PracticeLog>(PracticeSheets.Log, naming));

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
