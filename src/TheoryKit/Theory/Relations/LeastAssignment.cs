using TheoryKit.Theory.Notes;

namespace TheoryKit.Theory.Relations;

/// <summary>Pairs pitch classes so that the ways between them are shortest in all.</summary>
internal static class LeastAssignment
{
    // Far above any cost, far below where adding a cost to it every time would overflow.
    private const int Unreachable = 100_000_000;

    /// <summary>The shortest way around the octave, -5 to 6.</summary>
    public static int Way(int from, int to) => Diatonic.Modulo(to - from + 5, Diatonic.SemitonesPerOctave) - 5;

    /// <summary>Pairs of places in the two lists, ordered by the first, then by the second; every place occurs.</summary>
    public static IReadOnlyList<(int From, int To)> Of(ReadOnlySpan<int> from, ReadOnlySpan<int> to)
    {
        if (from.Length >= to.Length)
        {
            var ends = Cover(from, to);
            return [.. ends.Select(static (end, start) => (start, end))];
        }

        var starts = Cover(to, from);
        return [.. starts.Select(static (start, end) => (start, end)).Order()];
    }

    /// <summary>
    /// For each of <paramref name="more"/> a place in <paramref name="fewer"/>, so that each of these is taken: the least over all
    /// such maps, and of equal ones the first in lexicographic order.
    /// </summary>
    private static int[] Cover(ReadOnlySpan<int> more, ReadOnlySpan<int> fewer)
    {
        // least[item, taken]: the least cost of this item and those after it, when those before have taken that set of places.
        var all = (1 << fewer.Length) - 1;
        var least = new int[more.Length + 1, all + 1];
        for (var taken = 0; taken < all; taken++)
        {
            least[more.Length, taken] = Unreachable;
        }

        for (var item = more.Length - 1; item >= 0; item--)
        {
            for (var taken = 0; taken <= all; taken++)
            {
                var best = Unreachable;
                for (var place = 0; place < fewer.Length; place++)
                {
                    best = Math.Min(best, Cost(more[item], fewer[place]) + least[item + 1, taken | (1 << place)]);
                }

                least[item, taken] = best;
            }
        }

        var answer = new int[more.Length];
        var soFar = 0;
        for (var item = 0; item < more.Length; item++)
        {
            var place = 0;
            while (Cost(more[item], fewer[place]) + least[item + 1, soFar | (1 << place)] != least[item, soFar])
            {
                place++;
            }

            answer[item] = place;
            soFar |= 1 << place;
        }

        return answer;
    }

    /// <summary>
    /// Semitones first, then whether it moves at all, then the square: with at most 12 voices of at most 6 semitones no lower rank
    /// ever adds up to a higher one (12 * 36 is less than 1 000, 12 less than 100).
    /// </summary>
    private static int Cost(int from, int to)
    {
        var distance = Math.Abs(Way(from, to));
        return (distance * 100_000) + (distance == 0 ? 0 : 1_000) + (distance * distance);
    }
}
