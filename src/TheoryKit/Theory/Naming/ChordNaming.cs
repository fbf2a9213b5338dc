using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;

namespace TheoryKit.Theory.Naming;

/// <summary>Names sets of notes: every reading as a chord, ranked by cost, each with its reasons.</summary>
/// <remarks>
/// <para>
/// Each note is tried as the root of all of them; as the root of all but a foreign bass (C E G over D: C/D), where the
/// other notes are at least three and make a chord that costs nothing; and each absent note as a root that was left out,
/// where third and seventh are there, as players voice chords over a bass player. For each root the cheapest formula counts.
/// </para>
/// <para>The cost of a reading is the sum of</para>
/// <list type="bullet">
/// <item>the cost of its symbol by the rules on <see cref="ChordSymbol"/>: altered, added and omitted tones;</item>
/// <item>2 for a change that players rarely mean, as another chord explains it: a flat six (Amb6 is Fmaj7/A), a sharp five or
/// flat thirteen over a minor third, an altered five in a suspended or sixth chord;</item>
/// <item>the bass: the root 0; third, fifth or seventh 1, sixth 3, where the chord is suspended 2 and 5; second, fourth or beyond 4;
/// foreign to the chord 4, under a suspended one 5;</item>
/// <item>1 for every note that has to be respelled (D# as E♭), 2 for a bass other than the root, which the reason then says; nothing for another tone
/// that would need a double accidental (G as A𝄫), which players avoid too.</item>
/// </list>
/// <para>
/// So a triad, seventh or sixth chord in inversion comes before a chord over the bass with a tone altered or left out:
/// G C E is C/G, F G B D is G7/F. A root that was given keeps its name where a key with a printed signature begins on it (Db, not C#,
/// but B♭ for A#, which has no printed major key). Between equals comes first what has its root in the bass, then fewer notes
/// respelled, fewer tones, then the root that was given earlier. Notes that no symbol fits have one reading, by the bass, in
/// brackets.
/// </para>
/// </remarks>
public static class ChordNaming
{
    private const int CostOfForeignBass = 4;
    private const int CostOfRareChange = 2;
    private const int CostOfNoName = 20;

    private const int LeastNotesOverForeignBass = 3;

    // Of a root: past that its tones have no names.
    private const int MostAccidentals = NoteName.MaxAlteration - Degree.MaxAlteration - 1;

    private static readonly Degree Third = new(3);
    private static readonly Degree MinorThird = new(3, -1);
    private static readonly Degree FlatFifth = new(5, -1);
    private static readonly Degree SharpFifth = new(5, 1);
    private static readonly Degree FlatSixth = new(6, -1);
    private static readonly Degree Sixth = new(6);
    private static readonly Degree FlatThirteenth = new(13, -1);

    // By semitones over the root, what a player may call the tone: beside a third, and without one.
    private static readonly Degree[][] BesideThird =
    [
        Degrees("1"),
        Degrees("b9"),
        Degrees("9"),
        Degrees("b3 #9"),
        Degrees("3"),
        Degrees("11"),
        Degrees("b5 #11"),
        Degrees("5"),
        Degrees("#5 b6"),
        Degrees("6 bb7"),
        Degrees("b7"),
        Degrees("7"),
    ];

    private static readonly Degree[][] WithoutThird =
    [
        .. BesideThird[..1],
        Degrees("b9 b2"),
        Degrees("9 2"),
        .. BesideThird[3..5],
        Degrees("11 4"),
        Degrees("b5 #11 #4"),
        .. BesideThird[7..],
    ];

    // The sixth under a seventh is a thirteenth.
    private static readonly Degree[] FlatSixthUnderSeventh = Degrees("#5 b13");
    private static readonly Degree[] SixthUnderSeventh = Degrees("13 bb7");

    // The names that chords are written on; beyond them only what is given.
    private static readonly NoteName[] Roots =
    [
        .. "C C# Db D D# Eb E F F# Gb G G# Ab A A# Bb B".Split(' ').Select(name => NoteName.Parse(name)),
    ];

