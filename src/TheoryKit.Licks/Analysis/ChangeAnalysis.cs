using Fractions;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Licks.Analysis;

/// <summary>
/// How a line gets over a change of chord: the note that leaves the old one and the note that meets the new one. Of notes struck together
/// the highest counts. Equal when all of that agrees.
/// </summary>
public sealed record ChangeAnalysis
{
    /// <summary>The chord that ends.</summary>
    public required Chord From
    {
        get;
        init => field = Check.NotNull(value, nameof(From));
    }

    /// <summary>The chord that begins.</summary>
    public required Chord To
    {
        get;
        init => field = Check.NotNull(value, nameof(To));
    }

    /// <summary>When it begins, in beats from the beginning of the path.</summary>
    public required Fraction Beat { get; init; }

    /// <summary>Its bar, from 0.</summary>
    public required int Bar { get; init; }

    /// <summary>The last note over the old chord before <see cref="First"/>; null where the line is silent over it.</summary>
    public AnalysedNote? Last { get; init; }

    /// <summary>The first note that belongs to the new chord: the one that anticipates it, else the first struck over it; null where there is none.</summary>
    public AnalysedNote? First { get; init; }

    /// <summary>What <see cref="First"/> does over the new chord; null where there is none.</summary>
    public Degree? Function =>
        First is null ? null
        : First.Anticipates is null ? First.Function
        : First.AnticipatedFunction;

    /// <summary>Semitones up (positive) or down from the last to the first note; null where one is missing.</summary>
    public int? Step => Last is null || First is null ? null : First.Sounding.MidiNumber - Last.Sounding.MidiNumber;

    /// <summary>Whether the new chord is met where it begins or before.</summary>
    public bool IsMet => First is not null && First.Onset <= Beat;

    /// <summary>Whether it is met on one of its guide tones: third or seventh, or what stands for them, the fourth of a sus chord, the sixth of a sixth chord.</summary>
    public bool HitsGuideTone => IsMet && Function is { } function && IsGuideTone(function, To);

    /// <summary>Whether a guide tone of the old chord goes by a half or whole step to a chord tone of the new one, as a seventh falls to a third.</summary>
    public bool Resolves =>
        IsMet
        && Last is { Function: { } leaving }
        && IsGuideTone(leaving, From)
        && Math.Abs(Step!.Value) is 1 or 2
        && Function is { } function
        && ToneRoles.Over(function, To.Formula) is ToneRole.Root or ToneRole.ChordTone;

    /// <summary>Whether the last note leads to the first by the part that it plays.</summary>
    public bool IsLed => First is { } first && Last is { } last && last.Part.Leads() && last.Target == first.Index;

    /// <summary>Both chords, and the functions that the line joins: <c>Gm9 &gt; C13: b7 &gt; 3</c>.</summary>
    public override string ToString() =>
        $"{From} > {To}: {Last?.Function?.ToString() ?? "-"} > {Function?.ToString() ?? "-"}";

    private static bool IsGuideTone(Degree function, Chord chord) =>
        ToneRoles.Over(function, chord.Formula) == ToneRole.ChordTone
        && chord.Formula.At(function.Semitones) is { Number: not 5 };
}
