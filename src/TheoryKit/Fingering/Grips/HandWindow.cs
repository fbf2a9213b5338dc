using System.Numerics;
using TheoryKit.Fingering.Hands;

namespace TheoryKit.Fingering.Grips;

/// <summary>The frets above a lowest one that the hand can come to at all, and which sets of them fingers can hold.</summary>
internal sealed class HandWindow
{
    // The widest window for which it is kept which sets of frets can be held.
    private const int WidestKnown = 10;

    private readonly HandOnNeck hand;
    private readonly int maxFingers;
    private readonly double span;

    // By the set of frets held, a bit for each from the lowest: 1 if fingers reach them along the neck, -1 if not, 0 unknown.
    private readonly sbyte[] canHold = new sbyte[1 << WidestKnown];

    public HandWindow(HandOnNeck hand, int lastFret, int maxFingers)
    {
        this.hand = hand;
        this.maxFingers = maxFingers;
        LastFret = lastFret;
        for (var low = hand.Hand.ThumbOver ? Finger.Thumb : Finger.Index; low < Finger.Little; low++)
        {
            for (var high = low + 1; high <= Finger.Little; high++)
            {
                span = Math.Max(span, hand.Reach(low, high));
            }
        }
    }

    /// <summary>The lowest fret that can be held.</summary>
    public int LowestFret => hand.LowestFret;

    /// <summary>The highest.</summary>
    public int LastFret { get; }

    /// <summary>The lowest fret of the window.</summary>
    public int Lowest { get; private set; }

    /// <summary>The highest fret that two fingertips could have with the lowest.</summary>
    public int Highest { get; private set; }

    /// <summary>Begins the window at a fret.</summary>
    public void MoveTo(int lowest)
    {
        Array.Clear(canHold);
        Lowest = Highest = lowest;
        while (Highest < LastFret && hand.Tip(Highest + 1) - hand.Tip(lowest) <= span)
        {
            Highest++;
        }
    }

    /// <summary>Whether fingers could hold these frets if the strings were no way apart: a finger for each, in order, within reach.</summary>
    /// <param name="rows">The frets, a bit for each from the lowest of the window.</param>
    public bool CanHold(ulong rows)
    {
        if (hand.Hand.ThumbOver || Highest - Lowest >= WidestKnown)
        {
            return true; // for the solver to say
        }

        ref var known = ref canHold[rows];
        if (known == 0)
        {
            Span<int> fretOf = stackalloc int[HandOnNeck.Fingers];
            known =
                BitOperations.PopCount(rows) <= maxFingers && Holds(rows, Finger.Index, fretOf) ? (sbyte)1 : (sbyte)-1;
        }

        return known > 0;
    }

    private bool Holds(ulong rows, Finger from, Span<int> fretOf)
    {
        if (rows == 0)
        {
            return true;
        }

        var fret = Lowest + BitOperations.TrailingZeroCount(rows);
        for (var finger = from; finger <= Finger.Little; finger++)
        {
            var reaches = true;
            for (var other = Finger.Index; other < finger && reaches; other++)
            {
                reaches =
                    fretOf[(int)other] == 0
                    || hand.IsWithin(other, finger, hand.Tip(fret) - hand.Tip(fretOf[(int)other]), 0);
            }

            fretOf[(int)finger] = fret;
            if (reaches && Holds(rows & (rows - 1), finger + 1, fretOf))
            {
                return true;
            }

            fretOf[(int)finger] = 0;
        }

        return false;
    }
}
