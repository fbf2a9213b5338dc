using TheoryKit.Paths;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Licks.Search;

public abstract partial record LickCriterion
{
    /// <summary>Notes with these functions, one right after the other; null for any number of notes between.</summary>
    public sealed partial record Function : LickCriterion
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

        internal override FoundReason Reason(LickFacts facts)
        {
            var places = Places(facts, int.MaxValue);
            var (bar, beat) = Place(facts, places[0]);
            return new FoundReason.Functions(this, bar, beat, places.Count);
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
    public sealed partial record OnStrongBeat(Degree Degree) : LickCriterion
    {
        /// <inheritdoc/>
        public override string Key => "strong";

        /// <inheritdoc/>
        public override string Value => Degree.ToString();

        internal override double? Score(LickFacts facts) => (facts.StrongMask & LickFacts.Bit(Degree)) == 0 ? null : 1;

        internal override FoundReason Reason(LickFacts facts)
        {
            var index = 0;
            while (!facts.Strong[index] || facts.Functions[index] != Degree.Simple)
            {
                index++;
            }

            var (bar, beat) = Place(facts, index);
            return new FoundReason.StrongBeat(Degree, bar, beat);
        }
    }

    /// <summary>A technique that some note has.</summary>
    /// <param name="Technique">The technique.</param>
    public sealed partial record PlayedWith(Technique Technique) : LickCriterion
    {
        /// <inheritdoc/>
        public override string Key => "technique";

        /// <inheritdoc/>
        public override string Value => Technique.Name;

        internal override double? Score(LickFacts facts) => facts.Techniques.Contains(Technique) ? 1 : null;

        internal override FoundReason Reason(LickFacts facts)
        {
            var notes = facts.Lick.Path.Notes.Where(note => note.Has(Technique)).ToList();
            return new FoundReason.PlayedWith(Technique, notes.Count, 1 + BarOf(facts, notes[0]));
        }
    }

    /// <summary>The shape of the line in the large, see <see cref="LickLine.Contour"/>.</summary>
    public sealed partial record Shaped : LickCriterion
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

        internal override FoundReason Reason(LickFacts facts) => new FoundReason.Shaped(this);
    }

    /// <summary>A line that it is alike to, whatever the key and register.</summary>
    public sealed partial record AlikeTo : LickCriterion
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

        internal override FoundReason Reason(LickFacts facts) =>
            new FoundReason.Alike(Likeness.Of(Line, facts.Line).Value);
    }

    /// <summary>A lick of the folder that it is alike to, whatever the key and register.</summary>
    public sealed partial record Like : LickCriterion
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

        internal override FoundReason Reason(LickFacts facts) => new FoundReason.Itself();
    }
}
