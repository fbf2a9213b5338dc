using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Tunings.Strings;

/// <summary>A tuning on fitted strings: every tension, the change against a reference, and what is amiss.</summary>
public sealed record TensionReport
{
    // A tenth more in all is worth a word: from one usual set to the next heavier is 15 to 20 %.
    private const double MuchMore = 0.1;

    private readonly Sequence<StringTension> strings;

    internal TensionReport(Neck neck, StringSet set, Tuning? reference, TensionLimits limits, double a4)
    {
        if (set.Count != neck.StringCount)
        {
            throw new ArgumentException(
                $"The set has {set.Count} strings, the neck {neck.StringCount}: {neck.Tuning}.",
                nameof(strings)
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

    /// <summary>What is amiss, string 1 first; none where every string is comfortable. Show <see cref="Caution"/> with it.</summary>
    public IReadOnlyList<TensionWarning> Warnings
    {
        get
        {
            var warnings = strings
                .Where(static each => each.State != StringState.Comfortable)
                .Select(static each => (TensionWarning)new TensionWarning.NotComfortable(each))
                .ToList();
            if (TotalChange is { } more && more.Newtons > MuchMore * (Total - more).Newtons)
            {
                warnings.Add(new TensionWarning.MuchMoreInAll(more, more.Newtons / (Total - more).Newtons));
            }

            return warnings;
        }
    }

    /// <summary>The caution that belongs to the warnings and to any string tuned up from the reference, <see cref="Cautions.Strings"/>;
    /// null where there are none.</summary>
    public string? Caution =>
        Warnings.Count > 0 || strings.Any(static each => each.Retuned > 0) ? Cautions.Strings : null;

    /// <summary>What the figures can't tell: where the part of the breaking stress is an estimate, and where it isn't known.</summary>
    public IReadOnlyList<TensionNote> Notes
    {
        get
        {
            var notes = new List<TensionNote>();
            if (strings.Any(static each => each.String.IsStressEstimated))
            {
                notes.Add(new TensionNote.Estimated());
            }

            var unknown = strings
                .Where(static each => each.BreakingPart is null)
                .Select(static each => each.Number)
                .Reverse()
                .ToList();
            if (unknown.Count > 0)
            {
                notes.Add(new TensionNote.NotKnown(unknown, strings.Count));
            }

            return notes;
        }
    }

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
            MostOfBreaking = Limits.MostOfBreaking,
        };
        return found with { Suggested = Suggest(found), HighestSafePitch = HighestSafe(open.Open, breaking) };
    }

    private GaugeChoice? Suggest(StringTension found)
    {
        if (found.State is not (StringState.Slack or StringState.Heavy) || found.String.Material is not { } material)
        {
            return null;
        }

        var wanted =
            found.Change is { } change && Limits.StateOf(found.Tension - change) == StringState.Comfortable
                ? found.Tension - change
                : Limits.Middle;
        // Under the thinnest wound string that is sold a plain one does.
        StringMaterial[] materials = found.String.IsSteelWound ? [material, StringMaterial.PlainSteel] : [material];
        return materials.Select(each => Usable(wanted, found, each)).FirstOrDefault(static each => each is not null);
    }

    /// <summary>A gauge that is sold and bears the pitch; null if there is none.</summary>
    private GaugeChoice? Usable(Tension wanted, StringTension found, StringMaterial material) =>
        FittedString.TryGaugeFor(wanted, found.Pitch, found.Length, material, ReferenceA4, out var choice, out _)
        && !choice.Nearest.IsThinnerThanSold
        && choice with { MostOfBreaking = Limits.MostOfBreaking } is { State: StringState.Comfortable } usable
            ? usable
            : null;

    private Pitch? HighestSafe(Pitch pitch, double? part) =>
        part is { } known ? TensionLimits.HighestSafe(pitch, known, Limits.MostOfBreaking) : null;

    /// <summary>
    /// The strings that would pull in this tuning what these pull in the reference: of each the nearest gauge that is sold, in the same
    /// material; of a string known by its weight only, the weight.
    /// </summary>
    /// <exception cref="InvalidOperationException">There is no reference, or some string would be too thin or too thick, or nearer to
    /// breaking than the limits allow: no gauge eases the stress of a pitch.</exception>
    public StringSet Refitted()
    {
        if (Reference is null)
        {
            throw new InvalidOperationException(
                "To keep tensions takes a reference: name the tuning to keep them from in neck.Tensions(strings, reference)."
            );
        }

        return new(strings.Reverse().Select(Refit));
    }

    private FittedString Refit(StringTension each)
    {
        if (each.Retuned == 0)
        {
            return each.String;
        }

        var wanted = each.Tension - each.Change!.Value;
        if (each.String.Material is not { } material)
        {
            var weight = each.String.UnitWeight * wanted.Newtons / each.Tension.Newtons;
            return weight is >= FittedString.MinUnitWeight and <= FittedString.MaxUnitWeight
                ? FittedString.OfUnitWeight(weight)
                : throw new InvalidOperationException(
                    $"String {each.Number} would need {weight} kg/m at {each.Pitch} to keep {wanted.ToString(1)}."
                );
        }

        if (!each.String.TryWithTension(wanted, each.Pitch, each.Length, ReferenceA4, out var found, out var problem))
        {
            throw new InvalidOperationException($"String {each.Number} can't keep its tension: {problem}");
        }

        var part = found.BreakingPart(each.Pitch, each.Length, ReferenceA4);
        return TensionLimits.BreakingState(part, Limits.MostOfBreaking) is null
            ? found
            : throw new InvalidOperationException(
                $"String {each.Number} can't keep its tension safely: {found} at {each.Pitch} would be at {(found.IsStressEstimated ? "about " : "")}{TensionLimits.Percent(part!.Value, Limits.MostOfBreaking)} of its breaking stress. No gauge eases that: tune it {(HighestSafe(each.Pitch, part) is { } safe ? $"to {safe} or lower" : "lower")}."
            );
    }

    /// <summary>The tuning and what the neck carries, with the caution where there is one.</summary>
    public override string ToString() => $"{Neck.Tuning}: {Total.ToString(0)}{(Caution is null ? "" : $"\n{Caution}")}";
}
