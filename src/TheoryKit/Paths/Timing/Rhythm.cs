using System.Diagnostics.CodeAnalysis;
using Fractions;
using TheoryKit.Values;

namespace TheoryKit.Paths.Timing;

/// <summary>A stroke of a rhythm.</summary>
/// <param name="Start">When it starts, in beats from the beginning.</param>
/// <param name="Length">How long it lasts, in beats.</param>
/// <param name="IsAccented">Whether it is louder.</param>
public readonly record struct Stroke(Fraction Start, Fraction Length, bool IsAccented);

/// <summary>Lengths and rests in order, to be put under notes and repeated as often as needed. Equal when the steps agree.</summary>
/// <remarks>
/// Text: the lengths in beats with spaces between, <c>&gt;</c> after one that is accented and <c>r</c> before a rest:
/// <c>3/2&gt; 1/2 r1 1/3 1/3 1/3</c>. Up to <see cref="MaxSteps"/> steps, each of at most <see cref="MaxLength"/> beats in parts no
/// smaller than 1/<see cref="MaxDenominator"/>.
/// </remarks>
[ReadAs("a rhythm")]
[EqualBy(nameof(steps))]
public sealed partial class Rhythm : IEquatable<Rhythm>, ISpanParsable<Rhythm>
{
    /// <summary>The most steps: 512.</summary>
    public const int MaxSteps = 512;

    /// <summary>The longest step in beats: 64.</summary>
    public const int MaxLength = 64;

    /// <summary>The finest part of a beat: 1/192.</summary>
    public const int MaxDenominator = 192;

    private readonly Sequence<Step> steps;

    private Rhythm(IEnumerable<Step> steps) => this.steps = steps.ToSequence();

    private readonly record struct Step(Fraction Length, bool IsRest, bool IsAccented)
    {
        public override string ToString() => $"{(IsRest ? "r" : "")}{Length}{(IsAccented ? ">" : "")}";
    }

    /// <summary>How long it lasts, in beats.</summary>
    public Fraction Beats => steps.Aggregate(Fraction.Zero, static (sum, step) => (sum + step.Length).Reduce());

    /// <summary>How many strokes it has before it is repeated.</summary>
    public int StrokeCount => steps.Count(static step => !step.IsRest);

    /// <summary>So many equal notes a beat, from 1 (or 2 in two beats: 1/2) up.</summary>
    /// <param name="perBeat">How many; 3 for triplets, 1/2 for notes of two beats.</param>
    /// <param name="accentEvery">Every how many notes one is accented, from the first on; 0 for no accents.</param>
    /// <exception cref="ArgumentOutOfRangeException">The notes are longer or finer than steps may be, or the accents negative.</exception>
    public static Rhythm Even(Fraction perBeat, int accentEvery = 0)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(accentEvery);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(accentEvery, MaxSteps);
        if (perBeat <= Fraction.Zero || !IsLength((Fraction.One / perBeat).Reduce()))
        {
            throw new ArgumentOutOfRangeException(
                nameof(perBeat),
                $"{perBeat}",
                $"There are more than 1/{MaxLength} and at most {MaxDenominator} notes a beat."
            );
        }

        var length = (Fraction.One / perBeat).Reduce();
        return new(
            Enumerable
                .Range(0, Math.Max(1, accentEvery))
                .Select(index => new Step(length, false, accentEvery > 0 && index == 0))
        );
    }

    /// <summary>The strokes, repeated without end.</summary>
    public IEnumerable<Stroke> Strokes()
    {
        for (var at = Fraction.Zero; ; )
        {
            foreach (var step in steps)
            {
                if (!step.IsRest)
                {
                    yield return new(at, step.Length, step.IsAccented);
                }

                at = (at + step.Length).Reduce();
            }
        }
    }

    /// <summary>The rhythm as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() => string.Join(' ', steps);

    internal static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out Rhythm rhythm)
    {
        rhythm = null;
        var read = new List<Step>();
        do
        {
            var start = cursor.Position;
            if (read.Count == MaxSteps)
            {
                return cursor.Fail($"no more than {MaxSteps} steps");
            }

            var isRest = cursor.Take('r');
            if (!ReadLength(ref cursor, out var length))
            {
                return cursor.Fail(
                    start,
                    $"a length in beats (1, 1/2, 3/2), at most {MaxLength} and no finer than 1/{MaxDenominator}; r before a rest"
                );
            }

            read.Add(new(length, isRest, !isRest && cursor.Take('>')));
        } while (cursor.SkipSpaces() && !cursor.AtEnd);

        if (read.TrueForAll(static step => step.IsRest))
        {
            return cursor.Fail("a length that is no rest");
        }

        rhythm = new(read);
        return true;
    }

    internal static bool ReadLength(ref TextCursor cursor, out Fraction length)
    {
        length = Fraction.Zero;
        if (!cursor.TakeNumber(5, out var over))
        {
            return false;
        }

        var under = 1;
        if (cursor.Take('/') && (!cursor.TakeNumber(5, out under) || under == 0))
        {
            return false;
        }

        length = new Fraction(over, under);
        return IsLength(length);
    }

    internal static bool IsLength(Fraction length) =>
        length > Fraction.Zero && length <= MaxLength && length.Denominator <= MaxDenominator;
}
