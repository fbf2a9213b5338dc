using System.Diagnostics.CodeAnalysis;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Tunings.Necks;

/// <summary>A neck: a tuning, a scale length in mm, a fret count and a capo. Equal when all four agree.</summary>
/// <remarks>
/// Text: the tuning, then the measures, each after a comma and only where it is not the default:
/// <c>E2 A2 D3 G3 B3 E4, 628 mm, 24 frets, capo 2</c>.
/// </remarks>
[ReadAs("a neck")]
[EqualBy(nameof(Tuning), nameof(ScaleLength), nameof(Frets), nameof(Capo), Operators = true)]
public sealed partial class Neck : IEquatable<Neck>, ISpanParsable<Neck>
{
    /// <summary>A common scale length of a guitar, in mm: 648. From memory: 25 1/2 inches, 647.7 mm.</summary>
    public const double DefaultScaleLength = 648;

    /// <summary>A common fret count of a guitar: 22. From memory.</summary>
    public const int DefaultFrets = 22;

    /// <summary>The shortest scale length read, in mm.</summary>
    public const double MinScaleLength = 100;

    /// <summary>The longest scale length read, in mm.</summary>
    public const double MaxScaleLength = 2000;

    /// <summary>A neck.</summary>
    /// <param name="tuning">The tuning.</param>
    /// <param name="scaleLength">From nut to saddle, in mm.</param>
    /// <param name="frets">How many frets.</param>
    /// <param name="capo">The fret behind which a capo sits; 0 for none.</param>
    /// <exception cref="ArgumentOutOfRangeException">Scale length not <see cref="MinScaleLength"/> to
    /// <see cref="MaxScaleLength"/> mm, frets not 1 to <see cref="Position.MaxFret"/>, or capo not on the neck.</exception>
    /// <exception cref="ArgumentException">A short string begins beyond the last fret.</exception>
    public Neck(Tuning tuning, double scaleLength = DefaultScaleLength, int frets = DefaultFrets, int capo = 0)
    {
        ArgumentNullException.ThrowIfNull(tuning);
        if (!(scaleLength is >= MinScaleLength and <= MaxScaleLength))
        {
            throw new ArgumentOutOfRangeException(
                nameof(scaleLength),
                scaleLength,
                $"A scale length is {MinScaleLength} to {MaxScaleLength} mm."
            );
        }

        ArgumentOutOfRangeException.ThrowIfLessThan(frets, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(frets, Position.MaxFret);
        ArgumentOutOfRangeException.ThrowIfNegative(capo);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(capo, frets);
        if (tuning.Strings.Any(each => each.Start > frets))
        {
            throw new ArgumentException(
                $"{tuning} has a string that begins beyond fret {frets}, the last one.",
                nameof(tuning)
            );
        }

        Tuning = tuning;
        ScaleLength = scaleLength;
        Frets = frets;
        Capo = capo;
    }

    /// <summary>A six-string guitar in standard tuning, 648 mm, 22 frets, no capo.</summary>
    public static Neck Guitar { get; } = new(Tuning.Standard);

    /// <summary>The tuning, as it is with no capo.</summary>
    public Tuning Tuning { get; }

    /// <summary>From nut to saddle, in mm.</summary>
    public double ScaleLength { get; }

    /// <summary>How many frets.</summary>
    public int Frets { get; }

    /// <summary>The fret behind which a capo sits; 0 for none.</summary>
    public int Capo { get; }

    /// <summary>How many strings.</summary>
    public int StringCount => Tuning.StringCount;

    /// <summary>The same neck with another capo.</summary>
    public Neck WithCapo(int capo) => new(Tuning, ScaleLength, Frets, capo);

    /// <summary>The same neck in another tuning.</summary>
    public Neck With(Tuning tuning) => new(tuning, ScaleLength, Frets, Capo);

    /// <summary>
    /// The distance of a fret from the nut in mm, by equal temperament: L * (1 - 2^(-n/12)); each fret shortens what is
    /// left of the string by the same ratio, and fret 12 halves it.
    /// </summary>
    /// <param name="fret">Counted from the nut, 0 to <see cref="Position.MaxFret"/>.</param>
    public double FretDistance(int fret)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(fret);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(fret, Position.MaxFret);
        return ScaleLength * (1 - Math.Pow(2, -fret / 12.0));
    }

    /// <summary>
    /// The sounding length of a string as it is tuned, open and with no capo, in mm: the scale length, or what is left of it where a
    /// short string begins, L * 2^(-start/12).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such string.</exception>
    public double OpenLength(int @string) =>
        ScaleLength - FretDistance(Tuning[Check.Range(@string, 1, StringCount, nameof(@string))].Start);

    /// <summary>The fret at which a string sounds open: the capo, or where a short string begins, else 0.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such string.</exception>
    public int OpenFret(int @string) =>
        Math.Max(Tuning[Check.Range(@string, 1, StringCount, nameof(@string))].Start, Capo);

    /// <summary>Whether there is such a place to play: on a string, at its open fret or above, on the neck.</summary>
    public bool Has(Position position) =>
        position.String >= 1
        && position.String <= StringCount
        && position.Fret >= OpenFret(position.String)
        && position.Fret <= Frets;

