using Microsoft.CodeAnalysis;

namespace TheoryKit.Generators;

/// <summary>The comparison operators over the type's own <c>CompareTo</c>.</summary>
internal static class Ordering
{
    private static readonly string[] Signs = ["<", ">", "<=", ">="];

    public static string Members(INamedTypeSymbol type) =>
        string.Concat(
            Signs.Select(sign =>
                $$"""
                        /// <inheritdoc cref="CompareTo({{type.Name}})"/>
                        public static bool operator {{sign}}({{type.Name}} left, {{type.Name}} right) => left.CompareTo(right) {{sign}} 0;


                    """
            )
        );
}
