using System.Globalization;
using System.Numerics;
using Fractions;
using TheoryKit.Licks.Tab.Reading;
using TheoryKit.Licks.Tab.Remarks;

namespace TheoryKit.Licks.Tab.Timing;

/// <summary>From a count below or above a bar to its times; none where it does not fit the numbers.</summary>
internal sealed class CountTime
{
    private static readonly Fraction Quarter = new(1, 4);
    private static readonly Fraction ThreeQuarters = new(3, 4);
    private static readonly Fraction Third = new(1, 3);
    private static readonly Fraction TwoThirds = new(2, 3);

    private readonly MarkedBar bar;
    private readonly TimeContext context;

    // Numbers of beats and where they stand, at least two.
    private readonly List<(int Column, int Beat)> anchors = [];
    private readonly Dictionary<int, (Fraction Time, string Word)> counted = [];

    private CountTime(MarkedBar bar, TimeContext context) => (this.bar, this.context) = (bar, context);

    /// <param name="bar">The bar.</param>
    /// <param name="count">The words of the count from the left.</param>
    /// <param name="context">The time signature and the numbers.</param>
    /// <param name="end">Where it says that the path ends; null for nowhere.</param>
    public static BarTime? Of(MarkedBar bar, List<Token> count, TimeContext context, out Fraction? end)
    {
        var reading = new CountTime(bar, context);
        var time = reading.FindAnchors(count) ? reading.Read(count) : null;
        var ends = time is null ? [] : reading.counted.Values.Where(static each => each.Word == "end");
        end = ends.Select(static each => (Fraction?)each.Time).LastOrDefault();
        return time;
    }

    private bool FindAnchors(List<Token> count)
    {
        foreach (var (column, word) in count)
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
            anchors.Add((count[0].At, 0));
        }

        if (anchors.Count > 1)
        {
            return true;
        }

        // The bar line is where the next bar begins.
        var (only, first) = anchors[0];
        anchors.Add((bar.Bar.To, context.Time.Beats));
        return first < context.Time.Beats && bar.Bar.To > only;
    }

    private BarTime? Read(List<Token> count)
    {
        foreach (var (column, word) in count)
        {
            counted[column] = (Counted(column, word), word);
        }

        var times = new List<Fraction>(bar.Columns.Count);
        foreach (var column in bar.Columns)
        {
            if (TimeOf(column, times.Count > 0 ? times[^1] : new(-1)) is not { } time)
            {
                return null;
            }

            times.Add(time);
        }

        var rests = counted
            .Where(static each => each.Value.Word == "r")
            .Select(static each => TabMoment.Rest(each.Key, each.Value.Time));
        return new(
            TimeContext.WithRests(TimeContext.Moments(bar.Columns, index => times[index]), [.. rests]),
            column => counted.TryGetValue(column, out var told) ? told.Time : Between(column)
        );
    }

    private Fraction Counted(int column, string word)
    {
        var exact = Between(column);
        var whole = new Fraction(BigInteger.Divide(exact.Numerator, exact.Denominator));
        var part = word switch
        {
            "&" or "+" => Near(exact - whole, TimeContext.Half, Third),
            "e" => Near(exact - whole, Quarter, Third),
            "a" => Near(exact - whole, ThreeQuarters, TwoThirds),
            _ => exact - whole,
        };
        return (whole + part).Reduce();
    }

    private static Fraction Near(Fraction part, Fraction usual, Fraction triplet) =>
        (part - usual).Abs() <= (part - triplet).Abs() ? usual : triplet;

    /// <summary>When a column is that comes after another; null if the count does not fit.</summary>
    private Fraction? TimeOf(TabColumn column, Fraction last)
    {
        var exact = Between(column.Column);
        var time =
            counted.TryGetValue(column.Column, out var told) || Beside(column, out told) ? told.Time
            : BarTimes.Snapped(exact) is var snapped && snapped > last ? snapped
            : exact;
        if (told.Word is null)
        {
            Remark(time, fits: true);
        }

        time = time <= last ? exact : time;
        if (time > last && time >= Fraction.Zero)
        {
            return time;
        }

        Remark(time, fits: false);
        return null;

        void Remark(Fraction read, bool fits) =>
            context.Remarks.Add(context.Marks[column.Marks[0]], new TabRemark.BetweenCounts(read, fits));
    }

    /// <summary>Between the beats, exactly.</summary>
    private Fraction Between(int column)
    {
        var from = Math.Clamp(anchors.CountWhile(anchor => anchor.Column <= column) - 1, 0, anchors.Count - 2);
        var ((left, beat), (right, next)) = (anchors[from], anchors[from + 1]);
        return (beat + new Fraction((long)(column - left) * (next - beat), right - left)).Reduce();
    }

    // A bracket or a finger's width beside its count.
    private bool Beside(TabColumn column, out (Fraction Time, string Word) told)
    {
        foreach (var beside in (int[])[column.Column + 1, column.Column - 1])
        {
            if (counted.TryGetValue(beside, out told) && told.Word != "r" && bar.Columns.Near(beside) == column)
            {
                return true;
            }
        }

        told = default;
        return false;
    }
}
