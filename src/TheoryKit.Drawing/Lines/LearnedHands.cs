using System.Globalization;
using TheoryKit.Drawing.Grips;
using TheoryKit.Drawing.Hands;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Fingering.Learning;
using TheoryKit.Fingering.Lines;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Lines;

/// <summary>How lines as players write them and hands learned from them are described.</summary>
internal static class LearnedHands
{
    public static Description<PlayedNote> Notes { get; } =
        new(
            new("played note", "played notes"),
            static note => Words.Of(note.Position),
            [
                new("string", static note => note.Position.String, IsNumber: true),
                new("fret", static note => note.Position.Fret, IsNumber: true),
                new("finger", static note => note.Finger is null ? null : HandValues.Sign(note.Finger), IsNumber: true),
            ]
        );

    public static Description<PlayedLine> Lines { get; } =
        new(
            new("line as played", "lines as played"),
            static line => $"A line of {English.Count(line.Notes.Count, "note")} as played",
            [new("string, fret and finger", static line => $"{line}"), new("neck", static line => Words.Of(line.Neck))]
        );

    public static Description<EffortTerm> Terms { get; } =
        new(
            new("term of effort", "terms of effort"),
            static term => term.Name,
            [
                new("amount", static term => Number(term.Amount), IsNumber: true),
                new("weight", static term => Number(term.Weight), IsNumber: true),
                new("effort", static term => Number(term.Effort), IsNumber: true),
            ]
        );

    public static Description<TermDifference> TermDifferences { get; } =
        new(
            new("term that differs", "terms that differ"),
            static term => term.Name,
            [
                new("as written", static term => Number(term.Written), IsNumber: true),
                new("as chosen", static term => Number(term.Chosen), IsNumber: true),
                new("weight", static term => Number(term.Weight), IsNumber: true),
                new("effort saved", static term => Number(term.Saved), IsNumber: true),
            ]
        );

    public static Description<LearnedWeight> Weights { get; } =
        new(
            new("weight", "learned weights"),
            static weight => weight.Name,
            [
                new("before", static weight => Number(weight.Before), IsNumber: true),
                new("after", static weight => Number(weight.After), IsNumber: true),
                new(
                    "times",
                    static weight => weight.Before > 0 ? Number(weight.After / weight.Before) : null,
                    IsNumber: true
                ),
            ]
        );

    public static Description<LineAgreement> Agreements { get; } =
        new(
            new("agreement", "agreements"),
            static agreement => $"Agreement on {English.Count(agreement.Notes, "note")}",
            [
                new("positions as written", static each => Positions(each), IsNumber: true),
                new("fingers as written", static each => Fingers(each), IsNumber: true),
            ]
        );

    public static Description<HandAgreement> BeforeAndAfter { get; } =
        new(
            new("lines", "agreements before and after"),
            static each => each.Lines == TriedLines.Examples ? "the examples" : "lines held back",
            [
                new("notes", static each => each.After.Notes, IsNumber: true),
                new("positions before", static each => Positions(each.Before), IsNumber: true),
                new("positions after", static each => Positions(each.After), IsNumber: true),
                new("fingers before", static each => Fingers(each.Before), IsNumber: true),
                new("fingers after", static each => Fingers(each.After), IsNumber: true),
            ]
        );

    public static Description<HandLearningOptions> Options { get; } =
        new(
            new("way of learning a hand", "ways of learning a hand"),
            static _ => "How a hand is learned",
            [
                new("lines held back", static each => each.HeldBack.Count, IsNumber: true),
                new(
                    "parts that take turns",
                    static each => each.HeldBack.Count > 0 ? null : each.Folds,
                    IsNumber: true
                ),
                new("margin for a note, in effort", static each => Number(each.Margin), IsNumber: true),
                new("trust in the examples", static each => Number(each.Trust), IsNumber: true),
                new(
                    "a slip from, in effort",
                    static each => each.Slip < double.PositiveInfinity ? Number(each.Slip) : "never",
                    IsNumber: true
                ),
                new("slips at most, of the notes", static each => Part(each.MostSlips), IsNumber: true),
                new(
                    "a weight changes at most, times",
                    static each => each.MostChange < double.PositiveInfinity ? Number(each.MostChange) : "any",
                    IsNumber: true
                ),
                new("rounds at most", static each => each.Rounds, IsNumber: true),
            ]
        );

