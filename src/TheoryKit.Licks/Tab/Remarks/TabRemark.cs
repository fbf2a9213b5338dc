using Fractions;
using TheoryKit.Paths;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Licks.Tab.Remarks;

/// <summary>
/// Something in a tab that could be read in more than one way, or was passed over, and what was made of it: a kind with its place and
/// figures. <see cref="TheoryKit.Licks.Words.TabRemarkWords"/> says it in a sentence.
/// </summary>
[Checked]
public abstract partial record TabRemark
{
    private TabRemark() { }

    /// <summary>The line, from 1.</summary>
    public int Line { get; init; } = 1;

    /// <summary>The character in the line, from 1.</summary>
    public int Column { get; init; } = 1;

    /// <summary>How many characters it is about, at least 1.</summary>
    public int Length { get; init; } = 1;

    // ---- Words, neck and time ----

    /// <summary>Control characters and halves of characters in the words were replaced.</summary>
    public sealed record CharactersReplaced : TabRemark;

    /// <summary>The names of the strings say that the thickest is on top.</summary>
    public sealed record UpsideDown : TabRemark;

    /// <summary>The name of a line is not that of the string of the given neck, on which it is read.</summary>
    /// <param name="Name">The name of the line.</param>
    /// <param name="String">The string, from 1.</param>
    /// <param name="Open">What the string sounds open.</param>
    public sealed partial record OtherString(NoteName Name, int String, Pitch Open) : TabRemark;

    /// <summary>No line has a name; the first usual tuning of so many strings is taken.</summary>
    /// <param name="Read">That tuning.</param>
    public sealed partial record StringsUnnamed(KnownTuning Read) : TabRemark;

    /// <summary>Some strings of standard tuning in a row are typed.</summary>
    /// <param name="First">The first of them, from 1.</param>
    /// <param name="Last">The last of them.</param>
    public sealed partial record SomeStrings(int First, int Last) : TabRemark;

    /// <summary>The names are of no usual tuning.</summary>
    /// <param name="Read">The tuning that is taken.</param>
    /// <param name="Nearest">The usual one whose octaves it has.</param>
    public sealed partial record UnusualNames(Tuning Read, Tuning Nearest) : TabRemark;

    /// <summary>The count tells the time signature.</summary>
    /// <param name="Most">The highest number of the count.</param>
    /// <param name="Time">The time signature that is taken.</param>
    public sealed partial record CountedTime(int Most, TimeSignature Time) : TabRemark;

    // ---- Bars ----

    /// <summary>The bar lines of the strings do not stand below each other: the bars are put below each other one by one.</summary>
    public sealed record BarsMoved : TabRemark;

    /// <summary>The strings have different numbers of bar lines: those of most strings count.</summary>
    public sealed record BarLinesMoved : TabRemark;

    /// <summary>A repeat is written out.</summary>
    /// <param name="Times">How many times in all.</param>
    public sealed partial record Repeated(int Times) : TabRemark;

    /// <summary>A number one character beside one on another string is struck together with it.</summary>
    public sealed record StruckTogether : TabRemark;

    // ---- Rows above and below ----

    /// <summary>A row of functions or names is passed over.</summary>
    public sealed record RowPassedOver : TabRemark;

    /// <summary>A finger or a name with no note above it is passed over.</summary>
    public sealed record NoNoteAbove : TabRemark;

    /// <summary>A sign with no note below it is passed over.</summary>
    public sealed record NoNoteBelow : TabRemark;

    /// <summary>What stands in a row of fingers and is none is passed over.</summary>
    public sealed record NoFinger : TabRemark;

    /// <summary>The changes that were given have another chord than the row.</summary>
    /// <param name="Given">The chord of the changes; null for none.</param>
    /// <param name="Typed">The chord of the row; null for none.</param>
    public sealed partial record OtherChord(Chord? Given, Chord? Typed) : TabRemark;

    // ---- Numbers and signs on a string ----

    /// <summary>A sign that says nothing on a string is passed over.</summary>
    /// <param name="Sign">The sign as typed.</param>
    public sealed partial record SignPassedOver(string Sign) : TabRemark;

    /// <summary>Two digits are two frets, since one fret of both would be beyond the neck.</summary>
    /// <param name="First">The first digit.</param>
    /// <param name="Second">The second.</param>
    /// <param name="Frets">The last fret.</param>
    public sealed partial record DigitsApart(int First, int Second, int Frets) : TabRemark;

    /// <summary>Three digits or more are several frets.</summary>
    /// <param name="Digits">The digits as typed.</param>
    /// <param name="Frets">The last fret.</param>
    /// <param name="Last">The last number that they are read as; null where it is none.</param>
    public sealed partial record ManyDigits(string Digits, int Frets, int? Last) : TabRemark;

    /// <summary>A number of two digits may have been meant as two frets, since all others are low.</summary>
    /// <param name="Fret">The fret as which it is read.</param>
    public sealed partial record TwoDigits(int Fret) : TabRemark;

