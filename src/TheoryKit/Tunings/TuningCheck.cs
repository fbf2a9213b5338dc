namespace TheoryKit.Tunings;

/// <summary>Two positions that sound alike, or octaves apart, once a string is right: one on it, one on a string that is right already.</summary>
/// <param name="Turned">On the string that is turned.</param>
/// <param name="InTune">On a string that is right already.</param>
/// <param name="Octaves">By how many octaves <paramref name="Turned"/> is higher; negative where it is lower, 0 where both sound the same pitch.</param>
public readonly record struct TuningCheck(Position Turned, Position InTune, int Octaves)
{
    /// <summary>The check for a reader: <c>6:0 an octave below 4:0</c>.</summary>
    public override string ToString() =>
        Octaves == 0
            ? $"{Turned} as {InTune}"
            : $"{Turned} {(Math.Abs(Octaves) == 1 ? "an octave" : $"{Math.Abs(Octaves)} octaves")} {(Octaves < 0 ? "below" : "above")} {InTune}";
}
