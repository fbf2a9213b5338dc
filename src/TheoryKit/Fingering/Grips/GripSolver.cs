using TheoryKit.Fingering.Hands;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Fingering.Grips;

/// <summary>
/// Finds the least-effort fingers for a set of held strings, over all assignments, barres included. Keeps buffers: one
/// instance per thread.
/// </summary>
/// <remarks>
/// The rules of an assignment. Notes at a lower fret get lower-numbered fingers (the thumb stands outside this order and
/// takes only the highest-numbered string). A finger holds one string, or lies flat at one fret over as many strings as the
/// hand has it: then every string between must be held at this fret or higher, and at this fret by this finger. Every two
/// fingertips are within reach. Effort: each finger, each flat finger, the spread between neighbouring fingers in use, and
/// the muted strings between sounding ones.
/// </remarks>
internal sealed class GripSolver(HandOnNeck hand)
{
    private const int Fingers = HandOnNeck.Fingers;
    private const int MaxStrings = Position.MaxString;

    private readonly Hand body = hand.Hand;
    private readonly double[] tips = new double[Fingers];
    private readonly int[] fretOf = new int[Fingers];
    private readonly int[] thick = new int[Fingers]; // the highest string number a finger holds
    private readonly int[] thin = new int[Fingers]; // the lowest
    private readonly bool[] used = new bool[Fingers];
    private readonly int[] best = new int[2 * Fingers];
    private readonly int[] notes = new int[MaxStrings]; // string numbers by fret, then from the thickest
    private readonly double[] ahead = new double[MaxStrings + 1]; // by note: the least that the fingers from it on weigh
    private readonly double leastFinger = hand.Hand.Weights.LeastFinger;
    private int count;
    private int lastString;
    private double bestEffort;
    private int fingersLeft;

    // What each string does, by string number: its fret if held, else one of these.
    public const int Muted = -1;
    public const int Open = -2;

    private int[] frets = [];

    /// <summary>
    /// The least effort of holding these frets (by string number, index 0 unused), infinite if no assignment is within reach
    /// or none costs <paramref name="most"/> or less.
    /// </summary>
    public double Solve(int[] frets, int strings, int maxFingers = Fingers, double most = double.PositiveInfinity)
    {
        this.frets = frets;
        lastString = strings;
        count = 0;
        for (var number = strings; number >= 1; number--)
        {
            if (frets[number] < 0)
            {
                continue;
            }

            var at = count++;
            for (; at > 0 && frets[notes[at - 1]] > frets[number]; at--)
            {
                notes[at] = notes[at - 1];
            }

            notes[at] = number;
        }

        bestEffort = double.PositiveInfinity;
        fingersLeft = maxFingers;
        var inner = InnerMutes(strings) * body.Weights.InnerMute;
        if (count == 0)
        {
            return inner <= most ? inner : double.PositiveInfinity;
        }

        ahead[count] = 0;
        var rows = 0;
        for (var at = count - 1; at >= 0; at--)
        {
            // Each fret needs a finger of its own.
            var isNew = at == count - 1 || frets[notes[at]] != frets[notes[at + 1]];
            rows += isNew ? 1 : 0;
            ahead[at] = ahead[at + 1] + (isNew ? leastFinger : 0);
        }

        if (rows > (body.ThumbOver ? Fingers : Fingers - 1))
        {
            return bestEffort;
        }

        Array.Clear(used);
        var limit = bestEffort = double.BitIncrement(most);
        Assign(0, Finger.Thumb, Finger.Thumb, inner);
        return bestEffort < limit ? bestEffort : double.PositiveInfinity;
    }

    /// <summary>The fingers of the last solution: for each string number the finger that holds it, or null.</summary>
    public void Write(Span<Finger?> fingers)
    {
        fingers.Clear();
        for (var finger = 0; finger < Fingers; finger++)
        {
            if (best[2 * finger] == 0)
            {
                continue;
            }

            var fret = frets[best[2 * finger]];
            for (var number = best[2 * finger]; number >= best[(2 * finger) + 1]; number--)
            {
                if (frets[number] == fret)
                {
                    fingers[number] = (Finger)finger;
                }
            }
        }
    }

