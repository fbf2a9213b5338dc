using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Licks.Moves;

/// <summary>Why a note became what it is when its lick was refitted. Equal when kind and figures are.</summary>
[Checked]
public abstract partial record RefitReason
{
    private RefitReason(bool isException) => IsException = isException;

    /// <summary>Whether the note could not simply keep its function.</summary>
    public bool IsException { get; }

    /// <summary>There is no chord to do anything over: the pitch stays.</summary>
    /// <param name="Before">Whether there was a chord before.</param>
    /// <param name="Now">Whether there is one now.</param>
    public sealed partial record NoChord(bool Before, bool Now) : RefitReason(Before != Now);

    /// <summary>A tone of the chord becomes the tone of the new one with its number.</summary>
    /// <param name="From">What it was.</param>
    /// <param name="Over">The chord that it was of.</param>
    /// <param name="To">What it is.</param>
    /// <param name="Chord">The new chord.</param>
    /// <param name="IsEarly">Whether the note anticipates the chord.</param>
    public sealed partial record ToneOfChord(Degree From, Chord Over, Degree To, Chord Chord, bool IsEarly)
        : RefitReason(false);

    /// <summary>One chord has several tones of its number: the nearest.</summary>
    /// <param name="From">What it was.</param>
    /// <param name="Over">The chord that it was of.</param>
    /// <param name="To">What it is.</param>
    /// <param name="Chord">The new chord.</param>
    /// <param name="IsEarly">Whether the note anticipates the chord.</param>
    public sealed partial record OneOfSeveral(Degree From, Chord Over, Degree To, Chord Chord, bool IsEarly)
        : RefitReason(true);

    /// <summary>The new chord has no third: what is suspended stands in its place.</summary>
    /// <param name="To">The suspended tone.</param>
    /// <param name="Chord">The new chord.</param>
    /// <param name="IsEarly">Whether the note anticipates the chord.</param>
    public sealed partial record Suspended(Degree To, Chord Chord, bool IsEarly) : RefitReason(true);

    /// <summary>What was suspended resolves to the third.</summary>
    /// <param name="From">What it was.</param>
    /// <param name="To">The third.</param>
    /// <param name="Chord">The new chord.</param>
    /// <param name="IsEarly">Whether the note anticipates the chord.</param>
    public sealed partial record Resolved(Degree From, Degree To, Chord Chord, bool IsEarly) : RefitReason(true);

    /// <summary>The new chord has no such number, but its scale has.</summary>
    /// <param name="Number">The number.</param>
    /// <param name="To">What the scale has.</param>
    /// <param name="Chord">The new chord.</param>
    /// <param name="IsEarly">Whether the note anticipates the chord.</param>
    public sealed partial record ToneOfScale(int Number, Degree To, Chord Chord, bool IsEarly) : RefitReason(true);

    /// <summary>Neither the new chord nor its scale has such a number: the nearest colour or fifth.</summary>
    /// <param name="From">What it was.</param>
    /// <param name="To">What it is.</param>
    /// <param name="Chord">The new chord.</param>
    /// <param name="IsEarly">Whether the note anticipates the chord.</param>
    public sealed partial record NearestThere(Degree From, Degree To, Chord Chord, bool IsEarly) : RefitReason(true);

    /// <summary>Neither the new chord nor its scale has such a number, nor anything near: as far above the root as it was.</summary>
    /// <param name="From">What it was.</param>
    /// <param name="Chord">The new chord.</param>
    public sealed partial record NothingThere(Degree From, Chord Chord) : RefitReason(true);

    /// <summary>The bass of a chord becomes that of the new one.</summary>
    /// <param name="Over">The chord before.</param>
    /// <param name="Chord">The new chord.</param>
    public sealed partial record Bass(Chord Over, Chord Chord) : RefitReason(false);

    /// <summary>A colour tone is a tone of the new chord.</summary>
    /// <param name="From">What it was.</param>
    /// <param name="Over">The chord before.</param>
    /// <param name="To">What it is.</param>
    /// <param name="Chord">The new chord.</param>
    public sealed partial record ColourInChord(Degree From, Chord Over, Degree To, Chord Chord) : RefitReason(false);

    /// <summary>The new chord has more than one tone of a colour's number: the nearest.</summary>
    /// <param name="From">What it was.</param>
    /// <param name="To">What it is.</param>
    /// <param name="Chord">The new chord.</param>
    public sealed partial record ColourOfSeveral(Degree From, Degree To, Chord Chord) : RefitReason(true);

    /// <summary>A colour tone follows the scale of the new chord.</summary>
    /// <param name="From">What it was.</param>
    /// <param name="Over">The chord before.</param>
    /// <param name="To">What it is.</param>
    /// <param name="Chord">The new chord.</param>
    public sealed partial record Colour(Degree From, Chord Over, Degree To, Chord Chord) : RefitReason(false);

    /// <summary>A tone follows the scale of the new chord and does not colour it.</summary>
    /// <param name="From">What it was.</param>
    /// <param name="Over">The chord before.</param>
    /// <param name="To">What it is.</param>
    /// <param name="Chord">The new chord.</param>
    /// <param name="DidNotColour">Whether it was no colour tone before either.</param>
    public sealed partial record NoColour(Degree From, Chord Over, Degree To, Chord Chord, bool DidNotColour)
        : RefitReason(!DidNotColour);

    /// <summary>It stays as far from the note that it leads to as it was.</summary>
    /// <param name="Semitones">How far above that note it is; below where negative.</param>
    /// <param name="Target">The name of that note now.</param>
    public sealed partial record Leading(int Semitones, NoteName Target) : RefitReason(false);

    /// <summary>It is of neither chord nor scale and leads to no note near: as far above the root as it was.</summary>
    public sealed partial record Unled() : RefitReason(true);
}
