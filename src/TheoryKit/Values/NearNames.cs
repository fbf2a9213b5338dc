namespace TheoryKit.Values;

/// <summary>The known names that are nearest to what was written.</summary>
internal static class NearNames
{
    private const int Most = 3;

    /// <summary>"Known by name are, for example, …." with the nearest first.</summary>
    public static string Said(string text, IEnumerable<string> names) =>
        $"Known by name are {string.Join(", ", Of(text, names).Select(static name => $"\"{name}\""))} and others.";

    /// <summary>What to throw where nothing goes by a name: it says what does and comes near.</summary>
    /// <param name="text">The name.</param>
    /// <param name="what">What was looked for, without its article: "tuning".</param>
    /// <param name="names">The names that there are.</param>
    /// <param name="parameter">The parameter that has the name.</param>
    public static ArgumentException NoSuch(string text, string what, IEnumerable<string> names, string parameter) =>
        new(
            $"There is no {what} \"{text}\"; the nearest names are {English.List(Of(text, names).Select(static name => $"\"{name}\""))}.",
            parameter
        );

    /// <summary>The nearest three: those that share the first letters of a word, then by how many letters have to be changed.</summary>
    public static IEnumerable<string> Of(string text, IEnumerable<string> names) =>
        names
            .Distinct()
            .OrderBy(name => name.Contains(text.Trim(), StringComparison.OrdinalIgnoreCase) ? 0 : 1)
            .ThenBy(name => Changes(text.ToUpperInvariant(), name.ToUpperInvariant()))
            .ThenBy(static name => name, StringComparer.Ordinal)
            .Take(Most);

    /// <summary>How many letters have to be added, left out or replaced: the edit distance. Looked up: Levenshtein (1966).</summary>
    private static int Changes(string one, string other)
    {
        var row = Enumerable.Range(0, other.Length + 1).ToArray();
        for (var i = 1; i <= one.Length; i++)
        {
            var corner = row[0];
            row[0] = i;
            for (var j = 1; j <= other.Length; j++)
            {
                var replaced = corner + (one[i - 1] == other[j - 1] ? 0 : 1);
                corner = row[j];
                row[j] = Math.Min(replaced, Math.Min(row[j], row[j - 1]) + 1);
            }
        }

        return row[^1];
    }
}
