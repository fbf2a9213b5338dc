using System.Globalization;
using TheoryKit.Drawing.Grips;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Theory;
using TheoryKit.Fingering.Moving;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Tunings.Turns;
using TheoryKit.Tunings.Words;

namespace TheoryKit.Drawing.Tunings;

/// <summary>How turning, moving and reading tunings are described.</summary>
internal static class MovingValues
{
    public static Description<StringTurn> Turns { get; } =
        new(
            new("string", "strings"),
            static turn => Words.Of(turn.Number),
            [
                new("from", static turn => Words.Of(turn.From)),
                new("to", static turn => Words.Of(turn.To)),
                new("turn", static turn => TuningWords.Turned(turn)),
                new("semitones", static turn => Words.Of(new Signed(turn.Semitones)), IsNumber: true),
                new("sounds then", static turn => turn.Check is { } check ? check.InWords() : null),
            ]
        );

    public static Description<TuningCheck> Checks { get; } =
        new(
            new("check by ear", "checks by ear"),
            static check => (Words)$"{check.Turned} and {check.InTune}",
            [
                new("on the string that is turned", static check => Words.Of(check.Turned)),
                new("on a string in tune", static check => Words.Of(check.InTune)),
                new("octaves higher", static check => Words.Of(new Signed(check.Octaves)), IsNumber: true),
            ]
        );

    public static Description<MovedPosition> Positions { get; } =
        new(
            new("position", "positions"),
            static moved => Words.Of(moved.Position),
            [
                new("before", static moved => Words.Of(moved.Before)),
                new("after", static moved => Words.Of(moved.After)),
                new(
                    "then in the chord",
                    static moved => moved.Function is { } function ? Chords.Function(function) : "no tone of it"
                ),
                new(
                    "so it",
                    static moved =>
                        moved.Stays ? "stays"
                        : moved.MustMove ? "must move"
                        : "may stay"
                ),
            ]
        );

    public static Description<MovedNote> Notes { get; } =
        new(
            new("note", "notes"),
            static note => Words.Of(note.Pitch),
            [
                new("before", static note => Words.Of(note.Before)),
                new("stays", static note => note.Stays ? "yes" : "no"),
                new("easiest", static note => note.Easiest is { } position ? Words.Of(position) : null),
                new("keeping what stays", static note => note.Kept is { } position ? Words.Of(position) : null),
            ]
        );

    public static Description<OpenStringRole> Roles { get; } =
        new(
            new("string", "strings"),
            static role => Words.Of(role.Number),
            [
                new("pitch", static role => Words.Of(role.Pitch)),
                new("in the chord", static role => role.Function is { } function ? Chords.Function(function) : "bass"),
                new("over the key", static role => Words.Of(role.Degree)),
                new("in the key", static role => role.IsInKey ? "yes" : "no"),
            ]
        );

    public static Description<MovableShape> Shapes { get; } =
        new(
            new("shape", "shapes"),
            static shape => shape.ToString(),
            [
                new("tuning", static shape => TuningWords.Said(shape.Tuning)),
                new("sounds", static shape => Words.Of(shape.Formula)),
                new("root", static shape => RootOf(shape)),
                new(
                    "functions",
                    static shape =>
                        Words.Join(
                            " ",
                            shape
                                .Functions.Reverse()
                                .Select(static each => each is { } function ? (object)function : "x")
                        )
                ),
                new("effort", static shape => GripWords.Effort(shape.Effort), IsNumber: true),
                new("at fret", static shape => shape.Fret, IsNumber: true),
            ]
        )
        {
            More = static shape =>
                [GripBoxes.Of("", [new(GripDrawing.Of(shape.Grip) with { Labels = Labels.Functions })])],
        };

    /// <summary>"on strings 6, 4 and 1".</summary>
    public static string RootOf(MovableShape shape) =>
        shape.RootStrings.Count == 0 ? "left out" : $"on {TuningWords.Strings(shape.RootStrings)}";

    /// <summary>A count with its sign, the printed minus for print.</summary>
    internal sealed record Signed(int Count) : IFormattable
    {
        public string ToString(string? format, IFormatProvider? formatProvider) =>
            Count.ToString(format == "P" ? "+0;\u22120;0" : "+0;-0;0", CultureInfo.InvariantCulture);
    }
}
