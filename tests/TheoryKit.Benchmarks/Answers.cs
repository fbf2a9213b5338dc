namespace TheoryKit.Benchmarks;

/// <summary>A comparison of speed is worth something only between two ways to the same answer.</summary>
internal static class Answers
{
    public static void MustAgree<T>(IEnumerable<T> ours, IEnumerable<T> plain)
    {
        if (!ours.SequenceEqual(plain))
        {
            throw new InvalidOperationException(
                $"The two ways differ: {string.Join(' ', ours)} against {string.Join(' ', plain)}."
            );
        }
    }
}
