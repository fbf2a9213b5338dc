using System.Diagnostics.CodeAnalysis;
using System.Text;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Theory.Scales;

/// <summary>
/// A scale on a tonic: <c>Eb dorian</c>. Equal when tonic and formula agree, spelling included.
/// </summary>
/// <remarks>
/// The formula begins on 1 and rises within the octave. Text: the tonic, then the name of a <see cref="ScaleType"/> or the
/// formula in brackets: <c>F# major</c>, <c>C [1 2 3 #4]</c>; written with the name where the formula has one.
/// </remarks>
[ReadAs("a scale")]
[EqualBy(nameof(Tonic), nameof(Formula), Operators = true)]
public sealed partial class Scale : IEquatable<Scale>, ISpanParsable<Scale>, IFormattable
{
    private const int UsualTones = 4;

    /// <summary>A scale of a formula.</summary>
    /// <exception cref="ArgumentException">The formula does not begin on 1 or does not rise within the octave.</exception>
    public Scale(NoteName tonic, Formula formula)
    {
        if (!formula.IsScale)
        {
            throw new ArgumentException($"{formula} is no scale: {Formula.NoScale}", nameof(formula));
        }

        Tonic = tonic;
        Formula = formula;
    }

    /// <summary>A scale of a type.</summary>
    public Scale(NoteName tonic, ScaleType type)
    {
        ArgumentNullException.ThrowIfNull(type);
        Tonic = tonic;
        Formula = type.Formula;
    }

    /// <summary>The note it begins on.</summary>
    public NoteName Tonic { get; }

    /// <summary>Its degrees, in rising order from 1.</summary>
    public Formula Formula { get; }

    /// <summary>The named type with this formula; null if it has no name.</summary>
    public ScaleType? Type => ScaleType.Find(Formula);

    /// <summary>How many tones it has.</summary>
    public int Count => Formula.Count;

    /// <summary>The degrees in rising order; the same as the formula.</summary>
    public IReadOnlyList<Degree> Degrees => Formula;

    /// <summary>The tones in rising order from the tonic.</summary>
    /// <exception cref="OverflowException">A tone would need more accidentals than a note name has.</exception>
    public IReadOnlyList<NoteName> Tones => Formula.Tones(Tonic);

    /// <summary>The pitch classes of the tones, 0 (C) to 11 (B).</summary>
    public PitchClassSet PitchClasses
    {
        get
        {
            var mask = 0;
            foreach (var degree in Formula)
            {
                mask |= 1 << ((Tonic.PitchClass + degree.PitchClass) % Diatonic.SemitonesPerOctave);
            }

            return new((ushort)mask);
        }
    }

    /// <summary>All modes, beginning with the scale itself: the same notes, each in turn as the tonic.</summary>
    /// <exception cref="OverflowException">A degree or a tone would need too many accidentals.</exception>
    public IReadOnlyList<Scale> Modes => [.. Enumerable.Range(1, Count).Select(Mode)];

    /// <summary>The same notes from another of them: mode 2 of C major is D dorian.</summary>
    /// <param name="number">Which tone becomes the tonic, 1 to <see cref="Count"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are fewer tones.</exception>
    /// <exception cref="OverflowException">A degree or a tone would need too many accidentals.</exception>
    public Scale Mode(int number)
    {
        var mode = Formula.Mode(number);
        return new(Tonic.Add(Formula[number - 1]), mode);
    }

    /// <summary>The scale of another type with the same notes by sound (A minor for C major); null if there is none.</summary>
    public Scale? Relative(ScaleType type)
    {
        ArgumentNullException.ThrowIfNull(type);
        return Tones.Select(tone => new Scale(tone, type)).FirstOrDefault(scale => scale.PitchClasses == PitchClasses);
    }

    /// <summary>The scale of another type on the same tonic.</summary>
    public Scale Parallel(ScaleType type) => new(Tonic, type);

    /// <summary>The scale an interval away.</summary>
    /// <exception cref="OverflowException">The tonic would need too many accidentals.</exception>
    public Scale Transpose(Interval interval) => new(Tonic + interval, Formula);

    /// <summary>Whether a note sounds like one of the tones.</summary>
    public bool Contains(NoteName note) => DegreeOf(note) is not null;

