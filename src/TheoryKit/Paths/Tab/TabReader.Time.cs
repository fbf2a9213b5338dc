using System.Globalization;
using System.Numerics;
using Fractions;
using TheoryKit.Theory;

namespace TheoryKit.Paths;

internal sealed partial class TabReader
{
    // Rhythms whose parts have no common measure would grow without end.
    private const int LongestMeasure = 512;

    private static readonly Fraction Half = new(1, 2);
    private static readonly Fraction Quarter = new(1, 4);
    private static readonly Fraction ThreeQuarters = new(3, 4);
    private static readonly Fraction Third = new(1, 3);
    private static readonly Fraction TwoThirds = new(2, 3);

    private bool spacingTold;
    private bool evenTold;

    private void SetTimes()
    {
        var lead = LeadOf();
        foreach (var bar in bars)
        {
            var isTimed = bar.TimeRow is not null;
            if (options.Timing == TabTiming.Spacing)
            {
                if (!BySpacing(bar, lead, 0))
                {
                    Evenly(bar);
                }
            }
            else if (options.Timing == TabTiming.Even || !(isTimed && ByRow(bar)))
            {
                if (options.Timing == TabTiming.Even || !(BySpacing(bar, lead, 0) || BySpacing(bar, lead, 1)))
                {
                    Evenly(bar);
                }
            }

            SetBeats(bar);
            SetChordTimes(bar);
        }
    }

    /// <summary>Where beat 1 stands in bars: where the earliest number of any of them does.</summary>
    private int LeadOf()
    {
        var least = int.MaxValue;
        foreach (var bar in bars)
        {
            if (bar.Moments.Count > 0)
            {
                least = Math.Min(least, bar.Moments[0].Column - bar.From);
            }
        }

        return least <= 3 ? least : 1;
    }

    private void SetBeats(TabTypedBar bar)
    {
        var last = bar.Moments.Count > 0 ? bar.Moments[^1].Time : Fraction.Zero;
        if (bar.End < Fraction.Zero || (bar.End <= last && bar.Moments.Exists(static moment => !moment.IsRest)))
        {
            bar.End = null;
        }

        var end = bar.End ?? Fraction.Zero;
        var beats = time.Beats;
        if (last >= beats || end > beats)
        {
            var most = end > last ? end : last + new Fraction(1, 1000);
            beats = checked(
                (int)
                    BigInteger.Min(
                        ((most / beats).Numerator + (most / beats).Denominator - 1) / (most / beats).Denominator,
                        int.MaxValue / time.Beats
                    ) * beats
            );
        }

        bar.Beats = Math.Max(bar.Beats, beats);
    }

    // ---- A count or a rhythm ----

    private bool ByRow(TabTypedBar bar)
    {
        var tokens = bar.TimeMarks;
        tokens.Sort(static (left, right) => left.Column.CompareTo(right.Column));
        var isCount = tokens.Exists(static token => char.IsAsciiDigit(token.Text[0]));
        isCount |= tokens.Exists(static token => token.Text is "r" or "&" or "+" or "a" or ".");
        bar.HasTime = isCount ? ByCount(bar) : ByRhythm(bar);
        return bar.HasTime;
    }

