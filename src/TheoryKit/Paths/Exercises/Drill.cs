using System.Diagnostics.CodeAnalysis;
using TheoryKit.Fingering.Zones;
using TheoryKit.Values;

namespace TheoryKit.Paths.Exercises;

/// <summary>
/// An order in which the tones of a shape are practised. A further drill is a further record in this file, with its line in
/// <see cref="Kinds"/>. Equal when kind and numbers are.
/// </summary>
/// <remarks>
/// Every drill goes the same way: from the lowest root up to the top, down to the bottom, and back to that root, the lowest
/// tone standing in for the root in a shape that has none.
/// <para>Text: <c>up and down</c>, <c>groups of 3</c>, <c>broken by 2</c>, <c>figure 1 3 2</c>, <c>skipped strings</c>.</para>
/// </remarks>
[ReadAs("a drill")]
[Checked]
public abstract partial record Drill : ISpanParsable<Drill>
{
    /// <summary>The most tones in a figure, and the farthest that one reaches: 12.</summary>
    public const int MaxTones = 12;

    private Drill() { }

    /// <summary>Tone by tone.</summary>
    public static Drill UpAndDown { get; } = new UpAndDownDrill();

    /// <summary>By strings, leaving out one each time: 6 4 5 3 4 2 3 1 and back; the tones of a string in the direction of travel. On fewer than four strings up and down.</summary>
    public static Drill SkippedStrings { get; } = new SkippedStringsDrill();

