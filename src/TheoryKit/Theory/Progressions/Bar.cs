using System.Numerics;
using System.Text;
using Fractions;
using TheoryKit.Theory.Chords;
using TheoryKit.Values;

namespace TheoryKit.Theory.Progressions;

/// <summary>
/// A bar of changes: chords that fill a whole number of beats without a gap. Equal when the chords and their lengths agree.
/// </summary>
[EqualBy(nameof(spans), Operators = true)]
public sealed partial class Bar : IEquatable<Bar>
{
    /// <summary>The most equal parts that a bar is written in: 192.</summary>
    public const int MaxParts = 192;

    private readonly ChordSpan[] spans;

    /// <summary>A bar of chords and their lengths in beats.</summary>
    /// <param name="chords">The chords in order; null where none is played.</param>
    /// <exception cref="ArgumentException">
    /// There is no chord, a length is not positive, they don't add up to 1 to <see cref="TimeSignature.MaxBeats"/> whole beats,
    /// or the bar would have to be written in more than <see cref="MaxParts"/> parts.
    /// </exception>
    public Bar(IEnumerable<(Chord? Chord, Fraction Length)> chords)
    {
        ArgumentNullException.ThrowIfNull(chords);
        var list = new List<ChordSpan>();
        var end = Fraction.Zero;
        foreach (var (chord, length) in chords)
        {
            if (length <= Fraction.Zero)
            {
                throw new ArgumentException($"A chord lasts longer than {length} beats.", nameof(chords));
            }

            list.Add(new(chord, end, length.Reduce()));
            end = (end + length).Reduce();
        }

        if (!end.Denominator.IsOne || end < Fraction.One || end > TimeSignature.MaxBeats)
        {
            throw new ArgumentException(
                $"A bar has 1 to {TimeSignature.MaxBeats} whole beats; these chords have {end}.",
                nameof(chords)
            );
        }

        spans = [.. list];
        Beats = (int)end.Numerator;
        if (Parts is var parts && (spans.Length > MaxParts || parts > MaxParts))
        {
            throw new ArgumentException(
                $"A bar is written in at most {MaxParts} equal parts, not {parts}.",
                nameof(chords)
            );
        }
    }

    private Bar(ChordSpan[] spans, int beats)
    {
        this.spans = spans;
        Beats = beats;
    }

    /// <summary>A bar as it is read: every chord has some of the equal parts into which the beats are divided.</summary>
    internal static Bar OfParts(int beats, int parts, List<(Chord? Chord, int Parts)> items)
    {
        var (spans, start) = (new ChordSpan[items.Count], 0);
        for (var index = 0; index < spans.Length; index++)
        {
            var (chord, length) = items[index];
            spans[index] = new(chord, new(start * beats, parts), new(length * beats, parts));
            start += length;
        }

        return new(spans, beats);
    }

    /// <summary>A bar that its chords share evenly.</summary>
    /// <param name="beats">The beats of the bar, 1 to <see cref="TimeSignature.MaxBeats"/>.</param>
    /// <param name="chords">The chords; null where none is played.</param>
    /// <exception cref="ArgumentException">No chord or more than <see cref="MaxParts"/>, or no such number of beats.</exception>
    public static Bar Of(int beats, params IReadOnlyList<Chord?> chords)
    {
        ArgumentNullException.ThrowIfNull(chords);
        return new(chords.Select(chord => (chord, new Fraction(beats, chords.Count))));
    }

    /// <summary>Its beats.</summary>
    public int Beats { get; }

    /// <summary>The chords, their starts counted in beats from the beginning of the bar.</summary>
    public IReadOnlyList<ChordSpan> Chords => spans;

    /// <summary>The bar with every chord changed.</summary>
    internal Bar Select(Func<Chord, Chord> change) =>
        new(spans.Select(span => (span.Chord is null ? null : change(span.Chord), span.Length)));

    /// <summary>The bar as it is written in changes: <c>Fm7 / Bb7</c>.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        Write(text, chord => chord.ToString());
        return text.ToString();
    }

    internal void Write(StringBuilder text, Func<Chord, string> write)
    {
        var part = new Fraction(Beats, (BigInteger)Parts);
        foreach (var (chord, start, length) in spans)
        {
            text.Append(start.IsZero ? "" : " ").Append(chord is null ? Changes.NoChord : write(chord));
            if (!IsEven)
            {
                text.Insert(text.Length, " /", (int)(length / part).ToBigInteger() - 1);
            }
        }
    }

    private bool IsEven => spans.All(span => span.Length == spans[0].Length);

    /// <summary>
    /// How many chords and slashes say the lengths: one for each chord where they share the bar evenly; else the fewest
    /// equal parts that are whole beats, or into which every beat divides.
    /// </summary>
    private BigInteger Parts
    {
        get
        {
            if (IsEven)
            {
                return spans.Length;
            }

            var parts = spans.Select(span => (span.Length / Beats).Reduce().Denominator).Aggregate(LeastCommonMultiple);
            return (Beats % parts).IsZero ? parts : LeastCommonMultiple(parts, Beats);
        }
    }

    private static BigInteger LeastCommonMultiple(BigInteger left, BigInteger right) =>
        left / BigInteger.GreatestCommonDivisor(left, right) * right;
}
