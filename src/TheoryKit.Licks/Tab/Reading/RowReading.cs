using System.Collections.Immutable;
using TheoryKit.Fingering.Hands;
using TheoryKit.Licks.Tab.Remarks;
using TheoryKit.Paths;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Licks.Tab.Reading;

/// <summary>A chord above the strings, with its column there and its place in its own row.</summary>
internal readonly record struct TypedChord(int Column, Chord? Chord, TabLine Line, int At, int Length);

/// <summary>A bar with what stands in it, and above and below it.</summary>
/// <param name="Bar">The bar.</param>
/// <param name="Line">The line of the string on top.</param>
/// <param name="Columns">The numbers.</param>
/// <param name="TimeRow">The count or the rhythm, the first of several; null for none.</param>
/// <param name="Count">Its words, at columns of the strings.</param>
/// <param name="Chords">The chords.</param>
internal sealed record MarkedBar(
    TabBar Bar,
    TabLine Line,
    IReadOnlyList<TabColumn> Columns,
    TabLine? TimeRow,
    IReadOnlyList<Token> Count,
    IReadOnlyList<TypedChord> Chords
);

/// <summary>From rows above and below strings to what they say of the numbers and bars.</summary>
internal sealed class RowReading
{
    private readonly TabStaff staff;
    private readonly Draft[] bars;
    private readonly TabMark[] marks;
    private readonly TabRemarks remarks;

    private RowReading(TabStaff staff, TabNotes notes, TabMark[] marks, TabRemarks remarks)
    {
        (this.staff, this.marks, this.remarks) = (staff, marks, remarks);
        bars = [.. staff.Bars.Select(bar => new Draft(bar, notes.Columns[bar.Number]))];
    }

    /// <summary>A bar as far as its rows are read.</summary>
    private sealed class Draft(TabBar bar, IReadOnlyList<TabColumn> columns)
    {
        public TabBar Bar { get; } = bar;
        public IReadOnlyList<TabColumn> Columns { get; } = columns;
        public TabLine? TimeRow { get; set; }
        public List<Token> Count { get; } = [];
        public List<TypedChord> Chords { get; } = [];
    }

    /// <summary>From bars, rows and numbers to bars with what the rows say, and to the numbers with it.</summary>
    public static List<MarkedBar> Of(
        IReadOnlyList<TabStaff> staves,
        IReadOnlyList<IReadOnlyList<TabRow>> rows,
        TabNotes notes,
        out ImmutableArray<TabMark> marks,
        TabRemarks remarks
    )
    {
        TabMark[] said = [.. notes.Marks];
        var bars = new List<MarkedBar>();
        foreach (var (staff, own) in staves.Zip(rows))
        {
            var reading = new RowReading(staff, notes, said, remarks);
            foreach (var row in own)
            {
                reading.Read(row);
            }

            bars.AddRange(
                reading.bars.Select(bar => new MarkedBar(
                    bar.Bar,
                    staff.Lines[0],
                    bar.Columns,
                    bar.TimeRow,
                    bar.Count,
                    bar.Chords
                ))
            );
        }

        // Told once.
        if (
            rows.SelectMany(static each => each).FirstOrDefault(static row => row.Kind == TabRowKind.Labels) is
            { } label
        )
        {
            remarks.Add(label.Line, 0, label.Line.Text.Length, new TabRemark.RowPassedOver());
        }

        marks = ImmutableArray.Create(said);
        return bars;
    }

    private void Read(TabRow row)
    {
        switch (row.Kind)
        {
            case TabRowKind.Fingers or TabRowKind.Names:
                ReadMarks(row);
                break;
            case TabRowKind.Spans:
                ReadSpans(row.Line.Text);
                break;
            case TabRowKind.Signs:
                ReadSigns(row);
                break;
            case TabRowKind.Time:
                ReadTime(row);
                break;
            case TabRowKind.Chords:
                ReadChords(row);
                break;
        }
    }

    private Draft? BarAt(int column) =>
        bars.Length == 0 ? null : bars[Math.Min(bars.CountWhile(bar => bar.Bar.To <= column), bars.Length - 1)];

    private TabColumn? ColumnAt(int column) => BarAt(column)?.Columns.Near(column);

