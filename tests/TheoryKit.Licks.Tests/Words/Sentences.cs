using System.Text;

namespace TheoryKit.Licks.Tests.Words;

/// <summary>One or more samples of every kind of a family, each with its words.</summary>
internal static class Sentences
{
    /// <summary>Fails unless every kind has a sample, and all words are those of the file.</summary>
    public static void Matches<T>(IReadOnlyList<T> samples, Func<T, string> say, string fileName)
        where T : notnull
    {
        Assert.Equal(
            Kinds(typeof(T)),
            samples.Select(static each => each.GetType().Name).Distinct().Order(StringComparer.Ordinal)
        );
        var text = new StringBuilder();
        foreach (var sample in samples)
        {
            text.Append($"{sample.GetType().Name}: {say(sample)}\n");
        }

        Expectations.Matches(text.ToString(), fileName);
    }

    private static IEnumerable<string> Kinds(Type family) =>
        family
            .GetNestedTypes()
            .Where(kind => !kind.IsAbstract && kind.IsAssignableTo(family))
            .Select(static kind => kind.Name)
            .Order(StringComparer.Ordinal);
}
