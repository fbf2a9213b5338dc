using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Paths.Routes;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Routes;

/// <summary>
/// A map of a route: beats from left to right, frets from the nut up; the window of every chord as an area, the notes inside with what
/// they are to it. Equal when the route and what is shown agree.
/// </summary>
/// <param name="Route">The route.</param>
public sealed record RouteMap(Route Route)
{
    /// <summary>The route.</summary>
    public Route Route
    {
        get;
        init => field = Check.NotNull(value, nameof(Route));
    } = Check.NotNull(Route);

    /// <summary>The narrowest map, in px: 240.</summary>
    public const int MinWidth = 240;

    /// <summary>The widest map, in px: 100,000.</summary>
    public const int MaxWidth = 100_000;

    /// <summary>How wide it may get, in px, before it goes on in a new line; from <see cref="MinWidth"/> to <see cref="MaxWidth"/>, 720 unless told.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not.</exception>
    public int Width
    {
        get;
        init { field = Check.Range(value, MinWidth, MaxWidth, nameof(Width)); }
    } = 720;

    /// <summary>The map as an SVG picture.</summary>
    public string Svg(RenderContext? context = null) => RouteMapPicture.Write(this, context ?? new(), null);

    /// <summary>A line for every chord: its notes, and the frets of its window on the neck.</summary>
    public override string ToString() => RouteMapText.Write(Route, null);
}

/// <summary>A map of a route, as a picture that scrolls where it is too wide.</summary>
/// <param name="naming">How notes are named; null for English.</param>
internal sealed class RouteMapRenderer(IFormatProvider? naming = null) : IRenderer<RouteMap>
{
    /// <inheritdoc/>
    public string Html(RouteMap value, RenderContext context)
    {
        ArgumentNullException.ThrowIfNull(value);
        ArgumentNullException.ThrowIfNull(context);
        return SheetHtml.Write(new(RouteSheets.Map(value)), context, naming);
    }

    /// <inheritdoc/>
    public string Text(RouteMap value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return RouteMapText.Write(value.Route, naming);
    }
}
