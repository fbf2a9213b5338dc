using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Fractions;
using TheoryKit.Paths;
using TheoryKit.Values;

namespace TheoryKit.Licks.Search;

/// <summary>
/// What is left of a lick when key and register are left out: how far each note is from the one before, and how long it is until the
/// next. Equal when all of that agrees, so for two licks exactly when one is the other moved by so many semitones.
/// </summary>
/// <remarks>
/// Pitches are the sounding ones, in cents, bends included; a note lasts until the next one starts, the last one as long as it is. Notes struck
/// together stand from the lowest up, each but the last for no time. A dead note has time but no pitch. Rests before the first note,
/// spelling, strings and techniques say nothing.
/// <para>Text: for each note the semitones from the one before (0 for the first, x for a dead note), a colon and beats:
/// <c>0:1/2 +3:1/2 -2.5:1 x:1/2</c>; <c>none</c> for no notes.</para>
/// </remarks>
[ReadAs("the line of a lick")]
[EqualBy(nameof(steps))]
public sealed partial class LickLine : IEquatable<LickLine>, ISpanParsable<LickLine>
{
    /// <summary>The widest step, in semitones: 127.</summary>
    public const int MaxStep = 127;

    // In the arithmetic of alike-ness: a dead note's step, and the length of what is struck together with the next.
    internal const int Apart = int.MinValue;

    /// <summary>How finely lengths are told apart: so many parts of an octave, of a doubling.</summary>
    internal const int LengthParts = 1 << 26;

    private const string Empty = "none";
    private readonly Step[] steps;

    private LickLine(Step[] steps)
    {
        this.steps = steps;
        Cents = [.. steps.Select(static step => step.Cents ?? Apart)];
        Lengths = [.. steps.Select(static step => LengthOf(step.Beats))];
    }

    /// <summary>A note of a line.</summary>
    /// <param name="Cents">How far it is from the note before, in cents; 0 for the first, null for a dead note.</param>
    /// <param name="Beats">How long it is until the next note.</param>
    public readonly record struct Step(int? Cents, Fraction Beats)
    {
        /// <summary>Semitones and beats: <c>+3:1/2</c>.</summary>
        public override string ToString() =>
            (
                Cents is not { } cents ? "x"
                : cents == 0 ? "0"
                : (cents / 100m).ToString("+0.##;-0.##", CultureInfo.InvariantCulture)
            ) + $":{Beats}";
    }

    /// <summary>The notes in order.</summary>
    public IReadOnlyList<Step> Steps => steps;

    internal int[] Cents { get; }

    internal int[] Lengths { get; }

    /// <summary>
    /// The shape of the line in the large: up, down or both in turns; empty for a line that stays on one pitch. A turn counts when the line
    /// goes back by at least half of its range. Of notes struck together the highest counts.
    /// </summary>
    public IReadOnlyList<Direction> Contour => LickContour.Of(Tops());

    /// <summary>The line of a lick.</summary>
    public static LickLine Of(Lick lick)
    {
        ArgumentNullException.ThrowIfNull(lick);
        return Of(lick.Path);
    }

    /// <summary>The line of a path.</summary>
    public static LickLine Of(Path path)
    {
        ArgumentNullException.ThrowIfNull(path);
        var notes = path
            .Notes.Select(note => (note.Start, note.Length, Cents: CentsOf(path, note)))
            .OrderBy(static note => note.Start)
            .ThenBy(static note => note.Cents ?? int.MinValue)
            .ThenBy(static note => note.Length)
            .ToArray();
        var steps = new Step[notes.Length];
        int? last = null;
        for (var index = 0; index < notes.Length; index++)
        {
            var (start, length, cents) = notes[index];
            steps[index] = new(
                cents is null ? null : cents - (last ?? cents),
                index + 1 < notes.Length ? (notes[index + 1].Start - start).Reduce() : length.Reduce()
            );
            last = cents ?? last;
        }

        return new(steps);
    }

    /// <summary>The sounding pitch in cents; null for a dead note.</summary>
    internal static int? CentsOf(Path path, PathNote note) =>
        note.IsDead ? null
        : note.Has(Technique.NaturalHarmonic) || note.Has(Technique.ArtificialHarmonic)
            ? (100 * path.SoundingPitch(note).MidiNumber) + (note.Bend % 100)
        : (100 * note.Pitch.MidiNumber) + note.Bend;