    /// <summary>All readings of these notes over a bass, the cheapest first; never empty.</summary>
    /// <param name="notes">
    /// The notes, octaves aside. Where two sound alike the first (or the bass) gives the spelling.
    /// </param>
    /// <param name="bass">The lowest note, among <paramref name="notes"/> or not; if null the first of them.</param>
    /// <exception cref="ArgumentException">There is no note.</exception>
    public static IReadOnlyList<ChordReading> Readings(IEnumerable<NoteName> notes, NoteName? bass = null)
    {
        ArgumentNullException.ThrowIfNull(notes);
        var given = new NoteName?[12];
        var order = new List<int>(12);
        foreach (var note in bass is { } lowest ? notes.Prepend(lowest) : notes)
        {
            if (given[note.PitchClass] is null)
            {
                given[note.PitchClass] = note;
                order.Add(note.PitchClass);
            }
        }

        return order.Count == 0
            ? throw new ArgumentException("There is nothing to name: give at least one note.", nameof(notes))
            : new Search(order, order[0], given).Run();
    }

    /// <summary>All readings of these pitch classes, the cheapest first; never empty. The notes are spelled to suit each chord.</summary>
    /// <param name="pitchClasses">The pitch classes.</param>
    /// <param name="bass">The lowest, 0 (C) to 11 (B); if null it is not known: every note that is there counts as its chord's bass.</param>
    /// <exception cref="ArgumentException">There is no pitch class.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The bass is not 0 to 11.</exception>
    public static IReadOnlyList<ChordReading> Readings(PitchClassSet pitchClasses, int? bass = null)
    {
        if (bass is { } lowest)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(lowest, nameof(bass));
            ArgumentOutOfRangeException.ThrowIfGreaterThan(lowest, 11, nameof(bass));
            pitchClasses = new((ushort)(pitchClasses.Mask | (1 << lowest)));
        }

