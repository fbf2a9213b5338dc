using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Runtime.InteropServices;
using System.Text;
using TheoryKit.Fingering.Hands;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Grips;

/// <summary>
/// A chord as held: for each string muted, open or a fret, with the fingers that hold it. Equal when every string is.
/// </summary>
/// <remarks>
/// Text: the strings from the highest number down to string 1, separated by spaces: <c>x</c> for muted, <c>o</c> for open
/// (with <c>@</c> and the fret behind a capo or on a short string), else fret, hyphen, finger (1 to 4, T for the thumb):
/// <c>x 3-3 2-2 o 1-1 o</c>.
/// </remarks>
[ReadAs("a grip")]
[EqualBy(nameof(strings), Operators = true)]
public sealed partial class Grip : IEquatable<Grip>, ISpanParsable<Grip>
{
    private readonly ImmutableArray<GripString> strings; // string 1 first

    /// <summary>A grip of these strings.</summary>
    /// <param name="fromFirst">The strings, string 1 first.</param>
    /// <exception cref="ArgumentException">Not <see cref="Tuning.MinStrings"/> to <see cref="Tuning.MaxStrings"/> strings.</exception>
    public Grip(IEnumerable<GripString> fromFirst)
    {
        ArgumentNullException.ThrowIfNull(fromFirst);
        strings = [.. fromFirst];
        if (strings.Length is < Tuning.MinStrings or > Tuning.MaxStrings)
        {
            throw new ArgumentException(
                $"{strings.Length} strings; a grip has {Tuning.MinStrings} to {Tuning.MaxStrings}.",
                nameof(fromFirst)
            );
        }
    }

    private Grip(ImmutableArray<GripString> strings) => this.strings = strings;

    /// <summary>The strings, string 1 first.</summary>
    public IReadOnlyList<GripString> Strings => strings;

    /// <summary>A string by its number.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such string.</exception>
    public GripString this[int number]
    {
        get
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(number, 1);
            ArgumentOutOfRangeException.ThrowIfGreaterThan(number, strings.Length);
            return strings[number - 1];
        }
    }

    /// <summary>The positions that sound, string 1 first.</summary>
    public IEnumerable<Position> Positions =>
        from number in Enumerable.Range(1, strings.Length)
        where this[number].Sounds
        select new Position(number, this[number].Fret!.Value);

    /// <summary>The lowest fret that is held, or null when all sounding strings are open.</summary>
    public int? LowestFret => strings.Where(static s => s.Finger is not null).Min(static s => s.Fret);

    /// <summary>The highest fret that is held, or null when all sounding strings are open.</summary>
    public int? HighestFret => strings.Where(static s => s.Finger is not null).Max(static s => s.Fret);

    /// <summary>Whether a finger lies flat over several strings.</summary>
    public bool HasBarre =>
        strings
            .Where(static s => s.Finger is not null)
            .GroupBy(static s => s.Finger)
            .Any(static group => group.Count() > 1);

    /// <summary>Whether the grip can be moved along the neck: no string sounds open.</summary>
    public bool IsMovable => strings.All(static s => !s.Sounds || s.Finger is not null);

    /// <summary>A grip that takes an array of as many strings as a neck has for its own, string 1 first.</summary>
    internal static Grip Owning(GripString[] fromFirst) => new(ImmutableCollectionsMarshal.AsImmutableArray(fromFirst));

    /// <summary>The grip as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        for (var number = strings.Length; number >= 1; number--)
        {
            var each = this[number];
            _ = each switch
            {
                { Sounds: false } => text.Append('x'),
                { Finger: { } finger } => text.Append(each.Fret).Append('-').Append("T1234"[(int)finger]),
                { Fret: 0 } => text.Append('o'),
                _ => text.Append("o@").Append(each.Fret),
            };
            _ = number > 1 ? text.Append(' ') : text;
        }

        return text.ToString();
    }

    private static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out Grip grip)
    {
        grip = null;
        var read = new List<GripString>(6);
        cursor.SkipSpaces();
        while (!cursor.AtEnd)
        {
            if (read.Count == Tuning.MaxStrings)
            {
                return cursor.Fail($"no more than {Tuning.MaxStrings} strings");
            }

            if (!ReadString(ref cursor, out var each))
            {
                return false;
            }

            read.Add(each);
            if (!cursor.SkipSpaces() && !cursor.AtEnd)
            {
                return cursor.Fail("white space between strings");
            }
        }

        if (read.Count < Tuning.MinStrings)
        {
            return cursor.Fail($"{Tuning.MinStrings} strings or more (as in x 3-3 2-2 o 1-1 o)");
        }

        read.Reverse();
        grip = new(read);
        return true;
    }

    private static bool ReadString(ref TextCursor cursor, out GripString value)
    {
        value = GripString.Muted;
        if (cursor.Take('x'))
        {
            return true;
        }

        var isOpen = cursor.Take('o');
        if (isOpen && !cursor.Take('@'))
        {
            value = GripString.Open();
            return true;
        }

        var start = cursor.Position;
        if (!cursor.TakeNumber(2, out var fret) || fret > Position.MaxFret)
        {
            return cursor.Fail(
                start,
                isOpen
                    ? $"a fret from 0 to {Position.MaxFret}"
                    : $"x, o, or a fret from 0 to {Position.MaxFret} and a finger (as in 3-1)"
            );
        }

        if (isOpen)
        {
            value = GripString.Open(fret);
            return true;
        }

        if (!cursor.Take('-'))
        {
            return cursor.Fail("a hyphen and a finger (as in 3-1)");
        }

        var finger = "T1234".IndexOf(cursor.Current, StringComparison.Ordinal);
        if (finger < 0 || cursor.AtEnd)
        {
            return cursor.Fail("a finger: 1, 2, 3, 4, or T for the thumb");
        }

        cursor.Position++;
        value = GripString.Held(fret, (Finger)finger);
        return true;
    }
}
