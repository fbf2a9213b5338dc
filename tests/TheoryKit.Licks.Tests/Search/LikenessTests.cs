using TheoryKit.Licks.Search;
using TheoryKit.Licks.Tests.Folders;

namespace TheoryKit.Licks.Tests.Search;

public class LikenessTests
{
    // Near ones and far ones: a line, and the same with some notes changed.
    private static readonly Gen<(LickLine First, LickLine Second, LickLine Third)> Lines = Gen.Select(
        FolderGens.Lick.Select(LickLine.Of),
        FolderGens.Lick.Select(LickLine.Of),
        Gen.Int[0, 1 << 20],
        Gen.Int[0, 1 << 20],
        static (first, other, a, b) => (first, Changed(first, a), b % 3 == 0 ? other : Changed(first, b))
    );

    [Fact]
    public void It_is_a_number_from_0_to_1_and_1_exactly_for_the_same_line() =>
        Lines.Sample(static lines =>
        {
            var value = Likeness.Of(lines.First, lines.Second).Value;
            return value is >= 0 and <= 1
                && (value.Equals(1) == lines.First.Equals(lines.Second))
                && Likeness.Of(lines.First, lines.First).Value.Equals(1);
        });

    [Fact]
    public void It_is_symmetric() =>
        Lines.Sample(static lines =>
            Likeness.Of(lines.First, lines.Second).Value.Equals(Likeness.Of(lines.Second, lines.First).Value)
        );

    [Fact]
    public void Distances_keep_to_the_triangle_inequality() =>
        Lines.Sample(static lines =>
            Distance(lines.First, lines.Third)
            <= Distance(lines.First, lines.Second) + Distance(lines.Second, lines.Third) + 1e-12
        );

    [Fact]
    public void It_is_what_the_plain_recursion_gives() =>
        Lines.Sample(
            static lines =>
            {
                var cost = PlainLikeness.Cost(lines.First, lines.Second);
                var notes = lines.First.Steps.Count + lines.Second.Steps.Count;
                Assert.Equal(1 - (2 * cost / (notes + cost)), Likeness.Of(lines.First, lines.Second).Value, 9);
            },
            iter: 300
        );

    [Fact]
    public void Moved_licks_are_the_same() =>
        FolderGens
            .Lick.Select(Gen.Int[1, 5])
            .Sample(
                static (lick, semitones) =>
                    LickLineTests.Moved(lick, semitones) is not { } moved || Likeness.Of(lick, moved).Value.Equals(1)
            );

    [Fact]
    public void What_differs_is_told_note_by_note()
    {
        var likeness = Likeness.Of(
            LickLine.Parse("0:1/2 +4:1/2 +3:1/2 -2:1 x:1"),
            LickLine.Parse("0:1/2 +3:1/2 +4:1/2 -2:1/2 -1:1 0:2")
        );
        Assert.Equal(
            ["2: +4:1/2 +3:1/2", "3: +3:1/2 +4:1/2", "4: -2:1 -2:1/2", "5: x:1 -1:1", "6: - 0:2"],
            likeness.Differences.Select(static each => each.ToString())
        );
        Assert.Empty(Likeness.Of(likeness.First, likeness.First).Differences);
    }

    [Fact]
    public void A_line_is_like_none_without_notes() =>
        Assert.Equal(0, Likeness.Of(LickLine.Parse("none"), LickLine.Parse("0:1 +2:1")).Value);

    [Fact]
    public void Searching_with_a_bound_finds_the_same() =>
        Lines
            .Select(Gen.Double[0, 1])
            .Sample(
                static (lines, least) =>
                {
                    var name = new LickCriterion.AlikeTo(lines.First, least);
                    var value = Likeness.Of(lines.First, lines.Second).Value;
                    var bounded = Likeness.AtLeast(name.Least, lines.First, lines.Second);
                    return bounded.HasValue == (value >= name.Least)
                        && (bounded is null || bounded.Value.Equals(value));
                }
            );

    private static double Distance(LickLine first, LickLine second) => 1 - Likeness.Of(first, second).Value;

    /// <summary>The line with a few steps changed, left out or put in.</summary>
    internal static LickLine Changed(LickLine line, int seed)
    {
        var random = new Random(seed);
        var steps = line.ToString() == "none" ? [] : line.ToString().Split(' ').ToList();
        for (var changes = random.Next(4); changes > 0 && steps.Count > 2; changes--)
        {
            var at = random.Next(1, steps.Count);
            switch (random.Next(4))
            {
                case 0:
                    steps.RemoveAt(at);
                    break;
                case 1:
                    steps.Insert(at, $"x:1/{random.Next(1, 5)}");
                    break;
                default:
                    steps[at] =
                        steps[at][0] == 'x'
                            ? steps[at]
                            : $"{(steps[..at].TrueForAll(static s => s[0] == 'x') ? 0 : random.Next(-9, 10))}:1";
                    break;
            }
        }

        // The first pitch has no step.
        var first = steps.FindIndex(static step => step[0] != 'x');
        if (first >= 0)
        {
            steps[first] = $"0:{steps[first].Split(':')[1]}";
        }

        return LickLine.Parse(steps.Count == 0 ? "none" : string.Join(' ', steps));
    }
}

/// <summary>The same measure the slow way: every way of making one line the other, straight from its definition.</summary>
internal static class PlainLikeness
{
    public static double Cost(LickLine first, LickLine second)
    {
        var known = new Dictionary<(int, int), double>();
        return From(0, 0);

        double From(int i, int j)
        {
            if (known.TryGetValue((i, j), out var cost))
            {
                return cost;
            }

            var (a, b) = (first.Steps, second.Steps);
            return known[(i, j)] =
                i == a.Count ? b.Count - j
                : j == b.Count ? a.Count - i
                : Math.Min(Of(a[i], b[j]) + From(i + 1, j + 1), Math.Min(1 + From(i + 1, j), 1 + From(i, j + 1)));
        }
    }

    private static double Of(LickLine.Step a, LickLine.Step b)
    {
        var step =
            a.Cents == b.Cents ? 0
            : a.Cents is null || b.Cents is null ? 1
            : Math.Min(1, Math.Abs(a.Cents.Value - b.Cents.Value) / 300.0);
        var (la, lb) = (a.Beats.ToDouble(), b.Beats.ToDouble());
        var length =
            a.Beats == b.Beats ? 0
            : la == 0 || lb == 0 ? 1
            : Math.Min(1, Math.Abs(Math.Log2(la / lb)) / 2);
        return (Likeness.PitchWeight * step) + (Likeness.LengthWeight * length);
    }
}
