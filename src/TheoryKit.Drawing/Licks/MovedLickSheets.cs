using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Paths;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tab;
using TheoryKit.Drawing.Tunings;
using TheoryKit.Licks.Moves;
using TheoryKit.Licks.Words;
using TheoryKit.Paths;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Drawing.Licks;

/// <summary>The sheet of a lick that was moved, and how what it is made of is described.</summary>
internal static class MovedLickSheets
{
    /// <summary>The most remarks that are said, and the most licks of a sequence that are drawn; the value has them all.</summary>
    private const int MostSaid = 64;

    public static Description<MoveRemark> Remarks { get; } =
        new(
            new("remark", "remarks"),
            static remark => remark.Bar is null ? "The whole lick" : Note(remark),
            [
                new("could not keep", static remark => Words.Said(remark.Loss.Lost)),
                new("instead", static remark => Words.Said(remark.Loss.Instead)),
            ]
        );

    public static Description<MovedTone> Tones { get; } = Described(null);

    /// <summary>The lick before and after, one below the other, what could not be kept, and each note.</summary>
    public static Sheet One(MovedLick moved)
    {
        var blocks = new List<Block>
        {
            new Block.Title(UserText.Of(moved.From.Name), moved.Move is null ? null : Words.Said(moved.Move.InWords)),
        };
        if (Facts(moved).ToList() is { Count: > 0 } facts)
        {
            blocks.Add(new Block.Facts(facts));
        }

        blocks.AddRange(Pictures(moved));
        blocks.Add(
            moved.Remarks.Count > 0
                ? new Block.Group(
                    new Block.Heading("What could not be kept"),
                    new Block.Prose(Sentences(moved, hasTable: true))
                )
                : new Block.Prose(Sentences(moved, hasTable: true))
        );
        if (moved.Tones.Count > 0)
        {
            blocks.Add(LickAnalysisSheets.Table(Described(moved), moved.Tones, "Note by note, at string and fret"));
        }

        var (from, to) = (moved.From.Path.Neck.Tuning, moved.Lick.Path.Neck.Tuning);
        if (from.Strings.Select(static each => each.Start).SequenceEqual(to.Strings.Select(static each => each.Start)))
        {
            // Tunings of one instrument: it may have to be turned up.
            blocks.AddRange(TuningWords.CautionOf(new(from, to)));
        }

        return new(blocks);
    }

    /// <summary>Several moves: the tab of each, and what could not be kept.</summary>
    public static Sheet Several(IEnumerable<MovedLick> licks)
    {
        var all = licks.Take(MostSaid + 1).ToList();
        if (all.Count == 0)
        {
            return new(new Block.Prose("No moved licks."));
        }

        var isOne = all.TrueForAll(each => each.From == all[0].From);
        var isCut = all.Count > MostSaid;
        var count = isCut ? $"the first {MostSaid} moves" : English.Count(all.Count, "move");
        var blocks = new List<Block>
        {
            isOne
                ? new Block.Title(UserText.Of(all[0].From.Name), count)
                : new Block.Title(isCut ? $"The first {MostSaid} moved licks" : English.Count(all.Count, "moved lick")),
        };
        foreach (var (index, moved) in all.Take(MostSaid).Index())
        {
            var name =
                moved.Move is null ? UserText.Of(moved.Lick.Name)
                : isOne ? Words.Said((format, naming) => Printed.Capital(moved.Move.InWords(format, naming)))
                : (Words)$"{UserText.Of(moved.From.Name)} {Words.Said(moved.Move.InWords)}";
            blocks.Add(
                new Block.Group(
                    Tab(moved.Lick.Path, $"{index + 1}. {name}"),
                    new Block.Prose(Sentences(moved, hasTable: false))
                )
            );
        }

        return new(blocks);
    }

    private static Description<MovedTone> Described(MovedLick? moved) =>
        new(
            new("note", "notes"),
            static tone => $"bar {tone.Bar}, {TabWords.Beat((tone.Beat - 1).Reduce())}",
            [
                new("before", tone => Did(tone.FunctionBefore, tone.SoundedBefore, tone.Before, moved?.From.Path)),
                new("now", tone => Did(tone.FunctionAfter, tone.SoundedAfter, tone.After, moved?.Lick.Path)),
                new(
                    "now in",
                    static tone =>
                        tone.IsElsewhereInTime
                            ? $"bar {tone.BarAfter}, {TabWords.Beat((tone.BeatAfter - 1).Reduce())}"
                            : null
                ),
                new(
                    "why",
                    static tone =>
                        tone.Why is null ? null : new Cell(Words.Said(tone.Why.InWords), IsStrong: tone.IsException)
                ),
            ]
        );

