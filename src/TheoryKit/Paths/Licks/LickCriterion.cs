using System.Globalization;
using TheoryKit.Theory;
using TheoryKit.Tunings;

namespace TheoryKit.Paths;

/// <summary>
/// Something that a lick must have to be found. A further kind is a further record in this file, with its line in the table of
/// <see cref="LickQuery"/>'s text. Equal when kind and what is asked are.
/// </summary>
/// <remarks>Functions are compared within the octave, a 9 is a 2; texts without regard to case.</remarks>
public abstract record LickCriterion
{
    /// <summary>How alike a lick must at least be where a query does not say: 0.5.</summary>
    public const double UsualLeast = 0.5;

    private LickCriterion() { }

    /// <summary>The key that a query's text begins it with.</summary>
    public abstract string Key { get; }

    /// <summary>What is asked, as it stands after the key, without quotes.</summary>
    public abstract string Value { get; }

    /// <summary>As it stands in a query: <c>function:3</c>.</summary>
    public sealed override string ToString() => LickQuery.Write(this);

    /// <summary>How well a lick answers, up to 1; null if it does not.</summary>
    internal abstract double? Score(LickFacts facts);

    /// <summary>In which way a lick that answers does so, in words.</summary>
    internal abstract string Reason(LickFacts facts);

    /// <summary>Notes with these functions, one right after the other; null for any number of notes between.</summary>
    public sealed record Function : LickCriterion
    {
        private readonly Sequence<Degree?> degrees;

        /// <summary>Functions in order.</summary>
        /// <param name="degrees">The functions; null stands for any number of notes, not at the ends and not twice in a row.</param>
        /// <exception cref="ArgumentException">There is none, or a null at an end or beside another.</exception>
        public Function(params IReadOnlyList<Degree?> degrees)
        {
            ArgumentNullException.ThrowIfNull(degrees);
            this.degrees = degrees.ToSequence();
            if (!IsOrder(degrees))
            {
                throw new ArgumentException(
                    "Functions begin and end with one, and a gap stands between two.",
                    nameof(degrees)
                );
            }
        }

        /// <summary>The functions in order; null for any number of notes.</summary>
        public IReadOnlyList<Degree?> Degrees => degrees;

        /// <inheritdoc/>
        public override string Key => "function";

        /// <inheritdoc/>
        public override string Value => string.Join(',', degrees.Select(static each => each?.ToString() ?? ".."));

        internal static bool IsOrder(IReadOnlyList<Degree?> degrees)
        {
            var isGap = true;
            foreach (var degree in degrees)
            {
                if (isGap && degree is null)
                {
                    return false;
                }

                isGap = degree is null;
            }

            return !isGap;
        }

        internal override double? Score(LickFacts facts) => Places(facts, 1).Count > 0 ? 1 : null;

        internal override string Reason(LickFacts facts)
        {
            var places = Places(facts, int.MaxValue);
            var more = places.Count - 1;
            return $"{Value} {PlaceInWords(facts, places[0])}"
                + (
                    more == 0 ? ""
                    : more == 1 ? " and once more"
                    : string.Create(CultureInfo.InvariantCulture, $" and {more} times more")
                );
        }

        /// <summary>Where it begins. The parts between gaps are taken as early as can be, which misses nothing.</summary>
        private List<int> Places(LickFacts facts, int most)
        {
            var places = new List<int>();
            foreach (var degree in degrees)
            {
                if (degree is not null && (facts.FunctionMask & LickFacts.Bit(degree)) == 0)
                {
                    return places;
                }
            }

            for (var start = 0; start < facts.Functions.Length && places.Count < most; start++)
            {
                if (IsAt(facts, start))
                {
                    places.Add(start);
                }
            }

            return places;
        }

        private bool IsAt(LickFacts facts, int start)
        {
            var (at, from, isFirst) = (start, 0, true);
            while (from < degrees.Count)
            {
                var to = from;
                while (to < degrees.Count && degrees[to] is not null)
                {
                    to++;
                }

                while (!IsRun(facts, at, from, to))
                {
                    at++;
                    if (isFirst || at > facts.Functions.Length)
                    {
                        return false;
                    }
                }

                at += to - from;
                from = to + 1;
                isFirst = false;
            }

            return true;
        }

