namespace TheoryKit.Tunings.Strings;

/// <summary>What tension limits say of a string in tune; the worst that is true.</summary>
public enum StringState
{
    /// <summary>Within the limits.</summary>
    Comfortable,

    /// <summary>Under the least tension: it rattles, and goes sharp when fretted.</summary>
    Slack,

    /// <summary>Over the most tension: hard to fret, and a load for neck and bridge.</summary>
    Heavy,

    /// <summary>Closer to the breaking stress than the limits allow.</summary>
    NearBreaking,

    /// <summary>Beyond the breaking stress: it breaks before it is in tune.</summary>
    Breaking,
}
