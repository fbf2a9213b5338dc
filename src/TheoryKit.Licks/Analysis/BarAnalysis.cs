using System.Collections.Immutable;
using TheoryKit.Theory.Chords;
using TheoryKit.Values;

namespace TheoryKit.Licks.Analysis;

/// <summary>A bar of a lick: its chords, its notes and what they do. Equal when all of that agrees.</summary>
[EqualBy(nameof(Bar), nameof(Chords), nameof(notes))]
public sealed partial class BarAnalysis : IEquatable<BarAnalysis>
{
    private readonly ImmutableArray<AnalysedNote> notes;
    private readonly LickAnalysis lick;

    internal BarAnalysis(LickAnalysis lick, int bar, IEnumerable<AnalysedNote> notes, IEnumerable<Chord> chords)
    {
        this.lick = lick;
        Bar = bar;
        this.notes = [.. notes];
        Chords = [.. chords];
        Summary = new(this.notes, lick.Path.Time.Beats);
    }

    /// <summary>Which bar, from 0.</summary>
    public int Bar { get; }

    /// <summary>The chords that sound in it, in order; none where no chord does.</summary>
    public IReadOnlyList<Chord> Chords { get; }

    /// <summary>The notes that start in it.</summary>
    public IReadOnlyList<AnalysedNote> Notes => notes;

    /// <summary>What these come to.</summary>
    public LineSummary Summary { get; }

    /// <summary>What a teacher would say of it. Picked anew each time.</summary>
    public IReadOnlyList<LineRemark> Remarks => LineRemarks.Of(lick, this);

    /// <summary>The bar, from 1, and its notes.</summary>
    public override string ToString() => $"{Bar + 1}: {string.Join(", ", notes)}";
}
