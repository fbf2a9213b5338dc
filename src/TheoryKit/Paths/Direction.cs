namespace TheoryKit.Paths;

/// <summary>In which direction a line travels.</summary>
public enum Direction
{
    /// <summary>To higher pitches.</summary>
    Up,

    /// <summary>To lower pitches.</summary>
    Down,
}
