using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tests.Markup;
using TheoryKit.Drawing.Tests.Necks;
using TheoryKit.Drawing.Tunings;
using TheoryKit.Fingering.Moving;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Strings;
using TheoryKit.Tunings.Turns;

namespace TheoryKit.Drawing.Tests.Tunings;

public class TuningSheetTests
{
    private static readonly RendererSet All = DrawingRenderers.All;

    private static readonly Gen<Scordatura> AnyScordatura = Gen.Select(
        SampleNecks.AnyNeck,
        Gen.Int[-14, 14].Array[Tuning.MaxStrings],
        Gen.Bool.Array[Tuning.MaxStrings],
        (neck, turns, turned) =>
            new Scordatura(
                neck.Tuning,
                new(
                    neck.Tuning.Strings.Select(
                            (each, index) =>
                                turned[index]
                                    ? new TuningString(
                                        Pitch.FromMidi(
                                            Math.Clamp(
                                                each.Open.MidiNumber + turns[index],
                                                0,
                                                TuningString.MaxMidiNumber
                                            )
                                        ),
                                        each.Start
                                    )
                                    : each
                        )
                        .Reverse()
                )
            )
    );

    [Theory]
    [InlineData("scordatura-Open-D.txt")]
    [InlineData("scordatura-Open-D.html")]
    [InlineData("scordatura-Open-E-fitted.txt")]
    [InlineData("moved-Nine-Tin-Boats.txt")]
    [InlineData("moved-line.txt")]
    [InlineData("open-strings-Open-D.txt")]
    public void Expected_files(string file)
    {
        object shown = file.Split('.')[0] switch
        {
            "scordatura-Open-D" => Samples.ToOpenD,
            "scordatura-Open-E-fitted" => new Scordatura(Tuning.Standard, Tuning.Find("Open E")!).Fitted(
                StringSet.Find("Light electric 10-46")!,
                648
            ),
            "moved-Nine-Tin-Boats" => Samples.NineTinBoats,
            "moved-line" => Samples.MovedLine,
            _ => Samples.OpenD,
        };
        Expectations.Matches(
            file.EndsWith(".html", StringComparison.Ordinal) ? All.Html(shown, new RenderContext()) : All.Text(shown),
            file
        );
    }

    [Fact]
    public void The_picture_says_of_every_string_what_is_done_to_it() =>
        AnyScordatura.Sample(
            static scordatura =>
            {
                var html = Fragment.Parse(All.Html(scordatura, new RenderContext()));
                var svg = html.Descendants().First(static each => each.Name.LocalName == "svg");
                var words = svg.Descendants().First(static each => each.Name.LocalName == "desc").Value;
                var circles = svg.Descendants().Count(static each => each.Name.LocalName == "circle");
                Assert.Equal(scordatura.Steps.Count, circles);
                foreach (var turn in scordatura.Strings)
                {
                    var rest = words.Split($" String {turn.Number}: ")[1].Split(" String ")[0];
                    Assert.Equal(turn.Direction == Turn.Leave, rest.EndsWith("stays.", StringComparison.Ordinal));
                    Assert.Equal(turn.Direction == Turn.Up, rest.Contains(", up ", StringComparison.Ordinal));
                    Assert.Equal(turn.Direction == Turn.Down, rest.Contains(", down ", StringComparison.Ordinal));
                }
            },
            iter: 200
        );

    [Fact]
    public void Whoever_turns_a_string_reads_the_caution_once() =>
        AnyScordatura.Sample(
            static scordatura =>
            {
                var text = All.Text(scordatura);
                var times = text.Split(Cautions.Strings).Length - 1;
                Assert.Equal(scordatura.Steps.Count > 0 ? 1 : 0, times);
            },
            iter: 100
        );

    [Theory]
    [InlineData("Open E")] // more pull in all: a warning of its own
    [InlineData("Open D")] // less
    [InlineData("C standard")] // slack
    public void With_strings_fitted_the_caution_stands_there_once_too(string name)
    {
        var sheet = new Scordatura(Tuning.Standard, Tuning.Find(name)!).Fitted(
            StringSet.Find("Light electric 10-46")!,
            648
        );
        Assert.Equal(2, All.Text(sheet).Split(Cautions.Strings).Length);
        Assert.Equal(Tuning.Standard, sheet.Tensions!.Reference);
        Assert.Equal(sheet, new ScordaturaSheet(sheet.Scordatura) { Tensions = sheet.Tensions });
    }

