using TheoryKit.Licks.Tab.Remarks;

namespace TheoryKit.Licks.Tab.Reading;

/// <summary>Where steps of reading leave their remarks; none of them looks at what is there.</summary>
internal sealed class TabRemarks
{
    private readonly List<TabRemark> all = [];

    public void Add(TabLine line, int at, int length, TabRemark remark)
    {
        var column = line.Column(at);
        var end = Math.Max(column + 1, line.Column(at + length));
        all.Add(remark with { Line = line.Number, Column = column, Length = end - column });
    }

    public void Add(TabMark mark, TabRemark remark) => Add(mark.Line, mark.Column, mark.Length, remark);

    public IEnumerable<TabRemark> InOrder =>
        all.OrderBy(static each => each.Line).ThenBy(static each => each.Column).Distinct();
}
