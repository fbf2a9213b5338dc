using TheoryKit.Licks.Practice;
using TheoryKit.Tests;

namespace TheoryKit.Licks.Tests.Practice;

public class PracticeHistoryTests
{
    private static readonly string[] Names = ["Lick 1", "Lick 2", "Lick 3", "Lick 4", "Lick 5"];

    private static readonly Lick[] Folder = [.. Names.Select(static name => LogGens.Lick(name, 120))];

    [Fact]
    public void ALogReadsBackWhateverStandsInIt() =>
        Gen.OneOf(
                LogGens.Practised.Select(static entry => (Line: entry.ToString(), Kind: 'p')),
                LogGens.Renamed.Select(static renamed => (Line: renamed.ToString(), Kind: 'r')),
                AnyOf.Any<(string Line, char Kind)>([
                    ("", ' '),
                    ("# a remark", ' '),
                    ("<<<<<<< ours", 'x'),
                    ("2026-11-24 \"x\": superb", 'x'),
                    ("2026-11-2", 'x'),
                ])
            )
            .Array[0, 30]
            .Select(AnyOf.Any<string>(["\n", "\r\n"]), Gen.Bool)
            .Sample(
                static (lines, ending, isEnded) =>
                {
                    var text = string.Join(ending, lines.Select(static line => line.Line)) + (isEnded ? ending : "");
                    var history = PracticeHistory.Read(text);
                    Assert.Equal(text, history.ToString());
                    Assert.Equal(lines.Count(static line => line.Kind == 'p'), history.Entries.Count);
                    Assert.Equal(lines.Count(static line => line.Kind == 'r'), history.Renames.Count);
                    var broken = lines
                        .Select(static (line, index) => (line, Number: index + 1))
                        .Where(static each => each.line.Kind == 'x');
                    Assert.Equal(
                        broken.Select(static each => (each.Number, each.line.Line)),
                        history.Broken.Select(static each => (each.Line, each.Text))
                    );
                    Assert.All(history.Broken, static each => Assert.Equal(each.Line, each.Error.Line));
                },
                iter: 500
            );

    [Fact]
    public void AnyTextIsALog()
    {
        var random = new Random(20_26);
        const string Seed =
            "2026-11-24 18:30 \"Low tide turn\" at 96: clean, flat\n2026-11-25 \"Low\" is now \"Tide\"\n# x\n";
        for (var count = 0; count < 20_000; count++)
        {
            var text = new System.Text.StringBuilder(Seed);
            for (var changes = random.Next(1, 6); changes > 0; changes--)
            {
                var at = random.Next(text.Length);
                _ = random.Next(3) switch
                {
                    0 => text.Remove(at, 1),
                    1 => text.Insert(at, (char)random.Next(0x300)),
                    _ => text.Insert(at, "\n\0\uD800\"\\:,#2 "[random.Next(10)]),
                };
            }

            var history = PracticeHistory.Read(text.ToString());
            var lines = text.ToString()
                .Split('\n')
                .Count(static line => !string.IsNullOrWhiteSpace(line) && !line.TrimStart().StartsWith('#'));
            Assert.Equal(lines, history.Entries.Count + history.Renames.Count + history.Broken.Count);
            _ = history.Due(LogGens.First, Folder);
        }
    }

    [Fact]
    public void ABrokenLineShowsACaretUnderThePlace()
    {
        var broken = Assert.Single(PracticeHistory.Read("# log\n2026-11-24 \"x\": superb\n").Broken);
        Assert.Equal((2, 17), (broken.Error.Line, broken.Error.Column));
        Assert.Equal(
            """
            This is not a line of a practice log: in line 2, at character 17, expected how it went: fell apart, stumbled, clean or at ease.
              2026-11-24 "x": superb
                              ^
            """.ReplaceLineEndings("\n"),
            broken.Error.Message
        );
    }

