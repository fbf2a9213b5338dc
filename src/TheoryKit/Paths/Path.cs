using System.Collections.Immutable;
using Fractions;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Paths;

/// <summary>
/// Notes in order on a neck, with positions, fingers, exact time and techniques, over changes where there are any. Equal when
/// neck, time, beats, changes and notes agree.
/// </summary>
/// <remarks>
/// Beats are those of the time signature (eighths in 6/8), counted from 0, and exact; a bar is as many beats as the signature
/// says. Notes stand in the order of their starts, those that start together from the highest-numbered string on. On one string a note
/// ends before the next begins. The changes begin with the path and are repeated as long as it lasts.
/// </remarks>
[EqualBy(nameof(Neck), nameof(Time), nameof(Beats), nameof(Changes), nameof(notes))]
public sealed partial class Path : IEquatable<Path>
{
    /// <summary>The most notes: 1,000,000.</summary>
    public const int MaxNotes = 1_000_000;

    /// <summary>The longest path, in beats: 1,000,000, more than eleven days at 60 beats a minute.</summary>
    public const int MaxBeats = 1_000_000;

    private readonly ImmutableArray<PathNote> notes;

    /// <summary>A path.</summary>
    /// <param name="neck">Where it is played.</param>
    /// <param name="notes">The notes, in any order.</param>
    /// <param name="time">The time signature; that of the changes where there are some, else 4/4, if null.</param>
    /// <param name="changes">The chords that it is played over; null for none.</param>
    /// <param name="beats">How long it lasts; up to the end of the last note if null.</param>
    /// <exception cref="ArgumentException">A position is not on the neck or sounds another pitch, two notes sound on one string
    /// at once, the time is not that of the changes, there are more than <see cref="MaxNotes"/> notes or <see cref="MaxBeats"/> beats, the beats end before the last note does, or a technique can't be: a bend by nothing
    /// or of an open string, a release of what is not bent, a natural harmonic where the string has no node, a trill with no fret or its own.</exception>
    public Path(
        Neck neck,
        IEnumerable<PathNote> notes,
        TimeSignature? time = null,
        Changes? changes = null,
        Fraction? beats = null
    )
    {
        ArgumentNullException.ThrowIfNull(neck);
        ArgumentNullException.ThrowIfNull(notes);
        Neck = neck;
        this.notes =
        [
            .. Check
                .Items(notes.Take(MaxNotes + 1), nameof(notes))
                .OrderBy(static note => note.Start)
                .ThenByDescending(static note => note.Position.String),
        ];
        if (this.notes.Length > MaxNotes)
        {
            throw new ArgumentException($"A path has at most {MaxNotes} notes.", nameof(notes));
        }

        Time = time ?? changes?.Time ?? TimeSignature.Common;
        Changes = changes;
        if (changes is not null && changes.Time != Time)
        {
            throw new ArgumentException($"The path is in {Time}, its changes in {changes.Time}.", nameof(time));
        }

        var end = Fraction.Zero;
        var free = new Fraction[neck.StringCount + 1];
        var last = new PathNote?[neck.StringCount + 1];
        foreach (var note in this.notes)
        {
            if (!neck.Has(note.Position))
            {
                throw new ArgumentException($"{note}: this position is not on the neck {neck}.", nameof(notes));
            }

            if (neck.MidiNumberAt(note.Position) != note.Pitch.MidiNumber)
            {
                throw new ArgumentException(
                    $"{note}: this position sounds {Pitch.FromMidi(neck.MidiNumberAt(note.Position))}.",
                    nameof(notes)
                );
            }

            if (note.Start < free[note.Position.String])
            {
                throw new ArgumentException(
                    $"{note}: the note before it on string {note.Position.String} sounds until beat {free[note.Position.String]}.",
                    nameof(notes)
                );
            }

            if (PathChecks.Of(neck, note, last[note.Position.String]) is { } wrong)
            {
                throw new ArgumentException($"{note}: {wrong}", nameof(notes));
            }

            free[note.Position.String] = note.End;
            last[note.Position.String] = note;
            end = note.End > end ? note.End : end;
        }

        if (end > MaxBeats)
        {
            throw new ArgumentException(
                $"The last note ends at beat {end}; a path lasts at most {MaxBeats} beats.",
                nameof(notes)
            );
        }

        Beats = beats is { } asked ? Check.Beats(asked, Fraction.Zero, MaxBeats, nameof(beats)) : end.Reduce();
        if (Beats < end)
        {
            throw new ArgumentException(
                $"The path is to last {Beats} beats, but its last note ends at beat {end}.",
                nameof(beats)
            );
        }
    }

