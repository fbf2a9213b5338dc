using System.Text;

namespace TheoryKit.Words;

/// <summary>The kinds of a family of values that are put in words, each of which must have its sentence.</summary>
internal static class Kinds
{
    /// <summary>Every record that is a kind of one of these families.</summary>
    public static IEnumerable<Type> Of(params IEnumerable<Type> families) =>
        families.SelectMany(static family =>
            family.Assembly.GetTypes().Where(type => !type.IsAbstract && type.IsAssignableTo(family))
        );

    /// <summary>
    /// Compares the sentences of samples with the file <c>words-FAMILY.txt</c>, a line for each, and fails where a kind of a family has
    /// no sample.
    /// </summary>
    public static void Match(string family, IEnumerable<Type> families, params (object Sample, string Words)[] samples)
    {
        var sampled = samples.Select(static each => each.Sample.GetType()).ToHashSet();
        Assert.Equal([], Of(families).Where(kind => !sampled.Contains(kind)).Select(static kind => kind.FullName));
        var text = new StringBuilder();
        foreach (var group in samples.GroupBy(static each => each.Sample.GetType()))
        {
            text.Append(group.Key.DeclaringType is { } outer ? $"{outer.Name}." : "")
                .Append(group.Key.Name)
                .Append('\n');
            foreach (var (_, words) in group)
            {
                text.Append("    ").Append(words.Replace("\n", "\n    ", StringComparison.Ordinal)).Append('\n');
            }
        }

        Expectations.Matches(text.ToString(), $"words-{family}.txt");
    }
}
