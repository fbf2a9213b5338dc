using System.Diagnostics;

namespace TheoryKit.Values;

/// <summary>
/// Has <c>Parse</c> and <c>TryParse</c> written for a partial type, as <see cref="ISpanParsable{TSelf}"/> asks for them, over its own
/// <c>static bool Read(ref TextCursor cursor, out T value)</c>. A type that says more about its text declares
/// <c>public static partial T Parse(string s, IFormatProvider? provider = null)</c> with those docs.
/// </summary>
/// <param name="what">What a text is, with its article, as errors and docs name it: "a chord".</param>
[Conditional("IN_SOURCE")] // Read by the compiler; the assembly goes without.
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Struct)]
internal sealed class ReadAsAttribute(string what) : Attribute
{
    public string What { get; } = what;

    /// <summary>What is expected after the value, where "the end of the text" would not help.</summary>
    public string? End { get; init; }
}
