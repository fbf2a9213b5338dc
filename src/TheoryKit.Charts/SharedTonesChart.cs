using System.Collections.Immutable;
using Plotly.NET;
using TheoryKit.Theory;

namespace TheoryKit.Charts;

/// <summary>
/// How many tones each two of several chords share, by sound (G# is Ab), a bass beside the chord included. On the
/// diagonal stands how many a chord has.
/// </summary>
public sealed class SharedTonesChart : StudyChart
{
    /// <summary>The most chords whose shared tones fit into the cells by name: 6.</summary>
    public const int MostNamed = 6;

    private const int NamesInLine = 3;

    /// <summary>A chart of these chords.</summary>
    /// <param name="chords">Two or more, in the order shown.</param>
    /// <exception cref="ArgumentException">Fewer than two chords.</exception>
    public SharedTonesChart(params IEnumerable<Chord> chords) => Chords = Names.AtLeast(2, chords);

    /// <summary>The chords in the order given.</summary>
    public ImmutableArray<Chord> Chords { get; }

    /// <inheritdoc/>
    public override string Title => "Tones shared by two chords";

    /// <inheritdoc/>
    public override string Description
    {
        get
        {
            var pairs = Pairs()
                .GroupBy(pair => Count(pair.First, pair.Second))
                .OrderByDescending(static group => group.Key);
            var most = pairs.First();
            var least = pairs.Last();
            var text =
                $"How many tones each two of {Chords.Length} chords share, and on the diagonal how many each has. "
                + $"Most shared: {Pair(most.First())}{Others(most)} with {most.Key}";
            return most.Key == least.Key
                ? text + ", as any two do."
                : $"{text}; fewest: {Pair(least.First())}{Others(least)} with {least.Key}.";
        }
    }

    /// <inheritdoc/>
    public override ChartTable Table =>
        new(
            Chords.Select(static chord => $"with {Names.Of(chord)}").Prepend("chord"),
            Chords.Select(
                (chord, row) => Chords.Select((_, column) => Cell(row, column, " ", null)).Prepend(Names.Of(chord))
            )
        );

    /// <summary>How many tones two chords share, by sound.</summary>
    /// <param name="first">A chord's place, from 0.</param>
    /// <param name="second">Another's, or the same.</param>
    public int Count(int first, int second) => Shared(first, second).Count();

    /// <summary>The tones two chords share, in the spelling of the first, upward from its root.</summary>
    /// <param name="first">A chord's place, from 0.</param>
    /// <param name="second">Another's, or the same.</param>
    public IReadOnlyList<NoteName> Tones(int first, int second) => [.. Shared(first, second)];

    internal override GenericChart Draw(Palette palette)
    {
        var names = Chords.Select(static chord => Names.Of(chord, "P")).ToList();
        var most = Math.Max(1, Pairs().Max(pair => Count(pair.First, pair.Second)));
        var longest = Enumerable.Range(0, Chords.Length).Max(row => Count(row, row));
        var named = Chords.Length <= MostNamed;
        return Matrix
            .Draw(
                palette,
                Title,
                (names, "chord"),
                (names, "shares tones with (count)"),
                (row, column) =>
                    new(
                        row == column ? 0 : (double)Count(row, column) / most,
                        named ? Cell(row, column, "<br>", "P") : $"{Count(row, column)}",
                        Hover(row, column)
                    ),
                named ? 1 + ((longest + NamesInLine - 1) / NamesInLine) : 1
            )
            .ToPlotly();
    }

    private IEnumerable<NoteName> Shared(int first, int second)
    {
        var other = Chords[second].PitchClasses;
        var seen = 0;
        foreach (var tone in Chords[first].Tones.Append(Chords[first].Bass))
        {
            var bit = 1 << tone.PitchClass;
            if (other.Contains(tone.PitchClass) && (seen & bit) == 0)
            {
                yield return tone;
            }

            seen |= bit;
        }
    }

    private string Cell(int row, int column, string parting, string? format)
    {
        var tones = Tones(row, column).Select(tone => tone.ToString(format));
        return tones.Any()
            ? $"{Count(row, column)}{parting}{string.Join(parting, tones.Chunk(NamesInLine).Select(static line => string.Join(' ', line)))}"
            : "0";
    }

    private string Hover(int row, int column)
    {
        var (one, other) = (Chords[row], Chords[column]);
        var tones = Tones(row, column)
            .Select(tone =>
                $"{tone.ToString("P")}: {Function(one, tone)}"
                + (row == column ? "" : $" of {Names.Of(one, "P")}, {Function(other, tone)} of {Names.Of(other, "P")}")
            );
        var head = row == column ? Names.Of(one, "P") : $"{Names.Of(one, "P")} and {Names.Of(other, "P")}";
        return string.Join("<br>", tones.Prepend($"<b>{head}: {Names.Some(Count(row, column), "tone")}</b>"));
    }

    private static string Function(Chord chord, NoteName tone) => chord.FunctionOf(tone)?.ToString("P") ?? "the bass";

    private IEnumerable<(int First, int Second)> Pairs() =>
        Enumerable
            .Range(0, Chords.Length)
            .SelectMany(first =>
                Enumerable.Range(first + 1, Chords.Length - first - 1).Select(second => (first, second))
            );

    private string Pair((int First, int Second) pair) =>
        $"{Names.Of(Chords[pair.First], "P")} and {Names.Of(Chords[pair.Second], "P")}";

    private static string Others(IEnumerable<(int First, int Second)> pairs) =>
        pairs.Count() is > 1 and var count ? $" and {Names.Some(count - 1, "other pair")}" : "";
}
