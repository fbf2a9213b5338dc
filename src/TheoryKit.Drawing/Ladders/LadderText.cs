using System.Text;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Drawing.Ladders;

/// <summary>Writes a ladder as plain text: a line for every rung, the highest first.</summary>
internal static class LadderText
{
    private const string Empty = "·";

    public static string Write(LadderDrawing ladder, IFormatProvider? naming)
    {
        var lines = new List<string[]>();
        if (ladder.Columns.Any(static column => !column.Heading.IsEmpty))
        {
            lines.Add(["", .. ladder.Columns.Select(column => column.Heading.Plain(naming))]);
        }

        for (var rung = ladder.HighestRung; rung >= ladder.LowestRung; rung--)
        {
            lines.Add([
                ladder.NameOf(rung).Plain(naming),
                .. ladder.Columns.Select(column => Tones(ladder, column, rung, naming)),
            ]);
        }

        var widths = Enumerable.Range(0, lines[0].Length).Select(i => lines.Max(line => line[i].Length)).ToArray();
        var text = new StringBuilder();
        foreach (var line in lines)
        {
            var row = new StringBuilder(line[0].PadLeft(widths[0]));
            for (var i = 1; i < line.Length; i++)
            {
                row.Append("  ").Append(line[i].PadRight(widths[i]));
            }

            text.Append(row.ToString().TrimEnd()).Append('\n');
        }

        return text.ToString();
    }

    private static string Tones(LadderDrawing ladder, LadderColumn column, int rung, IFormatProvider? naming)
    {
        var tones = column
            .Formula.Where(degree => ladder.RungOf(column, degree) == rung)
            .Select(degree => column.Root is { } root ? $"{degree} {Name(root, degree, naming)}" : $"{degree}")
            .ToList();
        return tones.Count == 0 ? Empty : string.Join(", ", tones);
    }

    private static string Name(NoteName root, Degree degree, IFormatProvider? naming) =>
        (root + degree.Interval).ToString(null, naming);
}
