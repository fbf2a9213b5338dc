using TheoryKit.Licks.Practice;
using TheoryKit.Tests;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Licks.Tests.Practice;

/// <summary>Random practice.</summary>
internal static class LogGens
{
    /// <summary>Any text that is one line: every script, signs of the log's own, pairs of surrogates, none at the ends that would be trimmed.</summary>
    public static readonly Gen<string> Text = Gen.OneOf(
            Gen.Char.Array[0, 30].Select(static letters => new string(letters)),
            AnyOf
                .Any<string>([
                    "\"",
                    "\\",
                    "\\\"",
                    ": ",
                    ", ",
                    " at 96",
                    "clean",
                    "#",
                    "is now",
                    "2026-11-24",
                    "é",
                    "\U0001D11E",
                    "\u2028",
                    "\u202E",
                    "<b>",
                    "x",
                ])
                .Array[0, 12]
                .Select(string.Concat)
        )
        .Select(static text => Line(text));

    public static readonly Gen<string> Name = Text.Select(static text => text.Length == 0 ? "Low tide turn" : text);

    public static readonly Gen<DateOnly> Date = Gen.Int[0, DateOnly.MaxValue.DayNumber].Select(DateOnly.FromDayNumber);

    public static readonly Gen<Outcome> Outcome = Gen.Int[0, TheoryKit.Licks.Practice.Outcome.Known.Count - 1]
        .Select(index => TheoryKit.Licks.Practice.Outcome.Known[index]);

    public static readonly Gen<double?> Tempo = Gen.OneOf(
        Gen.Const((double?)null),
        Gen.Int[1, 100_000].Select(static hundredths => (double?)(hundredths / 100.0))
    );

    public static readonly Gen<Practised> Practised = PractisedOf(Name, Date);

    public static readonly Gen<LickRenamed> Renamed = Gen.Select(Date, Name, Name)
        .Select(static (date, from, to) => new LickRenamed(date, from, from == to ? to + "!" : to));

    /// <summary>Entries of a few licks within a year.</summary>
    public static readonly Gen<Practised[]> Year = PractisedOf(
        Gen.Int[1, 5].Select(static number => $"Lick {number}"),
        Gen.Int[0, 364].Select(static day => First.AddDays(day))
    ).Array[0, 120];

    public static DateOnly First { get; } = new(2026, 1, 1);

    public static Gen<Practised> PractisedOf(Gen<string> name, Gen<DateOnly> date) =>
        Gen.Select(name, date, Gen.Int[-1, (24 * 60) - 1], Tempo, Outcome, Text)
            .Select(
                static (name, date, minute, tempo, outcome, note) =>
                    new Practised
                    {
                        Lick = name,
                        Date = date,
                        Time = minute < 0 ? null : new TimeOnly(minute / 60, minute % 60),
                        Tempo = tempo,
                        Outcome = outcome,
                        Note = note,
                    }
            );

    /// <summary>A lick of one note.</summary>
    public static Lick Lick(string name, double? tempo = null) =>
        new()
        {
            Name = name,
            Tempo = tempo,
            Path = new(
                Neck.Guitar,
                [
                    new()
                    {
                        Position = new(1, 3),
                        Pitch = Pitch.Parse("G4"),
                        Start = 0,
                        Length = 4,
                    },
                ]
            ),
        };

    private static string Line(string text)
    {
        var kept = new System.Text.StringBuilder();
        for (var index = 0; index < text.Length; index++)
        {
            if (index + 1 < text.Length && char.IsSurrogatePair(text[index], text[index + 1]))
            {
                kept.Append(text[index]).Append(text[++index]);
            }
            else if (!char.IsControl(text[index]) && !char.IsSurrogate(text[index]))
            {
                kept.Append(text[index]);
            }
        }

        return kept.ToString().Trim();
    }
}
