using System.Collections.Immutable;
using System.Numerics;
using Fractions;
using TheoryKit.Licks.Tab.Reading;
using TheoryKit.Licks.Tab.Remarks;
using TheoryKit.Theory.Progressions;

namespace TheoryKit.Licks.Tab.Timing;

/// <summary>What stands in one column of a bar, and when that is.</summary>
/// <param name="Column">The column.</param>
/// <param name="Time">In beats from the beginning of the bar.</param>
/// <param name="Marks">Which numbers; none where a rest begins, which ends what rings.</param>
internal sealed record TabMoment(int Column, Fraction Time, IReadOnlyList<int> Marks) : IPlaced
{
    public bool IsRest => Marks.Count == 0;

    public static TabMoment Rest(int column, Fraction time) => new(column, time, []);
}

/// <summary>When things are in a bar.</summary>
/// <param name="Moments">Its moments in order.</param>
/// <param name="At">When a column is, in beats from the beginning of the bar.</param>
/// <param name="Beats">How many beats it lasts at least: whole bars of the time signature.</param>
/// <param name="End">Where the path ends inside it; null for nowhere.</param>
internal sealed record BarTime(
    IReadOnlyList<TabMoment> Moments,
    Func<int, Fraction> At,
    int Beats = 0,
    Fraction? End = null
);

/// <summary>What every way of reading a bar's time needs: the time signature and the numbers; and where its remarks go.</summary>
internal sealed record TimeContext(TimeSignature Time, ImmutableArray<TabMark> Marks, TabRemarks Remarks)
{
    public static readonly Fraction Half = new(1, 2);

    /// <summary>So many beats in whole bars.</summary>
    public BigInteger BarsIn(Fraction beats)
    {
        var bars = (beats / Time.Beats).Reduce();
        return (bars.Numerator + bars.Denominator - 1) / bars.Denominator;
    }

    /// <summary>Remarks on the first number of a bar.</summary>
    public void Remark(IReadOnlyList<TabMoment> moments, TabRemark remark)
    {
        if (moments.FirstOrDefault(static moment => !moment.IsRest) is { } first)
        {
            Remarks.Add(Marks[first.Marks[0]], remark);
        }
    }

    /// <summary>Moments with the times of columns.</summary>
    public static List<TabMoment> Moments(IReadOnlyList<TabColumn> columns, Func<int, Fraction> timeOf) =>
        [.. columns.Select((each, index) => new TabMoment(each.Column, timeOf(index), each.Marks))];

    /// <summary>Moments and the rests that begin where no other does.</summary>
    public static List<TabMoment> WithRests(List<TabMoment> moments, params IReadOnlyList<TabMoment> rests)
    {
        if (rests.Count == 0)
        {
            return moments;
        }

        var times = moments.Select(static moment => moment.Time).ToHashSet();
        List<TabMoment> all = [.. moments, .. rests.Where(rest => times.Add(rest.Time))];
        all.Sort(static (left, right) => left.Time.CompareTo(right.Time));
        return all;
    }
}
