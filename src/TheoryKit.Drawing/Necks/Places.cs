using TheoryKit.Drawing.Sheets;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Necks;

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
}
