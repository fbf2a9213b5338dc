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

    // On a type known to be ISpanParsable a string would become a span: the overloads for strings are those of IParsable.
    private static T ParseString<T>(string text)
        where T : IParsable<T> => T.Parse(text, null);

    private static bool TryParseString<T>(string? text, out T? value)
        where T : IParsable<T> => T.TryParse(text, null, out value);
}
