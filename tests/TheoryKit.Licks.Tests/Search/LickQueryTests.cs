using TheoryKit.Licks.Search;
using TheoryKit.Licks.Tests.Folders;
using TheoryKit.Paths;
using TheoryKit.Tests;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Licks.Tests.Search;

public class LickQueryTests
{
    private static readonly Gen<string> Said = Gen.OneOf(
        FolderGens.OneOf(FolderGens.Attacks),
        FolderGens.OneOf("boats", "slow", "second chorus", "a \"quoted\" one", "back\\slash", "-", "--x", "a:b", "x/70")
    );

    private static readonly Gen<Degree> Degrees = FolderGens
        .OneOf("1 b3 3 5 b7 7 9 #11 13".Split(' '))
        .Select(static text => Degree.Parse(text));

    public static readonly Gen<LickCriterion> Criterion = Gen.OneOf<LickCriterion>(
            Degrees
                .Array[1, 3]
                .Select(static degrees =>
                    (LickCriterion)new LickCriterion.Function([.. degrees.Select(static each => (Degree?)each)])
                ),
            Gen.Select(Degrees, Degrees, static (a, b) => (LickCriterion)new LickCriterion.Function(a, null, b)),
            Degrees.Select(static degree => (LickCriterion)new LickCriterion.OnStrongBeat(degree)),
            Gen.Int[0, Technique.Known.Count - 1]
                .Select(static index => (LickCriterion)new LickCriterion.PlayedWith(Technique.Known[index])),
            Gens.Chord.Select(static chord => (LickCriterion)new LickCriterion.OverChord(chord)),
            Gens.UsualFormula.Select(static formula => (LickCriterion)new LickCriterion.OverQuality(formula)),
            FolderGens
                .OneOf("Gm9 C13 Fmaj9 Dm7 Ebmaj7 Bb7 Am7 G/B".Split(' '))
                .Select(static chord => (LickCriterion)new LickCriterion.OverChord(Chord.Parse(chord))),
            FolderGens
                .OneOf("m9 13 maj7 7 m7".Split(' '))
                .Select(static symbol =>
                    (LickCriterion)new LickCriterion.OverQuality(Chord.Parse($"C{symbol}").Formula)
                ),
            Gen.Select(
                Gen.Int[0, 4],
                Gen.Bool,
                static (count, up) =>
                    (LickCriterion)
                        new LickCriterion.Shaped([
                            .. Enumerable
                                .Range(0, count)
                                .Select(index => (index % 2 == 0) == up ? Direction.Up : Direction.Down),
                        ])
            ),
            Said.Select(static text => (LickCriterion)new LickCriterion.Tagged(text)),
            Said.Select(static text => (LickCriterion)new LickCriterion.OfTune(text)),
            Said.Select(static text => (LickCriterion)new LickCriterion.Saying(text)),
            Gen.Select(
                Said,
                Gen.Int[0, 100],
                static (text, least) => (LickCriterion)new LickCriterion.Like(text, least / 100.0)
            ),
            Gen.Select(
                FolderGens.Lick,
                Gen.Int[0, 100],
                static (lick, least) => (LickCriterion)new LickCriterion.AlikeTo(LickLine.Of(lick), least / 100.0)
            ),
            Gen.Select(
                Gen.Int[0, 2],
                Gen.Int[0, 20_000],
                Gen.Int[0, 20_000],
                Gen.Int[0, 2],
                static (measure, low, more, ends) =>
                    (LickCriterion)
                        new LickCriterion.Between(
                            (LickCriterion.Countable)measure,
                            ends == 1 ? null : low / 100.0,
                            ends == 2 ? null : (low + more) / 100.0
                        )
            ),
            Gens.Tuning.Select(static tuning => (LickCriterion)new LickCriterion.InTuning(tuning)),
            Gen.Const<LickCriterion>(new LickCriterion.InTuning(Tuning.Standard)),
            Gens.Neck.Select(static neck => (LickCriterion)new LickCriterion.OnNeck(neck))
        )
        .SelectMany(static criterion =>
            Gen.Frequency((4, Gen.Const(criterion)), (1, Gen.Const<LickCriterion>(new LickCriterion.Not(criterion))))
        );

