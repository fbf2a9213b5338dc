using System.Collections.Immutable;

namespace TheoryKit.Charts;

/// <summary>Names as charts show them.</summary>
internal static class Names
{
    /// <summary>A text for a plot, where plotly would take some elements for markup.</summary>
    public static string InPlot(string text) =>
        text.Replace("&", "&amp;", StringComparison.Ordinal)
            .Replace("<", "&lt;", StringComparison.Ordinal)
            .Replace(">", "&gt;", StringComparison.Ordinal);

    /// <summary>The values as given, if there are enough.</summary>
    /// <exception cref="ArgumentException">Fewer than <paramref name="least"/>.</exception>
    public static ImmutableArray<T> AtLeast<T>(int least, IEnumerable<T> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        ImmutableArray<T> all = [.. values];
        return all.Length >= least
            ? all
            : throw new ArgumentException($"This chart takes {least} or more, not {all.Length}.", nameof(values));
    }

    /// <summary>So many of a thing, in words.</summary>
    public static string Some(int count, string one) => count == 1 ? $"1 {one}" : $"{count} {one}s";
}
