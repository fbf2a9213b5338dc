using TheoryKit.Drawing.Tab;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Drawing.Paths;

/// <summary>Short ways from a path to its pictures, for notebooks.</summary>
public static class PathExtensions
{
    /// <summary>The path as tab.</summary>
    public static TabDrawing Tab(this Path path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return new(path);
    }

    /// <summary>The path on its neck, with the order of its notes.</summary>
    public static PathNeck OnNeck(this Path path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return new(path);
    }
}