        private bool IsRun(LickFacts facts, int at, int from, int to)
        {
            for (var index = from; index < to; index++, at++)
            {
                if (at >= facts.Functions.Length || facts.Functions[at] != degrees[index]!.Value.Simple)
                {
                    return false;
                }
            }

            return true;
        }
    }

    /// <summary>A function that a note on a strong beat has: the first of a bar, the middle of a bar of four, the first of each three in compound time.</summary>
    /// <param name="Degree">The function.</param>
    public sealed record OnStrongBeat(Degree Degree) : LickCriterion
    {
        /// <inheritdoc/>
        public override string Key => "strong";

        /// <inheritdoc/>
        public override string Value => Degree.ToString();

        internal override double? Score(LickFacts facts) => (facts.StrongMask & LickFacts.Bit(Degree)) == 0 ? null : 1;

        internal override string Reason(LickFacts facts)
        {
            var index = 0;
            while (!facts.Strong[index] || facts.Functions[index] != Degree.Simple)
            {
                index++;
            }

            return $"{Degree} on the strong beat {PlaceInWords(facts, index)}";
        }
    }

    /// <summary>A technique that some note has.</summary>
    /// <param name="Technique">The technique.</param>
    public sealed record PlayedWith(Technique Technique) : LickCriterion
    {
        /// <inheritdoc/>
        public override string Key => "technique";

        /// <inheritdoc/>
        public override string Value => Technique.Name;

        internal override double? Score(LickFacts facts) => facts.Techniques.Contains(Technique) ? 1 : null;

