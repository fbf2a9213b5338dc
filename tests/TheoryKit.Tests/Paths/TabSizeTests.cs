using TheoryKit.Paths;

namespace TheoryKit.Tests.Paths;

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
    ];

    [Theory]
    [MemberData(nameof(Shapes))]
    public void Twice_the_text_takes_twice_the_work(string shape)
    {
        Work(shape, 500);
        var (small, large) = (Work(shape, 4_000), Work(shape, 8_000));
        Assert.InRange(large, 1, (small * 2.4) + 100_000);
    }

    [Theory]
    [MemberData(nameof(Shapes))]
    public void A_text_of_a_million_characters_is_read_or_refused(string shape) => Work(shape, 40_000);

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
            "count" => Lines("  ", "-5-7-5-7-|", " 1 & 2 & 3 & 4 &".Replace(" ", "", StringComparison.Ordinal).PadRight(10)),
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
