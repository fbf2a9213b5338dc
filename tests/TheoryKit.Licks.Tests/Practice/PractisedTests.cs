using TheoryKit.Licks.Practice;
using TheoryKit.Tests;

namespace TheoryKit.Licks.Tests.Practice;

public class PractisedTests
{
    [Fact]
    public void AnyNameAndNoteReadBack()
    {
        Laws.RoundTrip(LogGens.Practised);
        Laws.Equality(LogGens.Practised);
        Laws.Null<Practised>();
        Laws.RoundTrip(LogGens.Renamed);
        Laws.Equality(LogGens.Renamed);
        Laws.Null<LickRenamed>();
        Laws.RoundTrip(LogGens.Outcome);
        Laws.Equality(LogGens.Outcome);
        Laws.Null<Outcome>();
    }

    [Fact]
    public void ALineIsReadAsItIsWrittenByHand()
    {
        var entry = new Practised
        {
            Date = new(2026, 11, 24),
            Time = new(18, 30),
            Lick = "Low tide \"turn\"",
            Tempo = 96.5,
            Outcome = Outcome.AtEase,
            Note = "the bend: flat, still",
        };
        Assert.Equal(
            "2026-11-24 18:30 \"Low tide \\\"turn\\\"\" at 96.5: at ease, the bend: flat, still",
            entry.ToString()
        );
        Assert.Equal(
            entry,
            Practised.Parse(
                "  2026-11-24  18:30 \"Low tide \\\"turn\\\"\"at 96.50 :  At Ease ,  the bend: flat, still  "
            )
        );
        Assert.Equal(
            new Practised
            {
                Date = new(2026, 11, 24),
                Lick = "x",
                Outcome = Outcome.FellApart,
            },
            Practised.Parse("2026-11-24 \"x\": fell apart")
        );
    }

    [Fact]
    public void WhatIsNoLineIsRefusedWithThePlace()
    {
        Laws.Refuses<Practised>("24.11.2026 \"x\": clean", 1, "a day, year first");
        Laws.Refuses<Practised>("2026-02-30 \"x\": clean", 1, "a day, year first");
        Laws.Refuses<Practised>("2026-11-24 25:00 \"x\": clean", 12, "the time of the day");
        Laws.Refuses<Practised>("2026-11-24 x: clean", 12, "in quotation marks");
        Laws.Refuses<Practised>("2026-11-24 \"x: clean", 21, "the quotation mark that ends the name");
        Laws.Refuses<Practised>("2026-11-24 \"a\\b\": clean", 15, "after the backslash");
        Laws.Refuses<Practised>("2026-11-24 \" \": clean", 12, "a name");
        Laws.Refuses<Practised>("2026-11-24 \"x\" at fast: clean", 19, "a number from 0.01 to 1000");
        Laws.Refuses<Practised>("2026-11-24 \"x\" clean", 16, "a colon and how it went");
        Laws.Refuses<Practised>("2026-11-24 \"x\": superb", 17, "fell apart, stumbled, clean or at ease");
        Laws.Refuses<Practised>("2026-11-24 \"x\": cleaner", 22, "a comma and a note");
        Laws.Refuses<LickRenamed>("2026-11-24 \"x\" was \"y\"", 16, "is now");
        Laws.Refuses<LickRenamed>("2026-11-24 \"x\" is now \"x\"", 23, "another name");
        Laws.Refuses<Outcome>("good", 1, "how it went");
    }

    [Fact]
    public void AnyTextGivesALineOrAnErrorThatSaysWhere()
    {
        Fuzz.Parser<Practised>([
            "2026-11-24 18:30 \"Low tide turn\" at 96: clean, the bend is flat",
            "2026-11-24 \"Low \\\"tide\\\" \\\\\": fell apart",
            "2026-02-28 \"é\" at 120.5: at ease",
        ]);
        Fuzz.Parser<LickRenamed>([
            "2026-11-24 \"Low tide\" is now \"Low tide turn\"",
            "2026-11-24 \"\\\\\" is now \"x\"",
        ]);
        Fuzz.Parser<Outcome>(["fell apart", "stumbled", "clean", "at ease"]);
    }

    [Fact]
    public void WhatIsNotOneLineOfTextGetsNowhere()
    {
        var entry = Practised.Parse("2026-11-24 \"x\": clean");
        foreach (var text in new[] { "two\nlines", "a bell \a", "half \uD834 a character" })
        {
            Assert.Throws<ArgumentException>(() => entry with { Lick = text });
            Assert.Throws<ArgumentException>(() => entry with { Note = text });
            Assert.Throws<ArgumentException>(() => new LickRenamed(entry.Date, "x", text));
        }
    }
}