    [Fact]
    public void TheOrderOfTheLinesDoesNotMatterWhereTheyHaveTimes() =>
        LogGens
            .Year.Select(Gen.Int[0, int.MaxValue])
            .Sample(
                static (entries, seed) =>
                {
                    var timed = entries
                        .Select(static (entry, index) => entry with { Time = new TimeOnly(index / 60, index % 60) })
                        .ToArray();
                    var history = PracticeHistory.Of(timed);
                    new Random(seed).Shuffle(timed);
                    var shuffled = PracticeHistory.Of(timed);
                    Assert.Equal(history.Entries, shuffled.Entries);
                    Assert.Equal(history.Licks, shuffled.Licks);
                },
                iter: 200
            );

    [Fact]
    public void NothingIsDueBeforeItsDayAndEverythingFromThenOn() =>
        LogGens
            .Year.Select(Gen.Int[0, 400])
            .Sample(
                static (entries, after) =>
                {
                    var today = LogGens.First.AddDays(after);
                    var history = PracticeHistory.Of(entries);
                    var day = history.Due(today, Folder, new() { Most = 100 });
                    var past = PracticeHistory.Of(entries.Where(entry => entry.Date <= today));
                    Assert.Equal(
                        past.Licks.Where(lick => lick.Last.Next <= today).Select(static lick => lick.Name),
                        day.Licks.Where(static each => !each.IsNew)
                            .Select(static each => each.Name)
                            .Order(StringComparer.Ordinal)
                    );
                    Assert.True(day.Next is null || day.Next > today);
                    Assert.Equal(day, history.Due(today, Folder, new() { Most = 100 }));
                }
            );

    [Fact]
    public void WhatIsLatestForItsGapComesFirst() =>
        LogGens
            .Year.Select(Gen.Int[0, 400])
            .Sample(
                static (entries, after) =>
                {
                    var due = PracticeHistory
                        .Of(entries)
                        .Due(LogGens.First.AddDays(after), Folder, new() { NewADay = 0 })
                        .Licks;
                    foreach (var (first, next) in due.Zip(due.Skip(1)))
                    {
                        Assert.True(
                            (long)first.DaysLate * next.History!.Last.Gap
                                >= (long)next.DaysLate * first.History!.Last.Gap
                        );
                    }
                }
            );

    /// <summary>A year played through day by day with counters in place of dates, against the rule as the library computes it.</summary>
    [Fact]
    public void AYearGoesAsWhenCountedDayByDay() =>
        Gen.Int[0, int.MaxValue]
            .Sample(
                static seed =>
                {
                    var random = new Random(seed);
                    var counters = new Dictionary<string, (int Gap, int Since)>();
                    var started = new Queue<int>();
                    var history = PracticeHistory.Empty;
                    for (var day = 0; day < 365; day++)
                    {
                        var today = LogGens.First.AddDays(day);
                        foreach (var (name, (gap, since)) in counters.ToList())
                        {
                            counters[name] = (gap, since + 1);
                        }

                        var due = counters.Where(static each => each.Value.Since >= each.Value.Gap).Select(e => e.Key);
                        while (started.TryPeek(out var begun) && begun <= day - 7)
                        {
                            started.Dequeue();
                        }

                        var unknown = Names.Where(name => !counters.ContainsKey(name)).ToList();
                        var fresh = started.Count < 3 && due.Count() < 6 ? unknown.Take(1).ToList() : [];
                        var sheet = history.Due(today, Folder);
                        Assert.Equal(
                            due.Order(StringComparer.Ordinal).Concat(fresh),
                            sheet
                                .Licks.Where(static each => !each.IsNew)
                                .Select(static each => each.Name)
                                .Order(StringComparer.Ordinal)
                                .Concat(sheet.Licks.Where(static each => each.IsNew).Select(static each => each.Name))
                        );

                        // Some days are free, on some only a part is played, on some more than was asked.
                        foreach (var name in Names.Where(name => random.Next(3) > 0 && day % 5 != 3))
                        {
                            if (!sheet.Licks.Any(each => each.Name == name) && random.Next(8) > 0)
                            {
                                continue;
                            }

                            var outcome = Outcome.Known[random.Next(4)];
                            history = history.With(
                                new Practised
                                {
                                    Date = today,
                                    Lick = name,
                                    Outcome = outcome,
                                }
                            );
                            if (!counters.TryGetValue(name, out var was))
                            {
                                started.Enqueue(day);
                                counters[name] = (
                                    outcome.Name switch
                                    {
                                        "clean" => 2,
                                        "at ease" => 4,
                                        _ => 1,
                                    },
                                    0
                                );
                                continue;
                            }

                            var passed = was.Since > 2 * was.Gap ? 2 * was.Gap : was.Since;
                            var gap = outcome.Name switch
                            {
                                "fell apart" => was.Gap / 4,
                                "stumbled" => was.Gap / 2,
                                "clean" => passed + passed,
                                _ => passed + passed + passed,
                            };
                            gap = outcome.IsClean && gap < was.Gap ? was.Gap : gap;
                            counters[name] = (
                                gap < 1 ? 1
                                : gap > 120 ? 120
                                : gap,
                                0
                            );
                        }
                    }
                },
                iter: 20
            );

