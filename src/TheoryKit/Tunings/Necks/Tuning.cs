using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Tunings.Necks;

/// <summary>
/// What the strings of an instrument are tuned to. Equal when every string is tuned alike, spelling included.
/// </summary>
/// <remarks>
/// <see cref="MinStrings"/> to <see cref="MaxStrings"/> strings; none of them needs to be higher than the next (re-entrant
/// tunings). Text: the strings from the one nearest the head of the player down to string 1, the way players say it:
/// <c>E2 A2 D3 G3 B3 E4</c>; a short string with the fret where it begins: <c>G4@5 D3 G3 B3 D4</c>.
/// </remarks>
[ReadAs("a tuning")]
[EqualBy(nameof(strings), Operators = true)]
public sealed partial class Tuning : IEquatable<Tuning>, ISpanParsable<Tuning>
{
    /// <summary>The fewest strings: 3.</summary>
    public const int MinStrings = 3;

    /// <summary>The most strings: 12.</summary>
    public const int MaxStrings = Position.MaxString;

    private readonly ImmutableArray<TuningString> strings; // string 1 first

    /// <summary>A tuning of these strings.</summary>
    /// <param name="fromLast">The strings from the highest number down to string 1, the way players say it.</param>
    /// <exception cref="ArgumentException">Fewer than <see cref="MinStrings"/> or more than <see cref="MaxStrings"/>.</exception>
    public Tuning(IEnumerable<TuningString> fromLast)
    {
        ArgumentNullException.ThrowIfNull(fromLast);
        strings = [.. fromLast.Reverse()];
        if (strings.Length is < MinStrings or > MaxStrings)
        {
            throw new ArgumentException(
                $"{strings.Length} strings; a tuning has {MinStrings} to {MaxStrings}.",
                nameof(fromLast)
            );
        }
    }

    /// <summary>A tuning of strings that all begin at the nut.</summary>
    /// <param name="fromLast">The open pitches from the highest string number down to string 1, the way players say it.</param>
    /// <exception cref="ArgumentException">Fewer than <see cref="MinStrings"/> or more than <see cref="MaxStrings"/>.</exception>
    public Tuning(params IEnumerable<Pitch> fromLast)
        : this(Check.NotNull(fromLast).Select(static pitch => new TuningString(pitch))) { }

    /// <summary>How many strings there are.</summary>
    public int StringCount => strings.Length;

    /// <summary>The strings, string 1 first.</summary>
    public IReadOnlyList<TuningString> Strings => strings;

    /// <summary>A string by its number.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such string.</exception>
    public TuningString this[int number]
    {
        get
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(number, 1);
            ArgumentOutOfRangeException.ThrowIfGreaterThan(number, strings.Length);
            return strings[number - 1];
        }
    }

    /// <summary>Every string an interval higher or lower.</summary>
    public Tuning Transpose(Interval interval) =>
        new(strings.Reverse().Select(each => new TuningString(each.Open + interval, each.Start)));

    /// <summary>The tuning with one string tuned to another pitch.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such string.</exception>
    public Tuning With(int number, Pitch open)
    {
        var changed = new TuningString(open, this[number].Start);
        return new(strings.SetItem(number - 1, changed).Reverse());
    }

    /// <summary>The tuning as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() => string.Join(' ', strings.Reverse());

    /// <summary>Reads strings up to the end of the text or a comma.</summary>
    internal static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out Tuning tuning)
    {
        tuning = null;
        var read = new List<TuningString>(6);
        cursor.SkipSpaces();
        var start = cursor.Position;
        while (!cursor.AtEnd && cursor.Current != ',')
        {
            if (read.Count == MaxStrings)
            {
                return cursor.Fail($"no more than {MaxStrings} strings");
            }

            if (!TuningString.Read(ref cursor, out var each))
            {
                return read.Count == 0 && FailAtFirst(ref cursor, start);
            }

            read.Add(each);
            if (!cursor.SkipSpaces() && !cursor.AtEnd && cursor.Current != ',')
            {
                return cursor.Fail("white space between strings");
            }
        }

        if (read.Count < MinStrings)
        {
            return cursor.Fail(
                read.Count == 0
                    ? "a pitch (as in E2 A2 D3 G3 B3 E4)"
                    : $"{MinStrings} strings or more, each a pitch, with white space and no comma between them"
            );
        }

        tuning = new(read);
        return true;
    }

    /// <summary>Says of a text that begins with no pitch what was perhaps meant: a tuning by its name, or notes without octaves.</summary>
    private static bool FailAtFirst(ref TextCursor cursor, int start)
    {
        var rest = cursor.Text[start..];
        var name = (rest.IndexOf(',') is var comma and >= 0 ? rest[..comma] : rest).Trim().ToString();
        var (position, expected) = (cursor.ErrorPosition, cursor.Expected);
        cursor.Forgive();
        return Find(name) is { } known
            ? cursor.Fail(start, $"the strings as pitches ({known}), or Tuning.Find for a tuning by its name")
            : cursor.Fail(position, $"{expected}: strings are pitches with octaves (E2 A2 D3 G3 B3 E4)");
    }
}
