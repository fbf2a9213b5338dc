using System.Collections.Immutable;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Zones;

/// <summary>
/// The strings of the two neighbouring root frets that a zone lies between: those that give the root at the lower of the
/// two, then those at the upper. Equal when these are. Either is empty where the zone does not hold such a fret.
/// </summary>
[EqualBy(nameof(lower), nameof(upper))]
public sealed partial class Form : IEquatable<Form>
{
    private readonly ImmutableArray<int> lower;
    private readonly ImmutableArray<int> upper;

    internal Form(ImmutableArray<int> lower, ImmutableArray<int> upper, string? letter)
    {
        this.lower = lower;
        this.upper = upper;
        Letter = letter;
    }

    /// <summary>The strings that give the root at the lower fret, highest number first.</summary>
    public IReadOnlyList<int> Lower => lower;

    /// <summary>The strings that give the root at the upper fret, highest number first.</summary>
    public IReadOnlyList<int> Upper => upper;

    /// <summary>In standard tuning (or all of it higher or lower) the trade's letter, E, D, C, A or G; else null.</summary>
    public string? Letter { get; }

    /// <summary>The trade's letter and the strings: <c>E (6 1 4)</c>, or the strings alone.</summary>
    public override string ToString()
    {
        var strings = string.Join(' ', lower.Concat(upper));
        return Letter is null ? strings : $"{Letter} ({strings})";
    }

    /// <summary>The trade's letter for the strings of the lower root fret in standard tuning.</summary>
    internal static string? LetterOf(Tuning tuning, ImmutableArray<int> lower)
    {
        if (tuning.StringCount != Tuning.Standard.StringCount)
        {
            return null;
        }

        var higher = tuning[1].Open.MidiNumber - Tuning.Standard[1].Open.MidiNumber;
        for (var number = 1; number <= tuning.StringCount; number++)
        {
            if (
                tuning[number].Open.MidiNumber - Tuning.Standard[number].Open.MidiNumber != higher
                || tuning[number].Start != 0
            )
            {
                return null;
            }
        }

        // The open chord that has its root on these strings.
        return lower switch
        {
            [6, 1] => "E",
            [4] => "D",
            [2] => "C",
            [5] => "A",
            [3] => "G",
            _ => null,
        };
    }
}
