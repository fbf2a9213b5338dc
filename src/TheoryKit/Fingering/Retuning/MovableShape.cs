using System.Collections.Immutable;
using System.Globalization;
using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Retuning;

/// <summary>
/// A grip of a chord quality that moves along the neck: its frets counted from the lowest, the string that holds the root, what
/// each string gives. Equal when tuning, formula, frets and functions are.
/// </summary>
/// <remarks>
/// It has no open string, so one shape is the chord on every root; how hard it is depends on the fret (see
/// <see cref="Effort"/>). A shape that holds every string at one fret is also the open strings themselves; where the hand has no barre for that, they
/// alone are the shape (<see cref="IsOpenOnly"/>), and only something laid across the strings moves it.
/// </remarks>
[EqualBy(nameof(Tuning), nameof(Formula), nameof(frets), nameof(functions), Operators = true)]
public sealed partial class MovableShape : IEquatable<MovableShape>
{
    /// <summary>The fret at which effort is compared unless told: 5, in the middle of where such shapes are used.</summary>
    public const int UsualFret = 5;

    private readonly ImmutableArray<int?> frets; // string 1 first
    private readonly ImmutableArray<Degree?> functions;
    private readonly GripQuery question;

    private MovableShape(ChordGrip grip, GripQuery question)
    {
        this.question = question;
        Grip = grip;
        var lowest = grip.Grip.Positions.Min(static position => position.Fret);
        frets = [.. grip.Grip.Strings.Select(each => each.Fret - lowest)];
        var byString = grip.Places.ToDictionary(static place => place.Position.String, static place => place.Function);
        functions =
        [
            .. Enumerable
                .Range(1, frets.Length)
                .Select(number => byString.TryGetValue(number, out var function) ? function : (Degree?)null),
        ];
        Fret = lowest;
    }

    /// <summary>The grip as it was found, on some root.</summary>
    public ChordGrip Grip { get; }

    /// <summary>The tuning.</summary>
    public Tuning Tuning => Grip.Neck.Tuning;

    /// <summary>What it sounds over the root.</summary>
    public Formula Formula => Grip.Chord.Formula;

    /// <summary>The lowest fret of <see cref="Grip"/>, at which <see cref="Effort"/> is told.</summary>
    public int Fret { get; }

    /// <summary>For each string, string 1 first, how many frets above the lowest it is held; null where it is muted.</summary>
    public IReadOnlyList<int?> Frets => frets;

    /// <summary>For each string, string 1 first, what it gives over the root; null where it is muted.</summary>
    public IReadOnlyList<Degree?> Functions => functions;

    /// <summary>The strings that hold the root, the one that sounds lowest first; empty where the root is left out.</summary>
    public IReadOnlyList<int> RootStrings =>
        [
            .. Grip
                .Places.Where(static place => place.Function == Degree.Root)
                .Select(static place => place.Position.String),
        ];

    /// <summary>What holding it costs the hand at <see cref="Fret"/>; see <see cref="EffortWeights"/>.</summary>
    public double Effort => Grip.Effort;

    /// <summary>How many fingers hold it.</summary>
    public int Fingers => Grip.Grip.Strings.Select(static each => each.Finger).OfType<Finger>().Distinct().Count();

    /// <summary>Whether every string that sounds is held at one fret: the open strings are this shape too.</summary>
    public bool IsOneFret => frets.All(static fret => fret is null or 0);

    /// <summary>Whether the open strings sound it and this hand has no barre for it: then it is at its open fret only.</summary>
    public bool IsOpenOnly => !Grip.Grip.IsMovable;

    /// <summary>
    /// The shapes of a chord quality, distinct, from the least effort at a stated fret up: every grip without open strings whose
    /// lowest fret is that one, over any root, and where the open strings sound the chord, those.
    /// </summary>
    /// <param name="formula">What is to sound over the root.</param>
    /// <param name="neck">The neck.</param>
    /// <param name="hand">The hand; the average one if null.</param>
    /// <param name="limits">The limits of the grips, but for frets and open strings; common practice if null.</param>
    /// <param name="fret">The lowest fret at which the hand holds them, above the capo; null for <see cref="UsualFret"/>, or the nearest that the neck has.</param>
    /// <exception cref="ArgumentOutOfRangeException">The fret is not on the neck, or behind the capo.</exception>
    /// <exception cref="ArgumentException">The limits contradict the neck.</exception>
    public static IReadOnlyList<MovableShape> Find(
        Formula formula,
        Neck neck,
        Hand? hand = null,
        GripLimits? limits = null,
        int? fret = null
    )
    {
        ArgumentNullException.ThrowIfNull(neck);
        hand ??= Hand.Average;
        limits ??= GripLimits.Default;
        var first = Math.Min(neck.Capo + 1, neck.Frets);
        var at = fret ?? Math.Clamp(UsualFret, first, neck.Frets);
        if (at < first || at > neck.Frets)
        {
            throw new ArgumentOutOfRangeException(
                nameof(fret),
                at,
                $"Fret {at} can't be held on the neck {neck}; frets {first} to {neck.Frets} can."
            );
        }

        var found = new List<MovableShape>();
        var known = new HashSet<MovableShape>();
        foreach (var chord in Roots(formula))
        {
            var held = (limits with { OpenStrings = OpenStrings.None, FirstFret = at, LastFret = null }).For(
                chord,
                neck,
                hand
            );
            Add(GripSearch.FromFirstFret(held).Where(grip => grip.Grip.LowestFret == at), held);
        }

        foreach (var chord in Roots(formula))
        {
            // Open strings move only where all that sound begin at one fret.
            var open = (limits with { OpenStrings = OpenStrings.Only }).For(chord, neck, hand);
            Add(
                GripSearch
                    .Find(open)
                    .Where(static grip => grip.Grip.Positions.Select(static each => each.Fret).Distinct().Count() == 1),
                open
            );
        }

        found.Sort(
            static (one, other) =>
            {
                var order = one.IsOpenOnly.CompareTo(other.IsOpenOnly);
                order = order == 0 ? one.Effort.CompareTo(other.Effort) : order;
                for (var at = 0; order == 0 && at < one.frets.Length; at++)
                {
                    order = (one.frets[at] ?? -1).CompareTo(other.frets[at] ?? -1);
                }

                return order == 0 ? one.Grip.Chord.Root.PitchClass.CompareTo(other.Grip.Chord.Root.PitchClass) : order;
            }
        );
        return ImmutableArray.CreateRange(found);

        void Add(IEnumerable<ChordGrip> grips, GripQuery query)
        {
            foreach (var grip in grips)
            {
                var shape = new MovableShape(grip, query);
                if (known.Add(shape))
                {
                    found.Add(shape);
                }
            }
        }
    }

