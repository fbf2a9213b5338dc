using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using TheoryKit.Values;

namespace TheoryKit.Licks.Practice;

/// <summary>
/// A lick that got another name: what was practised before under the old one counts for the new one from here on. Equal when day and names
/// agree.
/// </summary>
/// <remarks>Text, a line of a <see cref="PracticeLog"/>: <c>2026-11-24 "Low tide" is now "Low tide turn"</c>.</remarks>
[ReadAs(Practised.What)]
public sealed partial record LickRenamed : ISpanParsable<LickRenamed>
{
    internal const string Word = "is now";

    /// <summary>A new name.</summary>
    /// <param name="date">Since when.</param>
    /// <param name="from">The old name.</param>
    /// <param name="to">The new name.</param>
    /// <exception cref="ArgumentException">A name is empty or not one line of text, or both are the same.</exception>
    public LickRenamed(DateOnly date, string from, string to)
    {
        Date = date;
        From = QuotedName.Checked(from, nameof(from));
        To = QuotedName.Checked(to, nameof(to));
        if (From == To)
        {
            throw new ArgumentException($"\"{to}\" is the old name as well.", nameof(to));
        }
    }

    /// <summary>Since when.</summary>
    public DateOnly Date { get; }

    /// <summary>The old name.</summary>
    public string From { get; }

    /// <summary>The new name.</summary>
    public string To { get; }

    /// <summary>The line, as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Date:yyyy-MM-dd} {QuotedName.Write(From)} {Word} {QuotedName.Write(To)}"
        );

    internal static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out LickRenamed renamed)
    {
        renamed = null;
        if (!QuotedName.ReadDate(ref cursor, out var date))
        {
            return false;
        }

        cursor.SkipSpaces();
        return QuotedName.Read(ref cursor, out var from) && ReadRest(ref cursor, date, from, out renamed);
    }

    /// <summary>What comes after the old name.</summary>
    internal static bool ReadRest(
        ref TextCursor cursor,
        DateOnly date,
        string from,
        [MaybeNullWhen(false)] out LickRenamed renamed
    )
    {
        renamed = null;
        cursor.SkipSpaces();
        if (!cursor.Take(Word))
        {
            return cursor.Fail($"\"{Word}\" and the new name");
        }

        cursor.SkipSpaces();
        var start = cursor.Position;
        if (!QuotedName.Read(ref cursor, out var to))
        {
            return false;
        }

        if (to == from)
        {
            return cursor.Fail(start, "another name than the old one");
        }

        renamed = new(date, from, to);
        return true;
    }
}
