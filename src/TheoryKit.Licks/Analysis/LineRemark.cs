using TheoryKit.Paths;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Values;

namespace TheoryKit.Licks.Analysis;

/// <summary>
/// Something that a teacher would say of a line or of one of its bars: what <see cref="LickAnalysis.Remarks"/> and
/// <see cref="BarAnalysis.Remarks"/> pick from the analysis. Equal when kind, place and figures are.
/// </summary>
[Checked]
public abstract partial record LineRemark
{
    private LineRemark() { }

    /// <summary>There are no notes to read.</summary>
    public sealed record Nothing : LineRemark;

    /// <summary>How many notes there are, how long, how high and how dense.</summary>
    /// <param name="Line">The notes.</param>
    /// <param name="Bars">How many bars.</param>
    /// <param name="Time">The time.</param>
    public sealed partial record Extent(LineSummary Line, int Bars, TimeSignature Time) : LineRemark;

    /// <summary>Which parts the notes play.</summary>
    /// <param name="Line">The notes.</param>
    public sealed partial record Parts(LineSummary Line) : LineRemark;

    /// <summary>Which functions fall on strong beats in the whole line.</summary>
    /// <param name="Line">The notes.</param>
    public sealed partial record StrongBeats(LineSummary Line) : LineRemark;

    /// <summary>How the only change of the line is met.</summary>
    /// <param name="Change">The change.</param>
    public sealed partial record OneChange(ChangeAnalysis Change) : LineRemark;

    /// <summary>How many of several changes are met on a guide tone.</summary>
    /// <param name="Hits">How many are.</param>
    /// <param name="Changes">How many are met at all; at least two.</param>
    public sealed partial record GuideTones(int Hits, int Changes) : LineRemark;

    /// <summary>A guide tone goes by step into the next chord.</summary>
    /// <param name="From">The chord that ends.</param>
    /// <param name="Leaving">Its guide tone.</param>
    /// <param name="To">The chord that begins.</param>
    /// <param name="Function">The tone of it that is met.</param>
    /// <param name="Step">Semitones up, or down where negative.</param>
    public sealed partial record Resolution(Chord From, Degree Leaving, Chord To, Degree Function, int Step)
        : LineRemark;

    /// <summary>Which techniques it is played with.</summary>
    public sealed record Techniques : LineRemark
    {
        private readonly Sequence<TechniqueCount> counts;

        internal Techniques(IEnumerable<TechniqueCount> counts) => this.counts = counts.ToSequence();

        /// <summary>The techniques used.</summary>
        public IReadOnlyList<TechniqueCount> Counts => counts;
    }

    /// <summary>A bar rests.</summary>
    /// <param name="Bar">The bar, from 1.</param>
    public sealed partial record Rests(int Bar) : LineRemark;

    /// <summary>A bar has dead notes only.</summary>
    /// <param name="Bar">The bar, from 1.</param>
    public sealed partial record DeadOnly(int Bar) : LineRemark;

    /// <summary>A bar has no note of its own but holds one from before.</summary>
    /// <param name="Bar">The bar, from 1.</param>
    /// <param name="Note">The note.</param>
    /// <param name="Over">The first chord of the bar; null for none.</param>
    public sealed partial record Holds(int Bar, AnalysedNote Note, Chord? Over) : LineRemark;

    /// <summary>How a bar begins.</summary>
    /// <param name="Bar">The bar, from 1.</param>
    /// <param name="How">How.</param>
    /// <param name="Note">Its first note, of notes struck together the highest.</param>
    public sealed partial record Opening(int Bar, BarOpening How, AnalysedNote Note) : LineRemark
    {
        /// <summary>The change that the note meets; null for none.</summary>
        public ChangeAnalysis? Met { get; init; }

        /// <summary>The note that is held over the bar line, where it is held; else null.</summary>
        public AnalysedNote? Held { get; init; }

        /// <summary>The bend that makes the note, where the bar has more notes; else null.</summary>
        public Technique? Bend { get; init; }
    }

    /// <summary>What the notes of a bar do beside its chord tones, figure by figure.</summary>
    public sealed record Figures : LineRemark
    {
        private readonly Sequence<LineFigure> all;

        internal Figures(IEnumerable<LineFigure> all) => this.all = all.ToSequence();

        /// <summary>The figures in order; alike ones each time.</summary>
        public IReadOnlyList<LineFigure> All => all;
    }

    /// <summary>All notes of a bar, more than two, are chord tones.</summary>
    public sealed record ChordTonesOnly : OfNotes
    {
        internal ChordTonesOnly(IEnumerable<AnalysedNote> notes)
            : base(notes) { }
    }

    /// <summary>How a change within a bar is met.</summary>
    /// <param name="Change">The change.</param>
    public sealed partial record InnerChange(ChangeAnalysis Change) : LineRemark;

    /// <summary>The notes on the strong beats of a bar.</summary>
    public sealed record StrongNotes : OfNotes
    {
        internal StrongNotes(IEnumerable<AnalysedNote> notes)
            : base(notes) { }
    }

    /// <summary>The only note of a bar is made by the hand that frets.</summary>
    /// <param name="Note">The note.</param>
    /// <param name="How">The technique.</param>
    public sealed partial record Made(AnalysedNote Note, Technique How) : LineRemark;

    /// <summary>The note that a bar ends on.</summary>
    /// <param name="Note">The note, of notes struck together the highest.</param>
    /// <param name="How">The technique by which the hand that frets makes it; null for none.</param>
    public sealed partial record Ends(AnalysedNote Note, Technique? How) : LineRemark;

    /// <summary>A remark on some notes.</summary>
    public abstract record OfNotes : LineRemark
    {
        private readonly Sequence<AnalysedNote> notes;

        private protected OfNotes(IEnumerable<AnalysedNote> notes) => this.notes = notes.ToSequence();

        /// <summary>The notes in order.</summary>
        public IReadOnlyList<AnalysedNote> Notes => notes;
    }
}

/// <summary>How a bar begins.</summary>
public enum BarOpening
{
    /// <summary>Over no chord.</summary>
    NoChord,

    /// <summary>On its first beat, on a chord or colour tone.</summary>
    Lands,

    /// <summary>On its first beat, on another note.</summary>
    Starts,

    /// <summary>On its first beat with a note that slides to the one that counts.</summary>
    SlidesInto,

    /// <summary>With a note held from before that anticipated its chord; the next one is struck later.</summary>
    GoesOn,

    /// <summary>With a rest, or a note held that is none of its own.</summary>
    ComesIn,
}

/// <summary>How many notes have a technique.</summary>
/// <param name="Technique">The technique.</param>
/// <param name="Count">How many notes; at least one.</param>
public readonly record struct TechniqueCount(Technique Technique, int Count);