    /// <summary>Whether all notes of a chord, its bass included, sound like tones of the scale.</summary>
    public bool Contains(Chord chord)
    {
        ArgumentNullException.ThrowIfNull(chord);
        return PitchClasses.Contains(chord.PitchClasses);
    }

    /// <summary>The degree that a note sounds; null if it is not in the scale.</summary>
    public Degree? DegreeOf(NoteName note) => Formula.At(note.PitchClass - Tonic.PitchClass);

    /// <summary>
    /// The chord stacked in thirds on a step of the scale: every second tone from there, <c>Dm7</c> on step 2 of C major.
    /// </summary>
    /// <remarks>
    /// In a scale of seven letters every second tone is a third. In others a distance of three or four semitones counts as
    /// a third (whole-half diminished on C gives C Eb Gb Bbb); any other keeps the letters of the scale. Beyond the octave only 9,
    /// 11 and 13 are said: A minor pentatonic on A gives <c>1 b3 4 b7</c>, not <c>b10</c>.
    /// </remarks>
    /// <param name="step">The step that carries the root, 1 to <see cref="Count"/>.</param>
    /// <param name="tones">
    /// How many tones, from 1 to as many as there are before one returns; if null four, or as many as there are (three in a
    /// blues scale of six tones).
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">No such step, or so many tones that one would return.</exception>
    /// <exception cref="OverflowException">A degree or the root would need too many accidentals.</exception>
    public Chord Chord(int step, int? tones = null)
    {
        var most = Count % 2 == 0 ? Count / 2 : Count;
        var count = tones ?? Math.Min(UsualTones, most);
        ArgumentOutOfRangeException.ThrowIfLessThan(step, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(step, Count);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1, nameof(tones));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, most, nameof(tones));
        var mode = Formula.Mode(step);
        var (above, formula) = (Interval.Unison, Formula.Empty.With(Degree.Root));
        for (var index = 2; index < 2 * count; index += 2)
        {
            var from = mode[(index - 2) % Count].Interval;
            var to = mode[index % Count].Interval;
            var gap = index % Count < (index - 2) % Count ? to + Interval.Octave - from : to - from;
            above += gap.Semitones is 3 or 4 ? new Interval(2, gap.Semitones) : gap;
            var degree = Formula.AsDegree(above);
            formula = formula.With(degree.Number is 9 or 11 or 13 ? degree : degree.Simple);
        }

        return new(Tonic.Add(Formula[step - 1]), formula);
    }

    /// <summary>The chords stacked in thirds on every step.</summary>
    /// <inheritdoc cref="Chord(int, int?)"/>
    public IReadOnlyList<Chord> Chords(int? tones = null) =>
        [.. Enumerable.Range(1, Count).Select(step => Chord(step, tones))];

    /// <summary>The scale as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() => ToString(null, null);

    /// <summary>The scale: "G" (or null) plain, <c>Eb dorian</c>; "P" printed, <c>E♭ dorian</c>; the tonic in the language of a <see cref="NoteNaming"/>.</summary>
    /// <exception cref="FormatException">Another format.</exception>
    public string ToString(string? format, IFormatProvider? formatProvider = null)
    {
        var text = new StringBuilder();
        Tonic.Write(text, TextFormat.IsPrinted(format), NoteNaming.Of(formatProvider));
        text.Append(' ');
        return Type is { } type
            ? text.Append(type.ToString(format)).ToString()
            : text.Append('[').Append(Formula.ToString(format)).Append(']').ToString();
    }

    private static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out Scale scale)
    {
        scale = null;
        if (!NoteName.Read(ref cursor, out var tonic))
        {
            return false;
        }

        if (!cursor.SkipSpaces())
        {
            return cursor.Fail("a space after the tonic, then the scale (as in \"Eb dorian\")");
        }

        if (!cursor.Take('['))
        {
            if (!ScaleType.Read(ref cursor, out var type))
            {
                return false;
            }

            scale = new(tonic, type);
            return true;
        }

        var start = cursor.Position;
        if (!Formula.Read(ref cursor, out var formula))
        {
            return false;
        }

        if (!formula.IsScale)
        {
            return cursor.Fail(start, "degrees that begin on 1 and rise within the octave (as in [1 2 3 #4])");
        }

        scale = new(tonic, formula);
        return cursor.Take(']') || cursor.Fail("] after the degrees");
    }
}
