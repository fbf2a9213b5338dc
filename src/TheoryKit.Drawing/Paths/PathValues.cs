using System.Globalization;
using Fractions;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tab;
using TheoryKit.Paths;
using TheoryKit.Paths.Sounding;
using TheoryKit.Paths.Timing;
using TheoryKit.Paths.Words;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Paths;

/// <summary>How the values that paths are made of are described.</summary>
internal static class PathValues
{
    public static Description<Technique> Techniques { get; } =
        new(
            new("technique", "techniques"),
            static technique => technique.Name,
            [
                new("in tab", static technique => technique.Sign),
                new("goes on from the note before", static technique => technique.IsJoined ? "yes" : null),
                new(
                    "loudness against a plain note",
                    static technique => technique.Loudness == 1 ? null : Number(technique.Loudness),
                    IsNumber: true
                ),
                new(
                    "part of its length that sounds",
                    static technique => technique.Sounds == 1 ? null : Number(technique.Sounds),
                    IsNumber: true
                ),
            ]
        );

    public static Description<PathNote> Notes { get; } =
        new(
            new("note", "notes"),
            static note => note.IsDead ? Technique.Dead.Name : Words.Of(note.Pitch),
            [
                new("string", static note => note.Position.String, IsNumber: true),
                new("fret", static note => note.Position.Fret, IsNumber: true),
                new("starts at beat", static note => Beats(note.Start), IsNumber: true),
                new("lasts beats", static note => Beats(note.Length), IsNumber: true),
                new("finger", static note => note.Finger is { } finger ? Mark.FingerSign((int)finger) : null),
                new("hand at fret", static note => note.Place is { } place ? (Cell)place : null, IsNumber: true),
                new("played as", static note => Words.Join(", ", note.Techniques)),
                new("why", static note => note.Why is { } why ? Words.Said(why.InWords) : null),
            ]
        );

    public static Description<Stroke> Strokes { get; } =
        new(
            new("stroke", "strokes"),
            static stroke => $"at beat {stroke.Start.ToString()}",
            [
                new("lasts beats", static stroke => Beats(stroke.Length), IsNumber: true),
                new("accented", static stroke => stroke.IsAccented ? "yes" : null),
            ]
        );

    public static Description<Rhythm> Rhythms { get; } =
        new(
            new("rhythm", "rhythms"),
            static rhythm => rhythm.ToString(),
            [
                new("strokes", static rhythm => rhythm.StrokeCount, IsNumber: true),
                new("beats until it is repeated", static rhythm => Beats(rhythm.Beats), IsNumber: true),
            ]
        )
        {
            More = static rhythm => [RhythmPicture.Of(rhythm)],
        };

    public static Description<Swing> Swings { get; } =
        new(
            new("swing", "swings"),
            static swing => swing.ToString(),
            [
                new("first half of a beat lasts", static swing => Beats(swing.Part), IsNumber: true),
                new("second half lasts", static swing => Beats((Fraction.One - swing.Part).Reduce()), IsNumber: true),
                new("first to second", static swing => Ratio(swing)),
            ]
        );

    public static Description<WrittenValue> Values { get; } =
        new(
            new("note value", "note values"),
            static value => value.ToString(),
            [
                new("in whole notes", static value => Beats(value.Length), IsNumber: true),
                new("in quarter notes", static value => Beats((value.Length * 4).Reduce()), IsNumber: true),
            ]
        );

    public static Description<PitchPoint> Points { get; } =
        new(
            new("point of the pitch's curve", "points of the pitch's curve"),
            static point => $"after {Number(100 * point.At)}\u00a0% of its time",
            [
                new(
                    "cents above the note",
                    static point => point.Cents < 0 ? $"−{Number(-point.Cents)}" : Number(point.Cents),
                    IsNumber: true
                ),
            ]
        );

    public static Description<SoundingNote> Sounding { get; } =
        new(
            new("sounding note", "sounding notes"),
            static note => note.Note.IsDead ? Technique.Dead.Name : Words.Of(note.Pitch),
            [
                new("starts at beat", static note => Beats(note.Start), IsNumber: true),
                new("sounds for beats", static note => Beats(note.Length), IsNumber: true),
                new("loudness", static note => Number(note.Loudness), IsNumber: true),
                new("string", static note => note.Note.Position.String, IsNumber: true),
                new("fret", static note => note.Note.Position.Fret, IsNumber: true),
                new("played as", static note => Words.Join(", ", note.Note.Techniques)),
            ]
        )
        {
            More = static note => note.Curve.Count == 0 ? [] : Points.Table(note.Curve).Blocks,
        };

    public static Sheet Performance(Performance performance)
    {
        var blocks = new List<Block>
        {
            new Block.Title(
                $"{English.Count(performance.Notes.Count, "note")} at {Number(performance.Tempo)} beats a minute",
                performance.Swing == Swing.Straight ? "straight" : $"swung {performance.Swing.ToString()}"
            ),
            new Block.Facts([new("lasts", $"{Number(performance.Seconds)}\u00a0s")]),
        };
        if (performance.Notes.Count > 0)
        {
            blocks.Add(
                new Block.Table(
                    "What sounds",
                    [
                        "note",
                        new("from (s)", IsNumber: true),
                        new("for (s)", IsNumber: true),
                        new("loudness", IsNumber: true),
                    ],
                    [
                        .. performance
                            .Notes.Take(MostShown)
                            .Select(note =>
                                (IReadOnlyList<Cell>)
                                    [
                                        new Cell(note.Note.IsDead ? Technique.Dead.Name : Words.Of(note.Pitch)),
                                        Seconds(performance.SecondsAt(note.Start)),
                                        Seconds(performance.SecondsAt(note.Length)),
                                        Number(note.Loudness),
                                    ]
                            ),
                    ]
                )
            );
        }

        if (performance.Notes.Count > MostShown)
        {
            blocks.Add(new Block.Prose($"and {performance.Notes.Count - MostShown} more."));
        }

        return new(blocks);
    }

    private const int MostShown = 500;

    private static string Beats(Fraction beats) => beats.ToString();

    private static string Number(double number) => number.ToString("0.###", CultureInfo.InvariantCulture);

    private static string Seconds(double seconds) => seconds.ToString("0.000", CultureInfo.InvariantCulture);

    private static string Ratio(Swing swing)
    {
        var ratio = (swing.Part / (Fraction.One - swing.Part)).Reduce();
        return $"{ratio.Numerator} to {ratio.Denominator}";
    }
}
