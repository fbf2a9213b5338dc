using TheoryKit.Tunings.Strings;
using TheoryKit.Tunings.Turns;

namespace TheoryKit.Drawing.Tunings;

/// <summary>
/// The sheet of a retuning for the wall or the music stand: what to turn, which way, how far and in what order, with the tension of the
/// strings fitted where they are known. Equal when both are.
/// </summary>
/// <param name="Scordatura">What is turned.</param>
public sealed record ScordaturaSheet(Scordatura Scordatura)
{
    private readonly TensionReport? tensions;

    /// <summary>The tension of the strings in the new tuning; null where they are not known.</summary>
    /// <exception cref="ArgumentException">The report is on another tuning than the one turned to.</exception>
    public TensionReport? Tensions
    {
        get => tensions;
        init =>
            tensions =
                value is null || value.Neck.Tuning == Scordatura.To
                    ? value
                    : throw new ArgumentException(
                        $"The tensions are those in {value.Neck.Tuning}, but the strings are turned to {Scordatura.To}.",
                        nameof(value)
                    );
    }
}
