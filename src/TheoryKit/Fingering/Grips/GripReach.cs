using TheoryKit.Fingering.Hands;

namespace TheoryKit.Fingering.Grips;

/// <summary>How far a grip lies beyond the reach of a hand.</summary>
internal static class GripReach
{
    /// <summary>The two fingers of a grip that lack most reach, and how many mm; null if it is within reach.</summary>
    public static (Finger One, Finger Other, double Excess)? WorstExcess(this HandOnNeck hand, Grip grip)
    {
        (Finger, Finger, double)? worst = null;
        for (var low = Finger.Thumb; low < Finger.Little; low++)
        {
            for (var high = low + 1; high <= Finger.Little; high++)
            {
                if (
                    Span(grip, low) is var (fret, thick, thin)
                    && Span(grip, high) is var (otherFret, otherThick, otherThin)
                    && hand.Excess(
                        low,
                        high,
                        hand.Tip(otherFret) - hand.Tip(fret),
                        HandOnNeck.Across(thick, thin, otherThick, otherThin)
                    )
                        is > 0
                            and var excess
                    && !(worst?.Item3 >= excess)
                )
                {
                    worst = (low, high, excess);
                }
            }
        }

        return worst;
    }

    private static (int Fret, int Thick, int Thin)? Span(Grip grip, Finger finger)
    {
        (int Fret, int Thick, int Thin)? span = null;
        for (var number = grip.Strings.Count; number >= 1; number--)
        {
            if (grip[number].Finger == finger)
            {
                span = (grip[number].Fret!.Value, span?.Thick ?? number, number);
            }
        }

        return span;
    }
}
