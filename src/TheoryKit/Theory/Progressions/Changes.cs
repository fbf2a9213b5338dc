using Fractions;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;
using TheoryKit.Values;

namespace TheoryKit.Theory.Progressions;

/// <summary>
/// Changes: a progression written in bars, <c>3/4, Eb major: Ebmaj7 | Cm7 | Fm7 | Bb7</c>. Equal when time signature, key
/// and bars agree. Beats are those of the time signature (eighths in 6/8), counted from 0, and exact.
/// </summary>
/// <remarks>How changes are written is in the grammar on <see cref="Parse(string, IFormatProvider?)"/>.</remarks>
[ReadAs(What)]
[EqualBy(nameof(Time), nameof(Key), nameof(bars), Operators = true)]
public sealed partial class Changes : IEquatable<Changes>
{
    private readonly Bar[] bars;
    private readonly ChordSpan[] chords;

    /// <summary>Changes of these bars.</summary>
    /// <param name="bars">The bars; at least one, each with the beats of the time signature.</param>
    /// <param name="time">The time signature; 4/4 by default.</param>
    /// <param name="key">The key, if one is given.</param>
    /// <exception cref="ArgumentException">There is no bar, or one has another number of beats.</exception>
    public Changes(IEnumerable<Bar> bars, TimeSignature time = default, Key? key = null)
    {
        this.bars = [.. Check.Items(bars)];
        if (this.bars.Length == 0)
        {
            throw new ArgumentException("Changes have at least one bar.", nameof(bars));
        }

        if (Array.Find(this.bars, bar => bar.Beats != time.Beats) is { } other)
        {
            throw new ArgumentException(
                $"The bar \"{other}\" has {other.Beats} beats; a bar in {time} has {time.Beats}.",
                nameof(bars)
            );
        }

        Time = time;
        Key = key;
        chords = [.. this.bars.SelectMany((bar, index) => bar.Chords.Select(span => span.After(index * time.Beats)))];
    }

    /// <summary>The time signature.</summary>
    public TimeSignature Time { get; }

    /// <summary>The key, or null.</summary>
    public Key? Key { get; }

    /// <summary>The bars, repeats written out.</summary>
    public IReadOnlyList<Bar> Bars => bars;

    /// <summary>Every chord of every bar, its start counted in beats from the beginning.</summary>
    public IReadOnlyList<ChordSpan> Chords => chords;

    /// <summary>The length of all bars, in beats.</summary>
    public int Beats => bars.Length * Time.Beats;

    /// <summary>What is played at a beat: the chord that has started and not ended.</summary>
    /// <param name="beat">From 0 up to, but not with, <see cref="Beats"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Before the first beat or after the last bar.</exception>
    public ChordSpan At(Fraction beat)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(beat, Fraction.Zero);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(beat, (Fraction)Beats);
        var (low, high) = (0, chords.Length - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            (low, high) = chords[middle].Start <= beat ? (middle, high) : (low, middle - 1);
        }

        return chords[low];
    }

    /// <summary>The changes an interval away, the key with them.</summary>
    /// <exception cref="OverflowException">A note would need more accidentals than a note name has.</exception>
    public Changes Transpose(Interval interval) =>
        new(bars.Select(bar => bar.Select(chord => chord.Transpose(interval))), Time, Key?.Transpose(interval));

    /// <summary>The changes moved from their own key to another of the same kind.</summary>
    /// <exception cref="InvalidOperationException">The changes have no key to move from; see <see cref="WithKey"/>.</exception>
    /// <exception cref="ArgumentException">One key is major, the other minor.</exception>
    /// <exception cref="OverflowException">A note would need more accidentals than a note name has.</exception>
    public Changes InKey(Key key)
    {
        var from = Key ?? throw new InvalidOperationException(NoKey);
        return from.IsMinor == key.IsMinor
            ? Transpose(from.Tonic.To(key.Tonic))
            : throw new ArgumentException(
                $"Changes in {from} can't be moved to {key}: one is major, the other minor.",
                nameof(key)
            );
    }

    /// <summary>The same chords in a named key, or in none; nothing moves.</summary>
    public Changes WithKey(Key? key) => new(bars, Time, key);

    /// <summary>The changes with root and bass of every chord as the key spells them; see <see cref="Key.Spell(Chord)"/>.</summary>
    /// <exception cref="InvalidOperationException">The changes have no key.</exception>
    public Changes Respelled()
    {
        var key = Key ?? throw new InvalidOperationException(NoKey);
        return new(bars.Select(bar => bar.Select(key.Spell)), Time, key);
    }

    private const string NoKey = "These changes have no key; give them one with WithKey.";
}
