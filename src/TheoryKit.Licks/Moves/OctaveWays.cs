using Fractions;
using TheoryKit.Theory.Progressions;

namespace TheoryKit.Licks.Moves;

/// <summary>
/// How many octaves from the short way each chord goes. Over one chord that replaces two a fourth apart, each going its own short way,
/// a step of the line would become a leap. So the sum of all ways, and twice what each differs from the one before, is least; a note that
/// leaves the neck counts as an octave.
/// </summary>
internal static class OctaveWays
{
    /// <summary>Octaves up, or down where negative, and until when.</summary>
    public static List<(Fraction End, int Octaves)> Of(Path path, Changes to)
    {
        int[] choices = [0, -1, 1];
        var strings = Enumerable.Range(1, path.Neck.StringCount).ToList();
        var lowest = strings.Min(number => path.Neck.MidiNumberAt(new(number, path.Neck.OpenFret(number))));
        var highest = strings.Max(number => path.Neck.MidiNumberAt(new(number, path.Neck.Frets)));
        var spans = new List<(Fraction End, int[] Froms)>();
        var costs = new int[choices.Length];
        int[]? last = null;
        for (var beat = Fraction.Zero; beat < path.Beats; beat = spans[^1].End)
        {
            var (old, now) = (EndOf(path.Changes!, beat), EndOf(to, beat));
            var end = old < now ? old : now;
            var shift =
                path.ChordAt(beat) is { } from && to.At((beat % to.Beats).Reduce()).Chord is { } chord
                    ? ToneFit.Shift(from.Root, chord.Root).Semitones
                    : (int?)null;

            var pitches = path
                .Notes.Where(note => note.Start >= beat && note.Start < end)
                .Select(static note => note.Pitch.MidiNumber)
                .ToList();

            // Where there is no chord nothing moves.
            int[] ways = [.. choices.Select(choice => shift + (12 * choice) ?? 0)];
            var froms = new int[choices.Length];
            var next = new int[choices.Length];
            for (var at = 0; at < ways.Length; at++)
            {
                var way = ways[at];
                var beyond = 12 * pitches.Count(pitch => pitch + way < lowest || pitch + way > highest);
                var (before, steps) = (last, costs);
                froms[at] = Enumerable
                    .Range(0, ways.Length)
                    .MinBy(other => steps[other] + (before is null ? 0 : 2 * Math.Abs(way - before[other])));
                next[at] =
                    steps[froms[at]]
                    + (before is null ? 0 : 2 * Math.Abs(way - before[froms[at]]))
                    + Math.Abs(way)
                    + beyond;
            }

            spans.Add((end, froms));
            (costs, last) = (next, ways);
        }

        var found = new List<(Fraction End, int Octaves)>(spans.Count);
        var best = Enumerable.Range(0, costs.Length).MinBy(choice => costs[choice]);
        for (var at = spans.Count - 1; at >= 0; at--)
        {
            found.Add((spans[at].End, choices[best]));
            best = spans[at].Froms[best];
        }

        found.Reverse();
        return found;

        static Fraction EndOf(Changes changes, Fraction beat)
        {
            var at = (beat % changes.Beats).Reduce();
            return (beat + changes.At(at).End - at).Reduce();
        }
    }
}
