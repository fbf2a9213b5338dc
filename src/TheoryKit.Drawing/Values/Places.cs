using TheoryKit.Theory;
using TheoryKit.Tunings;

namespace TheoryKit.Drawing;

/// <summary>How positions and places on a neck are described.</summary>
internal static class Places
{
    public static Description<Position> Positions { get; } =
        new(
            new("position", "positions"),
            static position => Words.Of(position),
            [
                new("string", static position => position.String, IsNumber: true),
                new("fret", static position => position.Fret, IsNumber: true),
            ]
        )
        {
            InWords = static position =>
                position == default ? "no position"
                : position.Fret == 0 ? $"string {position.String} at the nut"
                : $"string {position.String}, fret {position.Fret}",
        };

    public static Description<Place> All { get; } =
        new(
            new("place", "places"),
            static place => Words.Of(place.Position),
            [
                new("string", static place => place.Position.String, IsNumber: true),
                new("fret", static place => place.Position.Fret, IsNumber: true),
                new("pitch", static place => Words.Of(place.Pitch)),
                new("function", static place => new Cell(Words.Of(place.Function), ToneRoles.Of(place.Function))),
            ]
        );

    public static Description<TuningString> Strings { get; } =
        new(
            new("string", "strings"),
            static each => Words.Of(each.Open),
            [
                new(
                    "begins at fret",
                    static each => each.Start == 0 ? null : new Cell(Words.Of(each.Start)),
                    IsNumber: true
                ),
                new("MIDI number", static each => each.Open.MidiNumber, IsNumber: true),
            ]
        )
        {
            InWords = static _ => "open string",
        };

    public static Description<KnownTuning> Tunings { get; } =
        new(
            new("tuning", "tunings"),
            static known => known.Name,
            [
                new("instrument", static known => known.Instrument),
                new("strings", static known => Words.Join(" ", known.Tuning.Strings.Reverse().Select(Open))),
            ]
        );

    private static Words Open(TuningString each) =>
        each.Start == 0 ? Words.Of(each.Open) : (Words)$"{each.Open}@{each.Start}";
}
