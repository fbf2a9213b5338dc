using Microsoft.CodeAnalysis;

namespace TheoryKit.Generators;

/// <summary>Equality by the named members: what a record does not write itself, and what the type has not written.</summary>
internal static class Equality
{
    public static string Members(INamedTypeSymbol type, AttributeData attribute)
    {
        var members = attribute.ConstructorArguments[0].Values.Select(static each => (string)each.Value!).ToList();
        var hasOperators = attribute.NamedArguments.Any(static each => each is { Key: "Operators", Value.Value: true });
        var (name, mark) = (type.Name, type.IsValueType ? "" : "?");
        var text = EqualsOther(type, name + mark, members);
        if (!type.GetMembers(nameof(GetHashCode)).Any(static member => !member.IsImplicitlyDeclared))
        {
            text += HashCode(members);
        }

        if (type.IsRecord)
        {
            return text;
        }

        var told = type.IsValueType ? "[NotNullWhen(true)] " : "";
        text += $$"""
                /// <inheritdoc/>
                public override bool Equals({{told}}object? obj) => obj is {{name}} other && Equals(other);


            """;
        return hasOperators || type.IsValueType ? text + Operators(type, name + mark) : text;
    }

    private static string EqualsOther(INamedTypeSymbol type, string name, List<string> members)
    {
        var isOpen = type is { IsRecord: true, IsValueType: false, IsSealed: false };
        var equal = string.Join(" && ", members.Select(static each => $"ByValue.Equal({each}, other.{each})"));
        var same = type.IsValueType ? equal : $"ReferenceEquals(this, other) || (other is not null && {equal})";
        return $$"""
                /// <inheritdoc/>
                public {{(isOpen ? "virtual " : "")}}bool Equals({{name}} other) => {{same}};


            """;
    }

    private static string HashCode(List<string> members)
    {
        var hashes = string.Join(", ", members.Select(static each => $"ByValue.Hash({each})"));
        return $$"""
                /// <inheritdoc/>
                public override int GetHashCode() => {{(members.Count == 1 ? hashes : $"HashCode.Combine({hashes})")}};


            """;
    }

    private static string Operators(INamedTypeSymbol type, string name)
    {
        var same = type.IsValueType ? "left.Equals(right)" : "left is null ? right is null : left.Equals(right)";
        return $$"""
                /// <summary>Whether both are equal by value.</summary>
                public static bool operator ==({{name}} left, {{name}} right) => {{same}};

                /// <summary>Whether they are not equal by value.</summary>
                public static bool operator !=({{name}} left, {{name}} right) => !(left == right);

            """;
    }
}
