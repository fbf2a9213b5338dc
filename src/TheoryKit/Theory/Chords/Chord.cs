using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Theory.Chords;

/// <summary>
/// A chord: a root, a formula over it and the lowest note. Equal when all three agree, spelling included.
/// </summary>
/// <remarks>
/// The bass is the root unless a slash says otherwise; it need not be one of the tones. How chords are written is in the
/// grammar on <see cref="Parse(string, IFormatProvider?)"/>.
/// </remarks>
[ReadAs(
    "a chord",
    End = "the end of the text: a chord is written without spaces (Cmaj7), several are read by ParseList"
)]
[EqualBy(nameof(Root), nameof(Formula), nameof(Bass), Operators = true)]
public sealed partial class Chord : IEquatable<Chord>
{
    /// <summary>A chord over a root.</summary>
    /// <param name="root">The root.</param>
    /// <param name="formula">Its degrees over the root; at least one.</param>
    /// <param name="bass">The lowest note; the root if null.</param>
    /// <exception cref="ArgumentException">The formula is empty.</exception>
    public Chord(NoteName root, Formula formula, NoteName? bass = null)
    {
        if (formula.Count == 0)
        {
            throw new ArgumentException("A chord has at least one tone.", nameof(formula));
        }

        Root = root;
        Formula = formula;
        Bass = bass ?? root;
    }

    /// <summary>The root.</summary>
    public NoteName Root { get; }

    /// <summary>The degrees over the root.</summary>
    public Formula Formula { get; }

    /// <summary>The lowest note: the root, or the note after the slash.</summary>
    public NoteName Bass { get; }

    /// <summary>The tones in the formula's order, spelled over the root.</summary>
    /// <exception cref="OverflowException">A tone would need more accidentals than a note name has.</exception>
    public IReadOnlyList<NoteName> Tones => Formula.Tones(Root);

    /// <summary>The pitch classes that sound, 0 (C) to 11 (B), the bass among them.</summary>
    public PitchClassSet PitchClasses
    {
        get
        {
            var mask = 1 << Bass.PitchClass;
            foreach (var degree in Formula)
            {
                mask |= 1 << ((Root.PitchClass + degree.PitchClass) % 12);
            }

            return new((ushort)mask);
        }
    }

    /// <summary>The function of a note in this chord, by sound; null if it is not a tone of the formula.</summary>
    public Degree? FunctionOf(NoteName note) => Formula.At(note.PitchClass - Root.PitchClass);

    /// <summary>
    /// What any note is against the root: the function of a tone of the chord that sounds like it, else its own degree within
    /// the octave, as spelled, or by its sound where the spelling is so far away that no degree has as many accidentals.
    /// </summary>
    public Degree DegreeOf(NoteName note)
    {
        if (FunctionOf(note) is { } function)
        {
            return function;
        }

        var interval = Root.To(note);
        var alteration = interval.Semitones - Diatonic.Semitones(interval.Steps);
        return Math.Abs(alteration) <= Degree.MaxAlteration
            ? new(interval.Steps + 1, alteration)
            : BySound.At(interval.Semitones)!.Value;
    }

    /// <summary>
    /// How a sound is spelled over this chord: a tone of the formula as the chord has it, anything else by its usual degree against the
    /// root: b2 2 b3 3 4 b6 6 b7 7, #4 beside a major third and b5 beside none.
    /// </summary>
    /// <param name="midiNumber">The sound.</param>
    /// <exception cref="ArgumentOutOfRangeException">It lies beyond the octaves of a pitch.</exception>
    public Pitch Spell(int midiNumber)
    {
        var above = Diatonic.Modulo(Diatonic.Modulo(midiNumber, 12) - Root.PitchClass, 12);
        var degree =
            Formula.At(above) ?? (above == 6 && Formula.At(4) is null ? new Degree(5, -1) : BySound.At(above)!.Value);
        return Pitch.Nearest(Root.Add(degree), midiNumber);
    }

    private static readonly Formula BySound = Formula.Parse("1 b2 2 b3 3 4 #4 5 b6 6 b7 7");

    /// <summary>The chord an interval away, the bass with it.</summary>
    public Chord Transpose(Interval interval) => new(Root + interval, Formula, Bass + interval);

    /// <summary>The same chord over another lowest note.</summary>
    public Chord Over(NoteName bass) => new(Root, Formula, bass);
}