    /// <summary>The MIDI number that sounds at a position.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such place to play.</exception>
    public int MidiNumberAt(Position position)
    {
        if (!Has(position))
        {
            throw new ArgumentOutOfRangeException(
                nameof(position),
                position.ToString(),
                $"This neck has {StringCount} strings, {Frets} frets and a capo at {Capo}."
            );
        }

        var each = Tuning[position.String];
        return each.Open.MidiNumber + position.Fret - each.Start;
    }

    /// <summary>Every position that sounds a pitch, by sound, string 1 first.</summary>
    public IReadOnlyList<Position> PositionsOf(Pitch pitch)
    {
        var found = new List<Position>(StringCount);
        for (var number = 1; number <= StringCount; number++)
        {
            var each = Tuning[number];
            var fret = pitch.MidiNumber - each.Open.MidiNumber + each.Start;
            if (fret >= OpenFret(number) && fret <= Frets)
            {
                found.Add(new(number, fret));
            }
        }

        return found;
    }

    /// <summary>Every place where a tone of a formula over a root lies, string by string, from the open string up.</summary>
    /// <exception cref="OverflowException">A tone would need more accidentals than a note name has.</exception>
    public IReadOnlyList<Place> PlacesOf(NoteName root, Formula formula)
    {
        // What sounds each pitch class, found once and not again at every fret.
        var tones = new (Degree Function, NoteName Name)?[Diatonic.SemitonesPerOctave];
        foreach (var degree in formula)
        {
            tones[(root.PitchClass + degree.PitchClass) % Diatonic.SemitonesPerOctave] ??= (degree, root.Add(degree));
        }

        var found = new List<Place>(StringCount * Frets / 2);
        for (var number = 1; number <= StringCount; number++)
        {
            var each = Tuning[number];
            for (var fret = OpenFret(number); fret <= Frets; fret++)
            {
                var sound = each.Open.MidiNumber + fret - each.Start;
                if (tones[Diatonic.Modulo(sound, Diatonic.SemitonesPerOctave)] is var (function, name))
                {
                    found.Add(new(new(number, fret), Pitch.Nearest(name, sound), function));
                }
            }
        }

        return found;
    }

    /// <summary>Every place where a tone of a chord lies, string by string, from the open string up.</summary>
    /// <exception cref="OverflowException">A tone would need more accidentals than a note name has.</exception>
    public IReadOnlyList<Place> PlacesOf(Chord chord)
    {
        ArgumentNullException.ThrowIfNull(chord);
        return PlacesOf(chord.Root, chord.Formula);
    }

    /// <summary>The neck as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() =>
        Tuning
        + (
            ScaleLength.Equals(DefaultScaleLength)
                ? ""
                : string.Create(System.Globalization.CultureInfo.InvariantCulture, $", {ScaleLength:R} mm")
        )
        + (Frets == DefaultFrets ? "" : $", {Frets} frets")
        + (Capo == 0 ? "" : $", capo {Capo}");

    internal static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out Neck neck)
    {
        neck = null;
        if (!Tuning.Read(ref cursor, out var tuning))
        {
            return false;
        }

        double? length = null;
        int? frets = null;
        int? capo = null;
        var capoStart = 0;
        while (cursor.Take(','))
        {
            cursor.SkipSpaces();
            var start = cursor.Position;
            if (capo is null && cursor.Take("capo"))
            {
                cursor.SkipSpaces();
                capoStart = cursor.Position;
                if (!cursor.TakeNumber(2, out var behind))
                {
                    return cursor.Fail("the fret of the capo");
                }

                capo = behind;
            }
            else if (ReadMeasure(ref cursor, out var measure, out var isWhole))
            {
                cursor.SkipSpaces();
                if (length is null && cursor.Take("mm"))
                {
                    if (!(measure is >= MinScaleLength and <= MaxScaleLength))
                    {
                        return cursor.Fail(start, $"a scale length from {MinScaleLength} to {MaxScaleLength} mm");
                    }

                    length = measure;
                }
                else if (frets is null && cursor.Take("frets"))
                {
                    if (!isWhole || measure is < 1 or > Position.MaxFret)
                    {
                        return cursor.Fail(start, $"a fret count from 1 to {Position.MaxFret}");
                    }

                    frets = (int)measure;
                }
                else
                {
                    return cursor.Fail("mm or frets after the number, each at most once");
                }
            }
            else
            {
                return cursor.Fail(start, "\"648 mm\", \"22 frets\" or \"capo 2\", each at most once");
            }

            cursor.SkipSpaces();
        }

        var last = frets ?? DefaultFrets;
        if (capo > last)
        {
            return cursor.Fail(capoStart, $"a capo at fret {last} or below");
        }

        if (tuning.Strings.Any(each => each.Start > last))
        {
            return cursor.Fail(0, $"no string that begins beyond fret {last}, the last one");
        }

        neck = new(tuning, length ?? DefaultScaleLength, last, capo ?? 0);
        return true;
    }

    /// <summary>Reads a decimal number, with or without a fraction.</summary>
    private static bool ReadMeasure(ref TextCursor cursor, out double measure, out bool isWhole)
    {
        var start = cursor.Position;
        while (char.IsAsciiDigit(cursor.Current) || cursor.Current == '.')
        {
            cursor.Position++;
        }

        var digits = cursor.Text[start..cursor.Position];
        isWhole = !digits.Contains('.');
        return double.TryParse(
            digits,
            System.Globalization.NumberStyles.AllowDecimalPoint,
            System.Globalization.CultureInfo.InvariantCulture,
            out measure
        );
    }
}
