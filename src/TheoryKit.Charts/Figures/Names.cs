using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using TheoryKit.Values;

namespace TheoryKit.Charts.Figures;

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
    public static ImmutableArray<T> AtLeast<T>(
        int least,
        IEnumerable<T> values,
        [CallerArgumentExpression(nameof(values))] string name = ""
    )
    {
        ImmutableArray<T> all = [.. Check.Items(values, name)];
        return all.Length >= least
            ? all
            : throw new ArgumentException($"This chart takes {least} or more, not {all.Length}.", name);
    }

    /// <summary>So many of a thing, in words.</summary>
    public static string Some(int count, string one) => count == 1 ? $"1 {one}" : $"{count} {one}s";
}
