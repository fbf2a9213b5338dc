using System.Collections.Frozen;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;
using TheoryKit.Values;

namespace TheoryKit.Theory.Relations;

/// <summary>
/// What a formula is related to: the triads and seventh chords inside it, the scales around it, the formulas one tone away, the
/// same notes from another root, and what kind of set its sounds make. Equal when the formulas are; safe on any thread.
/// </summary>
/// <remarks>
/// Everything goes by sound, octaves aside; where the spelling then changes, the answer says so. Where two degrees of the
/// formula sound alike (b3 and #9) the first stands for both. Each list is worked out when it is first asked for.
/// </remarks>
[EqualBy(nameof(Formula))]
public sealed partial class FormulaRelations : IEquatable<FormulaRelations>
{
    // By semitones over the root, the degrees of a scale with at most one accidental, fewer first; the root is never altered.
    private static readonly Degree[][] ScaleDegrees =
    [
        .. from pitchClass in Enumerable.Range(0, Diatonic.SemitonesPerOctave)
        select (
            from alteration in new[] { 0, -1, 1 }
            from number in Enumerable.Range(1, Diatonic.StepsPerOctave)
            let degree = new Degree(number, alteration)
            where degree.Semitones == pitchClass && (number > 1 || alteration == 0)
            select degree
        ).ToArray(),
    ];

    // The catalogue's chords by what they sound, in the order of the catalogue.
    private static readonly Lazy<FrozenDictionary<PitchClassSet, ChordQuality[]>> BySound = new(static () =>
        ChordQuality
            .Known.GroupBy(static quality => quality.Formula.PitchClasses)
            .ToFrozenDictionary(static group => group.Key, static group => group.ToArray())
    );

    // By semitones over the root, what a tone of a chord may be called, the usual first.
    private static readonly Degree[][] Functions =
    [
        .. "1,b9 b2,9 2,b3 #9,3,11 4,b5 #11 #4,5,#5 b13 b6,6 13 bb7,b7,7"
            .Split(',')
            .Select(static names => names.Split(' ').Select(static name => Degree.Parse(name)).ToArray()),
    ];

    private static readonly Lazy<ChordQuality[]> KnownTriads = new(static () =>
        [.. ChordQuality.Known.Where(static quality => quality.Family == ChordFamily.Triad)]
    );

    private static readonly Lazy<ChordQuality[]> KnownSevenths = new(static () =>
        [.. ChordQuality.Known.Where(IsSeventh)]
    );

    // Five tones or more, none beyond the octave: its new tones are a scale's, 2 and not 9.
    private readonly bool isScale;
    private readonly Lazy<IReadOnlyList<DegreeChord>> triads;
    private readonly Lazy<IReadOnlyList<DegreeChord>> sevenths;
    private readonly Lazy<IReadOnlyList<ScaleAround>> scales;
    private readonly Lazy<IReadOnlyList<FormulaNeighbour>> neighbours;
    private readonly Lazy<IReadOnlyList<DegreeChord>> rotations;

    private FormulaRelations(Formula formula)
    {
        Formula = formula;
        isScale = formula.Count >= 5 && formula.All(static degree => degree.Number <= Diatonic.StepsPerOctave);
        triads = new(() => Inside(KnownTriads.Value));
        sevenths = new(() => Inside(KnownSevenths.Value));
        scales = new(ScalesAround);
        neighbours = new(() => Moved().Concat(Added()).Concat(Dropped()).ToSequence());
        rotations = new(() => Roots(formula).Where(static on => on.PitchClass != 0).Select(Rotation).ToSequence());
    }

    /// <summary>The formula they belong to.</summary>
    public Formula Formula { get; }

    /// <summary>Its sounds as a class under transposition and inversion; the prime form is in it.</summary>
    public SetClass SetClass => Formula.PitchClasses.SetClass;

    /// <summary>How often each interval class occurs in it.</summary>
    public IntervalVector IntervalVector => Formula.PitchClasses.IntervalVector;

