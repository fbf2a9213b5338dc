using System.Globalization;
using System.Text;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Learning;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Fingering.Lines;

/// <summary>
/// Lines as a player writes them down, against the hand. The file of differences documents them; the weights are argued from
/// their sources and not fitted to these lines.
/// </summary>
public class LinesLikeAPlayerTests
{
    private static readonly (string Name, string Notes)[] Written =
    [
        ("A melody in open position", "5:3-3 4:0 4:2-2 4:3-3 3:0 3:2-2 2:0 2:1-1"),
        ("G major in second position", "6:3-2 6:5-4 5:2-1 5:3-2 5:5-4 4:2-1 4:4-3 4:5-4"),
        ("An A minor arpeggio that shifts to its top", "5:12-4 4:10-2 3:9-1 2:10-1 1:8-1 1:12-4 1:17-4"),
        ("A slide up into the next place", "3:5-1 3:7-3 3:9-3 2:8-1 2:10-3 3:9-2 3:7-1"),
        ("A phrase high on the neck", "2:15-1 2:17-3 1:15-1 1:17-3 1:20-4 1:17-2 2:18-3"),
        ("A chromatic line in one place", "5:5-1 5:6-2 5:7-3 5:8-4 4:4-1 4:5-2 4:6-3 4:7-4"),
        ("Wide intervals, sixths on two strings apart", "5:7-2 3:7-3 5:5-1 3:5-1 5:3-2 3:4-3 5:2-1 3:2-1"),
        ("A blues figure in the fifth place", "1:8-4 1:5-1 2:8-4 2:5-1 3:7-3 3:5-1 4:7-3 4:5-1"),
    ];

    [Fact]
    public void WhereTheHandChoosesOtherwiseThanThePlayerIsKeptWithItsReasons()
    {
        var text = new StringBuilder();
        foreach (var (name, notes) in Written)
        {
            var line = PlayedLine.Parse(notes, Neck.Guitar);
            var agreement = LineAgreement.Of([line], Hand.Average);
            text.AppendLine(name);
            text.AppendLine(
                CultureInfo.InvariantCulture,
                $"  as written, {agreement.Positions} of {agreement.Notes} positions, {agreement.Fingers} of {agreement.Fingered} fingers the hand's own choice"
            );
            text.AppendLine(
                CultureInfo.InvariantCulture,
                $"  player {line, -60} effort {line.By(Hand.Average)!.Effort:0.00}"
            );
            if (line.DifferenceFor(Hand.Average) is { } difference)
            {
                var chosen = new PlayedLine(
                    line.Neck,
                    difference.Chosen.Select(note => new PlayedNote(note.Position, note.Finger))
                );
                text.AppendLine(
                    CultureInfo.InvariantCulture,
                    $"  hand   {chosen, -60} effort {difference.Chosen.Effort:0.00}"
                );
                text.AppendLine(
                    "  because "
                        + string.Join(
                            ", ",
                            difference.Terms.Select(term =>
                                string.Create(
                                    CultureInfo.InvariantCulture,
                                    $"{term.Name} {term.Written:0.##} to {term.Chosen:0.##} ({-term.Saved:+0.00;-0.00;0})"
                                )
                            )
                        )
                );
                Assert.Equal(
                    difference.Written.Effort - difference.Chosen.Effort,
                    difference.Terms.Sum(term => term.Saved),
                    1e-6
                );
            }

            text.AppendLine();
        }

        Expectations.Matches(text.ToString(), "lines-like-a-player.txt");
    }
}
