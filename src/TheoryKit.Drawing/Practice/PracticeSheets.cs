using System.Globalization;
using TheoryKit.Drawing.Licks;
using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tab;
using TheoryKit.Licks;
using TheoryKit.Licks.Practice;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Practice;

/// <summary>What to practise today, and how practice and its log are described.</summary>
internal static class PracticeSheets
{
    /// <summary>A line to write on: how fast, and how it went.</summary>
    private static readonly string ToWrite =
        $"Played at ________ · underline: {string.Join(" · ", Outcome.Known.Select(Unbroken))}";

    private const double Width = 250; // mm, of which paper takes seven tenths

    // On paper tab may be smaller than on the screen, so that a day stays on a page.
    private const string Css = "@media print{.tk .tk-day{zoom:.7}.tk .tk-day .tk-neck{margin:.2em 0}}";

    public static Description<Outcome> Outcomes { get; } =
        new(
            new("way it went", "ways it went"),
            static outcome => outcome.Name,
            [
                new("comes back at first (days)", static outcome => outcome.FirstGap, IsNumber: true),
                new("later gaps", static outcome => $"× {Number(outcome.Gap)}", IsNumber: true),
                new("next tempo", static outcome => Percent(outcome.Tempo), IsNumber: true),
            ]
        );

    public static Description<Practised> Entries { get; } =
        new(
            new("lick practised", "times practised"),
            static entry => UserText.Of(entry.Lick),
            [
                new("day", static entry => Day(entry.Date)),
                new("time", static entry => entry.Time?.ToString("HH:mm", CultureInfo.InvariantCulture)),
                new("tempo", static entry => Number(entry.Tempo), IsNumber: true),
                new("how it went", static entry => entry.Outcome.Name),
                new("note", static entry => entry.Note.Length > 0 ? UserText.Of(entry.Note) : null),
            ]
        )
        {
            // One lick may have been practised several times.
            Counted = static (count, _) => $"Practised {English.Count(count, "time")}",
        };

    public static Description<LickRenamed> Renames { get; } =
        new(
            new("old name", "old names"),
            static renamed => UserText.Of(renamed.From),
            [
                new("is now", static renamed => UserText.Of(renamed.To)),
                new("since", static renamed => Day(renamed.Date)),
            ]
        );

    public static Description<BrokenLogLine> Broken { get; } =
        new(
            new("line not understood", "lines not understood"),
            static broken => $"line {broken.Line.ToString(CultureInfo.InvariantCulture)}",
            [new("text", static broken => UserText.Of(broken.Text.Trim()))]
        )
        {
            More = static broken => [Error(broken)],
        };

    public static Description<SpacedDay> Days { get; } =
        new(
            new("day", "days"),
            static day => Day(day.Date),
            [
                new("how it went at first", static day => day.Outcome.Name),
                new("days to the next time", static day => day.Gap, IsNumber: true),
                new("due again", static day => Day(day.Next)),
            ]
        );

    public static Description<LickHistory> Histories { get; } =
        new(
            new("lick", "licks"),
            static lick => UserText.Of(lick.Name),
            [
                new("days practised", static lick => lick.Days.Count, IsNumber: true),
                new("last", static lick => Day(lick.Last.Date)),
                new("how it went at first", static lick => lick.Last.Outcome.Name),
                new("fastest clean tempo", static lick => Number(lick.FastestClean), IsNumber: true),
                new("due again", static lick => Day(lick.Last.Next)),
            ]
        )
        {
            More = static lick => Entries.Table(lick.Entries).Blocks,
        };

    public static Description<DueLick> Due { get; } =
        new(
            new("lick to practise", "licks to practise"),
            static due => UserText.Of(due.Name),
            [
                new("tempo to try", static due => Number(due.Tempo), IsNumber: true),
                new("kept at", static due => Number(due.Lick.Tempo), IsNumber: true),
                new("last time", static due => due.History is { } past ? Last(past) : "new"),
                new("days late", static due => due.IsNew ? null : due.DaysLate, IsNumber: true),
            ]
        )
        {
            More = static due => [Tab(due.Lick, UserText.Of(due.Name)), new Block.Prose(Cautions.Hands)],
        };