    /// <summary>A sign of a slide and then a gap leads to the next number on the string.</summary>
    /// <param name="Sign">The sign.</param>
    /// <param name="Fret">The number to which it leads.</param>
    public sealed partial record SlideOverGap(char Sign, int Fret) : TabRemark;

    /// <summary>The target of a bend lies below its fret, so it says how far it is bent.</summary>
    /// <param name="Target">The target as typed.</param>
    /// <param name="Fret">The fret.</param>
    /// <param name="Cents">How far it is bent.</param>
    public sealed partial record BendBy(int Target, int Fret, int Cents) : TabRemark;

    /// <summary>A bend does not say how far; a whole tone is taken.</summary>
    public sealed record BendUnsaid : TabRemark;

    /// <summary>A trill does not say with which fret.</summary>
    /// <param name="Fret">The fret that is taken, a whole tone above.</param>
    public sealed partial record TrillUnsaid(int Fret) : TabRemark;

    // ---- Time ----

    /// <summary>A number stands between two counts.</summary>
    /// <param name="Time">Where in its bar it is read, in beats.</param>
    /// <param name="Fits">Whether the count fits the numbers of the bar; else it is not used.</param>
    public sealed partial record BetweenCounts(Fraction Time, bool Fits) : TabRemark;

    /// <summary>The values of a bar's rhythm have no common measure, so it is not used.</summary>
    public sealed record NoCommonMeasure : TabRemark;

    /// <summary>The rhythm of a bar does not fill it.</summary>
    public sealed record BarNotFull : TabRemark;

    /// <summary>The rhythm of a bar goes on into another bar.</summary>
    /// <param name="Beats">How many beats it lasts.</param>
    /// <param name="Time">The time signature.</param>
    public sealed partial record BarTooFull(Fraction Beats, TimeSignature Time) : TabRemark;

    /// <summary>A bar has not as many values as notes.</summary>
    public sealed record ValuesShared : TabRemark;

    /// <summary>Nothing says the time, so the spacing is read.</summary>
    /// <param name="Step">What a character is, in beats.</param>
    public sealed partial record SpacingAsTime(Fraction Step) : TabRemark;

    /// <summary>Equal notes are more than a bar holds.</summary>
    /// <param name="Count">How many there are.</param>
    /// <param name="Usual">How long one would be, in beats.</param>
    /// <param name="Time">The time signature.</param>
    /// <param name="Read">How long one is read, in beats.</param>
    public sealed partial record ShorterNotes(int Count, Fraction Usual, TimeSignature Time, Fraction Read) : TabRemark;

    /// <summary>Neither a count nor the spacing says the time.</summary>
    /// <param name="Each">How long each note is read, in beats.</param>
    public sealed partial record EqualNotes(Fraction Each) : TabRemark;

    // ---- What can be played ----

    /// <summary>A number is beyond the usual neck, so the neck is longer.</summary>
    /// <param name="Fret">The highest number.</param>
    /// <param name="Frets">The frets of the neck that is taken.</param>
    public sealed partial record LongerNeck(int Fret, int Frets) : TabRemark;

    /// <summary>A number lies behind the capo, so all are counted from there.</summary>
    /// <param name="Fret">The number.</param>
    /// <param name="Capo">The fret of the capo.</param>
    public sealed partial record CountedFromCapo(int Fret, int Capo) : TabRemark;

    /// <summary>A name below a note is not that of its pitch.</summary>
    /// <param name="Pitch">The pitch.</param>
    /// <param name="Name">The name that is passed over.</param>
    public sealed partial record OtherName(Pitch Pitch, NoteName Name) : TabRemark;

    /// <summary>A release of nothing bent is a plain note.</summary>
    /// <param name="Fret">Its fret.</param>
    public sealed partial record NothingBent(int Fret) : TabRemark;

    /// <summary>A natural harmonic at a fret without a node is a plain note.</summary>
    /// <param name="Fret">The fret.</param>
    public sealed partial record NoNode(int Fret) : TabRemark;

    /// <summary>A sign of a slide after a gap comes from the number before.</summary>
    /// <param name="From">The fret from which it slides.</param>
    /// <param name="To">The fret to which it slides.</param>
    public sealed partial record SlideFrom(int From, int To) : TabRemark;

    /// <summary>A hammer-on or a pull-off leads to the same fret or in the wrong direction, and is left as typed.</summary>
    /// <param name="Technique">The technique.</param>
    /// <param name="From">The fret before it.</param>
    /// <param name="To">Its fret.</param>
    public sealed partial record WrongWay(Technique Technique, int From, int To) : TabRemark;

    /// <summary>A release that is bent at once is the release alone.</summary>
    public sealed record ReleaseAlone : TabRemark;

    /// <summary>A bend of an open string is a plain note.</summary>
    public sealed record OpenBend : TabRemark;

    /// <summary>A bend beyond what is bent is a plain note.</summary>
    public sealed record BendTooFar : TabRemark;

    /// <summary>A bend to no higher fret is a plain note.</summary>
    public sealed record BendNowhere : TabRemark;

    /// <summary>A trill with its own fret or one that the neck has not is a plain note.</summary>
    public sealed record TrillNowhere : TabRemark;
}
