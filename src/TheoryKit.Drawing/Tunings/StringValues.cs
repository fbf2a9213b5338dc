using System.Globalization;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Strings;
using TheoryKit.Tunings.Words;

namespace TheoryKit.Drawing.Tunings;

/// <summary>How strings, sets of strings and tensions are described.</summary>
internal static class StringValues
{
    public static Description<StringMaterial> Materials { get; } =
        new(
            new("material", "materials of strings"),
            static material => material.Name,
            [
                new("density", static each => each.IsWound ? null : Density(each.Density), IsNumber: true),
                new("density of the core", static each => each.IsWound ? Density(each.Density) : null, IsNumber: true),
                new("density of the wrap", static each => Density(each.WrapDensity), IsNumber: true),
                new("core, part of the diameter", static each => Number(each.CoreRatio, "0.00"), IsNumber: true),
                new(
                    "wire in the wrap, part of its room",
                    static each => Number(each.PackingFactor, "0.000"),
                    IsNumber: true
                ),
                new("in all", static each => each.IsWound ? Density(each.EffectiveDensity) : null, IsNumber: true),
                new(
                    "strength at 0.254 mm",
                    static each => each.IsWound ? null : Stress(each.TensileStrength(0.254)),
                    IsNumber: true
                ),
            ]
        );

    public static Description<FittedString> Strings { get; } =
        new(
            new("string", "strings"),
            static fitted => Fitted(fitted),
            [
                new("diameter", static each => Both(each.Diameter), IsNumber: true),
                new("core", static each => Both(each.Core), IsNumber: true),
                new("unit weight", static each => Weight(each), IsNumber: true),
            ]
        );

    public static Description<KnownStringSet> KnownSets { get; } =
        new(
            new("set of strings", "sets of strings"),
            static known => known.Name,
            [
                new("instrument", static known => known.Instrument),
                new("strings", static known => known.Set.Count, IsNumber: true),
                new("gauges", static known => Gauges(known.Set)),
            ]
        )
        {
            More = static known => [SetTable(known.Set)],
        };

    public static Description<StringSet> Sets { get; } =
        new(
            new("set of strings", "sets of strings"),
            static set => set.Name ?? $"Set of {Printed.Number(set.Count)} strings",
            [new("gauges", static set => Gauges(set))]
        )
        {
            More = static set => [SetTable(set)],
        };

    public static Description<Tension> Tensions { get; } =
        new(
            new("tension", "tensions"),
            static tension => Newtons(tension),
            [
                new("in kgf", static each => Number(each.KilogramsForce, "0.00"), IsNumber: true),
                new("in lbf", static each => Number(each.PoundsForce, "0.00"), IsNumber: true),
            ]
        );

    public static Description<TensionLimits> Limits { get; } =
        new(
            new("limits of tension", "limits of tension"),
            static limits => $"{Newtons(limits.Lightest, 0)} to {Newtons(limits.Heaviest, 0)}",
            [
                new("slack below", static each => Newtons(each.Lightest), IsNumber: true),
                new("heavy above", static each => Newtons(each.Heaviest), IsNumber: true),
                new("most of the breaking stress", static each => Percent(each.MostOfBreaking), IsNumber: true),
            ]
        );

    public static Description<GaugeChoice> Choices { get; } =
        new(
            new("gauge", "gauges"),
            static choice => choice.Nearest.ToString(),
            [
                new("at", static each => (Words)$"{each.Pitch} on {Millimetres(each.Length)}"),
                new("wanted", static each => Newtons(each.Wanted), IsNumber: true),
                new("pulls", static each => Newtons(each.Tension), IsNumber: true),
                new("more than wanted", static each => Words.Of(new Signed(each.Difference.Newtons)), IsNumber: true),
                new("just right", static each => Both(each.Exact.Diameter), IsNumber: true),
                new("of breaking", static each => OnOneLine(each.BreakingPartInWords()), IsNumber: true),
            ]
        )
        {
            More = static each =>
                [
                    .. each.Warning is { } warning
                        ? [new Block.Prose(Words.Said(warning.InWords))]
                        : Array.Empty<Block>(),
                    .. each.Caution is { } caution ? [new Block.Prose(caution)] : Array.Empty<Block>(),
                ],
        };

    public static Description<StringTension> StringTensions { get; } =
        new(
            new("string", "strings"),
            static each => Words.Of(each.Number),
            [
                new("pitch", static each => Words.Of(each.Pitch)),
                new(
                    "tuned from",
                    static each => each is { Retuned: not 0, ReferencePitch: { } from } ? Words.Of(from) : null
                ),
                new("fitted", static each => Fitted(each.String)),
                new("tension", static each => Newtons(each.Tension), IsNumber: true),
                new("in kgf", static each => Number(each.Tension.KilogramsForce, "0.0"), IsNumber: true),
                new("in lbf", static each => Number(each.Tension.PoundsForce, "0.0"), IsNumber: true),
                new(
                    "change",
                    static each => each.Change is { } change ? Words.Of(new Signed(change.Newtons)) : null,
                    IsNumber: true
                ),
                new("of breaking", static each => OnOneLine(each.BreakingPartInWords()), IsNumber: true),
                new(
                    "feels",
                    static each => new Cell(State(each.State), IsStrong: each.State != StringState.Comfortable)
                ),
            ]
        )
        {
            More = static each =>
                each.Advice is { } advice
                    ? [new Block.Prose(Words.Said(advice.InWords)), new Block.Prose(Cautions.Strings)]
                : each.Retuned > 0 ? [new Block.Prose(Cautions.Strings)]
                : [],
        };

    /// <summary>The sheet of one string of a report.</summary>
    public static Sheet One(StringTension each) =>
        new([
            new Block.Title($"String {each.Number}", Words.Of(each.Pitch)),
            .. StringTensions.Card(each).Blocks.Skip(1),
        ]);

