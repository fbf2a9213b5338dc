using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tests.Markup;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Strings;

namespace TheoryKit.Drawing.Tests.Tunings;

/// <summary>How strings and their tension read. The figures were worked out by hand from T = 4 L² f² mu.</summary>
public class StringValueTests
{
    private static readonly RendererSet All = DrawingRenderers.All;

    [Fact]
    public void A_report_of_a_retune_with_a_string_near_breaking()
    {
        Expectations.Matches(All.Text(Samples.Tensions), "tensions-near-breaking.txt");
        Expectations.Matches(All.Html(Samples.Tensions, new RenderContext()), "tensions-near-breaking.html");
    }

    [Fact]
    public void A_tension() =>
        // 72.6 / 9.80665 and 72.6 / 4.4482216.
        Assert.Equal(
            """
            72.6 N
              in kgf  7.40
              in lbf  16.32
            """,
            All.Text(Tension.Parse("72.6 N"))
        );

    [Fact]
    public void A_string() =>
        // pi/4 · 0.254² mm² · 7.85 g/cm³.
        Assert.Equal(
            """
            0.010 in plain steel
              diameter     0.254 mm, 0.010 in
              unit weight  0.398 g/m
            """,
            All.Text(FittedString.Parse("0.010 in plain steel"))
        );

    [Fact]
    public void A_string_by_its_weight() =>
        Assert.Equal(
            """
            6.24 g/m
              unit weight  6.240 g/m
            """,
            All.Text(FittedString.Parse("6.24 g/m"))
        );

    [Fact]
    public void A_gauge_for_a_tension() =>
        // (and 71.1 N / 0.0993 mm² = 716 MPa of 2211 / 0.3556^0.145 = 2569)
        // 70 N at Bb3 (233.08 Hz) on 648 mm: 0.7671 g/m, so 0.3528 mm; 0.014 in (0.3556 mm) pulls 70 · (0.3556 / 0.3528)² = 71.1 N.
        Assert.Equal(
            """
            0.014 in plain steel
              at                Bb3 on 648 mm
              wanted            70.0 N
              pulls             71.1 N
              more than wanted  +1.1 N
              just right        0.353 mm, 0.0139 in
              of breaking       28 %
            """,
            All.Text(FittedString.GaugeFor(new(70), Pitch.Parse("Bb3"), 648, StringMaterial.PlainSteel))
        );

    [Fact]
    public void A_gauge_that_breaks_is_shown_with_its_warning_and_the_caution()
    {
        var text = All.Text(FittedString.GaugeFor(new(90), Pitch.Parse("C5"), 648, StringMaterial.PlainSteel));
        Assert.Contains("127 %", text, StringComparison.Ordinal);
        Assert.Contains("breaks before it is in tune", text, StringComparison.Ordinal);
        Assert.Contains(Cautions.Strings, text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_not_known_or_an_estimate_is_said()
    {
        var nylon = All.Text(new Neck(Tuning.Standard, 650).Tensions(StringSet.Find("Classical nylon")!));
        Assert.Contains("not known  comfortable", nylon, StringComparison.Ordinal);
        Assert.Contains("How near these strings are to breaking is not known", nylon, StringComparison.Ordinal);
    }

    [Fact]
    public void A_string_tuned_up_goes_with_the_caution_however_comfortable()
    {
        var report = Neck
            .Guitar.With(Tuning.Parse("E2 A2 D3 G3 B3 F4"))
            .Tensions(StringSet.Find("Light electric 10-46")!, Tuning.Standard);
        Assert.Contains(Cautions.Strings, All.Text(report), StringComparison.Ordinal);
        Assert.Contains(Cautions.Strings, All.Text(report.Strings[0]), StringComparison.Ordinal);
        Assert.DoesNotContain(Cautions.Strings, All.Text(report.Strings[1]), StringComparison.Ordinal);
    }

    [Fact]
    public void Warnings_are_never_shown_without_the_caution()
    {
        foreach (
            var (tuning, isAmiss) in new[]
            {
                ("E2 A2 D3 G3 B3 E5", true),
                ("C1 A2 D3 G3 B3 E4", true),
                ("E2 A2 D3 G3 B3 E4", false),
            }
        )
        {
            var report = Neck.Guitar.With(Tuning.Parse(tuning)).Tensions(StringSet.Find("Light electric 10-46")!);
            foreach (object value in report.Strings.Append<object>(report))
            {
                var html = Fragment.TextOf(Fragment.Parse(All.Html(value, new RenderContext())));
                var shows = isAmiss && value is not StringTension { State: StringState.Comfortable };
                Assert.Equal(shows, html.Contains(Cautions.Strings, StringComparison.Ordinal));
                Assert.Equal(shows, All.Text(value).Contains(Cautions.Strings, StringComparison.Ordinal));
            }
        }
    }

    [Fact]
    public void Pitches_of_a_report_are_named_in_the_readers_way()
    {
        var german = DrawingRenderers.Named(NoteNaming.German).Text(Samples.Tensions);
        Assert.Contains("E2 A2 D3 G3 H3 E4", german, StringComparison.Ordinal);
        Assert.Contains("String 1 (As4, ", german, StringComparison.Ordinal);
    }
}
