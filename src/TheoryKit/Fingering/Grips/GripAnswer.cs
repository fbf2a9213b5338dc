using System.Collections;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Grips;

/// <summary>The grips found for a question, from the least effort up; where there are none, why.</summary>
public sealed class GripAnswer : IReadOnlyList<ChordGrip>
{
    private readonly List<ChordGrip> grips;
    private readonly Lazy<NoGripReason?> reason;

    internal GripAnswer(GripQuery query, List<ChordGrip> grips)
    {
        Query = query;
        this.grips = grips;
        reason = new(() => grips.Count > 0 ? null : Why());
    }

    /// <summary>What was asked.</summary>
    public GripQuery Query { get; }

    /// <inheritdoc/>
    public int Count => grips.Count;

    /// <inheritdoc/>
    public ChordGrip this[int index] => grips[Check.Index(index, Count)];

    /// <summary>The limit that leaves none, and by how many mm where it is the hand's reach; null where there are grips. Found when it is first asked for.</summary>
    public NoGripReason? Reason => reason.Value;

    /// <inheritdoc/>
    public IEnumerator<ChordGrip> GetEnumerator() => grips.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    // Past so many strings a hand of any reach has too many grips to go through for one sentence.
    private const int MostStringsForReach = 8;

    /// <summary>
    /// Drops one limit at a time, the hand's own first; the first one without which there are grips is the reason.
    /// </summary>
    private NoGripReason Why()
    {
        var (question, chord) = (Query, Query.Chord);
        if (question.Neck.StringCount <= MostStringsForReach && GripSearch.NearestMiss(question) is { } miss)
        {
            return new NoGripReason.OutOfReach(miss.Grip, miss.One, miss.Other, miss.Excess);
        }

        var hand = question.Hand;
        var all = Position.MaxString;
        ReadOnlySpan<(Func<NoGripReason> Reason, GripQuery Without)> limits =
        [
            (
                () => new NoGripReason.BarresAndThumb(chord),
                question with
                {
                    Hand = hand with { BarreStrings = all, OtherBarreStrings = all, ThumbOver = true },
                }
            ),
            (() => new NoGripReason.Fingers(chord, question.MaxFingers), question with { MaxFingers = 5 }),
            (() => new NoGripReason.InnerMutes(chord), question with { InnerMutes = true }),
            (() => new NoGripReason.Top(chord, question.Top!.Value), question with { Top = null }),
            (() => new NoGripReason.Bass(chord, question.Bass ?? chord.Bass), question with { AnyBass = true }),
            (() => new NoGripReason.Strings(chord), question with { Strings = null, AllStrings = false }),
            (
                () => new NoGripReason.Frets(chord, question.FirstFret, question.LastFret ?? question.Neck.Frets),
                question with
                {
                    FirstFret = 1,
                    LastFret = null,
                }
            ),
            (() => new NoGripReason.OpenStrings(chord), question with { OpenStrings = OpenStrings.Allowed }),
            (() => new NoGripReason.FewestStrings(chord, question.MinSounding), question with { MinSounding = 1 }),
            (() => new NoGripReason.MostStrings(chord, question.MaxSounding), question with { MaxSounding = all }),
            (() => new NoGripReason.RequiredTones(chord), question with { Optional = chord.Formula }),
        ];
        foreach (var (reason, without) in limits)
        {
            if (without != question && GripSearch.Any(without))
            {
                return reason();
            }
        }

        return new NoGripReason.SeveralLimits(chord);
    }
}
