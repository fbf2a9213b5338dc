using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Zones;
using TheoryKit.Licks.Moves;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Tests.Necks;

/// <summary>What necks look like, in files to open and read.</summary>
public class NeckExpectationTests
{
    public static TheoryData<string> Names => [.. Drawings.Keys];

    private static readonly Dictionary<string, NeckDrawing> Drawings = new()
    {
        ["guitar"] = SampleNecks.Guitar,
        ["guitar-window"] = Chord.Parse("Cm11").On(Neck.Guitar).WithFrets(5, 9),
        ["guitar-left-handed"] = SampleNecks.Guitar.WithLeftHand().WithFrets(0, 12).WithLabels(Labels.NoteNames),
        ["guitar-capo"] = Chord.Parse("Eb").On(Neck.Guitar.WithCapo(3)).WithFrets(0, 9),
        ["guitar-grip"] = NeckDrawing
            .Of(
                Neck.Guitar,
                [
                    new Mark(new Position(5, 3), Degree.Root, NoteName.Parse("C")) { Finger = 2 },
                    new Mark(new Position(4, 2), Degree.Parse("3"), NoteName.Parse("E")) { Finger = 1 },
                    new Mark(new Position(3, 3), Degree.Parse("b7"), NoteName.Parse("Bb")) { Finger = 3 },
                    new Mark(new Position(2, 5), Degree.Parse("13"), NoteName.Parse("A")) { Finger = 4 },
                ]
            )
            .WithTitle("C13")
            .WithFretsOfMarks()
            .WithLabels(Labels.Fingers),
        ["banjo"] = Chord.Parse("G6").On(SampleNecks.Banjo).WithFrets(0, 12),
        ["bass"] = Chord.Parse("Fmaj9").On(SampleNecks.Bass),
        ["guitar-scale"] = Scale.Parse("F major").On(Neck.Guitar).WithFrets(0, 5),
        ["ukulele"] = Chord.Parse("Dm7").On(SampleNecks.Ukulele),
    };

    [Theory]
    [MemberData(nameof(Names))]
    public void A_picture_is_as_expected(string name) => Expectations.Matches(Drawings[name].Svg(), name + ".svg");

    [Theory]
    [MemberData(nameof(Names))]
    public void Plain_text_is_as_expected(string name) =>
        Expectations.Matches(Drawings[name].ToString(), name + ".txt");

    [Fact]
    public void A_figure_is_as_expected() =>
        Expectations.Matches(
            DrawingRenderers.All.Html(Drawings["guitar-grip"], new RenderContext()),
            "guitar-grip.html"
        );

    [Fact]
    public void A_tuning_is_as_expected()
    {
        Expectations.Matches(
            DrawingRenderers.All.Html(SampleNecks.Banjo.Tuning, new RenderContext()),
            "banjo-tuning.html"
        );
        Expectations.Matches(DrawingRenderers.All.Text(SampleNecks.Banjo.Tuning), "banjo-tuning.txt");
    }

    [Fact]
    public void A_neck_is_as_expected() =>
        Expectations.Matches(DrawingRenderers.All.Text(SampleNecks.Ukulele), "ukulele-neck.txt");
}