    public static Description<PracticeOptions> Options { get; } =
        new(
            new("plan of practice", "plans of practice"),
            static options => English.Count(options.Most, "lick") + " a day",
            [
                new("begun on one day", static options => options.NewADay, IsNumber: true),
                new("begun in seven days", static options => options.NewAWeek, IsNumber: true),
            ]
        );

    public static Description<PracticeCount> Counts { get; } =
        new(
            new("count of days", "counts of days"),
            static count => $"Up to {Day(count.Date)}",
            [
                new("days this week", static count => count.ThisWeek, IsNumber: true),
                new("days this month", static count => count.ThisMonth, IsNumber: true),
                new("days in all", static count => count.InAll, IsNumber: true),
                new("longest run of days", static count => count.LongestRun, IsNumber: true),
            ]
        );

    /// <summary>What to practise on a day: each lick as tab with its tempo and a line to write on, the caution.</summary>
    public static Sheet Today(PracticeDay day)
    {
        var (due, fresh) = (day.Licks.Count(static each => !each.IsNew), day.Licks.Count(static each => each.IsNew));
        var blocks = new List<Block>
        {
            new Block.Title(
                day.Date.ToString("dddd, d MMMM yyyy", CultureInfo.InvariantCulture),
                day.Licks.Count == 0 ? "nothing is due"
                    : due == 0 ? $"{fresh} new"
                    : English.Count(due, "lick") + " due" + (fresh > 0 ? $", {fresh} new" : "")
            ),
        };
        blocks.Add(new Block.Prose(Begun(string.Join(" · ", About(day)))));
        for (var index = 0; index < day.Licks.Count; index++)
        {
            var each = day.Licks[index];
            var title = string.Create(CultureInfo.InvariantCulture, $"{index + 1}. {UserText.Of(each.Name)}");
            blocks.Add(
                new Block.Group(
                    Small(Tab(each.Lick, title), isFirst: index == 0),
                    new Block.Prose(About(each)),
                    new Block.Prose(ToWrite)
                )
            );
        }

        if (day.Licks.Count > 0)
        {
            blocks.Add(new Block.Prose(Cautions.Hands));
        }

        return new(blocks);
    }

    /// <summary>A log as it stands in its file.</summary>
    public static Sheet Log(PracticeLog log)
    {
        var name = UserText.Of(System.IO.Path.GetFileName(log.Path));
        try
        {
            return new([new Block.Title(name), .. History(log.Read()).Blocks.Skip(1)]);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return new(new Block.Title(name), new Block.Prose("This log can't be read now."));
        }
    }

    public static Sheet History(PracticeHistory history)
    {
        var blocks = new List<Block> { new Block.Title("Practice log") };
        if (history.Entries is [var first, ..])
        {
            var last = history.Entries[^1];
            var days = history.Count(last.Date);
            blocks.Add(
                new Block.Facts([
                    new("entries", history.Entries.Count),
                    new("days", days.InAll),
                    new("from", Day(first.Date)),
                    new("to", Day(last.Date)),
                    new("longest run", English.Count(days.LongestRun, "day")),
                ])
            );
            blocks.AddRange(Histories.Table(history.Licks).Blocks);
        }
        else
        {
            blocks.Add(new Block.Prose("Nothing practised yet."));
        }

        if (history.Renames.Count > 0)
        {
            blocks.AddRange(Renames.Table(history.Renames).Blocks);
        }

        if (history.Broken.Count > 0)
        {
            blocks.Add(new Block.Heading(English.Count(history.Broken.Count, "line") + " not understood"));
            blocks.AddRange(history.Broken.Select(Error));
        }

        return new(blocks);
    }

