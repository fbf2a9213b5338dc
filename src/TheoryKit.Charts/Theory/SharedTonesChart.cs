using System.Collections.Immutable;
using Plotly.NET;
using TheoryKit.Charts.Figures;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Relations;
using TheoryKit.Values;

namespace TheoryKit.Charts.Theory;

/// <summary>
/// How many tones each two of several chords share, by sound (G# is Ab), a bass beside the chord included. On the
/// diagonal stands how many a chord has.
/// </summary>
public sealed class SharedTonesChart : StudyChart
{
    /// <summary>The most chords whose shared tones fit into the cells by name: 6.</summary>
    public const int MostNamed = 6;

    private const int NamesInLine = 3;

    private readonly ImmutableArray<ImmutableArray<IReadOnlyList<CommonTone>>> shared;

    /// <summary>A chart of these chords.</summary>
    /// <param name="chords">Two or more, in the order shown.</param>
    /// <exception cref="ArgumentException">Fewer than two chords.</exception>
    /// <exception cref="OverflowException">A tone would need more accidentals than a note name has.</exception>
    public SharedTonesChart(params IEnumerable<Chord> chords)
    {
        Chords = Names.AtLeast(2, chords);
        shared =
        [
            .. Chords.Select(one => Chords.Select(other => ChordPair.Of(one, other).CommonTones).ToImmutableArray()),
        ];
    }

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

    internal override ChartTable Tabulate(string? format) =>
        new(
            Chords.Select(chord => $"with {chord.ToString(format)}").Prepend("chord"),
            Chords.Select(
                (chord, row) =>
                    Chords.Select((_, column) => Cell(row, column, " ", format)).Prepend(chord.ToString(format))
            )
        );

    /// <summary>How many tones two chords share, by sound.</summary>
    /// <param name="first">A chord's place, from 0.</param>
    /// <param name="second">Another's, or the same.</param>
    public int Count(int first, int second) => Shared(first, second).Count;

    /// <summary>The tones two chords share, as each of them has it, in the order of the first.</summary>
    /// <param name="first">A chord's place, from 0.</param>
    /// <param name="second">Another's, or the same.</param>
    public IReadOnlyList<CommonTone> Shared(int first, int second) =>
        shared[Check.Index(first, Chords.Length)][Check.Index(second, Chords.Length)];

    internal override GenericChart Draw(Palette palette)
    {
        var names = Chords.Select(static chord => chord.ToString("P")).ToList();
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

    private string Cell(int row, int column, string parting, string? format)
    {
        var lines = Shared(row, column)
            .Select(tone => tone.InFirst.Name.ToString(format))
            .Chunk(NamesInLine)
            .Select(static line => string.Join(' ', line));
        return string.Join(parting, lines.Prepend($"{Count(row, column)}"));
    }

    private string Hover(int row, int column)
    {
        var (one, other) = (Chords[row].ToString("P"), Chords[column].ToString("P"));
        return string.Join(
            "<br>",
            Shared(row, column).Select(Words).Prepend($"<b>{Head()}: {Names.Some(Count(row, column), "tone")}</b>")
        );

        string Head() => row == column ? one : $"{one} and {other}";

        string Words(CommonTone tone) =>
            row == column
                ? $"{tone.InFirst.Name.ToString("P")}: {Function(tone.InFirst)}"
                : $"{tone.InFirst.Name.ToString("P")}: {Function(tone.InFirst)} of {one}, {Function(tone.InSecond)} of {other}"
                    + (tone.IsRespelled ? $" (there {tone.InSecond.Name.ToString("P")})" : "");
    }

    private static string Function(ChordTone tone) => tone.Function?.ToString("P") ?? "the bass";

    private IEnumerable<(int First, int Second)> Pairs() =>
        Enumerable
            .Range(0, Chords.Length)
            .SelectMany(first =>
                Enumerable.Range(first + 1, Chords.Length - first - 1).Select(second => (first, second))
            );

    private string Pair((int First, int Second) pair) =>
        $"{Chords[pair.First].ToString("P")} and {Chords[pair.Second].ToString("P")}";

    private static string Others(IEnumerable<(int First, int Second)> pairs) =>
        pairs.Count() is > 1 and var count ? $" and {Names.Some(count - 1, "other pair")}" : "";
}
