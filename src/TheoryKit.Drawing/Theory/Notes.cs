using System.Globalization;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Drawing.Theory;

/// <summary>How notes, intervals, degrees and formulas are described.</summary>
internal static class Notes
{
    public static Description<NoteName> NoteNames { get; } =
        new(
            new("note name", "note names"),
            static note => Words.Of(note),
            [
                new("pitch class", static note => note.PitchClass, IsNumber: true),
                new("simplest name", static note => note.Simplest() == note ? null : Words.Of(note.Simplest())),
                new("other name", static note => Other(note) is { } other ? Words.Of(other) : null),
                new("place on the line of fifths", static note => Signed(note.Fifths), IsNumber: true),
            ]
        )
        {
            InWords = static note => InWords.Of(note),
        };

    public static Description<Pitch> Pitches { get; } =
        new(
            new("pitch", "pitches"),
            static pitch => Words.Of(pitch),
            [
                new("MIDI number", static pitch => pitch.MidiNumber, IsNumber: true),
                new(
                    "frequency at A4 = 440 Hz",
                    static pitch => pitch.Frequency().ToString("0.00 Hz", CultureInfo.InvariantCulture),
                    IsNumber: true
                ),
                new("sounds like", static pitch => pitch.Simplest() == pitch ? null : Words.Of(pitch.Simplest())),
            ]
        )
        {
            InWords = static pitch =>
                $"{InWords.Of(pitch.Name)}, octave {pitch.Octave.ToString(CultureInfo.InvariantCulture)}",
        };

    public static Description<Interval> Intervals { get; } =
        new(
            new("interval", "intervals"),
            static interval => Words.Of(interval),
            [
                new("semitones", static interval => interval.Semitones, IsNumber: true),
                new("within an octave", static interval => interval.IsCompound ? Words.Of(interval.Simple) : null),
                new(
                    "inversion",
                    static interval => interval.IsCompound || interval.Descends ? null : Words.Of(interval.Inversion)
                ),
            ]
        )
        {
            InWords = static interval => InWords.Of(interval),
        };

    public static Description<Degree> Degrees { get; } =
        new(
            new("degree", "degrees"),
            static degree => Words.Of(degree),
            [
                new("interval from the root", static degree => Words.Of(degree.Interval)),
                new("semitones from the root", static degree => degree.Semitones, IsNumber: true),
                new("within an octave", static degree => degree.Simple == degree ? null : Words.Of(degree.Simple)),
            ]
        )
        {
            InWords = static degree => InWords.Of(degree.Interval),
        };

    private static NoteName? Other(NoteName note)
    {
        // The usual second name of a black key; white keys have one only where they are spelled with a sign.
        var other = NoteName
            .Common.Where(each => each != note && each.IsEnharmonicTo(note) && each.Alteration != 0)
            .ToList();
        return note.Alteration is 1 or -1 && other.Count > 0 && note.Simplest() == note ? other[0] : null;
    }

    private static string Signed(int number) => number.ToString("+0;-0;0", CultureInfo.InvariantCulture);
}
