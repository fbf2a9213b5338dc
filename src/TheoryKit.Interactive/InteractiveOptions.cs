using TheoryKit.Drawing.Rendering;
using TheoryKit.Values;

namespace TheoryKit.Interactive;

/// <summary>What differs between the hosts of a notebook.</summary>
public sealed record InteractiveOptions
{
    /// <summary>
    /// Hands out the ids of pictures. By default with a prefix never used before, because a notebook keeps the outputs
    /// of earlier runs.
    /// </summary>
    public RenderContext Context
    {
        get;
        init => field = Check.NotNull(value, nameof(Context));
    } = new($"tk{Guid.NewGuid().ToString("N")[..8]}");

    /// <summary>
    /// Whether the first chart brings plotly.js along (the default); a host that puts it into the page itself says no.
    /// </summary>
    public bool ChartsBringScript { get; init; } = true;
}
