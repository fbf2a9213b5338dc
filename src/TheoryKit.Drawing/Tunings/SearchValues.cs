using System.Globalization;
using TheoryKit.Drawing.Grips;
using TheoryKit.Drawing.Hands;
using TheoryKit.Drawing.Lines;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Fingering.Words;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Strings;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Tunings;

/// <summary>How the search for a tuning is described: what is asked, how far it is, what it found.</summary>
internal static class SearchValues
{
    // Sums in another order differ by less than what two decimals show.
    private const double Shown = 0.005;

    public static Description<WeightedChord> Chords { get; } =
        new(
            new("chord", "chords"),
            static each => Words.Of(each.Chord),
            [new("counts", static each => Number(each.Weight), IsNumber: true)]
        );

    public static Description<TuningRequirement> Requirements { get; } =
        new(new("required of a tuning", "required of a tuning"), static each => Words.Said(each.InWords), []);

    public static Description<TuningCut> Cuts { get; } =
        new(
            new("cut off by", "limits that cut off tunings"),
            static cut => Words.Said(cut.Limit.InWords),
            [new("tunings", static cut => Count(cut.Count), IsNumber: true)]
        );

    public static Description<GripLimits> Limits { get; } =
        new(
            new("limits of a grip", "limits of grips"),
            static _ => "Limits of a grip",
            [
                new(
                    "may be left out",
                    static limits =>
                        limits.Optional is not { } optional ? "what common practice leaves out"
                        : optional.Count == 0 ? "nothing"
                        : Words.Join("\u00a0", optional)
                ),
                new("lowest", static limits => limits.AnyBass ? "any tone" : "the bass of the chord"),
                new(
                    "strings",
                    static limits =>
                        limits.Strings is { } strings
                            ? (limits.AllStrings ? "all of " : "of ") + string.Join(" ", strings.Reverse())
                        : limits.AllStrings ? "all"
                        : null
                ),
                new(
                    "sounding",
                    static limits =>
                        limits.MaxSounding >= Position.MaxString
                            ? $"{limits.MinSounding} strings or more"
                            : $"{limits.MinSounding} to {limits.MaxSounding} strings"
                ),
                new(
                    "frets",
                    static limits =>
                        limits.LastFret is { } last ? $"{limits.FirstFret} to {last}" : $"from {limits.FirstFret}"
                ),
                new(
                    "open strings",
                    static limits =>
                        limits.OpenStrings switch
                        {
                            OpenStrings.None => "none",
                            OpenStrings.Only => "only",
                            _ => "allowed",
                        }
                ),
                new("muted strings inside", static limits => limits.InnerMutes ? "allowed" : "none"),
                new("fingers", static limits => limits.MaxFingers < 5 ? $"at most {limits.MaxFingers}" : null),
            ]
        );

    public static Description<TuningQuery> Queries { get; } =
        new(
            new("search for a tuning", "searches for tunings"),
            static query => query.Chords.Count == 0 ? "A tuning for a line" : (Words)$"A tuning for {Asked(query)}",
            [
                new("from", static query => Words.Said((format, naming) => Base(query, format, naming))),
                new("each string within", static query => English.Count(query.Within, "semitone")),
                new("chords", static query => query.Chords.Count == 0 ? null : Weights(query)),
                new(
                    "line",
                    static query =>
                        query.Line.Count == 0 ? null
                        : query.LineWeight.Equals(1) ? Words.Join("\u00a0", query.Line)
                        : (Words)$"{Words.Join("\u00a0", query.Line)}, counts {Number(query.LineWeight)}"
                ),
                new("hand", static query => HandValues.Name(query.Hand)),
                new("a grip", static query => Words.Join(", ", Narrowed(query.Limits))),
                new(
                    "required",
                    static query =>
                        query.Requirements.Count == 0
                            ? null
                            : Words.Join(", ", query.Requirements.Select(static each => Words.Said(each.InWords)))
                ),
                new("strings", static query => query.Strings is { } set ? set.Name ?? $"{set}" : null),
                new("tension", static query => query.Strings is null ? null : $"{query.TensionLimits}"),
                new("asked for", static query => query.Best == 1 ? "the best one" : $"the best {query.Best}"),
            ]
        );

