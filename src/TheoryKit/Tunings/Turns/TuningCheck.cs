using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Tunings.Turns;

/// <summary>Two positions that sound alike, or octaves apart, once a string is right: one on it, one on a string that is right already.</summary>
/// <param name="Turned">On the string that is turned.</param>
/// <param name="InTune">On a string that is right already.</param>
/// <param name="Octaves">By how many octaves <paramref name="Turned"/> is higher; negative where it is lower, 0 where both sound the same pitch.</param>
public readonly record struct TuningCheck(Position Turned, Position InTune, int Octaves)
{
    /// <summary>By how many octaves <see cref="Turned"/> is higher; negative where it is lower, -20 to 20.</summary>
    public int Octaves
    {
        get;
        init => field = Check.Range(value, -20, 20, nameof(Octaves));
    } = Check.Range(Octaves, -20, 20);
}
