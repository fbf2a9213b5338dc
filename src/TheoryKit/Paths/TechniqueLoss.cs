using TheoryKit.Values;

namespace TheoryKit.Paths;

/// <summary>
/// A technique that a note could not keep where it is now, and what is there instead. A further kind is a further record in this file and
/// its words in <c>Paths/Words</c>. Equal when all of that agrees.
/// </summary>
[Checked]
public abstract partial record TechniqueLoss
{
    private TechniqueLoss() { }

    /// <summary>A hammer-on, pull-off or slide has no note to come from: the note is struck.</summary>
    /// <param name="Technique">The technique.</param>
    /// <param name="Why">Why.</param>
    public sealed partial record Unjoined(Technique Technique, JoinLack Why) : TechniqueLoss;

    /// <summary>A hammer-on or pull-off that no hand reaches: the note is struck.</summary>
    /// <param name="Technique">The technique.</param>
    /// <param name="From">The fret of the note before.</param>
    /// <param name="To">The fret of the note.</param>
    public sealed partial record OutOfReach(Technique Technique, int From, int To) : TechniqueLoss;

    /// <summary>A hammer-on or pull-off where the line goes the other way now, so that one becomes the other.</summary>
    /// <param name="Technique">The technique.</param>
    /// <param name="Instead">The other one.</param>
    /// <param name="Rises">Whether the line rises there now.</param>
    public sealed partial record Turned(Technique Technique, Technique Instead, bool Rises) : TechniqueLoss;

    /// <summary>A bend on what is an open string now.</summary>
    public sealed record OpenBend : TechniqueLoss;

    /// <summary>A natural harmonic where the string has no node: a plain note.</summary>
    public sealed record NoNode : TechniqueLoss;

    /// <summary>A trill whose other note does not lie on the string: one note held.</summary>
    public sealed record TrillOffString : TechniqueLoss;

    /// <summary>A release that nothing leads to: the note is struck.</summary>
    /// <param name="Why">Why.</param>
    /// <param name="IsPreBent">Whether the note is bent beforehand instead.</param>
    public sealed partial record Unreleased(ReleaseLack Why, bool IsPreBent) : TechniqueLoss;

    /// <summary>A technique that needs another fret: the note is played without it.</summary>
    /// <param name="Technique">The technique.</param>
    /// <param name="Why">What the string lacks there.</param>
    public sealed partial record NoFret(Technique Technique, FretLack Why) : TechniqueLoss;

    /// <summary>Techniques that can't be played there as they stand: a plain note.</summary>
    public sealed record Unplayable : TechniqueLoss
    {
        private readonly Sequence<Technique> techniques;

        /// <summary>Techniques that can't be played.</summary>
        public Unplayable(IEnumerable<Technique> techniques) => this.techniques = Check.Items(techniques);

        /// <summary>The techniques that are left out.</summary>
        public IReadOnlyList<Technique> Techniques => techniques;
    }
}

/// <summary>Why a hammer-on, pull-off or slide has no note to come from.</summary>
public enum JoinLack
{
    /// <summary>There is a rest between the two notes.</summary>
    HasEnded,

    /// <summary>The note before is on another string.</summary>
    OtherString,

    /// <summary>Both notes are at one fret.</summary>
    SameFret,

    /// <summary>One of the notes is an open string.</summary>
    OpenString,

    /// <summary>Backwards there is no note before it.</summary>
    NoNote,
}

/// <summary>Why a release has nothing to let go.</summary>
public enum ReleaseLack
{
    /// <summary>No bent note sounds there up to it.</summary>
    NothingBent,

    /// <summary>The note before is not bent farther.</summary>
    NotBentFarther,

    /// <summary>Backwards it comes first.</summary>
    ComesFirst,
}

/// <summary>What a string lacks for a technique.</summary>
public enum FretLack
{
    /// <summary>It is open.</summary>
    Open,

    /// <summary>There is no fret below.</summary>
    NoneBelow,

    /// <summary>There is no fret above, or it is open.</summary>
    NoneAbove,
}
