namespace TheoryKit.Tunings;

/// <summary>What a report of tensions says in sentences.</summary>
internal static class TensionWords
{
    public static string? Advice(StringTension each, TensionLimits limits) => null;

    public static IReadOnlyList<string> Warnings(TensionReport report) =>
        [
            .. report
                .Strings.Where(static each => each.State != StringState.Comfortable)
                .Select(static each =>
                    $"String {each.Number}, {each.Pitch}, {each.String}: {each.Tension.ToString(1)}, {each.State}."
                ),
        ];
}
