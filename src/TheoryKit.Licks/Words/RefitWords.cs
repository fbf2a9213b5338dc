using TheoryKit.Licks.Moves;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Licks.Words;

/// <summary>The words of why a note became what it is when its lick was refitted.</summary>
public static class RefitWords
{
    /// <summary>Half a sentence: <c>the 3 of C7 becomes the b3 of Cm7</c>.</summary>
    /// <param name="reason">The reason.</param>
    /// <param name="format">"G" (or null) for plain signs, "P" for printed ones.</param>
    /// <param name="naming">A <see cref="NoteNaming"/>; null for English.</param>
    /// <exception cref="FormatException">Another format.</exception>
    public static string InWords(this RefitReason reason, string? format = null, IFormatProvider? naming = null)
    {
        var speech = new Speech(format, naming);
        return reason switch
        {
            RefitReason.NoChord { Before: false, Now: false } => "there is no chord",
            RefitReason.NoChord at =>
                $"there {(at.Before ? "is no chord now" : "was no chord before")}: the pitch stays",
            RefitReason.ToneOfChord at => speech.Say(
                $"the {at.From} of {at.Over} {Becomes(at.From, at.To)} the {at.To} of {at.Chord}{Early(at.IsEarly, at.Chord)}"
            ),
            RefitReason.OneOfSeveral at => speech.Say(
                $"the {at.From} of {at.Over} is one of several there or in {at.Chord}; the nearest is the {at.To}{Early(at.IsEarly, at.Chord)}"
            ),
            RefitReason.Suspended at => speech.Say(
                $"{at.Chord} has no third; the {at.To} stands in its place{Early(at.IsEarly, at.Chord)}"
            ),
            RefitReason.Resolved at => speech.Say(
                $"the suspended {at.From} resolves to the {at.To} of {at.Chord}{Early(at.IsEarly, at.Chord)}"
            ),
            RefitReason.ToneOfScale at => speech.Say(
                $"{at.Chord} has no {Number(at.Number)}; its scale has the {at.To}{Early(at.IsEarly, at.Chord)}"
            ),
            RefitReason.NearestThere at => speech.Say(
                $"{at.Chord} and its scale have no {Number(at.From.Number)}; the nearest to {at.From} is the {at.To}{Early(at.IsEarly, at.Chord)}"
            ),
            RefitReason.NothingThere at => speech.Say(
                $"{at.Chord} and its scale have no {Number(at.From.Number)}; as far above the root as it was"
            ),
            RefitReason.Bass at => speech.Say($"the bass of {at.Over} becomes the bass of {at.Chord}"),
            RefitReason.ColourInChord at => speech.Say($"the {at.From} over {at.Over} is the {at.To} of {at.Chord}"),
            RefitReason.ColourOfSeveral at => speech.Say(
                $"{at.Chord} has more than one {Number(at.From.Number)}; the nearest to {at.From} is the {at.To}"
            ),
            RefitReason.Colour at => speech.Say(
                $"the {at.From} over {at.Over} {(IsSame(at.From, at.To) ? "stays" : "follows the scale:")} {at.To} over {at.Chord}"
            ),
            RefitReason.NoColour at => speech.Say(
                $"the {at.From} over {at.Over} {(IsSame(at.From, at.To) ? "stays" : "becomes")} {at.To} over {at.Chord}, {(at.DidNotColour ? "no colour tone there either" : "where it is no colour tone but clashes")}"
            ),
            RefitReason.Leading at => speech.Say(
                $"it stays {(Math.Abs(at.Semitones) == 1 ? "a semitone" : "a whole tone")} {(at.Semitones < 0 ? "below" : "above")} its target, {at.Target} now"
            ),
            RefitReason.Unled =>
                "it is of neither chord nor scale and leads to no note near; as far above the root as it was",
            _ => throw Check.NoKind(reason),
        };

        string Early(bool isEarly, Chord chord) => isEarly ? speech.Say($", anticipating {chord}") : "";
    }

    private static string Becomes(Degree from, Degree to) => from == to ? "stays" : "becomes";

    // A 2 over a triad is the 9 over a seventh chord.
    private static bool IsSame(Degree from, Degree to) => from.Simple == to.Simple;

    private static string Number(int number) => number == 1 ? "root" : English.OrdinalInWords(number);
}
