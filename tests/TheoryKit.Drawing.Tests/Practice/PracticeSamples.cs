using TheoryKit.Licks;
using TheoryKit.Licks.Practice;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Drawing.Tests.Practice;

/// <summary>Practice of the trio: values of every public type, and odd ones.</summary>
internal static class PracticeSamples
{
    private const string Hostile = "</style><script>alert(1)</script>\" onload=\"x\" 'y' & <b>";

    public static DateOnly Today { get; } = new(2026, 11, 24);

    public static IReadOnlyList<Lick> Folder { get; } =
    [
        Lick("Turn of the stairs", Samples.KestrelLine, 112, "Kestrel Stairs"),
        Lick("Low tide", Samples.Made.Path, 96, "Nine Tin Boats"),
        Lick("Rain on copper", Samples.GripsAndRests, null, "Copper Weather"),
        Lick("Not begun", Samples.KestrelLine, 120, ""),
        Lick("Nor this one", Samples.KestrelLine, 120, ""),
    ];

    public static PracticeHistory History { get; } =
        PracticeHistory.Read(
            """
            # Gannet Row Trio
            2026-11-09 18:30 "Stairs" at 70: stumbled, third bar by heart first
            2026-11-10 18:10 "Stairs" at 66: clean
            2026-11-12 "Stairs" at 69: clean
            2026-11-12 "Stairs" is now "Turn of the stairs"
            2026-11-16 "Turn of the stairs" at 72: clean, thumb behind the neck
            2026-11-11 "Low tide" at 60: fell apart
            2026-11-12 "Low tide" at 51: clean
            2026-11-14 "Low tide" at 55: fell apart, the slide comes late
            2026-11-15 "Low tide" at 47: clean
            2026-11-22 "Rain on copper": clean
            2026-11-24 08:05 "Rain on copper": at ease
            2026-11-20 "An old one" at 80: at ease
            2026-11-2o "Low tide": clean
            """
        );

    public static PracticeDay Day { get; } = History.Due(Today, Folder);

    private static LickHistory Stairs => History.Find("Turn of the stairs")!;

    public static IReadOnlyList<object> Values { get; } =
    [
        Outcome.AtEase,
        Outcome.Known,
        History.Entries[0],
        History.Entries,
        History.Renames[0],
        History.Broken[0],
        Stairs.Last,
        Stairs.Days,
        Stairs,
        History.Licks,
        History,
        new PracticeOptions { Most = 1 },
        Day.Count,
        Day.Licks[0],
        Day.Licks,
        Day,
        PracticeLog.Open("practice.log"),
    ];

    public static IReadOnlyList<object> Extremes { get; } =
    [
        PracticeHistory.Empty,
        PracticeHistory.Read("<b>\n"),
        PracticeHistory.Empty.Due(Today, []),
        Attack.Due(new(2030, 1, 1), [Lick(Hostile, Samples.KestrelLine, 1000, Hostile)]),
        Attack,
        Attack.Entries[0],
        Attack.Renames[0],
        Attack.Broken[0],
    ];

    /// <summary>Text that would do harm if it were not data.</summary>
    public static PracticeHistory Attack =>
        PracticeHistory
            .Of(
                new Practised
                {
                    Date = Today,
                    Lick = "<img src=x onerror=alert(1)>",
                    Outcome = Outcome.Clean,
                    Note = Hostile,
                }
            )
            .With(new LickRenamed(Today, "<img src=x onerror=alert(1)>", Hostile))
            .With(
                new Practised
                {
                    Date = Today,
                    Lick = Hostile,
                    Outcome = Outcome.Clean,
                    Tempo = 0.01,
                    Note = Hostile,
                }
            )
            is var history
            ? PracticeHistory.Read($"{history}{Hostile}\n")
            : null!;

    private static Lick Lick(string name, Path path, double? tempo, string tune) =>
        new()
        {
            Name = name,
            Path = path,
            Tempo = tempo,
            Tune = tune,
        };
}