    /// <summary>"♭7, F3 at 4:3": what it does, how it sounds, its string and fret; "dead note on string 2".</summary>
    private static Cell Did(Degree? function, Pitch sounded, PathNote note, Path? path)
    {
        if (note.IsDead)
        {
            return new(TabNote.Dead(note));
        }

        var at = (Words)$"{TabNote.Sounded(sounded, note)}\u00a0at\u00a0{note.Position}";
        return function is { } degree
            ? new((Words)$"{degree}, {at}", path is null ? null : TabNote.Role(path, note))
            : new(at);
    }

    private static IEnumerable<Fact> Facts(MovedLick moved)
    {
        var (before, now) = (moved.From.Path, moved.Lick.Path);
        if (before.Neck.Tuning != now.Neck.Tuning)
        {
            var (was, isNow) = (TuningWords.Named(before.Neck.Tuning), TuningWords.Named(now.Neck.Tuning));
            yield return new("tuning", (Words)$"{isNow}, before {was}");
        }

        if (moved.Tones.Any(static tone => !tone.Before.IsDead))
        {
            var (was, isNow) = (Frets(before), Frets(now));
            yield return new("frets", was == isNow ? was : $"{isNow}, before {was}");
        }

        var functions = moved.Tones.Where(static tone => tone.FunctionBefore is not null).ToList();
        if (functions.Count > 0)
        {
            var kept = functions.Count(static tone => tone.DoesTheSame);
            yield return new("same function", $"{kept} of {English.Count(functions.Count, "note")}");
        }
    }

    /// <summary>"5 to 9", wherever dead notes are played.</summary>
    private static string Frets(Path path)
    {
        var frets = path.Notes.Where(static note => !note.IsDead).Select(static note => note.Position.Fret).ToList();
        return frets.Count == 0 ? "none"
            : frets.Min() == frets.Max() ? $"{frets.Min()}"
            : $"{frets.Min()} to {frets.Max()}";
    }

    /// <summary>Both tabs on one time axis; where the time signatures differ, each by itself.</summary>
    private static IEnumerable<Block> Pictures(MovedLick moved) =>
        moved.From.Path.Time == moved.Lick.Path.Time
            ? [ComparedLicks.Picture(new(moved))]
            : [Tab(moved.From.Path, "Before"), Tab(moved.Lick.Path, "Now")];

    private static Block.Picture Tab(Path path, Words title) =>
        new(
            (context, naming) =>
                new TabDrawingRenderer(naming).Html(path.Tab() with { Title = title.Printed(naming) }, context),
            naming => new TabDrawingRenderer(naming).Text(path.Tab() with { Title = title.Plain(naming) })
        );

    /// <summary>What could not be kept, a sentence for each remark on a line of its own.</summary>
    private static Words Sentences(MovedLick moved, bool hasTable)
    {
        var said = moved.Remarks.Take(MostSaid).Select(Sentence).ToList();
        if (moved.Remarks.Count > MostSaid)
        {
            said.Add($"And {moved.Remarks.Count - MostSaid} more.");
        }

        var others = moved.Exceptions.Count();
        if (others > 0)
        {
            said.Add(
                others == 1
                    ? $"1 note could not simply keep its function{(hasTable ? "; it stands out below" : "")}."
                    : $"{others} notes could not simply keep their function{(hasTable ? "; they stand out below" : "")}."
            );
        }

        return said.Count == 0 ? "Nothing was lost." : Words.Join("\n", said);
    }

    private static Words Sentence(MoveRemark remark) =>
        $"{(remark.Bar is null ? "The lick" : Note(remark))} could not keep {Words.Said(remark.Loss.Lost)}. Instead: {Words.Said(remark.Loss.Instead)}.";

    /// <summary>"E♭4 in bar 2, beat 2 and 1/2".</summary>
    private static Words Note(MoveRemark remark)
    {
        var beat = remark.Beat is { } at ? $", {TabWords.Beat((at - 1).Reduce())}" : "";
        return remark.Pitch is { } pitch ? (Words)$"{pitch} in bar {remark.Bar}{beat}"
            : remark.Beat is not null ? (Words)$"The dead note in bar {remark.Bar}{beat}"
            : (Words)$"What is in bar {remark.Bar}";
    }
}
