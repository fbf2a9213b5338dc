using TheoryKit.Fingering.Hands;
using TheoryKit.Paths;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Licks.Moves;

/// <summary>
/// What a note, or a lick as a whole, could not keep when it was moved, and what was done instead. Equal when kind and figures are.
/// </summary>
[Checked]
public abstract partial record MoveLoss
{
    private MoveLoss() { }

    /// <summary>A technique.</summary>
    /// <param name="Loss">Which, and what is there instead.</param>
    public sealed partial record OfTechnique(TechniqueLoss Loss) : MoveLoss;

    /// <summary>A place in the zone.</summary>
    /// <param name="Zone">The frets of the zone.</param>
    /// <param name="Why">Why it has none there.</param>
    /// <param name="Now">Where it is instead.</param>
    /// <param name="Frets">How many frets outside that is.</param>
    /// <param name="IsOpen">Whether that is an open string.</param>
    public sealed partial record OutsideZone(Window Zone, PlaceLack Why, Position Now, int Frets, bool IsOpen)
        : MoveLoss;

    /// <summary>A place on the strings asked for.</summary>
    public sealed record OffStrings : MoveLoss
    {
        private readonly Sequence<int> strings;

        /// <summary>A place on the strings asked for.</summary>
        /// <param name="strings">The strings asked for.</param>
        /// <param name="why">Why it has none there.</param>
        /// <param name="now">The string that it is on instead.</param>
        public OffStrings(IEnumerable<int> strings, PlaceLack why, int now) =>
            (this.strings, Why, Now) = (Check.Items(strings).Order().ToSequence(), why, now);

        /// <summary>The strings asked for, from the lowest number.</summary>
        public IReadOnlyList<int> Strings => strings;

        /// <summary>Why it has no place on them.</summary>
        public PlaceLack Why { get; }

        /// <summary>The string that it is on instead.</summary>
        public int Now { get; }
    }

    /// <summary>A place on the string that the note was on: all notes are placed anew.</summary>
    /// <param name="String">The string.</param>
    /// <param name="Why">What the string lacks.</param>
    /// <param name="Sound">The pitch that it should have there.</param>
    /// <param name="Now">Where it is instead.</param>
    public sealed partial record OffItsString(int String, StringLack Why, Pitch Sound, Position Now) : MoveLoss;

    /// <summary>The strings of the lick: all notes are placed anew.</summary>
    /// <param name="Why">Why.</param>
    public sealed partial record OffItsStrings(StringsLack Why) : MoveLoss;

    /// <summary>The octave of the lick.</summary>
    /// <param name="Octaves">How many higher it is; lower where negative.</param>
    /// <param name="Why">Why it could not stay.</param>
    public sealed partial record OctaveOfAll(int Octaves, OctaveLack Why) : MoveLoss;

    /// <summary>The octave of a note, that does not lie on the neck.</summary>
    /// <param name="Before">The pitch that it should have.</param>
    /// <param name="Now">The pitch that it has.</param>
    /// <param name="Octaves">How many octaves higher that is; lower where negative.</param>
    public sealed partial record OffNeck(Pitch Before, Pitch Now, int Octaves) : MoveLoss;

    /// <summary>The octave of a note, that has no place among those that sound with it.</summary>
    /// <param name="Why">Why.</param>
    /// <param name="Now">The pitch that it has.</param>
    /// <param name="Octaves">How many octaves higher that is; lower where negative.</param>
    public sealed partial record Crowded(CrowdLack Why, Pitch Now, int Octaves) : MoveLoss;

    /// <summary>A note, that has no place among those that sound with it and is left out.</summary>
    /// <param name="Why">Why.</param>
    public sealed partial record LeftOut(CrowdLack Why) : MoveLoss;

    /// <summary>The positions of the lick, that the hand can't play one after the other: others are found.</summary>
    public sealed record PositionsOfHand : MoveLoss;

    /// <summary>The fingers of the lick, because the hand asked for can hold it nowhere.</summary>
    public sealed record FingersOfHand : MoveLoss;

    /// <summary>The fingers of the lick, because the hand of the move does not reach all of it.</summary>
    public sealed record FingersOfMove : MoveLoss;

    /// <summary>A bend, that no fret of the neck sounds the beginning of.</summary>
    /// <param name="Now">The pitch that is struck instead.</param>
    public sealed partial record Bend(Pitch Now) : MoveLoss;

    /// <summary>A natural harmonic, that no open string sounds at a node.</summary>
    /// <param name="Sound">The pitch that it should have.</param>
    /// <param name="IsArtificial">Whether it is an artificial harmonic now; else a plain note.</param>
    public sealed partial record Harmonic(Pitch Sound, bool IsArtificial) : MoveLoss;

    /// <summary>The pitch that a release comes down to, because the fret of its bend has another function now.</summary>
    /// <param name="Left">What is left of the bend instead, in cents.</param>
    public sealed partial record ReleaseEnd(int Left) : MoveLoss;

    /// <summary>The pitch that a bend begins with, because the bend would be too wide or go down.</summary>
    /// <param name="From">The pitch that it should begin with.</param>
    /// <param name="To">The pitch that it leads to.</param>
    /// <param name="Cents">How far that would be, in cents.</param>
    /// <param name="Now">How far it is bent instead, from another fret, in cents.</param>
    public sealed partial record BendStart(Pitch From, Pitch To, int Cents, int Now) : MoveLoss;

    /// <summary>The other note of a trill, because it would be the same or on the other side: one as far away as before.</summary>
    public sealed record TrillNote : MoveLoss;
}

/// <summary>Why a note has no place among those that a move asks for. Equal when kind and figures are.</summary>
[Checked]
public abstract partial record PlaceLack
{
    private PlaceLack() { }

    /// <summary>It lies on none of them.</summary>
    public sealed record NotThere : PlaceLack;

    /// <summary>It is joined to the note before, on one string.</summary>
    /// <param name="Technique">How.</param>
    /// <param name="Pitch">The pitch of the note before.</param>
    public sealed partial record JoinedTo(Technique Technique, Pitch Pitch) : PlaceLack;

    /// <summary>The note after is joined to it, on one string.</summary>
    /// <param name="Technique">How.</param>
    /// <param name="Pitch">The pitch of the note after.</param>
    public sealed partial record JoinedBy(Technique Technique, Pitch Pitch) : PlaceLack;

    /// <summary>It is not free beside what it is joined to or sounds with.</summary>
    public sealed record NotFree : PlaceLack;
}

/// <summary>What a string lacks for a note to stay on it.</summary>
public enum StringLack
{
    /// <summary>A node that sounds the harmonic.</summary>
    Node,

    /// <summary>So low a note.</summary>
    Low,

    /// <summary>So high a note.</summary>
    High,

    /// <summary>A finger: the note is bent, and would be the open string.</summary>
    Finger,

    /// <summary>A fret for the other note of the trill.</summary>
    TrillFret,
}

/// <summary>Why a lick could not stay on its strings.</summary>
public enum StringsLack
{
    /// <summary>One of its notes does not lie on its own.</summary>
    Note,

    /// <summary>The notes would lie too far apart.</summary>
    Reach,
}

/// <summary>Why a lick could not stay in its octave.</summary>
public enum OctaveLack
{
    /// <summary>It would leave the zone by more notes.</summary>
    Zone,

    /// <summary>More of its notes would lie beyond the neck.</summary>
    Neck,
}

/// <summary>Why a note has no place among those that sound with it.</summary>
public enum CrowdLack
{
    /// <summary>No hand reaches all that is struck with it.</summary>
    Reach,

    /// <summary>They would not each have a string.</summary>
    Strings,
}
