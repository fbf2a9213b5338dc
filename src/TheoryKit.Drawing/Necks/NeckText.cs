using System.Text;
using TheoryKit.Tunings;

namespace TheoryKit.Drawing;

/// <summary>Writes a neck as monospace text: a row for each string, a cell for each fret.</summary>
internal static class NeckText
{
    public static string Write(NeckDrawing drawing)
    {
        var neck = drawing.Neck;
        var marks = drawing.Shown.ToLookup(static mark => mark.Position);
        var (first, last) = (Math.Max(1, drawing.FirstFret), drawing.LastFret);
        string Label(Position position) =>
            marks[position].Select(mark => Written(drawing, mark)).FirstOrDefault() ?? "";
        var widest = Math.Max(2, drawing.Shown.Select(mark => Written(drawing, mark).Length).DefaultIfEmpty().Max());
        var names = neck.Tuning.Strings.Select(each => each.Open.Name.ToString("G", drawing.Naming)).ToArray();
        var nameWidth = names.Max(static name => name.Length);
        var cell = widest + 2;
        var rows = new List<List<string>>();

        var header = new List<string> { new(' ', nameWidth), new(' ', widest + 2), " " };
        for (var fret = first; fret <= last; fret++)
        {
            header.Add(Centre($"{fret}", cell, ' ') + " ");
        }

        rows.Add(header);
        for (var number = 1; number <= neck.StringCount; number++)
        {
            var open = neck.OpenFret(number);
            var row = new List<string>
            {
                names[number - 1].PadLeft(nameWidth),
                Centre(drawing.FirstFret == 0 && open == 0 ? Label(new(number, 0)) : "", widest + 2, ' '),
                first == 1 ? (neck.Tuning[number].Start > 0 ? " " : "|") : ":",
            };
            for (var fret = first; fret <= last; fret++)
            {
                // A cell that ends where the string sounds open shows the open string before the capo or the peg.
                row.Add(
                    fret < open ? new string(' ', cell + 1)
                    : fret == open ? Centre(Label(new(number, fret)), cell, ' ') + (neck.Capo == open ? "#" : "o")
                    : Centre(Label(new(number, fret)), cell, '-') + "|"
                );
            }

            rows.Add(row);
        }

        var text = new StringBuilder();
        text.Append(drawing.Title).Append('\n');
        foreach (var row in rows)
        {
            var line = drawing.IsLeftHanded
                ? string.Concat(Enumerable.Reverse(row).Select(Turned))
                : string.Concat(row);
            text.Append(line.TrimEnd()).Append('\n');
        }

        return text.ToString().TrimEnd('\n');
    }

    /// <summary>A cell for the other hand: its wire at the other side, its text as it is.</summary>
    private static string Turned(string cell) =>
        cell.Length > 1 && cell[^1] is '|' or '#' or 'o' or ' ' && cell.Length > 1 ? cell[^1] + cell[..^1] : cell;

    private static string Written(NeckDrawing drawing, Mark mark) =>
        (
            mark.Label
            ?? drawing.Labels switch
            {
                Labels.Functions => mark.Function?.ToString(),
                Labels.NoteNames => mark.Name?.ToString("G", drawing.Naming),
                Labels.Fingers => mark.Finger is { } finger ? Mark.FingerSign(finger) : null,
                _ => null,
            }
        )
            is { Length: > 0 } written
        && !mark.IsPale
            ? written
            : "*";

    private static string Centre(string text, int width, char fill)
    {
        var left = (width - text.Length + 1) / 2;
        return new string(fill, left) + text + new string(fill, width - text.Length - left);
    }
}