    private bool ByCount(TabTypedBar bar)
    {
        var anchors = new List<(int Column, int Beat)>();
        foreach (var (column, _, word) in bar.TimeMarks)
        {
            if (
                char.IsAsciiDigit(word[0])
                && int.Parse(word, CultureInfo.InvariantCulture) - 1 is var beat
                && (anchors.Count == 0 || (beat > anchors[^1].Beat && column > anchors[^1].Column))
            )
            {
                anchors.Add((column, beat));
            }
        }

        if (anchors.Count == 0)
        {
            anchors.Add((bar.TimeMarks[0].Column, 0));
        }

        if (anchors.Count == 1)
        {
            // The bar line is where the next bar begins.
            var (column, beat) = anchors[0];
            if (beat >= time.Beats || bar.To <= column)
            {
                return false;
            }

            anchors.Add((bar.To, time.Beats));
        }

        var marked = new Dictionary<int, (Fraction Time, bool IsRest, string Word)>();
        var segment = 0;
        foreach (var (column, _, word) in bar.TimeMarks)
        {
            var exact = Linear(column, ref segment);
            var whole = new Fraction(BigInteger.Divide(exact.Numerator, exact.Denominator));
            var part = word switch
            {
                "&" or "+" => Near(exact - whole, Half, Third),
                "e" => Near(exact - whole, Quarter, Third),
                "a" => Near(exact - whole, ThreeQuarters, TwoThirds),
                _ => exact - whole,
            };
            marked[column] = ((whole + part).Reduce(), word == "r", word);
        }

        var used = new List<TabMoment>();
        segment = 0;
        var last = new Fraction(-1);
        foreach (var moment in bar.Moments)
        {
            var exact = Linear(moment.Column, ref segment);
            if (marked.TryGetValue(moment.Column, out var mark))
            {
                moment.Time = mark.Time;
            }
            else if (Beside(moment, out mark))
            {
                moment.Time = mark.Time;
            }
            else
            {
                var snapped = Snapped(exact);
                moment.Time = snapped > last ? snapped : exact;
                RemarkBetween(moment, "");
            }

            if (moment.Time <= last)
            {
                moment.Time = exact;
            }

            if (moment.Time <= last || moment.Time < Fraction.Zero)
            {
                RemarkBetween(moment, " The count does not fit; the spacing or equal notes are read instead.");
                return false;
            }

            last = moment.Time;
        }

        foreach (var (column, mark) in marked)
        {
            if (mark.IsRest)
            {
                used.Add(new(column) { Time = mark.Time, IsRest = true });
            }
            else if (mark.Word == "end")
            {
                bar.End = mark.Time;
            }
        }

        AddRests(bar, used);
        bar.At = column =>
        {
            if (marked.TryGetValue(column, out var mark))
            {
                return mark.Time;
            }

            var from = 0;
            return Linear(column, ref from);
        };
        return true;

        // Between the beats, exactly.
        Fraction Linear(int column, ref int from)
        {
            while (from + 2 < anchors.Count && anchors[from + 1].Column <= column)
            {
                from++;
            }

            var ((left, beat), (right, next)) = (anchors[from], anchors[from + 1]);
            return (beat + new Fraction((long)(column - left) * (next - beat), right - left)).Reduce();
        }

        // A bracket or a finger's width beside its count.
        bool Beside(TabMoment moment, out (Fraction Time, bool IsRest, string Word) mark)
        {
            foreach (var column in (int[])[moment.Column + 1, moment.Column - 1])
            {
                if (marked.TryGetValue(column, out mark) && !mark.IsRest && MomentAt(bar, column) == moment)
                {
                    return true;
                }
            }

            mark = default;
            return false;
        }
    }

    private static Fraction Near(Fraction part, Fraction usual, Fraction triplet) =>
        (part - usual).Abs() <= (part - triplet).Abs() ? usual : triplet;

    /// <summary>The nearest twelfth of a beat.</summary>
    private static Fraction Snapped(Fraction beat)
    {
        var twelfths = (beat * 12) + Half;
        return new Fraction(BigInteger.Divide(twelfths.Numerator, twelfths.Denominator), 12).Reduce();
    }

    private void RemarkBetween(TabMoment moment, string more)
    {
        var mark = moment.Marks[0];
        remarks.Add(
            mark.Line,
            mark.At,
            mark.Length,
            $"It stands between two counts; read {moment.Time} {(moment.Time > Fraction.One ? "beats" : "beat")} into its bar.{more}"
        );
    }

    private static void AddRests(TabTypedBar bar, List<TabMoment> rests)
    {
        if (rests.Count == 0)
        {
            return;
        }

        var times = bar.Moments.Select(static moment => moment.Time).ToHashSet();
        bar.Moments.AddRange(rests.Where(rest => times.Add(rest.Time)));
        bar.Moments.Sort(static (left, right) => left.Time.CompareTo(right.Time));
    }

