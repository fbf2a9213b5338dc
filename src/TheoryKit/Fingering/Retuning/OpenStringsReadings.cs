using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Scales;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Fingering.Retuning;

/// <summary>Short ways to what a tuning gives.</summary>
public static class OpenStringsReadings
{
    /// <summary>The open strings of a tuning read, on a neck of usual measures.</summary>
    /// <param name="tuning">The tuning.</param>
    /// <param name="key">The key to count degrees over; null for the major or minor one on the chord's root.</param>
    public static OpenStringsReading Reading(this Tuning tuning, Key? key = null)
    {
        ArgumentNullException.ThrowIfNull(tuning);
        var frets = Math.Max(Neck.DefaultFrets, tuning.Strings.Max(static each => each.Start));
        return OpenStringsReading.Of(new(tuning, frets: frets), key);
    }

    /// <summary>The open strings of a neck read.</summary>
    /// <inheritdoc cref="OpenStringsReading.Of"/>
    public static OpenStringsReading Reading(
        this Neck neck,
        Key? key = null,
        Hand? hand = null,
        GripLimits? limits = null
    ) => OpenStringsReading.Of(neck, key, hand, limits);
}
