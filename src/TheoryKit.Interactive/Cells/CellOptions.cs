using System.Globalization;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.DotNet.Interactive.Commands;
using TheoryKit.Licks;
using TheoryKit.Theory.Progressions;
using TheoryKit.Theory.Scales;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Interactive.Cells;

/// <summary>The options after a cell's language; what is wrong with one is said at its place.</summary>
internal sealed class CellOptions(SubmitCode command, CellSource source, IReadOnlyCollection<string> known)
{
    private readonly Dictionary<string, string> typed = source.Options(known);

    /// <summary>The value of an option without its quotation marks; null if it is not given or empty.</summary>
    public string? this[string option]
    {
        get
        {
            if (!typed.TryGetValue(option, out var value) && command.Parameters.TryGetValue(option, out value))
            {
                value = CellDirective.Unquoted(value);
            }

            return value?.Trim() is { Length: > 0 } given ? given : null;
        }
    }

    /// <summary>The name of the variable that the cell leaves: never more than an identifier.</summary>
    public string Variable(string otherwise)
    {
        const string Option = "--name";
        var name = this[Option] ?? otherwise;
        return
            SyntaxFacts.IsValidIdentifier(name)
            && SyntaxFacts.GetKeywordKind(name) == SyntaxKind.None
            && SyntaxFacts.GetContextualKeywordKind(name) == SyntaxKind.None
            ? name
            : throw source.Error(
                "this is no name for a C# variable; expected a letter, then letters, digits and _, no word of the language, as in lowTide",
                Option,
                name
            );
    }

    public T? Parsed<T>(string option)
        where T : class, IParsable<T>
    {
        if (this[option] is not { } value)
        {
            return null;
        }

        try
        {
            return T.Parse(value, CultureInfo.InvariantCulture);
        }
        catch (PlacedFormatException exception)
        {
            throw Wrong(option, value, exception);
        }
    }

    public T? ParsedValue<T>(string option)
        where T : struct, IParsable<T>
    {
        if (this[option] is not { } value)
        {
            return null;
        }

        try
        {
            return T.Parse(value, CultureInfo.InvariantCulture);
        }
        catch (PlacedFormatException exception)
        {
            throw Wrong(option, value, exception);
        }
    }

    /// <summary>A neck by its own text, or by the name of a tuning.</summary>
    public Neck? Neck(string option) =>
        this[option] is { } value && Tuning.Find(value) is { } tuning ? new Neck(tuning) : Parsed<Neck>(option);

    public double? Tempo(string option) =>
        this[option] is not { } value ? null
        : double.TryParse(value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var tempo)
        && tempo is >= 0.01 and <= Lick.MaxTempo
            ? tempo
        : throw source.Error($"expected beats a minute, a number up to {Lick.MaxTempo}", option, value);

    /// <summary>Changes, to which a time signature and a key of options of their own count.</summary>
    public Changes? Changes(string option, TimeSignature? time, Key? key = null)
    {
        if (this[option] is not { } value)
        {
            return null;
        }

        var (changes, error) = ReadChanges(value, time, key);
        return changes ?? throw Wrong(option, value, error!);
    }

    /// <summary>The changes of a text, or what is wrong with it.</summary>
    public static (Changes? Changes, PlacedFormatException? Error) ReadChanges(
        string text,
        TimeSignature? time,
        Key? key
    )
    {
        var header = string.Join(", ", new object?[] { time, key }.Where(static each => each is not null));
        try
        {
            return (TheoryKit.Theory.Progressions.Changes.Parse(header.Length == 0 ? text : $"{header}:{text}"), null);
        }
        catch (PlacedFormatException exception)
        {
            // The text may have a header of its own, as long as it says the same.
            if (header.Length > 0 && TheoryKit.Theory.Progressions.Changes.TryParse(text, null, out var own))
            {
                var blank = text.AsSpan(0, text.Length - text.AsSpan().TrimStart().Length);
                return (time is null || own.Time == time) && (key is null || own.Key == key)
                    ? (own, null)
                    : (
                        null,
                        new(
                            $"The chords say {string.Join(", ", new object?[] { own.Time, own.Key }.OfType<object>())} themselves, the options {header}; one of the two is enough",
                            blank.Count('\n') + 1,
                            blank.Length - blank.LastIndexOf('\n'),
                            1
                        )
                    );
            }

            var before = exception.Line == 1 && header.Length > 0 ? header.Length + 1 : 0;
            return (
                null,
                new(exception.Message, exception.Line, Math.Max(1, exception.Column - before), exception.Length)
            );
        }
    }

    /// <summary>One line of text.</summary>
    public string? Line(string option)
    {
        if (this[option] is not { } value)
        {
            return null;
        }

        for (var index = 0; index < value.Length; index++)
        {
            if (char.IsSurrogatePair(value, index))
            {
                index++;
            }
            else if (char.IsControl(value[index]) || char.IsSurrogate(value[index]))
            {
                throw source.Error("expected one line of text, without control characters", option, value);
            }
        }

        return value;
    }

    public IReadOnlyList<string> Tags(string option) =>
        [
            .. (Line(option) ?? "")
                .Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
                .Distinct(StringComparer.Ordinal),
        ];

    /// <summary>What was expected and found, from a message of a reader that counts positions.</summary>
    public static string Expected(PlacedFormatException exception)
    {
        const string Place = ": at position ";
        var at = exception.Message.IndexOf(Place, StringComparison.Ordinal);
        var rest = at < 0 ? "" : exception.Message[(at + Place.Length)..];
        var expected = rest.IndexOf(' ', StringComparison.Ordinal);
        return expected < 0 ? exception.Message : rest[(expected + 1)..];
    }

    private CellException Wrong(string option, string value, PlacedFormatException exception) =>
        source.Error(Expected(exception), option, value, Math.Min(exception.Column, value.Length + 1) - 1);
}
