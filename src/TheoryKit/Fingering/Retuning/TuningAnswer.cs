using System.Collections;
using System.Collections.Immutable;
using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Retuning;

/// <summary>
/// The tunings found, the best first, and what became of all the others: <see cref="Evaluated"/> and the counts of
/// <see cref="Cuts"/> add up to <see cref="Space"/>.
/// </summary>
public sealed class TuningAnswer : IReadOnlyList<FoundTuning>
{
    private readonly ImmutableArray<FoundTuning> tunings;

    internal TuningAnswer(
        TuningQuery query,
        ImmutableArray<FoundTuning> tunings,
        FoundTuning? runnerUp,
        long space,
        long evaluated,
        ImmutableArray<TuningCut> cuts
    ) => (Query, this.tunings, RunnerUp, Space, Evaluated, Cuts) = (query, tunings, runnerUp, space, evaluated, cuts);

    /// <summary>What was asked.</summary>
    public TuningQuery Query { get; }

    /// <summary>How many tunings there are within the semitones asked for.</summary>
    public long Space { get; }

    /// <summary>How many of them were worked out to the end.</summary>
    public long Evaluated { get; }

    /// <summary>What cut off the others, and how many; a tuning that several limits exclude counts for the first that met it.</summary>
    public IReadOnlyList<TuningCut> Cuts { get; }

    /// <summary>The best tuning that is not among those asked for; null if there is none.</summary>
    public FoundTuning? RunnerUp { get; }

    /// <summary>By how much the runner-up scores worse than the best; null if there is none.</summary>
    public double? RunnerUpDistance => RunnerUp is null ? null : RunnerUp.Score - tunings[0].Score;

    /// <summary>What cut off how many where there is no answer; null where there is one.</summary>
    public NoTuningReason? Reason =>
        tunings.Length > 0 ? null
        : Cuts.Count == 0 ? new NoTuningReason.NothingToSearch()
        : Space == 1 ? new NoTuningReason.OnlyOneCutOff(Cuts[0].Limit)
        : new NoTuningReason.AllCutOff(Space, Cuts);

    /// <inheritdoc/>
    public int Count => tunings.Length;

    /// <inheritdoc/>
    public FoundTuning this[int index] => tunings[Check.Index(index, Count)];

    /// <inheritdoc/>
    public IEnumerator<FoundTuning> GetEnumerator() => ((IEnumerable<FoundTuning>)tunings).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}

/// <summary>A limit, and how many tunings it cut off. Equal when both are.</summary>
/// <param name="Limit">The limit.</param>
/// <param name="Count">How many.</param>
[Checked]
public sealed partial record TuningCut(TuningLimit Limit, long Count);

/// <summary>How far a search is.</summary>
/// <param name="Decided">How many tunings are worked out or cut off.</param>
/// <param name="Space">How many there are.</param>
/// <param name="Best">The best one so far; null if there is none yet.</param>
public sealed record TuningProgress(long Decided, long Space, FoundTuning? Best)
{
    /// <summary>The part that is decided, 0 to 1.</summary>
    public double Part => Space == 0 ? 1 : (double)Decided / Space;
}

/// <summary>A tuning that a search found. Equal when question and tuning are.</summary>
[EqualBy(nameof(Query), nameof(Neck))]
public sealed partial class FoundTuning : IEquatable<FoundTuning>
{
    internal FoundTuning(TuningQuery query, ImmutableArray<int> offsets, double score)
    {
        Query = query;
        Offsets = offsets;
        Score = score;
        Neck = query.Base.With(Retune(query.Base.Tuning, offsets));
    }

    /// <summary>What was asked.</summary>
    public TuningQuery Query { get; }

    /// <summary>The neck in this tuning.</summary>
    public Neck Neck { get; }

    /// <summary>The tuning. A string that is retuned is spelled with the fewest accidentals, as its chords have it where they do.</summary>
    public Tuning Tuning => Neck.Tuning;

    /// <summary>By how many semitones each string is retuned, string 1 first; negative is down.</summary>
    public IReadOnlyList<int> Offsets { get; }

    /// <summary>The sum of each chord's weight times the effort of its easiest grip, and the line's likewise. Less is better.</summary>
    public double Score { get; }

    /// <summary>The score divided by the weights of the chords, and of the line if there is one.</summary>
    public double MeanEffort =>
        Score / (Query.Chords.Sum(static chord => chord.Weight) + (Query.Line.Count > 0 ? Query.LineWeight : 0))
            is var mean
        && double.IsFinite(mean)
            ? mean
            : 0;

    /// <summary>The easiest grip of each chord, in the order of the question.</summary>
    public IReadOnlyList<ChordGrip> Grips =>
        field ??= [
            .. Query.Chords.Select(each => GripSearch.Best(Query.Limits.For(each.Chord, Neck, Query.Hand), Hand)!),
        ];

    /// <summary>The easiest way to play the line; null if none was asked for.</summary>
    public FingeredLine? Line =>
        field ??= Query.Line.Count == 0 ? null : LineSearch.Place(Neck, Query.Line, Query.Hand)[0];

    /// <summary>By how many semitones all strings are retuned, taken together.</summary>
    public int RetuneDistance => Offsets.Sum(Math.Abs);

    private HandOnNeck Hand => field ??= new(Neck, Query.Hand);

    /// <summary>The tuning and its score.</summary>
    public override string ToString() => FormattableString.Invariant($"{Tuning}: {Score:F2}");

    private Tuning Retune(Tuning from, ImmutableArray<int> offsets)
    {
        var spelled = Query.Chords.SelectMany(static each => each.Chord.Tones).ToLookup(static tone => tone.PitchClass);
        return new(
            Enumerable
                .Range(1, from.StringCount)
                .Reverse()
                .Select(number =>
                {
                    var each = from[number];
                    if (offsets[number - 1] == 0)
                    {
                        return each;
                    }

                    var sound = each.Open.MidiNumber + offsets[number - 1];
                    var plain = Pitch.FromMidi(sound);
                    var open = spelled[plain.PitchClass].FirstOrDefault(plain.Name) is var name
                        ? Pitch.Nearest(name, sound)
                        : plain;
                    return new TuningString(open, each.Start);
                })
        );
    }
}
