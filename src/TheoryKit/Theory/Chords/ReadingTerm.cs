namespace TheoryKit.Theory.Chords;

/// <summary>One thing that speaks for or against a reading, and what it costs (0 if nothing).</summary>
/// <param name="Reason">What it is.</param>
/// <param name="Cost">What it adds to the cost of the reading; never negative.</param>
public readonly record struct ReadingTerm(ReadingReason Reason, int Cost);
