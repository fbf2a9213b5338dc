using System.Text;

namespace TheoryKit.Drawing.Necks;

/// <summary>
/// Writes a neck as monospace text: a row for each string, a cell for each fret, the open string before them. A capo is
/// <c>#</c>, the peg of a short string <c>o</c>, a mark without a label <c>*</c>.
/// </summary>
internal static class NeckText
{
    private const int TrailOnLine = 16;
    private const int GesturesOnLine = 4;

    public static string Write(NeckDrawing drawing)
    {
        var neck = drawing.Neck;
        var labels = drawing
            .Shown.GroupBy(static mark => mark.Position)
            .ToDictionary(static group => group.Key, group => Written(drawing, group.First()));
        string At(int number, int fret) => labels.GetValueOrDefault(new(number, fret), "");

        var widest = Math.Max(2, labels.Values.Select(static label => label.Length).DefaultIfEmpty().Max());
        var names = neck.Tuning.Strings.Select(each => each.Open.Name.ToString("G", drawing.Naming)).ToList();
        var nameWidth = names.Max(static name => name.Length);
        var (first, last) = (Math.Max(1, drawing.FirstFret), drawing.LastFret);

        var text = new StringBuilder(1024);
        text.Append(drawing.Title).Append("  (").Append(Printed.Of(neck.Tuning, drawing.Naming, "G"));
        text.Append(neck.Capo > 0 ? $", capo {neck.Capo}" : "").Append(drawing.IsLeftHanded ? ", left-handed" : "");
        text.Append(")\n");
        Line(0);
        for (var number = 1; number <= neck.StringCount; number++)
        {
            text.Append('\n');
            Line(number);
        }

        WriteBands();
        if (!drawing.Trail.IsEmpty)
        {
            text.Append("\norder: ");
            text.AppendJoin(
                "\n       ",
                drawing.Trail.Chunk(TrailOnLine).Select(static line => string.Join(' ', line))
            );
        }

        if (!drawing.Gestures.IsEmpty)
        {
            text.Append("\nplayed: ");
            text.AppendJoin(
                "\n        ",
                drawing
                    .Gestures.Select(static gesture => $"{gesture.Position} {gesture.Words}")
                    .Distinct()
                    .Chunk(GesturesOnLine)
                    .Select(static line => string.Join(", ", line))
            );
        }

        return text.ToString();

        void WriteBands()
        {
            var start = nameWidth + widest + 3; // where the first fret's cell begins
            var width = start + ((last - first + 1) * (widest + 3));
            foreach (var lane in drawing.Lanes.GroupBy(static each => each.Lane).OrderBy(static lane => lane.Key))
            {
                var row = new char[width];
                Array.Fill(row, ' ');
                foreach (var (band, _) in lane)
                {
                    var from =
                        band.Window.First == 0
                            ? nameWidth
                            : start + (Math.Max(0, band.Window.First - first) * (widest + 3));
                    var to =
                        band.Window.Last == 0
                            ? start - 1
                            : start + ((Math.Min(last, band.Window.Last) - first + 1) * (widest + 3)) - 1;
                    var label = $"{band.Name} {band.Window.First}-{band.Window.Last}";
                    label =
                        label.Length > to - from - 2
                            ? band.Name[..Math.Min(band.Name.Length, Math.Max(0, to - from - 2))]
                            : label;
                    var bar = $"[{Centre(label, to - from - 2, ' ')}]";
                    bar.CopyTo(0, row, drawing.IsLeftHanded ? width - from - bar.Length : from, bar.Length);
                }

                text.Append('\n').Append(new string(row).TrimEnd());
            }
        }

        // String 0 is the line of fret numbers.
        void Line(int number)
        {
            var cells = new List<string>
            {
                number == 0 ? new(' ', nameWidth)
                : drawing.IsLeftHanded ? names[number - 1].PadRight(nameWidth)
                : names[number - 1].PadLeft(nameWidth),
            };
            var open = number == 0 ? 0 : neck.OpenFret(number);
            cells.Add(
                drawing.FirstFret == 0 ? Centre(number > 0 && open == 0 ? At(number, 0) : "", widest + 2, ' ') : " "
            );

            cells.Add(
                number == 0 || neck.Tuning[number].Start >= first ? " "
                : first == 1 ? "|"
                : ":"
            );
            for (var fret = first; fret <= last; fret++)
            {
                var (label, fill, wire) =
                    number == 0 ? ($"{fret}", ' ', ' ')
                    : fret < open ? ("", ' ', ' ')
                    : fret == open ? (At(number, fret), ' ', open == neck.Capo ? '#' : 'o')
                    : (At(number, fret), '-', '|');
                var cell = Centre(label, widest + 2, fill);
                cells.Add(drawing.IsLeftHanded ? wire + cell : cell + wire);
            }

            if (drawing.IsLeftHanded)
            {
                cells.Reverse();
            }

            text.Append(string.Concat(cells).TrimEnd());
        }
    }

    private static string Written(NeckDrawing drawing, Mark mark)
    {
        var label =
            mark.Label
            ?? drawing.Labels switch
            {
                Labels.Functions => mark.Function?.ToString(),
                Labels.NoteNames => mark.Name?.ToString("G", drawing.Naming),
                Labels.Order => mark.Order,
                Labels.Fingers => mark.Finger is { } finger ? Mark.FingerSign(finger) : null,
                _ => null,
            };
        return string.IsNullOrWhiteSpace(label) || mark.IsPale ? "*" : label;
    }

    private static string Centre(string text, int width, char fill)
    {
        var left = Math.Max(0, (width - text.Length + 1) / 2);
        return new string(fill, left) + text + new string(fill, Math.Max(0, width - text.Length - left));
    }
}
