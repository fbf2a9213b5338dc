using System.Globalization;
using TheoryKit.Drawing.Paths;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Licks;
using TheoryKit.Licks.Folders;
using TheoryKit.Licks.Search;
using TheoryKit.Licks.Words;
using TheoryKit.Paths;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Licks;

/// <summary>How a folder of licks is described, what it is searched by and what is found.</summary>
internal static class LickFolderValues
{
    private const int MostChords = 8;
    private const int MostReasons = 4;

    public static Description<KeptLick> Kept { get; } =
        new(
            new("lick", "licks"),
            static each => UserText.Of(each.Lick.Name),
            [
                new("of", static each => Said(UserText.Of(each.Lick.Tune))),
                new("chords", static each => Shown(Chords(each.Lick, MostChords))),
                new("tempo", static each => Number(each.Lick.Tempo), IsNumber: true),
                new("bars", static each => each.Lick.Path.BarCount, IsNumber: true),
                new("notes", static each => each.Lick.Path.Notes.Count(static note => !note.IsDead), IsNumber: true),
                new("tags", static each => Said(Tags(each.Lick))),
                new("file", static each => UserText.Of(each.File)),
                new(
                    "read with remarks",
                    static each => each.Remarks.Count == 0 ? null : (Cell)each.Remarks.Count,
                    IsNumber: true
                ),
            ]
        );

    public static Description<BrokenLick> Broken { get; } =
        new(
            new("file that can't be read", "files that can't be read"),
            static each => UserText.Of(each.File),
            [
                new("line", static each => each.Line is { } line ? (Cell)line : null, IsNumber: true),
                new("what is wrong", static each => UserText.Of(OneLine(each.InWords()))),
            ]
        );

    public static Description<FoundLick> Found { get; } =
        new(
            new("lick found", "licks found"),
            static each => UserText.Of(each.Lick.Name),
            [
                new("why", static each => Shown(Reasons(each))),
                new("answers in part", static each => InPart(each), IsNumber: true),
                new("of", static each => Said(UserText.Of(each.Lick.Tune))),
                new("chords", static each => Shown(Chords(each.Lick, MostChords))),
                new("tempo", static each => Number(each.Lick.Tempo), IsNumber: true),
                new("tags", static each => Said(Tags(each.Lick))),
            ]
        );

    public static Description<SimilarLicks> Similar { get; } =
        new(
            new("group of licks alike", "groups of licks alike"),
            static each => string.Join(", ", each.Licks.Select(static lick => UserText.Of(lick.Lick.Name))),
            [
                new("licks", static each => each.Licks.Count, IsNumber: true),
                new("alike", static each => each.IsSame ? "the same but for key and register" : Percent(each.Likeness)),
                new(
                    "files",
                    static each => string.Join(", ", each.Licks.Select(static lick => UserText.Of(lick.File)))
                ),
            ]
        );

    public static Description<LickDifference> Differences { get; } =
        new(
            new("difference", "differences"),
            static each => each.InWords(),
            [
                new("note of the first", static each => each.First is { } note ? (Cell)note : null, IsNumber: true),
                new("note of the second", static each => each.Second is { } note ? (Cell)note : null, IsNumber: true),
            ]
        );

    public static Description<LickLine> Lines { get; } =
        new(
            new("line", "lines"),
            static line => line.ToString(),
            [
                new("notes", static line => line.Steps.Count, IsNumber: true),
                new("shape", static line => Shape(line.Contour)),
            ]
        );

    public static Description<LickCriterion> Criteria { get; } =
        new(
            new("looked for", "looked for"),
            static each => Signs(each.Value),
            [
                new("in", static each => each.Key),
                new("or not", static each => each is LickCriterion.Not ? "must not have it" : null),
            ]
        );

    public static Description<LickQuery> Queries { get; } =
        new(
            new("search for licks", "searches for licks"),
            static query => query.Criteria.Count == 0 ? "Every lick" : "Licks",
            []
        )
        {
            More = static query =>
                query.Criteria.Count == 0
                    ? []
                    : [((Block.Table)Criteria.Table(query.Criteria).Blocks[0]) with { Caption = "with all of this" }],
        };

