using System.Collections.Immutable;
using TheoryKit.Theory;

namespace TheoryKit.Paths;

/// <summary>A bar of a lick: its chords, its notes and what they do. Equal when all of that agrees.</summary>
public sealed class BarAnalysis : IEquatable<BarAnalysis>
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

    /// <summary>What a teacher would say of it, sentence by sentence, signs plain; see <see cref="Say"/>.</summary>
    public IReadOnlyList<string> Words => Say();

    /// <summary>What a teacher would say of it, sentence by sentence.</summary>
    /// <param name="format">"G" (or null) for plain signs, "P" for printed ones.</param>
    /// <param name="naming">A <see cref="NoteNaming"/>; null for English.</param>
    /// <exception cref="FormatException">Another format.</exception>
    public IReadOnlyList<string> Say(string? format = null, IFormatProvider? naming = null) =>
        new LickWords(lick, format, naming).Of(this);

    /// <inheritdoc/>
    public bool Equals(BarAnalysis? other) =>
        other is not null
        && Bar == other.Bar
        && Chords.SequenceEqual(other.Chords)
        && notes.AsSpan().SequenceEqual(other.notes.AsSpan());

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as BarAnalysis);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Bar, notes.Length);

    /// <summary>What <see cref="Words"/> say, as one text.</summary>
    public override string ToString() => string.Join(' ', Words);
}
