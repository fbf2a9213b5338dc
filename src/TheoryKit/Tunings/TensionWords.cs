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
        switch (each.State)
        {
            case StringState.Slack when each.Suggested is { } gauge:
                return $"Fit a heavier one: {gauge.Nearest} pulls {gauge.Tension.ToString(1)}.";
            case StringState.Slack:
                return "Fit a heavier one or tune it higher.";
            case StringState.Heavy when each.Suggested is { } gauge:
                return $"Fit a lighter one: {gauge.Nearest} pulls {gauge.Tension.ToString(1)}.";
            case StringState.Heavy:
                return each.String.Material is null ? "Fit a lighter one or tune it lower." : "Tune it lower.";
            case StringState.NearBreaking or StringState.Breaking:
                return AgainstBreaking(each.String, each.HighestSafePitch, format, naming);
            default:
                return null;
        }
    }

    /// <summary>What helps against breaking. The stress of a plain string is 4 L² f² times the density: only the pitch and the length are
    /// in it.</summary>
    public static string AgainstBreaking(
        FittedString fitted,
        Pitch? safe,
        string? format = null,
        IFormatProvider? naming = null
    )
    {
        var lower = safe is { } pitch ? $"tune it to {pitch.ToString(format, naming)} or lower" : "tune it lower";
        return fitted.Material is { IsWound: true }
            ? $"Fit one with a thicker core, or {lower}."
            : $"The stress is the same in every gauge, so {lower}, or use a shorter scale; a lighter gauge only eases the load on the neck.";
    }

    /// <summary>What is amiss with a gauge that is chosen for a tension; null where nothing is.</summary>
    public static string? Warning(GaugeChoice choice, string? format = null, IFormatProvider? naming = null)
    {
        if (State(choice.State) is { } state)
        {
            var part = choice.BreakingPart!.Value;
            var safe = TensionLimits.HighestSafe(choice.Pitch, part, choice.MostOfBreaking);
            return $"{choice.Nearest} at {choice.Pitch.ToString(format, naming)} {state}: {Part(choice.Nearest, part, choice.MostOfBreaking)} of the breaking stress. {AgainstBreaking(choice.Nearest, safe, format, naming)}";
        }

        return choice.Nearest.IsThinnerThanSold ? "Wound strings this thin are hardly sold; take a plain one." : null;
    }

    /// <summary>Where the part of the breaking stress is an estimate, and where it isn't known.</summary>
    public static IReadOnlyList<string> Notes(TensionReport report)
    {
        var notes = new List<string>();
        if (report.Strings.Any(static each => each.String.IsStressEstimated))
        {
            notes.Add(
                "How near wound strings are to breaking is an estimate, by the core that is usual for their gauge."
            );
        }

        int[] unknown =
        [
            .. report
                .Strings.Where(static each => each.BreakingPart is null)
                .Select(static each => each.Number)
                .Reverse(),
        ];
        if (unknown.Length > 0)
        {
            var which =
                unknown.Length == report.Strings.Count ? "these strings are"
                : unknown.Length == 1 ? $"string {unknown[0]} is"
                : $"strings {string.Join(", ", unknown[..^1])} and {unknown[^1]} are";
            notes.Add($"How near {which} to breaking is not known: take no string higher than its maker says.");
        }

        return notes;
    }

    /// <summary>"53 %", "about 60 %": with as many decimals as it takes to stand on the right side of the limit and of 100 %. Null where
    /// the part isn't known.</summary>
    public static string? Part(FittedString fitted, double? part, double most)
    {
        if (part is not { } known)
        {
            return null;
        }

        var decimals = 0;
        while (decimals < 4 && State(Math.Round(known, decimals + 2)) != State(known))
        {
            decimals++;
        }

        var percent = (100 * known).ToString($"F{decimals}", CultureInfo.InvariantCulture);
        return $"{(fitted.IsStressEstimated ? "about " : "")}{percent} %";

        StringState? State(double value) => TensionLimits.BreakingState(value, most);
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
            if (State(each.State) is { } state)
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
    private static string? State(StringState state) =>
        state switch
        {
            StringState.Slack => "is slack",
            StringState.Heavy => "is heavy",
            StringState.NearBreaking => "is near breaking",
            StringState.Breaking => "breaks before it is in tune",
            _ => null,
        };

    private static string Part(StringTension each) =>
        each is { State: StringState.NearBreaking or StringState.Breaking, BreakingPart: not null }
            ? $", {each.BreakingPartInWords} of the breaking stress"
            : "";
}
