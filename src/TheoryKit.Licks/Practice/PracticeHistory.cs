using System.Text;
using TheoryKit.Values;

namespace TheoryKit.Licks.Practice;

/// <summary>
/// What a practice log says: every entry in order of time, lick by lick, and the lines that are not understood. Equal when the texts are.
/// </summary>
/// <remarks>
/// A line is a <see cref="Practised"/> or a <see cref="LickRenamed"/>; empty lines and those that begin with # say nothing. The order of
/// lines does not matter from day to day, so files of two places can be merged; on one day a line without a time counts as of the time of
/// the line before it. Written by hand or merged, a line that is not understood is listed in <see cref="Broken"/> and the rest counts.
/// </remarks>
[EqualBy(nameof(text))]
public sealed partial class PracticeHistory : IEquatable<PracticeHistory>
{
    private readonly string text;
    private readonly Dictionary<string, LickHistory> byName = new(StringComparer.Ordinal);

    private PracticeHistory(string text)
    {
        this.text = text;
        var lines = new List<(DateOnly Date, TimeOnly Time, object Entry)>();
        var broken = new List<BrokenLogLine>();
        var times = new Dictionary<DateOnly, TimeOnly>();
        var (number, at) = (0, 0);
        while (at < text.Length)
        {
            var end = text.IndexOf('\n', at);
            end = end < 0 ? text.Length : end;
            var line = text.AsSpan(at, end - at).TrimEnd('\r');
            (number, at) = (number + 1, end + 1);
            if (number == 1 && line is ['\uFEFF', ..])
            {
                line = line[1..];
            }

            if (line.IsWhiteSpace() || line.TrimStart() is ['#', ..])
            {
                continue;
            }

            var cursor = new TextCursor(line);
            cursor.SkipSpaces();
            if (IsText(ref cursor, line) && ReadLine(ref cursor, out var date, out var time, out var entry))
            {
                var moment = time ?? times.GetValueOrDefault(date);
                times[date] = moment;
                lines.Add((date, moment, entry!));
            }
            else
            {
                broken.Add(
                    new(
                        number,
                        line.ToString(),
                        PlacedFormatException.WithCaret(
                            Practised.What,
                            number,
                            line,
                            cursor.ErrorPosition + 1,
                            1,
                            cursor.Expected!
                        )
                    )
                );
            }
        }

        // Stable: of the same moment as they stand.
        var ordered = lines.OrderBy(static line => line.Date).ThenBy(static line => line.Time).ToList();
        Entries = ordered.Select(static line => line.Entry).OfType<Practised>().ToSequence();
        Renames = ordered.Select(static line => line.Entry).OfType<LickRenamed>().ToSequence();
        Broken = broken.ToSequence();
        var open = new Dictionary<string, List<(int Order, Practised Entry)>>(StringComparer.Ordinal);
        for (var order = 0; order < ordered.Count; order++)
        {
            Follow(open, order, ordered[order].Entry);
        }

        foreach (var (name, entries) in open)
        {
            byName[name] = new(name, entries.OrderBy(static each => each.Order).Select(static each => each.Entry));
        }

        Licks = byName.Values.OrderBy(static each => each.Name, StringComparer.Ordinal).ToSequence();
    }

    /// <summary>Nothing practised.</summary>
    public static PracticeHistory Empty { get; } = new("");

    /// <summary>Every entry in order of time, with the names that the licks had then.</summary>
    public IReadOnlyList<Practised> Entries { get; }

    /// <summary>The new names in order of time.</summary>
    public IReadOnlyList<LickRenamed> Renames { get; }

    /// <summary>Lines that are not understood, in order.</summary>
    public IReadOnlyList<BrokenLogLine> Broken { get; }

    /// <summary>Lick by lick, under the names that they have now, in order of these.</summary>
    public IReadOnlyList<LickHistory> Licks { get; }