    /// <summary>The line as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() => steps.Length == 0 ? Empty : string.Join(' ', steps);

    internal static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out LickLine line)
    {
        line = null;
        if (cursor.Take(Empty))
        {
            line = new([]);
            return true;
        }

        var (steps, hasPitch) = (new List<Step>(), false);
        do
        {
            if (!ReadStep(ref cursor, hasPitch, out var step))
            {
                return false;
            }

            hasPitch |= step.Cents is not null;
            steps.Add(step);
        } while (cursor.SkipSpaces() && !cursor.AtEnd);

        line = new([.. steps]);
        return true;
    }

    private static bool ReadStep(ref TextCursor cursor, bool hasPitch, out Step step)
    {
        step = default;
        var start = cursor.Position;
        int? cents = null;
        if (!cursor.Take('x'))
        {
            var isDown = cursor.Take('-');
            if (!isDown)
            {
                cursor.Take('+');
            }

            if (!cursor.TakeNumber(3, out var semitones) || semitones > MaxStep)
            {
                return cursor.Fail(
                    start,
                    $"the semitones from the note before, up to {MaxStep} (as in +3), or x for a dead note"
                );
            }

            cents = 100 * semitones;
            if (cursor.Take('.'))
            {
                var at = cursor.Position;
                if (!cursor.TakeNumber(2, out var part))
                {
                    return cursor.Fail("a part of a semitone (as in +3.5)");
                }

                cents += cursor.Position - at == 1 ? 10 * part : part;
            }

            cents = isDown ? -cents : cents;
            if (!hasPitch && cents != 0)
            {
                return cursor.Fail(start, "0 for the first note that has a pitch");
            }
        }

        if (!cursor.Take(':'))
        {
            return cursor.Fail("a colon and beats (as in +3:1/2)");
        }

        start = cursor.Position;
        var (under, isWhole) = (1, true);
        if (
            !cursor.TakeNumber(6, out var over)
            || (cursor.Take('/') && !(isWhole = false) && (!cursor.TakeNumber(6, out under) || under == 0))
        )
        {
            return cursor.Fail(
                start,
                isWhole ? "beats (as in 1/2)" : "beats as one whole number over another (as in 1/2)"
            );
        }

        step = new(cents, new Fraction(over, under).Reduce());
        return true;
    }

    private static int LengthOf(Fraction beats) =>
        beats == Fraction.Zero ? Apart : (int)Math.Round(Math.Log2(beats.ToDouble()) * LengthParts);

    /// <summary>The highest pitch of each moment, in cents from the first note.</summary>
    private List<int> Tops()
    {
        var tops = new List<int>(steps.Length);
        var (at, isTogether) = (0, false);
        foreach (var (cents, beats) in steps)
        {
            if (cents is { } step)
            {
                at += step;
                if (isTogether && tops.Count > 0)
                {
                    tops[^1] = at;
                }
                else
                {
                    tops.Add(at);
                }

                isTogether = beats == Fraction.Zero;
            }
            else
            {
                isTogether = false;
            }
        }

        return tops;
    }
}

/// <summary>The shape of a line in the large.</summary>
internal static class LickContour
{
    /// <summary>Its directions in turns; a turn counts when it goes back by at least half of the range.</summary>
    public static Direction[] Of(List<int> pitches)
    {
        var range = pitches.Count == 0 ? 0 : pitches.Max() - pitches.Min();
        if (range == 0)
        {
            return [];
        }

        var shape = new List<Direction>();
        var (low, high) = (pitches[0], pitches[0]);
        foreach (var pitch in pitches)
        {
            (low, high) = (Math.Min(low, pitch), Math.Max(high, pitch));
            Direction? turned =
                2 * (pitch - low) >= range && (shape.Count == 0 || shape[^1] == Direction.Down) ? Direction.Up
                : 2 * (high - pitch) >= range && (shape.Count == 0 || shape[^1] == Direction.Up) ? Direction.Down
                : null;
            if (turned is { } direction)
            {
                shape.Add(direction);
                (low, high) = (pitch, pitch);
            }
        }

        return [.. shape];
    }

    /// <summary>The shape in words of a query: up, down, or level.</summary>
    public static string Write(IEnumerable<Direction> shape) =>
        string.Join(',', shape.Select(static each => each == Direction.Up ? "up" : "down")) is { Length: > 0 } text
            ? text
            : "level";
}
