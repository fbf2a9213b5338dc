using TheoryKit.Paths.Routes;

namespace TheoryKit.Drawing.Routes;

/// <summary>The short way from a route to its picture, for notebooks.</summary>
public static class RouteExtensions
{
    /// <summary>The route over beats and frets, the zones as areas.</summary>
    public static RouteMap Map(this Route route)
    {
        ArgumentNullException.ThrowIfNull(route);
        return new(route);
    }
}
