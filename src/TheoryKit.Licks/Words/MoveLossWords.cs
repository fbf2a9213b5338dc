using System.Diagnostics;
using TheoryKit.Licks.Moves;
using TheoryKit.Paths;
using TheoryKit.Paths.Words;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Licks.Words;

/// <summary>The words of what could not be kept when a lick was moved, in two halves: what is lost, and what was done instead.</summary>
public static class MoveLossWords
{
    private const string NotFree = ": it is not free beside what it is joined to or sounds with";

    /// <summary>What is lost, and why: <c>its octave: Eb1 does not lie on the neck</c>.</summary>
    /// <param name="loss">The loss.</param>
    /// <param name="format">"G" (or null) for plain signs, "P" for printed ones.</param>
    /// <param name="naming">A <see cref="NoteNaming"/>; null for English.</param>
    /// <exception cref="FormatException">Another format.</exception>
    public static string Lost(this MoveLoss loss, string? format = null, IFormatProvider? naming = null)
    {
        ArgumentNullException.ThrowIfNull(loss);
        var speech = new Speech(format, naming);
        return loss switch
        {
            MoveLoss.OfTechnique of => of.Loss.Lost(),
            MoveLoss.OutsideZone at =>
                $"its place in the zone at {MoveWords.Frets(at.Zone)}{Why(at.Why, ": it does not lie there", speech)}",
            MoveLoss.OffStrings at => at.Strings.Count == 1
                ? $"string {at.Strings[0]}{Why(at.Why, ": it does not lie on it", speech)}"
                : $"the strings {MoveWords.Numbers(at.Strings)}{Why(at.Why, ": it lies on none of them", speech)}",
            MoveLoss.OffItsString at => $"string {at.String}, which {Lack(at, speech)}",
            MoveLoss.OffItsStrings at => at.Why switch
            {
                StringsLack.Note => "its strings: one of its notes does not lie on its own",
                StringsLack.Reach => "its strings: on them its notes would lie too far apart",
                _ => throw new UnreachableException(),
            },
            MoveLoss.OctaveOfAll at => at.Why switch
            {
                OctaveLack.Zone => "its octave: it would leave the zone by more notes",
                OctaveLack.Neck => "its octave: more of its notes would lie beyond the neck",
                _ => throw new UnreachableException(),
            },
            MoveLoss.OffNeck at => speech.Say($"its octave: {at.Before} does not lie on the neck"),
            MoveLoss.Crowded at => $"its octave: {Why(at.Why)}",
            MoveLoss.LeftOut at => $"its place: {Why(at.Why)}",
            MoveLoss.PositionsOfHand => "its positions: this hand can't play them one after the other",
            MoveLoss.FingersOfHand => "its fingers: this hand can hold it neither there nor elsewhere",
            MoveLoss.FingersOfMove => "its fingers: the hand of the move does not reach all of it",
            MoveLoss.Bend => "the bend: no fret of the neck sounds what it begins with",
            MoveLoss.Harmonic at => speech.Say($"the natural harmonic: no open string sounds {at.Sound} at a node"),
            MoveLoss.ReleaseEnd =>
                "the pitch that the release comes down to: the fret of the bend has another function now",
            MoveLoss.BendStart at => speech.Say(
                $"the pitch that the bend begins with: from {at.From} to {at.To} it would be {at.Cents} cents"
            ),
            MoveLoss.TrillNote => "the other note of the trill: it would be the same or on the other side",
            _ => throw new UnreachableException(),
        };
    }

    /// <summary>What was done instead: <c>Eb2, an octave higher</c>.</summary>
    /// <inheritdoc cref="Lost"/>
    public static string Instead(this MoveLoss loss, string? format = null, IFormatProvider? naming = null)
    {
        var speech = new Speech(format, naming);
        return loss switch
        {
            MoveLoss.OfTechnique of => of.Loss.Instead(),
            MoveLoss.OutsideZone { IsOpen: true } at => $"the open string {at.Now.String}",
            MoveLoss.OutsideZone at =>
                $"fret {at.Now.Fret} of string {at.Now.String}, {English.Count(at.Frets, "fret")} outside",
            MoveLoss.OffStrings at => $"string {at.Now}",
            MoveLoss.OffItsString at => $"all notes placed anew: it is at fret {at.Now.Fret} of string {at.Now.String}",
            MoveLoss.OffItsStrings => "all notes placed anew",
            MoveLoss.OctaveOfAll at => MoveWords.Octaves(at.Octaves),
            MoveLoss.OffNeck at => speech.Say($"{at.Now}, {MoveWords.Octaves(at.Octaves)}"),
            MoveLoss.Crowded at => speech.Say($"{at.Now}, {MoveWords.Octaves(at.Octaves)}"),
            MoveLoss.LeftOut => "the others without it",
            MoveLoss.PositionsOfHand => "others, with the least effort",
            MoveLoss.FingersOfHand => "the positions as they were, without fingers",
            MoveLoss.FingersOfMove => "no fingers",
            MoveLoss.Bend at => speech.Say($"{at.Now} without a bend"),
            MoveLoss.Harmonic at => at.IsArtificial ? "an artificial harmonic" : "a plain note",
            MoveLoss.ReleaseEnd at => at.Left == 0 ? "the bend let go wholly" : $"{at.Left} cents left of the bend",
            MoveLoss.BendStart at => $"a bend of {at.Now} cents from another fret",
            MoveLoss.TrillNote => "one as far away as before",
            _ => throw Check.NoKind(loss),
        };
    }

    private static string Why(PlaceLack lack, string notThere, Speech speech) =>
        lack switch
        {
            PlaceLack.NotThere => notThere,
            PlaceLack.JoinedTo to => speech.Say($": it is {Joined(to.Technique)} {to.Pitch}, on one string"),
            PlaceLack.JoinedBy by => speech.Say($": {by.Pitch} is {Joined(by.Technique)} it, on one string"),
            PlaceLack.NotFree => NotFree,
            _ => throw new UnreachableException(),
        };

    private static string Joined(Technique technique) =>
        technique == Technique.HammerOn ? "hammered on from"
        : technique == Technique.PullOff ? "pulled off from"
        : technique == Technique.Slide ? "slid into from"
        : "let go from";

    private static string Lack(MoveLoss.OffItsString at, Speech speech) =>
        at.Why switch
        {
            StringLack.Node => speech.Say($"has no node that sounds {at.Sound}"),
            StringLack.Low => "does not go so low",
            StringLack.High => "does not go so high",
            StringLack.Finger => "would be open there and can't be bent",
            StringLack.TrillFret => "has no fret there for the other note of the trill",
            _ => throw new UnreachableException(),
        };

    private static string Why(CrowdLack lack) =>
        lack switch
        {
            CrowdLack.Reach => "no hand reaches all that is struck with it",
            CrowdLack.Strings => "the notes that sound with it would not each have a string",
            _ => throw new UnreachableException(),
        };
}
