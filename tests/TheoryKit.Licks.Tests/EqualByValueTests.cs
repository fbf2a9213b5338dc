using TheoryKit.Licks.Analysis;
using TheoryKit.Licks.Practice;
using TheoryKit.Licks.Search;
using TheoryKit.Tests;

namespace TheoryKit.Licks.Tests;

/// <summary>Values with no text of their own: each row of them differs in one thing at a time that counts.</summary>
public class EqualByValueTests
{
    private const string Turn = "5--7--8--5------";
    private const string Call = "5--8--7--5------";

    [Fact]
    public void Licks_and_what_their_notes_do()
    {
        Laws.ByValue(
            () => Boat(Turn),
            () => Boat(Call),
            () => Boat(Turn, "name: Boat call"),
            () => Boat(Turn, "name: Low tide\ntempo: 96"),
            () => Boat(Turn, "name: Low tide\ntags: slow")
        );
        Laws.ByValue(() => Boat(Turn).Analyse(), () => Boat(Call).Analyse());
        Laws.ByValue(() => Boat(Turn).Analyse().Bars[0], () => Boat(Call).Analyse().Bars[0]);
        Laws.ByValue(() => Boat(Turn).Analyse().Summary, () => Boat(Call).Analyse().Summary);
        Laws.ByValue(
            () => Likeness.Of(Boat(Turn), Boat(Call)),
            () => Likeness.Of(Boat(Call), Boat(Turn)),
            () => Likeness.Of(Boat(Turn), Boat(Turn))
        );
    }

    [Fact]
    public void Practice()
    {
        const string clean = "2026-11-24 \"Low tide\" at 96: clean\n";
        Laws.ByValue(
            () => PracticeHistory.Read(clean),
            () => PracticeHistory.Read(clean + clean),
            () => PracticeHistory.Read("")
        );
        Laws.ByValue(
            () => PracticeHistory.Read(clean).Licks[0],
            () => PracticeHistory.Read(clean + clean).Licks[0],
            () => PracticeHistory.Read(clean.Replace("tide", "boat", StringComparison.Ordinal)).Licks[0]
        );
        Laws.ByValue(
            () => PracticeHistory.Read("nonsense\n").Broken[0],
            () => PracticeHistory.Read("other nonsense\n").Broken[0],
            () => PracticeHistory.Read(clean + "nonsense\n").Broken[0]
        );
        Laws.ByValue(() => PracticeLog.Open("low-tide.txt"), () => PracticeLog.Open("boats.txt"));
    }

    private static Lick Boat(string highest, string header = "name: Low tide") =>
        Lick.Parse(
            $"""
            {header}
            changes: Gm9

            E|{highest}|
            B|----------------|
            G|----------------|
            D|----------------|
            A|----------------|
            E|----------------|
            """
        );
}
