using TheoryKit.Charts.Theory;
using TheoryKit.Theory.Chords;

namespace TheoryKit.Charts.Tests.Theory;

public class LadderChartTests
{
    [Fact]
    public void Every_degree_stands_at_its_semitone() =>
        Samples.Formulas.Sample(static formula =>
        {
            var chart = new LadderChart(formula);
            for (var semitones = 0; semitones < 12; semitones++)
            {
                var expected = formula.Where(degree => Samples.Semitones(degree) == semitones);
                Assert.Equal(string.Join('/', expected), chart.At(0, semitones));
            }
        });

    [Fact]
    public void The_picture_has_a_mark_for_every_tone_with_the_role_of_its_degree()
    {
        var chart = new LadderChart(Samples.Many);
        var marks = Figures.Of(chart)["data"]!
            .SelectMany(static trace =>
                trace["x"]!.Zip(trace["y"]!, (x, y) => (Row: (int)y, Semitones: (int)x, Role: (string?)trace["name"]))
            )
            .ToHashSet();
        var expected = Samples.Many.SelectMany(
            static (each, row) =>
                each.Formula.Select(degree =>
                    (row, Samples.Semitones(degree), (string?)ToneRoles.Words(ToneRoles.Of(degree, each.Formula)))
                )
        );
        Assert.Equal(expected.ToHashSet(), marks);
    }

    [Fact]
    public void Roles_differ_in_mark_as_well_as_in_colour()
    {
        var chart = new LadderChart(Samples.Named("all", "1 3 4 5 b7 9"));
        var marks = Figures.Of(chart)["data"]!
            .Select(static trace => trace["marker"]!)
            .Select(static marker =>
                (
                    (string?)marker["symbol"],
                    (int)marker["size"]!,
                    (string?)marker["color"] == (string?)marker["line"]!["color"]
                )
            );
        Assert.Equal(4, marks.Distinct().Count());
    }

    [Fact]
    public void Two_degrees_that_sound_alike_share_a_mark() =>
        Assert.Equal("b3/#9", new LadderChart(Formula.Parse("1 b3 5 #9")).At(0, 3));

    [Fact]
    public void The_description_tells_what_all_have_in_common() =>
        Assert.EndsWith(
            "In all of them: 1, ♭7.",
            new LadderChart(Samples.Sevenths[1..]).Description,
            StringComparison.Ordinal
        );
}
