using TheoryKit.Drawing.Sheets;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Relations;
using TheoryKit.Theory.Words;

namespace TheoryKit.Drawing.Theory;

/// <summary>How chords are described, and what lies between them.</summary>
internal static class Chords
{
    public static Description<Chord> All { get; } =
        new(
            new("chord", "chords"),
            static chord => Words.Of(chord),
            [
                new("tones", static chord => Words.Tones(chord.Tones)),
                new("functions", static chord => Words.Of(chord.Formula)),
                new("bass", static chord => chord.Bass == chord.Root ? null : Words.Of(chord.Bass)),
            ]
        )
        {
            InWords = static chord => Described(chord),
        };

    public static Description<ChordTone> Tones { get; } =
        new(
            new("tone", "tones"),
            static tone => Words.Of(tone.Name),
            [new("function", static tone => tone.Function is { } function ? Function(function) : "none")]
        );

    public static Description<CommonTone> CommonTones { get; } =
        new(
            new("common tone", "common tones"),
            static tone =>
                tone.IsRespelled ? (Words)$"{tone.InFirst.Name} = {tone.InSecond.Name}" : Words.Of(tone.InFirst.Name),
            [
                new("function in the first", static tone => Function(tone.InFirst)),
                new("function in the second", static tone => Function(tone.InSecond)),
            ]
        );

    public static Description<VoiceMove> Moves { get; } =
        new(
            new("move", "moves"),
            static move => (Words)$"{move.From.Name} to {move.To.Name}",
            [
                new("from function", static move => Function(move.From)),
                new("to function", static move => Function(move.To)),
                new("semitones", static move => Way(move), IsNumber: true),
            ]
        );

    public static Description<VoiceMotion> Motions { get; } =
        new(
            new("motion", "motions"),
            static motion => (Words)$"{motion.From} to {motion.To}",
            [
                new("semitones in all", static motion => motion.Total, IsNumber: true),
                new("voices held", static motion => motion.Held, IsNumber: true),
            ]
        )
        {
            InWords = static _ => "least motion of the voices",
            More = static motion => Moves.Table(motion.Moves).Blocks,
        };

    public static Description<ChordPair> Pairs { get; } =
        new(
            new("pair of chords", "pairs of chords"),
            static pair => (Words)$"{pair.First} and {pair.Second}",
            [
                new(
                    "common tones",
                    static pair =>
                        pair.CommonTones.Count == 0
                            ? "none"
                            : Words.Join(
                                ", ",
                                pair.CommonTones.Select(static tone =>
                                    tone.InFirst.Function == tone.InSecond.Function
                                        ? (Words)$"{tone.InFirst.Name}\u00a0({FunctionWords(tone.InFirst)})"
                                        : (Words)
                                            $"{tone.InFirst.Name}\u00a0({FunctionWords(tone.InFirst)}, then {FunctionWords(tone.InSecond)})"
                                )
                            )
                ),
                new("semitones apart", static pair => pair.Distance, IsNumber: true),
                new(
                    "least motion",
                    static pair =>
                        Words.Join(
                            ", ",
                            pair.Motion.Moves.Where(static move => !move.IsHeld)
                                .Select(static move =>
                                    (Words)$"{move.From.Name}\u00a0to\u00a0{move.To.Name}\u00a0{Way(move)}"
                                )
                        )
                ),
            ]
        );

    public static Description<ComparedTone> ComparedTones { get; } =
        new(
            new("compared tone", "compared tones"),
            static tone => Names(tone),
            [
                new("semitones above the first root", static tone => tone.Semitones, IsNumber: true),
                new(
                    "functions",
                    static tone =>
                        Words.Join(" ", tone.Tones.Select(static each => each is { } has ? FunctionWords(has) : "-"))
                ),
                new("in", static tone => tone.IsShared ? "all" : $"{tone.Holders.Count} of {tone.Tones.Count}"),
            ]
        );

    /// <summary>What a sound is called, by all names that the chords have for it.</summary>
    public static Words Names(ComparedTone tone) =>
        Words.Join(" = ", tone.Holders.Select(holder => tone.Tones[holder]!.Value.Name).Distinct());

    public static Words Described(Chord chord) => Words.Said(chord.InWords);

    public static Cell Function(Degree function) => new(Words.Of(function), ToneRoles.Of(function));

    public static Cell Function(Degree function, Formula formula) =>
        new(Words.Of(function), ToneRoles.Of(function, formula));

    private static Cell Function(ChordTone tone) => tone.Function is { } function ? Function(function) : "bass";

    private static Words FunctionWords(ChordTone tone) => tone.Function is { } function ? Words.Of(function) : "bass";

    private static string Way(VoiceMove move) => $"{move.Semitones:+0;\u22120;0}";
}
