using TheoryKit.Drawing.Grips;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Fingering.Words;

namespace TheoryKit.Drawing.Tunings;

/// <summary>How what a tuning does to chords is described.</summary>
internal static class TuningValues
{
    public static Description<TuningColumn> Columns { get; } =
        new(
            new("tuning", "tunings"),
            static column => Words.Of(column),
            [
                new("open strings", static column => Pitches(column)),
                new("semitones between strings", static column => Layout(column)),
                new("lowest to highest", static column => (Words)$"{column.Lowest} to {column.Highest}"),
                new("range in semitones", static column => column.Range, IsNumber: true),
                new("strings in unison", static column => Groups(column.Unisons)),
                new("strings of the same note", static column => Groups(column.Doublings)),
                new("semitones to retune", static column => column.RetuneDistance, IsNumber: true),
                new("strings to retune", static column => Retuning(column)),
                new("chords with a grip", static column => $"{column.Playable} of {column.Cells.Count}"),
                new(
                    "least effort, all chords",
                    static column => column.LeastEffort is { } effort ? GripWords.Effort(effort) : "not all have a grip"
                ),
                new("grips", static column => column.Count, IsNumber: true),
                new("different shapes", static column => column.DistinctShapes, IsNumber: true),
                new("zones", static column => Zones(column.Zones, column.CompleteZones)),
                new("open strings used", static column => column.OpenStringsInUse, IsNumber: true),
            ]
        );

    /// <summary>The tuning of a cell by itself; where there are columns they name it.</summary>
    public static Trait<TuningCell> OpenStrings { get; } =
        new("tuning", static cell => Words.Said((format, naming) => Printed.Of(cell.Neck.Tuning, naming, format)));

    public static Description<TuningCell> Cells { get; } =
        new(
            new("chord in a tuning", "chords in tunings"),
            static cell => Words.Of(cell.Chord),
            [
                OpenStrings,
                new(
                    "least effort",
                    static cell => cell.LeastEffort is { } effort ? GripWords.Effort(effort) : "no grip",
                    IsNumber: true
                ),
                new("easiest grip", static cell => cell.Best is { } best ? Words.Of(best.Grip) : "none"),
                new("grips", static cell => cell.Count, IsNumber: true),
                new("different shapes", static cell => cell.DistinctShapes, IsNumber: true),
                new("zones", static cell => Zones(cell.Zones.Count, cell.CompleteZones)),
                new("open strings used", static cell => cell.OpenStringsInUse, IsNumber: true),
            ]
        )
        {
            More = static cell =>
                cell.Grips.Reason is { } reason
                    ? [new Block.Prose(Words.Said(reason.InWords))]
                    : [GripBoxes.Of("", [new GripBox(GripDrawing.Of(cell.Best!), GripWords.Under(cell.Best!))])],
        };

    /// <summary>The open strings as they sound, the way players say them.</summary>
    public static Words Pitches(TuningColumn column) => Words.Join("\u00a0", column.OpenPitches.Reverse());

    /// <summary>"5 5 5 4 5", with a minus where it goes down.</summary>
    public static Words Layout(TuningColumn column) =>
        Words.Join("\u00a0", column.OpenIntervals.Select(static interval => new Signed(interval.Semitones, "")));

    /// <summary>"6 4 1, 5 2", or "none".</summary>
    public static string Groups(IReadOnlyList<IReadOnlyList<int>> groups) =>
        groups.Count == 0 ? "none" : string.Join(", ", groups.Select(static group => string.Join('\u00a0', group)));

    /// <summary>"6 2 1 by -2, 3 by -1".</summary>
    public static Words Retuning(TuningColumn column) =>
        column.Retuned is not { } steps ? "not the same strings"
        : column.RetuneDistance == 0 ? "none"
        : Words.Join(
            ", ",
            Enumerable
                .Range(1, steps.Count)
                .Reverse()
                .Where(number => steps[number - 1] != 0)
                .GroupBy(number => steps[number - 1])
                .Select(static group => (Words)$"{string.Join('\u00a0', group)}\u00a0by\u00a0{new Signed(group.Key)}")
        );

    /// <summary>"5, all complete", "6, 4 complete".</summary>
    public static string Zones(int zones, int complete) =>
        zones == 0 ? "none"
        : complete == zones ? $"{zones}, {(zones == 1 ? "complete" : "all complete")}"
        : $"{zones}, {complete} complete";

    /// <summary>A number with its sign, the printed minus for print.</summary>
    private sealed record Signed(int Number, string Plus = "+") : IFormattable
    {
        public string ToString(string? format, IFormatProvider? formatProvider) =>
            Number switch
            {
                < 0 => $"{(format == "P" ? '\u2212' : '-')}{-Number}",
                > 0 => $"{Plus}{Number}",
                _ => "0",
            };
    }
}