    /// <summary>How alike two licks are, and what differs.</summary>
    public static Sheet Alike(Likeness likeness)
    {
        var blocks = new List<Block>
        {
            new Block.Title(
                likeness.Value >= 1 ? "The same but for key and register" : $"{Percent(likeness.Value)} alike"
            ),
        };
        if (likeness.Differences.Count > 0)
        {
            blocks.AddRange(Differences.Table(likeness.Differences).Blocks);
        }

        return new(blocks);
    }

    /// <summary>What is in a folder.</summary>
    public static Sheet Folder(LickFolder folder)
    {
        var (licks, broken) = (folder.Licks, folder.Broken);
        var blocks = new List<Block>
        {
            // Only the folder's own name: where it lies is nobody's business on a page.
            new Block.Title(
                UserText.Of(new DirectoryInfo(folder.Directory).Name),
                English.Count(licks.Count, "lick")
                    + (broken.Count == 0 ? "" : $", {English.Count(broken.Count, "file")} that can't be read")
            ),
        };
        if (licks.Count > 0)
        {
            // The title says how many.
            blocks.AddRange(
                Kept.Table(licks)
                    .Blocks.Select(block =>
                        block is Block.Table table ? table with { HasQuietCaption = broken.Count == 0 } : block
                    )
            );
        }

        if (broken.Count > 0)
        {
            blocks.AddRange(Broken.Table(broken).Blocks);
        }

        return new(blocks);
    }

    /// <summary>The chords that a lick is played over, each once, so many of them.</summary>
    public static Words Chords(Lick lick, int most)
    {
        var chords = (lick.Path.Changes?.Chords ?? [])
            .Where(span => span.Start < lick.Path.Beats)
            .Select(static span => span.Chord)
            .OfType<TheoryKit.Theory.Chords.Chord>()
            .Distinct()
            .ToList();
        var shown = Words.Join(" ", chords.Take(most));
        return chords.Count > most ? Words.Join(" ", [shown, "…"]) : shown;
    }

    /// <summary>Why a lick was found.</summary>
    public static Words Reasons(FoundLick found)
    {
        var reasons = Words.Join(
            "; ",
            found
                .Reasons.Take(MostReasons)
                .Select(static reason =>
                    Words.Said((format, naming) => Unbroken(UserText.Of(reason.InWords(format, naming))))
                )
        );
        return found.Reasons.Count > MostReasons ? Words.Join("; ", [reasons, "…"]) : reasons;
    }

    /// <summary>Its tags in one line.</summary>
    public static string Tags(Lick lick) => string.Join(", ", lick.Tags.Select(UserText.Of));

    private static Words Signs(string value) =>
        Words.Join(",", value.Split(',').Select(UserText.Of).Select(ReasonWords.Of));

    private static Cell? Said(string text) => text.Length == 0 ? null : text;

    private static Cell? Shown(Words words) => words.IsEmpty ? null : words;

    private static Cell? Number(double? number) => number?.ToString(CultureInfo.InvariantCulture);

    private static string Percent(double part) =>
        string.Create(CultureInfo.InvariantCulture, $"{Math.Floor((part * 100) + 1e-9)}\u00a0%");

    private static string Unbroken(string reason) => reason.Replace(" %", "\u00a0%", StringComparison.Ordinal);

    /// <summary>How far a lick answers, unless it does in full or its one reason says so.</summary>
    private static Cell? InPart(FoundLick found)
    {
        var part = Percent(found.Score);
        var isSaid = found.Reasons is [FoundReason.Alike only] && Percent(only.Value) == part;
        return found.Score >= 1 || isSaid ? null : (Cell)part;
    }

    private static string Shape(IReadOnlyList<Direction> shape) =>
        shape.Count == 0
            ? "level"
            : string.Join(", then ", shape.Select(static each => each == Direction.Up ? "up" : "down"));

    // The line and the caret of a complaint are for a terminal.
    private static string OneLine(string problem) => problem.Split('\n')[0];
}