    private void Change(TabColumn column, Func<TabMark, TabMark> changed)
    {
        foreach (var mark in column.Marks)
        {
            marks[mark] = changed(marks[mark]);
        }
    }

    private void ReadMarks(TabRow row)
    {
        foreach (var token in row.Tokens)
        {
            var found = ColumnAt(staff.Moved(token.At))?.Marks.OrderBy(each => marks[each].String).ToList() ?? [];
            if (row.Number < 1 || row.Number > found.Count)
            {
                remarks.Add(row.Line, token.At, token.Text.Length, new TabRemark.NoNoteAbove());
                continue;
            }

            ref var mark = ref marks[found[row.Number - 1]];
            if (row.Kind == TabRowKind.Names)
            {
                mark = mark with { Name = NoteName.Parse(token.Text) };
            }
            else if (token.Text is "T" or "t" or "0")
            {
                mark = mark with { Finger = Finger.Thumb };
            }
            else if (token.Text is "1" or "2" or "3" or "4")
            {
                mark = mark with { Finger = (Finger)(token.Text[0] - '0') };
            }
            else if (token.Text is not ("o" or "-"))
            {
                remarks.Add(row.Line, token.At, token.Text.Length, new TabRemark.NoFinger());
            }
        }
    }

    private void ReadSpans(string text)
    {
        for (var at = 0; at < text.Length; )
        {
            if (RowText.SpanAt(text, at) is not var (length, isMuted))
            {
                at++;
                continue;
            }

            // The words, then a line up to a bar or a gap.
            var end = at + length;
            while (
                end < text.Length
                && (
                    text[end] is '-' or '.' or '~' or '='
                    || (text[end] == ' ' && end + 1 < text.Length && text[end + 1] is '-' or '.' or '|')
                )
            )
            {
                end++;
            }

            end += end < text.Length && text[end] == '|' ? 1 : 0;
            Span(staff.Moved(at), staff.Moved(end - 1), isMuted);
            at = end;
        }
    }

    private void Span(int from, int to, bool isMuted)
    {
        if (BarAt(from) is not { } begin)
        {
            return;
        }

        for (var bar = begin.Bar.Number - bars[0].Bar.Number; bar < bars.Length && bars[bar].Bar.From <= to; bar++)
        {
            var columns = bars[bar].Columns;
            for (
                var index = columns.CountWhile(each => each.Column < from);
                index < columns.Count && columns[index].Column <= to;
                index++
            )
            {
                Change(
                    columns[index],
                    isMuted ? static mark => mark.With(Technique.PalmMute) : static mark => mark with { Rings = true }
                );
            }
        }
    }

    private void ReadSigns(TabRow row)
    {
        foreach (var token in row.Tokens)
        {
            var column = staff.Moved(token.At);
            if (token.Text[0] == '~')
            {
                var bar = BarAt(column);
                var waved =
                    bar?.Columns.Near(column)
                    ?? bar?.Columns.Near(column - 2)
                    ?? bar?.Columns.Near(staff.Moved(token.At + token.Text.Length - 1));
                if (waved is not null)
                {
                    Change(waved, static mark => mark.With(Technique.Vibrato));
                }
            }
            else if (ColumnAt(column) is { } marked)
            {
                foreach (var c in token.Text)
                {
                    Change(marked, mark => mark.With(c == '.' ? Technique.Staccato : Technique.Accent));
                }
            }
            else
            {
                remarks.Add(row.Line, token.At, token.Text.Length, new TabRemark.NoNoteBelow());
            }
        }
    }

    private void ReadTime(TabRow row)
    {
        foreach (var token in row.Tokens)
        {
            var column = staff.Moved(token.At);
            if (token.Text is not ("|" or "||") && BarAt(column) is { } bar && (bar.TimeRow ??= row.Line) == row.Line)
            {
                bar.Count.Add(token with { At = column });
            }
        }
    }

    private void ReadChords(TabRow row)
    {
        foreach (var token in row.Tokens)
        {
            var column = staff.Moved(token.At);
            if (RowText.IsChord(token.Text, out var chord) && BarAt(column) is { } bar)
            {
                bar.Chords.Add(new(column, chord, row.Line, token.At, token.Text.Length));
            }
        }
    }
}
