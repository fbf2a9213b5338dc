using System.Globalization;
using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Strings;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Retuning;

/// <summary>
/// What several tunings do to the same chords under the same hand, a column for each. Equal when necks, chords, hand,
/// limits and strings are.
/// </summary>
/// <remarks>
/// The first neck is the reference that retuning is counted against. Grips and zones are found when they are first asked
/// for, and once.
/// </remarks>
[EqualBy(nameof(Necks), nameof(Chords), nameof(Hand), nameof(Limits), nameof(Strings), nameof(TensionLimits))]
public sealed partial class TuningComparison : IEquatable<TuningComparison>
{
    private TuningComparison(
        Sequence<Neck> necks,
        Sequence<Chord> chords,
        Hand hand,
        GripLimits limits,
        StringSet? strings,
        TensionLimits tensionLimits
    )
    {
        (Necks, Chords, Hand, Limits) = (necks, chords, hand, limits);
        (Strings, TensionLimits) = (strings, tensionLimits);
        Columns = necks.Zip(Measures(necks), (neck, measures) => new TuningColumn(this, neck, measures)).ToSequence();
    }

    /// <summary>The necks; the first one is the reference.</summary>
    public IReadOnlyList<Neck> Necks { get; }

    /// <summary>The chords, in the order given.</summary>
    public IReadOnlyList<Chord> Chords { get; }

    /// <summary>The hand.</summary>
    public Hand Hand { get; }

    /// <summary>What is asked of a grip.</summary>
    public GripLimits Limits { get; }

    /// <summary>The strings fitted, the same for every tuning; null where tensions are not asked for.</summary>
    public StringSet? Strings { get; }

    /// <summary>Between which tensions a string plays well and lasts.</summary>
    public TensionLimits TensionLimits { get; }

    /// <summary>What there is to say about each neck, in their order.</summary>
    public IReadOnlyList<TuningColumn> Columns { get; }

    /// <summary>The neck that retuning is counted against.</summary>
    public Neck Reference => Necks[0];

    /// <summary>A comparison of necks.</summary>
    /// <param name="necks">One or more; the first is the reference. They may have any number of strings.</param>
    /// <param name="chords">One or more.</param>
    /// <param name="hand">The hand; the average one if null.</param>
    /// <param name="limits">What is asked of a grip; common practice if null.</param>
    /// <param name="strings">The strings fitted, for tensions; null for none.</param>
    /// <param name="tensionLimits">Between which tensions a string plays well and lasts; those for the instrument of
    /// the set, else of the reference, if null.</param>
    /// <exception cref="ArgumentException">No neck, no chord, limits that contradict themselves or a neck, or a set of
    /// strings that has not as many as a neck.</exception>
    public static TuningComparison Of(
        IEnumerable<Neck> necks,
        IEnumerable<Chord> chords,
        Hand? hand = null,
        GripLimits? limits = null,
        StringSet? strings = null,
        TensionLimits? tensionLimits = null
    )
    {
        var (allNecks, allChords) = (Check.Items(necks), Check.Items(chords));
        if (allNecks.Count == 0)
        {
            throw new ArgumentException("There is no tuning to compare; give one or more.", nameof(necks));
        }

        if (allChords.Count == 0)
        {
            throw new ArgumentException("There is no chord to compare tunings by; give one or more.", nameof(chords));
        }

        limits ??= GripLimits.Default;
        foreach (var neck in allNecks)
        {
            limits.Validate(neck);
        }

        return new(
            allNecks,
            allChords,
            hand ?? Hand.Average,
            limits,
            strings,
            tensionLimits ?? TensionLimits.For(strings, allNecks[0].Tuning)
        );
    }

    /// <summary>A comparison of tunings on one neck.</summary>
    /// <param name="neck">The neck: its scale length, frets and capo; its own tuning counts only if it is among the tunings.</param>
    /// <param name="tunings">One or more; the first is the reference.</param>
    /// <param name="chords">One or more.</param>
    /// <param name="hand">The hand; the average one if null.</param>
    /// <param name="limits">What is asked of a grip; common practice if null.</param>
    /// <param name="strings">The strings fitted, for tensions; null for none.</param>
    /// <param name="tensionLimits">Between which tensions a string plays well and lasts; those for the instrument of
    /// the set, else of the reference, if null.</param>
    /// <exception cref="ArgumentException">No tuning, no chord, limits that contradict themselves or a neck, or a set of
    /// strings that has not as many as a neck.</exception>
    public static TuningComparison Of(
        Neck neck,
        IEnumerable<Tuning> tunings,
        IEnumerable<Chord> chords,
        Hand? hand = null,
        GripLimits? limits = null,
        StringSet? strings = null,
        TensionLimits? tensionLimits = null
    )
    {
        ArgumentNullException.ThrowIfNull(neck);
        var all = Check.Items(tunings);
        if (all.Count == 0)
        {
            throw new ArgumentException("There is no tuning to compare; give one or more.", nameof(tunings));
        }

        return Of(all.Select(neck.With), chords, hand, limits, strings, tensionLimits);
    }

    /// <summary>The chords and the tunings, for a reader.</summary>
    public override string ToString() =>
        $"{string.Join(", ", Chords)} in {string.Join("; ", Columns.Select(static column => column.Name))}";

    /// <summary>What the names of the tunings need besides to tell the necks apart: a capo, and other measures where two have the same of both.</summary>
    private static IEnumerable<string> Measures(Sequence<Neck> necks) =>
        necks.Select(neck =>
            (neck.Capo == 0 ? "" : $", capo {neck.Capo}")
            + (
                necks.Any(other => other != neck && other.Tuning == neck.Tuning && other.Capo == neck.Capo)
                    ? string.Create(CultureInfo.InvariantCulture, $", {neck.ScaleLength:0.#} mm, {neck.Frets} frets")
                    : ""
            )
        );
}
