using TheoryKit.Values;

namespace TheoryKit.Fingering.Retuning;

/// <summary>Why a search finds no tuning. Equal when kind and figures are.</summary>
[Checked]
public abstract partial record NoTuningReason
{
    private NoTuningReason() { }

    /// <summary>There is none to go through.</summary>
    public sealed record NothingToSearch : NoTuningReason;

    /// <summary>The only one is cut off.</summary>
    /// <param name="Limit">What cuts it off.</param>
    public sealed partial record OnlyOneCutOff(TuningLimit Limit) : NoTuningReason;

    /// <summary>All of them are cut off.</summary>
    public sealed record AllCutOff : NoTuningReason
    {
        private readonly Sequence<TuningCut> cuts;

        internal AllCutOff(long space, IEnumerable<TuningCut> cuts) =>
            (Space, this.cuts) = (space, cuts.OrderByDescending(static cut => cut.Count).ToSequence());

        /// <summary>How many there are.</summary>
        public long Space { get; }

        /// <summary>What cut off how many, the most first.</summary>
        public IReadOnlyList<TuningCut> Cuts => cuts;
    }
}
