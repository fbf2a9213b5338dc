using System.Collections.Immutable;
using Fractions;
using TheoryKit.Licks.Tab.Reading;
using TheoryKit.Licks.Tab.Timing;
using TheoryKit.Paths;
using TheoryKit.Values;

namespace TheoryKit.Licks.Tab.Playing;

/// <summary>A number and when it sounds, repeats written out.</summary>
/// <param name="Mark">Which number.</param>
/// <param name="Start">From the beginning of the path, in beats.</param>
/// <param name="End">Until when, in beats; not after its start for one that has no room.</param>
internal sealed record PlayedNote(int Mark, Fraction Start, Fraction End);

/// <summary>The notes of a tab in order, its chords as they are played, its bars' beats and where it ends.</summary>
internal sealed record PlayedNotes(
    IReadOnlyList<PlayedNote> Notes,
    IReadOnlyList<TimedChord> Chords,
    int BarBeats,
    Fraction End
)
{
    /// <summary>A time at which something begins; the first note that does, and whether it is the end of a bar.</summary>
    private readonly record struct Moment(Fraction Time, int First);

    /// <summary>From bars to what is played.</summary>
    public static PlayedNotes Of(List<TimedBar> bars, ImmutableArray<TabMark> marks, int stringCount)
    {
        var order = Order(bars);
        var notes = new List<(int Mark, Fraction Start)>(marks.Length);
        var moments = new List<Moment>();
        var chords = new List<TimedChord>();
        var at = 0;
        foreach (var bar in order)
        {
            foreach (var moment in bar.Time.Moments)
            {
                var start = (moment.Time + at).Reduce();
                moments.Add(new(start, notes.Count));
                notes.AddRange(moment.Marks.Select(mark => (mark, start)));
            }

            chords.AddRange(bar.Chords.Select(chord => chord with { Time = (chord.Time + at).Reduce() }));
            at = checked(at + bar.Time.Beats);
            if (at > Path.MaxBeats || notes.Count > Path.MaxNotes)
            {
                throw TooLong(marks);
            }

            if (!bar.HasTime)
            {
                // A note ends with its bar.
                moments.Add(new(at, notes.Count));
            }
        }

        var end =
            order.Count > 0 && order[^1].Time.End is { } inside ? (inside + at - order[^1].Time.Beats).Reduce() : at;
        return new(WithEnds(notes, moments, end, marks, HeldLengths(bars, marks), stringCount), chords, at, end);
    }

    private static PlacedFormatException TooLong(ImmutableArray<TabMark> marks)
    {
        var expected = $"tab of at most {Path.MaxNotes} notes in {Path.MaxBeats} beats";
        return marks is [var first, ..]
            ? first.Line.Wrong(0, first.Line.Text.Length, expected)
            : new($"This tab is too long: expected {expected}.", 1, 1);
    }

    /// <summary>The bars as they are played.</summary>
    private static List<TimedBar> Order(List<TimedBar> bars)
    {
        var order = new List<TimedBar>(bars.Count);
        var from = 0;
        for (var index = 0; index < bars.Count; index++)
        {
            var (begins, times) = (bars[index].Bar.BeginsRepeat, bars[index].Bar.Times);
            from = begins ? index : from;
            order.Add(bars[index]);
            for (var time = 1; time < times; time++)
            {
                order.AddRange(bars.GetRange(from, index - from + 1));
            }

            from = times > 1 ? index + 1 : from;
        }

        return order;
    }

    /// <summary>How long notes are that show how long they are held.</summary>
    private static Dictionary<int, Fraction> HeldLengths(List<TimedBar> bars, ImmutableArray<TabMark> marks)
    {
        var held = new Dictionary<int, Fraction>();
        if (!marks.Any(static mark => mark.HeldTo is not null))
        {
            return held;
        }

        var starts = new Fraction[bars.Count + 1];
        for (var bar = 0; bar < bars.Count; bar++)
        {
            starts[bar + 1] = starts[bar] + bars[bar].Time.Beats;
        }

        foreach (var bar in bars)
        {
            foreach (var moment in bar.Time.Moments)
            {
                foreach (var mark in moment.Marks)
                {
                    if (marks[mark].HeldTo is var (to, column))
                    {
                        var until = column >= bars[to].Bar.To ? starts[to + 1] : starts[to] + bars[to].Time.At(column);
                        held[mark] = (until - (starts[bar.Bar.Number] + moment.Time)).Reduce();
                    }
                }
            }
        }

        return held;
    }

    private static PlayedNote[] WithEnds(
        List<(int Mark, Fraction Start)> notes,
        List<Moment> moments,
        Fraction end,
        ImmutableArray<TabMark> marks,
        Dictionary<int, Fraction> held,
        int stringCount
    )
    {
        var played = new PlayedNote[notes.Count];
        var next = new PlayedNote?[stringCount + 1];
        var following = end;
        var last = notes.Count;
        for (var index = moments.Count - 1; index >= 0; index--)
        {
            var (time, first) = moments[index];
            for (var number = first; number < last; number++)
            {
                var (mark, start) = notes[number];
                played[number] = new(mark, start, EndOf(mark, start, next[marks[mark].String]));
            }

            for (var number = first; number < last; number++)
            {
                next[marks[played[number].Mark].String] = played[number];
            }

            (last, following) = (first, time < following || index == 0 ? time : following);
        }

        return played;

        Fraction EndOf(int mark, Fraction start, PlayedNote? after)
        {
            var until =
                held.TryGetValue(mark, out var length) && length > Fraction.Zero ? (start + length).Reduce()
                : marks[mark].Rings ? after?.Start ?? end
                : following;
            if (after is not null)
            {
                // What is let go, or joined with nothing between, has to sound up to there.
                var other = marks[after.Mark];
                var isJoined = other.Has(Technique.Release) || (other.IsAttached && other.IsJoined);
                if (until > after.Start || (isJoined && other.Before == mark))
                {
                    until = after.Start;
                }
            }

            return until > end ? end : until;
        }
    }
}