    /// <summary>Each value lasts up to the next one.</summary>
    private bool ByRhythm(TabTypedBar bar)
    {
        var tokens = bar.TimeMarks;
        var starts = new List<(int Column, Fraction Time, string Word)>(tokens.Count);
        var at = Fraction.Zero;
        foreach (var (column, _, word) in tokens)
        {
            starts.Add((column, at, word));
            if (word == "end")
            {
                bar.End = at;
                continue;
            }

            var value = BeatsOf(word);
            if (value > (word.Count('+') + 1) * TimeSignature.MaxBeats && bar.TimeRow is { } row)
            {
                // Bars are written out: a few digits must not stand for millions of them.
                throw Wrong(
                    row,
                    row.Text.IndexOf(word, StringComparison.Ordinal),
                    word.Length,
                    $"a value of at most {TimeSignature.MaxBeats} beats"
                );
            }

            at = (at + value).Reduce();
            if (at.Denominator.GetBitLength() > LongestMeasure)
            {
                remarks.Add(
                    bar.Moments.Count > 0 ? bar.Moments[0].Marks[0].Line : systems[0].Strings[0],
                    bar.From,
                    1,
                    "The rhythm of this bar has no common measure; the spacing or equal notes are read instead."
                );
                return false;
            }
        }

        var end = at;
        var sounding = starts.FindAll(static start => start.Word[0] is not ('r' or 'R') && start.Word != "end");
        if (bar.Moments.TrueForAll(moment => IndexOf(starts, moment.Column) >= 0))
        {
            foreach (var moment in bar.Moments)
            {
                moment.Time = starts[IndexOf(starts, moment.Column)].Time;
            }
        }
        else if (sounding.Count == bar.Moments.Count)
        {
            for (var index = 0; index < sounding.Count; index++)
            {
                bar.Moments[index].Time = sounding[index].Time;
            }
        }
        else
        {
            if (!ByNearest(bar, starts, end))
            {
                return false;
            }
        }

        AddRests(
            bar,
            [
                .. starts
                    .Where(start => start.Word[0] is 'r' or 'R')
                    .Select(static start => new TabMoment(start.Column) { Time = start.Time, IsRest = true }),
            ]
        );
        bar.At = column =>
        {
            var (low, high) = (0, starts.Count);
            while (low < high)
            {
                var middle = (low + high) / 2;
                (low, high) = starts[middle].Column < column ? (middle + 1, high) : (low, middle);
            }

            return low < starts.Count ? starts[low].Time : end;
        };
        if (end < time.Beats && bar.End is null)
        {
            // What is left over is silent.
            AddRests(bar, [new(bar.To) { Time = end, IsRest = true }]);
            Place(bar, "The rhythm of this bar does not fill it; the rest of it is silent.");
        }
        else if (end > time.Beats)
        {
            Place(bar, $"The rhythm of this bar lasts {end} beats; it goes on into another bar of {time}.");
            var count = (end / time.Beats).Reduce();
            bar.Beats =
                (int)BigInteger.Min((count.Numerator + count.Denominator - 1) / count.Denominator, 1 << 20)
                * time.Beats;
            if (bar.Beats > end)
            {
                AddRests(bar, [new(bar.To) { Time = end, IsRest = true }]);
            }
        }

        return true;
    }

    private void Place(TabTypedBar bar, string words)
    {
        if (bar.Moments.SelectMany(static moment => moment.Marks).FirstOrDefault() is { } mark)
        {
            remarks.Add(mark.Line, mark.At, mark.Length, words);
        }
    }

    private static int IndexOf(List<(int Column, Fraction Time, string Word)> starts, int column)
    {
        var (low, high) = (0, starts.Count - 1);
        while (low <= high)
        {
            var middle = (low + high) / 2;
            if (starts[middle].Column == column)
            {
                return middle;
            }

            (low, high) = starts[middle].Column < column ? (middle + 1, high) : (low, middle - 1);
        }

        return -1;
    }

