using Fractions;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Progressions;

namespace TheoryKit.Licks.Tab.Writing;

/// <summary>What is written in a bar.</summary>
/// <param name="Number">Which bar it is, from 0.</param>
/// <param name="Time">The time signature.</param>
/// <param name="Notes">The notes that start in it.</param>
/// <param name="Rests">The rests.</param>
/// <param name="Chords">The chords.</param>
/// <param name="HeldInto">The strings held over its beginning, and until when.</param>
/// <param name="HoldEnds">Where held notes end within it.</param>
/// <param name="End">Where the path ends in it; null for nowhere.</param>
internal sealed record WrittenBar(
    int Number,
    TimeSignature Time,
    IReadOnlyList<WrittenNote> Notes,
    IReadOnlyList<Fraction> Rests,
    IReadOnlyList<(Fraction Start, Chord? Chord)> Chords,
    IReadOnlyList<(int String, Fraction Until)> HeldInto,
    IReadOnlyList<Fraction> HoldEnds,
    Fraction? End
)
{
    public Fraction From => Number * Time.Beats;

    public Fraction To => (Number + 1) * Time.Beats;

    /// <summary>From what is written of a path to its bars, at least one.</summary>
    public static List<WrittenBar> Of(Path path, WrittenPath written)
    {
        var count = Math.Max(1, path.BarCount);
        var bars = new List<WrittenBar>(count);
        var held = new List<WrittenNote>();
        var (note, rest, chord) = (0, 0, 0);
        for (var number = 0; number < count; number++)
        {
            var from = (Fraction)(number * path.Time.Beats);
            var to = from + path.Time.Beats;
            var notes = Next(written.Notes, ref note, each => each.Note.Start < to);
            held.RemoveAll(each => each.Note.End <= from);
            held.AddRange(notes.Where(static each => each.IsHeld));
            bars.Add(
                new(
                    number,
                    path.Time,
                    notes,
                    Next(written.Rests, ref rest, each => each < to),
                    Next(written.Chords, ref chord, each => each.Start < to),
                    [
                        .. held.Where(each => each.Note.Start < from)
                            .Select(static each => (each.Note.Position.String, each.Note.End)),
                    ],
                    [.. held.Where(each => each.Note.End < to).Select(static each => each.Note.End)],
                    number == count - 1 && written.End >= from && written.End < to ? written.End : null
                )
            );
        }

        return bars;
    }

    private static List<T> Next<T>(IReadOnlyList<T> all, ref int at, Func<T, bool> isInside)
    {
        var found = new List<T>();
        while (at < all.Count && isInside(all[at]))
        {
            found.Add(all[at++]);
        }

        return found;
    }
}
