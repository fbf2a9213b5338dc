using System.Globalization;
using System.Text;
using TheoryKit.Values;

namespace TheoryKit.Theory.Notes;

/// <summary>
/// A note name in an octave of scientific pitch notation: C4 is MIDI 60, A4 is 440 Hz. The octave belongs to the letter:
/// Cb4 sounds B3, B#3 sounds C4. Equal when spelled alike; ordered by sound, then by spelling. The default value is C0.
/// </summary>
/// <remarks>
/// Range: octaves <see cref="MinOctave"/> to <see cref="MaxOctave"/>. Text: a note name, then the octave: <c>E2</c>,
/// <c>Bb3</c>, <c>C-1</c> (MIDI 0).
/// </remarks>
[ReadAs("a pitch")]
[EqualBy(nameof(Name), nameof(octave))]
[Ordered]
public readonly partial struct Pitch : IEquatable<Pitch>, IComparable<Pitch>, ISpanParsable<Pitch>, IFormattable
{
    /// <summary>The lowest octave: -2.</summary>
    public const int MinOctave = -2;

    /// <summary>The highest octave: 12.</summary>
    public const int MaxOctave = 12;

    /// <summary>The frequency that A4 is tuned to, in Hz. Looked up: ISO 16:1975.</summary>
    public const double StandardA4 = 440.0;

    /// <summary>The lowest frequency that A4 may be tuned to, in Hz: 100, far below any pitch standard.</summary>
    public const double MinA4 = 100;

    /// <summary>The highest frequency that A4 may be tuned to, in Hz: 1000, far above any pitch standard.</summary>
    public const double MaxA4 = 1000;

    private const int MidiOfA4 = 69;

    private readonly sbyte octave;

    /// <summary>A note name in an octave.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The octave is below <see cref="MinOctave"/> or above <see cref="MaxOctave"/>.</exception>
    public Pitch(NoteName name, int octave)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(octave, MinOctave);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(octave, MaxOctave);
        Name = name;
        this.octave = (sbyte)octave;
    }

    /// <summary>The name without the octave.</summary>
    public NoteName Name { get; }

    /// <summary>The octave of the letter.</summary>
    public int Octave => octave;

    /// <summary>The pitch class, 0 (C) to 11 (B).</summary>
    public int PitchClass => Name.PitchClass;

    /// <summary>The key number of MIDI, C4 = 60. Beyond 0 to 127 for pitches that MIDI can't say; see <see cref="IsMidi"/>.</summary>
    public int MidiNumber => Diatonic.Semitones((int)Name.Letter) + Name.Alteration + (12 * (octave + 1));

    /// <summary>Whether MIDI has a key for it (0 to 127).</summary>
    public bool IsMidi => MidiNumber is >= 0 and <= 127;

    /// <summary>The pitch of a MIDI key number, spelled with the fewest accidentals, sharps before flats.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is not 0 to 127.</exception>
    public static Pitch FromMidi(int number)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(number);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(number, 127);
        return Simplest(number);
    }

    /// <summary>As <see cref="FromMidi"/>, for numbers beyond MIDI too.</summary>
    internal static Pitch Simplest(int number) =>
        Nearest(new NoteName(Letter.C, Diatonic.Modulo(number, 12)).Simplest(), number);

    /// <summary>The pitch of that name that sounds at <paramref name="midiNumber"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The pitch lies below <see cref="MinOctave"/> or above <see cref="MaxOctave"/>.</exception>
    /// <exception cref="ArgumentException">The name is of another pitch class.</exception>
    public static Pitch Nearest(NoteName name, int midiNumber)
    {
        var first = new Pitch(name, 0);
        var above = (long)midiNumber - first.MidiNumber;
        if (above is < 12 * MinOctave or > (12 * MaxOctave) + 11)
        {
            throw new ArgumentOutOfRangeException(
                nameof(midiNumber),
                midiNumber,
                $"{name} has octaves {MinOctave} to {MaxOctave}: MIDI numbers {first.MidiNumber + (12 * MinOctave)} to {first.MidiNumber + (12 * MaxOctave)}."
            );
        }

        return above % 12 == 0
            ? new(name, (int)(above / 12))
            : throw new ArgumentException($"{name} never sounds at MIDI number {midiNumber}.", nameof(name));
    }

    /// <summary>The frequency in Hz in equal temperament: a4 * 2^((MIDI number - 69) / 12).</summary>
    /// <param name="a4">The frequency of A4 in Hz; 440 by ISO 16:1975.</param>
    /// <exception cref="ArgumentOutOfRangeException">The reference is not <see cref="MinA4"/> to <see cref="MaxA4"/> Hz.</exception>
    public double Frequency(double a4 = StandardA4)
    {
        return Check.Range(a4, MinA4, MaxA4) * Math.Pow(2, (MidiNumber - MidiOfA4) / 12.0);
    }

    /// <summary>The pitch <paramref name="interval"/> above (below, if it descends).</summary>
    public static Pitch operator +(Pitch pitch, Interval interval) => pitch.Add(interval);

    /// <summary>The pitch <paramref name="interval"/> below.</summary>
    public static Pitch operator -(Pitch pitch, Interval interval) => pitch.Add(-interval);

    /// <summary>The interval from the second pitch up to the first.</summary>
    public static Interval operator -(Pitch left, Pitch right) => right.To(left);

    /// <summary>The pitch <paramref name="interval"/> above (below, if it descends).</summary>
    /// <exception cref="OverflowException">Beyond the range of octaves or accidentals.</exception>
    public Pitch Add(Interval interval)
    {
        var octaves = octave + Diatonic.FloorDivide((int)Name.Letter + interval.Steps, Diatonic.StepsPerOctave);
        return octaves is >= MinOctave and <= MaxOctave
            ? new(Name + interval, octaves)
            : throw new OverflowException($"{this} and {interval} lie beyond octaves {Octaves}.");
    }

    /// <summary>The interval from this pitch to <paramref name="other"/>.</summary>
    public Interval To(Pitch other) =>
        new((int)other.Name.Letter - (int)Name.Letter + (7 * (other.octave - octave)), other.MidiNumber - MidiNumber);

    /// <summary>The same sound with the fewest accidentals.</summary>
    public Pitch Simplest() => Nearest(Name.Simplest(), MidiNumber);

    /// <summary>Whether both sound alike.</summary>
    public bool IsEnharmonicTo(Pitch other) => MidiNumber == other.MidiNumber;

    /// <inheritdoc/>
    public int CompareTo(Pitch other)
    {
        var bySound = MidiNumber.CompareTo(other.MidiNumber);
        return bySound != 0
            ? bySound
            : ((octave * 7) + (int)Name.Letter).CompareTo((other.octave * 7) + (int)other.Name.Letter);
    }

    private static string Octaves => string.Create(CultureInfo.InvariantCulture, $"{MinOctave} to {MaxOctave}");

    /// <summary>The pitch as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() => ToString(null, null);

    /// <summary>The pitch: "G" (or null) plain, <c>Bb3</c>; "P" printed, <c>B♭3</c>; in the language of a <see cref="NoteNaming"/>.</summary>
    /// <exception cref="FormatException">Another format.</exception>
    public string ToString(string? format, IFormatProvider? formatProvider = null)
    {
        var text = new StringBuilder(6);
        Name.Write(text, TextFormat.IsPrinted(format), NoteNaming.Of(formatProvider));
        return text.Append(CultureInfo.InvariantCulture, $"{octave}").ToString();
    }

    internal static bool Read(ref TextCursor cursor, out Pitch pitch)
    {
        pitch = default;
        if (!NoteName.Read(ref cursor, out var name))
        {
            return false;
        }

        var start = cursor.Position;
        var sign = cursor.Take('-') ? -1 : 1;
        if (!cursor.TakeNumber(2, out var octave) || sign * octave is < MinOctave or > MaxOctave)
        {
            return cursor.Fail(start, $"an octave from {Octaves} after the note name (as in E2)");
        }

        pitch = new(name, sign * octave);
        return true;
    }
}
