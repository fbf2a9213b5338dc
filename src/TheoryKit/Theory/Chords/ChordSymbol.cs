using System.Diagnostics.CodeAnalysis;
using System.Text;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Theory.Chords;

/// <summary>
/// The one canonical symbol of a formula: what stands after the root, <c>m7b5</c>, <c>7(#9,b13)</c>, <c>maj7sus4</c>.
/// </summary>
/// <remarks>
/// <para>
/// A formula of the catalogue has the symbol given there. Any other is written as a quality of the catalogue (of a family
/// other than added, altered and quartal) and what has to be changed in it, and the cheapest way wins; between equals the
/// one that stands first in the catalogue. Reading a symbol gives back its formula, so that no two formulas share one.
/// </para>
/// <para>
/// Costs: an altered tone 2 (5, and over a sixth or seventh 9, 11, 13; also b6), one more if it takes the place of a natural
/// 9, 11 or 13 (9#11, not 11#11); an added tone 3, or 4 beside its natural tone (9add#9) and for addb2; no fifth 2, no third
/// 3, no root 4; a major seventh over a diminished one 3; alt 3; to start from a power chord 1.
/// </para>
/// <para>
/// So that a player recognises it, a symbol names at least two tones, no two of which sound alike; it has no more than
/// <see cref="MaxChanges"/> changes, of them <see cref="MaxAdditions"/> additions (of different numbers) and
/// <see cref="MaxOmissions"/> omissions (third and fifth together only where nothing else is changed), and costs no more than
/// <see cref="MaxCost"/>. A formula beyond that has none.
/// </para>
/// </remarks>
public static class ChordSymbol
{
    /// <summary>The most changes in a symbol: 4.</summary>
    public const int MaxChanges = 4;

    /// <summary>The most added tones among them: 2.</summary>
    public const int MaxAdditions = 2;

    /// <summary>The most omitted tones among them: 2.</summary>
    public const int MaxOmissions = 2;

    /// <summary>The most a symbol costs: 8.</summary>
    public const int MaxCost = 8;

    private const int AltCost = 3;
    private const int LeastCost = 2;
    private const int PowerCost = 1;

    private static readonly Degree FlatSecond = new(2, -1);

    private enum Kind
    {
        Altered,
        Added,
        MajorSeventh,
        Omitted,
    }

    /// <summary>The canonical symbol, empty for a major triad; null if the formula has none.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="format">"G" (or null) plain, <c>m7b5</c>; "P" printed, <c>ø7</c>.</param>
    /// <exception cref="FormatException">Another format.</exception>
    public static string? For(Formula formula, string? format = null)
    {
        var printed = TextFormat.IsPrinted(format);
        if (ChordQuality.Find(formula) is { } known)
        {
            return printed ? Printed(known.Symbol) : known.Symbol;
        }

        if (!TryExplain(formula, out var explanation))
        {
            return null;
        }

        var symbol = explanation.Write();
        return printed ? Printed(symbol) : symbol;
    }

    /// <summary>What the symbol is built on, and the changes; null if the formula has none.</summary>
    internal static (ChordQuality Quality, IReadOnlyList<ReadingReason> Changes)? Built(Formula formula) =>
        TryExplain(formula, out var explanation)
            ? (explanation.Quality, [.. explanation.Changes.Select(static change => change.Reason)])
            : null;

    /// <summary>What the symbol costs by the rules on this class, each cost with its reason; null if the formula has none.</summary>
    internal static IReadOnlyList<ReadingTerm>? Costs(Formula formula) =>
        formula == Foundations.Alt ? [new(new ReadingReason.AllAlterations(), AltCost)]
        : TryExplain(formula, out var explanation) ? explanation.Costs()
        : null;

    /// <summary>The sum of <see cref="Costs"/>, found without making reasons.</summary>
    internal static int? Cost(Formula formula)
    {
        if (formula == Foundations.Alt)
        {
            return AltCost;
        }

        Span<Change> changes = stackalloc Change[MaxChanges];
        var cost = Cheapest(formula, changes, out var from, out _);
        return from is null ? null : cost;
    }

    /// <summary>The symbol without regard to the catalogue's own, to check that both agree.</summary>
    internal static string? Composed(Formula formula) =>
        TryExplain(formula, out var explanation) ? explanation.Write() : null;

