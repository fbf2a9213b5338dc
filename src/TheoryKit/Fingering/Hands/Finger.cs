namespace TheoryKit.Fingering.Hands;

/// <summary>The fingers of the fretting hand, numbered as on a chord box; the thumb comes over the top of the neck.</summary>
public enum Finger
{
    /// <summary>The thumb, over the neck onto the highest-numbered string.</summary>
    Thumb,

    /// <summary>1, the index finger.</summary>
    Index,

    /// <summary>2, the middle finger.</summary>
    Middle,

    /// <summary>3, the ring finger.</summary>
    Ring,

    /// <summary>4, the little finger.</summary>
    Little,
}
