using System.Globalization;
using System.Numerics;
using Fractions;
using TheoryKit.Fingering.Hands;
using TheoryKit.Licks.Tab.Options;
using TheoryKit.Paths;
using TheoryKit.Theory.Chords;

namespace TheoryKit.Licks.Tab.Writing;

/// <summary>A note and what is written of it.</summary>
/// <param name="Note">The note.</param>
/// <param name="Before">What stands before its moment.</param>
/// <param name="Sign">What stands on its string from its moment on.</param>
/// <param name="IsHeld">Whether a line shows how long it is held.</param>
/// <param name="SlidesFromBefore">Whether it slides from a note that sounds on its string up to its start.</param>
/// <param name="Above">What stands above the strings.</param>
/// <param name="Row">Which it is of the notes that start with it, from string 1 on, from 0.</param>
internal sealed record WrittenNote(
    PathNote Note,
    string Before,
    string Sign,
    bool IsHeld,
    bool SlidesFromBefore,
    AboveSigns Above,
    int Row
)
{
    public string? Label { get; init; }
    public string? Spelled { get; init; }
    public string? Finger { get; init; }

    /// <summary>What stands above the strings as signs.</summary>
    public string AboveSign =>
        (Above.HasFlag(AboveSigns.Accent) ? ">" : "") + (Above.HasFlag(AboveSigns.Staccato) ? "." : "");

    /// <summary>How many characters it takes from its moment on.</summary>
    public int Width =>
        new[]
        {
            Sign.Length,
            Label?.Length ?? 0,
            Spelled?.Length ?? 0,
            AboveSign.Length,
            Above.HasFlag(AboveSigns.PalmMute) ? BarText.PalmMuted.Length : 0,
        }.Max();
}

