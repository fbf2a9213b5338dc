using System.Xml.Linq;
using TheoryKit.Drawing.Licks;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Paths;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tab;
using TheoryKit.Drawing.Tests.Markup;
using TheoryKit.Drawing.Tests.Tab;
using TheoryKit.Drawing.Zones;
using TheoryKit.Licks;
using TheoryKit.Licks.Folders;
using TheoryKit.Licks.Moves;
using TheoryKit.Licks.Practice;
using TheoryKit.Licks.Search;
using TheoryKit.Licks.Tab;
using TheoryKit.Licks.Tab.Remarks;
using TheoryKit.Paths;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Tests.Licks;

public class LickDrawingTests
{
    private static readonly RendererSet All = DrawingRenderers.All;

    /// <summary>Texts that would break out of a page, or turn it round.</summary>
    private static readonly string[] Texts =
    [
        "<script>alert(1)</script>",
        "\"><svg onload=alert(1)>",
        "' onmouseover='alert(1)",
        "]]>",
        "&amp; & &lt;b&gt;",
        "<!-- no comment",
        "</style></title></desc>",
        "javascript:alert(1)",
        "\u202egnirts dekcab",
        "\u2067\u2067unclosed",
        "\u2069\u2069closed",
        "\u05e9\u05dc\u05d5\u05dd",
        new('W', 400),
        "🎸👩‍👩‍👧‍👦🏳️‍🌈",
        "e\u0301\u0302\u0303",
        "{0} {{1}} %s $HOME",
    ];

    private static readonly Gen<string> AnyText = Gen.Select(
        Samples.Of(Texts),
        Samples.Of(Texts),
        static (one, two) => $"{one} {two}"
    );

    private static readonly Gen<Lick> AnyLick =
        from text in AnyText.Array[6]
        from lick in Samples.Of(DrawnLicks.All)
        select lick with
        {
            Name = text[0],
            Tune = text[1],
            Tags = [text[2].Replace(',', ';'), text[3].Replace(',', ';')],
            Headers = [new("from", text[4])],
            Words = $"{text[5]}\n{text[0]}",
        };

    [Fact]
    public void What_a_player_writes_is_text_in_every_page() =>
        Gen.Select(AnyLick, AnyLick)
            .Sample(
                static (one, other) =>
                {
                    var same = other with { Path = one.Path };
                    foreach (
                        var value in new object[]
                        {
                            one,
                            one.Draw(),
                            new[] { one, same },
                            new[] { one, same }.Compare(),
                            one.Headers[0],
                            new TabReading
                            {
                                Path = one.Path,
                                Words = one.Words,
                                Remarks = [new TabRemark.SignPassedOver(one.Name)],
                            },
                            new TabRemark.SignPassedOver(one.Name) { Length = 2 },
                        }
                    )
                    {
                        var html = Fragment.Parse(All.Html(value, new RenderContext()));
                        Harmless(html);
                        Balanced(Fragment.TextOf(html));
                        Balanced(All.Text(value));
                    }

                    Harmless(XElement.Parse(new[] { one, same }.Compare().Svg()));
                    var page = Fragment.TextOf(Fragment.Parse(All.Html(one, new RenderContext())));
                    Assert.Contains(WithoutDirections(one.Name), WithoutDirections(page), StringComparison.Ordinal);
                },
                iter: 200
            );

    [Fact]
    public void What_a_player_writes_is_text_where_licks_are_kept_found_moved_and_practised() =>
        Gen.Select(AnyLick, AnyLick)
            .Sample(
                static (one, other) =>
                {
                    foreach (var value in Kept(one, other))
                    {
                        var html = Fragment.Parse(All.Html(value, new RenderContext()));
                        Harmless(html);
                        Balanced(Fragment.TextOf(html));
                        Balanced(All.Text(value));
                    }
                },
                iter: 60
            );

