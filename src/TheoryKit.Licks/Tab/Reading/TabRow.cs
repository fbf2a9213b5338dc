using TheoryKit.Licks.Tab.Options;

namespace TheoryKit.Licks.Tab.Reading;

/// <summary>What a row above or below strings says.</summary>
internal enum TabRowKind
{
    /// <summary>Nothing that is read.</summary>
    None,
    Fingers,
    Names,

    /// <summary>Palm muting or ringing over a stretch.</summary>
    Spans,

    /// <summary>Accents, dots and waves.</summary>
    Signs,

    /// <summary>A count or a rhythm.</summary>
    Time,
    Chords,

    /// <summary>Functions or names of notes, which follow from these.</summary>
    Labels,
}

/// <summary>A row above or below strings, read by itself.</summary>
/// <param name="Line">The row.</param>
/// <param name="Kind">What it says.</param>
/// <param name="Tokens">Its words.</param>
/// <param name="Number">Of which of the notes struck together it tells, from 1.</param>
/// <param name="Count">The words of a count or a rhythm, where it could be one.</param>
internal sealed record TabRow(
    TabLine Line,
    TabRowKind Kind,
    IReadOnlyList<Token> Tokens,
    int Number = 1,
    IReadOnlyList<Token>? Count = null
)
{
    /// <summary>From a system to its rows, from the top.</summary>
    public static List<TabRow> Of(TabSystem system, TabTiming timing)
    {
        // There are no more numbers of bars than bars, which a count has.
        var barLines = new Lazy<int>(() => system.Strings[0].Line.Text.Count('|'));
        return
        [
            .. system.Above.Select(line => Of(line, isBelow: false)),
            .. system.Below.Select(line => Of(line, isBelow: true)),
        ];

        TabRow Of(TabLine line, bool isBelow)
        {
            var text = line.Text;
            if (RowText.MarksOf(text) is var (isFingers, number, tokens))
            {
                return new(line, isFingers ? TabRowKind.Fingers : TabRowKind.Names, tokens, number);
            }

            if (RowText.IsSpans(text))
            {
                return new(line, TabRowKind.Spans, []);
            }

            var time = RowText.TimeTokens(text);
            var isBarNumbers =
                RowText.IsNumbers(text)
                && RowText.Tokens(text).Count is var count
                && (count == 1 || count < barLines.Value);
            var told = isBarNumbers ? null : time;
            if (!isBelow && RowText.IsSigns(text))
            {
                return new(line, TabRowKind.Signs, RowText.Tokens(text), Count: told);
            }

            if (!isBelow && isBarNumbers)
            {
                return new(line, TabRowKind.None, []);
            }

            if (time is not null && timing == TabTiming.AsWritten)
            {
                return new(line, TabRowKind.Time, time, Count: told);
            }

            if (!isBelow && RowText.IsChords(text))
            {
                return new(line, TabRowKind.Chords, RowText.Tokens(text, keepsBrackets: true), Count: told);
            }

            return new(line, time is null ? TabRowKind.Labels : TabRowKind.None, [], Count: told);
        }
    }
}
