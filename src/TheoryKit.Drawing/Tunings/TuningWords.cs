using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Turns;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Tunings;

/// <summary>What is said about tunings and turning, in a few words.</summary>
internal static class TuningWords
{
    /// <summary>The name of a tuning, else its strings.</summary>
    public static Words Named(Tuning tuning) => tuning.Name is { } name ? Words.Of(new Called(name)) : Said(tuning);

    /// <summary>The strings as players say them, in the reader's way.</summary>
    public static Words Said(Tuning tuning) => Words.Of(new InOrder(tuning));

    /// <summary>"Standard to Open D".</summary>
    public static Words Way(Scordatura scordatura) => (Words)$"{Named(scordatura.From)} to {Named(scordatura.To)}";

    /// <summary>"down a whole step", "up 3 semitones", "stays".</summary>
    public static string Turned(StringTurn turn) =>
        turn.Direction switch
        {
            Turn.Up => $"up {Amount(turn.Semitones)}",
            Turn.Down => $"down {Amount(turn.Semitones)}",
            _ => "stays",
        };

    /// <summary>How the ear finds it: "an octave below open string 4".</summary>
    public static Words? Heard(StringTurn turn, Tuning to) =>
        turn.Check is not var (turned, inTune, octaves)
            ? null
            : (Words)$"{Here(turned, to)}{Far(octaves)} {There(inTune, to)}";

    /// <summary>"string 6", "strings 6 and 4".</summary>
    public static string Strings(IEnumerable<int> numbers)
    {
        var all = numbers.Select(static number => $"{number}").ToList();
        return $"{(all.Count == 1 ? "string" : "strings")} {English.List(all)}";
    }

    /// <summary>The caution, where any string is turned up.</summary>
    public static IEnumerable<Block> CautionOf(Scordatura scordatura) =>
        scordatura.Steps.Any(static turn => turn.Direction == Turn.Up) ? [new Block.Prose(Cautions.Strings)] : [];

    private static string Amount(int semitones) =>
        Math.Abs(semitones) switch
        {
            1 => "a half step",
            2 => "a whole step",
            12 => "an octave",
            var count => $"{count} semitones",
        };

    private static string Far(int octaves) =>
        octaves == 0
            ? "like"
            : $"{(Math.Abs(octaves) == 1 ? "an octave" : $"{Printed.Number(Math.Abs(octaves))} octaves")} {(octaves < 0 ? "below" : "above")}";

    private static string Here(Position position, Tuning to) =>
        position.Fret == to[position.String].Start ? "" : $"at fret {position.Fret} ";

    private static string There(Position position, Tuning to) =>
        position.Fret == to[position.String].Start
            ? $"open string {position.String}"
            : $"string {position.String} at fret {position.Fret}";

    /// <summary>A tuning with its notes named in the reader's way.</summary>
    private sealed record InOrder(Tuning Tuning) : IFormattable
    {
        public string ToString(string? format, IFormatProvider? formatProvider) =>
            Printed.Of(Tuning, formatProvider, format);
    }

    /// <summary>A name with its sharp as printed: Drop C♯.</summary>
    private sealed record Called(string Name) : IFormattable
    {
        public string ToString(string? format, IFormatProvider? formatProvider) =>
            format == "P" ? Name.Replace('#', '♯') : Name;
    }
}
