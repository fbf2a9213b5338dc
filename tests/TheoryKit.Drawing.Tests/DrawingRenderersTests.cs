using System.Text.RegularExpressions;
using System.Xml.Linq;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tests.Markup;
using TheoryKit.Drawing.Theory;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Tests;

public partial class DrawingRenderersTests
{
    private static readonly RendererSet All = DrawingRenderers.All;

    private static IEnumerable<object> Shown => [.. Samples.Values, .. Samples.Drawings, .. Samples.Extremes];

    public static TheoryData<string> SampleNames =>
        [.. Shown.Select(static (value, i) => $"{i} {value.GetType().Name}")];

    [Fact]
    public void Every_public_value_is_shown()
    {
        var missing = typeof(Chord)
            .Assembly.GetExportedTypes()
            .Where(static type =>
                !type.IsEnum && !type.IsInterface && !type.IsNested && !(type.IsAbstract && type.IsSealed)
            )
            .Where(static type => type != typeof(NoteNaming) && !type.IsAssignableTo(typeof(Exception)))
            .Where(static type => !All.Shows(type))
            .Select(static type => type.Name);
        Assert.Empty(missing);
    }

    [Fact]
    public void The_samples_are_of_every_public_type()
    {
        var shown = Samples.Values.Concat(Samples.Drawings).Select(static value => value.GetType()).ToHashSet();
        Assert.Empty(
            All.Types.Where(type => !type.IsGenericType && !shown.Any(type.IsAssignableFrom))
                .Select(static type => type.Name)
        );
    }

    [Theory]
    [MemberData(nameof(SampleNames))]
    public void A_value_is_shown_as_well_formed_html_with_ids_of_its_own(string name)
    {
        var (value, context) = (Sample(name), new RenderContext());
        var twice = Fragment.Parse(All.Html(value, context) + All.Html(value, context));
        var ids = Fragment.Ids(twice).ToList();
        Assert.Equal(ids.Count, ids.Distinct().Count());
        var named = twice
            .Descendants()
            .Attributes("aria-labelledby")
            .SelectMany(static attribute => attribute.Value.Split(' '));
        Assert.Subset(ids.ToHashSet(), named.ToHashSet());
    }

    [Theory]
    [MemberData(nameof(SampleNames))]
    public void A_value_is_shown_the_same_every_time(string name)
    {
        var value = Sample(name);
        Assert.Equal(All.Html(value, new RenderContext()), All.Html(value, new RenderContext()));
        Assert.Equal(All.Text(value), All.Text(value));
    }

    [Theory]
    [MemberData(nameof(SampleNames))]
    public void No_fragment_brings_script_headings_or_anything_from_outside(string name)
    {
        var html = Fragment.Parse(All.Html(Sample(name), new RenderContext()));
        Assert.DoesNotContain(
            html.Descendants(),
            static each => each.Name.LocalName is "script" or "link" or "iframe" or "h1" or "h2" or "h3" or "img"
        );
        Assert.Empty(html.Descendants().Attributes("href").Concat(html.Descendants().Attributes("src")));
        Assert.DoesNotContain("url(", html.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(SampleNames))]
    public void Text_has_no_trailing_spaces_and_no_tabs(string name)
    {
        var text = All.Text(Sample(name));
        Assert.NotEmpty(text);
        Assert.DoesNotContain('\t', text);
        Assert.All(text.Split('\n'), static line => Assert.Equal(line.TrimEnd(), line));
    }

    [Theory]
    [MemberData(nameof(SampleNames))]
    public void Html_writes_sharps_and_flats_as_printed(string name) =>
        Assert.DoesNotMatch(APlainSign(), Fragment.TextOf(Fragment.Parse(All.Html(Sample(name), new RenderContext()))));

    [Theory]
    [MemberData(nameof(SampleNames))]
    public void Tables_have_captions_and_named_rows_and_columns(string name)
    {
        var html = Fragment.Parse(All.Html(Sample(name), new RenderContext()));
        foreach (var table in html.Descendants("table"))
        {
            Assert.NotEmpty(table.Element("caption")!.Value);
            var columns = table.Element("thead")!.Descendants("th").ToList();
            Assert.All(columns, static head => Assert.Equal("col", head.Attribute("scope")?.Value));
            foreach (var row in table.Element("tbody")!.Elements("tr"))
            {
                Assert.Equal(columns.Count, row.Elements().Count());
                Assert.Equal("row", row.Element("th")!.Attribute("scope")?.Value);
            }
        }
    }

    [Fact]
    public void Sequences_become_tables_with_a_row_for_each()
    {
        foreach (
            var values in new object[] { Samples.KestrelStairs, ChordQuality.Known, ScaleType.Known, SetClass.All }
        )
        {
            var html = Fragment.Parse(All.Html(values, new RenderContext()));
            Assert.Equal(
                ((System.Collections.IEnumerable)values).Cast<object>().Count(),
                html.Descendants("tbody").Single().Elements("tr").Count()
            );
        }
    }

    [Fact]
    public void A_sequence_without_end_is_cut_and_says_so()
    {
        var text = All.Text(Enumerable.Repeat(0, int.MaxValue).Select(static _ => NoteName.Parse("C")));
        Assert.StartsWith("The first 500 note names\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_sequence_says_so() => Assert.Equal("No chords.", All.Text(Array.Empty<Chord>()));

    [Fact]
    public void Notes_are_named_in_the_readers_way()
    {
        var german = DrawingRenderers.Named(NoteNaming.German);
        Assert.StartsWith("Bmaj7 ", german.Text(Chord.Parse("Bbmaj7")), StringComparison.Ordinal);
        Assert.Contains("(E2 A2 D3 G3 H3 E4)", german.Text(NeckDrawing.Of(Neck.Guitar)), StringComparison.Ordinal);
        var page = Fragment.TextOf(Fragment.Parse(german.Html(new ChordPage(Samples.Ebmaj7), new RenderContext())));
        Assert.Contains("Esmaj7", page, StringComparison.Ordinal);
        Assert.DoesNotContain("E♭", page, StringComparison.Ordinal);
    }

    // b3, #11, Bb, F# at the beginning of a word; "Above" is none.
    [GeneratedRegex(@"(?<![\w♭♯])([b#]+[0-9]|[A-G][b#](?!ove))")]
    private static partial Regex APlainSign();

    private static object Sample(string name) => Shown.ElementAt(int.Parse(name.Split(' ')[0]));
}