    /// <summary>
    /// How far a search is: a bar, and the best so far. It has no title: how often it is shown depends on the machine, and the ids of
    /// what comes after it must not.
    /// </summary>
    public static Sheet Progress(TuningProgress progress) =>
        new(
            new Block.Prose(
                $"{(progress.Decided >= progress.Space ? "Searched" : "Searching")}: {Count(progress.Decided)} of {Count(progress.Space)} tunings"
            ),
            SearchBar.Of(progress),
            new Block.Prose(
                progress.Best is { } best
                    ? (Words)$"Best so far: {Name(best.Tuning)}, effort {GripWords.Effort(best.Score)}."
                    : "None found yet."
            )
        );

    /// <summary>A tuning that was found.</summary>
    public static Sheet Found(FoundTuning found) =>
        new([
            new Block.Title(Name(found.Tuning), found.Tuning.Name is null ? null : Strings(found.Tuning)),
            .. Details(found),
        ]);

    /// <summary>Several: a row for each.</summary>
    public static Sheet Found(IEnumerable<FoundTuning> found)
    {
        var all = found.ToList();
        return all.Count == 0
            ? new(new Block.Prose("No tunings."))
            : new(Ranking(English.Count(all.Count, "tuning"), [.. all.Select(static each => (Words.None, each))]));
    }

    /// <summary>The best ones, the best of all in full, and what became of the others.</summary>
    public static Sheet Answer(TuningAnswer answer)
    {
        var blocks = new List<Block>
        {
            new Block.Title(
                Queries.Name(answer.Query),
                answer.Count == 0 ? $"none of {Count(answer.Space)}" : $"the best of {Count(answer.Space)}"
            ),
        };
        if (answer.Reason is { } reason)
        {
            blocks.Add(new Block.Prose(Words.Said(reason.InWords)));
        }
        else
        {
            var rows = answer.Select(static (each, i) => ((Words)$"{i + 1}. ", each)).ToList();
            if (answer.RunnerUp is { } next)
            {
                rows.Add(("next: ", next));
            }

            blocks.Add(Ranking("The least effort first", rows));
            if (answer.RunnerUpDistance is { } distance)
            {
                blocks.Add(
                    new Block.Prose(
                        distance >= Shown
                            ? $"The next one, that was not asked for, is {Effort(distance)} behind the best; all others are no better than that."
                            : "The next one, that was not asked for, takes no more effort than the best, but has more to retune or stands behind it in order."
                    )
                );
            }

            if (answer.Query.Strings is null && answer.Any(Raises))
            {
                var others = answer
                    .Select(static (each, i) => (Rank: i + 1, Strings: Overstrained(each).ToList()))
                    .Where(static each => each.Rank > 1 && each.Strings.Count > 0)
                    .Select(static each => (Words)$"no.\u00a0{each.Rank}, {Words.Join(", ", each.Strings)}")
                    .ToList();
                blocks.Add(
                    new Block.Prose(
                        others.Count == 0
                            ? NoTension
                            : (Words)
                                $"{NoTension} Of those listed below the best, plain steel would be near breaking, or break, in {Words.Join("; ", others)}."
                    )
                );
            }

            blocks.Add(new Block.Heading(Name(answer[0].Tuning)));
            blocks.AddRange(Details(answer[0]));
            if (!Raises(answer[0]) && answer.Skip(1).Any(Raises))
            {
                blocks.Add(new Block.Prose(Cautions.Strings));
            }
        }

        blocks.Add(new Block.Heading("What was searched"));
        blocks.Add(new Block.Facts([.. Facts(answer)]));
        if (answer.Cuts.Count > 0)
        {
            blocks.Add(
                new Block.Group(
                    new Block.Table(
                        "What cut off the others",
                        ["cut off by", new("tunings", IsNumber: true), new("of all", IsNumber: true)],
                        [
                            .. answer
                                .Cuts.OrderByDescending(static cut => cut.Count)
                                .Select(cut =>
                                    (IReadOnlyList<Cell>)
                                        [
                                            new(Words.Said(cut.Limit.InWords)),
                                            Count(cut.Count),
                                            Part(cut.Count, answer.Space),
                                        ]
                                ),
                        ]
                    )
                )
            );
        }

        return new(blocks);
    }