    /// <summary>From every tone so many neighbouring ones: 1 2 3, 2 3 4, 3 4 5.</summary>
    /// <param name="size">How many, 2 to <see cref="MaxTones"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Another number.</exception>
    public static Drill Groups(int size)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(size, 2);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(size, MaxTones);
        return new FigureDrill(Enumerable.Range(0, size));
    }

    /// <summary>From every tone the one so many chord tones on: 1 3, 2 4, 3 5 for two.</summary>
    /// <param name="steps">How many tones on, 1 to 11.</param>
    /// <exception cref="ArgumentOutOfRangeException">Another number.</exception>
    public static Drill BrokenIntervals(int steps)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(steps, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(steps, MaxTones - 1);
        return new FigureDrill([0, steps]);
    }

    /// <summary>
    /// From every tone on a figure, which 1 3 2 writes for that tone, the second after it and the first; downwards it is
    /// mirrored. Figures begin anew at a turn, so that they keep to the beat.
    /// </summary>
    /// <param name="tones">2 to <see cref="MaxTones"/> tones, counted from 1 to <see cref="MaxTones"/>; the lowest counts as 1.</param>
    /// <exception cref="ArgumentException">Fewer or more, or a number beyond.</exception>
    public static Drill Figure(params IReadOnlyList<int> tones)
    {
        ArgumentNullException.ThrowIfNull(tones);
        return IsFigure(tones)
            ? new FigureDrill(tones.Select(tone => tone - tones.Min()))
            : throw new ArgumentException($"A figure has {OfFigure}.", nameof(tones));
    }

    /// <summary>The usual ones.</summary>
    public static IReadOnlyList<Drill> Known { get; } =
    [UpAndDown, Groups(3), Groups(4), BrokenIntervals(2), BrokenIntervals(3), SkippedStrings];

    /// <summary>The tones of a shape, from the lowest counted from 0, in the order in which the drill plays them.</summary>
    public IReadOnlyList<int> OrderOf(Shape shape)
    {
        ArgumentNullException.ThrowIfNull(shape);
        var strings = shape.Notes.Select(static note => note.Place.Position.String).ToArray();
        return [.. Order(strings, Root(shape))];
    }

    /// <summary>The lowest root of a shape, or its lowest tone.</summary>
    internal static int Root(Shape shape)
    {
        for (var tone = 0; tone < shape.Notes.Count; tone++)
        {
            if (shape.Notes[tone].Place.Function.PitchClass == 0)
            {
                return tone;
            }
        }

        return 0;
    }

    /// <summary>The text as it is read.</summary>
    public abstract override string ToString();

    /// <summary>The order, given the string of every tone from the lowest up and the tone it starts from.</summary>
    private protected abstract IEnumerable<int> Order(int[] strings, int root);

    private static readonly string OfFigure = $"2 to {MaxTones} tones, each from 1 to {MaxTones}";

    /// <summary>How each kind is written: its words, how many numbers follow, and what they make; null if they make none.</summary>
    private static readonly (
        string Words,
        int Numbers,
        string Example,
        Func<IReadOnlyList<int>, Drill?> Make
    )[] Kinds =
    [
        ("up and down", 0, "", static _ => UpAndDown),
        ("skipped strings", 0, "", static _ => SkippedStrings),
        (
            "groups of",
            1,
            $" and 2 to {MaxTones} tones",
            static of => of is [>= 2 and <= MaxTones] ? Groups(of[0]) : null
        ),
        (
            "broken by",
            1,
            " and 1 to 11 steps",
            static by => by is [>= 1 and < MaxTones] ? BrokenIntervals(by[0]) : null
        ),
        ("figure", MaxTones, $" and {OfFigure}", static tones => IsFigure(tones) ? Figure(tones) : null),
    ];

    internal static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out Drill drill)
    {
        foreach (var (words, count, example, make) in Kinds)
        {
            if (!cursor.Take(words))
            {
                continue;
            }

            var start = cursor.Position;
            var numbers = new List<int>();
            while (numbers.Count < count && cursor.SkipSpaces())
            {
                if (!cursor.TakeNumber(2, out var number))
                {
                    break;
                }

                numbers.Add(number);
            }

            drill = make(numbers);
            return drill is not null || cursor.Fail(start, $"{words}{example}");
        }

        drill = null;
        return cursor.Fail(string.Join(", ", Kinds.Select(static kind => kind.Words)));
    }

    private static bool IsFigure(IReadOnlyList<int> tones) =>
        tones.Count is >= 2 and <= MaxTones && tones.All(static tone => tone is >= 1 and <= MaxTones);

    private sealed record UpAndDownDrill : Drill
    {
        public override string ToString() => "up and down";

        private protected override IEnumerable<int> Order(int[] strings, int root)
        {
            var top = strings.Length - 1;
            for (var tone = root; tone <= top; tone++)
            {
                yield return tone;
            }

            for (var tone = top - 1; tone >= 0; tone--)
            {
                yield return tone;
            }

            for (var tone = 1; tone <= root; tone++)
            {
                yield return tone;
            }
        }
    }

    private sealed record FigureDrill : Drill
    {
        private readonly Sequence<int> offsets; // the lowest is 0

        public FigureDrill(IEnumerable<int> offsets) => this.offsets = offsets.ToSequence();

        public override string ToString() =>
            offsets.SequenceEqual(Enumerable.Range(0, offsets.Count)) ? $"groups of {offsets.Count}"
            : offsets is [0, > 0 and var steps] ? $"broken by {steps}"
            : $"figure {string.Join(' ', offsets.Select(static offset => offset + 1))}";

        private protected override IEnumerable<int> Order(int[] strings, int root)
        {
            var (top, width) = (strings.Length - 1, offsets.Max());
            if (root + width > top)
            {
                return UpAndDown.Order(strings, root);
            }

            var order = new List<int>();
            for (var tone = root; tone + width <= top; tone++)
            {
                order.AddRange(offsets.Select(offset => tone + offset));
            }

            for (var tone = top; tone - width >= 0; tone--)
            {
                order.AddRange(offsets.Select(offset => tone - offset));
            }

            for (var tone = 0; tone < root; tone++)
            {
                order.AddRange(offsets.Select(offset => tone + offset));
            }

            if (order[^1] != root)
            {
                order.Add(root);
            }

            return order;
        }
    }

    private sealed record SkippedStringsDrill : Drill
    {
        public override string ToString() => "skipped strings";

        private protected override IEnumerable<int> Order(int[] strings, int root)
        {
            // The tones from the root up, string by string as they come; a tone may lie on a string that others were left for.
            var rising = ByString(Enumerable.Range(root, strings.Length - root), strings);
            var falling = ByString(Enumerable.Range(0, strings.Length).Reverse(), strings);
            if (falling.Count < 4)
            {
                return UpAndDown.Order(strings, root); // a string between two would never sound
            }

            var order = new List<int>();
            if (rising.Count < 3)
            {
                order.AddRange(Enumerable.Range(root, strings.Length - root));
            }

            Skip(rising, order);
            Skip(falling, order);
            for (var tone = order[^1] + 1; tone <= root; tone++)
            {
                Add(order, tone);
            }

            for (var tone = order[^1] - 1; tone >= root; tone--)
            {
                Add(order, tone);
            }

            return order;
        }

        private static void Skip(List<int[]> strings, List<int> order)
        {
            for (var first = 0; first + 2 < strings.Count; first++)
            {
                foreach (var tone in strings[first].Concat(strings[first + 2]))
                {
                    Add(order, tone);
                }
            }
        }

        private static void Add(List<int> order, int tone)
        {
            if (order.Count == 0 || order[^1] != tone)
            {
                order.Add(tone);
            }
        }

        private static List<int[]> ByString(IEnumerable<int> tones, int[] strings) =>
            [.. tones.GroupBy(tone => strings[tone]).Select(static group => group.ToArray())];
    }
}