    /// <summary>What a folder, a search and a move make of licks with such texts.</summary>
    private static IEnumerable<object> Kept(Lick one, Lick other)
    {
        var kept = new KeptLick { Lick = one, File = one.Tune };
        var found = new FoundLick
        {
            Kept = kept,
            Score = 1,
            Reasons = [new FoundReason.Tagged(one.Tags[0]), new FoundReason.OfTune(one.Tune)],
        };
        yield return kept;
        yield return new BrokenLick(one.Name, LickFault.Text, 3) { Detail = one.Tune };
        yield return found;
        yield return new[] { found };
        yield return new LickResults(Enumerable.Repeat(found, 12), one.Name);
        yield return new SimilarLicks { Licks = [kept, new() { Lick = other, File = one.Name }], Likeness = 1 };
        yield return new LickQuery(new LickCriterion.Tagged(one.Tags[^1]), new LickCriterion.OfTune(one.Tune));
        var moved = one.Displaced(Fractions.Fraction.One) with
        {
            Remarks = [new(1, Fractions.Fraction.One, Pitch.Parse("Eb4"), new MoveLoss.TrillNote())],
        };
        yield return moved;
        yield return new[] { moved, other.Reversed() };
        yield return moved.Remarks[0];
        yield return moved.Tones[0];
        var day = new DateOnly(2026, 11, 24);
        yield return PracticeHistory.Empty.Due(day, [one]);
        yield return PracticeHistory.Read($"{one.Tune}\n");
        yield return new LickRenamed(day, "Old", one.Name);
        yield return new Practised
        {
            Date = day,
            Lick = one.Name,
            Outcome = Outcome.Clean,
            Note = one.Tune,
        };
    }

    private static void Harmless(XElement page)
    {
        Assert.DoesNotContain(
            page.DescendantsAndSelf(),
            static each => each.Name.LocalName is "script" or "b" or "a" or "img" or "iframe" or "foreignObject"
        );
        Assert.DoesNotContain(
            page.DescendantsAndSelf().Attributes(),
            static each =>
                each.Name.LocalName.StartsWith("on", StringComparison.OrdinalIgnoreCase)
                || each.Name.LocalName is "href" or "src"
        );
        // Nothing that a player writes stands in an attribute but in a label.
        Assert.DoesNotContain(
            page.DescendantsAndSelf().Attributes(),
            static each => each.Value.Contains("alert", StringComparison.Ordinal) && each.Name.LocalName != "aria-label"
        );
        Assert.DoesNotContain(
            page.Descendants().Where(static each => each.Name.LocalName == "style"),
            static each => each.Value.Contains("alert", StringComparison.Ordinal)
        );
    }

    /// <summary>No line goes on in a direction that a text in it has set: outside of isolates there is no control, and each one is closed.</summary>
    private static void Balanced(string text)
    {
        foreach (var line in text.Split('\n'))
        {
            var depth = 0;
            foreach (var c in line)
            {
                depth +=
                    c is '\u2066' or '\u2067' or '\u2068' ? 1
                    : c == '\u2069' ? -1
                    : 0;
                Assert.True(depth >= 0);
                Assert.False(c is >= '\u202a' and <= '\u202e' && depth == 0);
            }

            Assert.Equal(0, depth);
        }
    }

    private static string WithoutDirections(string text) =>
        string.Concat(text.Where(static c => c is not (>= '\u2066' and <= '\u2069')));

    [Fact]
    public void A_short_text_is_no_longer_than_asked_and_whole_where_it_fits() =>
        Gen.Select(AnyText, Gen.Int[1, 60])
            .Sample(
                static (text, columns) =>
                {
                    var cut = WithoutDirections(UserText.Short(text, columns));
                    var whole = WithoutDirections(text);
                    Assert.True(
                        new System.Globalization.StringInfo(cut).LengthInTextElements
                            <= columns + text.Count(static c => c is >= '\u2066' and <= '\u2069')
                    );
                    Assert.True(
                        cut == whole || (cut.EndsWith('…') && whole.StartsWith(cut[..^1], StringComparison.Ordinal))
                    );
                }
            );