    private static string Printed(string symbol)
    {
        if (symbol.StartsWith("dim", StringComparison.Ordinal))
        {
            symbol = string.Concat("°", symbol.AsSpan(3));
        }
        else if (symbol is ['m', '7' or '9', 'b', '5', ..] or ['m', '1', '1' or '3', 'b', '5', ..])
        {
            var flat = symbol.IndexOf('b', StringComparison.Ordinal);
            symbol = string.Concat("ø", symbol.AsSpan(1, flat - 1), symbol.AsSpan(flat + 2));
        }

        return symbol.Replace('b', '♭').Replace('#', '♯');
    }

    private static bool TryExplain(Formula formula, [MaybeNullWhen(false)] out Explanation explanation)
    {
        Span<Change> changes = stackalloc Change[MaxChanges];
        Cheapest(formula, changes, out var from, out var count);
        explanation = from is null ? null : new(from, changes[..count].ToArray());
        return explanation is not null;
    }

    /// <summary>The cheapest way to write the formula: its cost, what it starts from (null if there is no way) and the changes.</summary>
    private static int Cheapest(Formula formula, Span<Change> changes, out ChordQuality? from, out int count)
    {
        (from, count) = (null, 0);
        var cheapest = MaxCost + 1;
        if (formula.Count < 2 || formula.PitchClasses.Count != formula.Count)
        {
            return cheapest;
        }

        Foundation? best = null;
        foreach (var foundation in Foundations.All)
        {
            if (TryChange(foundation, formula, changes, cheapest, out _, out var cost))
            {
                (cheapest, best) = (cost, foundation);
            }
        }

        if (best is not null)
        {
            from = best.Quality;
            TryChange(best, formula, changes, MaxCost + 1, out count, out _);
        }

        return cheapest;
    }

    /// <summary>Finds the changes that make a foundation into this formula, within the limits and for less than a cost.</summary>
    private static bool TryChange(
        Foundation foundation,
        Formula formula,
        Span<Change> changes,
        int lessThan,
        out int count,
        out int cost
    )
    {
        (count, cost) = (0, foundation.Power ? PowerCost : 0);
        var added = formula.Except(foundation.Formula);
        var missing = foundation.Formula.Except(formula);
        var most = Math.Min(MaxChanges, (lessThan - 1) / LeastCost);
        if (added.Count > most || missing.Count > most || (foundation.Power && missing.Count > 0))
        {
            return false;
        }

        var (additions, omissions, gaveWay, last) = (0, 0, 0, 0);
        foreach (var degree in added)
        {
            if (KindOf(degree, foundation) is not { } kind)
            {
                return false;
            }

            var natural = new Degree(degree.Number);
            var implied = degree.Alteration != 0 && foundation.Formula.Contains(natural);
            var beside = implied && formula.Contains(natural);
            kind = beside ? Kind.Added : kind;
            // A suspended tone, 2 or 4, is said outright and gives way to nothing.
            gaveWay |= implied && !beside && degree.Number > 4 ? 1 << degree.Number : 0;
            if (kind == Kind.Added && (++additions > MaxAdditions || last == degree.Number))
            {
                return false;
            }

            last = degree.Number;
            var price = kind switch
            {
                Kind.Altered => implied && degree.Number > 6 ? 3 : 2,
                Kind.Added when beside || degree == FlatSecond => 4,
                _ => 3,
            };
            changes[count++] = new(kind, degree, price);
            cost += price;
        }

        foreach (var degree in missing)
        {
            if (degree.Alteration == 0 && (gaveWay & (1 << degree.Number)) != 0)
            {
                continue;
            }

            // "no" leaves out every tone of the number, so that none may be there.
            var price = PriceOfOmitting(degree);
            if (
                price == 0
                || count == MaxChanges
                || ++omissions > MaxOmissions
                || formula.WithNumber(degree.Number) is not null
            )
            {
                return false;
            }

            changes[count++] = new(Kind.Omitted, degree, price);
            cost += price;
        }

        // Without third and fifth a chord is known by its number alone: 7(no3,no5).
        var bare = omissions == 2 && changes[count - 1].Degree.Number == 5 && changes[count - 2].Degree.Number == 3;
        return cost < lessThan && !(bare && count > omissions);
    }

