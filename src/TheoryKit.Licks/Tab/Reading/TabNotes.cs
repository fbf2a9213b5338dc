using System.Collections.Immutable;
using TheoryKit.Licks.Tab.Remarks;

namespace TheoryKit.Licks.Tab.Reading;

/// <summary>What stands in one column of a bar.</summary>
/// <param name="Column">The column.</param>
/// <param name="Marks">Which numbers, from the top.</param>
internal sealed record TabColumn(int Column, IReadOnlyList<int> Marks) : IPlaced;

/// <summary>The numbers on all strings.</summary>
/// <param name="Marks">All in the order in which they are read; what refers to one of them has its index.</param>
/// <param name="Columns">For each bar its columns from the left.</param>
internal sealed record TabNotes(ImmutableArray<TabMark> Marks, IReadOnlyList<IReadOnlyList<TabColumn>> Columns)
{
    /// <summary>From bars to the numbers in them, those of one moment together.</summary>
    public static TabNotes Of(IReadOnlyList<TabStaff> staves, TabNeck neck, TabMeter meter, TabRemarks remarks)
    {
        var marks = new List<TabMark>();
        var holds = staves.Any(static staff => staff.HasDashes);
        var scanners = Enumerable
            .Range(1, neck.Neck.StringCount)
            .Select(number => new TabScanner(number, neck.Highest, meter.IsTold, holds, marks, remarks))
            .ToList();
        var columns = new List<IReadOnlyList<TabColumn>>();
        foreach (var staff in staves)
        {
            var found = staff.Bars.Select(static _ => new List<int>()).ToList();
            for (var line = 0; line < staff.Lines.Count; line++)
            {
                var scanner = scanners[neck.StringOf(line, staff.Lines.Count) - 1];
                for (var bar = 0; bar < staff.Bars.Count; bar++)
                {
                    var first = marks.Count;
                    scanner.Read(staff.Lines[line], staff.Bars[bar]);
                    found[bar].AddRange(Enumerable.Range(first, marks.Count - first));
                }
            }

            columns.AddRange(found.Select(each => Together(each, marks, remarks)));
            foreach (var bar in staff.Bars.Where(static bar => bar.Times > 1))
            {
                remarks.Add(staff.Lines[0], Math.Max(0, bar.To - 1), 1, new TabRemark.Repeated(bar.Times));
            }
        }

        return new([.. marks], columns);
    }

    /// <summary>Puts what stands in one column together, and with it what belongs there though it stands one beside.</summary>
    private static List<TabColumn> Together(List<int> found, List<TabMark> marks, TabRemarks remarks)
    {
        var columns = new List<(int Column, List<int> Marks)>();
        foreach (var group in found.GroupBy(mark => marks[mark].Column).OrderBy(static each => each.Key))
        {
            if (columns.Count == 0 || !IsOne(columns[^1].Column, columns[^1].Marks, group))
            {
                columns.Add((group.Key, [.. group]));
                continue;
            }

            foreach (var mark in group)
            {
                remarks.Add(marks[mark], new TabRemark.StruckTogether());
            }

            columns[^1].Marks.AddRange(group);
        }

        return columns.ConvertAll(static each => new TabColumn(each.Column, each.Marks));

        bool IsOne(int column, List<int> before, IGrouping<int, int> next) =>
            next.Key == column + 1
            && before.TrueForAll(mark => marks[mark].IsBracketed || marks[mark].HasTwoDigits)
            && !next.Any(mark => before.Exists(other => marks[other].String == marks[mark].String));
    }
}
