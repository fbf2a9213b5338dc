using System.Collections;
using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Tunings.Strings;

/// <summary>The strings fitted to an instrument, string 1 first. Equal when every string is alike.</summary>
/// <remarks>
/// <see cref="Tuning.MinStrings"/> to <see cref="Tuning.MaxStrings"/> strings. Text: the strings from the highest number down to
/// string 1, as a tuning is written, with commas between them: <c>0.046 in nickel wound, 0.036 in nickel wound, …, 0.010 in plain
/// steel</c>.
/// </remarks>
[ReadAs("a set of strings")]
[EqualBy(nameof(strings), Operators = true)]
public sealed partial class StringSet
    : IReadOnlyCollection<FittedString>,
        IEquatable<StringSet>,
        ISpanParsable<StringSet>
{
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

    /// <summary>The set as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() => string.Join(", ", strings.Reverse());

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
