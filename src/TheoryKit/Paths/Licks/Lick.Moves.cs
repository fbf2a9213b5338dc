using Fractions;
using TheoryKit.Fingering;
using TheoryKit.Theory;
using TheoryKit.Tunings;

namespace TheoryKit.Paths;

/// <summary>The moves: each gives the lick elsewhere or otherwise, and tells note by note what could not be kept.</summary>
/// <remarks>
/// A lick that stays on its strings keeps its fingers where all frets move alike. One that is placed anew gets the fingers of least effort if it had
/// any; <see cref="For"/> asks for them. Techniques are kept where the new place allows them; what is lost or changed is a remark. Of notes
/// struck together that have too few strings there, or that no hand reaches, one goes an octave away or, if that does not help, is left out.
/// </remarks>
public sealed partial record Lick
{
    /// <summary>
    /// The lick an interval higher or lower, its changes with it: on the same strings where they have the frets, else placed anew with the
    /// least effort; notes beyond the neck an octave nearer.
    /// </summary>
    /// <exception cref="OverflowException">A note would need more accidentals than a note name has, or lie beyond the octaves of a pitch.</exception>
    public MovedLick Transpose(Interval interval)
    {
        var mover = new LickMover(this);
        return mover.Along(interval, Path.Changes?.Transpose(interval), $"by {interval}");
    }

    /// <summary>
    /// The lick in another key of the same kind, up or down, whichever is nearer and stays on the strings; of two tritones down, so that
    /// it comes home again.
    /// </summary>
    /// <exception cref="InvalidOperationException">Its changes name no key, or it has none.</exception>
    /// <exception cref="ArgumentException">One key is major, the other minor; see <see cref="Refit(Changes)"/>.</exception>
    /// <exception cref="OverflowException">A note would need more accidentals than a note name has.</exception>
    public MovedLick InKey(Key key)
    {
        var from =
            Path.Changes?.Key
            ?? throw new InvalidOperationException(
                $"\"{Name}\" is in no key that is told: give its changes one with {nameof(Changes.WithKey)}, or use {nameof(Transpose)}."
            );
        var changes = Path.Changes.InKey(key);
        var near = Refitting.Shift(from.Tonic, key.Tonic);
        Interval[] ways =
        [
            .. new[] { near, near - Interval.Octave, near + Interval.Octave }
                .OrderBy(static way => Math.Abs(way.Semitones))
                .ThenBy(static way => way.Semitones),
        ];
        var mover = new LickMover(this);
        return mover.Along(ways.Take(2).FirstOrDefault(mover.CanGoAlong, ways[0]), changes, $"to {key}");
    }

