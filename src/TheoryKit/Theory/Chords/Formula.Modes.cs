using TheoryKit.Theory.Notes;

namespace TheoryKit.Theory.Chords;

public readonly partial struct Formula
{
    /// <summary>
    /// Whether this is a formula of a scale: it begins on 1 and every degree sounds higher than the one before, all
    /// within the octave.
    /// </summary>
    public bool IsScale
    {
        get
        {
            var above = -1;
            foreach (var degree in this)
            {
                if (degree.Semitones <= above || (above < 0 && degree != Degree.Root))
                {
                    return false;
                }

                above = degree.Semitones;
            }

            return above is >= 0 and < Diatonic.SemitonesPerOctave;
        }
    }

    /// <summary>
    /// The same notes counted from another of them: mode 2 of the major scale, <c>1 2 3 4 5 6 7</c>, is <c>1 2 b3 4 5 6 b7</c>.
    /// Letters stay as they are, so that the notes are spelled alike from either root.
    /// </summary>
    /// <param name="number">Which degree becomes 1, counted from 1 to <see cref="Count"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are fewer degrees.</exception>
    /// <exception cref="InvalidOperationException">This is no formula of a scale; see <see cref="IsScale"/>.</exception>
    /// <exception cref="OverflowException">A degree would need more than <see cref="Degree.MaxAlteration"/> accidentals.</exception>
    public Formula Mode(int number)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(number, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(number, Count);
        if (!IsScale)
        {
            throw new InvalidOperationException($"{this} has no modes: {NoScale}");
        }

        var (root, mode) = (this[number - 1], Empty);
        foreach (var degree in this)
        {
            var interval = degree.Interval - root.Interval;
            mode = mode.With(AsDegree(degree < root ? interval + Interval.Octave : interval));
        }

        return mode;
    }

    /// <summary>All modes, beginning with the formula itself.</summary>
    /// <exception cref="InvalidOperationException">This is no formula of a scale; see <see cref="IsScale"/>.</exception>
    /// <exception cref="OverflowException">A degree would need more than <see cref="Degree.MaxAlteration"/> accidentals.</exception>
    public IReadOnlyList<Formula> Modes
    {
        get
        {
            var formula = this;
            return [.. Enumerable.Range(1, Count).Select(formula.Mode)];
        }
    }

    internal const string NoScale = "a scale begins on 1 and rises from degree to degree within the octave.";

    /// <summary>The degree that lies an interval above the root.</summary>
    internal static Degree AsDegree(Interval interval)
    {
        var alteration = interval.Semitones - Diatonic.Semitones(interval.Steps);
        return Math.Abs(alteration) <= Degree.MaxAlteration
            ? new(interval.Number, alteration)
            : throw new OverflowException(
                $"{interval} is no degree: it would need {Math.Abs(alteration)} accidentals, the most is {Degree.MaxAlteration}."
            );
    }
}
