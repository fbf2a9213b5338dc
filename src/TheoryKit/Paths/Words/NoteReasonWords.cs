using TheoryKit.Paths.Exercises;
using TheoryKit.Paths.Joins;
using TheoryKit.Paths.MadeLines;
using TheoryKit.Paths.Routes;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Paths.Words;

/// <summary>Why notes are there, in English.</summary>
public static class NoteReasonWords
{
    /// <summary>Why a note is there, in a few words: <c>the 5 of Cm7</c>.</summary>
    /// <param name="reason">The reason.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="NoteNaming"/>; null for English.</param>
    public static string InWords(this NoteReason reason, string? format = null, IFormatProvider? naming = null)
    {
        return reason switch
        {
            DrillReason.Tone tone => Tone(tone.Function, tone.Chord),
            DrillReason.OfGrip tone => $"the {tone.Function.ToString(format)} of the grip of {Name(tone.Chord)}",
            DrillReason.IntoZone into => $"{Tone(into.Function, into.Chord)}; on to frets {into.Window}",
            JoinReason.Start { LowestRootOf: { } chord } => $"the start: the lowest root of {Name(chord)}",
            JoinReason.Start => "the start",
            JoinReason.Turned turned => $"turned at the {(turned.AtTop ? "top" : "bottom")} of the shape",
            JoinReason.Entry { Way: JoinWay.Held } held => $"{Pitch(held.From)} again, now of {Name(held.Chord)}",
            JoinReason.Entry entry =>
                $"{(entry.Way == JoinWay.Turned ? "turned" : "on")} to the nearest tone of {Name(entry.Chord)} {(entry.IsAbove ? "above" : "below")} {Pitch(entry.From)}",
            JoinReason.LeadsInto leads =>
                $"a semitone {(leads.IsBelow ? "below" : "above")} {Pitch(leads.To)}, into which it leads",
            RouteReason.Enters enters =>
                $"enters {Name(enters.Chord)} on its {enters.Function.ToString(format)}{InTriad(enters.Triad)}",
            RouteReason.Anticipates early =>
                $"anticipates {Name(early.Chord)}: its {early.Function.ToString(format)}{InTriad(early.Triad)}, {English.Beats(early.Ahead)} ahead",
            MadeReason.Target target => $"target: {Tone(target.Function, target.Chord)}, where the chord begins",
            MadeReason.ChordTone tone => $"chord tone: {Tone(tone.Function, tone.Chord)}",
            MadeReason.Passing passing =>
                $"passing tone of {passing.Scale.ToString(format, naming)} to {Tone(passing.Function, passing.Chord)}",
            MadeReason.Leading leading =>
                $"{(leading.Way.IsEnclosure ? "enclosure of" : "approach to")} {Tone(leading.Function, leading.Chord)} from {(leading.IsAbove ? "above" : "below")}: {Step(leading)}",
            _ => throw Check.NoKind(reason),
        };

        string Name(Chord chord) => chord.ToString(format, naming);

        string Pitch(Pitch pitch) => pitch.ToString(format, naming);

        string Tone(Degree function, Chord chord) => $"the {function.ToString(format)} of {Name(chord)}";

        string InTriad(Chord? triad) => triad is null ? "" : $" in its triad {Name(triad)}";

        string Step(MadeReason.Leading leading) =>
            leading.Way.Neighbours[leading.Stage] switch
            {
                Neighbour.SemitoneBelow or Neighbour.SemitoneAbove => "a semitone",
                Neighbour.WholeToneBelow or Neighbour.WholeToneAbove => "a whole tone",
                _ => $"the next tone of {leading.Scale?.ToString(format, naming)}",
            };
    }
}
