using System.Text;
using TheoryKit.Drawing.Necks;

namespace TheoryKit.Drawing.Grips;

/// <summary>
/// Writes grip boxes as monospace text: <c>x</c> and <c>o</c> above the nut (<c>=</c>), fingers on the strings, a flat finger
/// joined by <c>-</c>; functions and notes below.
/// </summary>
internal static class GripText
{
    private const int NumberWidth = 3;

    /// <summary>The lines of one box.</summary>
    public static IReadOnlyList<string> Lines(GripDrawing drawing, params IEnumerable<string> under)
    {
        var strings = drawing.Grip.Strings.Count;
        var order = Enumerable.Range(1, strings);
        var numbers = (drawing.IsLeftHanded ? order : order.Reverse()).ToList();
        var marks = drawing.Marks.ToDictionary(static mark => mark.Position.String);
        var functions = numbers.Select(number => marks.GetValueOrDefault(number)?.Function?.ToString() ?? "").ToList();
        var names = numbers
            .Select(number => marks.GetValueOrDefault(number)?.Name?.ToString("G", drawing.Naming) ?? "")
            .ToList();
        var width = Math.Max(3, functions.Concat(names).Max(static each => each.Length) + 1);
        var (first, last) = drawing.Frets;
        var isAtStart = first == drawing.Base + 1;
        var lines = new List<string>();
        var title =
            drawing.Chord is { } chord && drawing.Title == chord.ToString("P", drawing.Naming)
                ? chord.ToString("G", drawing.Naming)
                : drawing.Title;
        if (title.Length > 0)
        {
            lines.Add(title);
        }

        lines.Add(
            Row(
                "",
                number =>
                    !drawing.Grip[number].Sounds ? "x"
                    : drawing.IsOpen(number) && !Begins(number) ? "o"
                    : ""
            )
        );
        lines.Add(
            Row(
                "",
                _ => "",
                isAtStart
                    ? drawing.Base > 0
                        ? '#'
                        : '='
                    : '-',
                isAtStart
                    ? drawing.Base > 0
                        ? '#'
                        : '='
                    : '-'
            )
        );
        var barres = drawing.Barres.ToList();
        for (var fret = first; fret <= last; fret++)
        {
            var here = fret;
            lines.Add(
                Row(
                    here == first && here > 1 ? $"{here}" : "",
                    number =>
                        marks.TryGetValue(number, out var mark) && mark.Position.Fret == here
                            ? mark.Finger is { } finger
                                ? Mark.FingerSign(finger)
                                : "o"
                            : drawing.StartOf(number) > here
                                ? " "
                                : "|",
                    ' ',
                    ' ',
                    (left, right) =>
                        barres.Exists(each =>
                            each.Fret == here
                            && Math.Max(left, right) <= each.Thick
                            && Math.Min(left, right) >= each.Thin
                        )
                )
            );
        }

        Add(functions);
        Add(names);
        lines.AddRange(under);
        return [.. lines.Select(static line => line.TrimEnd())];

        bool Begins(int number) => drawing.StartOf(number) is var start && start >= first && start <= last;

        void Add(List<string> labels)
        {
            if (labels.Exists(static label => label.Length > 0))
            {
                lines.Add(Row("", number => labels[numbers.IndexOf(number)]));
            }
        }

        string Row(
            string head,
            Func<int, string> at,
            char fill = ' ',
            char between = ' ',
            Func<int, int, bool>? isJoined = null
        )
        {
            var row = new StringBuilder(head.PadLeft(NumberWidth - 1)).Append(' ');
            for (var i = 0; i < numbers.Count; i++)
            {
                var text = at(numbers[i]);
                row.Append(text.Length == 0 ? new string(fill, 1) : text);
                var gap = width - Math.Max(1, text.Length);
                if (i + 1 < numbers.Count)
                {
                    row.Append(isJoined?.Invoke(numbers[i], numbers[i + 1]) == true ? '-' : between, gap);
                }
            }

            return row.ToString();
        }
    }

    /// <summary>Boxes side by side, in as many rows as a terminal needs.</summary>
    public static string Beside(IReadOnlyList<IReadOnlyList<string>> boxes, int most = 96)
    {
        const int Gap = 4;
        var text = new StringBuilder();
        var at = 0;
        while (at < boxes.Count)
        {
            var row = new List<IReadOnlyList<string>>();
            var width = 0;
            while (at < boxes.Count && (row.Count == 0 || width + Gap + WidthOf(boxes[at]) <= most))
            {
                width += WidthOf(boxes[at]) + (row.Count == 0 ? 0 : Gap);
                row.Add(boxes[at++]);
            }

            for (var line = 0; line < row.Max(static box => box.Count); line++)
            {
                var written = row.Select(box => (line < box.Count ? box[line] : "").PadRight(WidthOf(box) + Gap));
                text.Append(string.Concat(written).TrimEnd()).Append('\n');
            }

            text.Append(at < boxes.Count ? "\n" : "");
        }

        return text.ToString();
    }

    private static int WidthOf(IReadOnlyList<string> box) => box.Max(static line => line.Length);
}