    private static IEnumerable<string> About(PracticeDay day)
    {
        if (day.Done.Count > 0)
        {
            yield return $"practised today: {English.List(day.Done.Select(UserText.Of))}";
        }

        if (day.Waiting > 0)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"{day.Waiting} more are due and can wait");
        }

        if (day.NotBegun > 0)
        {
            yield return $"{English.Count(day.NotBegun, "lick")} not begun yet";
        }

        if (day is { Licks.Count: 0, Next: { } next })
        {
            yield return $"due next on {Day(next)}";
        }

        if (day.Gone.Count > 0)
        {
            yield return $"in the log, not in the folder: {English.List(day.Gone.Select(UserText.Of))}";
        }

        yield return string.Create(
            CultureInfo.InvariantCulture,
            $"days practised: {day.Count.ThisWeek} this week, {day.Count.ThisMonth} this month, the longest run {English.Count(day.Count.LongestRun, "day")}"
        );
    }

    private static string Begun(string sentence) => char.ToUpperInvariant(sentence[0]) + sentence[1..];

    /// <summary>One line, so that the sheet of a day stays on a page.</summary>
    private static string About(DueLick due)
    {
        var said = new List<string>();
        if (due.Tempo is { } tempo)
        {
            said.Add($"Try at {Number(tempo)}{(due.Lick.Tempo is { } goal ? $" of {Number(goal)}" : "")}");
        }

        said.Add(due.History is { } past ? $"last time {Last(past)}" : "new: slowly, a bar at a time");
        if (due.History?.Entries[^1].Note is { Length: > 0 } note)
        {
            said.Add($"noted: {UserText.Of(note)}");
        }

        if (due.Lick.Tune.Length > 0)
        {
            said.Add($"from {UserText.Of(due.Lick.Tune)}");
        }

        return string.Join(" · ", said);
    }

    /// <summary>"24 November 2026 at 92: clean".</summary>
    private static string Last(LickHistory past)
    {
        var last = past.Entries[^1];
        return $"{Day(last.Date)}{(last.Tempo is { } tempo ? $" at {Number(tempo)}" : "")}: {last.Outcome}";
    }

    private static Block.Picture Tab(Lick lick, string title)
    {
        return new(
            (context, naming) => new TabDrawingRenderer(naming).Html(Drawing(), context),
            naming => new TabDrawingRenderer(naming).Text(Drawing())
        );

        TabDrawing Drawing() => new(lick.Path) { Title = title, Width = Width };
    }

    private static Block.Picture Small(Block.Picture tab, bool isFirst) =>
        new(
            (context, naming) =>
            {
                var html = new HtmlWriter().Open("div", "tk-day");
                return (isFirst ? html.Style(Css) : html).Raw(tab.Html(context, naming)).Close().ToString();
            },
            tab.Text
        );

    private static Block.Picture Error(BrokenLogLine broken) =>
        new(
            (_, _) =>
                new HtmlWriter()
                    .Open("pre", "tk-error")
                    .Attribute("tabindex", "0")
                    .Attribute("style", "overflow-x:auto;margin:.4em 0;font-size:.9em")
                    .Text(Message(broken))
                    .Close()
                    .ToString(),
            _ => Message(broken)
        );

    private static string Message(BrokenLogLine broken) =>
        string.Join('\n', broken.Error.Message.Split('\n').Select(static line => UserText.Of(line.TrimEnd())));

    private static string Unbroken(Outcome outcome) => outcome.Name.Replace(' ', '\u00a0');

    private static string Day(DateOnly date) => date.ToString("d\u00a0MMMM\u00a0yyyy", CultureInfo.InvariantCulture);

    private static string? Number(double? number) => number?.ToString("0.##", CultureInfo.InvariantCulture);

    private static string Percent(double factor) =>
        $"{(factor < 1 ? "−" : "+")}{Number(Math.Abs(Math.Round(100 * (factor - 1))))} %";
}