    /// <summary>Reads the text of a log; any text is one, and what is not understood stands in <see cref="Broken"/>.</summary>
    public static PracticeHistory Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length == 0 ? Empty : new(text);
    }

    /// <summary>These entries.</summary>
    public static PracticeHistory Of(params IEnumerable<Practised> entries) =>
        Read(string.Concat(Check.Items(entries).Select(static entry => $"{entry}\n")));

    /// <summary>The history of a lick by its present name; null if it was never practised.</summary>
    public LickHistory? Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return byName.GetValueOrDefault(name);
    }

    /// <summary>The history with an entry more at its end.</summary>
    public PracticeHistory With(Practised entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return new($"{Ended(text)}{entry}\n");
    }

    /// <summary>The history with a new name more at its end.</summary>
    public PracticeHistory With(LickRenamed renamed)
    {
        ArgumentNullException.ThrowIfNull(renamed);
        return new($"{Ended(text)}{renamed}\n");
    }

    /// <summary>The history up to a day, that day with it.</summary>
    public PracticeHistory Until(DateOnly day)
    {
        if ((Entries.Count == 0 || Entries[^1].Date <= day) && (Renames.Count == 0 || Renames[^1].Date <= day))
        {
            return this;
        }

        var kept = new StringBuilder();
        foreach (var line in text.Split('\n'))
        {
            var cursor = new TextCursor(line);
            cursor.SkipSpaces();
            if (ReadLine(ref cursor, out var date, out _, out _) && date <= day)
            {
                kept.Append(line).Append('\n');
            }
        }

        return new(kept.ToString());
    }

    /// <summary>On how many days there was practice up to a day.</summary>
    public PracticeCount Count(DateOnly today) => PracticeCount.Of(today, Entries.Select(static each => each.Date));

    /// <summary>What to practise on a day, of the licks of a folder.</summary>
    /// <param name="today">The day.</param>
    /// <param name="licks">The licks, in the order in which new ones are begun; of those that share a name the first.</param>
    /// <param name="options">How much is put on one day.</param>
    public PracticeDay Due(DateOnly today, IEnumerable<Lick> licks, PracticeOptions? options = null)
    {
        options ??= new();
        var past = Until(today);
        var folder = Check.Items(licks).DistinctBy(static lick => lick.Name, StringComparer.Ordinal).ToList();
        var known = folder.Select(lick => (Lick: lick, History: past.Find(lick.Name))).ToList();
        var due = known
            .Where(each => each.History is { } history && history.Last.Next <= today)
            .Select(each => new DueLick(
                each.Lick,
                each.History,
                today.DayNumber - each.History!.Last.Next.DayNumber,
                TempoAdvice.Next(each.History, each.Lick.Tempo)
            ))
            .OrderByDescending(static each => (double)each.DaysLate / each.History!.Last.Gap)
            .ThenBy(static each => each.History!.Last.Outcome.Rank)
            .ThenBy(static each => each.Name, StringComparer.Ordinal)
            .ToList();
        var begun = past.Licks.Select(static each => each.Days[0].Date).ToList();
        var room = Math.Min(
            options.Most - due.Count,
            Math.Min(
                options.NewADay - begun.Count(day => day == today),
                options.NewAWeek - begun.Count(day => day.DayNumber > today.DayNumber - 7)
            )
        );
        var unknown = known.Where(static each => each.History is null).Select(static each => each.Lick).ToList();
        var fresh = unknown
            .Take(Math.Max(0, room))
            .Select(static lick => new DueLick(lick, null, 0, TempoAdvice.Next(null, lick.Tempo)))
            .ToList();
        var names = folder.Select(static lick => lick.Name).ToHashSet(StringComparer.Ordinal);
        return new()
        {
            Date = today,
            Licks = [.. due.Take(options.Most), .. fresh],
            Waiting = Math.Max(0, due.Count - options.Most),
            NotBegun = unknown.Count - fresh.Count,
            Done = [.. known.Where(each => each.History?.Last.Date == today).Select(static each => each.Lick.Name)],
            Gone = [.. past.Licks.Select(static each => each.Name).Where(name => !names.Contains(name))],
            Next = known
                .Select(static each => each.History?.Last.Next)
                .Where(next => next > today)
                .DefaultIfEmpty()
                .Min(),
            Count = past.Count(today),
        };
    }

    /// <summary>The text of the log.</summary>
    public override string ToString() => text;

    private static string Ended(string text) => text.Length == 0 || text[^1] == '\n' ? text : text + "\n";

    /// <summary>Whether a line has no byte that was not UTF-8, for which <see cref="PracticeLog.Decode"/> leaves half a character.</summary>
    private static bool IsText(ref TextCursor cursor, ReadOnlySpan<char> line)
    {
        for (var at = 0; at < line.Length; at++)
        {
            if (char.IsHighSurrogate(line[at]) && at + 1 < line.Length && char.IsLowSurrogate(line[at + 1]))
            {
                at++;
            }
            else if (char.IsSurrogate(line[at]))
            {
                return cursor.Fail(at, "a character of UTF-8; save the log as UTF-8");
            }
        }

        return true;
    }

    private static bool ReadLine(ref TextCursor cursor, out DateOnly date, out TimeOnly? time, out object? entry)
    {
        (time, entry) = (null, null);
        var start = cursor.Position;
        if (Practised.Read(ref cursor, out var practised))
        {
            (date, time, entry) = (practised.Date, practised.Time, practised);
            return true;
        }

        // The other kind of line, if it gets beyond the old name.
        var (expected, position) = (cursor.Expected, cursor.ErrorPosition);
        cursor.Forgive();
        cursor.Position = start;
        if (LickRenamed.Read(ref cursor, out var renamed))
        {
            cursor.SkipSpaces();
            if (cursor.AtEnd || cursor.Fail("the end of the line"))
            {
                (date, entry) = (renamed.Date, renamed);
                return true;
            }
        }

        if (cursor.ErrorPosition <= position)
        {
            cursor.Forgive();
            cursor.Fail(position, expected!);
        }

        date = default;
        return false;
    }

    private static void Follow(Dictionary<string, List<(int Order, Practised Entry)>> open, int order, object entry)
    {
        switch (entry)
        {
            case Practised practised:
                if (!open.TryGetValue(practised.Lick, out var list))
                {
                    open[practised.Lick] = list = [];
                }

                list.Add((order, practised));
                break;
            case LickRenamed renamed when open.Remove(renamed.From, out var before):
                if (open.TryGetValue(renamed.To, out var there))
                {
                    // The shorter into the longer, so that many new names stay quick.
                    var (into, from) = there.Count >= before.Count ? (there, before) : (before, there);
                    into.AddRange(from);
                    open[renamed.To] = into;
                }
                else
                {
                    open[renamed.To] = before;
                }

                break;
        }
    }
}
