using System.Diagnostics;

namespace TheoryKit.Values;

/// <summary>Has the operators &lt;, &gt;, &lt;= and &gt;= written for a partial type, over its own <c>CompareTo</c>.</summary>
[Conditional("IN_SOURCE")] // Read by the compiler; the assembly goes without.
[AttributeUsage(AttributeTargets.Struct)]
internal sealed class OrderedAttribute : Attribute;
