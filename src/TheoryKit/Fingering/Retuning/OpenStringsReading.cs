using System.Collections.Immutable;
using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Naming;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Retuning;

/// <summary>
/// The open strings of a neck read: which chord they are and why, what each gives over a key, and the shapes of any chord
/// quality among them. Equal when what was asked is.
/// </summary>
[EqualBy(nameof(Neck), nameof(Key), nameof(Hand), nameof(Limits))]
public sealed partial class OpenStringsReading : IEquatable<OpenStringsReading>
{
    /// <summary>What the sheet shows shapes of: major, minor, and the three usual sevenths.</summary>
    public static IReadOnlyList<ChordQuality> UsualQualities { get; } =
    [
        .. new[] { "", "m", "7", "maj7", "m7" }.Select(static symbol =>
            ChordQuality.Known.First(q => q.Symbol == symbol)
        ),
    ];

    private OpenStringsReading(Neck neck, Key? key, Hand hand, GripLimits limits)
    {
        (Neck, Hand, Limits) = (neck, hand, limits);
        var pitches = Enumerable.Range(1, neck.StringCount).Select(PitchOf).ToList();
        var lowest = pitches.MinBy(static pitch => pitch.MidiNumber);
        Readings = ChordNaming.Readings(
            pitches.AsEnumerable().Reverse().Select(static pitch => pitch.Name),
            lowest.Name
        );
        Key = key ?? KeyOf(Chord);
        var scale = Key.Scale.Tones.Select(static tone => tone.PitchClass).ToHashSet();
        Strings = ImmutableArray.CreateRange(
            pitches.Select(
                (pitch, index) =>
                    new OpenStringRole(
                        index + 1,
                        pitch,
                        Chord.FunctionOf(pitch.Name),
                        Key.DegreeOf(Key.Spell(pitch.Name)),
                        scale.Contains(pitch.PitchClass)
                    )
            )
        );

        Pitch PitchOf(int number)
        {
            var sound = neck.MidiNumberAt(new(number, neck.OpenFret(number)));
            var open = neck.Tuning[number].Open;
            return sound == open.MidiNumber ? open : Pitch.FromMidi(sound);
        }
    }

    /// <summary>The neck.</summary>
    public Neck Neck { get; }

    /// <summary>The key that degrees are counted over: the one asked for, else the major or minor key on the chord's root, in its simplest spelling where that has no printed signature.</summary>
    public Key Key { get; }

    /// <summary>The hand that holds the shapes.</summary>
    public Hand Hand { get; }

    /// <summary>The limits of the shapes.</summary>
    public GripLimits Limits { get; }

    /// <summary>All readings of the open strings as a chord over the lowest of them, the plainest first, with reasons; see <see cref="ChordNaming"/>.</summary>
    public IReadOnlyList<ChordReading> Readings { get; }

    /// <summary>The plainest reading.</summary>
    public Chord Chord => Readings[0].Chord;

    /// <summary>What each open string gives, string 1 first.</summary>
    public IReadOnlyList<OpenStringRole> Strings { get; }

    /// <summary>The strings that give the root of the chord, the highest number first; empty where no string does.</summary>
    public IReadOnlyList<int> RootStrings =>
        [
            .. Strings
                .Where(each => each.Pitch.PitchClass == Chord.Root.PitchClass)
                .Select(static each => each.Number)
                .OrderDescending(),
        ];

    /// <summary>The open strings of a neck read.</summary>
    /// <param name="neck">The neck; behind a capo its strings sound higher.</param>
    /// <param name="key">The key to count degrees over; null for the major or minor one on the chord's root.</param>
    /// <param name="hand">The hand that holds the shapes; the average one if null.</param>
    /// <param name="limits">The limits of the shapes; common practice if null.</param>
    public static OpenStringsReading Of(Neck neck, Key? key = null, Hand? hand = null, GripLimits? limits = null)
    {
        ArgumentNullException.ThrowIfNull(neck);
        limits ??= GripLimits.Default;
        limits.Validate(neck);
        return new(neck, key, hand ?? Hand.Average, limits);
    }

    /// <summary>The movable shapes of a quality, from the least effort up; see <see cref="MovableShape.Find"/>.</summary>
    /// <param name="quality">The quality.</param>
    /// <param name="fret">The lowest fret at which they are held; <see cref="MovableShape.UsualFret"/> if null.</param>
    /// <exception cref="ArgumentOutOfRangeException">The fret is not on the neck.</exception>
    public IReadOnlyList<MovableShape> Shapes(ChordQuality quality, int? fret = null)
    {
        ArgumentNullException.ThrowIfNull(quality);
        return MovableShape.Find(quality.Formula, Neck, Hand, Limits, fret);
    }

    /// <summary>The same strings over another key.</summary>
    public OpenStringsReading Over(Key key) => new(Neck, key, Hand, Limits);

    /// <summary>Tuning, chord and key, for a reader.</summary>
    public override string ToString() => $"{Neck}: {Chord}, over {Key}";

    /// <summary>The key on the chord's root, in its simplest spelling where the root's own has no printed signature.</summary>
    private static Key KeyOf(Chord chord)
    {
        var isMinor = chord.Formula.Contains(new Degree(3, -1)) && !chord.Formula.Contains(new Degree(3));
        var key = new Key(chord.Root, isMinor);
        return key.IsPrinted ? key : key.Simplest();
    }
}
