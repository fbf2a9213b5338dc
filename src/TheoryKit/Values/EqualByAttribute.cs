using System.Diagnostics;

namespace TheoryKit.Values;

/// <summary>
/// Has equality written for a partial type: equal when these members are, lists member by member. A class that writes its own
/// <c>GetHashCode</c>, because it knows a cheaper one, keeps it.
/// </summary>
/// <param name="members">The names of fields and properties.</param>
[Conditional("IN_SOURCE")] // Read by the compiler; the assembly goes without.
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Struct)]
internal sealed class EqualByAttribute(params string[] members) : Attribute
{
    public IReadOnlyList<string> Members { get; } = members;

    /// <summary>Whether a class has <c>==</c> and <c>!=</c> too; structs always do.</summary>
    public bool Operators { get; init; }
}