    public static readonly Gen<LickQuery> Query = Criterion
        .Array[0, 4]
        .Select(static criteria => new LickQuery(criteria));

    [Fact]
    public void A_query_is_read_back() => Laws.RoundTrip(Query);

    [Fact]
    public void Null_is_no_query() => Laws.Null<LickQuery>();

    [Fact]
    public void Any_text_is_read_or_refused_clearly() =>
        Fuzz.Parser<LickQuery>(
            [
                "function:3 technique:bend chord:m9 tag:\"slow\" tempo:90-120 contour:up,down text:boats",
                "function:b9,1 function:5,..,1 strong:3 -technique:slide-in-from-below",
                "chord:Gm9/D chord:maj bars:2 notes:8- tempo:-99.5 contour:level",
                "like:\"Boat call\"/70 like:boats/40 line:\"0:1/2 +3:1\"/70 line:none",
                "tuning:DADGAD tuning:\"E2 A2 D3 G3 B3 E4\" neck:\"E1 A1 D2 G2, 864 mm, 20 frets\" tune:\"a \\\"b\\\" \\\\\"",
                "boats \"nine tin\" -boats -\"nine tin\"",
            ],
            40_000
        );

    [Theory]
    [InlineData("fnction:3", 1, "one of the keys function, strong,")]
    [InlineData("function:", 10, "what to look for (as in function:3")]
    [InlineData("slow function:3,y", 17, "function:3 or function:9,..,1")]
    [InlineData("tag:\"slow", 10, "a closing quotation mark")]
    [InlineData("technique:blend", 11, "a technique: hammer-on, pull-off,")]
    [InlineData("tempo:120-90", 7, "a range from less to more")]
    [InlineData("contour:up,up", 12, "up and down in turns")]
    [InlineData("like:\"x\"/101", 10, "in percent, up to 100")]
    [InlineData("chord:Hm7", 7, "a chord or what stands after its root")]
    [InlineData("--slow", 2, "a term after the hyphen")]
    public void A_complaint_says_where(string text, int position, string expected) =>
        Laws.Refuses<LickQuery>(text, position, expected);

    [Theory]
    [InlineData("boats", "text:boats")]
    [InlineData("\"nine tin\"", "text:\"nine tin\"")]
    [InlineData("TAG:slow  chord:min7", "tag:slow chord:m7")]
    [InlineData("tempo:90-90", "tempo:90")]
    [InlineData("technique:pre-bend technique:h", "technique:pre-bend technique:hammer-on")]
    [InlineData("technique:natural-harmonic", "technique:\"natural harmonic\"")]
    [InlineData("like:boats/40 like:boats", "like:\"boats\"/40 like:\"boats\"")]
    [InlineData("tuning:DADGAD", "tuning:\"D2 A2 D3 G3 A3 D4\"")]
    [InlineData("", "")]
    public void A_query_is_written_in_one_way(string text, string written) =>
        Assert.Equal(written, LickQuery.Parse(text).ToString());

    [Fact]
    public void What_makes_no_sense_is_refused()
    {
        Assert.Throws<ArgumentException>(() => new LickCriterion.Function());
        Assert.Throws<ArgumentException>(() => new LickCriterion.Function(null, Degree.Root));
        Assert.Throws<ArgumentException>(() => new LickCriterion.Shaped(Direction.Up, Direction.Up));
        Assert.Throws<ArgumentException>(() => new LickCriterion.Tagged(" "));
        Assert.Throws<ArgumentException>(() => new LickCriterion.Saying("two\nlines"));
        Assert.Throws<ArgumentException>(() => new LickCriterion.Between(LickCriterion.Countable.Tempo, 2, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new LickCriterion.Like("x", 1.1));
        Assert.Throws<ArgumentException>(() =>
            new LickCriterion.Not(new LickCriterion.Not(new LickCriterion.Saying("x")))
        );
    }
}
