using System.Diagnostics.CodeAnalysis;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Theory.Scales;

/// <summary>
/// A kind of scale or mode that has a name, whatever its tonic: dorian is <c>1 2 b3 4 5 6 b7</c>. Each type is one
/// instance of <see cref="Known"/>, equal only to itself; no two have the same formula or share a name.
/// </summary>
/// <remarks>Text: the name or an alias, upper and lower case alike; written as the name, with the format "P" as printed.</remarks>
[ReadAs("a type of scale")]
public sealed partial class ScaleType : ISpanParsable<ScaleType>, IFormattable
{
    // With room for more white space than anyone writes.
    private const int LongestName = 100;

    private ScaleType(string name, string formula, params string[] aliases)
    {
        Name = name;
        Formula = Formula.Parse(formula);
        Aliases = aliases;
    }

    /// <summary>The name, <c>melodic minor</c>.</summary>
    public string Name { get; }

    /// <summary>Other names it goes by.</summary>
    public IReadOnlyList<string> Aliases { get; }

    /// <summary>Its degrees, in rising order from 1.</summary>
    public Formula Formula { get; }

    /// <summary>The named types whose formulas are rotations of this one, by sound; in the order of the modes, this one first.</summary>
    public IReadOnlyList<ScaleType> Modes => [.. Formula.Modes.SelectMany(mode => Alike(mode)).Distinct()];

    /// <summary>The type with that formula, spelled like that; null if none has it.</summary>
    public static ScaleType? Find(Formula formula) => Index.ByFormula.GetValueOrDefault(formula);

    /// <summary>The type of that name or alias, upper and lower case alike; null if none has it.</summary>
    public static ScaleType? Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return Index.ByName.GetValueOrDefault(OneLine(name));
    }

    /// <summary>The type of that name or alias, upper and lower case alike.</summary>
    /// <exception cref="ArgumentException">There is none; the message says which names come nearest.</exception>
    public static ScaleType Named(string name) =>
        Find(name) ?? throw NearNames.NoSuch(name, "scale", Known.Select(static each => each.Name), nameof(name));

    /// <summary>The types that sound like a formula, however it is spelled; the one spelled alike first.</summary>
    public static IReadOnlyList<ScaleType> Alike(Formula formula) =>
        [
            .. Known
                .Where(type => type.Formula.PitchClasses == formula.PitchClasses)
                .OrderByDescending(type => type.Formula == formula),
        ];

    /// <summary>The scale of this type on a tonic.</summary>
    public Scale On(NoteName tonic) => new(tonic, Formula);

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    /// <summary>The name: "G" (or null) plain, <c>lydian #2</c>; "P" printed, <c>lydian ♯2</c>.</summary>
    /// <exception cref="FormatException">Another format.</exception>
    public string ToString(string? format, IFormatProvider? formatProvider = null) =>
        TextFormat.IsPrinted(format) ? Printed(Name) : Name;

    /// <summary>Reads a name up to the end of the text.</summary>
    internal static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out ScaleType type)
    {
        if (cursor.Rest.Length > LongestName || !Index.ByName.TryGetValue(OneLine(cursor.Rest), out type))
        {
            type = null;
            return cursor.Fail($"the name of a scale, as in \"{Nearest(cursor.Rest)}\" or \"melodic minor\"");
        }

        cursor.Position = cursor.Text.Length;
        return true;
    }

    /// <summary>The known name that begins most like a text.</summary>
    private static string Nearest(ReadOnlySpan<char> text)
    {
        var (nearest, longest) = (Major.Name, 0);
        foreach (var name in Index.ByName.Keys)
        {
            var same = 0;
            while (same < Math.Min(name.Length, text.Length) && name[same] == char.ToLowerInvariant(text[same]))
            {
                same++;
            }

            (nearest, longest) = same > longest ? (name, same) : (nearest, longest);
        }

        return nearest;
    }

    private static string OneLine(ReadOnlySpan<char> text) =>
        string.Join(' ', text.ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
            .Replace('♯', '#')
            .Replace('♭', 'b');

    // Apart, so that it is made after Known.
    // Scale names hold signs only before a digit: lydian #2, locrian bb7.
    private static string Printed(string name)
    {
        var printed = name.Replace('#', '♯').ToCharArray();
        for (var index = printed.Length - 2; index >= 0; index--)
        {
            if (printed[index] == 'b' && (char.IsAsciiDigit(printed[index + 1]) || printed[index + 1] == '♭'))
            {
                printed[index] = '♭';
            }
        }

        return new(printed);
    }

    private static class Index
    {
        public static readonly Dictionary<Formula, ScaleType> ByFormula = Known.ToDictionary(type => type.Formula);

        public static readonly Dictionary<string, ScaleType> ByName = Known
            .SelectMany(type => type.Aliases.Prepend(type.Name).Select(name => (name, type)))
            .ToDictionary(pair => pair.name, pair => pair.type, StringComparer.OrdinalIgnoreCase);
    }
}
