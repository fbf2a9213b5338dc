using System.Collections.Frozen;
using System.Diagnostics.CodeAnalysis;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Theory.Chords;

/// <summary>The families that chord qualities are taught in.</summary>
public enum ChordFamily
{
    /// <summary>Root and fifth alone.</summary>
    Power,

    /// <summary>Root, third and fifth.</summary>
    Triad,

    /// <summary>A second or a fourth in the place of the third.</summary>
    Suspended,

    /// <summary>A triad and its sixth.</summary>
    Sixth,

    /// <summary>A triad and its seventh.</summary>
    Seventh,

    /// <summary>A seventh chord and its ninth.</summary>
    Ninth,

    /// <summary>A ninth chord and its eleventh.</summary>
    Eleventh,

    /// <summary>A ninth chord and its thirteenth.</summary>
    Thirteenth,

    /// <summary>A tone added to a simpler chord.</summary>
    Added,

    /// <summary>A raised or lowered fifth, ninth, eleventh or thirteenth.</summary>
    Altered,

    /// <summary>Built in fourths or fifths.</summary>
    Quartal,
}

/// <summary>
/// A chord quality that players have a name for: a formula with its symbol, its name in words and other ways to write it.
/// Equal when the formulas are.
/// </summary>
/// <remarks>
/// All of them are in <see cref="Known"/>; a formula that is not there may still have a symbol, see
/// <see cref="ChordSymbol.For"/>. Text: the name, <c>half-diminished seventh</c>; a symbol is read as well.
/// </remarks>
[ReadAs("a known chord quality")]
[EqualBy(nameof(Formula))]
public sealed partial class ChordQuality : IEquatable<ChordQuality>, ISpanParsable<ChordQuality>
{
    private ChordQuality(ChordFamily family, string symbol, string name, string formula, string aliases = "")
    {
        Family = family;
        Symbol = symbol;
        Name = name;
        Formula = Formula.Parse(formula);
        Aliases = aliases.Split(' ', StringSplitOptions.RemoveEmptyEntries);
    }

    /// <summary>The family it is taught in.</summary>
    public ChordFamily Family { get; }

    /// <summary>What is written after the root: <c>m7b5</c>; empty for the major triad.</summary>
    public string Symbol { get; }

    /// <summary>The name in words: <c>half-diminished seventh</c>.</summary>
    public string Name { get; }

    /// <summary>Its degrees.</summary>
    public Formula Formula { get; }

    /// <summary>Other ways to write the symbol that players use.</summary>
    public IReadOnlyList<string> Aliases { get; }

    /// <summary>The known quality with that formula, spelled like that; null if there is none.</summary>
    public static ChordQuality? Find(Formula formula) => Index.ByFormula.GetValueOrDefault(formula);

    /// <summary>The chord of this quality over a root.</summary>
    public Chord On(NoteName root, NoteName? bass = null) => new(root, Formula, bass);

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    private static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out ChordQuality quality)
    {
        foreach (var known in Known)
        {
            if (cursor.Rest.Equals(known.Name, StringComparison.OrdinalIgnoreCase))
            {
                cursor.Position = cursor.Text.Length;
                quality = known;
                return true;
            }
        }

        var start = cursor.Position;
        quality = null;
        if (!ChordSymbolReader.Read(ref cursor, out var formula) || !cursor.AtEnd)
        {
            return cursor.Fail(ChordSymbolReader.Expected);
        }

        quality = Find(formula);
        return quality is not null
            || cursor.Fail(start, $"a quality of the catalogue ({formula} is none; a chord may still have it)");
    }

    // Apart, so that it is built after Known whatever the order of the files.
    private static class Index
    {
        public static readonly FrozenDictionary<Formula, ChordQuality> ByFormula = Known.ToFrozenDictionary(quality =>
            quality.Formula
        );
    }
}