    /// <summary>Values that are not as many as the notes: each note takes the nearest, or shares the one before.</summary>
    private bool ByNearest(TabTypedBar bar, List<(int Column, Fraction Time, string Word)> starts, Fraction end)
    {
        var owners = new int[bar.Moments.Count];
        var next = 0;
        for (var index = 0; index < owners.Length; index++)
        {
            var column = bar.Moments[index].Column;
            while (
                next + 1 < starts.Count
                && Math.Abs(starts[next + 1].Column - column) <= Math.Abs(starts[next].Column - column)
            )
            {
                next++;
            }

            owners[index] = next;
        }

        for (var first = 0; first < owners.Length; )
        {
            var count = 1;
            while (first + count < owners.Length && owners[first + count] == owners[first])
            {
                count++;
            }

            var from = starts[owners[first]].Time;
            var to = owners[first] + 1 < starts.Count ? starts[owners[first] + 1].Time : end;
            if (to <= from)
            {
                return false;
            }

            for (var index = 0; index < count; index++)
            {
                bar.Moments[first + index].Time = (from + ((to - from) * new Fraction(index, count))).Reduce();
            }

            first += count;
        }

        Place(
            bar,
            "There are not as many values as notes; each note takes the value nearest to it, and those that share one share its time."
        );
        return true;
    }

    private Fraction BeatsOf(string word)
    {
        var sum = Fraction.Zero;
        foreach (var part in word.TrimStart('r', 'R').Split('+'))
        {
            if (part[0] == '(')
            {
                var inner = part[1..^1].Split('/');
                sum += new Fraction(
                    BigInteger.Parse(inner[0], CultureInfo.InvariantCulture),
                    inner.Length > 1 ? BigInteger.Parse(inner[1], CultureInfo.InvariantCulture) : BigInteger.One
                );
                continue;
            }

            var unit = 1 << TabRhythm.Letters.IndexOf(char.ToLowerInvariant(part[0]), StringComparison.Ordinal);
            var dots = Math.Min(part.AsSpan(1).Count('.'), WrittenValue.MaxDots);
            var digits = part.AsSpan(1).TrimStart('.');
            var tuplet = digits.IsEmpty ? 1 : int.Parse(digits, CultureInfo.InvariantCulture);
            sum +=
                new Fraction((1 << (dots + 1)) - 1, unit << dots)
                * time.Unit
                * new Fraction(TabRhythm.InPlaceOf(tuplet), tuplet);
        }

        return sum.Reduce();
    }

    // ---- Spacing and equal notes ----

    /// <summary>
    /// What stands a third into its bar starts a third into it; false if that gives no values that players use. With
    /// <paramref name="squeeze"/> 1 numbers of two digits count as one character. With a width that is taken as told.
    /// </summary>
    private bool BySpacing(TabTypedBar bar, int lead, int squeeze)
    {
        var isForced = options.Timing == TabTiming.Spacing;
        var width = bar.To - bar.From - lead;
        if (bar.Moments.Count == 0)
        {
            bar.At = static _ => Fraction.Zero;
            AddRests(bar, [new(bar.From) { IsRest = true }]);
            return true;
        }

        // A bar of one number, or a line with no bars, tells nothing by its spacing.
        if (!isForced && (bars.Count == 1 && width > 64))
        {
            return false;
        }

        var places = new int[bar.Moments.Count];
        var wider = 0;
        for (var index = 0; index < places.Length; index++)
        {
            places[index] = bar.Moments[index].Column - bar.From - lead - (squeeze == 1 && !isForced ? wider : 0);
            wider += bar.Moments[index].Marks.Exists(static mark => mark.HasTwoDigits) ? 1 : 0;
        }

        if (squeeze == 1 && !isForced)
        {
            if (wider == 0)
            {
                return false;
            }

            width -= wider;
        }

        foreach (var count in isForced ? (int[])[width] : [width, width + 1, width - 1])
        {
            if (count <= 0 || places[0] < 0 || places[^1] >= count || (!isForced && !IsUsual(places, count)))
            {
                continue;
            }

            for (var index = 0; index < places.Length; index++)
            {
                bar.Moments[index].Time = new Fraction((long)places[index] * time.Beats, count).Reduce();
            }

            var beats = time.Beats;
            bar.At = column =>
                column - bar.From - lead <= 0
                    ? Fraction.Zero
                    : new Fraction((long)Math.Min(column - bar.From - lead, count) * beats, count).Reduce();
            if (!spacingTold && !isForced)
            {
                spacingTold = true;
                var step = new Fraction(time.Beats, count).Reduce();
                Place(bar, $"There is no count; the spacing is read as time, here one character as {step} of a beat.");
            }

            return true;
        }

        return false;
    }

