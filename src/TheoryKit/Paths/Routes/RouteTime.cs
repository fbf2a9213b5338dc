using Fractions;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Progressions;

namespace TheoryKit.Paths.Routes;

/// <summary>When the notes of a route sound, which does not depend on what they are: the chords that get notes, and theirs.</summary>
internal sealed record RouteTime(IReadOnlyList<RouteTime.Part> Parts, Fraction Beats)
{
    /// <summary>A chord, which time through the changes it is in, and its notes.</summary>
    public sealed record Part(ChordSpan Span, int Time, List<Stroke> Strokes);

    /// <exception cref="ArgumentException">An anticipation would take all the notes of a chord.</exception>
    public static RouteTime Of(RouteQuery query)
    {
        var changes = query.Changes;
        var beats = (Fraction)(changes.Beats * query.Times);
        var parts = Enumerable
            .Range(0, query.Times)
            .SelectMany(time =>
                changes.Chords.Select(span => new Part(span.After((Fraction)(time * changes.Beats)), time, []))
            )
            .ToList();
        if (query.Rhythm is { } rhythm)
        {
            var at = 0;
            foreach (var stroke in rhythm.Strokes())
            {
                if (stroke.Start >= beats)
                {
                    break;
                }

                while (parts[at].Span.End <= stroke.Start)
                {
                    at++;
                }

                var end = stroke.Start + stroke.Length;
                parts[at].Strokes.Add(end > beats ? stroke with { Length = beats - stroke.Start } : stroke);
            }
        }
        else
        {
            foreach (var part in parts)
            {
                var notes = query.NotesOf(part.Span);
                var length = (part.Span.Length / notes).Reduce();
                part.Strokes.AddRange(
                    Enumerable
                        .Range(0, notes)
                        .Select(index => new Stroke((part.Span.Start + (length * index)).Reduce(), length, false))
                );
            }
        }

        parts.RemoveAll(static part => part.Span.Chord is null || part.Strokes.Count == 0);
        if (query.Anticipation > Fraction.Zero)
        {
            for (var index = 1; index < parts.Count; index++)
            {
                Anticipate(parts[index - 1], parts[index], query.Anticipation);
            }
        }

        return new(parts, beats);
    }

    private static void Anticipate(Part before, Part part, Fraction by)
    {
        var (first, start) = (part.Strokes[0], part.Span.Start - by);
        part.Strokes[0] = first with { Start = start, Length = first.Start + first.Length - start };
        while (before.Strokes.Count > 0 && before.Strokes[^1].Start >= start)
        {
            before.Strokes.RemoveAt(before.Strokes.Count - 1);
        }

        if (before.Strokes.Count == 0)
        {
            throw new ArgumentException(
                $"Sounding {part.Span.Chord} {by} beats ahead leaves no note for {before.Span.Chord} at beat {before.Span.Start}.",
                "query"
            );
        }

        var last = before.Strokes[^1];
        if (last.Start + last.Length > start)
        {
            before.Strokes[^1] = last with { Length = start - last.Start };
        }
    }
}
