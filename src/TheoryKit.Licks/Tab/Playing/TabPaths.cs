using System.Collections.Immutable;
using Fractions;
using TheoryKit.Licks.Tab.Reading;
using TheoryKit.Licks.Tab.Remarks;
using TheoryKit.Licks.Tab.Timing;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Licks.Tab.Playing;

/// <summary>From timed bars and frets to the path.</summary>
internal static class TabPaths
{
    public static Path Of(
        List<TimedBar> bars,
        ImmutableArray<TabMark> marks,
        Neck neck,
        TabMeter meter,
        Changes? given,
        TabRemarks remarks
    )
    {
        var playing = PlayedNotes.Of(bars, marks, neck.StringCount);
        var changes = given ?? ChangesOf(playing, meter.Time);
        if (given is not null)
        {
            Compare(bars, given, remarks);
        }

        var notes = new NoteReading(marks, neck, meter.IsTold, remarks).Of(playing.Notes, changes);
        return new(neck, notes, meter.Time, changes, playing.End);
    }

    private static Changes? ChangesOf(PlayedNotes playing, TimeSignature time)
    {
        var (chords, beats) = (playing.Chords, playing.BarBeats);
        if (chords.Count == 0 || beats == 0)
        {
            return null;
        }

        var bars = new List<Bar>();
        var (next, now) = (0, (Chord?)null);
        for (var from = 0; from < beats; from += time.Beats)
        {
            var parts = new List<(Chord? Chord, Fraction Length)>();
            var at = (Fraction)from;
            while (next < chords.Count && chords[next].Time < from + time.Beats)
            {
                if (chords[next].Time > at)
                {
                    parts.Add((now, chords[next].Time - at));
                    at = chords[next].Time;
                }

                now = chords[next++].Chord;
            }

            parts.Add((now, from + time.Beats - at));
            bars.Add(BarOf(parts, time));
        }

        return new(bars, time);
    }

    private static Bar BarOf(List<(Chord? Chord, Fraction Length)> parts, TimeSignature time)
    {
        try
        {
            return new(parts);
        }
        catch (ArgumentException)
        {
            // Too fine to be written in a chart.
            return Bar.Of(time.Beats, [.. parts.Take(Bar.MaxParts).Select(static part => part.Chord)]);
        }
    }

    private static void Compare(List<TimedBar> bars, Changes given, TabRemarks remarks)
    {
        var walker = new ChordWalker(given);
        var at = 0;
        foreach (var bar in bars)
        {
            foreach (var (start, (_, chord, line, column, length)) in bar.Chords)
            {
                if (walker.At(start + at) is var meant && meant != chord)
                {
                    remarks.Add(line, column, length, new TabRemark.OtherChord(meant, chord));
                }
            }

            at += bar.Time.Beats;
        }
    }
}

/// <summary>Walks through changes that are repeated, beat by beat.</summary>
internal sealed class ChordWalker(Changes? changes)
{
    private Fraction round;
    private int index;

    public Chord? At(Fraction beat)
    {
        if (changes is null)
        {
            return null;
        }

        while (round + changes.Beats <= beat)
        {
            (round, index) = ((round + changes.Beats).Reduce(), 0);
        }

        while (index + 1 < changes.Chords.Count && round + changes.Chords[index + 1].Start <= beat)
        {
            index++;
        }

        return changes.Chords[index].Chord;
    }
}
