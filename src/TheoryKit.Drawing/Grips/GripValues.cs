using TheoryKit.Drawing.Hands;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Words;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Grips;

/// <summary>How grips and the questions for them are described.</summary>
internal static class GripValues
{
    public static Description<Grip> Grips { get; } =
        new(
            new("grip", "grips"),
            static grip => Words.Of(grip),
            [
                new("strings", static grip => grip.Strings.Count, IsNumber: true),
                new("frets", static grip => Frets(grip)),
                new("a finger lies flat", static grip => grip.HasBarre ? "yes" : "no"),
                new("movable", static grip => grip.IsMovable ? "yes" : "no"),
            ]
        )
        {
            More = static grip => [GripBoxes.Of("", [new GripBox(GripDrawing.Of(grip))])],
        };

    public static Description<GripString> Strings { get; } =
        new(
            new("string of a grip", "strings of a grip"),
            static each =>
                !each.Sounds ? "muted"
                : each.Finger is null ? "open"
                : $"fret {each.Fret}",
            [
                new("fret", static each => each.Fret, IsNumber: true),
                new(
                    "finger",
                    static each => each.Finger is { } finger ? HandValues.Sign(finger) : null,
                    IsNumber: true
                ),
            ]
        );

    /// <summary>How many strings sound.</summary>
    public static Trait<GripQuery> Sounding { get; } =
        new(
            "sounding",
            static query =>
                query.MaxSounding >= query.Neck.StringCount
                    ? $"{query.MinSounding} strings or more"
                    : $"{query.MinSounding} to {query.MaxSounding} strings"
        );

    public static Description<GripQuery> Queries { get; } =
        new(
            new("question for grips", "questions for grips"),
            static query => (Words)$"Grips of {query.Chord}",
            [
                new("neck", static query => Words.Of(query.Neck)),
                new("hand", static query => Words.Of(query.Hand)),
                new(
                    "may be left out",
                    static query =>
                        (query.Optional ?? GripQuery.CommonlyOptional(query.Chord.Formula)) is { Count: > 0 } optional
                            ? Words.Join("\u00a0", optional)
                            : "nothing"
                ),
                new("lowest", static query => query.AnyBass ? "any tone" : Words.Of(query.Bass ?? query.Chord.Bass)),
                new("highest", static query => query.Top is { } top ? Words.Of(top) : null),
                new(
                    "strings",
                    static query =>
                        query.Strings is { } strings
                            ? (query.AllStrings ? "all of " : "of ") + string.Join(" ", strings.Reverse())
                            : null
                ),
                Sounding,
                new(
                    "frets",
                    static query =>
                        $"{query.FirstFret} to {Math.Min(query.LastFret ?? query.Neck.Frets, query.Neck.Frets)}"
                ),
                new(
                    "open strings",
                    static query =>
                        query.OpenStrings switch
                        {
                            OpenStrings.None => "none",
                            OpenStrings.Only => "only",
                            _ => "allowed",
                        }
                ),
                new("muted strings inside", static query => query.InnerMutes ? "allowed" : "none"),
                new("fingers", static query => query.MaxFingers < 5 ? $"at most {query.MaxFingers}" : null),
            ]
        );

    /// <summary>A grip that sounds a chord.</summary>
    public static Sheet Grip(ChordGrip grip)
    {
        var facts = new List<Fact>
        {
            new("held", Words.Of(grip.Grip)),
            new("notes", Words.Join("\u00a0", grip.Places.Select(static place => place.Pitch))),
            new("functions", Words.Join("\u00a0", grip.Functions)),
            new("lowest", GripWords.Bass(grip)),
            new("spacing", GripWords.Spacing(grip.Spacing)),
        };
        if (grip.Missing.Count > 0)
        {
            facts.Add(new("left out", Words.Join("\u00a0", grip.Missing)));
        }

        if (grip.Doubled.Count > 0)
        {
            facts.Add(new("doubled", Words.Join("\u00a0", grip.Doubled)));
        }

        if (grip.SoundsAs is { } other)
        {
            facts.Add(new("sounds as", Words.Of(other)));
        }

        facts.Add(new("moves along the neck", grip.Grip.IsMovable ? "yes" : "no, it has open strings"));
        facts.Add(new("effort", GripWords.Effort(grip.Effort)));
        return new(
            new Block.Title(Words.Of(grip.Chord), "a grip"),
            new Block.Beside([
                GripBoxes.Of("", [new GripBox(GripDrawing.Of(grip) with { Title = "" })]),
                new Block.Facts(facts),
            ])
        );
    }

    /// <summary>Grips in rows of boxes.</summary>
    public static Sheet Boxes(GripSheet sheet)
    {
        var boxes = GripBoxes.Of(sheet);
        return new(boxes);
    }

    /// <summary>Grips in rows of boxes.</summary>
    public static Sheet Boxes(IEnumerable<ChordGrip> grips) => Boxes(new GripSheet(grips));

    /// <summary>The answer to a question: its grips, or why there are none.</summary>
    public static Sheet Answer(GripAnswer answer)
    {
        var title = new Block.Title(
            Words.Of(answer.Query.Chord),
            answer.Count == 0 ? "no grip"
                : answer.Count == 1 ? "1 grip"
                : $"{English.Count(answer.Count, "grip")}, the least effort first"
        );
        return new(title, GripBoxes.Of(new GripSheet(answer)));
    }

    /// <summary>Grips joined: a row of boxes, and between them what the hand and the voices do.</summary>
    public static Sheet Progression(GripProgression progression)
    {
        if (progression.Grips.Count == 0)
        {
            return new(new Block.Prose(progression.Reason is { } reason ? Words.Said(reason.InWords) : "No grips."));
        }

        var boxes = progression.Grips.Select(
            (grip, index) =>
                new GripBox(GripDrawing.Of(grip), [.. GripWords.Under(grip), (Words)$"{grip.Top} on top"])
                {
                    Motion = index == 0 ? [] : GripWords.Motion(progression.Grips[index - 1], grip),
                }
        );
        return new(
            new Block.Title(
                Words.Join(", ", progression.Grips.Select(static grip => grip.Chord)),
                $"effort and motion {GripWords.Effort(progression.Cost)}"
            ),
            GripBoxes.Of("", [.. boxes])
        );
    }

    private static string Frets(Grip grip) =>
        grip.LowestFret is not { } low ? "none held"
        : grip.HighestFret is { } high && high > low ? $"{low} to {high}"
        : $"{low}";
}
