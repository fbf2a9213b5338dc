using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Learning;

/// <summary>Where a hand plays a line otherwise than it is written, and why. Equal when line and both ways to play it are.</summary>
public sealed record LineDifference
{
    private LineDifference(
        PlayedLine line,
        Hand hand,
        FingeredLine written,
        FingeredLine chosen,
        IEnumerable<TermDifference> terms
    ) => (Line, Hand, Written, Chosen, Terms) = (line, hand, written, chosen, terms.ToSequence());

    /// <summary>The line as written.</summary>
    public PlayedLine Line { get; }

    /// <summary>The hand that chooses.</summary>
    public Hand Hand { get; }

    /// <summary>The least-effort way to play it as written.</summary>
    public FingeredLine Written { get; }

    /// <summary>What the hand chooses.</summary>
    public FingeredLine Chosen { get; }

    /// <summary>The terms of effort in which the two differ, those that speak most for what the hand chooses first.</summary>
    public IReadOnlyList<TermDifference> Terms { get; }

    /// <summary>The indexes of the notes that are not as written.</summary>
    public IEnumerable<int> Notes =>
        Enumerable.Range(0, Line.Notes.Count).Where(index => !LineReader.IsAsWritten(Line.Notes[index], Chosen[index]));

    internal static LineDifference? Of(PlayedLine line, LineReader reader)
    {
        if (
            reader.AsWritten(line) is not { } written
            || reader.Placed(line) is not { } chosen
            || LineReader.Unlike(line, chosen) == 0
        )
        {
            return null;
        }

        var terms = new EffortTerms(line.Neck, reader.Hand);
        var (here, there) = (terms.AmountsIn(written), terms.AmountsIn(chosen));
        return new(
            line,
            reader.Hand,
            written,
            chosen,
            EffortWeights
                .Entries.Select(
                    (entry, at) => new TermDifference(entry.Name, here[at], there[at], entry.Get(reader.Hand.Weights))
                )
                .Where(static term => Math.Abs(term.Written - term.Chosen) > 1e-9)
                .OrderByDescending(static term => term.Saved)
        );
    }
}

/// <summary>How much of a term of effort there is in a line as written, and as a hand chooses to play it. Equal when all of it is.</summary>
/// <param name="Name">The name of the weight, as in the text of <see cref="EffortWeights"/>.</param>
/// <param name="Written">The amount as written.</param>
/// <param name="Chosen">The amount as chosen.</param>
/// <param name="Weight">What one of it costs.</param>
public readonly record struct TermDifference(string Name, double Written, double Chosen, double Weight)
{
    /// <summary>What the hand saves by its choice in effort; less than zero where it pays.</summary>
    public double Saved => (Written - Chosen) * Weight;
}