        internal override string Reason(LickFacts facts)
        {
            var notes = facts.Lick.Path.Notes.Where(note => note.Has(Technique)).ToList();
            var bar = 1 + BarOf(facts, notes[0]);
            return notes.Count > 1
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"{Technique.Name} on {notes.Count} notes, the first in bar {bar}"
                )
                : string.Create(CultureInfo.InvariantCulture, $"{Technique.Name} in bar {bar}");
        }
    }

    /// <summary>A chord that it is played over, over any bass unless the chord asked for has one of its own.</summary>
    /// <param name="Chord">The chord.</param>
    public sealed record OverChord(Chord Chord) : LickCriterion
    {
        /// <inheritdoc/>
        public override string Key => "chord";

        /// <inheritdoc/>
        public override string Value => Chord.ToString();

        internal override double? Score(LickFacts facts) => facts.Chords.Any(Is) ? 1 : null;

        internal override string Reason(LickFacts facts) => $"over {facts.Chords.First(Is)}";

        private bool Is(Chord chord) =>
            chord.Root == Chord.Root
            && chord.Formula == Chord.Formula
            && (Chord.Bass == Chord.Root || chord.Bass == Chord.Bass);
    }

    /// <summary>A quality of a chord that it is played over.</summary>
    /// <param name="Formula">The quality's degrees, at least one.</param>
    public sealed record OverQuality(Formula Formula) : LickCriterion
    {
        /// <inheritdoc/>
        public override string Key => "chord";

        /// <inheritdoc/>
        // What stands after a root that needs no accidental; the major triad, where nothing does, has its long name.
        public override string Value =>
            new Chord(default, Formula).ToString()[1..] is { Length: > 0 } symbol ? symbol : "maj";

        internal override double? Score(LickFacts facts) => facts.Chords.Any(Is) ? 1 : null;

        internal override string Reason(LickFacts facts) => $"over {facts.Chords.First(Is)}";

        private bool Is(Chord chord) => chord.Formula == Formula;
    }

    /// <summary>The shape of the line in the large, see <see cref="LickLine.Contour"/>.</summary>
    public sealed record Shaped : LickCriterion
    {
        private readonly Sequence<Direction> shape;

        /// <summary>A shape.</summary>
        /// <param name="shape">Directions in turns; none for a line that stays on one pitch.</param>
        /// <exception cref="ArgumentException">The same direction twice in a row.</exception>
        public Shaped(params IReadOnlyList<Direction> shape)
        {
            ArgumentNullException.ThrowIfNull(shape);
            if (!IsShape(shape))
            {
                throw new ArgumentException("A shape goes up and down in turns.", nameof(shape));
            }

            this.shape = shape.ToSequence();
        }

        /// <summary>The directions in turns; none for a line that stays on one pitch.</summary>
        public IReadOnlyList<Direction> Shape => shape;

        /// <inheritdoc/>
        public override string Key => "contour";

        /// <inheritdoc/>
        public override string Value => LickContour.Write(shape);

        internal static bool IsShape(IReadOnlyList<Direction> shape) =>
            !shape.Zip(shape.Skip(1)).Any(static pair => pair.First == pair.Second);

        internal override double? Score(LickFacts facts) =>
            facts.Contour == Value && facts.Sounding.Length > 0 ? 1 : null;

        internal override string Reason(LickFacts facts) =>
            shape.Count == 0 ? "stays level" : $"goes {Value.Replace(",", ", then ", StringComparison.Ordinal)}";
    }

    /// <summary>A tag that it has.</summary>
    public sealed record Tagged : LickCriterion
    {
        /// <summary>A tag.</summary>
        /// <exception cref="ArgumentException">It is empty or not one line of text.</exception>
        public Tagged(string tag) => Tag = Said(tag, nameof(tag));

        /// <summary>The tag.</summary>
        public string Tag { get; }

        /// <inheritdoc/>
        public override string Key => "tag";

        /// <inheritdoc/>
        public override string Value => Tag;

        internal override double? Score(LickFacts facts) => facts.Lick.Tags.Any(Is) ? 1 : null;

        internal override string Reason(LickFacts facts) => $"tagged {facts.Lick.Tags.First(Is)}";

        private bool Is(string tag) => tag.Equals(Tag, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>The tune that it belongs to, or a part of its name.</summary>
    public sealed record OfTune : LickCriterion
    {
        /// <summary>A tune.</summary>
        /// <exception cref="ArgumentException">It is empty or not one line of text.</exception>
        public OfTune(string tune) => Tune = Said(tune, nameof(tune));

        /// <summary>The tune.</summary>
        public string Tune { get; }

        /// <inheritdoc/>
        public override string Key => "tune";

        /// <inheritdoc/>
        public override string Value => Tune;

        internal override double? Score(LickFacts facts) =>
            Holds(facts.Lick.Tune, Tune) ? (facts.Lick.Tune.Length == Tune.Length ? 1 : 0.9) : null;

        internal override string Reason(LickFacts facts) => $"of {facts.Lick.Tune}";
    }

    /// <summary>What can be counted.</summary>
    public enum Countable
    {
        /// <summary>Beats a minute.</summary>
        Tempo,

        /// <summary>Bars that it begins.</summary>
        Bars,

        /// <summary>Notes that sound: dead ones do not count.</summary>
        Notes,
    }

    /// <summary>A number within a range, its ends included. A lick without tempo has none within any.</summary>
    public sealed record Between : LickCriterion
    {
        /// <summary>The highest number: 100,000.</summary>
        public const double Highest = 100_000;

        /// <summary>A range.</summary>
        /// <param name="measure">What is counted.</param>
        /// <param name="least">The least, in hundredths; null for none.</param>
        /// <param name="most">The most, in hundredths; null for none.</param>
        /// <exception cref="ArgumentException">Neither is given, one is negative or beyond <see cref="Highest"/>, or the least is more than the most.</exception>
        public Between(Countable measure, double? least, double? most)
        {
            if (!Enum.IsDefined(measure))
            {
                throw new ArgumentOutOfRangeException(nameof(measure));
            }

            Measure = measure;
            Least = least is { } low ? Math.Round(low, 2) : null;
            Most = most is { } high ? Math.Round(high, 2) : null;
            if (!IsRange(Least, Most))
            {
                throw new ArgumentException(
                    $"A range has an end, goes from 0 to {Highest}, and its least is not more than its most."
                );
            }
        }

        /// <summary>What is counted.</summary>
        public Countable Measure { get; }

        /// <summary>The least; null for none.</summary>
        public double? Least { get; }

        /// <summary>The most; null for none.</summary>
        public double? Most { get; }

        /// <inheritdoc/>
        public override string Key =>
            Measure switch
            {
                Countable.Tempo => "tempo",
                Countable.Bars => "bars",
                _ => "notes",
            };

        /// <inheritdoc/>
        public override string Value => Least == Most ? Text(Least) : $"{Text(Least)}-{Text(Most)}";

        internal static bool IsRange(double? least, double? most) =>
            (least ?? most) is not null
            && (least ?? 0) is >= 0 and <= Highest
            && (most ?? 0) is >= 0 and <= Highest
            && !(least > most);

        internal override double? Score(LickFacts facts)
        {
            var number = Number(facts);
            return number is null || number < Least || number > Most ? null : 1;
        }

        internal override string Reason(LickFacts facts) =>
            Measure == Countable.Tempo ? $"tempo {Text(Number(facts))}"
            : Number(facts) == 1 ? $"1 {Key[..^1]}"
            : $"{Text(Number(facts))} {Key}";

        private static string Text(double? number) => number?.ToString(CultureInfo.InvariantCulture) ?? "";

        private double? Number(LickFacts facts) =>
            Measure switch
            {
                Countable.Tempo => facts.Lick.Tempo,
                Countable.Bars => facts.Lick.Path.BarCount,
                _ => facts.Lick.Path.Notes.Count(static note => !note.IsDead),
            };
    }

    /// <summary>Text that stands somewhere in what it says of itself: its name, tune, tags, headers or words.</summary>
    public sealed record Saying : LickCriterion
    {
        /// <summary>A text.</summary>
        /// <exception cref="ArgumentException">It is empty or not one line of text.</exception>
        public Saying(string text) => Text = Said(text, nameof(text));

        /// <summary>The text.</summary>
        public string Text { get; }

        /// <inheritdoc/>
        public override string Key => "text";

        /// <inheritdoc/>
        public override string Value => Text;

        internal override double? Score(LickFacts facts) => In(facts)?.Score;

        internal override string Reason(LickFacts facts) => $"\"{Text}\" in {In(facts)!.Value.Where}";

        private (double Score, string Where)? In(LickFacts facts)
        {
            var lick = facts.Lick;
            return Holds(lick.Name, Text) ? (1, "the name")
                : Holds(lick.Tune, Text) ? (0.8, "the tune")
                : lick.Tags.Any(tag => Holds(tag, Text)) ? (0.8, "the tags")
                : lick.Headers.FirstOrDefault(header => Holds(header.ToString(), Text)) is { } found
                    ? (0.6, $"\"{found.Name}\"")
                : Holds(lick.Words, Text) ? (0.5, "the words")
                : null;
        }
    }

    /// <summary>A line that it is alike to, whatever the key and register.</summary>
    public sealed record AlikeTo : LickCriterion
    {
        /// <summary>A line.</summary>
        /// <param name="line">The line.</param>
        /// <param name="least">How alike it must be at least, 0 to 1, in hundredths; see <see cref="Likeness"/>.</param>
        /// <exception cref="ArgumentOutOfRangeException">Not from 0 to 1.</exception>
        public AlikeTo(LickLine line, double least = UsualLeast)
        {
            ArgumentNullException.ThrowIfNull(line);
            (Line, Least) = (line, Part(least, nameof(least)));
        }

        /// <summary>The line.</summary>
        public LickLine Line { get; }

        /// <summary>How alike it must be at least, 0 to 1.</summary>
        public double Least { get; }

        /// <inheritdoc/>
        public override string Key => "line";

        /// <inheritdoc/>
        public override string Value => Line.ToString();

        internal override double? Score(LickFacts facts) => Likeness.AtLeast(Least, Line, facts.Line);

        internal override string Reason(LickFacts facts) => Likeness.Of(Line, facts.Line).ToString();
    }

    /// <summary>A lick of the folder that it is alike to, whatever the key and register.</summary>
    public sealed record Like : LickCriterion
    {
        /// <summary>A lick by its name.</summary>
        /// <param name="name">The name of a lick in the folder that is searched.</param>
        /// <param name="least">How alike it must be at least, 0 to 1, in hundredths; see <see cref="Likeness"/>.</param>
        /// <exception cref="ArgumentException">The name is empty or not one line of text.</exception>
        /// <exception cref="ArgumentOutOfRangeException">Not from 0 to 1.</exception>
        public Like(string name, double least = UsualLeast) =>
            (Name, Least) = (Said(name, nameof(name)), Part(least, nameof(least)));

        /// <summary>The name of the lick.</summary>
        public string Name { get; }

        /// <summary>How alike it must be at least, 0 to 1.</summary>
        public double Least { get; }

        /// <inheritdoc/>
        public override string Key => "like";

        /// <inheritdoc/>
        public override string Value => Name;

        // The folder puts the line of that lick in its place before it searches.
        internal override double? Score(LickFacts facts) => facts.Lick.Name == Name ? 1 : null;

        internal override string Reason(LickFacts facts) => "the same";
    }

    /// <summary>The tuning that it is played in.</summary>
    /// <param name="Tuning">The tuning.</param>
    public sealed record InTuning(Tuning Tuning) : LickCriterion
    {
        /// <inheritdoc/>
        public override string Key => "tuning";

        /// <inheritdoc/>
        public override string Value => Tuning.ToString();

        internal override double? Score(LickFacts facts) => facts.Lick.Path.Neck.Tuning == Tuning ? 1 : null;

        internal override string Reason(LickFacts facts) => $"in {Tuning}";
    }

    /// <summary>The neck that it is played on, capo and all.</summary>
    /// <param name="Neck">The neck.</param>
    public sealed record OnNeck(Neck Neck) : LickCriterion
    {
        /// <inheritdoc/>
        public override string Key => "neck";

        /// <inheritdoc/>
        public override string Value => Neck.ToString();

        internal override double? Score(LickFacts facts) => facts.Lick.Path.Neck == Neck ? 1 : null;

        internal override string Reason(LickFacts facts) => "on that neck";
    }

    /// <summary>Something that it must not have.</summary>
    public sealed record Not : LickCriterion
    {
        /// <summary>The opposite.</summary>
        /// <exception cref="ArgumentException">It is an opposite already.</exception>
        public Not(LickCriterion inner)
        {
            ArgumentNullException.ThrowIfNull(inner);
            Inner = inner is not Not ? inner : throw new ArgumentException("It is an opposite already.", nameof(inner));
        }

        /// <summary>What it must not have.</summary>
        public LickCriterion Inner { get; }

        /// <inheritdoc/>
        public override string Key => Inner.Key;

        /// <inheritdoc/>
        public override string Value => Inner.Value;

        internal override double? Score(LickFacts facts) => Inner.Score(facts) is null ? 1 : null;

        internal override string Reason(LickFacts facts) => $"not {Inner}";
    }

    private static string Said(string text, string parameter) =>
        LickText.OneLine(text, parameter) is { Length: > 0 } line
            ? line
            : throw new ArgumentException("There is nothing to look for.", parameter);

    private static double Part(double least, string parameter) =>
        least is >= 0 and <= 1
            ? Math.Round(least, 2)
            : throw new ArgumentOutOfRangeException(
                parameter,
                least,
                "How alike two licks are is a number from 0 to 1."
            );

    private static bool Holds(string text, string part) => text.Contains(part, StringComparison.OrdinalIgnoreCase);

    private static int BarOf(LickFacts facts, PathNote note) =>
        (int)
            System.Numerics.BigInteger.Divide(
                note.Start.Numerator,
                note.Start.Denominator * facts.Lick.Path.Time.Beats
            );

    private static int BarOf(LickFacts facts, int index) => BarOf(facts, facts.Sounding[index]);

    private static string PlaceInWords(LickFacts facts, int index)
    {
        var bar = BarOf(facts, index);
        var beat = (facts.Sounding[index].Start - (bar * facts.Lick.Path.Time.Beats) + 1).Reduce();
        return string.Create(
            CultureInfo.InvariantCulture,
            $"in bar {bar + 1}, {(beat.Denominator.IsOne ? $"beat {beat}" : $"after beat {beat.Numerator / beat.Denominator}")}"
        );
    }
}