    /// <summary>Both ways to play a line, and the terms that decide.</summary>
    public static Sheet Difference(LineDifference difference) =>
        new([
            new Block.Title(
                "As written and as the hand chooses",
                $"effort {GripWords.Effort(difference.Written.Effort)} and {GripWords.Effort(difference.Chosen.Effort)}"
            ),
            Note(difference),
            .. TermDifferences.Table(difference.Terms).Blocks,
        ]);

    /// <summary>What was learned, how well it agrees, and what still differs.</summary>
    public static Sheet Learned(LearnedHand learned)
    {
        List<Block> blocks =
        [
            new Block.Title(learned.IsKept ? "A hand kept" : "A learned hand", HandValues.Name(learned.Hand)),
            new Block.Heading("How far it plays as written"),
            .. BeforeAndAfter.Table(learned.Agreement).Blocks,
            new Block.Heading("Weights"),
            .. Weights.Table(learned.Weights).Blocks,
        ];
        if (learned.IsKept)
        {
            var tried = learned.Agreement[^1];
            blocks.Add(
                new Block.Prose(
                    $"The hand to start with is kept: what was learned plays {tried.After.Positions} and not {tried.Before.Positions} of {tried.After.Notes} positions as written in the {(tried.Lines == TriedLines.Examples ? "examples" : "lines held back")}."
                )
            );
        }

        if (learned.Slips > 0)
        {
            blocks.Add(
                new Block.Prose(
                    $"{English.Count(learned.Slips, "note")} of {learned.Agreement[0].After.Notes} in the examples {(learned.Slips == 1 ? "was" : "were")} taken for {(learned.Slips == 1 ? "a slip" : "slips")}; nothing was learned from that."
                )
            );
        }

        if (learned.Options.Folds > 1 && learned.Agreement[0].After.Notes > 0)
        {
            blocks.Add(
                new Block.Prose(
                    $"Learned with a trust of {Number(learned.Options.Trust)} in the examples, and at most {Part(learned.Options.MostSlips)} of the notes slips."
                )
            );
        }

        if (learned.Unplayable > 0)
        {
            blocks.Add(
                new Block.Prose(
                    $"The hand can't play {English.Count(learned.Unplayable, "example")} as written; nothing was learned from that."
                )
            );
        }

        if (!learned.IsSettled)
        {
            blocks.Add(
                new Block.Prose("The rounds were over before nothing was left to learn, or there were no examples.")
            );
        }

        if (learned.Differences.Count > 0)
        {
            blocks.Add(
                new Block.Table(
                    $"{English.Count(learned.Differences.Count, "example")} still played otherwise",
                    [
                        "as written",
                        new("notes that differ", IsNumber: true),
                        "what speaks most for the hand's choice",
                        new("effort saved", IsNumber: true),
                    ],
                    [
                        .. learned.Differences.Select(each =>
                            (IReadOnlyList<Cell>)
                                [
                                    $"{each.Line}",
                                    each.Notes.Count(),
                                    each.Terms.Count > 0 ? each.Terms[0].Name : "",
                                    Number(each.Written.Effort - each.Chosen.Effort),
                                ]
                        ),
                    ]
                )
            );
        }

        blocks.Add(new Block.Prose(Cautions.Hands));
        return new(blocks);
    }

    private static Block.Table Note(LineDifference difference)
    {
        var others = difference.Notes.ToHashSet();
        return new(
            "Note by note",
            [new("no.", IsNumber: true), "as written", "finger", "as chosen", "finger", "differs"],
            [
                .. difference.Written.Select(
                    (note, index) =>
                        (IReadOnlyList<Cell>)
                            [
                                index + 1,
                                Words.Of(note.Position),
                                HandValues.Sign(note.Finger),
                                Words.Of(difference.Chosen[index].Position),
                                HandValues.Sign(difference.Chosen[index].Finger),
                                others.Contains(index) ? "yes" : "",
                            ]
                ),
            ]
        );
    }

    private static string Positions(LineAgreement agreement) => Part(agreement.OfPositions);

    private static string? Fingers(LineAgreement agreement) => agreement.OfFingers is { } part ? Part(part) : null;

    private static string Part(double part) => (100 * part).ToString("0.0", CultureInfo.InvariantCulture) + "\u00a0%";

    private static string Number(double number) => number.ToString("0.###", CultureInfo.InvariantCulture);
}
