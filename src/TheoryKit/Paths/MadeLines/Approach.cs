using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;
using TheoryKit.Values;

namespace TheoryKit.Paths.MadeLines;

/// <summary>A neighbour of a tone that leads to it.</summary>
public enum Neighbour
{
    /// <summary>The semitone below.</summary>
    SemitoneBelow,

    /// <summary>The semitone above.</summary>
    SemitoneAbove,

    /// <summary>A whole tone below, whatever the scale.</summary>
    WholeToneBelow,

    /// <summary>A whole tone above, whatever the scale.</summary>
    WholeToneAbove,

    /// <summary>The next tone of the scale below, a semitone or a whole tone or more away.</summary>
    ScaleToneBelow,

    /// <summary>The next tone of the scale above.</summary>
    ScaleToneAbove,
}

/// <summary>
/// A way to come to a tone: its neighbours in the order in which they are played before it. A closed catalogue, <see cref="Known"/>: a further
/// way is one entry there. Equal when the names are.
/// </summary>
[EqualBy(nameof(Name))]
public sealed partial record Approach
{
    private readonly Sequence<Neighbour> neighbours;

    private Approach(string name, params Neighbour[] neighbours)
    {
        Name = name;
        this.neighbours = neighbours.ToSequence();
    }

    /// <summary>A semitone below.</summary>
    public static Approach FromBelow { get; } = new("from a semitone below", Neighbour.SemitoneBelow);

    /// <summary>A semitone above.</summary>
    public static Approach FromAbove { get; } = new("from a semitone above", Neighbour.SemitoneAbove);

    /// <summary>The next tone of the scale below.</summary>
    public static Approach ScaleFromBelow { get; } = new("from the scale below", Neighbour.ScaleToneBelow);

    /// <summary>The next tone of the scale above.</summary>
    public static Approach ScaleFromAbove { get; } = new("from the scale above", Neighbour.ScaleToneAbove);

    /// <summary>Two semitones in a row from below.</summary>
    public static Approach TwiceFromBelow { get; } =
        new("from two semitones below", Neighbour.WholeToneBelow, Neighbour.SemitoneBelow);

    /// <summary>Two semitones in a row from above.</summary>
    public static Approach TwiceFromAbove { get; } =
        new("from two semitones above", Neighbour.WholeToneAbove, Neighbour.SemitoneAbove);

    /// <summary>The scale tone above, then the semitone below.</summary>
    public static Approach EnclosureFromAbove { get; } =
        new("enclosure from above", Neighbour.ScaleToneAbove, Neighbour.SemitoneBelow) { IsEnclosure = true };

    /// <summary>The semitone below, then the scale tone above.</summary>
    public static Approach EnclosureFromBelow { get; } =
        new("enclosure from below", Neighbour.SemitoneBelow, Neighbour.ScaleToneAbove) { IsEnclosure = true };

    /// <summary>Every way.</summary>
    public static IReadOnlyList<Approach> Known { get; } =
    [
        FromBelow,
        FromAbove,
        ScaleFromBelow,
        ScaleFromAbove,
        TwiceFromBelow,
        TwiceFromAbove,
        EnclosureFromAbove,
        EnclosureFromBelow,
    ];

    /// <summary>The name, unique in the catalogue.</summary>
    public string Name { get; }

    /// <summary>The neighbours in the order in which they are played.</summary>
    public IReadOnlyList<Neighbour> Neighbours => neighbours;

    /// <summary>Whether the tone lies between its neighbours.</summary>
    public bool IsEnclosure { get; private init; }

    /// <summary>A way by its name; null if it is none.</summary>
    public static Approach? Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return Known.FirstOrDefault(each => each.Name.Equals(name.Trim(), StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>A way by its name.</summary>
    /// <exception cref="ArgumentException">There is none; the message says which names come nearest.</exception>
    public static Approach Named(string name) =>
        Find(name) ?? throw NearNames.NoSuch(name, "approach", Known.Select(static each => each.Name), nameof(name));

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    /// <summary>The neighbour of a tone, spelled by the letter next to it or by the scale; null where there is no scale.</summary>
    internal static Pitch? NeighbourOf(Pitch tone, Neighbour neighbour, Scale? scale)
    {
        return neighbour switch
        {
            Neighbour.SemitoneBelow => Plain(tone - Semitone),
            Neighbour.SemitoneAbove => Plain(tone + Semitone),
            Neighbour.WholeToneBelow => Plain(tone - WholeTone),
            Neighbour.WholeToneAbove => Plain(tone + WholeTone),
            Neighbour.ScaleToneBelow => InScale(-1),
            _ => InScale(1),
        };

        static Pitch Plain(Pitch pitch) => Math.Abs(pitch.Name.Alteration) > 1 ? pitch.Simplest() : pitch;

        Pitch? InScale(int step)
        {
            if (scale is null)
            {
                return null;
            }

            for (var away = 1; away <= 12; away++)
            {
                var sound = tone.MidiNumber + (step * away);
                if (scale.Formula.At(sound - scale.Tonic.PitchClass) is { } degree)
                {
                    return Pitch.Nearest(scale.Tonic.Add(degree), sound);
                }
            }

            return null;
        }
    }

    private static Interval Semitone { get; } = new(1, 1);

    private static Interval WholeTone { get; } = new(1, 2);
}
