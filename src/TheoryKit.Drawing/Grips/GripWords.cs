using System.Globalization;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Grips;

/// <summary>What there is to say about a grip, in a few words.</summary>
internal static class GripWords
{
    /// <summary>The lines below a box.</summary>
    public static IReadOnlyList<Words> Under(ChordGrip grip)
    {
        var lines = new List<Words> { (Words)$"{Bass(grip)} · {Spacing(grip.Spacing)}" };
        if (grip.Missing.Count > 0)
        {
            lines.Add((Words)$"without {Words.Join(", ", grip.Missing)}");
        }

        lines.Add($"effort {Effort(grip.Effort)}");
        return lines;
    }

    /// <summary>"root lowest", "1st inversion", "A in the bass".</summary>
    public static Words Bass(ChordGrip grip) =>
        grip.Inversion switch
        {
            0 => "root lowest",
            // Counting goes up to the seventh; a ninth in the bass is said by its function.
            >= 1 and <= 3 and var inversion => $"{English.Ordinal(inversion)} inversion",
            _ => (Words)$"{grip.Places[0].Function} lowest",
        };

    /// <summary>"close", "drop 2", "open".</summary>
    public static string Spacing(GripSpacing spacing) =>
        spacing switch
        {
            GripSpacing.Close => "close",
            GripSpacing.Drop2 => "drop 2",
            GripSpacing.Drop3 => "drop 3",
            GripSpacing.Drop2And4 => "drop 2 and 4",
            _ => "open",
        };

    /// <summary>A sum of effort to one decimal.</summary>
    public static string Effort(double effort) => effort.ToString("0.0", CultureInfo.InvariantCulture);

    /// <summary>How the hand and the voices get from a grip to the next.</summary>
    public static IReadOnlyList<Words> Motion(ChordGrip from, ChordGrip to)
    {
        var lines = new List<Words>();
        if (from.Grip.LowestFret is { } low && to.Grip.LowestFret is { } next)
        {
            lines.Add(
                next == low ? "stay"
                : next > low ? $"{English.Count(next - low, "fret")} up"
                : $"{English.Count(low - next, "fret")} down"
            );
        }

        var before = from.Places.Select(static place => place.Pitch.MidiNumber).ToHashSet();
        var held = to.Places.Count(place => before.Contains(place.Pitch.MidiNumber));
        lines.Add(held == 0 ? "no note held" : $"{English.Count(held, "note")} held");
        if (StayingFingers(from.Grip, to.Grip) is > 0 and var fingers)
        {
            lines.Add(fingers == 1 ? "1 finger stays" : $"{fingers} fingers stay");
        }

        return lines;
    }

    /// <summary>The fingers that hold the same place in both.</summary>
    private static int StayingFingers(Grip from, Grip to)
    {
        var staying = new HashSet<Finger>();
        for (var number = 1; number <= Math.Min(from.Strings.Count, to.Strings.Count); number++)
        {
            if (from[number] == to[number] && to[number].Finger is { } finger)
            {
                staying.Add(finger);
            }
        }

        return staying.Count;
    }
}