    /// <summary>Where it is played.</summary>
    public Neck Neck { get; }

    /// <summary>The notes in order.</summary>
    public IReadOnlyList<PathNote> Notes => notes;

    /// <summary>The time signature.</summary>
    public TimeSignature Time { get; }

    /// <summary>The chords that it is played over, repeated as long as it lasts; null for none.</summary>
    public Changes? Changes { get; }

    /// <summary>How many beats it lasts, rests at its end included.</summary>
    public Fraction Beats { get; }

    /// <summary>How many bars it begins.</summary>
    public int BarCount => (int)Math.Ceiling((Beats / Time.Beats).ToDouble());

    /// <summary>Whether it ends with a bar.</summary>
    public bool IsWholeBars => (Beats / Time.Beats).Reduce().Denominator.IsOne;

    /// <summary>The chord at a beat; null where there is none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The beat is negative.</exception>
    public Chord? ChordAt(Fraction beat)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(beat, Fraction.Zero);
        return Changes is null ? null : Changes.At((beat % Changes.Beats).Reduce()).Chord;
    }

    /// <summary>
    /// What a note does at the pitch that sounds (<see cref="SoundingPitch"/>) over the chord that it starts with: its degree over that chord's root, as the chord names it where it
    /// is one of its tones, else as it is spelled; over a seventh chord 2, 4 and 6 are called 9, 11 and 13. Null where there is no
    /// chord, and for a dead note.
    /// </summary>
    public Degree? FunctionOf(PathNote note)
    {
        ArgumentNullException.ThrowIfNull(note);
        return !note.IsDead && ChordAt(note.Start) is { } chord ? FunctionOver(chord, Sounding(note, chord)) : null;
    }

    /// <summary>What a pitch does over a chord; see <see cref="FunctionOf"/>.</summary>
    internal static Degree FunctionOver(Chord chord, Pitch pitch)
    {
        var degree = chord.DegreeOf(pitch.Name);
        if (degree.Number is not (2 or 4 or 6) || chord.Formula.Contains(degree))
        {
            return degree;
        }

        foreach (var tone in chord.Formula)
        {
            if (tone.Number >= 7)
            {
                return new(degree.Number + 7, degree.Alteration);
            }
        }

        return degree;
    }

    /// <summary>
    /// The pitch that a note has in the end: the fret's, that which a bend or release leads to (of a quarter tone the semitone below it),
    /// or that of the harmonic. A bent pitch and that of a natural harmonic are spelled as the chord at its start has them, see
    /// <see cref="Chord.Spell"/>.
    /// </summary>
    public Pitch SoundingPitch(PathNote note)
    {
        ArgumentNullException.ThrowIfNull(note);
        return Sounding(note, ChordAt(note.Start));
    }

    /// <summary>The same over a chord that is known, or over none.</summary>
    internal Pitch Sounding(PathNote note, Chord? chord)
    {
        if (note.Has(Technique.NaturalHarmonic))
        {
            var open = Neck.OpenFret(note.Position.String);
            var sounds = Neck.MidiNumberAt(new(note.Position.String, open));
            var above = PathChecks.NodeAbove(note.Position.Fret - open)!.Value;
            return chord?.Spell(sounds + above.Semitones) ?? (Pitch.Simplest(sounds) + above);
        }

        var own = note.Has(Technique.ArtificialHarmonic) ? note.Pitch + Interval.Octave : note.Pitch;
        return note.Bend < 100 ? own : Spelled(own.MidiNumber + (note.Bend / 100), chord);
    }

    private static Pitch Spelled(int midiNumber, Chord? chord) =>
        chord?.Spell(midiNumber) ?? Pitch.Simplest(midiNumber);

    /// <summary>The notes that start in a bar, counted from 0.</summary>
    public IEnumerable<PathNote> InBar(int bar) =>
        notes.Where(note => note.Start >= bar * Time.Beats && note.Start < (bar + 1) * Time.Beats);

    /// <summary>How much of it there is, and its pitches; x for a dead note.</summary>
    public override string ToString() =>
        $"{notes.Length} {(notes.Length == 1 ? "note" : "notes")} in {Beats} {(Beats > Fraction.One ? "beats" : "beat")} of {Time}: {string.Join(' ', notes.Select(static note => note.IsDead ? "x" : $"{note.Pitch}"))}";
}