    [Fact]
    public void A_text_that_fits_is_not_cut()
    {
        Assert.Equal("Low tide", UserText.Short("Low tide", 8));
        Assert.Equal("Low ti…", UserText.Short("Low tide", 7));
        Assert.Equal("…", UserText.Short("Low tide", 1));
        Assert.Equal("🎸", UserText.Short("🎸", 2));
    }

    [Fact]
    public void A_page_has_the_tab_the_neck_and_what_was_noted()
    {
        var lick = DrawnLicks.Bends;
        var page = Fragment.Parse(All.Html(lick, new RenderContext()));
        var text = Fragment.TextOf(page);
        foreach (
            var said in new[]
            {
                lick.Name,
                lick.Tune,
                "132 beats a minute",
                "bends, second phrase",
                "the run-through on the ferry",
                "Let the first bend ring until the release.",
                "Gm9, C13, in F major",
            }
        )
        {
            Assert.Contains(said, text, StringComparison.Ordinal);
        }

        Assert.Equal(2, page.Descendants().Count(static each => each.Name.LocalName == "svg"));
        Assert.Single(page.Descendants("fieldset"));
        Assert.Single(
            Fragment.Parse(All.Html(lick.Draw() with { ShowsNeck = false }, new RenderContext())).Descendants(),
            static each => each.Name.LocalName == "svg"
        );
    }

    [Fact]
    public void Labels_that_there_are_none_of_give_way_to_those_that_there_are()
    {
        var page = Fragment.Parse(All.Html(DrawnLicks.Plain, new RenderContext()));
        Assert.Equal(
            "n",
            page.Descendants("input")
                .Single(static each => each.Attribute("checked") is not null)
                .Attribute("value")!
                .Value
        );
    }

    [Fact]
    public void Equal_when_the_lick_and_what_is_shown_agree()
    {
        Assert.Equal(DrawnLicks.Bends.Draw(), (DrawnLicks.Bends with { }).Draw());
        Assert.NotEqual(DrawnLicks.Bends.Draw(), DrawnLicks.Slides.Draw());
        Assert.NotEqual(DrawnLicks.Bends.Draw(), DrawnLicks.Bends.Draw() with { Width = 100 });
        Assert.NotEqual(DrawnLicks.Bends.Draw(), DrawnLicks.Bends.Draw() with { ShowsNeck = false });
        Assert.Equal(DrawnLicks.InBossa.Compare(), DrawnLicks.InBossa.ToList().Compare());
        Assert.Equal(DrawnLicks.InBossa.Compare().GetHashCode(), DrawnLicks.InBossa.ToList().Compare().GetHashCode());
        Assert.NotEqual(DrawnLicks.InBossa.Compare(), DrawnLicks.InBossa.Reverse().Compare());
        Assert.NotEqual(DrawnLicks.InBossa.Compare(), DrawnLicks.InBossa.Compare() with { Labels = Labels.NoteNames });
    }

