using Fractions;
using TheoryKit.Licks.Tab.Remarks;
using TheoryKit.Paths;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Licks.Words;

/// <summary>What was made of a tab, in sentences.</summary>
public static class TabRemarkWords
{
    /// <summary>The remark in a sentence or two, without its place.</summary>
    /// <param name="remark">The remark.</param>
    /// <param name="naming">A <see cref="TheoryKit.Theory.Notes.NoteNaming"/> for note names other than English ones.</param>
    public static string InWords(this TabRemark remark, IFormatProvider? naming = null)
    {
        ArgumentNullException.ThrowIfNull(remark);
        return remark switch
        {
            TabRemark.CharactersReplaced => "Control characters and halves of characters are replaced.",
            TabRemark.UpsideDown => "The names say that the thickest string is on top; the lines are read upside down.",
            TabRemark.OtherString(var name, var number, var open) =>
                $"The line is called {name.ToString("G", naming)}, but string {number} of the neck is {open.ToString("G", naming)}; read on the neck.",
            TabRemark.StringsUnnamed({ } known) =>
                $"Which strings these are is not said; read as {known.Name}, {known.Tuning}.",
            TabRemark.SomeStrings(var first, var last) =>
                $"Only the strings {first} to {last} are typed; read on the six of {Tuning.Standard}.",
            TabRemark.UnusualNames(var read, var nearest) =>
                $"The names are of no usual tuning; read as {read}, the nearest octaves to {nearest}.",
            TabRemark.CountedTime(var most, var time) => $"The count goes up to {most}; read in {time}.",

            TabRemark.BarsMoved =>
                "The bar lines do not stand below each other; the bars are put below each other, each from its beginning.",
            TabRemark.BarLinesMoved =>
                "The bar lines do not stand below each other; there is one where most of the strings have it.",
            TabRemark.Repeated(var times) => $"What is repeated here is written out, {times} times in all.",
            TabRemark.StruckTogether =>
                "It stands one character beside the number on another string; read as struck together with it.",

            TabRemark.RowPassedOver =>
                "A row of functions or names is passed over; they follow from the notes and chords.",
            TabRemark.NoNoteAbove => "No note stands above it; passed over.",
            TabRemark.NoNoteBelow => "No note stands below it; passed over.",
            TabRemark.NoFinger => "A finger is T (thumb) or 1 to 4; passed over.",
            TabRemark.OtherChord(var given, var typed) =>
                $"The changes have {Name(given)} here, not {Name(typed)}; the changes count.",

            TabRemark.SignPassedOver(var sign) => $"\"{sign}\" says nothing on a string; passed over.",
            TabRemark.DigitsApart(var first, var second, var frets) =>
                $"{first}{second} is beyond fret {frets}; read as {first} and then {second}.",
            TabRemark.ManyDigits(var digits, var frets, var last) =>
                $"{digits} is more than one number; read as two digits at a time up to fret {frets}, the last here {last}.",
            TabRemark.TwoDigits(var fret) =>
                $"Read as fret {fret}, far from the others; {fret / 10} and then {fret % 10} are written {fret / 10}-{fret % 10}.",
            TabRemark.SlideOverGap(var sign, var fret) =>
                $"\"{sign}\" and then a gap is read as a slide to the next number on the string, {fret}.",
            TabRemark.BendBy(var target, var fret, var cents) =>
                $"Fret {target} lies below fret {fret}, so no bend leads there; read as a bend by {Distance(cents)}.",
            TabRemark.BendUnsaid => "How far it is bent is not said; read as a whole tone.",
            TabRemark.TrillUnsaid(var fret) =>
                $"With which fret it takes turns is not said; read as {fret}, a whole tone above.",

            TabRemark.BetweenCounts(var time, var fits) =>
                $"It stands between two counts; read {time} {(time > Fraction.One ? "beats" : "beat")} into its bar."
                    + (fits ? "" : " The count does not fit; the spacing or equal notes are read instead."),
            TabRemark.NoCommonMeasure =>
                "The rhythm of this bar has no common measure; the spacing or equal notes are read instead.",
            TabRemark.BarNotFull => "The rhythm of this bar does not fill it; the rest of it is silent.",
            TabRemark.BarTooFull(var beats, var time) =>
                $"The rhythm of this bar lasts {beats} beats; it goes on into another bar of {time}.",
            TabRemark.ValuesShared =>
                "There are not as many values as notes; each note takes the value nearest to it, and those that share one share its time.",
            TabRemark.SpacingAsTime(var step) =>
                $"There is no count; the spacing is read as time, here one character as {step} of a beat.",
            TabRemark.ShorterNotes(var count, var usual, var time, var read) =>
                $"{count} notes of {usual} of a beat are more than a bar of {time}; read as {read} each.",
            TabRemark.EqualNotes(var length) =>
                $"There is no count, and the spacing gives no values that players use; read as equal notes of {length} of a beat, with a rest up to the end of the bar where they do not fill it.",

            TabRemark.LongerNeck(var fret, var frets) =>
                $"Fret {fret} is beyond fret {Neck.DefaultFrets}; read on a neck of {frets} frets.",
            TabRemark.CountedFromCapo(var fret, var capo) =>
                $"Fret {fret} lies behind the capo at fret {capo}; all numbers are counted from the capo.",
            TabRemark.OtherName(var pitch, var name) =>
                $"The note here is {pitch.ToString("G", naming)}, which is not called {name.ToString("G", naming)}; its name is passed over.",
            TabRemark.NothingBent(var fret) =>
                $"Nothing bent sounds up to here that could be let go; read as fret {fret}.",
            TabRemark.NoNode(var fret) =>
                $"A string has no node at fret {fret}; read as a plain note. Natural harmonics lie 3, 4, 5, 7, 9, 12, 16, 19 and 24 frets above the open string.",
            TabRemark.SlideFrom(var from, var to) =>
                $"Read as a slide from {from}; written {from}{(to > from ? "/" : "\\")}{to} it is sure.",
            TabRemark.WrongWay(var technique, var from, var to) when from == to =>
                $"A {technique.Name} leads to another fret; from {from} to {to} it can't be played.",
            TabRemark.WrongWay(var technique, var from, var to) => technique == Technique.HammerOn
                ? $"A hammer-on leads to a higher fret; from {from} to {to} it would be a pull-off, p."
                : $"A pull-off leads to a lower fret; from {from} to {to} it would be a hammer-on, h.",
            TabRemark.ReleaseAlone => "What is let go is not bent again at once; read as the release alone.",
            TabRemark.OpenBend => "An open string has no finger that could bend it; read as a plain note.",
            TabRemark.BendTooFar => $"A bend goes up to {PathNote.MaxBend / 100} frets; read as a plain note.",
            TabRemark.BendNowhere => "A bend leads to a higher fret; read as a plain note.",
            TabRemark.TrillNowhere => "A trill takes turns with another fret of the neck; read as a plain note.",
            _ => throw new ArgumentException(
                $"A remark of tab without words: {remark.GetType().Name}.",
                nameof(remark)
            ),
        };

        string Name(Chord? chord) => chord?.ToString("G", naming) ?? "no chord";
    }

    private static string Distance(int cents) =>
        cents switch
        {
            50 => "a quarter tone",
            100 => "a semitone",
            200 => "a whole tone",
            _ => $"{cents} cents",
        };
}