    [Fact]
    public void NewLicksComeSlowlyInTheOrderOfTheFolder()
    {
        var (history, begun) = (PracticeHistory.Empty, new List<int>());
        for (var day = 0; begun.Count < Names.Length; day++)
        {
            var today = LogGens.First.AddDays(day);
            var fresh = history.Due(today, Folder).Licks.Where(static each => each.IsNew).ToList();
            Assert.InRange(fresh.Count, 0, 1);
            foreach (var lick in fresh)
            {
                Assert.Equal(Names[begun.Count], lick.Name);
                Assert.Equal(72, lick.Tempo);
                begun.Add(day);
                history = history.With(
                    new Practised
                    {
                        Date = today,
                        Lick = lick.Name,
                        Outcome = Outcome.Clean,
                    }
                );
                Assert.DoesNotContain(history.Due(today, Folder).Licks, static each => each.IsNew);
            }
        }

        Assert.Equal([0, 1, 2, 7, 8], begun);
    }

    [Fact]
    public void MoreThanADayHoldsWaits()
    {
        var many = Enumerable.Range(1, 20).Select(static number => LogGens.Lick($"Lick {number:00}")).ToList();
        var history = PracticeHistory.Of(
            many.Select(static lick => new Practised
            {
                Date = LogGens.First,
                Lick = lick.Name,
                Outcome = Outcome.Stumbled,
            })
        );
        var day = history.Due(LogGens.First.AddDays(1), many);
        Assert.Equal((6, 14, 0), (day.Licks.Count, day.Waiting, day.NotBegun));
        Assert.Equal(many.Take(6).Select(static lick => lick.Name), day.Licks.Select(static each => each.Name));
    }

    [Fact]
    public void ALickKeepsItsPastUnderANewNameAndADeletedOneIsOnlyMissing()
    {
        var history = PracticeHistory.Read(
            """
            2026-01-01 "Old": clean
            2026-01-03 "Old" at 90: clean
            2026-01-04 "Old" is now "New"
            2026-01-07 "New" at 94: clean
            2026-01-08 "Old": fell apart
            2026-01-08 "Gone": clean
            """
        );
        Assert.Equal(3, history.Find("New")!.Entries.Count);
        Assert.Equal(8, history.Find("New")!.Last.Gap);
        Assert.Single(history.Find("Old")!.Entries);
        var day = history.Due(new(2026, 1, 15), [LogGens.Lick("New", 96)]);
        Assert.Equal(["Gone", "Old"], day.Gone);
        Assert.Equal(("New", 96), (Assert.Single(day.Licks).Name, day.Licks[0].Tempo));
        Assert.Empty(history.Due(new(2026, 1, 14), [LogGens.Lick("New", 96)]).Licks);
    }

    [Fact]
    public void NamesThatGoRoundAreFollowed()
    {
        var history = PracticeHistory.Read(
            """
            2026-01-01 "A": clean
            2026-01-01 "B": stumbled
            2026-01-02 "A" is now "C"
            2026-01-02 "B" is now "A"
            2026-01-02 "C" is now "B"
            """
        );
        Assert.Equal(Outcome.Clean, history.Find("B")!.Last.Outcome);
        Assert.Equal(Outcome.Stumbled, history.Find("A")!.Last.Outcome);
        Assert.Null(history.Find("C"));
    }

