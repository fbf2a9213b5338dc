using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Fractions;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Paths;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tab;
using TheoryKit.Drawing.Tests.Licks;
using TheoryKit.Licks;
using TheoryKit.Paths;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Drawing.Tests.Tab;

/// <summary>How techniques are drawn in tab.</summary>
public partial class TabPictureTests
{
    private static readonly Gen<Fraction> Length = Samples.Of<Fraction>([1, 2, new(1, 2), new(1, 4), new(1, 3), 3]);

    /// <summary>Lines that are played in every way that there is, also two strings at once.</summary>
    internal static readonly Gen<Path> AnyPlayed =
        from changes in Samples.Of(
            new[]
            {
                null,
                Changes.Parse("4/4, F major: Gm9 | C13 | Fmaj9 | Dm7"),
                Changes.Parse("3/4: Ebmaj7 | Bb7alt C13 N.C."),
            }
        )
        from events in Gen.Select(
            Length,
            Gen.Int[1, 6],
            Gen.Int[0, 20],
            Gen.Int[0, Technique.Known.Count - 1].Array[0, 3],
            Gen.Int[1, 12],
            Gen.Bool
        ).Array[1, 12]
        select Make(changes, events);

    [Fact]
    public void Everything_is_inside_the_picture_and_every_number_there_once() =>
        Gen.Select(AnyPlayed, Gen.Double[TabDrawing.MinWidth, 250])
            .Sample(
                static (path, width) =>
                {
                    var svg = XElement.Parse((path.Tab() with { Width = width }).Svg());
                    var (right, bottom) = ((double)svg.Attribute("width")!, (double)svg.Attribute("height")!);
                    foreach (var (x, y) in Points(svg))
                    {
                        Assert.InRange(x, 0, right);
                        Assert.InRange(y, 0, bottom);
                    }

                    Assert.Equal(
                        path.Notes.Select(note => TabNote.Sign(path.Neck, note, "P")),
                        Texts(svg)
                            .Where(static each =>
                                each.Parent!.Attribute("style")
                                    ?.Value.StartsWith("paint-order", StringComparison.Ordinal) == true
                            )
                            .Select(static each => each.Value)
                    );
                },
                iter: 300
            );

    [Fact]
    public void Bends_say_how_far_below_the_names_of_chords_and_the_signs() =>
        AnyPlayed.Sample(
            static path =>
            {
                var svg = XElement.Parse((path.Tab() with { Width = 2000 }).Svg());
                var amounts = Texts(svg).Where(IsAmount).ToList();
                Assert.Equal(
                    path.Notes.Where(static note => note.Bend > 0)
                        .Select(static note => TabSigns.Amount(note.Bend))
                        .Order(),
                    amounts.Select(static each => each.Value).Order()
                );
                var above = Texts(svg)
                    .Where(static each =>
                        each.Value is "A.H." or "T" or "tr" or "P.M."
                        || each.Parent!.Attribute("font-size")?.Value == "13"
                    )
                    .Select(static each => (double)each.Attribute("y")!)
                    .ToList();
                if (above.Count > 0)
                {
                    // A letter is at most 8 px high.
                    Assert.All(amounts, each => Assert.True((double)each.Attribute("y")! - 8 >= above.Max()));
                }

                static bool IsAmount(XElement text) =>
                    text.Attribute("font-size")?.Value == "10"
                    && text.Attribute("font-style") is null
                    && text.Attribute("text-anchor") is not null;
            },
            iter: 300
        );

    [Fact]
    public void Bends_that_begin_together_say_each_amount_once_and_none_over_another() =>
        Gen.Select(Gen.Int[1, 20], Gen.Int[1, 6], Gen.Bool)
            .Array[2, 4]
            .Sample(
                static bends =>
                {
                    var notes = bends.Select(
                        static (bend, index) =>
                            new PathNote
                            {
                                Position = new(index + 1, bend.Item1),
                                Pitch = Pitch.FromMidi(Neck.Guitar.MidiNumberAt(new(index + 1, bend.Item1))),
                                Start = Fraction.Zero,
                                Length = 1,
                                Techniques = [bend.Item3 ? Technique.PreBend : Technique.Bend],
                                Bend = bend.Item2 * 50,
                            }
                    );
                    var path = new Path(Neck.Guitar, notes, TimeSignature.Common);
                    var svg = XElement.Parse(path.Tab().Svg());
                    var amounts = Texts(svg)
                        .Where(static each =>
                            each.Attribute("font-size")?.Value == "10" && each.Attribute("text-anchor") is not null
                        )
                        .Select(static each =>
                        {
                            var (x, width) = ((double)each.Attribute("x")!, each.Value.Length * 4.5);
                            var isEnd = each.Attribute("text-anchor")!.Value == "end";
                            return (
                                each.Value,
                                Left: isEnd ? x - width : x - (width / 2),
                                Right: isEnd ? x : x + (width / 2),
                                Y: (double)each.Attribute("y")!
                            );
                        })
                        .ToList();
                    Assert.Equal(
                        bends.Select(static bend => TabSigns.Amount(bend.Item2 * 50)).Distinct().Order(),
                        amounts.Select(static each => each.Value).Distinct().Order()
                    );
                    for (var first = 0; first < amounts.Count; first++)
                    {
                        foreach (var second in amounts.Skip(first + 1))
                        {
                            var (one, other) = (amounts[first], second);
                            Assert.True(
                                one.Right <= other.Left || other.Right <= one.Left || Math.Abs(one.Y - other.Y) >= 7,
                                $"{one} and {other}"
                            );
                        }
                    }
                },
                iter: 300
            );