        return pitchClasses.Count == 0
            ? throw new ArgumentException(
                "There is nothing to name: give at least one pitch class.",
                nameof(pitchClasses)
            )
            : new Search([.. pitchClasses], bass, null).Run();
    }

    private static Degree[] Degrees(string text) => [.. text.Split(' ').Select(degree => Degree.Parse(degree))];

    /// <summary>One question: the pitch classes in the order given, the lowest if known, and how they were spelled if they were.</summary>
    private sealed class Search(List<int> order, int? bass, NoteName?[]? given)
    {
        private readonly List<(ChordReading Reading, int Respelled)> candidates = [];

        public ChordReading[] Run()
        {
            var all = order.Aggregate(0, (mask, pitchClass) => mask | (1 << pitchClass));
            for (var root = 0; root < 12; root++)
            {
                Consider(root, all);
                if (bass is { } low && low != root && order.Count > LeastNotesOverForeignBass)
                {
                    Consider(root, all & ~(1 << low));
                }
            }

            ChordReading[] readings =
            [
                .. candidates
                    .OrderBy(candidate => candidate.Reading.Cost)
                    .ThenBy(candidate => candidate.Reading.Chord.Bass != candidate.Reading.Chord.Root)
                    .ThenBy(candidate => candidate.Respelled)
                    .ThenBy(candidate => candidate.Reading.Chord.Formula.Count)
                    .ThenBy(candidate => (order.IndexOf(candidate.Reading.Chord.Root.PitchClass) + 12) % 12)
                    .ThenBy(candidate => candidate.Reading.Chord.Root.PitchClass)
                    .Select(candidate => candidate.Reading),
            ];
            return readings.Length > 0 ? readings : [Unnamed()];
        }

        /// <summary>Finds the cheapest chord on a root that has just these tones.</summary>
        private void Consider(int root, int tones)
        {
            var rootless = (tones & (1 << root)) == 0;
            if (rootless && !IsVoicedWithoutRoot(root, tones))
            {
                return;
            }

            var foreign = bass is { } low && (tones & (1 << low)) == 0;
            if (rootless && (foreign || bass is null))
            {
                return; // what is left to stand on is no chord
            }

            var costed = new List<(int Cost, Formula Formula)>();
            foreach (var formula in Formulas(root, tones, rootless))
            {
                if (ChordSymbol.Cost(formula) is { } cost && !(foreign && cost > 0))
                {
                    costed.Add((cost + (HasRareChange(formula) ? CostOfRareChange : 0), formula));
                }
            }

            Spelling? best = null;
            foreach (var (cost, formula) in costed.OrderBy(each => each.Cost))
            {
                if (best is { } found && cost > found.Cost)
                {
                    break; // respelling only adds to it
                }

                foreach (var name in NamesOf(root, formula))
                {
                    var spelling = Spell(name, formula, cost);
                    best = best is { } cheapest && spelling.CompareTo(cheapest) >= 0 ? best : spelling;
                }
            }

            if (best is { } spelled)
            {
                var chord = new Chord(spelled.Root, spelled.Formula, BassOf(spelled));
                candidates.Add((Explain(chord, rootless), spelled.Respelled));
            }
        }

        private static bool HasRareChange(Formula formula) =>
            formula.Contains(FlatSixth)
            || (
                (formula.Contains(SharpFifth) || formula.Contains(FlatThirteenth))
                && !formula.Contains(Third)
                && formula.Contains(MinorThird)
            )
            || (
                (IsSuspended(formula) || formula.Contains(Sixth))
                && (formula.Contains(SharpFifth) || formula.Contains(FlatFifth))
            );

        private static bool IsSuspended(Formula formula) =>
            formula.WithNumber(3) is null && (formula.WithNumber(2) is not null || formula.WithNumber(4) is not null);

        private static bool IsVoicedWithoutRoot(int root, int tones) =>
            HasEither(root, tones, 3, 4) && HasEither(root, tones, 10, 11);

        private static bool HasEither(int root, int tones, int semitones, int other) =>
            (tones & ((1 << ((root + semitones) % 12)) | (1 << ((root + other) % 12)))) != 0;

        private static Degree[] FunctionsOf(int semitones, int root, int tones) =>
            semitones is 8 or 9 && HasEither(root, tones, 10, 11)
                ? semitones == 8
                    ? FlatSixthUnderSeventh
                    : SixthUnderSeventh
                : (HasEither(root, tones, 3, 4) ? BesideThird : WithoutThird)[semitones];

        /// <summary>Every way to call the tones; without a root only what the catalogue has with it, the fifth there or not.</summary>
        private static IEnumerable<Formula> Formulas(int root, int tones, bool rootless)
        {
            IEnumerable<Formula> formulas = [Formula.Empty];
            for (var semitones = 0; semitones < 12; semitones++)
            {
                if ((tones & (1 << ((root + semitones) % 12))) != 0)
                {
                    var functions = FunctionsOf(semitones, root, tones);
                    formulas = formulas.SelectMany(_ => functions, (formula, function) => formula.With(function));
                }
            }

            return rootless
                ? formulas.Where(formula =>
                {
                    var whole = formula.With(Degree.Root);
                    return ChordQuality.Find(whole) is not null || ChordQuality.Find(whole.With(new(5))) is not null;
                })
                : formulas;
        }

        /// <summary>What the root of such a chord may be called: as given where a printed key begins on it.</summary>
        private IEnumerable<NoteName> NamesOf(int root, Formula formula)
        {
            var isMinor = formula.Contains(MinorThird) && !formula.Contains(Third);
            return given?[root] is { } name && new Key(name, isMinor).IsPrinted ? [name] : NamesOf(root);
        }

        private IEnumerable<NoteName> NamesOf(int pitchClass)
        {
            var names = Roots.Where(name => name.PitchClass == pitchClass);
            return given?[pitchClass] is { } name && Math.Abs(name.Alteration) <= MostAccidentals
                ? names.Append(name).Distinct()
                : names;
        }

        /// <summary>What the formula costs on a root of that name, with the notes it respells.</summary>
        private Spelling Spell(NoteName root, Formula formula, int cost)
        {
            var (respelled, price, accidentals) = (0, 0, 0);
            foreach (var degree in formula)
            {
                var tone = root.Add(degree);
                accidentals += Math.Abs(tone.Alteration) * (Math.Abs(tone.Alteration) > 1 ? 3 : 1);
                if (given?[tone.PitchClass] is { } asGiven && asGiven != tone)
                {
                    respelled++;
                    price += CostOfRespelling(root, asGiven, tone);
                }
            }

            return new(root, formula, cost + price, respelled, accidentals);
        }

        private int CostOfRespelling(NoteName root, NoteName asGiven, NoteName tone) =>
            tone.PitchClass == bass && tone != root ? 2
            : Math.Abs(tone.Alteration) > 1 && Math.Abs(asGiven.Alteration) <= 1 ? 0
            : 1;

        /// <summary>The bass as the chord spells it; a foreign one as given, or near the root.</summary>
        private NoteName BassOf(Spelling spelling)
        {
            if (bass is not { } low)
            {
                return spelling.Root;
            }

            return spelling.Formula.At(low - spelling.Root.PitchClass) is { } degree
                ? spelling.Root.Add(degree)
                : given?[low] ?? NamesOf(low).MinBy(name => Math.Abs(name.Fifths - spelling.Root.Fifths));
        }

        private ChordReading Explain(Chord chord, bool rootless)
        {
            var terms = new List<ReadingTerm>();
            if (bass is not null)
            {
                terms.Add(OfBass(chord));
            }

            var costs = ChordSymbol.Costs(chord.Formula)!;
            var count = chord.Formula.Count;
            terms.Add(
                new(
                    costs.Any(static cost => cost.Reason is ReadingReason.Omitted)
                        ? new ReadingReason.SomeTones(count, HasRoot: !rootless)
                        : new ReadingReason.AllTones(count),
                    0
                )
            );
            terms.AddRange(costs);
            if (HasRareChange(chord.Formula))
            {
                terms.Add(new(new ReadingReason.RareChange(), CostOfRareChange));
            }

            foreach (var pitchClass in order)
            {
                if (given?[pitchClass] is { } asGiven && chord.FunctionOf(asGiven) is { } function)
                {
                    var tone = chord.Root.Add(function);
                    if (tone != asGiven)
                    {
                        terms.Add(
                            new(new ReadingReason.Respelled(asGiven, tone), CostOfRespelling(chord.Root, asGiven, tone))
                        );
                    }
                }
            }

            return new(chord, terms);
        }

        private static ReadingTerm OfBass(Chord chord)
        {
            if (chord.Bass == chord.Root)
            {
                return new(new ReadingReason.RootInBass(), 0);
            }

            if (chord.FunctionOf(chord.Bass) is not { } function)
            {
                return new(
                    new ReadingReason.ForeignBass(chord.Bass),
                    CostOfForeignBass + (IsSuspended(chord.Formula) ? 1 : 0)
                );
            }

            var cost = function.Number switch
            {
                3 or 5 or 7 => IsSuspended(chord.Formula) ? 2 : 1,
                6 => IsSuspended(chord.Formula) ? 5 : 3,
                _ => 4,
            };
            return new(new ReadingReason.ToneInBass(function), cost);
        }

        /// <summary>The notes by their intervals over the bass, where no symbol fits.</summary>
        private ChordReading Unnamed()
        {
            var lowest = bass ?? order[0];
            var root = given?[lowest] ?? Roots.First(name => name.PitchClass == lowest);
            var formula = Formula.Empty;
            foreach (var pitchClass in order)
            {
                var above = given?[pitchClass] is { } name ? root.To(name) : default;
                var alteration = above.Semitones - Diatonic.Semitones(above.Steps);
                formula = formula.With(
                    given is not null && Math.Abs(alteration) <= Degree.MaxAlteration
                        ? new Degree(above.Steps + 1, alteration)
                        : WithoutThird[(pitchClass - lowest + 12) % 12][^1]
                );
            }

            ReadingReason reason = order.Count == 1 ? new ReadingReason.SingleNote() : new ReadingReason.NoUsualName();
            return new(new(root, formula), [new(reason, CostOfNoName)]);
        }
    }

    private readonly record struct Spelling(NoteName Root, Formula Formula, int Cost, int Respelled, int Accidentals)
        : IComparable<Spelling>
    {
        public int CompareTo(Spelling other) =>
            (Cost, Respelled, Accidentals).CompareTo((other.Cost, other.Respelled, other.Accidentals));
    }
}
