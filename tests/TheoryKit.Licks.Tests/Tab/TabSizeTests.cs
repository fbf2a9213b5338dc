using TheoryKit.Licks.Tab;
using TheoryKit.Licks.Tab.Remarks;
using TheoryKit.Paths;
using TheoryKit.Values;

namespace TheoryKit.Licks.Tests.Tab;

/// <summary>However a text is made, reading it takes work in proportion to its length.</summary>
public class TabSizeTests
{
    public static TheoryData<string> Shapes =>
        [
            "dashes",
            "bars",
            "numbers",
            "signs",
            "systems",
            "words",
            "count",
            "rhythm",
            "spans",
            "waves",
            "chords",
            "crooked",
            "repeats",
            "held",
            "fingers",
            "digits",
            "brackets",
            "missing lines",
            "line ends",
            "line ends and a tab",
            "rows above",
            "rows below",
            "ties",
        ];

    [Theory]
    [MemberData(nameof(Shapes))]
    public void Twice_the_text_takes_twice_the_work(string shape)
    {
        Work(shape, 500);
        var (small, large) = (Work(shape, 1_500), Work(shape, 3_000));
        Assert.InRange(large, 1, (small * 2.4) + 100_000);
    }

    [Fact]
    public void A_million_dashes_a_hundred_thousand_bars_and_ten_thousand_lines_are_read()
    {
        Assert.Empty(PlainTab.Read(Strings(new('-', 1_000_000), new('-', 1_000_000))).Path.Notes);
        var bars = string.Concat(Enumerable.Repeat("-5-|", 100_000));
        Assert.Equal(100_000, PlainTab.Read(Strings(bars, bars.Replace('5', '-'))).Path.Notes.Count);
        var lines = string.Concat(Enumerable.Repeat(Strings("-5---7---|", "---------|") + "\n", 10_000 / 7));
        Assert.Equal(2 * (10_000 / 7), PlainTab.Read(lines).Path.Notes.Count);

        static string Strings(string first, string other) =>
            $"e|{first}|\n{string.Concat("BGDAE".Select(name => $"{name}|{other}|\n"))}";
    }

    [Fact]
    public void Brackets_around_nothing_stretches_of_one_bar_and_rows_of_many_lines_are_read()
    {
        // Each takes minutes where the work grows with the square of the text.
        var remarks = PlainTab.Read(Three(new string('(', 50_000) + "-|")).Remarks;
        Assert.Equal(150_000, remarks.Count(static remark => remark is TabRemark.SignPassedOver));
        const int Muted = 50_000;
        var stretches = string.Concat(Enumerable.Repeat("PM ", Muted));
        var notes = PlainTab
            .Read($"  {stretches}\n{Three(string.Concat(Enumerable.Repeat("5--", Muted)) + "|")}")
            .Path.Notes;
        Assert.Equal(3 * Muted, notes.Count(static note => note.Has(Technique.PalmMute)));
        var rows = string.Concat(Enumerable.Repeat("1 2 3\n", 100_000));
        Assert.Equal(3, PlainTab.Read(Three("5---|") + rows).Path.Notes.Count);

        static string Three(string line) => string.Concat("eBG".Select(name => $"{name}|{line}\n"));
    }

    [Fact]
    public void A_few_digits_are_no_million_bars()
    {
        const string Text = "e|-5---7---|\nB|---------|\nG|---------|\n   q   (28131680)";
        var wrong = Assert.Throws<PlacedFormatException>(() => PlainTab.Read(Text));
        Assert.Equal((4, 8, 10), (wrong.Line, wrong.Column, wrong.Length));
        Assert.Contains("at most 64 beats", wrong.Message, StringComparison.Ordinal);
    }

    /// <summary>What is allocated: the work of everything that is not a plain walk over the text.</summary>
    private static long Work(string shape, int times)
    {
        var text = Make(shape, times);
        var before = GC.GetAllocatedBytesForCurrentThread();
        PlainTab.TryRead(text, null, out _);
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }

    private static string Make(string shape, int times)
    {
        return shape switch
        {
            "dashes" => Lines("", "--------", ""),
            "bars" => Lines("", "-5-7-5-7-|", ""),
            "numbers" => Lines("", "5-7--8---", ""),
            "signs" => Lines("", "5h7/9\\7p5~-7b9r7-", ""),
            "systems" => Times(Lines("", "-5---7---5---7---|", "", 1) + "\n", times / 6),
            "words" => Times("a line of words\n", times) + Lines("", "-5-", "", 1),
            "count" => Lines(
                "  ",
                "-5-7-5-7-|",
                " 1 & 2 & 3 & 4 &".Replace(" ", "", StringComparison.Ordinal).PadRight(10)
            ),
            "rhythm" => Lines("", "-5-7-5-7-|", " q e q e  "),
            "spans" => Lines("PM--|     ", "-5-7-5-7-|", ""),
            "waves" => Lines(" ~~ ~     ", "-5-7-5-7-|", ""),
            "chords" => Lines(" Gm9  C13 ", "-5-7-5-7-|", ""),
            "crooked" => Lines("", "-5-7-5-7-|", "").Replace("B|-5", "B|--5", StringComparison.Ordinal),
            "repeats" => Lines("", ":5-7-5-7:|", ""),
            "held" => Lines("", "-5========", " 1 2 3 4  "),
            "fingers" => Lines("", "-5-7-5-7-|", " 1 2 3 4  ").TrimEnd('\n') + " fingers\n",
            "digits" => Lines("", "987654321", ""),
            "brackets" => Lines("", "((<[(5)", ""),
            "line ends" => Times("\n", 40 * times),
            "line ends and a tab" => Times("\r\n", 20 * times) + Lines("", "-5-", "", 1),
            "rows above" => Times("1 2\n", times) + Lines("", "--|", ""),
            "rows below" => Lines("", "-5-", "", 1) + Times("1 2 3\n", times),
            "ties" => Lines("", "-5-", "", 1)
                + $"   {string.Concat(Enumerable.Range(0, times).Select(static part => $"(1/{1_000_003 + (2 * part)})+"))}q\n",
            _ => Lines("", "-5-7-5-7-|", "")[(2 * times)..],
        };

        string Lines(string above, string bar, string below, int? count = null)
        {
            var number = count ?? times;
            return (above.Length > 0 ? $"  {Times(above, number)}\n" : "")
                + string.Concat("eBGDAE".Select(name => $"{name}|{Times(bar, number)}|\n"))
                + (below.Length > 0 ? $"  {Times(below, number)}\n" : "");
        }

        static string Times(string text, int count) => string.Concat(Enumerable.Repeat(text, count));
    }
}
