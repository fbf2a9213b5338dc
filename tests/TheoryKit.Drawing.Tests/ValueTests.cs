using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tests.Markup;
using TheoryKit.Fingering.Learning;
using TheoryKit.Fingering.Lines;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Theory.Scales;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Tests;

/// <summary>How values read in a terminal. What is expected was written by hand from the definitions.</summary>
public class ValueTests
{
    private static readonly RendererSet All = DrawingRenderers.All;

    [Theory]
    [InlineData("m3", "minor third")]
    [InlineData("P5", "perfect fifth")]
    [InlineData("A4", "augmented fourth")]
    [InlineData("dd5", "doubly diminished fifth")]
    [InlineData("M9", "major ninth")]
    [InlineData("-P4", "descending perfect fourth")]
    [InlineData("m16", "minor 16th")]
    [InlineData("AAA1", "triply augmented unison")]
    public void Intervals_are_said_in_words(string interval, string words) =>
        Assert.StartsWith($"{interval}  {words}\n", All.Text(Interval.Parse(interval)), StringComparison.Ordinal);

    [Theory]
    [InlineData("C", "C")]
    [InlineData("Bb", "B flat")]
    [InlineData("Fx", "F double sharp")]
    [InlineData("Ebbb", "E triple flat")]
    public void Notes_are_said_in_words(string note, string words) =>
        Assert.StartsWith(
            $"{NoteName.Parse(note)}  {words}\n",
            All.Text(NoteName.Parse(note)),
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("Gb", "F#")]
    [InlineData("C#", "Db")]
    [InlineData("Cb", "B")]
    [InlineData("E", null)]
    public void A_note_with_a_second_name_has_it(string note, string? other)
    {
        var text = All.Text(NoteName.Parse(note));
        Assert.Equal(other is not null, text.Contains("name  ", StringComparison.Ordinal));
        Assert.Contains(other ?? "pitch class", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hand_that_is_kept_says_why()
    {
        // The average hand plays the line held back as written; the example, along a string by one finger, teaches otherwise.
        var learned = HandLearning.Learn(
            [PlayedLine.Parse("3:5-1 3:7-3 3:9-3 3:7-3 3:5-1 3:4-1 3:5-1", Neck.Guitar)],
            options: new()
            {
                HeldBack =
                [
                    new(
                        Neck.Guitar,
                        LineSearch
                            .Place(
                                Neck.Guitar,
                                "C3 D3 E3 F3 G3 A3 B3 C4 B3 A3 G3 F3 E3 D3 C3"
                                    .Split(' ')
                                    .Select(static each => Pitch.Parse(each))
                            )[0]
                            .Select(static note => new PlayedNote(note.Position, note.Finger))
                    ),
                ],
            }
        );
        var (text, tried) = (All.Text(learned), learned.Agreement[1]);
        Assert.StartsWith("A hand kept", text, StringComparison.Ordinal);
        var told = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains(
            $"The hand to start with is kept: what was learned plays {tried.After.Positions} and not 15 of 15 positions as written in the lines held back.",
            told,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_learned_hand_tells_its_slips_and_its_trust()
    {
        var learned = HandLearning.Learn(Samples.PlayedLines, options: new() { Folds = 0, Slip = 0.01 });
        var told = string.Join(' ', All.Text(learned).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Equal(learned.Slips > 0, told.Contains("taken for", StringComparison.Ordinal));
        Assert.Contains("Learned with a trust of", All.Text(Samples.Learned), StringComparison.Ordinal);
    }

    [Fact]
    public void A_pitch() =>
        // ISO 16: A4 is 440 Hz, so A2 is 110 Hz; MIDI counts it 45.
        Assert.Equal(
            """
            A2  A, octave 2
              MIDI number               45
              frequency at A4 = 440 Hz  110.00 Hz
            """,
            All.Text(Pitch.Parse("A2"))
        );

    [Fact]
    public void A_chord() =>
        Assert.Equal(
            """
            G#7  G# dominant seventh
              tones      G# B# D# F#
              functions  1 3 5 b7
            """,
            All.Text(Chord.Parse("G#7"))
        );

    [Fact]
    public void Chords_in_a_row() =>
        Assert.Equal(
            """
            4 chords
              chord   in words             tones      functions
              Ebmaj7  Eb major seventh     Eb G Bb D  1 3 5 7
              Cm7     C minor seventh      C Eb G Bb  1 b3 5 b7
              Fm7     F minor seventh      F Ab C Eb  1 b3 5 b7
              Bb7     Bb dominant seventh  Bb D F Ab  1 3 5 b7
            """,
            All.Text(Samples.KestrelStairs)
        );

    [Fact]
    public void Places_of_a_triad() =>
        Assert.Equal(
            """
            4 places
              place  string  fret  pitch  function
              1:0         1     0  E4     3
              1:3         1     3  G4     5
              1:8         1     8  C5     1
              1:12        1    12  E5     3
            """,
            All.Text(Neck.Guitar.PlacesOf(Chord.Parse("C")).Take(4))
        );

    [Fact]
    public void A_key() =>
        Assert.Equal(
            """
            Eb major
              signature     3 flats: Bb Eb Ab
              tones         Eb F G Ab Bb C D
              relative key  C minor
              parallel key  Eb minor
            """,
            All.Text(Key.Parse("Eb major"))
        );

    [Fact]
    public void Changes_stand_in_bars_of_four_each_chord_at_its_beat() =>
        Assert.Equal(
            """
            4/4, F major  5 bars

            | Gm9         | C13   C7b9  | Fmaj9       | %           |
            | Dm7         ||
            """,
            All.Text(Changes.Parse("4/4, F major: Gm9 | C13 C7b9 | Fmaj9 | % | Dm7"))
        );

    [Fact]
    public void A_bar_of_a_chart_is_as_wide_as_its_chords()
    {
        // Half an em a sign is the least of any bold serif type that is a quarter larger than the text.
        foreach (var bars in (string[])["Bbmaj7#11/D Ebmaj7#11 | F6/9", "F6/9 | F#m7b5/E B7b9b13 Gm7b5 C7b9b13", "C"])
        {
            var changes = Changes.Parse($"4/4: {bars}");
            var style = Fragment
                .Parse(All.Html(changes, new RenderContext()))
                .Descendants("ol")
                .Single()
                .Attribute("style")!
                .Value;
            var width = double.Parse(
                style["--bar:".Length..^"em".Length],
                System.Globalization.CultureInfo.InvariantCulture
            );
            Assert.All(
                changes.Bars,
                bar =>
                    Assert.True(
                        width >= bar.Chords.Sum(static span => $"{span.Chord:P}".Length + 1) * 0.5 * 1.25,
                        style
                    )
            );
        }
    }

    [Fact]
    public void A_chart_has_a_list_item_for_every_bar_and_numerals_where_there_is_a_key()
    {
        var html = Fragment.Parse(
            All.Html(Changes.Parse("3/4, Eb major: Ebmaj7 | Cm7 | Fm7 | Bb7"), new RenderContext())
        );
        Assert.Equal(4, html.Descendants("li").Count());
        var words = Fragment.TextOf(html).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Subset(
            words.ToHashSet(),
            new HashSet<string> { "E♭maj7", "Imaj7", "Cm7", "vi7", "Fm7", "ii7", "B♭7", "V7" }
        );
    }

    [Fact]
    public void A_set_class() =>
        // The diminished seventh: three of them, each its own transposition by three semitones, four minor thirds and two tritones.
        Assert.Equal(
            """
            (0 3 6 9)
              members          4
              interval vector  <0 0 4 0 0 2>
              sets in it       3
              complement       (0 1 3 4 6 7 9 10)
              symmetry         repeats every 3 semitones, mirrors itself
            """,
            All.Text(SetClass.Parse("(0 3 6 9)"))
        );

    [Fact]
    public void A_scale_with_its_chords() =>
        Expectations.Matches(All.Text(Scale.Parse("Eb dorian")), "scale-Eb-dorian.txt");

    [Fact]
    public void Every_quality() => Expectations.Matches(All.Text(ChordQuality.Known), "chord-qualities.txt");

    [Fact]
    public void Html_prints_the_signs()
    {
        var html = Fragment.TextOf(Fragment.Parse(All.Html(Chord.Parse("Bbm7b5"), new RenderContext())));
        Assert.Contains("B♭ø7", html, StringComparison.Ordinal);
        Assert.Contains("1 ♭3 ♭5 ♭7", html, StringComparison.Ordinal);
    }

    [Fact]
    public void A_table_shows_the_gaps_of_a_sequence()
    {
        var text = DrawingRenderers.All.Text(new[] { Chord.Parse("Cm7"), null!, Chord.Parse("F7") });
        Assert.Contains("3 chords", text, StringComparison.Ordinal);
        Assert.Contains("nothing", text, StringComparison.Ordinal);
    }
}