    [Fact]
    public void Changes_and_lines_moved_to_a_tuning_with_a_string_up_go_with_the_caution()
    {
        var openD = Neck.Guitar.With(Tuning.Find("Open D")!);
        foreach (var (from, to, isUp) in new[] { (openD, Neck.Guitar, true), (Neck.Guitar, openD, false) })
        {
            object[] moved =
            [
                MovedChanges.Of(Chord.ParseList("D A"), from, to.Tuning),
                MovedLine.Of([new(2, 0), new(2, 2)], from, to.Tuning),
            ];
            foreach (var each in moved)
            {
                Assert.Equal(isUp ? 2 : 1, All.Text(each).Split(Cautions.Strings).Length);
            }
        }
    }

    [Fact]
    public void Reasons_of_a_reading_have_plain_signs_in_plain_text_and_printed_ones_on_a_page()
    {
        var reading = Tuning.Parse("Bb2 C3 E3 G3").Reading().Readings[0];
        Assert.Contains("b7 in the bass", All.Text(reading), StringComparison.Ordinal);
        Assert.DoesNotContain('♭', All.Text(reading));
        Assert.Contains("♭7 in the bass", All.Html(reading, new RenderContext()), StringComparison.Ordinal);
    }

    [Fact]
    public void Tensions_of_another_tuning_are_refused()
    {
        var report = Samples.ToOpenD.Tensions(StringSet.Find("Light electric 10-46")!, 648);
        Assert.Throws<ArgumentException>(() => new ScordaturaSheet(Samples.ToOpenD.Back) { Tensions = report });
    }

    [Fact]
    public void Of_changes_moved_every_version_has_two_boxes_a_chord_and_kept_marks_stand_back()
    {
        var moved = Samples.NineTinBoats;
        var html = Fragment.Parse(All.Html(moved, new RenderContext()));
        var pairs = html.Descendants("div").Where(static each => each.Attribute("class")?.Value == "tk-move").ToList();
        Assert.Equal(2 * moved.Grips.Count, pairs.Count); // the easiest, and the one that keeps
        Assert.All(
            pairs,
            static pair =>
                Assert.Equal(2, pair.Descendants("div").Count(each => each.Attribute("class")?.Value == "tk-box"))
        );
        var after = moved.Grips.Select(static each => each.Easiest!).Concat(moved.Grips.Select(static e => e.Kept!));
        Assert.All(
            after.Zip(pairs),
            each =>
            {
                var before = moved.Grips[pairs.IndexOf(each.Second) % moved.Grips.Count].Before!;
                var same = each.First.Grip.Positions.Intersect(before.Grip.Positions).Count();
                var said = each.Second.Descendants().Last(static e => e.Name.LocalName == "desc").Value;
                Assert.Equal(
                    before.Grip.Equals(each.First.Grip) ? 0 : same,
                    said.Split(", held as before.").Length - 1
                );
            }
        );
    }

    [Fact]
    public void The_shapes_of_the_open_strings_show_their_functions_first()
    {
        var html = Fragment.Parse(All.Html(Samples.OpenD, new RenderContext()));
        var figures = html.Descendants("figure").ToList();
        Assert.Equal(OpenStringsReading.UsualQualities.Count, figures.Count);
        Assert.All(
            figures,
            static figure =>
                Assert.Equal(
                    "f",
                    figure
                        .Descendants("input")
                        .Single(static input => input.Attribute("checked") is not null)
                        .Attribute("value")!
                        .Value
                )
        );
    }

    [Fact]
    public void Notes_are_named_in_the_readers_way()
    {
        var german = DrawingRenderers.Named(NoteNaming.German);
        Assert.Contains("H3", german.Text(Samples.ToOpenD), StringComparison.Ordinal);
        Assert.DoesNotContain("B3", german.Text(Samples.ToOpenD), StringComparison.Ordinal);
        Assert.Contains(
            "Ais3", // B flat on the neck is spelled A sharp by sound
            german.Text(Samples.MovedLine),
            StringComparison.Ordinal
        );
    }
}
