using System.Reflection;

namespace TheoryKit.Interactive;

/// <summary>The library's namespaces as a notebook's C# cells see them.</summary>
internal static class Namespaces
{
    /// <summary>
    /// A <c>using</c> line for each namespace that holds public types, and for that of the exact numbers that times are. Notebooks
    /// open System.IO by themselves, so Path is said to be ours.
    /// </summary>
    public static string Usings { get; } =
        string.Join(
            '\n',
            Find()
                .Append(typeof(Fractions.Fraction).Namespace)
                .Select(static name => $"using {name};")
                .Append("using Path = TheoryKit.Paths.Path;")
        );

    private static IOrderedEnumerable<string> Find() =>
        Closure(typeof(InteractiveExtension).Assembly)
            .SelectMany(static assembly => assembly.GetExportedTypes())
            .Select(static type => type.Namespace!)
            .Where(static name => name != typeof(InteractiveExtension).Namespace)
            .Distinct()
            .Order(StringComparer.Ordinal);

    private static IEnumerable<Assembly> Closure(Assembly assembly) =>
        assembly
            .GetReferencedAssemblies()
            .Where(static name => name.Name!.StartsWith(nameof(TheoryKit), StringComparison.Ordinal))
            .Select(Assembly.Load)
            .SelectMany(Closure)
            .Append(assembly)
            .Distinct();
}
