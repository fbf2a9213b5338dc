using TheoryKit.Paths;

namespace TheoryKit.Drawing;

/// <summary>Short ways from a lick to its pictures, for notebooks.</summary>
public static class LickExtensions
{
    /// <summary>The lick with its tab and neck.</summary>
    public static LickDrawing Draw(this Lick lick)
    {
        ArgumentNullException.ThrowIfNull(lick);
        return new(lick);
    }
}
