using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace TheoryKit.Generators;

/// <summary><c>IParsable</c> and <c>ISpanParsable</c> over the type's own <c>Read(ref TextCursor, out T)</c>.</summary>
internal static class Parsing
{
    public static string Members(INamedTypeSymbol type, AttributeData attribute)
    {
        var what = (string)attribute.ConstructorArguments[0].Value!;
        var end = attribute.NamedArguments.FirstOrDefault(static each => each.Key == "End").Value;
        var more = end.IsNull ? "" : $", {end.ToCSharpString()}";
        var name = type.Name;
        // "out T" of a class may be null where nothing was read; a value type is never null.
        var result = type.IsValueType ? $"out {name} result" : $"[MaybeNullWhen(false)] out {name} result";
        // A declaration of the type's own has the docs and the default.
        var head = IsDeclared(type)
            ? $"    public static partial {name} Parse(string s, IFormatProvider? provider)"
            : $"{Docs(what)}\n    public static {name} Parse(string s, IFormatProvider? provider = null)";
        return $$"""
            {{head}}
                {
                    ArgumentNullException.ThrowIfNull(s);
                    return Parse(s.AsSpan(), provider);
                }

                /// <inheritdoc cref="Parse(string, IFormatProvider?)"/>
                public static {{name}} Parse(ReadOnlySpan<char> s, IFormatProvider? provider = null) =>
                    Parsing.Parse<{{name}}>(s, {{SymbolDisplay.FormatLiteral(what, true)}}, Read, provider{{more}});

                /// <summary>Reads {{what}} as <see cref="Parse(string, IFormatProvider?)"/> does; false if the text is none.</summary>
                public static bool TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, {{result}})
                {
                    result = default;
                    return s is not null && TryParse(s.AsSpan(), provider, out result);
                }

                /// <inheritdoc cref="TryParse(string?, IFormatProvider?, out {{name}})"/>
                public static bool TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, {{result}}) =>
                    Parsing.TryParse(s, Read, out result, provider);

            """;
    }

    private static string Docs(string what) =>
        $"""
                /// <summary>Reads {what}.</summary>
                /// <param name="s">The text.</param>
                /// <param name="provider">A note naming, where note names are in another language than English.</param>
                /// <exception cref="FormatException">The text is not {what}; the message says where and what would have worked.</exception>
            """;

    /// <summary>Whether the type declares <c>Parse</c> itself, to say more about its text than that it is read.</summary>
    private static bool IsDeclared(INamedTypeSymbol type) =>
        type.GetMembers("Parse").OfType<IMethodSymbol>().Any(static method => method.IsPartialDefinition);
}