    /// <summary>
    /// The triads inside it (major, minor, diminished, augmented), by the degree they stand on. A triad that is the whole formula is
    /// not inside it.
    /// </summary>
    public IReadOnlyList<DegreeChord> Triads => triads.Value;

    /// <summary>
    /// The seventh chords inside it, by the degree they stand on: one of the four triads and a seventh. A chord that is the whole
    /// formula is not inside it.
    /// </summary>
    public IReadOnlyList<DegreeChord> Sevenths => sevenths.Value;

    /// <summary>
    /// The known scales on the same root that hold it; those that spell it alike first, then in the order of the catalogue. The
    /// chromatic scale, which holds everything, is left out.
    /// </summary>
    public IReadOnlyList<ScaleAround> Scales => scales.Value;

    /// <summary>
    /// The formulas one tone away: one tone moved by a semitone, then by a whole tone, then one added, then one dropped, each in the
    /// order of the tones.
    /// </summary>
    /// <remarks>
    /// A new tone is spelled so that the result has a name where it can have one, then with a number that is still free, then on
    /// the number nearest to where it came from.
    /// </remarks>
    public IReadOnlyList<FormulaNeighbour> Neighbours => neighbours.Value;

    /// <summary>
    /// The same notes from each of its other tones: a minor seventh is a sixth of its third. Each as the known quality with these
    /// sounds, the one spelled alike first; where there is none (<see cref="DegreeChord.Quality"/> is null), and in scales, with
    /// the letters as they are.
    /// </summary>
    public IReadOnlyList<DegreeChord> Rotations => rotations.Value;

    /// <summary>
    /// Those of <see cref="Rotations"/> that have a usual name, as a reader wants them: of a minor seventh only the sixth on its third.
    /// </summary>
    public IReadOnlyList<DegreeChord> NamedRotations => Rotations.Where(static each => each.IsNamed).ToSequence();

    /// <summary>The relations of a formula.</summary>
    public static FormulaRelations Of(Formula formula) => new(formula);

    /// <summary>
    /// Where the formula stands within a larger one, such as a scale: every degree of that one from which all its tones are there,
    /// the minor seventh on 2, 3 and 6 of the major scale.
    /// </summary>
    public IReadOnlyList<DegreeChord> Within(Formula outer) =>
        Roots(outer)
            .Where(on => outer.PitchClasses.Contains(Formula.PitchClasses.Transpose(on.PitchClass)))
            .Select(on => DegreeChord.Of(on, Formula, outer))
            .ToSequence();

    /// <summary>The formula.</summary>
    public override string ToString() => $"relations of {Formula}";

    /// <summary>The known qualities with exactly the sounds of a formula, by the degree they stand on, the one spelled alike first.</summary>
    internal static IEnumerable<DegreeChord> KnownChordsOn(Formula formula) =>
        Roots(formula).SelectMany(on => KnownOn(formula, on));

    private static IEnumerable<DegreeChord> KnownOn(Formula formula, Degree on) =>
        BySound
            .Value.GetValueOrDefault(formula.PitchClasses.Transpose(-on.PitchClass), [])
            .Select(quality => DegreeChord.Of(on, quality.Formula, formula))
            .OrderBy(static chord => chord.Respelled.Count);

    /// <summary>The degrees to stand on: each sound once.</summary>
    private static IEnumerable<Degree> Roots(Formula formula) =>
        formula.Where(degree => formula.At(degree.PitchClass) == degree);

    private static bool IsSeventh(ChordQuality quality) =>
        quality.Formula.Count == 4
        && quality.Formula.WithNumber(7) is { } seventh
        && ChordQuality.Find(quality.Formula.Without(seventh))?.Family == ChordFamily.Triad;

    private Sequence<DegreeChord> Inside(ChordQuality[] qualities) =>
        (
            from root in Roots(Formula)
            from quality in qualities
            let sounds = quality.Formula.PitchClasses.Transpose(root.PitchClass)
            where sounds.Count < Formula.PitchClasses.Count && Formula.PitchClasses.Contains(sounds)
            select DegreeChord.Of(root, quality.Formula, Formula)
        ).ToSequence();

