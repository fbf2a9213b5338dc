using System.Xml.Linq;
using Fractions;
using TheoryKit.Drawing.Licks;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Paths;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tab;
using TheoryKit.Drawing.Tests.Markup;
using TheoryKit.Drawing.Tests.Necks;
using TheoryKit.Drawing.Zones;
using TheoryKit.Paths;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Drawing.Tests.Tab;

public class TabDrawingTests
{
    private static readonly RendererSet All = DrawingRenderers.All;

    private static readonly Changes?[] SomeChanges =
    [
        null,
        Changes.Parse("4/4, F major: Gm9 | C13 | Fmaj9 | Dm7"),
        Changes.Parse("3/4, Eb major: Ebmaj7 | Cm7 | Fm7 | Bb7"),
        Changes.Parse("4/4: Gm7 C7 | N.C. | Fmaj7 / / E7alt"),
        Changes.Parse("6/8: Am | E7"),
    ];

    /// <summary>The techniques that need nothing else.</summary>
    private static readonly IReadOnlyList<Technique> Simple =
    [
        .. Technique.Known.Where(static each =>
            !each.IsBent
            && each != Technique.Release
            && each != Technique.Trill
            && each != Technique.NaturalHarmonic
            && each != Technique.ArtificialHarmonic
        ),
    ];

    private static readonly Gen<Fraction> Length = Samples.Of<Fraction>([
        1,
        2,
        4,
        new(1, 2),
        new(1, 4),
        new(3, 2),
        new(3, 4),
        new(1, 3),
        new(2, 3),
        new(7, 2),
    ]);

    /// <summary>Notes one after the other with rests between, played in every way.</summary>
    private static readonly Gen<Path> AnyLine =
        from changes in Samples.Of(SomeChanges)
        from events in Gen.Select(
            Gen.Int[0, 4],
            Length,
            Gen.Int[1, 6],
            Gen.Int[0, 22],
            Gen.Int[0, 2 * Simple.Count]
        ).Array[1, 14]
        select Make(changes, events);

    /// <summary>The same, some with a second string struck at once.</summary>
    private static readonly Gen<Path> AnyPath =
        from path in AnyLine
        from doubled in Gen.Bool.Array[path.Notes.Count]
        select new Path(
            path.Neck,
            path.Notes.SelectMany(
                (note, index) =>
                {
                    var position = new Position((note.Position.String % 6) + 1, note.Position.Fret);
                    return doubled[index]
                        ?
                        [
                            note,
                            note with
                            {
                                Position = position,
                                Pitch = Pitch.FromMidi(path.Neck.MidiNumberAt(position)),
                                Techniques = [],
                            },
                        ]
                        : (PathNote[])[note];
                }
            ),
            path.Time,
            path.Changes
        );

    [Fact]
    public void Plain_text_says_exactly_when_every_note_starts_and_ends() =>
        AnyLine.Sample(
            static path =>
            {
                var text = (path.Tab() with { Columns = 10_000 }).ToString();
                var read = Read(text, path.Neck.StringCount, path.Time);
                Assert.Equal(
                    path.Notes.Select(static note =>
                        (
                            note.Position.String,
                            note.Has(Technique.Dead) ? "x" : $"{note.Position.Fret}",
                            note.Start,
                            note.End
                        )
                    ),
                    read
                );
            },
            iter: 500
        );

    [Fact]
    public void Plain_text_keeps_to_its_width_but_for_a_bar_that_is_wider() =>
        Gen.Select(AnyPath, Gen.Int[TabDrawing.MinColumns, 140])
            .Sample(
                static (path, columns) =>
                {
                    foreach (var line in (path.Tab() with { Columns = columns }).ToString().Split('\n').Skip(1))
                    {
                        if (line.Length > columns && line.Contains('|', StringComparison.Ordinal))
                        {
                            Assert.Equal(2, line.Count(static c => c == '|'));
                        }

                        Assert.Equal(line.TrimEnd(), line);
                    }
                },
                iter: 300
            );

