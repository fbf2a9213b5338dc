using System.Collections.Immutable;
using TheoryKit.Licks.Tab.Reading;
using TheoryKit.Licks.Tab.Remarks;
using TheoryKit.Paths;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Licks.Tab.Playing;

/// <summary>From numbers as typed to numbers as frets of the neck, and to a neck that has them.</summary>
internal static class TabFrets
{
    /// <param name="marks">The numbers.</param>
    /// <param name="typed">The neck as far as the names of strings tell it.</param>
    /// <param name="meter">Whether a count or a rhythm tells the time.</param>
    /// <param name="given">The neck that was given; null for none.</param>
    /// <param name="remarks">What is ambiguous.</param>
    public static (ImmutableArray<TabMark> Marks, Neck Neck) Of(
        ImmutableArray<TabMark> marks,
        TabNeck typed,
        TabMeter meter,
        Neck? given,
        TabRemarks remarks
    )
    {
        var neck = typed.Neck;
        marks = neck.Capo > 0 ? FromCapo(marks, neck, remarks) : marks;
        if (!meter.IsTold)
        {
            TellTwoDigits(marks, remarks);
        }

        var (most, farthest) = (0, default(TabMark));
        foreach (var mark in marks)
        {
            if (mark.Number > most && !mark.Has(Technique.Release))
            {
                (most, farthest) = (mark.Number.Value, mark);
            }
        }

        if (most > neck.Frets && most <= typed.Highest && given is null)
        {
            neck = new(neck.Tuning, neck.ScaleLength, typed.Highest, neck.Capo);
            remarks.Add(farthest, new TabRemark.LongerNeck(most, neck.Frets));
        }

        return (marks, neck);
    }

    /// <summary>Where the hand is at the first frets, 12 may have been meant as 1 and 2.</summary>
    private static void TellTwoDigits(ImmutableArray<TabMark> marks, TabRemarks remarks)
    {
        const int Near = 4;
        if (
            marks.Count(static mark => !mark.HasTwoDigits && mark.Number > 0) < 3
            || marks.Any(static mark => !mark.HasTwoDigits && mark.Number > Near)
        )
        {
            return;
        }

        foreach (var mark in marks)
        {
            if (mark is { HasTwoDigits: true, Number: { } number } && number / 10 <= Near && number % 10 <= Near)
            {
                remarks.Add(mark, new TabRemark.TwoDigits(number));
            }
        }
    }

    /// <summary>Numbers below the capo say that all are counted from there.</summary>
    private static ImmutableArray<TabMark> FromCapo(ImmutableArray<TabMark> marks, Neck neck, TabRemarks remarks)
    {
        foreach (var mark in marks)
        {
            if (mark.Number is { } number && number < neck.Capo && neck.Tuning[mark.String].Start < neck.Capo)
            {
                remarks.Add(mark, new TabRemark.CountedFromCapo(number, neck.Capo));
                return
                [
                    .. marks.Select(each =>
                        each with
                        {
                            Number = each.Number + neck.Capo,
                            TrillNumber = each.TrillNumber + neck.Capo,
                            BendHalves = each.BendHalves + (2 * neck.Capo),
                        }
                    ),
                ];
            }
        }

        return marks;
    }
}