    [Fact]
    public void WhatWasPractisedTodayIsDoneAndWhatLiesAheadDoesNotCount()
    {
        var history = PracticeHistory.Read(
            "2026-01-01 \"Lick 1\": stumbled\n2026-01-02 \"Lick 1\": clean\n2062-01-01 \"Lick 2\": clean\n"
        );
        var day = history.Due(new(2026, 1, 2), Folder);
        Assert.Equal(["Lick 1"], day.Done);
        Assert.Equal(["Lick 2"], day.Licks.Select(static each => each.Name));
        Assert.Equal((2, 2, 2, 2), (day.Count.ThisWeek, day.Count.ThisMonth, day.Count.InAll, day.Count.LongestRun));
        Assert.Equal(new DateOnly(2026, 1, 4), day.Next);
    }

    [Fact]
    public void TheDaysAreCountedAsOnACalendar() =>
        Gen.Int[0, 400]
            .Array[0, 60]
            .Select(Gen.Int[0, 400])
            .Sample(
                static (days, after) =>
                {
                    var (today, practised) = (
                        LogGens.First.AddDays(after),
                        days.Select(LogGens.First.AddDays).ToHashSet()
                    );
                    var count = PracticeCount.Of(today, days.Select(LogGens.First.AddDays));
                    var (run, longest) = (0, 0);
                    var (week, month, all) = (0, 0, 0);
                    for (var day = LogGens.First; day <= today; day = day.AddDays(1))
                    {
                        var is1 = practised.Contains(day);
                        run = is1 ? run + 1 : 0;
                        longest = Math.Max(longest, run);
                        all += is1 ? 1 : 0;
                        var sameWeek =
                            System.Globalization.ISOWeek.GetWeekOfYear(day.ToDateTime(default))
                                == System.Globalization.ISOWeek.GetWeekOfYear(today.ToDateTime(default))
                            && today.DayNumber - day.DayNumber < 7;
                        week += is1 && sameWeek ? 1 : 0;
                        month += is1 && (day.Year, day.Month) == (today.Year, today.Month) ? 1 : 0;
                    }

                    Assert.Equal(new(today, week, month, all, longest), count);
                }
            );

    [Theory]
    [InlineData("", 120, 72.0)]
    [InlineData("at 90: clean", 120, 94.0)]
    [InlineData("at 90: at ease", 120, 97.0)]
    [InlineData("at 90: stumbled", 120, 86.0)]
    [InlineData("at 90: fell apart", 120, 77.0)]
    [InlineData("at 118: at ease", 120, 120.0)]
    [InlineData("at 10: clean", 120, 11.0)]
    [InlineData("at 10: stumbled", 120, 9.0)]
    [InlineData("at 90: clean|at 110: fell apart", 120, 94.0)]
    [InlineData("at 110: fell apart|at 100: stumbled", 120, 95.0)]
    [InlineData(": clean", 120, 72.0)]
    [InlineData("at 140: clean", 120, 120.0)]
    [InlineData("at 1: fell apart", 120, 1.0)]
    [InlineData("at 0.5: fell apart", 120, 0.5)]
    [InlineData("at 90: clean", null, 94.0)]
    [InlineData("", null, null)]
    public void TheNextTempoIsEarned(string day, int? goal, double? next)
    {
        var history = PracticeHistory.Of(
            day.Split('|', StringSplitOptions.RemoveEmptyEntries)
                .Select(static each => Practised.Parse($"2026-01-01 \"x\" {each}"))
        );
        Assert.Equal(next, TempoAdvice.Next(history.Find("x"), goal));
    }

    [Fact]
    public void TheNextTempoIsNeverBeyondTheOneKeptNorTheWrongWay() =>
        Gen.Select(LogGens.Practised, Gen.Int[1, 1000])
            .Sample(
                static (entry, goal) =>
                {
                    var next = TempoAdvice.Next(PracticeHistory.Of(entry).Find(entry.Lick), goal)!.Value;
                    Assert.InRange(next, Math.Min(goal, 0.01), goal);
                    if (entry.Tempo is { } tempo)
                    {
                        Assert.True(entry.Outcome.IsClean || next <= tempo);
                        Assert.True(!entry.Outcome.IsClean || next >= Math.Min(tempo, goal));
                        Assert.True(next <= Math.Max(tempo + 1, tempo * 1.08 + 1));
                    }
                }
            );
}
