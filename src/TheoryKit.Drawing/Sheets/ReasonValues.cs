using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Lines;
using TheoryKit.Fingering.Moving;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Fingering.Words;
using TheoryKit.Fingering.Zones;
using TheoryKit.Paths;
using TheoryKit.Paths.Routes;
using TheoryKit.Paths.Words;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Words;
using TheoryKit.Tunings.Strings;
using TheoryKit.Tunings.Words;

namespace TheoryKit.Drawing.Sheets;

/// <summary>Reasons, remarks and warnings by themselves: each is shown by its words.</summary>
internal static class ReasonValues
{
    public static Description<ReadingReason> OfReadings { get; } =
        Of<ReadingReason>("reason for a reading", "reasons for readings", static each => each.InWords);

    public static Description<TensionWarning> Warnings { get; } =
        Of<TensionWarning>("warning", "warnings", static each => each.InWords);

    public static Description<GaugeWarning> GaugeWarnings { get; } =
        Of<GaugeWarning>("warning", "warnings", static each => each.InWords);

    public static Description<StringAdvice> Advice { get; } =
        Of<StringAdvice>("advice", "advice", static each => each.InWords);

    public static Description<TensionNote> Notes { get; } =
        Of<TensionNote>("note on tensions", "notes on tensions", static each => (_, _) => each.InWords());

    public static Description<NoGripReason> OfGrips { get; } =
        Of<NoGripReason>("reason for no grip", "reasons for no grip", static each => each.InWords);

    public static Description<ChordWithoutGrip> WithoutGrip { get; } =
        Of<ChordWithoutGrip>("chord without a grip", "chords without a grip", static each => each.InWords);

    public static Description<NoLineReason> OfLines { get; } =
        Of<NoLineReason>("reason for no line", "reasons for no line", static each => each.InWords);

    public static Description<NoZoneReason> OfZones { get; } =
        Of<NoZoneReason>("reason for no zone", "reasons for no zone", static each => each.InWords);

    public static Description<MustMoveReason> OfMoving { get; } =
        Of<MustMoveReason>("reason to move", "reasons to move", static each => each.InWords);

    public static Description<ForeignTone> Foreign { get; } =
        new(
            new("position", "positions"),
            static each => Words.Of(each.Position),
            [new("gives", static each => Words.Of(each.Pitch)), new("open", static each => each.IsOpen ? "yes" : "no")]
        );

    public static Description<TuningLimit> OfTunings { get; } =
        Of<TuningLimit>("cut off by", "limits that cut off tunings", static each => each.InWords);

    public static Description<NoTuningReason> OfNoTuning { get; } =
        Of<NoTuningReason>("reason for no tuning", "reasons for no tuning", static each => each.InWords);

    public static Description<NoteReason> OfNotes { get; } =
        Of<NoteReason>("why it is there", "why they are there", static each => each.InWords);

    public static Description<NoRouteReason> OfRoutes { get; } =
        Of<NoRouteReason>("reason for no route", "reasons for no route", static each => each.InWords);

    public static Description<TechniqueLoss> OfTechniques { get; } =
        Of<TechniqueLoss>("lost technique", "lost techniques", static each => (_, _) => each.Lost());

    public static Description<ChordLack> Lacks { get; } =
        Of<ChordLack>("what a chord lacks", "what chords lack", static each => (_, _) => each.InWords());

    private static Description<T> Of<T>(
        string one,
        string many,
        Func<T, Func<string?, IFormatProvider?, string>> say
    ) => new(new(one, many), each => Words.Said(say(each)), []);
}
