using System.Collections.Immutable;
using System.Text.RegularExpressions;
using TheoryKit.Theory;

namespace TheoryKit.Charts;

/// <summary>Names as charts show them.</summary>
internal static partial class Names
{
    /// <summary>The name with printed signs for the flats and sharps before a number.</summary>
    public static string Printed(string name) =>
        SignsBeforeNumber().Replace(name, static signs => signs.Value.Replace('b', '♭').Replace('#', '♯'));

    /// <summary>The printed name for a text in a plot, where plotly would take some elements for markup.</summary>
    public static string InPlot(string name) =>
        Printed(name)
            .Replace("&", "&amp;", StringComparison.Ordinal)
            .Replace("<", "&lt;", StringComparison.Ordinal)
            .Replace(">", "&gt;", StringComparison.Ordinal);

    /// <summary>A chord's symbol: "G" (or null) plain, "P" with printed signs.</summary>
    public static string Of(Chord chord, string? format = null) =>
        (object)chord is IFormattable formattable
            ? formattable.ToString(format, null)
            : $"{chord.Root.ToString(format)} ({chord.Formula.ToString(format)})";

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

    [GeneratedRegex("[b#]+(?=[0-9])")]
    private static partial Regex SignsBeforeNumber();
}
