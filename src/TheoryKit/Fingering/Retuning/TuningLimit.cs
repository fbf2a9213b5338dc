using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Strings;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Retuning;

/// <summary>What keeps a tuning from being an answer of <see cref="TuningSearch"/>. Equal when kind and figures are.</summary>
[Checked]
public abstract partial record TuningLimit
{
    private TuningLimit() { }

    /// <summary>A string would have a pitch that none has.</summary>
    public sealed record BeyondPitches : TuningLimit;

    /// <summary>A string would be too slack.</summary>
    /// <param name="Lightest">The least tension.</param>
    public sealed partial record TooSlack(Tension Lightest) : TuningLimit;

    /// <summary>A string would be too tight.</summary>
    /// <param name="Heaviest">The most tension.</param>
    public sealed partial record TooTight(Tension Heaviest) : TuningLimit;

    /// <summary>A string would be too near to breaking.</summary>
    /// <param name="MostOfBreaking">The greatest part of the breaking stress, above 0 and at most 1.</param>
    public sealed partial record NearBreaking(double MostOfBreaking) : TuningLimit;

    /// <summary>Something that a tuning must have is missing.</summary>
    /// <param name="Requirement">What.</param>
    public sealed partial record Lacks(TuningRequirement Requirement) : TuningLimit;

    /// <summary>A note of the line lies on no string.</summary>
    public sealed record NoteNowhere : TuningLimit;

    /// <summary>A chord has no grip.</summary>
    /// <param name="Chord">The chord.</param>
    public sealed partial record NoGrip(Chord Chord) : TuningLimit;

    /// <summary>The hand can't play the line.</summary>
    public sealed record NoFingering : TuningLimit;

    /// <summary>It takes more effort than the best ones and the next one.</summary>
    /// <param name="Best">How many were asked for.</param>
    public sealed partial record Outdone(int Best) : TuningLimit;
}
