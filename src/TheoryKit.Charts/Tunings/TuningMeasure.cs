namespace TheoryKit.Charts.Tunings;

/// <summary>What a map of chords by tunings shows of each.</summary>
public enum TuningMeasure
{
    /// <summary>The effort of the easiest grip.</summary>
    LeastEffort,

    /// <summary>How many grips there are.</summary>
    Grips,

    /// <summary>How many different shapes the hand takes in them.</summary>
    Shapes,

    /// <summary>How many zones miss no tone.</summary>
    CompleteZones,
}
