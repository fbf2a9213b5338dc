using System.Diagnostics;
using System.Globalization;
using Fractions;
using TheoryKit.Licks.Analysis;
using TheoryKit.Paths;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Licks.Words;

/// <summary>The words of what the notes of a line do.</summary>
internal sealed class NoteWords(Speech speech)
{
    public static readonly string[] Steps =
    [
        "unison",
        "half step",
        "whole step",
        "minor third",
        "major third",
        "fourth",
        "tritone",
        "fifth",
        "minor sixth",
        "major sixth",
        "minor seventh",
        "major seventh",
        "octave",
    ];

    /// <summary>The chord that was named last, which needs no naming again.</summary>
    public Chord? Current { get; set; }

    /// <summary>A figure: <c>approaches the third from a half step below</c>.</summary>
    public string Say(LineFigure figure) =>
        figure switch
        {
            LineFigure.Colours at =>
                $"has {English.List(at.Notes.Select(note => $"the {Named(note)}").Distinct())} as colour",
            LineFigure.Bends at => Bends(at.Note),
            LineFigure.Approaches at =>
                $"approaches {Aim(at.Note, at.Target)} from a {Steps[Math.Abs(at.Note.Step)]} {(at.Note.Step > 0 ? "below" : "above")}",
            LineFigure.Walks at =>
                $"walks {(at.Notes[0].Step > 0 ? "up" : "down")} to {Aim(at.Notes[0], at.Target)} through {Through(at)}",
            LineFigure.Passes at => $"passes through {Through(at)} to {Aim(at.Notes[0], at.Target)}",
            LineFigure.Neighbours at =>
                $"steps from {Aim(at.Note, at.Target)} {(at.Note.Step < 0 ? "up" : "down")} to {Foreign(at.Note)} and back",
            LineFigure.Encloses { Note.Step: < 0 } at => $"encloses {Aim(at.Note, at.Target)} from above and below",
            LineFigure.Encloses at => $"encloses {Aim(at.Note, at.Target)} from below and above",
            LineFigure.Anticipates { Note: var note } => speech.Say(
                $"takes the {Name(note.AnticipatedFunction!.Value, note.Anticipates!)} of {note.Anticipates!} {Early(note.Ahead!.Value)} early"
            ),
            LineFigure.SlidesInto at => $"slides into {Aim(at.Note, at.Target)}",
            LineFigure.Leaves at => speech.Say($"leaves {at.Note.Sounding.Name} (the {Named(at.Note)}) unresolved"),
            _ => throw new UnreachableException(),
        };

    /// <summary>How a note is made, where the hand that frets makes it.</summary>
    public string How(AnalysedNote note, Technique how) =>
        how == Technique.Bend ? $"bent up {Bent(note.Note.Bend)}{FromFretted(note)}"
        : how == Technique.PreBend ? $"bent up {Bent(note.Note.Bend)} before it is struck"
        : how == Technique.Release ? "where a bend is let go"
        : how == Technique.Slide ? "slid into"
        : how == Technique.HammerOn ? "hammered on"
        : how == Technique.PullOff ? "pulled off"
        : how == Technique.NaturalHarmonic ? "a natural harmonic"
        : throw new UnreachableException();

    private string Bends(AnalysedNote note)
    {
        var fretted = Name(Path.FunctionOver(note.Chord!, note.Note.Pitch), note.Chord!);
        return note.Note.Bend < 100
            ? $"bends the {fretted} up a quarter tone"
            : $"bends the {fretted} up to the {Named(note)}";
    }

    private string Through(LineFigure.Run run) => English.List(run.Notes.Select(Foreign).Distinct());

    private string FromFretted(AnalysedNote note) =>
        note is { Chord: { } chord, Note.Bend: >= 100 }
            ? $" from the {Name(Path.FunctionOver(chord, note.Note.Pitch), chord)}"
            : "";

    private static string Bent(int cents) =>
        cents switch
        {
            50 => "a quarter tone",
            100 => "a half step",
            150 => "three quarter tones",
            200 => "a whole step",
            _ => $"{(cents / 100m).ToString("0.#", CultureInfo.InvariantCulture)} half steps",
        };

    /// <summary>The target as it is aimed at: over its own chord where that is another.</summary>
    private string Aim(AnalysedNote note, AnalysedNote target) =>
        target.Anticipates is { } early
            ? $"the {Name(target.AnticipatedFunction!.Value, early)} of {speech.Text(early)}"
        : target.Function is not { } function ? speech.Text(target.Sounding)
        : target.Chord == note.Chord ? $"the {Name(function, target.Chord!)}"
        : $"the {Name(function, target.Chord!)} of {speech.Text(target.Chord!)}";

    private string Foreign(AnalysedNote note) =>
        note is { Function: { } function, Chord: { } chord }
            ? $"the {Name(function, chord)}"
            : speech.Text(note.Sounding);

    public string Named(AnalysedNote note) =>
        Name(note.Function!.Value, note.Chord!) + (note.Chord == Current ? "" : $" of {speech.Text(note.Chord!)}");

    /// <summary>Members of the chord by their names, anything else by its number.</summary>
    public string Name(Degree function, Chord chord)
    {
        if (ToneRoles.Over(function, chord.Formula) is ToneRole.Root or ToneRole.ChordTone)
        {
            switch (function.Number)
            {
                case 1 or 8:
                    return "root";
                case 2 or 3 or 6 or 7:
                case 4 or 5 when function.Alteration == 0:
                    return English.OrdinalInWords(function.Number);
            }
        }

        return speech.Text(function);
    }

    private static string Early(Fraction beats) =>
        beats == Fraction.One ? "a beat"
        : beats == new Fraction(1, 2) ? "half a beat"
        : beats < Fraction.One ? $"{beats} of a beat"
        : $"{beats} beats";
}
