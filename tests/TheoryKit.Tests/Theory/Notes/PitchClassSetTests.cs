using TheoryKit.Theory.Notes;

namespace TheoryKit.Tests.Theory.Notes;

public class PitchClassSetTests
{
    private static readonly PitchClassSet[] Every =
    [
        .. Enumerable.Range(0, 1 << 12).Select(mask => new PitchClassSet((ushort)mask)),
    ];

    [Fact]
    public void Default_is_empty() => Assert.Equal(PitchClassSet.Empty, default);

    [Fact]
    public void Only_twelve_bits_make_a_set() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new PitchClassSet(0x1000));

    [Fact]
    public void Text_round_trips()
    {
        foreach (var set in Every)
        {
            Assert.Equal(set, PitchClassSet.Parse(set.ToString()));
        }
    }

    [Fact]
    public void Fuzz_of_the_parsers()
    {
        Fuzz.Parser<PitchClassSet>(["{}", "{0 3 7}", "{0,3 , 7}", "{t e}", "{ 2 11 }"], 20_000);
        Fuzz.Parser<IntervalVector>(["<0 0 1 1 1 0>", "< 12 12 12 12 12 6 >"], 20_000);
        Fuzz.Parser<SetClass>(["()", "(0 3 7)", "(2, 6, 9)", "(t e)"], 20_000);
    }

    [Theory]
    [InlineData("{0 3 7}", "{0 3 7}")]
    [InlineData("{}", "{}")]
    [InlineData("{ 7, 3,0 }", "{0 3 7}")]
    [InlineData("{t e 0}", "{0 10 11}")]
    public void Text_is_read_in_any_order_and_written_ascending(string text, string written) =>
        Assert.Equal(written, PitchClassSet.Parse(text).ToString());

    [Theory]
    [InlineData("", "position 1")]
    [InlineData("0 3 7", "position 1")]
    [InlineData("{0 3 12}", "position 6")]
    [InlineData("{0 3 3}", "position 6")]
    [InlineData("{0 3", "position 5")]
    [InlineData("{0 3} x", "position 6")]
    [InlineData("{te}", "position 3")]
    public void Bad_text_is_refused_with_its_place(string text, string place)
    {
        Assert.False(PitchClassSet.TryParse(text, null, out _));
        Assert.Contains(place, Assert.ThrowsAny<FormatException>(() => PitchClassSet.Parse(text)).Message);
    }

    [Fact]
    public void A_collection_expression_makes_a_set()
    {
        PitchClassSet set = [0, 15, 7, -5];
        Assert.Equal("{0 3 7}", set.ToString());
        Assert.Equal(set, PitchClassSet.Of(NoteName.ParseList("C Eb G")));
    }

    [Fact]
    public void Transposition_inversion_and_set_operations_do_what_they_do_to_members()
    {
        Gens.PitchClassSet.Select(Gens.PitchClassSet, Gen.Int[-30, 30])
            .Sample(
                (a, b, n) =>
                    a.Transpose(n).ToHashSet().SetEquals(a.Select(x => Slow.Mod12(x + n)))
                    && a.Invert(n).ToHashSet().SetEquals(a.Select(x => Slow.Mod12(n - x)))
                    && a.Complement.ToHashSet().SetEquals(Enumerable.Range(0, 12).Except(a))
                    && a.Union(b).ToHashSet().SetEquals(Enumerable.Union(a, b))
                    && a.Intersect(b).ToHashSet().SetEquals(Enumerable.Intersect(a, b))
                    && a.Except(b).ToHashSet().SetEquals(Enumerable.Except(a, b))
                    && a.Contains(b) == b.All(x => a.Contains(x))
                    && a.Count == a.ToList().Count
            );
    }

    [Fact]
    public void Group_laws_of_transposition_and_inversion()
    {
        Gens.PitchClassSet.Select(Gen.Int[0, 11], Gen.Int[0, 11])
            .Sample(
                (set, a, b) =>
                    set.Transpose(a).Transpose(b) == set.Transpose(a + b)
                    && set.Invert(a).Invert(a) == set
                    && set.Invert(a).Invert(b) == set.Transpose(b - a)
            );
    }

    [Fact]
    public void Normal_order_and_prime_form_follow_Rahns_rule_step_by_step()
    {
        foreach (var set in Every)
        {
            var slow = Slow.NormalOrder([.. set], fromFarEnd: true);
            Assert.Equal(slow, set.NormalOrder);
            Assert.Equal(Slow.ToZero(slow), set.NormalForm);
            Assert.Equal(Slow.PrimeForm([.. set], fromFarEnd: true), set.PrimeForm);
        }
    }

    [Fact]
    public void Rahns_and_Fortes_rules_differ_for_six_classes()
    {
        var differing = SetClass
            .All.Select(each => each.PrimeForm)
            .Where(prime => Slow.PrimeForm([.. prime], fromFarEnd: false) != prime);
        Assert.Equal(
            [
                "{0 1 5 6 8}",
                "{0 1 4 5 7 9}",
                "{0 2 3 6 7 9}",
                "{0 1 2 5 6 7 9}",
                "{0 1 4 5 6 7 9}",
                "{0 1 3 4 5 7 8 10}",
            ],
            differing.Select(prime => prime.ToString())
        );
    }

    [Fact]
    public void Interval_vector_counts_pairs()
    {
        foreach (var set in Every)
        {
            var members = set.ToArray();
            var counts = new int[6];
            for (var i = 0; i < members.Length; i++)
            {
                for (var j = i + 1; j < members.Length; j++)
                {
                    var distance = members[j] - members[i];
                    counts[Math.Min(distance, 12 - distance) - 1]++;
                }
            }

            Assert.Equal(counts, set.IntervalVector);
            Assert.Equal(set.IntervalVector, IntervalVector.Parse(set.IntervalVector.ToString()));
            Assert.Equal(members.Length * (members.Length - 1) / 2, set.IntervalVector.Total);
        }
    }

    [Fact]
    public void Common_tones_under_transposition_are_the_interval_vector()
    {
        // The common-tone theorem: T_n keeps as many tones as the vector has of interval class n; the tritone counts twice.
        foreach (var set in Every)
        {
            for (var n = 1; n < 12; n++)
            {
                var expected = set.IntervalVector.Of(Math.Min(n, 12 - n)) * (n == 6 ? 2 : 1);
                Assert.Equal(expected, set.Intersect(set.Transpose(n)).Count);
            }
        }
    }

    [Fact]
    public void Classes_under_transposition_are_352_as_Burnside_has_it()
    {
        Assert.Equal(352, Burnside.Necklaces());
        Assert.Equal(Burnside.Necklaces(), Every.Select(set => set.NormalForm).Distinct().Count());
    }

    [Fact]
    public void Subsets_are_all_of_that_size()
    {
        foreach (var set in Every.Where(set => set.Count is 0 or 4 or 5 or 12).Take(300).Append(PitchClassSet.All))
        {
            for (var size = -1; size <= 13; size++)
            {
                Assert.Equal(
                    Every.Where(sub => sub.Count == size && set.Contains(sub)).Select(sub => sub.Mask),
                    set.Subsets(size).Select(sub => sub.Mask)
                );
            }
        }
    }

    [Theory]
    [InlineData("<0 0 1 1 1>", "position 11")]
    [InlineData("<0 0 1 1 1 13>", "position 12")]
    [InlineData("001110", "position 1")]
    [InlineData("<0 0 1 1 1 0 0>", "position 14")]
    public void Bad_vectors_are_refused_with_their_place(string text, string place)
    {
        Assert.False(IntervalVector.TryParse(text, null, out _));
        Assert.Contains(place, Assert.ThrowsAny<FormatException>(() => IntervalVector.Parse(text)).Message);
    }

    /// <summary>The textbook's way, with lists and rotations.</summary>
    internal static class Slow
    {
        public static int Mod12(int n) => ((n % 12) + 12) % 12;

        public static int[] NormalOrder(int[] set, bool fromFarEnd)
        {
            var sorted = set.Order().ToArray();
            var best = sorted;
            for (var start = 1; start < sorted.Length; start++)
            {
                int[] rotation = [.. sorted[start..], .. sorted[..start]];
                if (IsMoreCompact(rotation, best, fromFarEnd))
                {
                    best = rotation;
                }
            }

            return best;
        }

        public static PitchClassSet PrimeForm(int[] set, bool fromFarEnd)
        {
            var up = NormalOrder(set, fromFarEnd);
            var down = NormalOrder([.. set.Select(x => Mod12(-x))], fromFarEnd);
            return ToZero(IsMoreCompact(down, up, fromFarEnd) ? down : up);
        }

        public static PitchClassSet ToZero(int[] order) =>
            PitchClassSet.Of([.. order.Select(x => Mod12(x - order[0]))]);

        private static bool IsMoreCompact(int[] left, int[] right, bool fromFarEnd)
        {
            var places = Enumerable.Range(1, Math.Max(0, left.Length - 1)).ToList();
            if (fromFarEnd)
            {
                places.Reverse();
            }
            else if (places.Count > 0)
            {
                places.Insert(0, places[^1]); // the whole span first under both rules
            }

            foreach (var place in places)
            {
                var difference = Mod12(left[place] - left[0]) - Mod12(right[place] - right[0]);
                if (difference != 0)
                {
                    return difference < 0;
                }
            }

            return false;
        }
    }

    /// <summary>
    /// Counts classes without making one: the mean number of sets that the members of the group leave as they are
    /// (Cauchy, Frobenius, Burnside), found from the cycles each makes of the twelve pitch classes.
    /// </summary>
    internal static class Burnside
    {
        private static IEnumerable<int[]> Transpositions =>
            Enumerable.Range(0, 12).Select(n => Enumerable.Range(0, 12).Select(x => (x + n) % 12).ToArray());

        private static IEnumerable<int[]> Inversions =>
            Enumerable.Range(0, 12).Select(n => Enumerable.Range(0, 12).Select(x => (n - x + 12) % 12).ToArray());

        public static int Necklaces() => Transpositions.Sum(each => Fixed(each).Sum()) / 12;

        public static int Bracelets() => BraceletsBySize().Sum();

        public static int[] BraceletsBySize()
        {
            var sums = new int[13];
            foreach (var permutation in Transpositions.Concat(Inversions))
            {
                var each = Fixed(permutation);
                for (var size = 0; size <= 12; size++)
                {
                    sums[size] += each[size];
                }
            }

            return [.. sums.Select(sum => sum / 24)];
        }

        /// <summary>How many sets of each size the permutation leaves: coefficients of the product of (1 + x^length) over its cycles.</summary>
        private static int[] Fixed(int[] permutation)
        {
            var product = new int[13];
            product[0] = 1;
            var seen = new bool[12];
            for (var start = 0; start < 12; start++)
            {
                if (seen[start])
                {
                    continue;
                }

                var length = 0;
                for (var x = start; !seen[x]; x = permutation[x])
                {
                    seen[x] = true;
                    length++;
                }

                for (var size = 12; size >= length; size--)
                {
                    product[size] += product[size - length];
                }
            }

            return product;
        }
    }
}
