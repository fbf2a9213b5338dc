using Fractions;
using TheoryKit.Theory.Chords;

namespace TheoryKit.Licks.Tab.Writing;

/// <summary>A bar as rows of characters, all as wide as it.</summary>
/// <param name="Number">Which bar it is, from 0.</param>
/// <param name="Above">The rows above the strings: chords, signs, what is muted.</param>
/// <param name="Strings">The strings from string 1 on.</param>
/// <param name="Time">The count or the rhythm.</param>
/// <param name="Marks">Rows of marks below by their names.</param>
internal sealed record BarText(
    int Number,
    IReadOnlyList<string> Above,
    IReadOnlyList<string> Strings,
    string Time,
    IReadOnlyDictionary<string, char[]> Marks
)
{
    public const string End = "end";
    public const string PalmMuted = "PM";
    private const string NoChord = "N.C.";

    public int Width => Time.Length;

    public static string Name(Chord? chord, IFormatProvider? naming) => chord?.ToString("G", naming) ?? NoChord;

    /// <summary>From a bar and where everything in it stands to its rows.</summary>
    public static BarText Of(WrittenBar bar, BarLayout layout, int stringCount, IFormatProvider? naming)
    {
        var strings = StringsOf(bar, layout, stringCount);
        var (chords, signs) = (Blank(layout), Blank(layout));
        foreach (var note in bar.Notes)
        {
            var at = layout.At(note.Note.Start);
            Put(strings[note.Note.Position.String - 1], at - note.Before.Length, note.Before + note.Sign);
            Put(signs, at, note.AboveSign);
        }

        foreach (var (start, chord) in layout.Chords)
        {
            Put(chords, layout.At(start), Name(chord, naming));
        }

        return new(
            bar.Number,
            [new(chords), new(signs), new(Muted(bar, layout))],
            [.. strings.Select(static row => new string(row))],
            new(layout.Values is { } values ? Rhythm(layout, values) : Count(bar, layout)),
            MarksOf(bar, layout)
        );
    }

    private static char[] Blank(BarLayout layout, char fill = ' ')
    {
        var row = new char[layout.Width];
        Array.Fill(row, fill);
        return row;
    }

    private static void Put(char[] row, int at, string text) =>
        text.AsSpan(0, Math.Min(text.Length, Math.Max(0, row.Length - at)))
            .CopyTo(row.AsSpan(Math.Min(at, row.Length)));

    /// <summary>The lines of the strings, = where a note is held.</summary>
    private static char[][] StringsOf(WrittenBar bar, BarLayout layout, int count)
    {
        var strings = Enumerable.Range(0, count).Select(_ => Blank(layout, '-')).ToArray();
        foreach (var (number, until) in bar.HeldInto)
        {
            Hold(number, 0, until);
        }

        foreach (var note in bar.Notes)
        {
            var (number, at) = (note.Note.Position.String, layout.At(note.Note.Start));
            if (note.SlidesFromBefore && note.Note.Start == bar.From)
            {
                Array.Fill(strings[number - 1], '=', 0, at);
            }

            if (note.IsHeld)
            {
                Hold(number, at, note.Note.End);
            }
        }

        return strings;

        void Hold(int number, int from, Fraction until) =>
            Array.Fill(strings[number - 1], '=', from, (until >= bar.To ? layout.Width : layout.At(until)) - from);
    }

    private static char[] Rhythm(BarLayout layout, IReadOnlyDictionary<Fraction, string> values)
    {
        var row = Blank(layout);
        foreach (var (start, value) in values)
        {
            Put(row, layout.At(start), value);
        }

        return row;
    }

    private static char[] Count(WrittenBar bar, BarLayout layout)
    {
        var count = Blank(layout);
        for (var beat = bar.From; beat < bar.To; beat += Fraction.One)
        {
            Put(count, layout.At(beat), Beat(beat));
        }

        foreach (var start in bar.Notes.Select(static note => note.Note.Start).Concat(bar.HoldEnds))
        {
            if (!start.Denominator.IsOne)
            {
                Put(count, layout.At(start), Part(start));
            }
        }

        foreach (var rest in bar.Rests)
        {
            Put(count, layout.At(rest), "r".PadRight(rest.Denominator.IsOne ? Beat(rest).Length : 1));
        }

        if (bar.End is { } end)
        {
            Put(count, layout.At(end), End);
        }

        return count;

        string Beat(Fraction beat) => $"{beat - bar.From + 1}";
    }

    private static string Part(Fraction start)
    {
        var part = (start - (Fraction)WrittenPath.Whole(start)).Reduce();
        return part == new Fraction(1, 2) ? "&"
            : part == new Fraction(1, 4) ? "e"
            : part == new Fraction(3, 4) ? "a"
            : ".";
    }

    /// <summary>From the first to the last of those muted one after the other.</summary>
    private static char[] Muted(WrittenBar bar, BarLayout layout)
    {
        var row = Blank(layout);
        for (var first = 0; first < bar.Notes.Count; first++)
        {
            var last = first;
            while (last < bar.Notes.Count && bar.Notes[last].Above.HasFlag(AboveSigns.PalmMute))
            {
                last++;
            }

            if (last == first)
            {
                continue;
            }

            var (left, right) = (layout.At(bar.Notes[first].Note.Start), layout.At(bar.Notes[last - 1].Note.Start));
            Put(row, left, PalmMuted);
            if (right > left + 1)
            {
                Array.Fill(row, '-', left + PalmMuted.Length, right + 1 - left - PalmMuted.Length);
            }

            first = last - 1;
        }

        return row;
    }

    private static Dictionary<string, char[]> MarksOf(WrittenBar bar, BarLayout layout)
    {
        var rows = new Dictionary<string, char[]>(StringComparer.Ordinal);
        foreach (var note in bar.Notes)
        {
            var number = note.Row == 0 ? "" : $" {note.Row + 1}";
            Mark(new string(' ', note.Row + 1), note.Label);
            Mark($"fingers{number}", note.Finger);
            Mark($"notes{number}", note.Spelled);

            void Mark(string name, string? text)
            {
                if (string.IsNullOrEmpty(text))
                {
                    return;
                }

                if (!rows.TryGetValue(name, out var row))
                {
                    rows[name] = row = Blank(layout);
                }

                Put(row, layout.At(note.Note.Start), text);
            }
        }

        return rows;
    }
}
