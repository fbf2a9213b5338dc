using System.Diagnostics.CodeAnalysis;
using Fractions;
using TheoryKit.Paths.Timing;
using TheoryKit.Values;

namespace TheoryKit.Paths.Exercises;

/// <summary>Which way the pick goes through a string.</summary>
public enum PickDirection
{
    /// <summary>Towards the floor.</summary>
    Down,

    /// <summary>Away from the floor.</summary>
    Up,
}

/// <summary>
/// A rule for the strokes of the picking hand. A further rule is a further record in this file. Equal when kind and numbers
/// are.
/// </summary>
/// <remarks>Text: <c>alternate</c>, <c>economy</c>, <c>pendulum 1/2</c>.</remarks>
[ReadAs("a way of picking")]
[Checked]
public abstract partial record Picking : ISpanParsable<Picking>
{
    private Picking() { }

    /// <summary>Down first, then every stroke the other way from the one before.</summary>
    public static Picking Alternate { get; } = new AlternateRule();

    /// <summary>
    /// Down first; on the same string every stroke the other way; across strings with the way the pick goes: down to a string nearer the
    /// floor, up to one farther from it.
    /// </summary>
    public static Picking Economy { get; } = new EconomyRule();

    /// <summary>The hand swings through the beat whether it strikes or not: down for so many beats, then up for as many.</summary>
    /// <param name="beats">How long it goes one way, in beats: 1/2 for eighths; more than 0, at most 64 and no finer than 1/192.</param>
    /// <exception cref="ArgumentOutOfRangeException">Another length.</exception>
    public static Picking Pendulum(Fraction beats) =>
        Rhythm.IsLength(beats)
            ? new PendulumRule(beats.Reduce())
            : throw new ArgumentOutOfRangeException(
                nameof(beats),
                $"{beats}",
                $"The hand swings one way for more than 0 and at most {Rhythm.MaxLength} beats, no finer than 1/{Rhythm.MaxDenominator}."
            );

    /// <summary>The usual ones.</summary>
    public static IReadOnlyList<Picking> Known { get; } = [Alternate, Economy, Pendulum(new(1, 2))];

    /// <summary>The text as it is read.</summary>
    public abstract override string ToString();

    /// <summary>The stroke of a note.</summary>
    /// <param name="note">The note.</param>
    /// <param name="before">The note struck before it and its stroke; null for the first.</param>
    internal abstract PickDirection Stroke(PathNote note, (PathNote Note, PickDirection Direction)? before);

    private static PickDirection Other(PickDirection direction) =>
        direction == PickDirection.Down ? PickDirection.Up : PickDirection.Down;

    private static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out Picking rule)
    {
        rule = null;
        foreach (var known in (ReadOnlySpan<Picking>)[Alternate, Economy])
        {
            if (cursor.Take(known.ToString()))
            {
                rule = known;
                return true;
            }
        }

        if (!cursor.Take("pendulum"))
        {
            return cursor.Fail("alternate, economy, or pendulum and a length in beats (as in pendulum 1/2)");
        }

        var start = cursor.Position;
        if (!cursor.SkipSpaces() || !Rhythm.ReadLength(ref cursor, out var beats))
        {
            return cursor.Fail(start, "a space and a length in beats (as in pendulum 1/2)");
        }

        rule = Pendulum(beats);
        return true;
    }

    private sealed record AlternateRule : Picking
    {
        public override string ToString() => "alternate";

        internal override PickDirection Stroke(PathNote note, (PathNote Note, PickDirection Direction)? before) =>
            before is { } last ? Other(last.Direction) : PickDirection.Down;
    }

    private sealed record EconomyRule : Picking
    {
        public override string ToString() => "economy";

        internal override PickDirection Stroke(PathNote note, (PathNote Note, PickDirection Direction)? before) =>
            before is not { } last ? PickDirection.Down
            : note.Position.String < last.Note.Position.String ? PickDirection.Down
            : note.Position.String > last.Note.Position.String ? PickDirection.Up
            : Other(last.Direction);
    }

    private sealed record PendulumRule(Fraction Beats) : Picking
    {
        public override string ToString() => $"pendulum {Beats}";

        internal override PickDirection Stroke(PathNote note, (PathNote Note, PickDirection Direction)? before)
        {
            var swings = note.Start / Beats;
            return System.Numerics.BigInteger.Divide(swings.Numerator, swings.Denominator).IsEven
                ? PickDirection.Down
                : PickDirection.Up;
        }
    }
}
