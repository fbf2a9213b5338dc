using System.Xml.Linq;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace TheoryKit.Generators;

/// <summary>The properties of a record, and of the kinds in it, that refuse null, lists with null, and unnamed values of enumerations.</summary>
internal static class Checking
{
    public static string Members(INamedTypeSymbol type) =>
        Properties(type)
        + string.Concat(
            type.GetTypeMembers()
                .Where(static kind => kind is { IsRecord: true, IsValueType: false } && IsPartial(kind))
                .Select(static kind => (kind.Name, Text: Properties(kind)))
                .Where(static kind => kind.Text.Length > 0)
                .Select(static kind => $"    partial record {kind.Name}\n    {{\n{kind.Text}    }}\n\n")
        );

    private static string Properties(INamedTypeSymbol type)
    {
        var written = type
            .DeclaringSyntaxReferences.Select(static each => each.GetSyntax())
            .OfType<RecordDeclarationSyntax>()
            .Where(static each => each.ParameterList is not null)
            .SelectMany(each => each.ParameterList!.Parameters)
            .Select(static each => each.Identifier.ValueText)
            .ToList();
        if (written.Count == 0)
        {
            return "";
        }

        var constructor = type.InstanceConstructors.First(each =>
            each.Parameters.Select(static parameter => parameter.Name).SequenceEqual(written)
        );
        var own = constructor
            .Parameters.Where(each => !type.GetMembers(each.Name).Any(static own => !IsOfParameter(own)))
            .Where(each => !Bases(type).Any(above => above.GetMembers(each.Name).Length > 0))
            .ToList();
        // All of them or none, so that they stay in their order when the record is printed.
        return own.Any(static each => CheckOf(each.Type) is not null)
            ? string.Concat(own.Select(each => Property(type, each, CheckOf(each.Type))))
            : "";
    }

    private static IEnumerable<INamedTypeSymbol> Bases(INamedTypeSymbol type)
    {
        for (var above = type.BaseType; above is not null; above = above.BaseType)
        {
            yield return above;
        }
    }

    private static bool IsPartial(INamedTypeSymbol type) =>
        type
            .DeclaringSyntaxReferences.Select(static each => each.GetSyntax())
            .OfType<RecordDeclarationSyntax>()
            .Any(static each => each.Modifiers.Any(SyntaxKind.PartialKeyword));

    /// <summary>Whether the compiler writes the property, and will not if this generator does.</summary>
    private static bool IsOfParameter(ISymbol own) =>
        own.DeclaringSyntaxReferences.All(static each => each.GetSyntax() is ParameterSyntax);

    private static string? CheckOf(ITypeSymbol type) =>
        type.TypeKind == TypeKind.Enum ? "Defined"
        : !type.IsReferenceType || type.NullableAnnotation == NullableAnnotation.Annotated ? null
        : type is INamedTypeSymbol { Name: "IReadOnlyList", TypeArguments.Length: 1 } ? "Items"
        : "NotNull";

    private static string Property(INamedTypeSymbol type, IParameterSymbol parameter, string? check)
    {
        var name = parameter.Name;
        var shown = parameter.Type.ToDisplayString(
            SymbolDisplayFormat.FullyQualifiedFormat.AddMiscellaneousOptions(
                SymbolDisplayMiscellaneousOptions.IncludeNullableReferenceTypeModifier
            )
        );
        var (accessors, value) = check is null
            ? ("get; init;", name)
            : ($"get; init => field = Check.{check}(value, nameof({name}));", $"Check.{check}({name})");
        return $$"""
                    /// <summary>{{Doc(type, name)}}</summary>
                    public {{shown}} {{name}} { {{accessors}} } = {{value}};


            """;
    }

    /// <summary>What the docs of the record say of a parameter.</summary>
    private static string Doc(INamedTypeSymbol type, string parameter)
    {
        try
        {
            var found = XElement
                .Parse(type.GetDocumentationCommentXml() is { Length: > 0 } xml ? xml : "<none/>")
                .Elements("param")
                .FirstOrDefault(each => (string?)each.Attribute("name") == parameter);
            return found is null
                ? ""
                : string.Concat(found.Nodes().Select(static each => each.ToString(SaveOptions.DisableFormatting)))
                    .Replace("\n", " ")
                    .Replace("<paramref name=", "<see cref=")
                    .Trim();
        }
        catch (System.Xml.XmlException)
        {
            return ""; // the compiler tells of docs that are not well formed
        }
    }
}
