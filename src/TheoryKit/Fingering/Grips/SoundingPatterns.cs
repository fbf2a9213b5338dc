using System.Numerics;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Fingering.Grips;

/// <summary>
/// The patterns that can still sound a chord once the strings from the highest number down to some string are tuned, from
/// the least effort up. They are drawn from those of one string fewer, only as far as they are asked for, so that every
/// tuning with the same beginning shares that work. For one thread at a time.
/// </summary>
internal sealed class SoundingPatterns
{
    private readonly GripPatterns patterns;
    private readonly GripTones tones;
    private readonly SoundingPatterns? before;
    private readonly int number;
    private GripPatterns.Part part;
    private Entry[] entries = new Entry[16];
    private int count;
    private int next; // in those before
    private int open; // the pitch of fret 0 on this string

    /// <summary>All patterns, no string tuned yet.</summary>
    public SoundingPatterns(GripPatterns patterns, GripTones tones)
    {
        this.patterns = patterns;
        this.tones = tones;
        part = patterns.Known;
    }

    /// <summary>Those of <paramref name="before"/> for one string more.</summary>
    public SoundingPatterns(SoundingPatterns before, int number)
        : this(before.patterns, before.tones)
    {
        this.before = before;
        this.number = number;
    }

    /// <summary>Tunes the string to another pitch.</summary>
    /// <param name="open">The pitch of fret 0.</param>
    public void Tune(int open)
    {
        this.open = open;
        (count, next) = (0, 0);
    }

    /// <summary>The effort of the first pattern, infinite if there is none within <paramref name="most"/>.</summary>
    public double First(double most) =>
        TryGet(0, most, out var entry) ? part.Efforts[entry.Pattern] : double.PositiveInfinity;

    private bool TryGet(int index, double most, out Entry entry)
    {
        if (before is null)
        {
            entry = new(index, 0, short.MaxValue);
            if (index >= part.Count)
            {
                if (part.Most >= most || patterns.After(part) is not { } more)
                {
                    return false;
                }

                part = more;
            }

            return part.Efforts[index] <= most;
        }

        while (count <= index)
        {
            if (!before.TryGet(next, most, out entry))
            {
                return false;
            }

            part = before.part;
            next++;
            if (Sounds(ref entry))
            {
                if (count == entries.Length)
                {
                    Array.Resize(ref entries, 2 * count);
                }

                entries[count++] = entry;
            }
        }

        entry = entries[index];
        return part.Efforts[entry.Pattern] <= most;
    }

    /// <summary>Adds what this string sounds; false if the pattern can't sound the chord any more.</summary>
    private bool Sounds(ref Entry entry)
    {
        var strings = patterns.Strings;
        var fret = part.Frets[(entry.Pattern * strings) + number - 1];
        if (fret == GripPatterns.Muted)
        {
            return true;
        }

        var pitch = open + fret;
        var tone = tones.At[Diatonic.Modulo(pitch, Diatonic.SemitonesPerOctave)];
        if (tone < 0 || (tone == tones.Foreign && (entry.Tones & (1 << tone)) != 0))
        {
            return false;
        }

        var heard = (ushort)(entry.Tones | (1 << tone));
        var low = (short)Math.Min(entry.Low, pitch);
        var left = part.Sounding[entry.Pattern] & ((1 << (number - 1)) - 1);
        if (BitOperations.PopCount(tones.Required & ~(uint)heard) > BitOperations.PopCount((uint)left))
        {
            return false;
        }

        // The strings to come are no lower than this; if the lowest so far is not the bass, one of them has to be.
        if (
            tones.Bass >= 0
            && low <= part.Lowest[(entry.Pattern * (strings + 1)) + number - 1]
            && Diatonic.Modulo(low, Diatonic.SemitonesPerOctave) != tones.Bass
        )
        {
            return false;
        }

        entry = new(entry.Pattern, heard, low);
        return true;
    }

    /// <summary>A pattern, the tones that it sounds so far, a bit for each, and its lowest pitch so far.</summary>
    private readonly record struct Entry(int Pattern, ushort Tones, short Low);
}
