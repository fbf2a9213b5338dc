using Fractions;
using TheoryKit.Paths;
using TheoryKit.Theory;
using TheoryKit.Tunings;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Tests.Paths;

public class LickAnalysisTests
{
    public static TheoryData<string> Names => [.. HandLabelled.All.Select(static lick => lick.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_note_is_what_the_hand_label_says(string name)
    {
        var lick = HandLabelled.All.Single(lick => lick.Name == name);
        var analysis = lick.Path.Analyse();
        Assert.Equal(lick.Labels, analysis.Notes.Select(note => HandLabelled.LabelOf(analysis, note)));
    }
}
