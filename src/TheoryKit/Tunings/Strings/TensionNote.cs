using TheoryKit.Values;

namespace TheoryKit.Tunings.Strings;

/// <summary>What the figures of a <see cref="TensionReport"/> can't tell. Equal when kind and strings are.</summary>
[Checked]
public abstract partial record TensionNote
{
    private TensionNote() { }

    /// <summary>Of some wound string the part of the breaking stress is an estimate.</summary>
    public sealed record Estimated : TensionNote;

    /// <summary>Of some strings the part of the breaking stress isn't known.</summary>
    public sealed record NotKnown : TensionNote
    {
        private readonly Sequence<int> strings;

        internal NotKnown(IEnumerable<int> strings, int of) => (this.strings, Of) = (strings.ToSequence(), of);

        /// <summary>Which, the highest number first.</summary>
        public IReadOnlyList<int> Strings => strings;

        /// <summary>How many strings there are.</summary>
        public int Of { get; }
    }
}
