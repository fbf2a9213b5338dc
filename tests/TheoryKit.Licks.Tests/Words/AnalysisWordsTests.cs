using Fractions;
using TheoryKit.Licks.Analysis;
using TheoryKit.Licks.Tests.Analysis;
using TheoryKit.Licks.Tests.Moves;
using TheoryKit.Licks.Words;
using TheoryKit.Paths;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Licks.Tests.Words;

/// <summary>Every part, remark and figure of an analysis has words.</summary>
public class AnalysisWordsTests
{
    [Fact]
    public void Parts() =>
        Assert.Equal(
            [
                "chord tone",
                "colour tone",
                "approach",
                "passing note",
                "neighbour note",
                "enclosure",
                "anticipation",
                "slid from",
                "outside",
                "no chord",
                "dead note",
            ],
            Enum.GetValues<NotePart>().Select(static part => part.InWords())
        );

    [Fact]
    public void Remarks()
    {
        var some = Some(
            Analysed.SelectMany(static lick => lick.Remarks.Concat(lick.Bars.SelectMany(static bar => bar.Remarks)))
        );
        Assert.Equal(
            Enum.GetValues<BarOpening>(),
            some.OfType<LineRemark.Opening>().Select(static each => each.How).Distinct().Order()
        );
        Sentences.Matches(some, static each => each.InWords(), "words-remarks.txt");
    }

    [Fact]
    public void Figures() =>
        Sentences.Matches(
            Some(
                Analysed
                    .SelectMany(static lick => lick.Bars.SelectMany(static bar => bar.Remarks))
                    .OfType<LineRemark.Figures>()
                    .SelectMany(static remark => remark.All)
            ),
            static each => new NoteWords(new(null, null)).Say(each),
            "words-figures.txt"
        );

    private static IEnumerable<LickAnalysis> Analysed =>
        [
            .. HandLabelled.All.Select(static lick => lick.Path.Analyse()),
            Made("Gm9").Analyse(),
            Made("N.C.").Analyse(),
            MovedLickTests.Line("4/4: Gm9 C13", "3:3 3:7 3:3 3:7 3:9 3:5 3:9 3:5").Path.Analyse(),
            new Path(Neck.Guitar, []).Analyse(),
        ];

    /// <summary>By hand: a bend alone, a note held over the bar line, a click, a rest, a note slid into on the first beat and one inside.</summary>
    private static Path Made(string first)
    {
        PathNote[] notes =
        [
            At(3, 12, 0, 8) with
            {
                Techniques = [Technique.Bend],
                Bend = 200,
            },
            At(4, 5, 8, 1) with
            {
                Techniques = [Technique.Dead],
            },
            At(3, 7, 16, new(1, 4)),
            At(3, 9, new(65, 4), new(7, 4)) with
            {
                Techniques = [Technique.Slide],
            },
            At(2, 8, 18, new(1, 4)),
            At(2, 10, new(73, 4), new(7, 4)) with
            {
                Techniques = [Technique.Slide],
            },
        ];
        return new(Neck.Guitar, notes, changes: Changes.Parse($"4/4: {first} | C13 | C13 | C13 | C13"), beats: 20);

        static PathNote At(int number, int fret, Fraction start, Fraction length) =>
            new()
            {
                Position = new(number, fret),
                Pitch = Pitch.FromMidi(Neck.Guitar.MidiNumberAt(new(number, fret))),
                Start = start,
                Length = length,
            };
    }

    /// <summary>The first two of each kind.</summary>
    private static List<T> Some<T>(IEnumerable<T> all)
        where T : notnull =>
        [
            .. all.Distinct()
                .GroupBy(static each =>
                    each is LineRemark.Opening opening ? $"Opening {opening.How}" : each.GetType().Name
                )
                .OrderBy(static kind => kind.Key, StringComparer.Ordinal)
                .SelectMany(static kind => kind.Take(2)),
        ];
}