    /// <summary>The lick so many octaves higher, or lower where negative, over the same changes; see <see cref="Transpose"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">More than ten octaves either way.</exception>
    public MovedLick InOctave(int octaves)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(octaves, 10);
        ArgumentOutOfRangeException.ThrowIfLessThan(octaves, -10);
        return new LickMover(this).Along(
            new(7 * octaves, 12 * octaves),
            Path.Changes,
            octaves == 0 ? "where it is" : LickMover.Octaves(octaves)
        );
    }

    /// <summary>
    /// The lick in a zone: its pitches, or where fewer of them lie outside then, the same some octaves away, inside the zone's window where they can be,
    /// placed with the least effort of the zone's hand. A run of joined notes stays on one string as long as none of it is more than
    /// two frets outside.
    /// </summary>
    /// <exception cref="ArgumentException">The zone is one of another neck.</exception>
    public MovedLick InZone(Zone zone)
    {
        ArgumentNullException.ThrowIfNull(zone);
        return zone.Neck == Path.Neck
            ? new LickMover(this).InZone(zone)
            : throw new ArgumentException(
                $"The zone is one of {zone.Neck}, \"{Name}\" is played on {Path.Neck}; move it there first with {nameof(On)}.",
                nameof(zone)
            );
    }

    /// <summary>The lick at its pitches on some strings, placed with the least effort; notes that lie on none of them stay on others.</summary>
    /// <exception cref="ArgumentException">No string is given, or one that the neck has not.</exception>
    public MovedLick OnStrings(IReadOnlySet<int> strings, Hand? hand = null)
    {
        ArgumentNullException.ThrowIfNull(strings);
        return strings.Count > 0 && strings.All(number => number >= 1 && number <= Path.Neck.StringCount)
            ? new LickMover(this).OnStrings(strings, hand)
            : throw new ArgumentException(
                strings.Count == 0
                    ? "A lick is played on one string or more; none is given."
                    : $"The neck has the strings 1 to {Path.Neck.StringCount}; {string.Join(", ", strings.Order())} are asked for.",
                nameof(strings)
            );
    }

    /// <summary>
    /// The lick at its pitches on another neck or in another tuning: positions that still sound alike stay, the others are placed with the least effort.
    /// Where more of it lies on the neck some octaves away, it goes there.
    /// </summary>
    public MovedLick On(Neck neck, Hand? hand = null)
    {
        ArgumentNullException.ThrowIfNull(neck);
        return new LickMover(this).On(neck, hand);
    }

    /// <summary>The lick fingered for a hand: at its positions where the hand can play them, else placed anew.</summary>
    public MovedLick For(Hand hand)
    {
        ArgumentNullException.ThrowIfNull(hand);
        return new LickMover(this).For(hand);
    }

    /// <summary>The lick over one chord, which replaces every one that it has now; see <see cref="Refit(Changes)"/>.</summary>
    /// <exception cref="InvalidOperationException">It is over no changes.</exception>
    public MovedLick Refit(Chord chord)
    {
        ArgumentNullException.ThrowIfNull(chord);
        var changes = Path.Changes ?? throw new InvalidOperationException(NoChords);
        var single = changes.Bars.Select(bar => bar.Select(_ => chord)).ToList();
        return new LickMover(this).Refit(new(single, changes.Time), $"to {chord}");
    }

    /// <summary>
    /// The lick over other changes, fitted function by function: a 3 stays a 3, colour tones follow the scale of the new chord, approaches stay
    /// as far from what they lead to. Every note is told of with its reason; those that could not simply keep their function are
    /// <see cref="MovedLick.Exceptions"/>.
    /// </summary>
    /// <remarks>
    /// Roots go the short way, up to a fourth up, else down, or, where chords would part by more than that, the way that keeps the line
    /// together. Where that leaves the strings' frets, or the chords move apart by more than three frets, the lick is placed anew. A bend keeps the function that it begins with and the one that it leads to, and so changes its amount.
    /// </remarks>
    /// <exception cref="InvalidOperationException">It is over no changes.</exception>
    /// <exception cref="ArgumentException">The changes are in another time.</exception>
    /// <exception cref="OverflowException">A note would need more accidentals than a note name has.</exception>
    public MovedLick Refit(Changes changes)
    {
        ArgumentNullException.ThrowIfNull(changes);
        if (Path.Changes is null)
        {
            throw new InvalidOperationException(NoChords);
        }

        return changes.Time == Path.Time
            ? new LickMover(this).Refit(changes, $"to {changes}")
            : throw new ArgumentException(
                $"\"{Name}\" is in {Path.Time}, these changes are in {changes.Time}; changes in {Path.Time} begin with \"{Path.Time}:\".",
                nameof(changes)
            );
    }

    /// <summary>The lick from its last note to its first; see <see cref="Path.Reverse"/>.</summary>
    public MovedLick Reversed() => new LickMover(this).Reversed();

    /// <summary>The lick so many beats later, or earlier where negative, over the same changes: its notes have other functions then.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Its first note would begin before beat 0.</exception>
    public MovedLick Displaced(Fraction beats)
    {
        var first = Path.Notes.Count > 0 ? Path.Notes[0].Start : Path.Beats;
        return first + beats >= Fraction.Zero
            ? new LickMover(this).Displaced(beats.Reduce())
            : throw new ArgumentOutOfRangeException(
                nameof(beats),
                $"{beats}",
                $"The first note begins {first} beats in and can't be played more than that earlier; displace it later by the rest of a bar instead."
            );
    }

    /// <summary>The lick in another rhythm; see <see cref="Path.InRhythm(Rhythm)"/>.</summary>
    public MovedLick InRhythm(Rhythm rhythm)
    {
        ArgumentNullException.ThrowIfNull(rhythm);
        return new LickMover(this).InRhythm(rhythm);
    }

    private string NoChords =>
        $"\"{Name}\" is over no chords, so that its notes have no functions to keep; give it changes with {nameof(Path)}.{nameof(Path.With)}, or use {nameof(Transpose)}.";
}