    /// <summary>How a tone that the foundation lacks is written; null if no player would.</summary>
    private static Kind? KindOf(Degree degree, Foundation foundation) =>
        (degree.Number, degree.Alteration) switch
        {
            (2 or 4 or 6 or 9 or 11 or 13, 0) => Kind.Added,
            _ when foundation.Power => null,
            (5, -1 or 1) => Kind.Altered,
            (6, -1) when !foundation.Sixth => Kind.Altered,
            (9, -1 or 1) or (11, 1) or (13, -1) or (4, 1) => foundation.Large ? Kind.Altered : Kind.Added,
            (2, -1) => Kind.Added,
            (7, 0) when foundation.DiminishedSeventh => Kind.MajorSeventh,
            _ => null,
        };

    /// <summary>What it costs to leave a tone out; 0 if no player would.</summary>
    private static int PriceOfOmitting(Degree degree) =>
        (degree.Number, degree.Alteration) switch
        {
            (1, 0) => 4,
            (3, _) => 3,
            (5, 0) => 2,
            _ => 0,
        };

    private readonly record struct Change(Kind Kind, Degree Degree, int Cost)
    {
        public ReadingReason Reason =>
            Kind switch
            {
                Kind.Altered => new ReadingReason.Altered(Degree),
                Kind.Added => new ReadingReason.Added(Degree),
                Kind.MajorSeventh => new ReadingReason.MajorSeventh(),
                _ => new ReadingReason.Omitted(Degree),
            };
    }

    private sealed record Explanation(ChordQuality Quality, Change[] Changes)
    {
        public string Write()
        {
            var text = new StringBuilder(Quality.Symbol, 24);
            if (Changes is [var only] && IsWrittenOn(only))
            {
                Write(text, only);
            }
            else if (Changes.Length > 0)
            {
                text.Append('(');
                foreach (var change in Changes)
                {
                    Write(text, change);
                    text.Append(',');
                }

                text[^1] = ')';
            }

            return text.ToString();
        }

        public IReadOnlyList<ReadingTerm> Costs()
        {
            var changes = Changes.Select(static change => new ReadingTerm(change.Reason, change.Cost));
            return
            [
                .. Quality.Family == ChordFamily.Power
                    ? changes.Prepend(new(new ReadingReason.PowerChord(), PowerCost))
                    : changes,
            ];
        }

        /// <summary>Whether a single change is written on without parentheses: 7b9 and add9, but 7(no5), (b5), aug(add9), m7b5(b9).</summary>
        private bool IsWrittenOn(Change change)
        {
            var symbol = Quality.Symbol;
            return change.Kind switch
            {
                Kind.Added when symbol.Length == 0 => true,
                Kind.Added or Kind.Altered => symbol is "m"
                    || (
                        symbol is [.., var before, >= '0' and <= '9'] ? before is not ('b' or '#') : symbol.Length == 1
                    ),
                _ => false,
            };
        }

        private static void Write(StringBuilder text, Change change)
        {
            switch (change.Kind)
            {
                case Kind.MajorSeventh:
                    text.Append("maj7");
                    return;
                case Kind.Omitted:
                    text.Append("no").Append(change.Degree.Number);
                    return;
                case Kind.Added:
                    text.Append("add");
                    break;
            }

            change.Degree.Write(text, printed: false);
        }
    }

    /// <summary>A quality that symbols are built on, with what the rules ask of it.</summary>
    private sealed class Foundation(ChordQuality quality)
    {
        public ChordQuality Quality { get; } = quality;
        public Formula Formula { get; } = quality.Formula;
        public bool Power { get; } = quality.Family == ChordFamily.Power;
        public bool Sixth { get; } = quality.Formula.WithNumber(6) is not null;
        public bool DiminishedSeventh { get; } = quality.Formula.Contains(new Degree(7, -2));

        /// <summary>Whether altered tones are written on without "add".</summary>
        public bool Large { get; } =
            quality.Formula.WithNumber(6) is not null || quality.Formula.WithNumber(7) is not null;
    }

    // Apart, so that they are built after the catalogue.
    private static class Foundations
    {
        public static readonly Formula Alt = Formula.Parse("1 3 b5 #5 b7 b9 #9");

        public static readonly Foundation[] All =
        [
            .. from quality in ChordQuality.Known
            where quality.Family is not (ChordFamily.Added or ChordFamily.Altered or ChordFamily.Quartal)
            select new Foundation(quality),
        ];
    }
}
