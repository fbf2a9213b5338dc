using System.Collections;

namespace TheoryKit.Values;

/// <summary>A list that never changes and is equal to another with equal members, so that the records that hold one are equal by value.</summary>
internal sealed class Sequence<T>(IEnumerable<T> items) : IReadOnlyList<T>, IEquatable<Sequence<T>>
{
    private readonly T[] items = [.. items];

    public int Count => items.Length;

    public T this[int index] => items[Check.Index(index, Count)];

    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    public bool Equals(Sequence<T>? other) => other is not null && items.AsSpan().SequenceEqual(other.items);

    public override bool Equals(object? obj) => Equals(obj as Sequence<T>);

    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (var item in items)
        {
            hash.Add(item);
        }

        return hash.ToHashCode();
    }
}

/// <summary>Makes a <see cref="Sequence{T}"/>.</summary>
internal static class Sequence
{
    public static Sequence<T> ToSequence<T>(this IEnumerable<T> items) => new(items);
}
