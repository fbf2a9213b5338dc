using TheoryKit.Charts.Theory;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Licks.Practice;
using TheoryKit.Paths.Joins;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Strings;

namespace TheoryKit.Charts.Tests;

/// <summary>Values the tests draw, and a second way to count with them.</summary>
internal static class Samples
{
    /// <summary>Formulas of any degrees: one to nine of them.</summary>
    public static readonly Gen<Formula> Formulas = Gen.Select(Gen.Int[1, 15], Gen.Int[-2, 2])
        .Select(static (number, alteration) => new Degree(number, alteration))
        .Array[1, 9]
        .Select(static degrees => new Formula(degrees.Distinct()));

    public static readonly Gen<NoteName> Notes = Gen.Select(Gen.Int[0, 6], Gen.Int[-1, 1])
        .Select(static (letter, alteration) => new NoteName((Letter)letter, alteration));

    public static readonly Gen<Chord> Chords = Gen.Select(Notes, Formulas, Notes)
        .Select(static (root, formula, bass) => new Chord(root, formula, bass));

    public static NamedFormula[] Sevenths { get; } =
    [Named("maj7", "1 3 5 7"), Named("7", "1 3 5 b7"), Named("m7", "1 b3 5 b7"), Named("m7b5", "1 b3 b5 b7")];

    public static NamedFormula[] Many { get; } =
    [
        .. Sevenths,
        Named("dim7", "1 b3 b5 bb7"),
        Named("mMaj7", "1 b3 5 7"),
        Named("6", "1 3 5 6"),
        Named("9", "1 3 5 b7 9"),
        Named("7b9", "1 3 5 b7 b9"),
        Named("13#11", "1 3 5 b7 9 #11 13"),
        Named("minor pentatonic", "1 b3 4 5 b7"),
    ];

    /// <summary>The changes of Nine Tin Boats: Gm9, C13, Fmaj9, Dm7.</summary>
    public static Chord[] NineTinBoats { get; } =
    [Chord.Parse("Gm9"), Chord.Parse("C13"), Chord.Parse("Fmaj9"), Chord.Parse("Dm7")];

    /// <summary>The same changes joined in twelve zones.</summary>
    public static JoinTable NineTinBoatsJoined { get; } =
        JoinSearch.Table(
            Changes.Parse("4/4, F major: Gm9 | C13 | Fmaj9 | Dm7"),
            Neck.Guitar,
            Enumerable.Range(1, 12).Select(static fret => new Window(fret, fret + 3))
        );

    /// <summary>Copper Weather in three tunings on light strings.</summary>
    public static TuningComparison CopperWeather { get; } =
        TuningComparison.Of(
            Neck.Guitar,
            [Tuning.Standard, Tuning.Find("DADGAD")!, Tuning.Find("Open D")!],
            Chord.ParseList("Dadd9 Bm7 Gmaj7 A7sus4"),
            limits: new() { MinSounding = 4, LastFret = 12 },
            strings: StringSet.Find("Light electric 10-46")
        );

    /// <summary>Six weeks of practice of two licks, the tempo coming and going.</summary>
    public static PracticeHistory Practice { get; } =
        PracticeHistory.Read(
            """
            2026-10-12 "Low tide turn" at 60: fell apart
            2026-10-12 "Low tide turn" at 51: stumbled
            2026-10-13 "Low tide turn" at 48: clean
            2026-10-15 "Low tide turn" at 50: clean, the slide comes late
            2026-10-19 "Low tide turn" at 60: at ease
            2026-10-19 "Top of the stairs" at 70: stumbled
            2026-10-20 "Top of the stairs" at 66: clean
            2026-10-22 "Top of the stairs" at 69: fell apart
            2026-10-23 "Top of the stairs" at 60: clean
            2026-10-31 "Low tide turn" at 65: clean
            2026-11-02 "Top of the stairs" at 66: clean
            2026-11-03 "Rain on copper": clean
            2026-11-16 "Low tide turn" at 72: stumbled
            2026-11-24 "Low tide turn" at 68: clean
            """
        );

    /// <summary>A line over Nine Tin Boats in eighths and a triplet.</summary>
    public static TheoryKit.Paths.Path NineTinBoatsLine { get; } =
        Line(
            "6:3 6:6 5:5 4:3 3:3 2:3 2:6 1:5 1:3 2:5 2:3 3:5 3:3 4:5 4:2 5:3 5:8 4:7 4:10",
            Changes.Parse("4/4, F major: Gm9 | C13 | Fmaj9 | Dm7")
        );

    /// <summary>Positions on a guitar in a rhythm, over changes or none.</summary>
    public static TheoryKit.Paths.Path Line(string positions, Changes? changes)
    {
        var neck = Neck.Guitar;
        return new(
            neck,
            positions
                .Split(' ')
                .Select(static text => TheoryKit.Tunings.Necks.Position.Parse(text))
                .Zip(TheoryKit.Paths.Timing.Rhythm.Parse("1/2 1/2 1/2 1/2 1/3 1/3 1/3 1/2 r1/2").Strokes())
                .Select(each => new TheoryKit.Paths.PathNote
                {
                    Position = each.First,
                    Pitch = Pitch.FromMidi(neck.MidiNumberAt(each.First)),
                    Start = each.Second.Start,
                    Length = each.Second.Length,
                }),
            changes?.Time,
            changes
        );
    }

    public static NamedFormula Named(string name, string formula) => new(name, Formula.Parse(formula));

    /// <summary>The semitones of a degree within the octave, read off its text: no use is made of the library's own count.</summary>
    public static int Semitones(Degree degree)
    {
        int[] major = [0, 2, 4, 5, 7, 9, 11];
        var text = degree.ToString();
        var number = int.Parse(text.TrimStart('b', '#'));
        var raised = text.Count(static c => c == '#') - text.Count(static c => c == 'b');
        return (major[(number - 1) % 7] + raised + 24) % 12;
    }

    /// <summary>The pitch class of a note, read off its text.</summary>
    public static int PitchClass(NoteName note)
    {
        var text = note.ToString();
        int[] white = [9, 11, 0, 2, 4, 5, 7];
        return (white[text[0] - 'A'] + text.Count(static c => c == '#') - text[1..].Count(static c => c == 'b') + 24)
            % 12;
    }

    /// <summary>The pitch classes of a formula over its root.</summary>
    public static HashSet<int> Sounds(Formula formula) => [.. formula.Select(Semitones)];
}
