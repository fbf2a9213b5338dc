using BenchmarkDotNet.Attributes;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Benchmarks;

/// <summary>The prime forms of all 4096 sets of pitch classes.</summary>
[BenchmarkCategory("prime form")]
public class PrimeFormBenchmarks
{
    private const int Sets = 4096;

    [GlobalSetup]
    public void Check()
    {
        for (var mask = 0; mask < Sets; mask++)
        {
            var set = new PitchClassSet((ushort)mask);
            Answers.MustAgree(set.PrimeForm, Naive(set));
        }
    }

    [Benchmark(Baseline = true, Description = "4096 prime forms: every rotation as a list")]
    public int Plain()
    {
        var sum = 0;
        for (var mask = 0; mask < Sets; mask++)
        {
            sum += Naive(new((ushort)mask)).Count;
        }

        return sum;
    }

    [Benchmark(Description = "4096 prime forms: PrimeForm")]
    public int PrimeForms()
    {
        var sum = 0;
        for (var mask = 0; mask < Sets; mask++)
        {
            sum += new PitchClassSet((ushort)mask).PrimeForm.Count;
        }

        return sum;
    }

    /// <summary>The set and its inversion from each member in turn; the one whose numbers are smallest from the far end (Rahn).</summary>
    private static List<int> Naive(PitchClassSet set)
    {
        List<int>? best = null;
        foreach (var sign in (ReadOnlySpan<int>)[1, -1])
        {
            foreach (var start in set)
            {
                var candidate = set.Select(each => ((sign * (each - start)) + 12) % 12).Order().ToList();
                if (best is null || IsSmaller(candidate, best))
                {
                    best = candidate;
                }
            }
        }

        return best ?? [];
    }

    private static bool IsSmaller(List<int> one, List<int> other)
    {
        for (var place = one.Count - 1; place >= 0; place--)
        {
            if (one[place] != other[place])
            {
                return one[place] < other[place];
            }
        }

        return false;
    }
}