    private Sequence<ScaleAround> ScalesAround() =>
        ScaleType
            .Known.Where(type => type.Formula.PitchClasses.Contains(Formula.PitchClasses))
            .Where(static type => type.Formula.PitchClasses != PitchClassSet.All)
            .Select(type => new ScaleAround(type, Formula))
            .OrderBy(static scale => scale.IsRespelled)
            .ToSequence();

    private DegreeChord Rotation(Degree on)
    {
        if (!isScale && KnownOn(Formula, on).FirstOrDefault() is { } known)
        {
            return known;
        }

        return DegreeChord.Of(on, new(Roots(Formula).Select(degree => Seen(degree, on)).Distinct()), Formula);
    }

    /// <summary>
    /// A degree counted from another, letters kept; b8 rather than b1, and beyond three accidentals spelled the usual way.
    /// </summary>
    private static Degree Seen(Degree degree, Degree from) =>
        DegreeChord.Seen(degree, from) switch
        {
            { Number: 1, Alteration: < 0 and var flats } => new(Diatonic.StepsPerOctave + 1, flats),
            { } seen => seen,
            null => Functions[Diatonic.Modulo(degree.PitchClass - from.PitchClass, Diatonic.SemitonesPerOctave)][
                0
            ].Simple,
        };

    private IEnumerable<FormulaNeighbour> Moved() =>
        from semitones in new[] { -1, 1, -2, 2 }
        group semitones by Math.Abs(semitones) into way
        from degree in Roots(Formula)
        from semitones in way
        let target = Diatonic.Modulo(degree.PitchClass + semitones, Diatonic.SemitonesPerOctave)
        where !Formula.PitchClasses.Contains(target)
        let rest = Without(degree)
        let to = Spell(rest, target, degree)
        select new FormulaNeighbour(FormulaChange.Moved, degree, to, semitones, rest.With(to));

    private IEnumerable<FormulaNeighbour> Added() =>
        from pitchClass in Formula.PitchClasses.Complement
        let to = Spell(Formula, pitchClass, null)
        select new FormulaNeighbour(FormulaChange.Added, null, to, 0, Formula.With(to));

    private IEnumerable<FormulaNeighbour> Dropped() =>
        from degree in Roots(Formula)
        let rest = Without(degree)
        where rest.Count > 0
        select new FormulaNeighbour(FormulaChange.Dropped, degree, null, 0, rest);

    private Formula Without(Degree sound) => new(Formula.Where(degree => degree.PitchClass != sound.PitchClass));

    /// <summary>The degree for a new sound, by the rule on <see cref="Neighbours"/>.</summary>
    private Degree Spell(Formula rest, int pitchClass, Degree? from) =>
        (isScale ? ScaleDegrees[pitchClass] : Functions[pitchClass])
            .OrderByDescending(degree => IsKnown(rest.With(degree)))
            .ThenBy(degree => rest.Any(other => other.Simple.Number == degree.Simple.Number))
            .ThenBy(degree => from is { } start ? Apart(start, degree) : 0)
            .ThenBy(degree => from is { } start ? Math.Abs(start.Number - degree.Number) : 0)
            .First();

    private bool IsKnown(Formula formula) =>
        isScale ? ScaleType.Find(formula) is not null : ChordQuality.Find(formula) is not null;

    /// <summary>How many letters apart two degrees are, the shorter way round.</summary>
    private static int Apart(Degree left, Degree right)
    {
        var up = Diatonic.Modulo(right.Number - left.Number, Diatonic.StepsPerOctave);
        return Math.Min(up, Diatonic.StepsPerOctave - up);
    }
}

/// <summary>The shortcut to what a formula is related to.</summary>
public static class FormulaRelationsExtensions
{
    /// <summary>What stands inside the formula, around it and beside it.</summary>
    public static FormulaRelations Relations(this Formula formula) => FormulaRelations.Of(formula);
}