    /// <summary>The sheet of a report: every string, and under it what is amiss with the caution that belongs to it.</summary>
    public static Sheet Report(TensionReport report) =>
        new([
            new Block.Title(
                "Tension of the strings",
                Words.Said((format, naming) => Printed.Of(report.Neck.Tuning, naming, format))
            ),
            .. Blocks(report),
        ]);

    /// <summary>What a report says, without a title, for a page that has one.</summary>
    public static IReadOnlyList<Block> Blocks(TensionReport report)
    {
        var facts = new List<Fact>
        {
            new(
                "in all",
                new(
                    $"{Newtons(report.Total, 0)} ({Number(report.Total.KilogramsForce, "0.0")!} kgf, {Number(report.Total.PoundsForce, "0")!} lbf)"
                )
            ),
        };
        if (report is { TotalChange: { } change, Reference: { } reference })
        {
            facts.Add(
                new(
                    "change",
                    new(
                        $"{new Signed(change.Newtons)} from {Words.Said((format, naming) => Printed.Of(reference, naming, format))}"
                    )
                )
            );
        }

        facts.Add(new("scale length", new(Millimetres(report.Neck.ScaleLength))));
        if (!report.ReferenceA4.Equals(Pitch.StandardA4))
        {
            facts.Add(new("A4", new($"{Number(report.ReferenceA4, "0.##")!} Hz")));
        }

        var blocks = new List<Block>
        {
            new Block.Facts(facts),
            ((Block.Table)StringTensions.Table(report.Strings.Reverse()).Blocks[0]) with
            {
                HasQuietCaption = true,
            },
        };
        blocks.AddRange(report.Warnings.Select(static warning => new Block.Prose(Words.Said(warning.InWords))));
        blocks.AddRange(report.Notes.Select(static note => new Block.Prose(note.InWords())));
        if (report.Caution is { } caution)
        {
            blocks.Add(new Block.Prose(caution));
        }

        return blocks;
    }

    public static string State(StringState state) =>
        state switch
        {
            StringState.Comfortable => "comfortable",
            StringState.Slack => "slack",
            StringState.Heavy => "heavy",
            StringState.NearBreaking => "near breaking",
            _ => "breaks",
        };

    private static Block.Table SetTable(StringSet set) =>
        new(
            "The strings",
            [
                new("string", IsNumber: true),
                "fitted",
                new("diameter", IsNumber: true),
                new("unit weight", IsNumber: true),
            ],
            [
                .. Enumerable
                    .Range(1, set.Count)
                    .Reverse()
                    .Select(number =>
                        (IReadOnlyList<Cell>)
                            [
                                number,
                                new(Fitted(set[number])),
                                new(Both(set[number].Diameter) ?? Words.None),
                                new(Weight(set[number])),
                            ]
                    ),
            ]
        )
        {
            HasQuietCaption = true,
        };

    /// <summary>The gauges in thousandths of an inch where all have one, else as they are.</summary>
    private static Words Gauges(StringSet set) =>
        set.All(static each => each.Diameter is not null)
            ? Words.Join(
                " ",
                set.Reverse()
                    .Select(static each => Number(each.Diameter!.Value / FittedString.MillimetresPerInch, "0.000#")!)
            )
            : Words.Join(", ", set.Reverse().Select(static each => Fitted(each)));

    /// <summary>The string as it is written; a unit weight in the handier g/m, which is read as well.</summary>
    private static string Fitted(FittedString each) =>
        each.Material is null
            ? (each.UnitWeight * 1000).ToString("0.00##\u00a0'g/m'", CultureInfo.InvariantCulture)
            : each.ToString()
                .Replace(" in ", "\u00a0in ", StringComparison.Ordinal)
                .Replace(" mm ", "\u00a0mm ", StringComparison.Ordinal);

    /// <summary>"116.6 N", on one line.</summary>
    public static string Newtons(Tension tension, int decimals = 1) => OnOneLine(tension.ToString(decimals));

    private static string OnOneLine(string text) => text.Replace(' ', '\u00a0');

    private static Words Weight(FittedString each) => $"{Number(each.UnitWeight * 1000, "0.000")!}\u00a0g/m";

    private static Words? Both(double? diameter) =>
        diameter is { } mm
            ? $"{Number(mm, "0.000")!}\u00a0mm, {Number(mm / FittedString.MillimetresPerInch, "0.000#")!}\u00a0in"
            : null;

    private static string? Density(double? density) =>
        density is { } value ? value.ToString("0\u00a0'kg/m³'", CultureInfo.InvariantCulture) : null;

    private static string? Stress(double? stress) =>
        stress is { } value ? (value / 1e9).ToString("0.00\u00a0'GPa'", CultureInfo.InvariantCulture) : null;

    private static string? Percent(double? part) =>
        part is { } value ? (100 * value).ToString("0\u00a0'%'", CultureInfo.InvariantCulture) : null;

    private static string Millimetres(double length) => length.ToString("0.#\u00a0'mm'", CultureInfo.InvariantCulture);

    private static string? Number(double? value, string format) =>
        value?.ToString(format, CultureInfo.InvariantCulture);

    /// <summary>A change in newtons with its sign, the printed minus for print.</summary>
    internal sealed record Signed(double Newtons) : IFormattable
    {
        public string ToString(string? format, IFormatProvider? formatProvider) =>
            Math.Round(Newtons, 1) == 0
                ? "0.0\u00a0N"
                : Newtons.ToString(
                    format == "P" ? "+0.0\u00a0'N';\u22120.0\u00a0'N'" : "+0.0\u00a0'N';-0.0\u00a0'N'",
                    CultureInfo.InvariantCulture
                );
    }
}
