using System.Globalization;
using TheoryKit.Drawing.Grips;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Theory;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Naming;

namespace TheoryKit.Drawing.Tunings;

/// <summary>What is said about the open strings of a neck.</summary>
internal static class OpenStringsSheet
{
    private const int MostReadings = 4;
    private const int MostShapes = 4; // side by side on paper

    /// <summary>How much more than the plainest reading another may cost to be worth a line.</summary>
    private const int FarReading = 4;

    public static Sheet Of(OpenStringsReading reading)
    {
        var tuning = reading.Neck.Tuning;
        var facts = new List<Fact>
        {
            new("open strings", TuningWords.Said(tuning)),
            new("the chord", Chords.Described(reading.Chord)),
            new("because", Readings.Because(reading.Readings[0])),
        };
        if (reading.RootStrings.Count > 0)
        {
            facts.Add(new("its root", $"on {TuningWords.Strings(reading.RootStrings)}"));
        }

        if (reading.Neck.Capo > 0)
        {
            facts.Add(new("capo", $"at fret {reading.Neck.Capo}"));
        }

        var blocks = new List<Block>
        {
            new Block.Title(TuningWords.Named(tuning), (Words)$"open strings: {reading.Chord}"),
            new Block.Facts(facts),
            Strings(reading),
        };
        var others = reading
            .Readings.Skip(1)
            .TakeWhile(each => each.Cost <= reading.Readings[0].Cost + FarReading)
            .Take(MostReadings - 1)
            .ToList();
        if (others.Count > 0)
        {
            blocks.Add(Others(others));
        }

        var shapes = OpenStringsReading
            .UsualQualities.Select(quality => (Quality: quality, Shapes: MovableShape.Whole(reading.Shapes(quality))))
            .ToList();
        blocks.Add(new Block.Heading("Shapes that move"));
        blocks.Add(
            new Block.Prose(
                shapes.SelectMany(static each => each.Shapes).FirstOrDefault(static s => !s.IsOpenOnly) is { } first
                    ? $"Each is held here with its lowest fret at {first.Fret}. Slide it along the neck until the string of the root gives the root you want; the chord's quality stays."
                    : "This hand holds none on this neck."
            )
        );
        foreach (var (quality, all) in shapes)
        {
            blocks.Add(Shapes(quality, all));
        }

        return new(blocks);
    }

    private static Block.Table Strings(OpenStringsReading reading)
    {
        var rows = reading
            .Strings.Reverse()
            .Select(each =>
                (IReadOnlyList<Cell>)
                    [
                        each.Number,
                        new(Words.Of(each.Pitch)),
                        each.Function is { } function ? Chords.Function(function, reading.Chord.Formula) : new("bass"),
                        new(Words.Of(each.Degree)),
                        new(each.IsInKey ? "yes" : "no"),
                    ]
            );
        return new(
            "What the strings give",
            [
                new("string", IsNumber: true),
                "pitch",
                new((Words)$"in {reading.Chord}"),
                new((Words)$"over {reading.Key}"),
                "in the key",
            ],
            [.. rows]
        );
    }

    private static Block.Table Others(IEnumerable<ChordReading> readings) =>
        new(
            "Also read as",
            ["chord", new("cost", IsNumber: true), "because"],
            [
                .. readings.Select(static each =>
                    (IReadOnlyList<Cell>)[new(Words.Of(each.Chord)), each.Cost, new(Readings.Because(each))]
                ),
            ]
        );

    private static Block Shapes(ChordQuality quality, IReadOnlyList<MovableShape> shapes)
    {
        var title = Printed.Capital(quality.Name);
        if (shapes.Count == 0)
        {
            return new Block.Prose($"{title}: none that this hand holds.");
        }

        var more = shapes.Count - MostShapes;
        return GripBoxes.Of(
            title,
            [
                .. shapes
                    .Take(MostShapes)
                    .Select(static shape => new GripBox(
                        GripDrawing.Of(shape.Grip) with
                        {
                            Labels = Labels.Functions,
                        },
                        Under(shape)
                    )),
            ],
            more > 0 ? $"and {more} more" : ""
        );
    }

    /// <summary>The frets as in the box, the highest-numbered string first.</summary>
    private static string Frets(MovableShape shape) =>
        string.Join(
            '\u00a0',
            shape
                .Grip.Grip.Strings.Reverse()
                .Select(static each => each.Fret?.ToString(CultureInfo.InvariantCulture) ?? "x")
        );

    private static Words[] Under(MovableShape shape) =>
        [
            shape.RootStrings.Count == 0 ? "root left out" : $"root on {string.Join(", ", shape.RootStrings)}",
            shape.IsOpenOnly ? "open strings only"
            : shape.IsOneFret ? "the open strings too"
            : $"frets {Frets(shape)}",
            $"effort {GripWords.Effort(shape.Effort)}",
        ];
}
