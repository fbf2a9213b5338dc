using TheoryKit.Drawing.Grips;
using TheoryKit.Drawing.Hands;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Zones;
using TheoryKit.Theory.Chords;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Zones;

/// <summary>How windows, forms and shapes are described.</summary>
internal static class ZoneValues
{
    public static Description<Window> Windows { get; } =
        new(
            new("window", "windows"),
            static window => Words.Of(window),
            [new("frets", static window => window.Width, IsNumber: true)]
        )
        {
            InWords = static window => ZoneWords.Frets(window),
        };

    public static Description<ZoneQuery> Queries { get; } =
        new(
            new("question for zones", "questions for zones"),
            static query => Words.Of(query.Chord),
            [new("neck", static query => Words.Of(query.Neck)), new("hand", static query => Words.Of(query.Hand))]
        );

    public static Description<Form> Forms { get; } =
        new(
            new("form", "forms"),
            static form => Words.Of(form),
            [
                new("root at the lower fret", static form => Strings(form.Lower)),
                new("root at the upper fret", static form => Strings(form.Upper)),
            ]
        )
        {
            InWords = static form => ZoneWords.Roots(form),
        };

    public static Description<ShapeNote> Notes { get; } =
        new(
            new("tone of a shape", "tones of a shape"),
            static note => Words.Of(note.Place.Pitch),
            [
                new(
                    "function",
                    static note => new Cell(Words.Of(note.Place.Function), ToneRoles.Of(note.Place.Function))
                ),
                new("string", static note => note.Place.Position.String, IsNumber: true),
                new("fret", static note => note.Place.Position.Fret, IsNumber: true),
                new("finger", static note => HandValues.Sign(note.Finger), IsNumber: true),
            ]
        );

    public static Description<Shape> Shapes { get; } =
        new(
            new("shape", "shapes"),
            static shape => (Words)$"{shape.Root}: {shape.Formula}",
            [
                new("frets", static shape => Words.Of(shape.Window)),
                new("tones", static shape => shape.Notes.Count, IsNumber: true),
                new("missing", static shape => shape.IsComplete ? "nothing" : Words.Join("\u00a0", shape.Missing)),
                new("effort", static shape => GripWords.Effort(shape.Effort), IsNumber: true),
            ]
        )
        {
            InWords = static shape => $"a shape in {ZoneWords.Frets(shape.Window)}",
            More = static shape => [Tones(shape)],
        };

    public static Description<ShapeAlternative> Alternatives { get; } =
        new(
            new("tone", "tones that lie elsewhere too"),
            static other => Words.Of(other.Note.Place.Pitch),
            [
                new(
                    "in the shape",
                    static other =>
                        (Words)
                            $"string {other.Note.Place.Position.String}, fret {other.Note.Place.Position.Fret} with {HandValues.Sign(other.Note.Finger)}"
                ),
                new("or", static other => ZoneWords.Alternative(other)),
            ]
        );

    public static Description<ShapeRule> Rules { get; } =
        new(new("layout", "layouts"), static rule => Words.Of(rule), []);

    private static Words? Strings(IReadOnlyList<int> strings) =>
        strings.Count == 0 ? null
        : strings.Count == 1 ? $"string {strings[0]}"
        : $"strings {English.List(strings.Select(static number => $"{number}"))}";

    private static Block Tones(Shape shape)
    {
        var table = Notes.Table(shape.Notes).Blocks[0];
        return table is Block.Table tones ? tones with { Caption = "Tones from the lowest up" } : table;
    }
}
