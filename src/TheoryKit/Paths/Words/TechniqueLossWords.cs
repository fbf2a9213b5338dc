using System.Diagnostics;
using System.Globalization;
using TheoryKit.Values;

namespace TheoryKit.Paths.Words;

/// <summary>The words of a technique that a note could not keep, in two halves: what is lost, and what is there instead.</summary>
public static class TechniqueLossWords
{
    /// <summary>What is lost, and why: <c>the slide: both notes are at one fret now</c>.</summary>
    public static string Lost(this TechniqueLoss loss) =>
        loss switch
        {
            TechniqueLoss.Unjoined at => $"the {at.Technique.Name}: {InWords(at.Why)}",
            TechniqueLoss.OutOfReach at => string.Create(
                CultureInfo.InvariantCulture,
                $"the {at.Technique.Name}: no hand reaches from fret {at.From} to fret {at.To}"
            ),
            TechniqueLoss.Turned at => $"the {at.Technique.Name}: the line {(at.Rises ? "rises" : "falls")} there now",
            TechniqueLoss.OpenBend => "the bend: an open string has no finger that could bend it",
            TechniqueLoss.NoNode => "the natural harmonic: the string has no node there",
            TechniqueLoss.TrillOffString => "the trill: its other note does not lie on the string",
            TechniqueLoss.Unreleased at => $"the release: {InWords(at.Why)}",
            TechniqueLoss.NoFret at => $"the {at.Technique.Name}: {InWords(at.Why)}",
            TechniqueLoss.Unplayable at =>
                $"its technique: {English.List(at.Techniques.Select(static each => each.Name))} can't be played there",
            _ => throw Check.NoKind(loss),
        };

    /// <summary>What is there instead: <c>the note struck</c>.</summary>
    public static string Instead(this TechniqueLoss loss) =>
        loss switch
        {
            TechniqueLoss.Unjoined or TechniqueLoss.OutOfReach => "the note struck",
            TechniqueLoss.Turned at => $"a {at.Instead.Name}",
            TechniqueLoss.OpenBend => "the open string",
            TechniqueLoss.NoNode or TechniqueLoss.Unplayable => "a plain note",
            TechniqueLoss.TrillOffString => "one note held",
            TechniqueLoss.Unreleased at => at.IsPreBent ? "the note struck, bent beforehand" : "the note struck",
            TechniqueLoss.NoFret => "the note without it",
            _ => throw Check.NoKind(loss),
        };

    private static string InWords(JoinLack why) =>
        why switch
        {
            JoinLack.HasEnded => "the note before has ended",
            JoinLack.OtherString => "the note before is on another string",
            JoinLack.SameFret => "both notes are at one fret now",
            JoinLack.OpenString => "one of the notes is an open string now",
            JoinLack.NoNote => "it comes from no note",
            _ => throw new UnreachableException(),
        };

    private static string InWords(ReleaseLack why) =>
        why switch
        {
            ReleaseLack.NothingBent => "no bent note sounds there up to it",
            ReleaseLack.NotBentFarther => "the note before is not bent farther",
            ReleaseLack.ComesFirst => "backwards it comes first",
            _ => throw new UnreachableException(),
        };

    private static string InWords(FretLack why) =>
        why switch
        {
            FretLack.Open => "the string is open now",
            FretLack.NoneBelow => "there is no fret below",
            FretLack.NoneAbove => "there is no fret above, or the string is open",
            _ => throw new UnreachableException(),
        };
}
