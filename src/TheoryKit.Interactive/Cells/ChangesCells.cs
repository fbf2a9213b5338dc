using TheoryKit.Theory.Progressions;
using TheoryKit.Theory.Scales;

namespace TheoryKit.Interactive.Cells;

/// <summary>
/// Cells that hold a chord chart over as many lines as it has: <c>#!changes --name tune --key "Eb major" --time 3/4</c>. They leave
/// <see cref="Changes"/>.
/// </summary>
internal sealed class ChangesCells()
    : CellLanguage(
        Language,
        "chord chart",
        ("--key", "The key, such as \"Eb major\""),
        ("--time", "The time signature, 4/4 unless told")
    )
{
    public const string Language = "changes";

    /// <inheritdoc/>
    protected override CellValue Read(CellSource source, CellOptions given)
    {
        var name = given.Variable("changes");
        var (time, key) = (given.ParsedValue<TimeSignature>("--time"), given.ParsedValue<Key>("--key"));
        var (changes, error) = CellOptions.ReadChanges(source.InPlace, time, key);
        return changes is not null
            ? new(name, changes, changes)
            : throw source.Error(
                $"This is not a chord chart: in line {error!.Line}, at character {error.Column}, {CellOptions.Expected(error)}",
                error.Line,
                error.Column,
                error.Length
            );
    }
}
