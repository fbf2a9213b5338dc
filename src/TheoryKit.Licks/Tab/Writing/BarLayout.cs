using System.Numerics;
using Fractions;
using TheoryKit.Licks.Tab.Options;
using TheoryKit.Theory.Chords;

namespace TheoryKit.Licks.Tab.Writing;

/// <summary>Where everything in a bar stands.</summary>
/// <param name="Width">How many characters the bar takes.</param>
/// <param name="At">The column of a moment.</param>
/// <param name="Chords">The chords that have a place.</param>
/// <param name="Values">What a row of rhythm says at each moment; null where places are exact, so that a count tells them.</param>
internal sealed record BarLayout(
    int Width,
    Func<Fraction, int> At,
    IReadOnlyList<(Fraction Start, Chord? Chord)> Chords,
    IReadOnlyDictionary<Fraction, string>? Values
)
{
    // A bar of more parts than this would be wider than any line.
    private const int MostSteps = 1 << 20;

    /// <summary>A moment and how far what is written there reaches to the left and to the right.</summary>
    private readonly record struct Need(Fraction Start, int Before, int After);

    /// <summary>From a bar to where everything in it stands: at exact places where there is room, else as near to them as can be.</summary>
    /// <param name="bar">The bar.</param>
    /// <param name="options">What is written.</param>
    /// <param name="room">How many characters there are.</param>
    public static BarLayout Of(WrittenBar bar, TabWriteOptions options, int room)
    {
        var needs = NeedsOf(bar);
        var beats = Enumerable.Range(0, bar.Time.Beats).Select(beat => bar.From + beat);
        var exact = InOrder([
            .. needs,
            .. beats.Select(beat => new Need(beat, 0, options.ShowsTime ? $"{beat - bar.From + 1}".Length : 0)),
        ]);
        if (StepsOf(bar, exact) is { } steps)
        {
            var lead = Math.Max(1, exact[0].Before);
            var step = Math.Max(StepFor(bar, exact, steps), StepForChords(bar, options, steps));
            var width = lead + (steps * (long)step);
            if (width <= room)
            {
                return new(
                    (int)width,
                    start => lead + ((int)WrittenPath.Whole((start - bar.From) / bar.Time.Beats * steps) * step),
                    bar.Chords,
                    null
                );
            }
        }

        // What comes after the end has no time here.
        var chords = bar.Chords.Where(chord => bar.End is not { } end || chord.Start <= end).ToList();
        var moments = InOrder([
            .. needs,
            new(bar.From, 0, 0),
            .. chords.Select(static chord => new Need(chord.Start, 0, 0)),
        ]);
        return Squeezed(bar, moments, chords, options, room);
    }

    /// <summary>What notes, ends of held ones and rests need.</summary>
    private static List<Need> NeedsOf(WrittenBar bar)
    {
        var needs = bar.Notes.Select(static note => new Need(note.Note.Start, note.Before.Length, note.Width)).ToList();
        needs.AddRange(bar.HoldEnds.Concat(bar.Rests).Select(static start => new Need(start, 0, 1)));
        if (bar.End is { } end)
        {
            needs.Add(new(end, 0, BarText.End.Length));
        }

        return needs;
    }

    /// <summary>What is needed at each moment, moments in order.</summary>
    private static List<Need> InOrder(List<Need> needs) =>
        [
            .. needs
                .GroupBy(static need => need.Start.Reduce())
                .OrderBy(static each => each.Key)
                .Select(static each => new Need(
                    each.Key,
                    each.Max(static need => need.Before),
                    each.Max(static need => need.After)
                )),
        ];

    /// <summary>The least number of equal parts of a bar that all moments are multiples of; null for too many.</summary>
    private static int? StepsOf(WrittenBar bar, List<Need> moments)
    {
        var steps = BigInteger.One;
        foreach (
            var moment in moments
                .Select(static each => each.Start)
                .Concat(bar.Chords.Select(static chord => chord.Start))
        )
        {
            var part = ((moment - bar.From) / bar.Time.Beats).Reduce().Denominator;
            steps = steps / BigInteger.GreatestCommonDivisor(steps, part) * part;
            if (steps > MostSteps)
            {
                return null;
            }
        }

        return (int)steps;
    }

    /// <summary>How many characters a step takes, so that nothing touches.</summary>
    private static int StepFor(WrittenBar bar, List<Need> moments, int steps)
    {
        var (least, at, reach) = (1, bar.From, 0);
        foreach (var (start, before, after) in moments)
        {
            if (start > bar.From)
            {
                least = Math.Max(least, Needed(bar, reach + before + 1, start - at, steps));
            }

            (at, reach) = (start, after);
        }

        return Math.Max(least, Needed(bar, reach + 1, bar.To - at, steps));
    }

    private static int StepForChords(WrittenBar bar, TabWriteOptions options, int steps)
    {
        var least = 1;
        for (var index = 0; index < bar.Chords.Count; index++)
        {
            var (start, chord) = bar.Chords[index];
            var next = index + 1 < bar.Chords.Count ? bar.Chords[index + 1].Start : bar.To;
            least = Math.Max(least, Needed(bar, BarText.Name(chord, options.Naming).Length + 1, next - start, steps));
        }

        return least;
    }

    private static int Needed(WrittenBar bar, int characters, Fraction beats, int steps)
    {
        var between = (int)WrittenPath.Whole(beats / bar.Time.Beats * steps);
        return (characters + between - 1) / between;
    }

    /// <summary>What the row of rhythm says at each moment.</summary>
    private static Dictionary<Fraction, string> ValuesOf(WrittenBar bar, List<Need> moments)
    {
        var values = new Dictionary<Fraction, string>();
        var rests = bar.Rests.ToHashSet();
        for (var index = 0; index < moments.Count; index++)
        {
            var start = moments[index].Start;
            var next = index + 1 < moments.Count ? moments[index + 1].Start : bar.To;
            values[start] =
                start == bar.End
                    ? BarText.End
                    : (rests.Contains(start) ? "r" : "") + TabRhythm.Write(next - start, bar.Time.Unit);
        }

        return values;
    }

    /// <summary>
    /// Where everything stands in a bar too fine for its exact places: as near to them as it can without touching, in as many
    /// characters as there is room for, or as it takes.
    /// </summary>
    private static BarLayout Squeezed(
        WrittenBar bar,
        List<Need> moments,
        List<(Fraction Start, Chord? Chord)> chords,
        TabWriteOptions options,
        int room
    )
    {
        var values = ValuesOf(bar, moments);
        var names = chords.ToDictionary(
            static each => each.Start.Reduce(),
            each => BarText.Name(each.Chord, options.Naming).Length
        );

        // How far each is at least from the left end, all packed as closely as can be.
        var least = new int[moments.Count];
        var lead = Math.Max(1, moments[0].Before);
        var (at, chordEnd) = (lead, 0);
        for (var index = 0; index < moments.Count; index++)
        {
            var (start, before, after) = moments[index];
            after = Math.Max(after, options.ShowsTime ? values[start].Length : 0);
            least[index] = index == 0 ? lead : at + before;
            if (names.TryGetValue(start, out var length))
            {
                least[index] = Math.Max(least[index], chordEnd);
                chordEnd = least[index] + length + 1;
            }

            at = least[index] + Math.Max(1, after + 1);
        }

        // Each stands where it belongs, but for those before it and for the room that those after it take.
        var taken = Math.Max(at, chordEnd);
        var width = Math.Max(room, taken);
        var places = new Dictionary<Fraction, int>();
        var moved = 0;
        for (var index = 0; index < moments.Count; index++)
        {
            var start = moments[index].Start;
            var exact = lead + (int)Math.Round(((start - bar.From) / bar.Time.Beats).ToDouble() * (width - lead));
            moved = Math.Clamp(exact - least[index], moved, width - taken);
            places[start] = least[index] + moved;
        }

        return new(width, start => places[start.Reduce()], chords, values);
    }
}
