namespace TheoryKit.Theory;

public sealed partial class ChordQuality
{
    /// <summary>All qualities with a name of their own, by family.</summary>
    /// <remarks>
    /// One line each: family, symbol, name, formula, other ways to write the symbol. Every family but
    /// <see cref="ChordFamily.Added"/>, <see cref="ChordFamily.Altered"/> and <see cref="ChordFamily.Quartal"/> also serves as
    /// what other symbols are built on, the earlier line first where two would do.
    /// </remarks>
    public static IReadOnlyList<ChordQuality> Known { get; } =
    [
        new(ChordFamily.Triad, "", "major triad", "1 3 5", "maj ma M Maj"),
        new(ChordFamily.Triad, "m", "minor triad", "1 b3 5", "min mi - MI"),
        new(ChordFamily.Triad, "dim", "diminished triad", "1 b3 b5", "o ° mb5 m(b5) -b5"),
        new(ChordFamily.Triad, "aug", "augmented triad", "1 3 #5", "+ (#5) +5 aug5"),
        new(ChordFamily.Sixth, "6", "sixth", "1 3 5 6", "maj6 M6 add6"),
        new(ChordFamily.Sixth, "m6", "minor sixth", "1 b3 5 6", "min6 mi6 -6 madd6"),
        new(ChordFamily.Sixth, "6/9", "six-nine", "1 3 5 6 9", "69 6add9 6(9) maj6/9"),
        new(ChordFamily.Sixth, "m6/9", "minor six-nine", "1 b3 5 6 9", "m69 m6add9 -6/9 mi69"),
        new(ChordFamily.Seventh, "7", "dominant seventh", "1 3 5 b7", "dom7"),
        new(ChordFamily.Seventh, "maj7", "major seventh", "1 3 5 7", "ma7 M7 Maj7 MA7 Δ Δ7 (maj7)"),
        new(ChordFamily.Seventh, "m7", "minor seventh", "1 b3 5 b7", "min7 mi7 -7 MI7"),
        new(
            ChordFamily.Seventh,
            "mMaj7",
            "minor-major seventh",
            "1 b3 5 7",
            "mM7 m(maj7) mmaj7 minMaj7 mi(ma7) -Δ7 -Δ -M7"
        ),
        new(ChordFamily.Seventh, "m7b5", "half-diminished seventh", "1 b3 b5 b7", "ø ø7 Ø7 -7b5 m7(b5) min7b5 m7-5"),
        new(ChordFamily.Seventh, "dim7", "diminished seventh", "1 b3 b5 bb7", "o7 °7"),
        new(ChordFamily.Seventh, "dimMaj7", "diminished-major seventh", "1 b3 b5 7", "dim(maj7) oM7 °Δ7 mMaj7b5"),
        new(ChordFamily.Thirteenth, "13", "dominant thirteenth", "1 3 5 b7 9 13", "dom13 9add13 9(13)"),
        new(ChordFamily.Thirteenth, "maj13", "major thirteenth", "1 3 5 7 9 13", "ma13 M13 Δ13 maj9add13"),
        new(ChordFamily.Thirteenth, "m13", "minor thirteenth", "1 b3 5 b7 9 13", "min13 mi13 -13"),
        new(ChordFamily.Thirteenth, "mMaj13", "minor-major thirteenth", "1 b3 5 7 9 13", "mM13 m(maj13) -Δ13"),
        new(ChordFamily.Eleventh, "11", "dominant eleventh", "1 3 5 b7 9 11", "dom11 9add11 9(11)"),
        new(ChordFamily.Eleventh, "maj11", "major eleventh", "1 3 5 7 9 11", "ma11 M11 Δ11"),
        new(ChordFamily.Eleventh, "m11", "minor eleventh", "1 b3 5 b7 9 11", "min11 mi11 -11 m9(11)"),
        new(ChordFamily.Eleventh, "mMaj11", "minor-major eleventh", "1 b3 5 7 9 11", "mM11 m(maj11) -Δ11"),
        new(ChordFamily.Eleventh, "m11b5", "half-diminished eleventh", "1 b3 b5 b7 9 11", "ø11 -11b5"),
        new(ChordFamily.Ninth, "9", "dominant ninth", "1 3 5 b7 9", "dom9 7add9 7(9) 7/9"),
        new(ChordFamily.Ninth, "maj9", "major ninth", "1 3 5 7 9", "ma9 M9 Maj9 Δ9 maj7(9) maj7add9"),
        new(ChordFamily.Ninth, "m9", "minor ninth", "1 b3 5 b7 9", "min9 mi9 -9 m7(9) m7add9"),
        new(ChordFamily.Ninth, "mMaj9", "minor-major ninth", "1 b3 5 7 9", "mM9 m(maj9) -Δ9 mMaj7(9)"),
        new(ChordFamily.Ninth, "m9b5", "half-diminished ninth", "1 b3 b5 b7 9", "ø9 -9b5 m7b5(9)"),
        new(ChordFamily.Ninth, "dim9", "diminished ninth", "1 b3 b5 bb7 9", "o9 °9 dim7(9)"),
        new(ChordFamily.Suspended, "sus4", "suspended fourth", "1 4 5", "sus"),
        new(ChordFamily.Suspended, "sus2", "suspended second", "1 2 5"),
        new(ChordFamily.Suspended, "sus24", "suspended second and fourth", "1 2 4 5", "sus2sus4 sus42"),
        new(ChordFamily.Suspended, "susb2", "suspended flat second", "1 b2 5", "sus(b2) sus-2"),
        new(ChordFamily.Suspended, "sus#4", "suspended sharp fourth", "1 #4 5", "sus(#4) sus+4"),
        new(ChordFamily.Suspended, "6sus4", "sixth, suspended fourth", "1 4 5 6", "6sus"),
        new(ChordFamily.Suspended, "6sus2", "sixth, suspended second", "1 2 5 6"),
        new(
            ChordFamily.Suspended,
            "7sus4",
            "dominant seventh, suspended fourth",
            "1 4 5 b7",
            "7sus sus7 m7sus4 sus4(7)"
        ),
        new(ChordFamily.Suspended, "7sus2", "dominant seventh, suspended second", "1 2 5 b7"),
        new(ChordFamily.Suspended, "maj7sus4", "major seventh, suspended fourth", "1 4 5 7", "M7sus4 Δ7sus4 sus4maj7"),
        new(ChordFamily.Suspended, "maj7sus2", "major seventh, suspended second", "1 2 5 7", "M7sus2 Δ7sus2 sus2maj7"),
        new(ChordFamily.Suspended, "maj7sus#4", "major seventh, suspended sharp fourth", "1 #4 5 7", "Δ7sus#4"),
        new(ChordFamily.Suspended, "7susb2", "dominant seventh, suspended flat second", "1 b2 5 b7"),
        new(
            ChordFamily.Suspended,
            "9sus4",
            "dominant ninth, suspended fourth",
            "1 4 5 b7 9",
            "9sus sus9 11sus 7sus4(9)"
        ),
        new(ChordFamily.Suspended, "maj9sus4", "major ninth, suspended fourth", "1 4 5 7 9", "M9sus4 Δ9sus"),
        new(ChordFamily.Suspended, "13sus4", "dominant thirteenth, suspended fourth", "1 4 5 b7 9 13", "13sus sus13"),
        new(ChordFamily.Suspended, "maj13sus4", "major thirteenth, suspended fourth", "1 4 5 7 9 13", "M13sus Δ13sus4"),
        new(ChordFamily.Power, "5", "power chord", "1 5", "(no3)"),
        new(ChordFamily.Added, "add9", "major triad, added nine", "1 3 5 9", "(add9) (9) /9"),
        new(ChordFamily.Added, "madd9", "minor triad, added nine", "1 b3 5 9", "m(add9) minadd9 m(9)"),
        new(ChordFamily.Added, "add2", "major triad, added two", "1 2 3 5", "(add2)"),
        new(ChordFamily.Added, "madd2", "minor triad, added two", "1 2 b3 5", "m(add2)"),
        new(ChordFamily.Added, "add11", "major triad, added eleven", "1 3 5 11", "(add11) (11)"),
        new(ChordFamily.Added, "madd11", "minor triad, added eleven", "1 b3 5 11", "m(add11) m(11)"),
        new(ChordFamily.Added, "add4", "major triad, added four", "1 3 4 5", "(add4) sus4add3"),
        new(ChordFamily.Added, "madd4", "minor triad, added four", "1 b3 4 5", "m(add4)"),
        new(ChordFamily.Added, "add#11", "major triad, added sharp eleven", "1 3 5 #11", "(#11) (add#11) (+11)"),
        new(ChordFamily.Added, "7add13", "dominant seventh, added thirteen", "1 3 5 b7 13", "7(13) 7/13"),
        new(ChordFamily.Added, "7add11", "dominant seventh, added eleven", "1 3 5 b7 11", "7(11)"),
        new(ChordFamily.Added, "maj7add13", "major seventh, added thirteen", "1 3 5 7 13", "maj7(13)"),
        new(ChordFamily.Added, "m7add11", "minor seventh, added eleven", "1 b3 5 b7 11", "m7(11) m11(no9)"),
        new(ChordFamily.Added, "m7add13", "minor seventh, added thirteen", "1 b3 5 b7 13", "m7(13)"),
        new(ChordFamily.Altered, "(b5)", "major triad, flat five", "1 3 b5", "-5 majb5 M(b5)"),
        new(ChordFamily.Altered, "m#5", "minor triad, sharp five", "1 b3 #5", "m(#5) m+5 -#5"),
        new(ChordFamily.Altered, "mb6", "minor triad, flat six", "1 b3 5 b6", "m(b6) -b6 m-6"),
        new(ChordFamily.Altered, "7b5", "dominant seventh, flat five", "1 3 b5 b7", "7-5 7(b5) 7(-5)"),
        new(ChordFamily.Altered, "7#5", "dominant seventh, sharp five", "1 3 #5 b7", "+7 aug7 7+ 7+5 7(#5) 7aug"),
        new(ChordFamily.Altered, "maj7b5", "major seventh, flat five", "1 3 b5 7", "M7b5 Δ7b5 maj7(b5)"),
        new(ChordFamily.Altered, "maj7#5", "major seventh, sharp five", "1 3 #5 7", "+maj7 +M7 augMaj7 Δ7#5 aug(maj7)"),
        new(ChordFamily.Altered, "m7#5", "minor seventh, sharp five", "1 b3 #5 b7", "-7#5 m7+5 m7(#5)"),
        new(ChordFamily.Altered, "7b9", "dominant seventh, flat nine", "1 3 5 b7 b9", "7-9 7(b9) 7(-9) 7addb9"),
        new(ChordFamily.Altered, "7#9", "dominant seventh, sharp nine", "1 3 5 b7 #9", "7+9 7(#9) 7(+9)"),
        new(ChordFamily.Altered, "7#11", "dominant seventh, sharp eleven", "1 3 5 b7 #11", "7+11 7(#11)"),
        new(ChordFamily.Altered, "7b13", "dominant seventh, flat thirteen", "1 3 5 b7 b13", "7-13 7(b13)"),
        new(
            ChordFamily.Altered,
            "maj7#11",
            "major seventh, sharp eleven",
            "1 3 5 7 #11",
            "M7#11 Δ7#11 maj7(#11) maj7+11 Δ#11"
        ),
        new(
            ChordFamily.Altered,
            "7(b5,b9)",
            "dominant seventh, flat five, flat nine",
            "1 3 b5 b7 b9",
            "7b5b9 7b9b5 7-5-9"
        ),
        new(ChordFamily.Altered, "7(b5,#9)", "dominant seventh, flat five, sharp nine", "1 3 b5 b7 #9", "7b5#9 7#9b5"),
        new(
            ChordFamily.Altered,
            "7(#5,b9)",
            "dominant seventh, sharp five, flat nine",
            "1 3 #5 b7 b9",
            "7#5b9 7b9#5 +7b9"
        ),
        new(
            ChordFamily.Altered,
            "7(#5,#9)",
            "dominant seventh, sharp five, sharp nine",
            "1 3 #5 b7 #9",
            "7#5#9 7#9#5 +7#9"
        ),
        new(ChordFamily.Altered, "7(b9,#9)", "dominant seventh, flat nine, sharp nine", "1 3 5 b7 b9 #9", "7b9#9"),
        new(
            ChordFamily.Altered,
            "7(b9,#11)",
            "dominant seventh, flat nine, sharp eleven",
            "1 3 5 b7 b9 #11",
            "7b9#11 7#11b9"
        ),
        new(
            ChordFamily.Altered,
            "7(#9,#11)",
            "dominant seventh, sharp nine, sharp eleven",
            "1 3 5 b7 #9 #11",
            "7#9#11"
        ),
        new(
            ChordFamily.Altered,
            "7(b9,b13)",
            "dominant seventh, flat nine, flat thirteen",
            "1 3 5 b7 b9 b13",
            "7b9b13 7b13b9"
        ),
        new(
            ChordFamily.Altered,
            "7(#9,b13)",
            "dominant seventh, sharp nine, flat thirteen",
            "1 3 5 b7 #9 b13",
            "7#9b13"
        ),
        new(ChordFamily.Altered, "7alt", "altered dominant", "1 3 b5 #5 b7 b9 #9", "alt 7(alt) 7b5#5b9#9"),
        new(
            ChordFamily.Altered,
            "7sus4b9",
            "dominant seventh, suspended fourth, flat nine",
            "1 4 5 b7 b9",
            "7susb9 7b9sus 7b9sus4"
        ),
        new(ChordFamily.Altered, "9b5", "dominant ninth, flat five", "1 3 b5 b7 9", "9-5 9(b5)"),
        new(ChordFamily.Altered, "9#5", "dominant ninth, sharp five", "1 3 #5 b7 9", "+9 aug9 9+5 9(#5)"),
        new(ChordFamily.Altered, "9#11", "dominant ninth, sharp eleven", "1 3 5 b7 9 #11", "9+11 9(#11) 11#11"),
        new(ChordFamily.Altered, "9b13", "dominant ninth, flat thirteen", "1 3 5 b7 9 b13", "9-13 9(b13)"),
        new(
            ChordFamily.Altered,
            "13b9",
            "dominant thirteenth, flat nine",
            "1 3 5 b7 b9 13",
            "13-9 13(b9) 7(b9,13) 7b9add13"
        ),
        new(ChordFamily.Altered, "13#9", "dominant thirteenth, sharp nine", "1 3 5 b7 #9 13", "13+9 13(#9)"),
        new(ChordFamily.Altered, "13#11", "dominant thirteenth, sharp eleven", "1 3 5 b7 9 #11 13", "13+11 13(#11)"),
        new(
            ChordFamily.Altered,
            "13sus4b9",
            "dominant thirteenth, suspended fourth, flat nine",
            "1 4 5 b7 b9 13",
            "13susb9"
        ),
        new(ChordFamily.Altered, "maj9#5", "major ninth, sharp five", "1 3 #5 7 9", "M9#5 Δ9#5 +maj9"),
        new(ChordFamily.Altered, "maj9#11", "major ninth, sharp eleven", "1 3 5 7 9 #11", "M9#11 Δ9#11 maj9(#11)"),
        new(ChordFamily.Altered, "maj13#11", "major thirteenth, sharp eleven", "1 3 5 7 9 #11 13", "M13#11 Δ13#11"),
        new(ChordFamily.Altered, "6/9#11", "six-nine, sharp eleven", "1 3 5 6 9 #11", "69#11 6/9(#11)"),
        new(ChordFamily.Quartal, "7sus4(no5)", "three tones in fourths", "1 4 b7", "7sus(no5)"),
        new(ChordFamily.Quartal, "m7(add4,no5)", "four tones in fourths", "1 b3 4 b7", "m7add4no5"),
        new(ChordFamily.Quartal, "m7add4", "four tones in fourths and a fifth", "1 b3 4 5 b7", "m7(add4)"),
        new(ChordFamily.Quartal, "5add9", "three tones in fifths", "1 5 9", "5(9) add9(no3)"),
    ];
}
