using System.Globalization;
using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Tunings.Turns;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Tunings;

/// <summary>What is said about a retuning.</summary>
internal static class ScordaturaSheets
{
    public static Sheet Of(Scordatura scordatura) => Of(new ScordaturaSheet(scordatura));

    public static Sheet Of(ScordaturaSheet sheet)
    {
        var scordatura = sheet.Scordatura;
        var blocks = new List<Block>
        {
            new Block.Title(TuningWords.Way(scordatura), Counted(scordatura)),
            new Block.Picture(
                (context, naming) =>
                    new HtmlWriter(8 * 1024)
                        .Open("div", "tk-wide")
                        .Raw(ScordaturaPicture.Html(scordatura, context, naming))
                        .Close()
                        .ToString(),
                naming => ScordaturaPicture.Text(scordatura, naming)
            ),
        };
        if (scordatura.Steps.Count > 0)
        {
            blocks.Add(Steps(scordatura));
            blocks.Add(
                new Block.Prose(
                    (
                        scordatura.Steps.Select(static turn => turn.Direction).Distinct().Count() > 1
                            ? "Strings that go down come first, so that the neck never carries more than in the tuning that pulls harder. "
                            : ""
                    )
                        + "Come up to every pitch from a little below, which takes the slack out of the machine, and go round once more "
                        + "at the end: each string that is turned moves the others a little."
                )
            );
        }

        if (sheet.Tensions is { } report)
        {
            blocks.Add(new Block.Heading("Tension"));
            blocks.AddRange(StringValues.Blocks(report));
        }

        if (scordatura.Steps.Count > 0 && sheet.Tensions?.Caution is null)
        {
            blocks.Add(new Block.Prose(Cautions.Strings));
        }

        return new(blocks);
    }

    /// <summary>"4 strings down, 1 up, 1 stays".</summary>
    private static Words Counted(Scordatura scordatura)
    {
        var counts = new List<string>();
        foreach (var (direction, word) in new[] { (Turn.Down, "down"), (Turn.Up, "up") })
        {
            if (scordatura.Strings.Count(turn => turn.Direction == direction) is > 0 and var count)
            {
                counts.Add($"{(counts.Count == 0 ? English.Count(count, "string") : $"{count}")} {word}");
            }
        }

        var staying = scordatura.Strings.Count - scordatura.Steps.Count;
        return counts.Count == 0 ? "nothing to turn"
            : staying == 0 ? string.Join(", ", counts)
            : $"{string.Join(", ", counts)}, {staying} {(staying == 1 ? "stays" : "stay")}";
    }

    private static Block.Table Steps(Scordatura scordatura)
    {
        var rows = scordatura.Steps.Select(
            (turn, index) =>
                (IReadOnlyList<Cell>)
                    [
                        index + 1,
                        turn.Number,
                        new(TuningWords.Turned(turn)),
                        new((Words)$"{turn.From} to {turn.To}"),
                        new(turn.To.Frequency().ToString("0.00", CultureInfo.InvariantCulture)),
                        new(TuningWords.Heard(turn, scordatura.To) ?? "by a tuner: no string is right yet"),
                    ]
        );
        return new(
            "In this order",
            [
                new("step", IsNumber: true),
                new("string", IsNumber: true),
                "turn",
                "pitch",
                new("Hz (A4 = 440)", IsNumber: true),
                "check by ear",
            ],
            [.. rows]
        );
    }
}
