using Fractions;
using TheoryKit.Paths;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Licks.Search;

/// <summary>In which way a lick answers one thing that was asked. Equal when kind and figures are.</summary>
[Checked]
public abstract partial record FoundReason
{
    private FoundReason() { }

    /// <summary>It has the functions asked for.</summary>
    /// <param name="Asked">What was asked.</param>
    /// <param name="Bar">The bar where they first begin, from 1.</param>
    /// <param name="Beat">The beat in that bar, from 1.</param>
    /// <param name="Times">How often they begin in all.</param>
    public sealed partial record Functions(LickCriterion.Function Asked, int Bar, Fraction Beat, int Times)
        : FoundReason;

    /// <summary>A function falls on a strong beat.</summary>
    /// <param name="Degree">The function.</param>
    /// <param name="Bar">The first bar where it does, from 1.</param>
    /// <param name="Beat">The beat in that bar, from 1.</param>
    public sealed partial record StrongBeat(Degree Degree, int Bar, Fraction Beat) : FoundReason;

    /// <summary>A technique is used.</summary>
    /// <param name="Technique">The technique.</param>
    /// <param name="Notes">On how many notes.</param>
    /// <param name="Bar">The bar of the first of these, from 1.</param>
    public sealed partial record PlayedWith(Technique Technique, int Notes, int Bar) : FoundReason;

    /// <summary>It is played over a chord.</summary>
    /// <param name="Chord">The chord.</param>
    public sealed partial record OverChord(Chord Chord) : FoundReason;

    /// <summary>It has the shape asked for.</summary>
    /// <param name="Asked">What was asked.</param>
    public sealed partial record Shaped(LickCriterion.Shaped Asked) : FoundReason;

    /// <summary>It has a tag.</summary>
    /// <param name="Tag">The tag as the lick has it.</param>
    public sealed partial record Tagged(string Tag) : FoundReason;

    /// <summary>It belongs to a tune.</summary>
    /// <param name="Tune">The tune as the lick names it.</param>
    public sealed partial record OfTune(string Tune) : FoundReason;

    /// <summary>A number lies within the range asked for.</summary>
    /// <param name="Measure">What is counted.</param>
    /// <param name="Number">The number.</param>
    public sealed partial record Counted(LickCriterion.Countable Measure, double Number) : FoundReason;

    /// <summary>It says a text.</summary>
    /// <param name="Text">The text as it was asked for.</param>
    /// <param name="Place">Where.</param>
    /// <param name="Header">The name of the header where it is in one; else null.</param>
    public sealed partial record Saying(string Text, TextPlace Place, string? Header) : FoundReason;

    /// <summary>It is alike to the lick or line asked for.</summary>
    /// <param name="Value">How alike, 0 to 1; see <see cref="Likeness"/>.</param>
    public sealed partial record Alike(double Value) : FoundReason;

    /// <summary>It is the lick asked for.</summary>
    public sealed record Itself : FoundReason;

    /// <summary>It is in a tuning.</summary>
    /// <param name="Tuning">The tuning.</param>
    public sealed partial record InTuning(Tuning Tuning) : FoundReason;

    /// <summary>It is on a neck.</summary>
    /// <param name="Neck">The neck.</param>
    public sealed partial record OnNeck(Neck Neck) : FoundReason;

    /// <summary>It has not what it must not have.</summary>
    /// <param name="Asked">What it must not have.</param>
    public sealed partial record Not(LickCriterion Asked) : FoundReason;
}

/// <summary>A place in what a lick says of itself.</summary>
public enum TextPlace
{
    /// <summary>Its name.</summary>
    Name,

    /// <summary>Its tune.</summary>
    Tune,

    /// <summary>One of its tags.</summary>
    Tags,

    /// <summary>One of its other headers.</summary>
    Header,

    /// <summary>Its words.</summary>
    Words,
}
