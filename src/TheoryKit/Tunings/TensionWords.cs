using System.Globalization;
using TheoryKit.Theory;

namespace TheoryKit.Tunings;

/// <summary>What a report of tensions says in sentences; pitches are written in a format and in a reader's way.</summary>
internal static class TensionWords
{
    // A tenth more in all is worth a word: from one usual set to the next heavier is 15 to 20 %.
    private const double MuchMore = 0.1;

    public static string? Advice(StringTension each, string? format = null, IFormatProvider? naming = null)
    {
        var lowered = each.HighestSafePitch is { } safe ? $"tune it to {safe.ToString(format, naming)} or lower" : null;
        switch (each.State)
        {
            case StringState.Slack when each.Suggested is { } gauge:
                return $"Fit a heavier one: {gauge.Nearest} pulls {gauge.Tension.ToString(1)}.";
            case StringState.Slack:
                return "Fit a heavier one or tune it higher.";
            case StringState.Heavy when each.Suggested is { } gauge:
                return $"Fit a lighter one: {gauge.Nearest} pulls {gauge.Tension.ToString(1)}.";
            case StringState.Heavy:
                return "Fit a lighter one or tune it lower.";
            case StringState.NearBreaking or StringState.Breaking:
                // The stress is 4 L² f² times the density: only the pitch and the length are in it.
                return each.String.Material is { IsWound: true }
                    ? $"Fit one with a thicker core, or {lowered ?? "tune it lower"}."
                    : $"The stress is the same in every gauge, so {lowered ?? "tune it lower"}, or use a shorter scale; a lighter gauge only eases the load on the neck.";
            default:
                return null;
        }
    }

    public static IReadOnlyList<string> Warnings(
        TensionReport report,
        string? format = null,
        IFormatProvider? naming = null
    )
    {
        var warnings = new List<string>();
        foreach (var each in report.Strings)
        {
            if (State(each) is { } state)
            {
                var advice = Advice(each, format, naming);
                warnings.Add(
                    $"String {each.Number} ({each.Pitch.ToString(format, naming)}, {each.String}) {state}: {each.Tension.ToString(1)}{Part(each)}. {advice}"
                );
            }
        }

        if (report.TotalChange is { } more && more.Newtons > MuchMore * (report.Total - more).Newtons)
        {
            var part = more.Newtons / (report.Total - more).Newtons;
            warnings.Add(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Together the strings pull {more.ToString(0)} more than before, {100 * part:0} %: a load on neck and bridge."
                )
            );
        }

        return warnings;
    }

    /// <summary>The state as the end of "String 1 …"; null for a comfortable string.</summary>
    private static string? State(StringTension each) =>
        each.State switch
        {
            StringState.Slack => "is slack",
            StringState.Heavy => "is heavy",
            StringState.NearBreaking => "is near breaking",
            StringState.Breaking => "breaks before it is in tune",
            _ => null,
        };

    private static string Part(StringTension each) =>
        each is { State: StringState.NearBreaking or StringState.Breaking, BreakingPart: { } part }
            ? string.Create(CultureInfo.InvariantCulture, $", {100 * part:0} % of the breaking stress")
            : "";
}
