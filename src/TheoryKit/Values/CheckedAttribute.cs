using System.Diagnostics;

namespace TheoryKit.Values;

/// <summary>
/// Has the properties of a partial record and of the records in it refuse what is no value: null, a list with null in it, a value that an
/// enumeration does not name. A property that the record writes itself is left to it.
/// </summary>
[Conditional("IN_SOURCE")] // Read by the compiler; the assembly goes without.
[AttributeUsage(AttributeTargets.Class)]
internal sealed class CheckedAttribute : Attribute;
