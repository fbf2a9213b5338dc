using TheoryKit.Licks.Tab;
using TheoryKit.Licks.Tab.Options;
using TheoryKit.Paths;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Licks.Tests.Tab;

public class TabRoundTripTests
{
    [Fact]
    public void Simple_paths_read_back_from_their_tab() => TabGens.SimplePath.Sample(ReadsBack, iter: 1_000);

    [Fact]
    public void Ten_thousand_paths_of_all_kinds_read_back_from_their_tab() =>
        TabGens.Path.Sample(ReadsBack, iter: 10_000);

    private static void ReadsBack(Path path)
    {
        var text = PlainTab.Write(path);
        var options = new TabReadOptions
        {
            Neck = path.Neck,
            Time = path.Time,
            Changes = path.Changes,
        };
        var reading = PlainTab.Read(text, options);
        Same(path, reading.Path, text);
        Assert.True(reading.Remarks.Count == 0, $"{string.Join('\n', reading.Remarks)}\n{text}");
        Assert.Equal("", reading.Words);
        Assert.Equal(text, PlainTab.Write(reading.Path));
    }

    internal static void Same(Path expected, Path found, string text)
    {
        if (expected.Equals(found))
        {
            return;
        }

        Assert.Fail(
            $"Read back differs ({expected.Beats} and {found.Beats} beats, {expected.Notes.Count} and {found.Notes.Count} notes):\n{text}\n"
                + string.Join(
                    '\n',
                    Enumerable
                        .Range(0, Math.Max(expected.Notes.Count, found.Notes.Count))
                        .Select(index =>
                            (expected.Notes.ElementAtOrDefault(index), found.Notes.ElementAtOrDefault(index))
                        )
                        .Where(static pair => pair.Item1 != pair.Item2)
                        .Select(static pair => $"  {Say(pair.Item1)}\n  {Say(pair.Item2)}")
                )
        );
    }

    private static string Say(PathNote? note) =>
        note is null
            ? "none"
            : $"{note} {string.Join(", ", note.Techniques)} bend {note.Bend} trill {note.TrillFret} finger {note.Finger}";
}
