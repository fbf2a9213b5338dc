using System.Diagnostics;
using System.Globalization;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Strings;
using TheoryKit.Values;

namespace TheoryKit.Tunings.Words;

/// <summary>What tensions have to say, in English.</summary>
public static class TensionWords
{
    /// <summary>The tuning and what the neck carries, then every warning with its caution, a line for each.</summary>
    /// <param name="report">The report.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="NoteNaming"/>; null for English.</param>
    public static string InWords(this TensionReport report, string? format = null, IFormatProvider? naming = null)
    {
        ArgumentNullException.ThrowIfNull(report);
        return string.Join(
            "\n",
            [
                $"{report.Neck.Tuning}: {report.Total.ToString(0)}",
                .. report.Warnings.Select(warning => warning.InWords(format, naming)),
                .. report.Caution is { } caution ? [caution] : Array.Empty<string>(),
            ]
        );
    }

    /// <summary>What is amiss, in a sentence, and what would help.</summary>
    /// <param name="warning">The warning.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="NoteNaming"/>; null for English.</param>
    public static string InWords(this TensionWarning warning, string? format = null, IFormatProvider? naming = null) =>
        warning switch
        {
            TensionWarning.NotComfortable { String: var each } =>
                $"String {each.Number} ({each.Pitch.ToString(format, naming)}, {each.String}) {State(each.State)}: {each.Tension.ToString(1)}{OfBreaking(each)}. {each.Advice?.InWords(format, naming)}",
            TensionWarning.MuchMoreInAll all => string.Create(
                CultureInfo.InvariantCulture,
                $"Together the strings pull {all.More.ToString(0)} more than before, {100 * all.Part:0} %: a load on neck and bridge."
            ),
            _ => throw Check.NoKind(warning),
        };

    /// <summary>What would help, in a sentence.</summary>
    /// <param name="advice">The advice.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="NoteNaming"/>; null for English.</param>
    public static string InWords(this StringAdvice advice, string? format = null, IFormatProvider? naming = null)
    {
        return advice switch
        {
            StringAdvice.FitHeavier heavier =>
                $"Fit a heavier one: {heavier.Gauge} pulls {heavier.Tension.ToString(1)}.",
            StringAdvice.FitHeavierOrTuneHigher => "Fit a heavier one or tune it higher.",
            StringAdvice.FitLighter lighter =>
                $"Fit a lighter one: {lighter.Gauge} pulls {lighter.Tension.ToString(1)}.",
            StringAdvice.FitLighterOrTuneLower => "Fit a lighter one or tune it lower.",
            StringAdvice.TuneLower => "Tune it lower.",
            StringAdvice.ThickerCoreOrLower core => $"Fit one with a thicker core, or {Lower(core.HighestSafe)}.",
            StringAdvice.LowerOrShorterScale plain =>
                $"The stress is the same in every gauge, so {Lower(plain.HighestSafe)}, or use a shorter scale; a lighter gauge only eases the load on the neck.",
            _ => throw Check.NoKind(advice),
        };

        string Lower(Pitch? safe) =>
            safe is { } pitch ? $"tune it to {pitch.ToString(format, naming)} or lower" : "tune it lower";
    }

    /// <summary>What is amiss with a gauge, in sentences.</summary>
    /// <param name="warning">The warning.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="NoteNaming"/>; null for English.</param>
    public static string InWords(this GaugeWarning warning, string? format = null, IFormatProvider? naming = null) =>
        warning switch
        {
            GaugeWarning.NearBreaking near =>
                $"{near.Gauge} at {near.Pitch.ToString(format, naming)} {State(near.State)}: {Part(near.Gauge, near.BreakingPart, near.MostOfBreaking)} of the breaking stress. {near.Advice.InWords(format, naming)}",
            GaugeWarning.ThinnerThanSold => "Wound strings this thin are hardly sold; take a plain one.",
            _ => throw Check.NoKind(warning),
        };

    /// <summary>What the figures can't tell, in a sentence.</summary>
    public static string InWords(this TensionNote note) =>
        note switch
        {
            TensionNote.Estimated =>
                "How near wound strings are to breaking is an estimate, by the core that is usual for their gauge.",
            TensionNote.NotKnown unknown =>
                $"How near {Which(unknown)} to breaking is not known: take no string higher than its maker says.",
            _ => throw Check.NoKind(note),
        };

    /// <summary>The part of the breaking stress: <c>53 %</c>, <c>about 60 %</c> for an estimate, else <c>not known</c>. With decimals where
    /// without them it would seem to be on the other side of a limit.</summary>
    public static string BreakingPartInWords(this StringTension tension)
    {
        ArgumentNullException.ThrowIfNull(tension);
        return Part(tension.String, tension.BreakingPart, tension.MostOfBreaking);
    }

    /// <inheritdoc cref="BreakingPartInWords(StringTension)"/>
    public static string BreakingPartInWords(this GaugeChoice choice)
    {
        ArgumentNullException.ThrowIfNull(choice);
        return Part(choice.Nearest, choice.BreakingPart, choice.MostOfBreaking);
    }

    private static string Part(FittedString fitted, double? part, double most) =>
        part is { } known
            ? $"{(fitted.IsStressEstimated ? "about " : "")}{TensionLimits.Percent(known, most)}"
            : "not known";

    private static string OfBreaking(StringTension each) =>
        each is { State: StringState.NearBreaking or StringState.Breaking, BreakingPart: not null }
            ? $", {each.BreakingPartInWords()} of the breaking stress"
            : "";

    private static string Which(TensionNote.NotKnown unknown) =>
        unknown.Strings.Count == unknown.Of ? "these strings are"
        : unknown.Strings is [var only] ? $"string {only} is"
        : $"strings {English.List(unknown.Strings.Select(static number => $"{number}"))} are";

    /// <summary>The state as the end of "String 1 …".</summary>
    private static string State(StringState state) =>
        state switch
        {
            StringState.Comfortable => "is comfortable",
            StringState.Slack => "is slack",
            StringState.Heavy => "is heavy",
            StringState.NearBreaking => "is near breaking",
            StringState.Breaking => "breaks before it is in tune",
            _ => throw new UnreachableException(),
        };
}