    private int InnerMutes(int strings)
    {
        var (mutes, pending, sounding) = (0, 0, false);
        for (var number = 1; number <= strings; number++)
        {
            if (frets[number] == Muted)
            {
                pending += sounding ? 1 : 0;
            }
            else
            {
                mutes += pending;
                (pending, sounding) = (0, true);
            }
        }

        return mutes;
    }

    /// <summary>
    /// Gives the note at <paramref name="index"/> and those it can lie flat with to each finger allowed. Within one fret the
    /// fingers come in any order; <paramref name="below"/> is the highest finger of the frets before, <paramref name="highest"/>
    /// of this one too.
    /// </summary>
    private void Assign(int index, Finger below, Finger highest, double effort)
    {
        if (index == count)
        {
            Finish(effort);
            return;
        }

        var first = notes[index];
        var fret = frets[first];
        if (index > 0 && frets[notes[index - 1]] != fret)
        {
            below = highest;
        }

        if (body.ThumbOver && first == lastString)
        {
            Use(Finger.Thumb, index, index, below, highest, effort);
        }

        for (var finger = below + 1; finger <= Finger.Little; finger++)
        {
            if (used[(int)finger])
            {
                continue;
            }

            var flat = body.Flat(finger);
            for (var last = index; ; last++)
            {
                Use(finger, index, last, below, finger > highest ? finger : highest, effort);
                if (
                    last + 1 >= count
                    || frets[notes[last + 1]] != fret
                    || first - notes[last + 1] + 1 > flat
                    || !CanLieFlat(notes[last], notes[last + 1], fret)
                )
                {
                    break;
                }
            }
        }
    }

    private void Use(Finger finger, int first, int last, Finger below, Finger highest, double effort)
    {
        var f = (int)finger;
        var (from, to) = (notes[first], notes[last]);
        fretOf[f] = frets[from];
        tips[f] = hand.Tip(frets[from]);
        (thick[f], thin[f]) = (from, to);
        effort += hand.Setting(finger, frets[from]);
        if (from != to)
        {
            effort += body.Weights.Barre + ((from - to) * body.Weights.BarreString);
            if (finger != Finger.Index)
            {
                effort += body.Weights.OtherBarre;
            }
        }

        var next = last + 1;
        if (fingersLeft == 0 || effort + ahead[next] >= bestEffort)
        {
            return;
        }

        for (var other = 0; other < Fingers; other++)
        {
            if (used[other])
            {
                var (low, high) = other < f ? (other, f) : (f, other);
                if (!hand.IsWithin((Finger)low, (Finger)high, tips[high] - tips[low], Across(low, high)))
                {
                    return;
                }
            }
        }

        used[f] = true;
        fingersLeft--;
        Assign(next, below, highest, effort);
        fingersLeft++;
        used[f] = false;
    }

    private void Finish(double effort)
    {
        var before = -1;
        for (var finger = (int)Finger.Index; finger < Fingers; finger++)
        {
            if (!used[finger])
            {
                continue;
            }

            if (before >= 0)
            {
                effort += hand.Spread(
                    (Finger)before,
                    (Finger)finger,
                    tips[finger] - tips[before],
                    Across(before, finger)
                );
                if (fretOf[before] == fretOf[finger] && thick[before] < thick[finger])
                {
                    effort += body.Weights.Twist;
                }
            }

            before = finger;
        }

        // Strictly better only: among equals the first in the order of search stays, which makes ties break the same way.
        if (effort < bestEffort)
        {
            bestEffort = effort;
            for (var finger = 0; finger < Fingers; finger++)
            {
                best[2 * finger] = used[finger] ? thick[finger] : 0;
                best[(2 * finger) + 1] = used[finger] ? thin[finger] : 0;
            }
        }
    }

    private int Across(int one, int other) => HandOnNeck.Across(thick[one], thin[one], thick[other], thin[other]);

    private bool CanLieFlat(int from, int to, int fret)
    {
        for (var number = from - 1; number > to; number--)
        {
            if (frets[number] < fret)
            {
                return false;
            }
        }

        return true;
    }
}