    /// <summary>The shapes that are no part of another one of these: what is left when no string is let go that comes for free.</summary>
    public static IReadOnlyList<MovableShape> Whole(IReadOnlyList<MovableShape> shapes)
    {
        shapes = Check.Items(shapes);
        return [.. shapes.Where(shape => !shapes.Any(other => other != shape && shape.IsPartOf(other)))];
    }

    /// <summary>Whether another shape holds all its strings alike, with the same functions, and more strings besides with no more fingers.</summary>
    public bool IsPartOf(MovableShape other)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (Tuning != other.Tuning || Formula != other.Formula || other.Fingers > Fingers)
        {
            return false;
        }

        int? shift = null;
        for (var index = 0; index < frets.Length; index++)
        {
            if (frets[index] is not { } fret)
            {
                continue;
            }

            if (
                other.frets[index] is not { } there
                || functions[index] != other.functions[index]
                || (shift ??= there - fret) != there - fret
            )
            {
                return false;
            }
        }

        return other.frets.Count(static fret => fret is not null) > frets.Count(static fret => fret is not null);
    }

    /// <summary>The root that it sounds with its lowest fret at one of the neck, spelled as the key with the fewest accidentals spells it.</summary>
    /// <param name="fret">The fret, counted from the nut.</param>
    public NoteName RootAt(int fret) =>
        fret == Fret ? Grip.Chord.Root : NameOf(Diatonic.Modulo(Grip.Chord.Root.PitchClass + fret - Fret, 12), Formula);

    /// <summary>The lowest fret, above capo and short strings' pegs, at which its lowest fret stands for a root; null if the neck ends before.</summary>
    /// <remarks>For an octave more add 12.</remarks>
    public int? FretOf(NoteName root)
    {
        var neck = Grip.Neck;
        var least = Enumerable
            .Range(1, frets.Length)
            .Where(number => frets[number - 1] is not null)
            .Max(number => neck.OpenFret(number) - frets[number - 1]!.Value + (IsOpenOnly ? 0 : 1));
        var fret = Fret + Diatonic.Modulo(root.PitchClass - RootAt(Fret).PitchClass, 12);
        while (fret - 12 >= least)
        {
            fret -= 12;
        }

        while (fret < least)
        {
            fret += 12;
        }

        return fret + frets.Max() <= neck.Frets && (!IsOpenOnly || fret == Fret) ? fret : null;
    }

    /// <summary>The grip with its lowest fret at one of the neck; null where the neck or the hand has none there.</summary>
    /// <param name="fret">The fret, counted from the nut.</param>
    public ChordGrip? At(int fret)
    {
        if (fret == Fret)
        {
            return Grip;
        }

        if (IsOpenOnly || fret < 1 || fret > Grip.Neck.Frets - frets.Max())
        {
            return null;
        }

        var answer = GripSearch.Find(
            question with
            {
                Chord = new(RootAt(fret), Formula),
                FirstFret = fret,
                LastFret = fret + frets.Max(),
            }
        );
        return answer.FirstOrDefault(grip =>
            grip.Grip.Strings.Select(each => each.Fret - fret).SequenceEqual(frets)
            && grip.Chord.Root.PitchClass == RootAt(fret).PitchClass
        );
    }

    /// <summary>The frets from the highest-numbered string down to string 1, counted from the lowest, <c>x</c> for muted: <c>0 2 2 1 0 0</c>.</summary>
    public override string ToString() =>
        string.Join(' ', frets.Reverse().Select(static fret => fret?.ToString(CultureInfo.InvariantCulture) ?? "x"));

    /// <summary>The chord on each of the twelve roots.</summary>
    private static IEnumerable<Chord> Roots(Formula formula) =>
        Enumerable.Range(0, Diatonic.SemitonesPerOctave).Select(root => new Chord(NameOf(root, formula), formula));

    /// <summary>A root by its sound, with the name on which the chord's key has the fewest accidentals.</summary>
    private static NoteName NameOf(int pitchClass, Formula formula)
    {
        var isMinor = formula.Contains(new Degree(3, -1)) && !formula.Contains(new Degree(3));
        return new Key(Pitch.FromMidi(60 + pitchClass).Name, isMinor).Simplest().Tonic;
    }
}
