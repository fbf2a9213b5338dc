using System.Diagnostics;
using System.Diagnostics.CodeAnalysis;

namespace TheoryKit.Values;

/// <summary>A place in a text being read, with the one way of saying what went wrong there.</summary>
/// <remarks>
/// Readers return false and leave the first error here, so that <c>TryParse</c> never throws and <c>Parse</c> throws the
/// same message. Positions in messages count from 1.
/// </remarks>
internal ref struct TextCursor(ReadOnlySpan<char> text, IFormatProvider? provider = null)
{
    private const int LongestQuote = 60;

    public ReadOnlySpan<char> Text { get; } = text;

    /// <summary>Says in which language names are read.</summary>
    public IFormatProvider? Provider { get; } = provider;

    public int Position { get; set; }

    /// <summary>What was expected, and where; null while nothing failed.</summary>
    public string? Expected { get; private set; }

    public int ErrorPosition { get; private set; }

    public readonly bool AtEnd => Position >= Text.Length;

    /// <summary>The character here, or NUL at the end.</summary>
    public readonly char Current => Position < Text.Length ? Text[Position] : '\0';

    public readonly ReadOnlySpan<char> Rest => Text[Position..];

    /// <summary>Steps over <paramref name="c"/> if it is here.</summary>
    public bool Take(char c)
    {
        if (AtEnd || Text[Position] != c)
        {
            return false;
        }

        Position++;
        return true;
    }

    /// <summary>Steps over <paramref name="word"/> (ordinal) if it is here.</summary>
    public bool Take(ReadOnlySpan<char> word)
    {
        if (!Rest.StartsWith(word, StringComparison.Ordinal))
        {
            return false;
        }

        Position += word.Length;
        return true;
    }

    /// <summary>Steps over white space; true if there was any.</summary>
    public bool SkipSpaces()
    {
        var start = Position;
        while (!AtEnd && char.IsWhiteSpace(Text[Position]))
        {
            Position++;
        }

        return Position > start;
    }

    /// <summary>Steps over white space up to the end of the line.</summary>
    public void SkipSpacesInLine()
    {
        while (!AtEnd && char.IsWhiteSpace(Text[Position]) && Text[Position] is not ('\n' or '\r'))
        {
            Position++;
        }
    }

    /// <summary>Reads a decimal number of at most <paramref name="maxDigits"/> ASCII digits.</summary>
    public bool TakeNumber(int maxDigits, out int number)
    {
        number = 0;
        var start = Position;
        while (Position < Text.Length && char.IsAsciiDigit(Text[Position]) && Position - start < maxDigits)
        {
            number = (number * 10) + (Text[Position++] - '0');
        }

        return Position > start;
    }

    /// <summary>Gives a reader the text only up to <paramref name="end"/>, all of which it has to read.</summary>
    public bool Within<T>(int end, Reader<T> reader, string expectedEnd, [MaybeNullWhen(false)] out T value)
    {
        var part = new TextCursor(Text[..end], Provider) { Position = Position };
        if (reader(ref part, out value) && (part.AtEnd || part.Fail(expectedEnd)))
        {
            Position = end;
            return true;
        }

        return Fail(part.ErrorPosition, part.Expected ?? expectedEnd);
    }

    /// <summary>Notes the error (the first one stays) at <paramref name="position"/> and gives false.</summary>
    public bool Fail(int position, string expected)
    {
        if (Expected is null)
        {
            Expected = expected;
            ErrorPosition = position;
        }

        return false;
    }

    /// <summary>Notes the error here and gives false.</summary>
    public bool Fail(string expected) => Fail(Position, expected);

    /// <summary>Forgets an error, for a reader that has another way to go.</summary>
    public void Forgive()
    {
        Expected = null;
        ErrorPosition = 0;
    }

    /// <summary>The exception that tells what was read, where it went wrong and what would have worked.</summary>
    public readonly PlacedFormatException Error(string what)
    {
        Debug.Assert(Expected is not null, "Only a reader that failed has an error.");
        return Error(what, Text, ErrorPosition, Expected);
    }

    public static PlacedFormatException Error(string what, ReadOnlySpan<char> text, int position, string expected)
    {
        var found =
            text.Length == 0 ? "the text is empty"
            : position >= text.Length ? "it ends there"
            : $"found {Quote(text.Slice(position, char.IsSurrogatePair(text[position], position + 1 < text.Length ? text[position + 1] : '\0') ? 2 : 1))}";
        return new(
            $"{Quote(text)} is not {what}: at position {position + 1} expected {expected}, but {found}.",
            text,
            position
        );
    }

    /// <summary>The text in quotes, cut when long, control characters made visible.</summary>
    private static string Quote(ReadOnlySpan<char> text)
    {
        var cut = text.Length > LongestQuote;
        var shown = new System.Text.StringBuilder("\"");
        foreach (var c in cut ? text[..LongestQuote] : text)
        {
            _ = char.IsControl(c) ? shown.Append($"\\u{(int)c:x4}") : shown.Append(c);
        }

        return shown.Append(cut ? "…\"" : "\"").ToString();
    }
}

/// <summary>A reader of one kind of value: moves the cursor over it, or fails and says why.</summary>
internal delegate bool Reader<T>(ref TextCursor cursor, [MaybeNullWhen(false)] out T value);

/// <summary>What every <c>Parse</c> and <c>TryParse</c> is made of. White space at both ends of a text says nothing.</summary>
internal static class Parsing
{
    // "what" is the kind of text with its article, as in "a note name".
    public static T Parse<T>(
        ReadOnlySpan<char> text,
        string what,
        Reader<T> reader,
        IFormatProvider? provider = null,
        string expectedEnd = "the end of the text"
    )
    {
        var cursor = new TextCursor(text, provider);
        cursor.SkipSpaces();
        if (reader(ref cursor, out var value) && AtEnd(ref cursor, expectedEnd))
        {
            return value;
        }

        throw cursor.Error(what);
    }

    public static bool TryParse<T>(
        ReadOnlySpan<char> text,
        Reader<T> reader,
        [MaybeNullWhen(false)] out T value,
        IFormatProvider? provider = null
    )
    {
        var cursor = new TextCursor(text, provider);
        cursor.SkipSpaces();
        if (reader(ref cursor, out value) && AtEnd(ref cursor, ""))
        {
            return true;
        }

        value = default;
        return false;
    }

    /// <summary>One or more values, parted by white space or commas.</summary>
    public static IReadOnlyList<T> ParseList<T>(
        ReadOnlySpan<char> text,
        string what,
        Reader<T> reader,
        IFormatProvider? provider = null
    ) =>
        Parse<List<T>>(
            text,
            what,
            (ref TextCursor cursor, [MaybeNullWhen(false)] out List<T> list) => ReadList(ref cursor, reader, out list),
            provider
        );

    private static bool ReadList<T>(ref TextCursor cursor, Reader<T> reader, out List<T> list)
    {
        list = [];
        while (true)
        {
            cursor.SkipSpaces();
            if (cursor.AtEnd && list.Count > 0)
            {
                return true;
            }

            if (!reader(ref cursor, out var value))
            {
                return false;
            }

            list.Add(value);
            if (!cursor.SkipSpaces() & !cursor.Take(',') && !cursor.AtEnd)
            {
                return cursor.Fail("white space or a comma before the next");
            }
        }
    }

    private static bool AtEnd(ref TextCursor cursor, string expected)
    {
        var end = cursor.Position;
        cursor.SkipSpaces();
        return cursor.AtEnd || cursor.Fail(end, expected);
    }
}
