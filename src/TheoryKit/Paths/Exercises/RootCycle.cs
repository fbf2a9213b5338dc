using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using TheoryKit.Values;

namespace TheoryKit.Paths.Exercises;

/// <summary>
/// The order in which the twelve roots are practised. A further order is a further record in this file. Equal when kind and
/// seed are.
/// </summary>
/// <remarks>Text: <c>fourths</c>, <c>semitones</c>, <c>shuffled 7</c>.</remarks>
[ReadAs("an order of roots")]
[Checked]
public abstract partial record RootCycle : ISpanParsable<RootCycle>
{
    private const int Roots = 12;
    private const int SeedDigits = 9;

    private RootCycle() { }

    /// <summary>Each a fourth above the one before.</summary>
    public static RootCycle Fourths { get; } = new StepCycle("fourths", 5);

    /// <summary>Each a semitone above the one before.</summary>
    public static RootCycle Semitones { get; } = new StepCycle("semitones", 1);

    /// <summary>All twelve in an order that the seed decides.</summary>
    /// <param name="seed">0 to 999999999.</param>
    /// <exception cref="ArgumentOutOfRangeException">Another seed.</exception>
    public static RootCycle Shuffled(int seed)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(seed);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(seed, 999_999_999);
        return new ShuffledCycle(seed);
    }

    /// <summary>The twelve roots in semitones above the first of the steps, 0 to 11, each once.</summary>
    public abstract IReadOnlyList<int> Order { get; }

    /// <summary>The text as it is read.</summary>
    public abstract override string ToString();

    private static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out RootCycle cycle)
    {
        cycle = null;
        foreach (var known in (ReadOnlySpan<RootCycle>)[Fourths, Semitones])
        {
            if (cursor.Take(known.ToString()))
            {
                cycle = known;
                return true;
            }
        }

        if (!cursor.Take("shuffled"))
        {
            return cursor.Fail("fourths, semitones, or shuffled and a seed (as in shuffled 7)");
        }

        if (!cursor.SkipSpaces() || !cursor.TakeNumber(SeedDigits, out var seed))
        {
            return cursor.Fail($"a space and a seed of at most {SeedDigits} digits (as in shuffled 7)");
        }

        cycle = Shuffled(seed);
        return true;
    }

    private sealed record StepCycle(string Name, int Step) : RootCycle
    {
        public override IReadOnlyList<int> Order => [.. Enumerable.Range(0, Roots).Select(at => at * Step % Roots)];

        public override string ToString() => Name;
    }

    private sealed record ShuffledCycle(int Seed) : RootCycle
    {
        public override IReadOnlyList<int> Order
        {
            get
            {
                var order = Enumerable.Range(0, Roots).ToArray();
                new SplitMix64((ulong)Seed).Shuffle(order);
                return order;
            }
        }

        public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"shuffled {Seed}");
    }
}
