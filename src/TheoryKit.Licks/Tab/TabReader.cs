using TheoryKit.Licks.Tab.Options;
using TheoryKit.Licks.Tab.Playing;
using TheoryKit.Licks.Tab.Reading;
using TheoryKit.Licks.Tab.Timing;

namespace TheoryKit.Licks.Tab;

/// <summary>
/// Reads tab in steps, as the remarks on <see cref="PlainTab"/> say: text, lines, systems, neck, rows, time signature, bars, marks,
/// what the rows say of them, times, frets, notes. Each step takes what those before it made and leaves it as it is.
/// </summary>
internal static class TabReader
{
    public static TabReading Read(string text, TabReadOptions options)
    {
        var remarks = new TabRemarks();
        var lines = TypedLine.Of(text, options.FirstLine);
        var (systems, other) = TabSystem.Of(lines, options.Neck?.StringCount);
        var words = TabTitle.Of(other, out var title, remarks);
        var neck = TabNeck.Of(systems[0], title, options.Neck, remarks);
        var rows = systems.Select(system => TabRow.Of(system, options.Timing)).ToList();
        var meter = TabMeter.Of(rows, title, options, remarks);
        var staves = TabStaff.Of(systems, remarks, out var trailing);
        var typed = TabNotes.Of(staves, neck, meter, remarks);
        var bars = RowReading.Of(staves, rows, typed, out var marks, remarks);
        var timed = BarTimes.Of(bars, marks, meter, options, remarks);
        var (fretted, played) = TabFrets.Of(marks, neck, meter, options.Neck, remarks);
        var path = TabPaths.Of(timed, fretted, played, meter, options.Changes, remarks);
        return new()
        {
            Path = path,
            Remarks = [.. remarks.InOrder],
            Words = LickText.Lines(
                string.Join(
                    '\n',
                    words.Concat(trailing).OrderBy(static each => each.Line).Select(static each => each.Text)
                ),
                nameof(TabReading.Words)
            ),
        };
    }
}