/// <summary>What is written of a path, in order.</summary>
/// <param name="Notes">The notes.</param>
/// <param name="Rests">Where rests begin; one over a bar line again in each bar.</param>
/// <param name="Chords">The chords where they begin; one that goes on over a bar line is not said again.</param>
/// <param name="End">Where it is written that the path ends; null for nowhere.</param>
internal sealed record WrittenPath(
    IReadOnlyList<WrittenNote> Notes,
    IReadOnlyList<Fraction> Rests,
    IReadOnlyList<(Fraction Start, Chord? Chord)> Chords,
    Fraction? End
)
{
    /// <summary>From a path to what is written of it.</summary>
    public static WrittenPath Of(Path path, TabWriteOptions options)
    {
        var beats = (Fraction)(path.BarCount * path.Time.Beats);
        var rests = RestsOf(path, beats);
        var before = BeforeEach(path);
        var held = Held(path, before, rests, beats);
        var notes = new List<WrittenNote>(path.Notes.Count);
        foreach (var (first, count) in Groups(path))
        {
            var above = AboveOf(path, first, count);
            for (var index = first; index < first + count; index++)
            {
                var note = path.Notes[index];
                var last = before[index];
                var (lead, sign) = TabNoteText.Of(
                    path.Neck,
                    note,
                    last is null ? null : path.Notes[last.Value],
                    above,
                    options.SaysAll
                );
                if (last is not null && held[last.Value] && lead is ['/' or '\\', ..] && !note.Has(Technique.Slide))
                {
                    // One sign after what is held would join them.
                    lead = lead[0] + lead;
                }

                notes.Add(
                    new(
                        note,
                        lead,
                        sign,
                        held[index],
                        last is not null && note.Has(Technique.Slide),
                        above,
                        first + count - 1 - index
                    )
                    {
                        Label = options.Label?.Invoke(note),
                        Finger = options.SaysAll ? FingerSign(note.Finger) : null,
                        Spelled =
                            options.SaysAll
                            && note.Pitch != TabSpelling.Of(path.ChordAt(note.Start), note.Pitch.MidiNumber)
                                ? note.Pitch.Name.ToString()
                                : null,
                    }
                );
            }
        }

        var endsInside = options.SaysAll && (path.Beats < beats || path.BarCount == 0);
        return new(notes, rests, [.. ChordsOf(path, beats)], endsInside ? path.Beats : null);
    }

    /// <summary>Notes that start together.</summary>
    private static IEnumerable<(int First, int Count)> Groups(Path path)
    {
        for (var first = 0; first < path.Notes.Count; )
        {
            var count = 1;
            while (first + count < path.Notes.Count && path.Notes[first + count].Start == path.Notes[first].Start)
            {
                count++;
            }

            yield return (first, count);
            first += count;
        }
    }

    private static IEnumerable<(Fraction Start, Chord? Chord)> ChordsOf(Path path, Fraction beats)
    {
        if (path.Changes is not { } changes)
        {
            yield break;
        }

        var (isFirst, last) = (true, (Chord?)null);
        for (var round = Fraction.Zero; round < beats; round += changes.Beats)
        {
            foreach (var span in changes.Chords)
            {
                var start = (round + span.Start).Reduce();
                if (start < beats && (isFirst || span.Chord != last))
                {
                    yield return (start, span.Chord);
                    (isFirst, last) = (false, span.Chord);
                }
            }
        }
    }

    private static List<Fraction> RestsOf(Path path, Fraction beats)
    {
        var rests = new List<Fraction>();
        var silence = Fraction.Zero;
        foreach (var note in path.Notes)
        {
            Rest(note.Start);
            silence = note.End > silence ? note.End : silence;
        }

        Rest(beats);
        return rests;

        void Rest(Fraction to)
        {
            for (
                var from = silence;
                from < to;
                from = (Fraction)((Whole(from / path.Time.Beats) + 1) * path.Time.Beats)
            )
            {
                rests.Add(from.Reduce());
            }
        }
    }

    /// <summary>A number of beats without its part.</summary>
    public static BigInteger Whole(Fraction value) => BigInteger.Divide(value.Numerator, value.Denominator);

    /// <summary>For each note the one that sounds on its string up to its start.</summary>
    private static int?[] BeforeEach(Path path)
    {
        var before = new int?[path.Notes.Count];
        var last = new int?[path.Neck.StringCount + 1];
        for (var index = 0; index < before.Length; index++)
        {
            var note = path.Notes[index];
            ref var onString = ref last[note.Position.String];
            before[index] = onString is { } other && path.Notes[other].End == note.Start ? other : null;
            onString = index;
        }

        return before;
    }

    /// <summary>Notes that end elsewhere than at the next moment show how long they are held, and those from which it slides where.</summary>
    private static bool[] Held(Path path, int?[] before, List<Fraction> rests, Fraction beats)
    {
        var held = new bool[path.Notes.Count];
        var rest = rests.Count;
        var (following, from) = (beats, held.Length);
        for (var index = held.Length - 1; index >= 0; index--)
        {
            var (start, note) = (path.Notes[index].Start, path.Notes[index]);
            if (from < held.Length && path.Notes[from].Start != start)
            {
                following = path.Notes[from].Start;
            }

            from = index;
            while (rest > 0 && rests[rest - 1] > start)
            {
                rest--;
            }

            var end = rest < rests.Count && rests[rest] < following ? rests[rest] : following;
            held[index] |= note.End != end;
            if (before[index] is { } last && note.Has(Technique.Slide))
            {
                held[last] = true;
            }
        }

        return held;
    }

    private static AboveSigns AboveOf(Path path, int first, int count)
    {
        return Of(Technique.Accent, AboveSigns.Accent)
            | Of(Technique.Staccato, AboveSigns.Staccato)
            | Of(Technique.PalmMute, AboveSigns.PalmMute);

        AboveSigns Of(Technique technique, AboveSigns sign)
        {
            for (var index = first; index < first + count; index++)
            {
                if (!path.Notes[index].Has(technique))
                {
                    return AboveSigns.None;
                }
            }

            return sign;
        }
    }

    private static string? FingerSign(Finger? finger) =>
        finger is null ? null
        : finger == Finger.Thumb ? "T"
        : ((int)finger).ToString(CultureInfo.InvariantCulture);
}
