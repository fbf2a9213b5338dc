using TheoryKit.Values;

namespace TheoryKit.Licks.Analysis;

/// <summary>What one or some notes of a line do beside sounding their chord. Equal when kind and notes are.</summary>
[Checked]
public abstract partial record LineFigure
{
    private LineFigure() { }

    /// <summary>Tones that colour their chords, told together.</summary>
    public sealed record Colours : LineFigure
    {
        private readonly Sequence<AnalysedNote> notes;

        internal Colours(IEnumerable<AnalysedNote> notes) => this.notes = notes.ToSequence();

        /// <summary>The notes in order.</summary>
        public IReadOnlyList<AnalysedNote> Notes => notes;
    }

    /// <summary>A note is bent up to its function.</summary>
    /// <param name="Note">The note.</param>
    public sealed partial record Bends(AnalysedNote Note) : LineFigure;

    /// <summary>One note approaches another.</summary>
    /// <param name="Note">The note.</param>
    /// <param name="Target">What it leads to.</param>
    public sealed partial record Approaches(AnalysedNote Note, AnalysedNote Target) : LineFigure;

    /// <summary>Several notes walk by step to another.</summary>
    public sealed record Walks : Run
    {
        internal Walks(IEnumerable<AnalysedNote> notes, AnalysedNote target)
            : base(notes, target) { }
    }

    /// <summary>One or more notes pass by step from one target to another.</summary>
    public sealed record Passes : Run
    {
        internal Passes(IEnumerable<AnalysedNote> notes, AnalysedNote target)
            : base(notes, target) { }
    }

    /// <summary>A note steps away from another and back.</summary>
    /// <param name="Note">The note.</param>
    /// <param name="Target">The other.</param>
    public sealed partial record Neighbours(AnalysedNote Note, AnalysedNote Target) : LineFigure;

    /// <summary>Notes on both sides enclose another.</summary>
    /// <param name="Note">The first of them.</param>
    /// <param name="Target">What they enclose.</param>
    public sealed partial record Encloses(AnalysedNote Note, AnalysedNote Target) : LineFigure;

    /// <summary>A note anticipates the next chord.</summary>
    /// <param name="Note">The note.</param>
    public sealed partial record Anticipates(AnalysedNote Note) : LineFigure;

    /// <summary>A short note slides into another.</summary>
    /// <param name="Note">The note.</param>
    /// <param name="Target">The other.</param>
    public sealed partial record SlidesInto(AnalysedNote Note, AnalysedNote Target) : LineFigure;

    /// <summary>A note outside its chord is left as it is.</summary>
    /// <param name="Note">The note.</param>
    public sealed partial record Leaves(AnalysedNote Note) : LineFigure;

    /// <summary>Notes that lead by step to another.</summary>
    public abstract record Run : LineFigure
    {
        private readonly Sequence<AnalysedNote> notes;

        private protected Run(IEnumerable<AnalysedNote> notes, AnalysedNote target) =>
            (this.notes, Target) = (notes.ToSequence(), target);

        /// <summary>The notes in order.</summary>
        public IReadOnlyList<AnalysedNote> Notes => notes;

        /// <summary>What they lead to.</summary>
        public AnalysedNote Target { get; }
    }
}
