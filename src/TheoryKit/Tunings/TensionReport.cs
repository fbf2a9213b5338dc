using TheoryKit.Theory;

namespace TheoryKit.Tunings;

/// <summary>A tuning on fitted strings: every tension, the change against a reference, and what is amiss.</summary>
public sealed record TensionReport
{
    private readonly Sequence<StringTension> strings;

    internal TensionReport(Neck neck, StringSet set, Tuning? reference, TensionLimits limits, double a4)
    {
        if (set.Count != neck.StringCount)
        {
            throw new ArgumentException(
                $"The set has {set.Count} strings, the neck {neck.StringCount}: {neck.Tuning}.",
                nameof(set)
            );
        }

        if (reference is not null && reference.StringCount != neck.StringCount)
        {
            throw new ArgumentException(
                $"The reference {reference} has {reference.StringCount} strings, the neck {neck.StringCount}.",
                nameof(reference)
            );
        }

        Neck = neck;
        Set = set;
        Reference = reference;
        Limits = limits;
        ReferenceA4 = a4;
        strings = Enumerable.Range(1, neck.StringCount).Select(TensionOf).ToSequence();
    }

    /// <summary>The neck, with the tuning.</summary>
    public Neck Neck { get; }

    /// <summary>The strings fitted.</summary>
    public StringSet Set { get; }

    /// <summary>The tuning that it is compared with; null for none.</summary>
    public Tuning? Reference { get; }

    /// <summary>The limits.</summary>
    public TensionLimits Limits { get; }

    /// <summary>The frequency of A4, in Hz.</summary>
    public double ReferenceA4 { get; }

    /// <summary>Every string, string 1 first.</summary>
    public IReadOnlyList<StringTension> Strings => strings;

    /// <summary>What the neck carries.</summary>
    public Tension Total => new(strings.Sum(static each => each.Tension.Newtons));

    /// <summary>By how much that is more than in the reference tuning; null without one.</summary>
    public Tension? TotalChange =>
        Reference is null ? null : new(strings.Sum(static each => each.Change!.Value.Newtons));

    /// <summary>What is amiss, in sentences, string 1 first; none where every string is comfortable. Show
    /// <see cref="Caution"/> with it.</summary>
    public IReadOnlyList<string> Warnings => TensionWords.Warnings(this);

    /// <summary>The caution that belongs to the warnings, <see cref="Cautions.Strings"/>; null where there are none.</summary>
    public string? Caution => Warnings.Count > 0 ? Cautions.Strings : null;

    private StringTension TensionOf(int number)
    {
        var open = Neck.Tuning[number];
        var fitted = Set[number];
        var length = Neck.OpenLength(number);
        var tension = fitted.TensionAt(open.Open, length, ReferenceA4);
        var breaking = fitted.BreakingPart(tension);
        var before = Reference?[number];
        var found = new StringTension
        {
            Number = number,
            Pitch = open.Open,
            String = fitted,
            Length = length,
            Tension = tension,
            ReferencePitch = before?.Open,
            Change = before is { } reference ? tension - fitted.TensionAt(reference.Open, length, ReferenceA4) : null,
            Stress = fitted.StressAt(tension),
            BreakingPart = breaking,
            State = Limits.StateOf(tension, breaking),
        };
        return found with { Advice = TensionWords.Advice(found, Limits) };
    }
}
