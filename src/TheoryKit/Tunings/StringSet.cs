using System.Collections;
using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using TheoryKit.Theory.Text;

namespace TheoryKit.Tunings;

/// <summary>The strings fitted to an instrument, string 1 first. Equal when every string is alike.</summary>
/// <remarks>
/// <see cref="Tuning.MinStrings"/> to <see cref="Tuning.MaxStrings"/> strings. Text: the strings from the highest number down to
/// string 1, as a tuning is written, with commas between them: <c>0.046 in nickel wound, 0.036 in nickel wound, …, 0.010 in plain
/// steel</c>.
/// </remarks>
public sealed partial class StringSet
    : IReadOnlyCollection<FittedString>,
        IEquatable<StringSet>,
        ISpanParsable<StringSet>
{
    internal const string What = "a set of strings";

    private readonly ImmutableArray<FittedString> strings; // string 1 first

    /// <summary>A set of these strings.</summary>
    /// <param name="fromLast">The strings from the highest number down to string 1, the order of a tuning's text.</param>
    /// <exception cref="ArgumentException">Fewer than <see cref="Tuning.MinStrings"/> or more than
    /// <see cref="Tuning.MaxStrings"/>, or one of them is null.</exception>
    public StringSet(params IEnumerable<FittedString> fromLast)
    {
        ArgumentNullException.ThrowIfNull(fromLast);
        strings = [.. fromLast.Reverse()];
        if (strings.Contains(null!))
        {
            throw new ArgumentException("A string of the set is null.", nameof(fromLast));
        }

        if (strings.Length is < Tuning.MinStrings or > Tuning.MaxStrings)
        {
            throw new ArgumentException(
                $"{strings.Length} strings; a set has {Tuning.MinStrings} to {Tuning.MaxStrings}.",
                nameof(fromLast)
            );
        }
    }

    /// <summary>How many strings there are.</summary>
    public int Count => strings.Length;

    /// <summary>A string by its number, from 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such string.</exception>
    public FittedString this[int number]
    {
        get
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(number, 1);
            ArgumentOutOfRangeException.ThrowIfGreaterThan(number, strings.Length);
            return strings[number - 1];
        }
    }

    /// <summary>The set with another string in one place.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such string.</exception>
    public StringSet With(int number, FittedString fitted)
    {
        ArgumentNullException.ThrowIfNull(fitted);
        _ = this[number];
        return new(strings.SetItem(number - 1, fitted).Reverse());
    }

    /// <summary>The strings, string 1 first.</summary>
    public IEnumerator<FittedString> GetEnumerator() => ((IEnumerable<FittedString>)strings).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <inheritdoc/>
    public bool Equals(StringSet? other) => other is not null && strings.AsSpan().SequenceEqual(other.strings.AsSpan());

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as StringSet);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (var each in strings)
        {
            hash.Add(each);
        }

        return hash.ToHashCode();
    }

    /// <summary>Whether every string is alike.</summary>
    public static bool operator ==(StringSet? left, StringSet? right) =>
        left is null ? right is null : left.Equals(right);

    /// <summary>Whether some string differs.</summary>
    public static bool operator !=(StringSet? left, StringSet? right) => !(left == right);

    /// <summary>The set as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() => string.Join(", ", strings.Reverse());

    /// <summary>The set read from a text.</summary>
    /// <exception cref="FormatException">The text is not a set; the message says where and what would have worked.</exception>
    public static StringSet Parse(string s, IFormatProvider? provider = null)
    {
        ArgumentNullException.ThrowIfNull(s);
        return Parse(s.AsSpan(), provider);
    }

    /// <inheritdoc cref="Parse(string, IFormatProvider?)"/>
    public static StringSet Parse(ReadOnlySpan<char> s, IFormatProvider? provider = null) =>
        Parsing.Parse<StringSet>(s, What, Read);

    /// <summary>Reads a set; false if the text is none.</summary>
    public static bool TryParse(
        [NotNullWhen(true)] string? s,
        IFormatProvider? provider,
        [MaybeNullWhen(false)] out StringSet result
    ) => TryParse(s.AsSpan(), provider, out result);

    /// <summary>Reads a set; false if the text is none.</summary>
    public static bool TryParse(
        ReadOnlySpan<char> s,
        IFormatProvider? provider,
        [MaybeNullWhen(false)] out StringSet result
    ) => Parsing.TryParse(s, Read, out result);

    internal static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out StringSet set)
    {
        set = null;
        var read = new List<FittedString>(6);
        do
        {
            if (read.Count == Tuning.MaxStrings)
            {
                return cursor.Fail($"no more than {Tuning.MaxStrings} strings");
            }

            if (!FittedString.Read(ref cursor, out var each))
            {
                return false;
            }

            read.Add(each);
            cursor.SkipSpaces();
        } while (cursor.Take(','));

        if (read.Count < Tuning.MinStrings)
        {
            return cursor.Fail($"{Tuning.MinStrings} strings or more, with commas between them");
        }

        set = new(read);
        return true;
    }
}
