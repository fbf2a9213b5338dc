using Fractions;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tab;
using TheoryKit.Licks;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Licks;

/// <summary>What the sheet of licks compared says: which they are, one below the other, and moment by moment where they differ.</summary>
internal static class ComparedLicks
{
    private const int NameInTable = 24;

    // On paper so many stay below each other on a page; of more, each stays whole.
    private const int MostKeptTogether = 3;
    private const string Css = "@media print{.tk-line{break-inside:avoid}}";

    public static Sheet Of(LickComparison comparison)
    {
        var blocks = new List<Block>
        {
            new Block.Title($"{English.Count(comparison.Licks.Length, "lick")} compared"),
            new Block.Facts([
                .. comparison.Licks.Select(static (lick, index) => new Fact($"{index + 1}", Named(lick))),
            ]),
            Picture(comparison),
        };
        if (comparison.Licks.Length > 1)
        {
            blocks.AddRange(Differences(comparison));
        }

        return new(blocks);
    }

    private static Words Named(Lick lick)
    {
        var tune = lick.Tune.Length == 0 ? "" : $", {UserText.Of(lick.Tune)}";
        return $"{UserText.Of(lick.Name)}{tune}, {TabWords.Notes(lick.Path)} in {English.Count(lick.Path.BarCount, "bar")}";
    }

    /// <summary>The licks one below the other.</summary>
    public static Block.Picture Picture(LickComparison comparison) =>
        new(
            (context, naming) =>
            {
                var drawn = comparison.Naming is null ? comparison with { Naming = naming } : comparison;
                var necks = drawn.Licks.Select(static lick => lick.Path.Neck).Distinct().ToList();
                var detail = necks.Count == 1 ? NeckFigure.Detail(necks[0], false, drawn.Naming) + " · " : "";
                var key = drawn.Licks.Length > 1 ? $" · a line below a mark: {drawn.Difference}" : "";
                return NeckFigure.Write(
                    "",
                    $"{detail}{drawn.Licks[0].Path.Time}{key}",
                    drawn.Offered,
                    drawn.Shown,
                    context,
                    html =>
                    {
                        html.Open("div", "tk-scroll").Attribute("tabindex", "0").Attribute("role", "group");
                        html.Attribute("aria-label", "The licks one below the other, as tab");
                        foreach (var line in ComparisonPicture.Pictures(drawn, context))
                        {
                            html.Open("div", drawn.Licks.Length <= MostKeptTogether ? "tk-line" : "tk-lines");
                            foreach (var picture in line)
                            {
                                html.Raw(picture);
                            }

                            html.Close();
                        }

                        html.Close();
                    },
                    "tk-tab",
                    TabDrawingRenderer.Css + Css
                );
            },
            naming => ComparisonText.Write(comparison.Naming is null ? comparison with { Naming = naming } : comparison)
        );

    private static IEnumerable<Block> Differences(LickComparison comparison)
    {
        var moments = comparison.Differences;
        var all = comparison
            .Licks.SelectMany(static lick => lick.Path.Notes.Select(static note => note.Start))
            .Distinct()
            .Count();
        yield return new Block.Prose(
            moments.Count == 0 ? "They do the same at every moment."
            : moments.Count == all ? "They differ at every moment."
            : $"They do the same at {all - moments.Count} of {English.Count(all, "moment")}."
        );
        if (moments.Count == 0)
        {
            yield break;
        }

        var time = comparison.Licks[0].Path.Time;
        yield return new Block.Table(
            "Where they differ",
            [
                "bar and beat",
                .. comparison.Licks.Select(
                    static (lick, index) => new Column($"{index + 1} {UserText.Short(lick.Name, NameInTable)}")
                ),
            ],
            [
                .. moments.Select(moment =>
                    (IReadOnlyList<Cell>)
                        [
                            $"{WrittenRhythm.Whole(moment / time.Beats) + 1}, {TabWords.Beat((moment % time.Beats).Reduce())}",
                            .. comparison.Licks.Select((lick, index) => At(comparison, lick, index, moment)),
                        ]
                ),
            ]
        );
    }

    // "♭7, B♭4": what the notes do that start there, and their names.
    private static Cell At(LickComparison comparison, Lick lick, int index, Fraction moment)
    {
        var path = lick.Path;
        var notes = path.Notes.Where(note => note.Start == moment).ToList();
        if (notes.Count == 0)
        {
            return new(Words.None);
        }

        var words = notes.Select(note =>
        {
            if (note.IsDead)
            {
                return TabNote.Dead(note);
            }

            var sounded = TabNote.Sounded(path.SoundingPitch(note), note);
            return path.FunctionOf(note) is { } function ? $"{function}, {sounded}" : sounded;
        });
        return new(
            Words.Join(" with ", words),
            TabNote.Role(path, notes[0]),
            notes.Exists(note => comparison.Differs(index, note))
        );
    }
}