    /// <summary>A tuning by its name where it has one, else string by string.</summary>
    public static Words Name(Tuning tuning) => tuning.Name is { } name ? name : Strings(tuning);

    /// <summary>"15,625".</summary>
    public static string Count(long count) => count.ToString("N0", CultureInfo.InvariantCulture);

    private static IEnumerable<Fact> Facts(TuningAnswer answer)
    {
        foreach (var trait in Queries.Traits)
        {
            if (trait.Value(answer.Query) is { Words.IsEmpty: false } cell)
            {
                yield return new(trait.Name, cell);
            }
        }

        yield return new("tunings", Count(answer.Space));
        yield return new("worked out", $"{Count(answer.Evaluated)}, {Part(answer.Evaluated, answer.Space)}");
        yield return new(
            "cut off",
            $"{Count(answer.Space - answer.Evaluated)}, {Part(answer.Space - answer.Evaluated, answer.Space)}"
        );
    }

    private static Block.Table Ranking(Words caption, List<(Words Rank, FoundTuning Found)> rows)
    {
        var best = rows[0].Found.Score;
        var isNamed = rows.Any(static row => row.Found.Tuning.Name is not null);
        return new(
            caption,
            [
                "tuning",
                .. isNamed ? new Column[] { "name" } : [],
                new("effort", IsNumber: true),
                new("behind the best", IsNumber: true),
                new("semitones to retune", IsNumber: true),
                "strings to retune",
            ],
            [
                .. rows.Select(row =>
                    (IReadOnlyList<Cell>)
                        [
                            new((Words)$"{row.Rank}{OnOneLine(row.Found.Tuning)}"),
                            .. isNamed ? new Cell[] { new(row.Found.Tuning.Name ?? Words.None) } : [],
                            new(Effort(row.Found.Score), IsStrong: row.Found == rows[0].Found),
                            new(row.Found.Score - best >= Shown ? Effort(row.Found.Score - best) : Words.None),
                            row.Found.RetuneDistance,
                            new(Retuning(row.Found)),
                        ]
                ),
            ]
        );
    }

    private static IEnumerable<Block> Details(FoundTuning found)
    {
        var query = found.Query;
        yield return new Block.Facts([
            new("strings", new Cell(Strings(found.Tuning))),
            new("retune", new Cell(Retuning(found))),
            new("semitones in all", found.RetuneDistance),
            new("effort, all together", Effort(found.Score)),
            new("on average", Effort(found.MeanEffort)),
        ]);
        if (found.Grips.Count > 0)
        {
            yield return GripBoxes.Of(
                "The easiest grips",
                [
                    .. found.Grips.Select(
                        (grip, i) =>
                            new GripBox(
                                GripDrawing.Of(grip),
                                query.Chords[i].Weight.Equals(1)
                                    ? GripWords.Under(grip)
                                    : [.. GripWords.Under(grip), $"counts {Number(query.Chords[i].Weight)}"]
                            )
                    ),
                ]
            );
        }

        if (found.Line is { } line)
        {
            yield return new Block.Heading($"The line, effort {GripWords.Effort(line.Effort)}");
            foreach (var block in FingeredLines.Line(new LineDrawing(line, found.Neck)).Blocks.Skip(1))
            {
                yield return block;
            }
        }

        var isCautioned = false;
        if (query.Strings is { } set)
        {
            var report = found.Neck.Tensions(set, query.Base.Tuning, query.TensionLimits);
            yield return new Block.Heading("Tension of the strings");
            foreach (var block in StringValues.Report(report).Blocks.Where(static block => block is not Block.Title))
            {
                yield return block;
            }

            isCautioned = report.Caution is not null;
        }

        var overstrained = Overstrained(found).ToList();
        if (overstrained.Count > 0)
        {
            yield return new Block.Prose(
                (Words)
                    $"A plain steel string of any gauge would be near breaking, or break: {Words.Join(", ", overstrained)}."
            );
        }

        if (Raises(found) && !isCautioned)
        {
            yield return new Block.Prose(Cautions.Strings);
        }
    }