    [Fact]
    public void Limits_are_kept()
    {
        Assert.Throws<ArgumentOutOfRangeException>(static () => DrawnLicks.Bends.Draw() with { Width = 59 });
        Assert.Throws<ArgumentOutOfRangeException>(static () => DrawnLicks.Bends.Draw() with { Columns = 29 });
        Assert.Throws<ArgumentOutOfRangeException>(static () =>
            DrawnLicks.InBossa.Compare() with
            {
                Width = double.NaN,
            }
        );
        Assert.Throws<ArgumentException>(static () => Array.Empty<Lick>().Compare());
        var wrong = Assert.Throws<ArgumentException>(static () =>
            new[] { DrawnLicks.Bends, DrawnLicks.Slurs }.Compare()
        );
        Assert.StartsWith(
            "\"Running the steps\" is in 3/4, \"Leaning mast\" in 4/4;",
            wrong.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void The_same_moment_lies_at_the_same_place_in_all_that_are_compared() =>
        Gen.Select(
                TabPictureTests.AnyPlayed.Where(static path => path.Changes is null).Array[2, 4],
                Gen.Double[TabDrawing.MinWidth, 250]
            )
            .Sample(
                static (paths, width) =>
                {
                    var tabs = paths.Select(static path => new TabParts(path.Tab())).ToList();
                    var spacing = new TabSpacing(tabs, width);
                    var layouts = tabs.Select(tab => new TabLayout(tab, spacing)).ToList();
                    for (var line = 0; line < spacing.Lines.Count; line++)
                    {
                        foreach (var layout in layouts.Where(layout => line < layout.Lines.Count))
                        {
                            Assert.Equal(
                                spacing.Lines[line].Take(layout.Lines[line].Bars.Count),
                                layout.Lines[line].Bars
                            );
                        }
                    }

                    foreach (var (path, layout) in paths.Zip(layouts))
                    {
                        Assert.All(path.Notes, note => Assert.Equal(layouts[0].X(note.Start), layout.X(note.Start)));
                        Assert.Equal(Math.Max(1, path.BarCount), layout.Lines.Sum(static each => each.Bars.Count));
                    }
                },
                iter: 100
            );

    [Fact]
    public void In_plain_text_the_same_moment_stands_in_the_same_column()
    {
        // The strings of each lick are as long as the count, bar for bar, and every fret number of lick 1 has the one of lick 2 below it.
        var lines = (new[] { DrawnLicks.Bends, DrawnLicks.Bends }.Compare() with { Columns = 200 })
            .ToString()
            .Split('\n');
        var second =
            lines
                .Select(static (line, index) => (line, index))
                .Last(static each => each.line.StartsWith("E|", StringComparison.Ordinal))
                .index - 5;
        var first = Array.FindIndex(lines, static line => line.StartsWith("E|", StringComparison.Ordinal));
        Assert.Equal(lines[first..(first + 7)], lines[second..(second + 7)]);
        Assert.Contains("They do the same at every moment.", lines);
    }

    [Fact]
    public void Where_the_capo_is_stands_below_the_name_of_a_lick_that_is_compared()
    {
        var lick = DrawnLicks.Bends;
        var on = lick.On(new Neck(Tuning.Standard, capo: 3)).Lick;
        var svg = XElement.Parse(new LickComparison([lick, on]).Svg());
        var texts = svg.Descendants().Where(static each => each.Name.LocalName == "text").ToList();
        var (name, capo) = (
            texts.Last(each => each.Value.Contains(lick.Name, StringComparison.Ordinal)),
            texts.Single(static each => each.Value.StartsWith("capo 3", StringComparison.Ordinal))
        );
        Assert.True((double)capo.Attribute("y")! - (double)name.Attribute("y")! >= 12);
    }

    [Fact]
    public void How_far_a_lick_answers_is_said_once_and_only_where_it_does_not_in_full()
    {
        var lick = DrawnLicks.Bends;
        Assert.DoesNotContain(
            "in part",
            Text(new FoundReason.PlayedWith(Technique.Bend, 1, 1), 1),
            StringComparison.Ordinal
        );
        Assert.DoesNotContain("in part", Text(new FoundReason.Alike(0.7), 0.7), StringComparison.Ordinal);
        Assert.Contains("in part", Text(new FoundReason.OfTune("Nine Tin Boats"), 0.9), StringComparison.Ordinal);

        string Text(FoundReason reason, double score) =>
            All.Text(
                new FoundLick
                {
                    Kept = new() { Lick = lick, File = "a.lick.txt" },
                    Score = score,
                    Reasons = [reason],
                }
            );
    }

    [Fact]
    public void A_lick_differs_where_it_does_something_else()
    {
        var comparison = new[] { DrawnLicks.Bends, DrawnLicks.SevenNine }.Compare();
        // By hand: an A over Gm9 for a G; D for the C bent by a quarter; the E for the F (bent 7) and on beat 3 for the D; one more at beat 4.
        Assert.Equal(
            ["2", "9/2", "11/2", "6", "7"],
            comparison
                .Differences.Select(static beat => $"{beat}")
                .Order(StringComparer.Ordinal)
                .OrderBy(static text => Fractions.Fraction.FromString(text))
        );
        Assert.All(comparison.Licks[0].Path.Notes, note => Assert.False(comparison.Differs(0, note)));
        Assert.Empty(new[] { DrawnLicks.Slurs, DrawnLicks.Slurs }.Compare().Differences);
    }

    [Fact]
    public void Licks_without_chords_are_compared_by_their_pitch_classes()
    {
        var high = DrawnLicks.Of("High", "", null, "1", "5:15 4:14 4:17 3:4");
        Assert.Empty(new[] { DrawnLicks.Plain, high }.Compare().Differences);
    }

    [Fact]
    public void A_comparison_is_as_expected()
    {
        Expectations.Matches(DrawnLicks.InBossa.Compare().Svg(), "licks-compared.svg");
        Expectations.Matches(All.Text(DrawnLicks.InBossa.Compare()), "licks-compared.txt");
        Assert.InRange(new[] { DrawnLicks.Bends, DrawnLicks.SevenNine }.Compare().Svg().Length, 1, 20 * 1024);
    }

    [Fact]
    public void A_moved_lick_is_as_expected()
    {
        Expectations.Matches(All.Text(DrawnLicks.Refitted), "moved-lick.txt");
        Expectations.Matches(
            Fragment.WithoutStyle(All.Html(DrawnLicks.Refitted, new RenderContext())),
            "moved-lick.html"
        );
        Expectations.Matches(All.Text(DrawnLicks.Crossed), "moved-lick-to-another-neck.txt");
        Expectations.Matches(All.Text(new[] { DrawnLicks.Refitted, DrawnLicks.Bends.InOctave(-1) }), "moved-licks.txt");
    }

    [Fact]
    public void Each_remark_of_a_move_is_a_sentence_and_each_note_has_its_row()
    {
        var moves = DrawnLicks
            .All.SelectMany(static lick => new[] { lick.Reversed(), lick.Displaced(new(3, 2)) })
            .Concat(
                new[]
                {
                    DrawnLicks.Bends,
                    DrawnLicks.Slides,
                    DrawnLicks.Slurs,
                    DrawnLicks.Trills,
                    DrawnLicks.Everything,
                }.SelectMany(static lick => new[] { lick.InOctave(1), lick.InOctave(-1), lick.InOctave(-2) })
            );
        foreach (var moved in moves)
        {
            var page = Fragment.Parse(All.Html(moved, new RenderContext()));
            var text = Fragment.TextOf(page);
            Assert.Equal(moved.Remarks.Count, text.Split(" could not keep ").Length - 1);
            Assert.Equal(moved.Remarks.Count, text.Split(" Instead: ").Length - 1);
            Assert.Equal(moved.Tones.Count, page.Descendants("tbody").Single().Elements("tr").Count());
            Assert.Equal(moved.IsWhole, text.Contains("Nothing was lost.", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void A_string_that_is_turned_up_brings_its_caution()
    {
        var neck = new Neck(Tuning.Find("Open D")!);
        Assert.DoesNotContain(Cautions.Strings, All.Text(DrawnLicks.Bends.On(neck)), StringComparison.Ordinal);
        Assert.Contains(Cautions.Strings, All.Text(DrawnLicks.Harmonics.On(Neck.Guitar)), StringComparison.Ordinal);
        // Another instrument is not this one turned.
        var banjo = new Neck(Tuning.Find("Banjo open G")!, 667, 22);
        Assert.NotEmpty(All.Text(DrawnLicks.Bends.On(banjo)));
    }

    [Fact]
    public void A_folder_and_what_is_found_in_it_are_as_expected()
    {
        Expectations.Matches(All.Text(DrawnLicks.Folder), "lick-folder.txt");
        Expectations.Matches(All.Text(DrawnLicks.Found.Sheet("With bends")), "licks-found.txt");
    }

    [Fact]
    public void A_lick_on_a_page_is_as_expected()
    {
        Expectations.Matches(Fragment.WithoutStyle(All.Html(DrawnLicks.Bends, new RenderContext())), "lick.html");
        Expectations.Matches(All.Text(DrawnLicks.All), "licks.txt");
        Expectations.Matches(All.Text(DrawnLicks.Reading.Remarks), "tab-remarks.txt");
    }
}
