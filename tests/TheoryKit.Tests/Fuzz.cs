using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace TheoryKit.Tests;

/// <summary>
/// Feeds a parser random and mutated text. Any text gives a value, or a FormatException that says where and what was
/// expected; all ways of parsing agree; every value read writes a text that reads back to it.
/// </summary>
public static partial class Fuzz
{
    /// <summary>How many strings a parser gets unless the test says otherwise; twenty parsers make a million.</summary>
    public const int Strings = 50_000;

    // What no seed has: signs, white space of all kinds, a lone surrogate, a combining mark, NUL, letters that fold oddly.
    private const string Odd =
        " \t\r\n\0|/,:%()[]{}#b♯♭♮x°øΔ-+0123456789ABCDEFGHabcdefghijmnosuIVivT\uD834\uDD2A\uD800\u0301İıßé٣";

    /// <summary>Fuzzes the parser of <typeparamref name="T"/> with mutations of <paramref name="seeds"/>.</summary>
    /// <param name="seeds">Texts that the parser reads, one of each kind it knows.</param>
    /// <param name="count">How many strings.</param>
    /// <param name="provider">The format provider for reading and writing.</param>
    public static void Parser<T>(IEnumerable<string> seeds, int count = Strings, IFormatProvider? provider = null)
        where T : ISpanParsable<T>
    {
        string[] all = [.. seeds];
        Assert.NotEmpty(all);
        foreach (var seed in all)
        {
            Assert.True(Reads<T>(seed, provider), $"The seed \"{seed}\" is not read.");
        }

        var alphabet = Odd + string.Concat(all.SelectMany(seed => seed).Distinct());
        var random = new Random(20_26);
        var reads = 0;
        for (var index = 0; index < count; index++)
        {
            reads += Reads<T>(Next(random, all, alphabet), provider) ? 1 : 0;
        }

        foreach (var seed in all.Take(20))
        {
            // Long texts find what takes too long or nests too deep.
            Reads<T>(string.Concat(Enumerable.Repeat(seed, 2_000)), provider);
            Reads<T>(string.Join(' ', Enumerable.Repeat(seed, 2_000)), provider);
            Reads<T>(new string(seed.FirstOrDefault('x'), 20_000), provider);
        }

        Assert.True(reads > count / 1_000, $"Only {reads} of {count} strings were read: the seeds say too little.");
        Assert.True(reads < count, "Every string was read: the mutations change too little.");
    }

    /// <summary>Whether the text is read; asserts all that has to hold either way.</summary>
    public static bool Reads<T>(string text, IFormatProvider? provider = null)
        where T : ISpanParsable<T>
    {
        try
        {
            return Check<T>(text, provider);
        }
        catch (Exception exception) when (exception is not Xunit.Sdk.XunitException)
        {
            Assert.Fail($"Reading {Escape(text)} as {typeof(T).Name} threw {exception}");
            throw;
        }
    }

    /// <summary>What <c>Parse</c> says of a text that it can't read.</summary>
    public static string Complaint<T>(string text, IFormatProvider? provider = null)
        where T : ISpanParsable<T> => Assert.ThrowsAny<FormatException>(() => T.Parse(text, provider)).Message;

    private static bool Check<T>(string text, IFormatProvider? provider)
        where T : ISpanParsable<T>
    {
        var read = T.TryParse(text.AsSpan(), provider, out var value);
        if (!read)
        {
            Assert.Equal(default, value);
            try
            {
                T.Parse(text, provider);
            }
            catch (FormatException exception)
            {
                Assert.True(
                    Place().IsMatch(exception.Message),
                    $"The message on {Escape(text)} doesn't say where or what was expected: {exception.Message}"
                );
                return false;
            }

            Assert.Fail($"TryParse refuses {Escape(text)} as {typeof(T).Name}, Parse reads it.");
        }

        Assert.True(
            T.TryParse(text, provider, out var again) && Equal(value, again),
            $"TryParse differs on {Escape(text)}."
        );
        Assert.True(Equal(value, T.Parse(text, provider)), $"Parse differs from TryParse on {Escape(text)}.");
        var written = value is IFormattable formattable ? formattable.ToString(null, provider) : value!.ToString()!;
        Assert.True(
            T.TryParse(written, provider, out again) && Equal(value, again),
            $"{Escape(text)} is read as {typeof(T).Name} \"{written}\", which does not read back to it."
        );
        return true;
    }

    private static bool Equal<T>(T? left, T? right) => EqualityComparer<T>.Default.Equals(left, right);

    private static string Next(Random random, string[] seeds, string alphabet)
    {
        if (random.Next(10) == 0)
        {
            return new string([.. Enumerable.Range(0, random.Next(12)).Select(_ => Pick(random, alphabet))]);
        }

        var text = new StringBuilder(seeds[random.Next(seeds.Length)]);
        for (var changes = 1 + random.Next(3); changes > 0; changes--)
        {
            Mutate(random, text, seeds, alphabet);
        }

        return text.ToString();
    }

    private static void Mutate(Random random, StringBuilder text, string[] seeds, string alphabet)
    {
        var at = random.Next(text.Length + 1);
        switch (random.Next(text.Length == 0 ? 2 : 7))
        {
            case 0:
                text.Insert(at, Pick(random, alphabet));
                break;
            case 1: // the end of another seed
                var other = seeds[random.Next(seeds.Length)];
                text.Length = at;
                text.Append(other.AsSpan(random.Next(other.Length + 1)));
                break;
            case 2:
                text[at % text.Length] = Pick(random, alphabet);
                break;
            case 3:
                text.Remove(at % text.Length, 1);
                break;
            case 4: // swap two neighbours
                var left = at % text.Length;
                var right = (left + 1) % text.Length;
                (text[left], text[right]) = (text[right], text[left]);
                break;
            case 5: // the same again
                var start = at % text.Length;
                text.Insert(at, text.ToString(start, Math.Min(1 + random.Next(4), text.Length - start)));
                break;
            default:
                var letter = text[at % text.Length];
                text[at % text.Length] = char.IsUpper(letter)
                    ? char.ToLowerInvariant(letter)
                    : char.ToUpperInvariant(letter);
                break;
        }
    }

    private static char Pick(Random random, string from) => from[random.Next(from.Length)];

    private static string Escape(string text)
    {
        var shown = new StringBuilder("\"");
        foreach (var c in text.Length > 200 ? text[..200] : text)
        {
            _ = c is >= ' ' and < '\u007f'
                ? shown.Append(c)
                : shown.Append("\\u").Append(((int)c).ToString("x4", CultureInfo.InvariantCulture));
        }

        return shown.Append(text.Length > 200 ? $"…\" ({text.Length} characters)" : "\"").ToString();
    }

    [GeneratedRegex("at position [0-9]+ expected .+, but (found|it ends|the text is empty)", RegexOptions.Singleline)]
    private static partial Regex Place();
}