    [Fact]
    public void A_bar_of_fine_lengths_is_drawn_together_to_keep_to_the_width()
    {
        var length = new Fraction(1, 7);
        var path = Make(
            null,
            [.. Enumerable.Range(0, 21).Select(index => (1, index == 0 ? new Fraction(1, 8) : length, 3, 5, 99))]
        );
        var lines = path.Tab().ToString().Split('\n');
        Assert.All(lines, static line => Assert.InRange(line.Length, 0, 100));
        Assert.Equal(
            21,
            lines.Sum(static line =>
                line.Contains('|', StringComparison.Ordinal) ? line.Count(static c => c == '5') : 0
            )
        );
        Assert.StartsWith(
            "1 note in 1/8 beat of",
            $"{Make(null, [(1, new(1, 8), 3, 5, 99)])}",
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void The_picture_has_every_number_once_and_everything_inside() =>
        Gen.Select(AnyPath, Gen.Double[TabDrawing.MinWidth, 300])
            .Sample(
                static (path, width) =>
                {
                    var drawing = path.Tab() with { Width = width };
                    var svg = XElement.Parse(drawing.Svg());
                    var (right, bottom) = ((double)svg.Attribute("width")!, (double)svg.Attribute("height")!);
                    var labels = svg.Descendants().Where(static each => each.Name.LocalName == "text").ToList();
                    Assert.All(
                        labels,
                        label =>
                        {
                            Assert.InRange((double)label.Attribute("x")!, 0, right);
                            Assert.InRange((double)label.Attribute("y")!, 0, bottom);
                        }
                    );
                    var numbers = labels
                        .Where(static label =>
                            label.Parent!.Attribute("style")?.Value.StartsWith("paint-order", StringComparison.Ordinal)
                            == true
                        )
                        .Select(static label => label.Value);
                    Assert.Equal(path.Notes.Select(note => TabNote.Sign(path.Neck, note, "P")), numbers);
                },
                iter: 300
            );

    [Fact]
    public void Words_say_every_note_and_what_it_does() =>
        AnyPath.Sample(
            static path =>
            {
                var words = path.Tab().Description;
                Assert.Equal(path.Notes.Count, words.Split(" string ").Length - 1 - 2); // twice in the tuning
                foreach (var note in path.Notes)
                {
                    Assert.Contains(
                        note.IsDead ? $"dead note on string {note.Position.String}" : note.Pitch.ToString("P"),
                        words,
                        StringComparison.Ordinal
                    );
                    Assert.All(note.Techniques, each => Assert.Contains(each.Name, words, StringComparison.Ordinal));
                }

                Assert.Equal(path.BarCount, words.Split(" Bar ").Length - 1);
            },
            iter: 200
        );

    [Fact]
    public void Written_rhythms_fill_every_bar_exactly() =>
        AnyPath.Sample(
            static path =>
            {
                var parts = WrittenRhythm.Of(WrittenRhythm.Events(path), TabParts.WholeBeats(path), path.Time);
                var at = Fraction.Zero;
                foreach (var part in parts)
                {
                    Assert.Equal(at.Reduce(), part.Start);
                    at += part.Beats;
                }

                Assert.Equal(path.BarCount * path.Time.Beats, at.Reduce());
                Assert.Equal(
                    path.Notes.Select(static note => note.Start).Distinct(),
                    parts
                        .Where(static part => part is { IsRest: false, IsTied: false })
                        .Select(static part => part.Start)
                );
                Assert.All(
                    WrittenRhythm.Beams(parts, path.Time),
                    run => Assert.All(parts.Skip(run.First).Take(run.Count), static part => Assert.False(part.IsRest))
                );
            },
            iter: 500
        );

    [Fact]
    public void Eighths_are_beamed_within_the_beat_and_in_six_eight_in_threes()
    {
        Assert.Equal([2, 2, 2, 2], Runs("4/4", new(1, 2), 8));
        Assert.Equal([4, 4], Runs("2/4", new(1, 4), 8));
        Assert.Equal([3, 3], Runs("6/8", 1, 6));
        Assert.Equal([3], Runs("3/8", 1, 3));
        Assert.Equal([3, 3, 3, 3], Runs("4/4", new(1, 3), 12));
        Assert.Equal([2, 2, 3], Runs("7/8", 1, 7));
        Assert.Equal([2, 3], Runs("5/8", 1, 5));
        Assert.Equal([5, 5], Runs("4/4", new(2, 5), 10)); // a tuplet over two beats is one
        Assert.Equal([8, 8], Runs("3/4", new(3, 8), 16));

        static IEnumerable<int> Runs(string time, Fraction length, int count) =>
            WrittenRhythm
                .Beams(
                    WrittenRhythm.Of(
                        Enumerable.Range(0, count).Select(index => (index * length, (index + 1) * length)),
                        count * length,
                        TimeSignature.Parse(time)
                    ),
                    TimeSignature.Parse(time)
                )
                .Select(static run => run.Count);
    }

    [Theory]
    [InlineData("4/4", "0", "1", "quarter, half")]
    [InlineData("4/4", "0", "1/4", "16th, 8th, quarter, half")]
    [InlineData("4/4", "3", "1", "half, quarter")]
    [InlineData("3/4", "0", "1", "quarter, quarter")]
    [InlineData("3/4", "0", "1/3", "quarter, 3 in the place of 2, quarter, quarter")]
    [InlineData("6/8", "0", "2", "8th, dotted quarter")]
    [InlineData("6/8", "5", "1", "dotted quarter, quarter")]
    [InlineData("6/8", "0", "1", "8th, 8th, dotted quarter")]
    [InlineData("12/8", "0", "2", "8th, dotted quarter, dotted half")]
    [InlineData("5/4", "0", "2", "quarter, quarter, quarter")]
    [InlineData("7/8", "0", "1", "8th, quarter, quarter, 8th")]
    [InlineData("5/4", "0", "5", "")]
    public void Rests_keep_the_pulses_in_sight(string time, string start, string length, string rests)
    {
        var from = Fraction.FromString(start);
        var signature = TimeSignature.Parse(time);
        Assert.Equal(
            rests,
            string.Join(
                ", ",
                WrittenRhythm
                    .Of([(from, from + Fraction.FromString(length))], signature.Beats, signature)
                    .Where(static part => part.IsRest)
                    .Select(static part => part.Value)
            )
        );
    }

    [Fact]
    public void Notes_that_fill_a_bar_equally_are_a_tuplet_of_it()
    {
        var parts = WrittenRhythm.Of(
            Enumerable
                .Range(0, 8)
                .Select(static index => (index * new Fraction(3, 8), (index + 1) * new Fraction(3, 8))),
            3,
            TimeSignature.Parse("3/4")
        );
        Assert.All(parts, static part => Assert.Equal(new WrittenValue(8, 0, 8, 6), part.Value));
        Assert.Equal([(0, 8)], WrittenRhythm.Tuplets(parts, TimeSignature.Parse("3/4")));
    }

    [Fact]
    public void A_page_has_a_picture_for_each_line_and_words_once() =>
        Gen.Select(AnyPath, Gen.Double[TabDrawing.MinWidth, 300])
            .Sample(
                static (path, width) =>
                {
                    var drawing = path.Tab() with { Width = width };
                    var pictures = TabPicture.Lines(drawing, new RenderContext()).Select(XElement.Parse).ToList();
                    Assert.Equal(new TabLayout(drawing).Lines.Count, pictures.Count);
                    Assert.Single(pictures.Descendants(), static each => each.Name.LocalName == "desc");
                    Assert.All(
                        pictures.Skip(1),
                        static each => Assert.Equal("true", each.Attribute("aria-hidden")?.Value)
                    );
                    Assert.Single(pictures.Select(static each => each.Attribute("width")!.Value).Distinct());
                    var texts = pictures
                        .SelectMany(static each => each.Descendants())
                        .Where(static each => each.Name.LocalName == "text");
                    Assert.Equal(
                        XElement
                            .Parse(drawing.Svg())
                            .Descendants()
                            .Where(static each => each.Name.LocalName == "text")
                            .Select(static each => each.Value),
                        texts.Select(static each => each.Value)
                    );
                    Assert.All(
                        pictures,
                        static each =>
                            Assert.All(
                                each.Descendants().Where(static part => part.Name.LocalName == "text"),
                                text =>
                                    Assert.InRange((double)text.Attribute("y")!, 0, (double)each.Attribute("height")!)
                            )
                    );
                },
                iter: 200
            );

    [Fact]
    public void A_capo_is_said_and_a_short_string_is_open_at_0()
    {
        var capo = new Path(
            Neck.Guitar.WithCapo(2),
            [Note(Neck.Guitar, new(1, 2)), Note(Neck.Guitar, new(2, 5)) with { Start = 1 }]
        );
        Assert.Contains("capo 2, frets from the nut", capo.Tab().ToString(), StringComparison.Ordinal);
        Assert.Contains(">capo 2, frets from the nut<", capo.Tab().Svg(), StringComparison.Ordinal);
        var banjo = SampleNecks.Banjo;
        var line = new Path(banjo, [Note(banjo, new(5, 5)), Note(banjo, new(1, 5)) with { Start = 1 }]);
        Assert.Equal(["0", "5"], line.Notes.Select(note => TabNote.Sign(banjo, note)));

        static PathNote Note(Neck neck, Position position) =>
            new()
            {
                Position = position,
                Pitch = Pitch.FromMidi(neck.MidiNumberAt(position)),
                Start = 0,
                Length = 1,
            };
    }

    [Fact]
    public void A_position_that_changes_what_it_does_is_a_plain_dot_and_said()
    {
        var position = new Position(4, 5);
        var note = new PathNote
        {
            Position = position,
            Pitch = Pitch.Parse("G3"),
            Start = 0,
            Length = 1,
        };
        var path = new Path(
            Neck.Guitar,
            [note, note with { Start = 4 }, note with { Start = 5 }],
            null,
            Changes.Parse("4/4: Gm7 | C7")
        );
        var drawing = path.OnNeck().Drawing;
        Assert.Equal(ToneRole.Other, Assert.Single(drawing.Marks).Role);
        Assert.Contains("string 4 fret 5 is the 1 and the 5.", drawing.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void Limits_are_kept()
    {
        var path = Samples.KestrelLine;
        Assert.Throws<ArgumentOutOfRangeException>(() => path.Tab() with { Width = 10 });
        Assert.Throws<ArgumentOutOfRangeException>(() => path.Tab() with { Width = double.NaN });
        Assert.Throws<ArgumentOutOfRangeException>(() => path.Tab() with { Columns = 5 });
        Assert.Equal(path.Tab(), Samples.KestrelLine.Tab());
        Assert.NotEqual(path.Tab(), path.Tab() with { Labels = Labels.None });
    }

    [Fact]
    public void Titles_are_data()
    {
        var tab = Samples.KestrelLine.Tab() with { Title = "<script>alert(1)</script>\"" };
        var html = Fragment.Parse(All.Html(tab, new RenderContext()));
        Assert.DoesNotContain(html.Descendants(), static each => each.Name.LocalName == "script");
    }

    [Fact]
    public void A_path_on_its_neck_marks_each_position_once_and_leads_through_all() =>
        AnyPath.Sample(
            static path =>
            {
                var drawing = path.OnNeck().Drawing;
                var sounding = path.Notes.Where(static note => !note.IsDead).ToList();
                Assert.Equal(
                    sounding.Select(static note => note.Position).Distinct().Order(),
                    drawing.Marks.Select(static mark => mark.Position).Order()
                );
                Assert.Equal(sounding.Select(static note => note.Position), drawing.Trail);
                foreach (var mark in drawing.Marks.Where(static mark => mark.Function is not null))
                {
                    Assert.All(
                        sounding.Where(note => note.Position == mark.Position),
                        note => Assert.Equal(mark.Function, path.FunctionOf(note))
                    );
                }

                Assert.Equal(
                    sounding.Count > 0,
                    drawing.Description.Contains(" In order: string ", StringComparison.Ordinal)
                );
                Assert.DoesNotContain(
                    " In order",
                    (path.OnNeck() with { ShowsTrail = false }).Drawing.Description,
                    StringComparison.Ordinal
                );
            },
            iter: 200
        );

    [Fact]
    public void A_trail_stays_on_the_neck() =>
        Assert.Throws<ArgumentException>(() => Neck.Guitar.Draw().WithTrail([new(7, 1)]));

    public static TheoryData<string> Expected => ["kestrel-line", "tin-boats-line", "grips-and-rests"];

    [Theory]
    [MemberData(nameof(Expected))]
    public void Tabs_are_as_expected(string name)
    {
        var path = name switch
        {
            "kestrel-line" => Samples.KestrelLine,
            "tin-boats-line" => Samples.TinBoatsLine,
            _ => Samples.GripsAndRests,
        };
        Expectations.Matches(path.Tab().ToString(), $"tab-{name}.txt");
        Expectations.Matches(path.Tab().Svg(), $"tab-{name}.svg");
    }

    [Fact]
    public void Paths_on_their_neck_are_as_expected()
    {
        Expectations.Matches(All.Text(Samples.KestrelLine.OnNeck() with { Labels = Labels.Order }), "path-neck.txt");
        Expectations.Matches(Samples.KestrelLine.OnNeck().Drawing.Svg(), "path-neck.svg");
    }

    private static Path Make(
        Changes? changes,
        (int Kind, Fraction Length, int String, int Fret, int Technique)[] events
    )
    {
        var (at, notes) = (Fraction.Zero, new List<PathNote>());
        foreach (var (kind, length, number, fret, technique) in events)
        {
            if (kind == 0)
            {
                at += length;
                continue;
            }

            var position = new Position(number, fret);
            notes.Add(
                new()
                {
                    Position = position,
                    Pitch = Pitch.FromMidi(Neck.Guitar.MidiNumberAt(position)),
                    Start = at,
                    Length = length,
                    Techniques = technique < Simple.Count ? [Simple[technique]] : [],
                }
            );
            at += length;
        }

        return new(Neck.Guitar, notes, changes?.Time, changes);
    }

    /// <summary>
    /// A second way round: what stands where in a bar, as the remarks on <see cref="TabDrawing"/> say. A note ends where the
    /// next begins, or at an r of the count.
    /// </summary>
    private static IEnumerable<(int String, string Fret, Fraction Start, Fraction End)> Read(
        string text,
        int strings,
        TimeSignature time
    )
    {
        var lines = text.Split('\n').Skip(1).ToList();
        var starts = new List<(Fraction Start, int String, string Fret)>();
        var ends = new List<Fraction>();
        var bar = 0;
        for (var first = lines.FindIndex(IsString); first >= 0; first = lines.FindIndex(first + strings, IsString))
        {
            var bars = Enumerable.Range(0, lines[first].Length).Where(column => lines[first][column] == '|').ToList();
            foreach (var (from, to) in bars.Zip(bars.Skip(1)))
            {
                Fraction At(int column) =>
                    ((new Fraction(column - from - 2, to - from - 2) + bar) * time.Beats).Reduce();
                for (var number = 1; number <= strings; number++)
                {
                    var row = lines[first + number - 1];
                    for (var column = from + 1; column < to; column++)
                    {
                        if (row[column] is not ((>= '0' and <= '9') or 'x'))
                        {
                            continue;
                        }

                        var length = row[column..to].TakeWhile(static c => char.IsAsciiDigit(c) || c == 'x').Count();
                        // A ghost note's parenthesis stands where it starts.
                        var start = row[column - 1] == '(' ? column - 1 : column;
                        starts.Add((At(start), number, row.Substring(column, length)));
                        column += length;
                    }
                }

                var count = lines[first + strings].PadRight(to + 1);
                ends.AddRange(Enumerable.Range(from, to - from).Where(column => count[column] == 'r').Select(At));
                bar++;
            }
        }

        var all = starts
            .Select(static note => note.Start)
            .Concat(ends)
            .Append(bar * time.Beats)
            .Distinct()
            .Order()
            .ToList();
        return starts
            .OrderBy(static note => note.Start)
            .Select(note => (note.String, note.Fret, note.Start, all.First(moment => moment > note.Start)));

        static bool IsString(string line) => line.Contains('|', StringComparison.Ordinal);
    }
}
