using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Theory.Chords;

/// <summary>Something that speaks for or against a reading of notes as a chord. Equal when kind and figures are.</summary>
[Checked]
public abstract partial record ReadingReason
{
    private ReadingReason() { }

    /// <summary>The root is in the bass.</summary>
    public sealed record RootInBass : ReadingReason;

    /// <summary>Another tone of the chord is in the bass.</summary>
    /// <param name="Function">Which.</param>
    public sealed partial record ToneInBass(Degree Function) : ReadingReason;

    /// <summary>The bass is no tone of the chord.</summary>
    /// <param name="Bass">The bass.</param>
    public sealed partial record ForeignBass(NoteName Bass) : ReadingReason;

    /// <summary>Every tone of the chord sounds.</summary>
    /// <param name="Count">How many.</param>
    public sealed partial record AllTones(int Count) : ReadingReason;

    /// <summary>Some tones of the chord sound.</summary>
    /// <param name="Count">How many.</param>
    /// <param name="HasRoot">Whether the root is among them.</param>
    public sealed partial record SomeTones(int Count, bool HasRoot) : ReadingReason;

    /// <summary>It is a power chord.</summary>
    public sealed record PowerChord : ReadingReason;

    /// <summary>It has all alterations at once.</summary>
    public sealed record AllAlterations : ReadingReason;

    /// <summary>A tone is altered.</summary>
    /// <param name="Tone">To what.</param>
    public sealed partial record Altered(Degree Tone) : ReadingReason;

    /// <summary>A tone is added.</summary>
    /// <param name="Tone">Which.</param>
    public sealed partial record Added(Degree Tone) : ReadingReason;

    /// <summary>It has the major seventh.</summary>
    public sealed record MajorSeventh : ReadingReason;

    /// <summary>A tone is left out.</summary>
    /// <param name="Tone">The root, the third or the fifth.</param>
    public sealed partial record Omitted(Degree Tone) : ReadingReason;

    /// <summary>It has a change that players rarely mean.</summary>
    public sealed record RareChange : ReadingReason;

    /// <summary>A note is respelled.</summary>
    /// <param name="From">As it was given.</param>
    /// <param name="To">As the chord has it.</param>
    public sealed partial record Respelled(NoteName From, NoteName To) : ReadingReason;

    /// <summary>It is a single note.</summary>
    public sealed record SingleNote : ReadingReason;

    /// <summary>It has no usual name: its tones are counted from the bass.</summary>
    public sealed record NoUsualName : ReadingReason;
}
