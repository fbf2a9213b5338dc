using System.Collections;
using TheoryKit.Theory;

namespace TheoryKit.Fingering;

/// <summary>The grips found for a question, from the least effort up; where there are none, why.</summary>
public sealed class GripAnswer : IReadOnlyList<ChordGrip>
{
    private readonly List<ChordGrip> grips;
    private readonly Lazy<Func<string?, IFormatProvider?, string>> reason;

    internal GripAnswer(GripQuery query, List<ChordGrip> grips)
    {
        Query = query;
        this.grips = grips;
        reason = new(() => grips.Count > 0 ? static (_, _) => "" : Why());
    }

    /// <summary>What was asked.</summary>
    public GripQuery Query { get; }

    /// <inheritdoc/>
    public int Count => grips.Count;

    /// <inheritdoc/>
    public ChordGrip this[int index] => grips[index];

    /// <summary>Empty where there are grips; else the limit that leaves none, and by how many mm where it is the hand's reach.</summary>
    public string Reason => ReasonAs(null, null);

    /// <summary>The <see cref="Reason"/> with its notes and chords written in a format and in a reader's way.</summary>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="NoteNaming"/>; null for English.</param>
    public string ReasonAs(string? format, IFormatProvider? naming = null) => reason.Value(format, naming);

    /// <inheritdoc/>
    public IEnumerator<ChordGrip> GetEnumerator() => grips.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    // Past so many strings a hand of any reach has too many grips to go through for one sentence.
    private const int MostStringsForReach = 8;

    /// <summary>
    /// Drops one limit at a time, the hand's own first; the first one without which there are grips is the reason.
    /// </summary>
    private Func<string?, IFormatProvider?, string> Why()
    {
        var question = Query;
        if (question.Neck.StringCount <= MostStringsForReach && GripSearch.NearestMiss(question) is { } miss)
        {
            return (_, _) =>
                $"The hand does not reach: the nearest grip, {miss.Grip}, asks {Math.Ceiling(miss.Excess):F0} mm more between {Name(miss.One)} and {Name(miss.Other)}.";
        }

        var hand = question.Hand;
        var all = Tunings.Position.MaxString;
        ReadOnlySpan<(Func<string?, IFormatProvider?, string> Limit, GripQuery Without)> limits =
        [
            (
                static (_, _) => "that this hand holds with its barres and its thumb",
                question with
                {
                    Hand = hand with { BarreStrings = all, OtherBarreStrings = all, ThumbOver = true },
                }
            ),
            ((_, _) => $"with at most {question.MaxFingers} fingers", question with { MaxFingers = 5 }),
            (static (_, _) => "with no muted string between two that sound", question with { InnerMutes = true }),
            ((format, naming) => $"with {question.Top?.ToString(format, naming)} on top", question with { Top = null }),
            (
                (format, naming) =>
                    $"over {(question.Bass ?? question.Chord.Bass).ToString(format, naming)} in the bass",
                question with
                {
                    AnyBass = true,
                }
            ),
            (static (_, _) => "on those strings", question with { Strings = null, AllStrings = false }),
            (
                (_, _) => $"between frets {question.FirstFret} and {question.LastFret ?? question.Neck.Frets}",
                question with
                {
                    FirstFret = 1,
                    LastFret = null,
                }
            ),
            (static (_, _) => "with such use of open strings", question with { OpenStrings = OpenStrings.Allowed }),
            ((_, _) => $"on {question.MinSounding} strings or more", question with { MinSounding = 1 }),
            ((_, _) => $"on {question.MaxSounding} strings or fewer", question with { MaxSounding = all }),
            (
                static (_, _) => "with every tone that may not be left out",
                question with
                {
                    Optional = question.Chord.Formula,
                }
            ),
        ];
        foreach (var (limit, without) in limits)
        {
            if (without != question && GripSearch.Any(without))
            {
                return (format, naming) =>
                    $"There is no grip of {question.Chord.ToString(format, naming)} {limit(format, naming)}; without this limit there is one.";
            }
        }

        return (format, naming) =>
            $"No single limit keeps {question.Chord.ToString(format, naming)} from sounding on this neck: drop several of them, if the neck has its tones at all.";
    }

    private static string Name(Finger finger) => finger == Finger.Thumb ? "the thumb" : $"finger {(int)finger}";
}
