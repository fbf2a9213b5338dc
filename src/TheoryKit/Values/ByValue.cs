using System.Collections.Immutable;

namespace TheoryKit.Values;

/// <summary>How members are compared where a type is <see cref="EqualByAttribute">equal by</see> them: lists member by member.</summary>
internal static class ByValue
{
    // A hash code need not tell lists apart that only differ late.
    private const int MostHashed = 8;

    public static bool Equal<T>(T left, T right) => EqualityComparer<T>.Default.Equals(left, right);

    public static bool Equal<T>(T[] left, T[] right) => left.AsSpan().SequenceEqual(right);

    public static bool Equal<T>(ImmutableArray<T> left, ImmutableArray<T> right) =>
        left.AsSpan().SequenceEqual(right.AsSpan());

    public static bool Equal<T>(IReadOnlyList<T> left, IReadOnlyList<T> right) => left.SequenceEqual(right);

    public static int Hash<T>(T value) => value?.GetHashCode() ?? 0;

    public static int Hash<T>(T[] values) => HashFirst<T>(values);

    public static int Hash<T>(ImmutableArray<T> values) => HashFirst(values.AsSpan());

    public static int Hash<T>(IReadOnlyList<T> values) => values.Count ^ HashFirst<T>([.. values.Take(MostHashed)]);

    private static int HashFirst<T>(ReadOnlySpan<T> values)
    {
        var hash = default(HashCode);
        hash.Add(values.Length);
        foreach (var value in values[..Math.Min(values.Length, MostHashed)])
        {
            hash.Add(value);
        }

        return hash.ToHashCode();
    }
}
