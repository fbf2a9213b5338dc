using System.Diagnostics;
using System.Globalization;
using Fractions;
using TheoryKit.Licks.Search;
using TheoryKit.Paths;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Licks.Words;

/// <summary>The words of what was found: why, how alike, what differs.</summary>
public static class SearchWords
{
    /// <summary>A few words: <c>b3 on the strong beat in bar 1, beat 1</c>.</summary>
    /// <param name="reason">The reason.</param>
    /// <param name="format">"G" (or null) for plain signs, "P" for printed ones.</param>
    /// <param name="naming">A <see cref="NoteNaming"/>; null for English.</param>
    /// <exception cref="FormatException">Another format.</exception>
    public static string InWords(this FoundReason reason, string? format = null, IFormatProvider? naming = null)
    {
        var speech = new Speech(format, naming);
        return reason switch
        {
            FoundReason.Functions at =>
                $"{string.Join(',', at.Asked.Degrees.Select(each => each is { } degree ? speech.Text(degree) : ".."))} {Place(at.Bar, at.Beat)}{More(at.Times - 1)}",
            FoundReason.StrongBeat at => speech.Say($"{at.Degree} on the strong beat {Place(at.Bar, at.Beat)}"),
            FoundReason.PlayedWith { Notes: 1 } at => $"{at.Technique.Name} in bar {at.Bar}",
            FoundReason.PlayedWith at =>
                $"{at.Technique.Name} on {English.Count(at.Notes, "note")}, the first in bar {at.Bar}",
            FoundReason.OverChord at => speech.Say($"over {at.Chord}"),
            FoundReason.Shaped { Asked.Shape.Count: 0 } => "stays level",
            FoundReason.Shaped at =>
                $"goes {string.Join(", then ", at.Asked.Shape.Select(static each => each == Direction.Up ? "up" : "down"))}",
            FoundReason.Tagged at => $"tagged {at.Tag}",
            FoundReason.OfTune at => $"of {at.Tune}",
            FoundReason.Counted at => Counted(at),
            FoundReason.Saying at => $"\"{at.Text}\" in {Place(at)}",
            FoundReason.Alike at => Alike(at.Value),
            FoundReason.Itself => "the same",
            FoundReason.InTuning at => speech.Say($"in {at.Tuning}"),
            FoundReason.OnNeck => "on that neck",
            FoundReason.Not at => $"not {at.Asked}",
            _ => throw Check.NoKind(reason),
        };
    }

    /// <summary>The name and the reasons.</summary>
    /// <inheritdoc cref="InWords(FoundReason, string?, IFormatProvider?)"/>
    public static string InWords(this FoundLick found, string? format = null, IFormatProvider? naming = null) =>
        Check.NotNull(found).Reasons.Count == 0
            ? found.Lick.Name
            : $"{found.Lick.Name}: {string.Join("; ", found.Reasons.Select(reason => reason.InWords(format, naming)))}";

    /// <summary>The names, and how alike they are.</summary>
    public static string InWords(this SimilarLicks licks) =>
        $"{string.Join(", ", Check.NotNull(licks).Licks.Select(static each => each.Lick.Name))}: {(licks.IsSame ? "the same" : Alike(licks.Likeness))}";

    /// <summary>How alike, in whole percent: <c>85 % alike</c>.</summary>
    public static string InWords(this Likeness likeness) => Alike(Check.NotNull(likeness).Value);

    /// <summary>What differs, the second against the first: <c>3 semitones up instead of 2 semitones up</c>.</summary>
    public static string InWords(this LickDifference difference)
    {
        ArgumentNullException.ThrowIfNull(difference);
        if (difference is not { InFirst: { } first, InSecond: { } second })
        {
            return difference.InSecond is null ? "only in the first" : "only in the second";
        }

        var words = new List<string>();
        if (first.Cents != second.Cents)
        {
            words.Add($"{Step(second.Cents)} instead of {Step(first.Cents)}");
        }

        if (first.Beats != second.Beats)
        {
            words.Add($"{Length(second.Beats)} instead of {Length(first.Beats)}");
        }

        return string.Join(", ", words);
    }

    private static string Alike(double value) => $"{Likeness.PercentOf(value)} % alike";

    private static string Place(int bar, Fraction beat) =>
        $"in bar {bar}, {(beat.Denominator.IsOne ? $"beat {beat}" : $"after beat {beat.Numerator / beat.Denominator}")}";

    private static string More(int times) =>
        times switch
        {
            0 => "",
            1 => " and once more",
            _ => $" and {times} times more",
        };

    private static string Counted(FoundReason.Counted at)
    {
        var number = at.Number.ToString(CultureInfo.InvariantCulture);
        return at.Measure switch
        {
            LickCriterion.Countable.Tempo => $"tempo {number}",
            LickCriterion.Countable.Bars => $"{number} {(at.Number.Equals(1) ? "bar" : "bars")}",
            LickCriterion.Countable.Notes => $"{number} {(at.Number.Equals(1) ? "note" : "notes")}",
            _ => throw new UnreachableException(),
        };
    }

    private static string Place(FoundReason.Saying at) =>
        at.Place switch
        {
            TextPlace.Name => "the name",
            TextPlace.Tune => "the tune",
            TextPlace.Tags => "the tags",
            TextPlace.Header => $"\"{at.Header}\"",
            TextPlace.Words => "the words",
            _ => throw new UnreachableException(),
        };

    private static string Step(int? cents) =>
        cents switch
        {
            null => "a dead note",
            0 => "the same pitch again",
            { } step => FormattableString.Invariant(
                $"{Math.Abs(step) / 100m:0.##} {(Math.Abs(step) == 100 ? "semitone" : "semitones")} {(step > 0 ? "up" : "down")}"
            ),
        };

    private static string Length(Fraction beats) =>
        beats == Fraction.Zero ? "together with the next" : English.Beats(beats);
}