    private const string NoTension =
        "Tension was not looked at: name the strings fitted (Strings, or --strings on the command line), and only tunings count in which each is within its limits.";

    /// <summary>
    /// The strings turned up to where plain steel is near breaking or beyond: its stress hangs on pitch and length alone, as a
    /// thicker string needs more tension and bears as much more. Empty where the strings are told, and were looked at.
    /// </summary>
    private static IEnumerable<Words> Overstrained(FoundTuning found) =>
        found.Query.Strings is not null
            ? []
            : Enumerable
                .Range(1, found.Offsets.Count)
                .Reverse()
                .Where(number => found.Offsets[number - 1] > 0)
                .Select(number => (Number: number, Part: PartOfBreaking(found, number)))
                .Where(each => each.Part > found.Query.TensionLimits.MostOfBreaking)
                .Select(each =>
                    (Words)
                        $"string\u00a0{each.Number} at\u00a0{found.Tuning[each.Number].Open} ({Percents(each.Part)} of its breaking stress)"
                );

    private static double PartOfBreaking(FoundTuning found, int number) =>
        Plain.BreakingPart(found.Tuning[number].Open, found.Query.Base.OpenLength(number)) ?? 0;

    private static string Percents(double part) => (part * 100).ToString("0", CultureInfo.InvariantCulture) + "\u00a0%";

    // Any gauge gives the same part.
    private static readonly FittedString Plain = FittedString.Inches(0.010, StringMaterial.PlainSteel);

    private static bool Raises(FoundTuning found) => found.Offsets.Any(static offset => offset > 0);

    /// <summary>"6 down 2 to D2, 1 down 2 to D4"; the highest number first.</summary>
    private static Words Retuning(FoundTuning found) =>
        found.RetuneDistance == 0
            ? "nothing"
            : Words.Join(
                ", ",
                Enumerable
                    .Range(1, found.Offsets.Count)
                    .Reverse()
                    .Where(number => found.Offsets[number - 1] != 0)
                    .Select(number =>
                        (Words)
                            $"{number}\u00a0{(found.Offsets[number - 1] > 0 ? "up" : "down")}\u00a0{Math.Abs(found.Offsets[number - 1])} to\u00a0{found.Tuning[number].Open}"
                    )
            );

    private static Words Strings(Tuning tuning) => Words.Said((format, naming) => Printed.Of(tuning, naming, format));

    private static Words OnOneLine(Tuning tuning) =>
        Words.Said((format, naming) => Printed.Of(tuning, naming, format).Replace(' ', '\u00a0'));

    private static string Base(TuningQuery query, string? format, IFormatProvider? naming) =>
        (query.Base.Tuning.Name is { } name ? $"{name}: " : "")
        + Printed.Of(query.Base.Tuning, naming, format)
        + (query.Base.Capo > 0 ? $", capo at fret {query.Base.Capo}" : "");

    private static Words Asked(TuningQuery query) =>
        query.Chords.Count <= 8
            ? Words.Join(", ", query.Chords.Select(static each => each.Chord))
            : English.Count(query.Chords.Count, "chord");

    private static Words Weights(TuningQuery query) =>
        Words.Join(
            ", ",
            query.Chords.Select(static each =>
                each.Weight.Equals(1) ? Words.Of(each.Chord) : (Words)$"{each.Chord}\u00a0×\u00a0{Number(each.Weight)}"
            )
        );

    /// <summary>How many strings sound, and what else is not common practice.</summary>
    private static IEnumerable<Words> Narrowed(GripLimits limits)
    {
        foreach (var trait in Limits.Traits)
        {
            var (value, usual) = (trait.Value(limits)?.Words, trait.Value(GripLimits.Default)?.Words);
            if (value is not null && (trait.Name == "sounding" || value.Plain(null) != usual?.Plain(null)))
            {
                yield return trait.Name == "sounding" ? value : (Words)$"{trait.Name}: {value}";
            }
        }
    }

    private static string Effort(double effort) => effort.ToString("0.00", CultureInfo.InvariantCulture);

    private static string Number(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);

    private static string Part(long count, long all) =>
        all == 0 ? "" : (100.0 * count / all).ToString("0.0", CultureInfo.InvariantCulture) + "\u00a0%";
}
