namespace TheoryKit.Tests;

/// <summary>What holds for every value.</summary>
internal static class Laws
{
    /// <summary>The text of a value reads back to it, plain and printed, by every way of parsing.</summary>
    public static void RoundTrip<T>(Gen<T> values)
        where T : ISpanParsable<T>
    {
        values.Sample(value =>
        {
            var text = value.ToString()!;
            Assert.Equal(value, ParseString<T>(text));
            Assert.Equal(value, T.Parse(text.AsSpan(), null));
            Assert.True(TryParseString<T>(text, out var read) && value.Equals(read));
            Assert.True(T.TryParse(text.AsSpan(), null, out read) && value.Equals(read));
            if (value is IFormattable formattable)
            {
                Assert.Equal(text, formattable.ToString("G", null));
                Assert.Equal(value, T.Parse(formattable.ToString("P", null), null));
                Assert.ThrowsAny<FormatException>(() => formattable.ToString("X", null));
            }
        });
    }

    /// <summary>Equal exactly when written alike; equal values have equal hash codes.</summary>
    public static void Equality<T>(Gen<T> values)
        where T : IEquatable<T>
    {
        values
            .Select(values)
            .Sample(
                (left, right) =>
                {
                    var same = left.ToString() == right.ToString();
                    return left.Equals(right) == same
                        && left.Equals((object)right) == same
                        && (!same || left.GetHashCode() == right.GetHashCode())
                        && left.Equals(left)
                        && !left.Equals(null);
                }
            );
    }

    /// <summary>
    /// What is made twice is equal, by every way of asking, and has one hash code; what is made differently is not equal.
    /// For values that are not written in text.
    /// </summary>
    public static void ByValue<T>(params Func<T>[] different)
        where T : class, IEquatable<T>
    {
        for (var row = 0; row < different.Length; row++)
        {
            for (var column = 0; column < different.Length; column++)
            {
                var (left, right, same) = (different[row](), different[column](), row == column);
                Assert.Equal(same, left.Equals(right));
                Assert.Equal(same, left.Equals((object)right));
                Assert.Equal(same, Operator<T>("op_Equality", left, right) ?? same);
                Assert.Equal(!same, Operator<T>("op_Inequality", left, right) ?? !same);
                Assert.True(!same || left.GetHashCode() == right.GetHashCode());
            }

            var value = different[row]();
            Assert.True(value.Equals(value));
            Assert.False(value.Equals(null) || value.Equals((object?)null) || value.Equals(new object()));
            Assert.False(Operator<T>("op_Equality", value, null) ?? false);
            Assert.False(Operator<T>("op_Equality", null, value) ?? false);
            Assert.True(Operator<T>("op_Equality", null, null) ?? true);
        }
    }

    /// <summary>A total order that agrees with equality.</summary>
    public static void Order<T>(Gen<T> values)
        where T : IComparable<T>, IEquatable<T>
    {
        values
            .Select(values, values)
            .Sample(
                (a, b, c) =>
                    Math.Sign(a.CompareTo(b)) == -Math.Sign(b.CompareTo(a))
                    && (a.CompareTo(b) == 0) == a.Equals(b)
                    && (Operator<T>("op_LessThan", a, b) ?? (a.CompareTo(b) < 0)) == (a.CompareTo(b) < 0)
                    && (Operator<T>("op_GreaterThan", a, b) ?? (a.CompareTo(b) > 0)) == (a.CompareTo(b) > 0)
                    && (Operator<T>("op_LessThanOrEqual", a, b) ?? (a.CompareTo(b) <= 0)) == (a.CompareTo(b) <= 0)
                    && (Operator<T>("op_GreaterThanOrEqual", a, b) ?? (a.CompareTo(b) >= 0)) == (a.CompareTo(b) >= 0)
                    && !(a.CompareTo(b) <= 0 && b.CompareTo(c) <= 0 && a.CompareTo(c) > 0)
            );
    }

    /// <summary>The text is refused, and the message names the place, counted from 1, and what was read.</summary>
    public static void Refuses<T>(string text, int position, string expected)
        where T : ISpanParsable<T>
    {
        Assert.False(T.TryParse(text, null, out _));
        var message = Assert.ThrowsAny<FormatException>(() => T.Parse(text, null)).Message;
        Assert.Contains($"at position {position} expected", message);
        Assert.Contains(expected, message);
        Assert.StartsWith($"\"{(text.Length > 60 ? text[..60] : text)}", message);
    }

    /// <summary>Null text: an argument error from Parse, no from TryParse.</summary>
    public static void Null<T>()
        where T : ISpanParsable<T>
    {
        Assert.Throws<ArgumentNullException>(() => ParseString<T>(null!));
        Assert.False(TryParseString<T>(null, out _));
    }

    /// <summary>What an operator that the type may have says; null if it has none.</summary>
    private static bool? Operator<T>(string name, T? left, T? right) =>
        (bool?)typeof(T).GetMethod(name, [typeof(T), typeof(T)])?.Invoke(null, [left, right]);

    // On a type known to be ISpanParsable a string would become a span: the overloads for strings are those of IParsable.
    private static T ParseString<T>(string text)
        where T : IParsable<T> => T.Parse(text, null);

    private static bool TryParseString<T>(string? text, out T? value)
        where T : IParsable<T> => T.TryParse(text, null, out value);
}