    [Fact]
    public void Room_for_bends_is_only_in_lines_that_have_some()
    {
        var layout = new TabLayout(DrawnLicks.OverTheLine.Path.Tab() with { Width = TabDrawing.MinWidth });
        Assert.Equal(3, layout.Lines.Count);
        Assert.True(layout.Lines[0].Rows.Staff > layout.Lines[2].Rows.Staff);
        Assert.Equal(layout.Lines[1].Rows.Staff, layout.Lines[0].Rows.Staff + 17); // slurs in the second
    }

    [Fact]
    public void What_is_played_one_after_the_other_does_not_touch() =>
        AnyPlayed.Sample(
            static path =>
            {
                var layout = new TabLayout(path.Tab());
                foreach (var line in layout.Lines)
                {
                    var moments = layout.Notes(line.Bars).GroupBy(static note => note.Start).ToList();
                    foreach (var (before, after) in moments.Zip(moments.Skip(1)))
                    {
                        var end = before.Max(note =>
                            layout.X(note.Start) + TabNote.HalfWidth(path.Neck, note) + TabSigns.Right(note)
                        );
                        var start = after.Min(note =>
                            layout.X(note.Start) - TabNote.HalfWidth(path.Neck, note) - TabSigns.Left(note)
                        );
                        Assert.True(end < start);
                    }
                }
            },
            iter: 200
        );

    [Fact]
    public void Words_say_every_technique_and_the_pitch_that_sounds() =>
        AnyPlayed.Sample(
            static path =>
            {
                var words = path.Tab().Description;
                foreach (var note in path.Notes)
                {
                    Assert.All(note.Techniques, each => Assert.Contains(each.Name, words, StringComparison.Ordinal));
                    if (note.IsDead)
                    {
                        continue; // a click, at no pitch
                    }

                    if (note.Bend > 0)
                    {
                        Assert.Contains(TabWords.Tones(note.Bend), words, StringComparison.Ordinal);
                    }

                    Assert.Contains(path.SoundingPitch(note).ToString("P"), words, StringComparison.Ordinal);
                }
            },
            iter: 200
        );