    /// <summary>Whether places in a bar of so many characters are at quarters or thirds of beats.</summary>
    private bool IsUsual(int[] places, int count)
    {
        var (quarters, thirds) = (true, true);
        foreach (var place in places)
        {
            quarters &= (long)place * time.Beats * 4 % count == 0;
            thirds &= (long)place * time.Beats * 3 % count == 0;
        }

        return quarters || thirds;
    }

    /// <summary>One after the other, each as long as the others; shorter ones where there are more than the bar holds.</summary>
    private void Evenly(TabTypedBar bar)
    {
        var length = options.Even > Fraction.Zero ? options.Even : Half;
        var count = bar.Moments.Count;
        if (bars.Count > 1 && count * length > time.Beats)
        {
            foreach (var parts in (int[])[3, 4, 6, 8])
            {
                var shorter = new Fraction(1, parts);
                if (shorter < length && count * shorter <= time.Beats)
                {
                    Place(
                        bar,
                        $"{count} notes of {length} of a beat are more than a bar of {time}; read as {shorter} each."
                    );
                    length = shorter;
                    break;
                }
            }
        }

        for (var index = 0; index < count; index++)
        {
            bar.Moments[index].Time = (index * length).Reduce();
        }

        var end = (count * length).Reduce();
        var moments = bar.Moments.ToArray();
        bar.At = column =>
        {
            var (low, high) = (0, moments.Length);
            while (low < high)
            {
                var middle = (low + high) / 2;
                (low, high) = moments[middle].Column < column ? (middle + 1, high) : (low, middle);
            }

            return low < moments.Length ? moments[low].Time : end;
        };
        var whole = (end / time.Beats).Reduce();
        bar.Beats = (int)((whole.Numerator + whole.Denominator - 1) / whole.Denominator) * time.Beats;
        if (end != bar.Beats)
        {
            AddRests(bar, [new(bar.To) { Time = end, IsRest = true }]);
        }

        if (!evenTold && count > 0)
        {
            evenTold = true;
            Place(
                bar,
                $"There is no count, and the spacing gives no values that players use; read as equal notes of {length} of a beat, with a rest up to the end of the bar where they do not fill it."
            );
        }
    }

    private static void SetChordTimes(TabTypedBar bar)
    {
        bar.Chords.Sort(static (left, right) => left.Column.CompareTo(right.Column));
        foreach (var (column, chord, line, place, length) in bar.Chords)
        {
            // Without a count, a symbol typed a column late still stands over its note.
            var at =
                MomentAt(bar, column) is { Column: var near } moment
                && (near == column || (near < column && !bar.HasTime))
                    ? moment.Time
                    : bar.At(column);
            if (
                bar.ChordTimes.Count == 0
                && (
                    column <= bar.From + 1
                    || (bar.Moments.Count > 0 && column < bar.Moments[0].Column && bar.Moments[0].Time.IsZero)
                )
            )
            {
                at = Fraction.Zero;
            }

            if (at < Fraction.Zero)
            {
                at = Fraction.Zero;
            }
            else if (at.Denominator > (bar.HasTime ? Bar.MaxParts : 4))
            {
                // Chords are typed about where they change.
                at = MomentAt(bar, column)?.Time ?? Snapped(at);
            }

            bar.ChordTimes.Add((at, chord, line, place, length));
        }
    }
}
