using TheoryKit.Charts.Paths;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Progressions;

namespace TheoryKit.Charts.Tests.Paths;

public class ContourChartTests
{
    private static readonly Changes Changes = Changes.Parse("4/4, F major: Gm9 | C13 | Fmaj9 | Dm7");

    private static readonly Gen<TheoryKit.Paths.Path> Lines = Gen.Select(
        Gen.Select(Gen.Int[1, 6], Gen.Int[0, 22]).Select(static (number, fret) => $"{number}:{fret}").Array[1, 90],
        Gen.Bool,
        static (positions, over) => Samples.Line(string.Join(' ', positions), over ? Changes : null)
    );

    [Fact]
    public void Every_note_is_marked_where_it_starts_at_its_pitch_by_its_role() =>
        Lines.Sample(
            static path =>
            {
                var traces = Figures.Of(path.ContourChart())["data"]!.Skip(1).ToList();
                Assert.Equal(
                    path.Notes.Select(note => (Math.Round(note.Start.ToDouble(), 4), note.Pitch.MidiNumber)).Order(),
                    traces
                        .SelectMany(static trace => trace["x"]!.Zip(trace["y"]!, (x, y) => ((double)x, (int)y)))
                        .Order()
                );
                if (path.Changes is null)
                {
                    return;
                }

                foreach (var trace in traces)
                {
                    var starts = trace["x"]!.Select(static x => (double)x).ToHashSet();
                    Assert.All(
                        path.Notes.Where(note => starts.Contains(Math.Round(note.Start.ToDouble(), 4))),
                        note =>
                            Assert.Equal(
                                (string?)trace["name"],
                                ToneRoles.Words(
                                    ToneRoles.Over(path.FunctionOf(note)!.Value, path.ChordAt(note.Start)!.Formula)
                                )
                            )
                    );
                }
            },
            iter: 200
        );

    [Fact]
    public void Steps_lead_from_the_first_pitch_to_the_last() =>
        Lines.Sample(
            static path =>
            {
                var steps = path.ContourChart().Steps;
                Assert.Equal(path.Notes.Count - 1, steps.Count);
                Assert.Equal(path.Notes[^1].Pitch.MidiNumber - path.Notes[0].Pitch.MidiNumber, steps.Sum());
            },
            iter: 200
        );

    [Fact]
    public void Chords_are_named_over_their_bands()
    {
        var layout = Figures.Of(Samples.NineTinBoatsLine.ContourChart())["layout"]!;
        Assert.Equal(
            ["<b>Gm9</b>", "<b>C13</b>", "<b>Fmaj9</b>"],
            layout["annotations"]!.Select(static each => (string?)each["text"])
        );
        Assert.Equal([(0, 4), (8, 12)], layout["shapes"]!.Select(static each => ((int)each["x0"]!, (int)each["x1"]!)));
    }

    [Fact]
    public void A_path_without_notes_has_no_contour() =>
        Assert.Throws<ArgumentException>(() =>
            new TheoryKit.Paths.Path(TheoryKit.Tunings.Necks.Neck.Guitar, []).ContourChart()
        );
}