    [Fact]
    public void A_bend_is_said_with_where_it_leads_and_what_that_does()
    {
        var words = DrawnLicks.Bends.Path.Tab().Description;
        Assert.Contains(
            "string 2 fret 8, G4, bend by a whole tone to A4, the 9 of Gm9, for 1 beat;",
            words,
            StringComparison.Ordinal
        );
        Assert.Contains("string 2 fret 8, G4, release, the 1 of Gm9", words, StringComparison.Ordinal);
        Assert.Contains(
            "C4, bend by a quarter tone to a quarter tone above C4, a quarter tone above the 1 of C13",
            words,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(50, "¼", "1/4", "a quarter tone")]
    [InlineData(100, "½", "1/2", "half a tone")]
    [InlineData(150, "¾", "3/4", "three quarter tones")]
    [InlineData(200, "full", "full", "a whole tone")]
    [InlineData(250, "1¼", "1 1/4", "1¼ tones")]
    [InlineData(300, "1½", "1 1/2", "1½ tones")]
    [InlineData(400, "2", "2", "2 tones")]
    [InlineData(550, "2¾", "2 3/4", "2¾ tones")]
    [InlineData(600, "3", "3", "3 tones")]
    public void Amounts_are_said_as_players_do(int cents, string amount, string plain, string words)
    {
        Assert.Equal(amount, TabSigns.Amount(cents));
        Assert.Equal(plain, TabWords.PlainAmount(cents));
        Assert.Equal(words, TabWords.Tones(cents));
    }

    [Fact]
    public void Hammer_ons_and_pull_offs_in_a_run_have_one_slur()
    {
        // Five notes, then three, then three in a triplet: three runs, seven letters.
        var svg = XElement.Parse(DrawnLicks.Slurs.Path.Tab().Svg());
        Assert.Equal(
            "hhpp ph hp".Replace(" ", "", StringComparison.Ordinal).Order(),
            string.Concat(Texts(svg).Where(static each => each.Value is "h" or "p").Select(static each => each.Value))
                .Order()
        );
        Assert.Equal(
            3,
            svg.Descendants()
                .Count(static each =>
                    each.Name.LocalName == "path"
                    && each.Attribute("stroke-width")?.Value == "1.2"
                    && each.Attribute("d")!.Value.Contains('Q', StringComparison.Ordinal)
                )
        );
    }

    [Fact]
    public void Labels_are_of_the_pitch_that_sounds()
    {
        var path = DrawnLicks.Bends.Path;
        Assert.Equal("9", TabNote.Label(path, path.Notes[2], Labels.Functions, "G", null));
        Assert.Equal("A", TabNote.Label(path, path.Notes[2], Labels.NoteNames, "G", null));
        Assert.Equal("1↑", TabNote.Label(path, path.Notes[6], Labels.Functions, "P", null));
        Assert.Equal("C^", TabNote.Label(path, path.Notes[6], Labels.NoteNames, "G", null));
        var bells = DrawnLicks.Harmonics.Path;
        Assert.Equal("A", TabNote.Label(bells, bells.Notes[1], Labels.NoteNames, "G", null));
    }

    [Fact]
    public void On_the_neck_a_bend_leads_to_where_its_pitch_lies() =>
        AnyPlayed.Sample(
            static path =>
            {
                var drawing = path.OnNeck().Drawing;
                var sounding = path.Notes.Where(static note => !note.IsDead).ToList();
                var played = sounding.Select(static note => note.Position).ToHashSet();
                Assert.Equal(
                    played,
                    drawing.Marks.Where(static mark => !mark.IsPale).Select(static mark => mark.Position).ToHashSet()
                );
                Assert.Equal(
                    drawing.Marks.Length,
                    drawing.Marks.Select(static mark => mark.Position).Distinct().Count()
                );
                foreach (var mark in drawing.Marks.Where(static mark => mark.IsPale))
                {
                    Assert.Contains(
                        sounding,
                        note =>
                            note.Position.String == mark.Position.String
                            && note.Position.Fret + (note.Bend / 100) == mark.Position.Fret
                    );
                }

                foreach (var note in sounding.Where(static note => note.Techniques.Any(static each => each.IsBent)))
                {
                    Assert.Contains(
                        $"by {TabWords.Tones(note.Bend)} to ",
                        drawing.Description,
                        StringComparison.Ordinal
                    );
                }

                var svg = XElement.Parse(drawing.Svg());
                var (right, bottom) = ((double)svg.Attribute("width")!, (double)svg.Attribute("height")!);
                foreach (var (x, y) in Points(svg))
                {
                    Assert.InRange(x, -20, right + 20);
                    Assert.InRange(y, 0, bottom);
                }
            },
            iter: 200
        );

    public static TheoryData<string> Names => [.. DrawnLicks.All.Select(static lick => lick.Name)];

    [Fact]
    public void The_licks_drawn_have_every_technique() =>
        Assert.All(
            Technique.Known,
            static technique =>
                Assert.Contains(DrawnLicks.All, lick => lick.Path.Notes.Any(note => note.Has(technique)))
        );

    [Theory]
    [MemberData(nameof(Names))]
    public void Techniques_are_drawn_as_expected(string name)
    {
        var svg = Named(name).Path.Tab().Svg();
        Assert.InRange(svg.Length, 1, 20 * 1024);
        Expectations.Matches(svg, $"technique-{Slug(name)}.svg");
        Expectations.Matches(DrawingRenderers.All.Text(Named(name)), $"technique-{Slug(name)}.txt");
    }

    [Fact]
    public void A_bend_over_the_end_of_a_line_is_drawn_as_expected()
    {
        var narrow = DrawnLicks.OverTheLine.Path.Tab() with { Width = TabDrawing.MinWidth };
        Expectations.Matches(narrow.Svg(), "technique-across-the-sound-narrow.svg");
    }

    [Fact]
    public void A_neck_with_bends_is_as_expected()
    {
        Expectations.Matches(DrawnLicks.Bends.Path.OnNeck().Drawing.Svg(), "path-neck-bends.svg");
        Expectations.Matches(DrawnLicks.Slides.Path.OnNeck().Drawing.ToString(), "path-neck-slides.txt");
        Expectations.Matches(DrawnLicks.Harmonics.Path.OnNeck().Drawing.Description, "path-neck-harmonics-words.txt");
    }

    private static Lick Named(string name) => DrawnLicks.All.Single(lick => lick.Name == name);

    internal static string Slug(string name) =>
        name.ToLowerInvariant().Replace(",", "", StringComparison.Ordinal).Replace(' ', '-');

    private static IEnumerable<XElement> Texts(XElement svg) =>
        svg.Descendants().Where(static each => each.Name.LocalName == "text");

    /// <summary>The points of all lines and paths, and where texts and circles are.</summary>
    private static IEnumerable<(double X, double Y)> Points(XElement svg)
    {
        foreach (var each in svg.Descendants())
        {
            foreach (var (x, y) in new[] { ("x", "y"), ("x1", "y1"), ("x2", "y2"), ("cx", "cy") })
            {
                if (each.Attribute(x) is { } atX && each.Attribute(y) is { } atY)
                {
                    yield return ((double)atX, (double)atY);
                }
            }

            if (each.Attribute("d")?.Value is not { } outline)
            {
                continue;
            }

            var (atPathX, atPathY) = (0.0, 0.0);
            foreach (Match move in AMove().Matches(outline))
            {
                var numbers = move.Groups[2]
                    .Value.Split(' ', StringSplitOptions.RemoveEmptyEntries)
                    .Select(static text => double.Parse(text, CultureInfo.InvariantCulture))
                    .ToArray();
                (atPathX, atPathY) = move.Groups[1].Value switch
                {
                    "H" => (numbers[0], atPathY),
                    "V" => (atPathX, numbers[0]),
                    "Z" => (atPathX, atPathY),
                    _ => (numbers[^2], numbers[^1]),
                };
                yield return (atPathX, atPathY);
            }
        }
    }

    private static Path Make(
        Changes? changes,
        (Fraction Length, int String, int Fret, int[] Techniques, int Number, bool IsDoubled)[] events
    )
    {
        var (at, notes) = (Fraction.Zero, new List<PathNote>());
        foreach (var (length, number, fret, techniques, amount, isDoubled) in events)
        {
            var asked = techniques.Select(static index => Technique.Known[index]).Distinct().ToList();
            // A pre-bend is none if the string is bent after the stroke, and a harmonic has no finger that bends.
            var isHarmonic = asked.Remove(Technique.NaturalHarmonic);
            var isReleased = asked.Remove(Technique.Release);
            var isBent = !isHarmonic && fret > 0 && (isReleased || asked.Exists(static each => each.IsBent));
            asked.RemoveAll(static each => each.IsBent);
            var note = new PathNote
            {
                Position = new(number, isHarmonic ? 12 : fret),
                Pitch = Pitch.FromMidi(Neck.Guitar.MidiNumberAt(new(number, isHarmonic ? 12 : fret))),
                Start = at,
                Length = isReleased && isBent ? length / 2 : length,
                Techniques =
                [
                    .. asked,
                    .. isHarmonic ? [Technique.NaturalHarmonic] : Array.Empty<Technique>(),
                    .. isBent ? [amount % 2 == 0 ? Technique.Bend : Technique.PreBend] : Array.Empty<Technique>(),
                ],
                Bend = isBent ? amount * 50 : 0,
                TrillFret = asked.Contains(Technique.Trill) ? (isHarmonic ? 12 : fret) + 2 : null,
            };
            notes.Add(note);
            if (isDoubled)
            {
                var position = new Position((number % 6) + 1, fret);
                notes.Add(
                    note with
                    {
                        Position = position,
                        Pitch = Pitch.FromMidi(Neck.Guitar.MidiNumberAt(position)),
                        Techniques = [],
                        Bend = 0,
                        TrillFret = null,
                    }
                );
            }

            if (isReleased && isBent)
            {
                notes.Add(
                    note with
                    {
                        Start = note.End,
                        Techniques = [Technique.Release],
                        Bend = (amount - 1) / 2 * 50,
                        TrillFret = null,
                    }
                );
            }

            at += length;
        }

        return new(Neck.Guitar, notes, changes?.Time, changes);
    }

    [GeneratedRegex("([A-Z])([-0-9. ]*)")]
    private static partial Regex AMove();
}
