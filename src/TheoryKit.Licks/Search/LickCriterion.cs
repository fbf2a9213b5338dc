using Fractions;
using TheoryKit.Licks.Tab.Reading;
using TheoryKit.Paths;
using TheoryKit.Values;

namespace TheoryKit.Licks.Search;

/// <summary>
/// Something that a lick must have to be found. A further kind is a further record, with its line in the table of
/// <see cref="LickQuery"/>'s text. Equal when kind and what is asked are.
/// </summary>
/// <remarks>Functions are compared within the octave, a 9 is a 2; texts without regard to case.</remarks>
[Checked]
public abstract partial record LickCriterion
{
    /// <summary>How alike a lick must at least be where a query does not say: 0.5.</summary>
    public const double UsualLeast = 0.5;

    private LickCriterion() { }

    /// <summary>The key that a query's text begins it with.</summary>
    public abstract string Key { get; }

    /// <summary>What is asked, as it stands after the key, without quotes.</summary>
    public abstract string Value { get; }

    /// <summary>As it stands in a query: <c>function:3</c>.</summary>
    public sealed override string ToString() => LickQuery.Write(this);

    /// <summary>How well a lick answers, up to 1; null if it does not.</summary>
    internal abstract double? Score(LickFacts facts);

    /// <summary>In which way a lick that answers does so.</summary>
    internal abstract FoundReason Reason(LickFacts facts);

    /// <summary>Something that it must not have.</summary>
    public sealed record Not : LickCriterion
    {
        /// <summary>The opposite.</summary>
        /// <exception cref="ArgumentException">It is an opposite already.</exception>
        public Not(LickCriterion inner)
        {
            ArgumentNullException.ThrowIfNull(inner);
            Inner = inner is not Not ? inner : throw new ArgumentException("It is an opposite already.", nameof(inner));
        }

        /// <summary>What it must not have.</summary>
        public LickCriterion Inner { get; }

        /// <inheritdoc/>
        public override string Key => Inner.Key;

        /// <inheritdoc/>
        public override string Value => Inner.Value;

        internal override double? Score(LickFacts facts) => Inner.Score(facts) is null ? 1 : null;

        internal override FoundReason Reason(LickFacts facts) => new FoundReason.Not(Inner);
    }

    private static string Said(string text, string parameter) =>
        LickText.OneLine(text, parameter) is { Length: > 0 } line
            ? line
            : throw new ArgumentException("There is nothing to look for.", parameter);

    private static double Part(double least, string parameter) =>
        least is >= 0 and <= 1
            ? Math.Round(least, 2)
            : throw new ArgumentOutOfRangeException(
                parameter,
                least,
                "How alike two licks are is a number from 0 to 1."
            );

    private static bool Holds(string text, string part) => text.Contains(part, StringComparison.OrdinalIgnoreCase);

    private static int BarOf(LickFacts facts, PathNote note) =>
        (int)
            System.Numerics.BigInteger.Divide(
                note.Start.Numerator,
                note.Start.Denominator * facts.Lick.Path.Time.Beats
            );

    private static int BarOf(LickFacts facts, int index) => BarOf(facts, facts.Sounding[index]);

    /// <summary>The bar and the beat of a note, both from 1.</summary>
    private static (int Bar, Fraction Beat) Place(LickFacts facts, int index)
    {
        var bar = BarOf(facts, index);
        return (bar + 1, (facts.Sounding[index].Start - (bar * facts.Lick.Path.Time.Beats) + 1).Reduce());
    }
}
