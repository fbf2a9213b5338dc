using Fractions;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Zones;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Theory.Scales;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Licks.Moves;

/// <summary>The moves: each gives the lick elsewhere or otherwise, and tells note by note what could not be kept.</summary>
/// <remarks>
/// A lick that stays on its strings keeps its fingers where all frets move alike. One that is placed anew gets the fingers of least effort if it had
/// any; <see cref="For"/> asks for them. Techniques are kept where the new place allows them; what is lost or changed is a remark. Of notes
/// struck together that have too few strings there, or that no hand reaches, one goes an octave away or, if that does not help, is left out.
/// </remarks>
public static class LickMoves
{
    /// <summary>
    /// The lick an interval higher or lower, its changes with it: on the same strings where they have the frets, else placed anew with the
    /// least effort; notes beyond the neck an octave nearer.
    /// </summary>
    /// <exception cref="OverflowException">A note would need more accidentals than a note name has, or lie beyond the octaves of a pitch.</exception>
    public static MovedLick Transpose(this Lick lick, Interval interval)
    {
        ArgumentNullException.ThrowIfNull(lick);
        var mover = new LickMover(lick);
        return mover.Along(interval, lick.Path.Changes?.Transpose(interval), new LickMove.ByInterval(interval));
    }

    /// <summary>
    /// The lick in another key of the same kind, up or down, whichever is nearer and stays on the strings; of two tritones down, so that
    /// it comes home again.
    /// </summary>
    /// <exception cref="InvalidOperationException">Its changes name no key, or it has none.</exception>
    /// <exception cref="ArgumentException">One key is major, the other minor; see <see cref="Refit(Lick, Changes)"/>.</exception>
    /// <exception cref="OverflowException">A note would need more accidentals than a note name has.</exception>
    public static MovedLick InKey(this Lick lick, Key key)
    {
        ArgumentNullException.ThrowIfNull(lick);
        var from =
            lick.Path.Changes?.Key
            ?? throw new InvalidOperationException(
                $"\"{lick.Name}\" is in no key that is told: give its changes one with {nameof(Changes.WithKey)}, or use {nameof(Transpose)}."
            );
        var changes = lick.Path.Changes.InKey(key);
        var near = ToneFit.Shift(from.Tonic, key.Tonic);
        Interval[] ways =
        [
            .. new[] { near, near - Interval.Octave, near + Interval.Octave }
                .OrderBy(static way => Math.Abs(way.Semitones))
                .ThenBy(static way => way.Semitones),
        ];
        var mover = new LickMover(lick);
        return mover.Along(ways.Take(2).FirstOrDefault(mover.CanGoAlong, ways[0]), changes, new LickMove.ToKey(key));
    }

    /// <summary>The lick so many octaves higher, or lower where negative, over the same changes; see <see cref="Transpose"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">More than ten octaves either way.</exception>
    public static MovedLick InOctave(this Lick lick, int octaves)
    {
        ArgumentNullException.ThrowIfNull(lick);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(octaves, 10);
        ArgumentOutOfRangeException.ThrowIfLessThan(octaves, -10);
        return new LickMover(lick).Along(
            new(7 * octaves, 12 * octaves),
            lick.Path.Changes,
            new LickMove.ByOctaves(octaves)
        );
    }

    /// <summary>
    /// The lick in a zone: its pitches, or where fewer of them lie outside then, the same some octaves away, inside the zone's window where they can be,
    /// placed with the least effort of the zone's hand. A run of joined notes stays on one string as long as none of it is more than
    /// two frets outside.
    /// </summary>
    /// <exception cref="ArgumentException">The zone is one of another neck.</exception>
    public static MovedLick InZone(this Lick lick, Zone zone)
    {
        ArgumentNullException.ThrowIfNull(lick);
        ArgumentNullException.ThrowIfNull(zone);
        return zone.Neck == lick.Path.Neck
            ? new LickMover(lick).InZone(zone)
            : throw new ArgumentException(
                $"The zone is one of {zone.Neck}, \"{lick.Name}\" is played on {lick.Path.Neck}; move it there first with {nameof(On)}.",
                nameof(zone)
            );
    }

    /// <summary>The lick at its pitches on some strings, placed with the least effort; notes that lie on none of them stay on others.</summary>
    /// <exception cref="ArgumentException">No string is given, or one that the neck has not.</exception>
    public static MovedLick OnStrings(this Lick lick, IReadOnlySet<int> strings, Hand? hand = null)
    {
        ArgumentNullException.ThrowIfNull(lick);
        ArgumentNullException.ThrowIfNull(strings);
        return strings.Count > 0 && strings.All(number => number >= 1 && number <= lick.Path.Neck.StringCount)
            ? new LickMover(lick).OnStrings(strings, hand)
            : throw new ArgumentException(
                strings.Count == 0
                    ? "A lick is played on one string or more; none is given."
                    : $"The neck has the strings 1 to {lick.Path.Neck.StringCount}; {string.Join(", ", strings.Order())} are asked for.",
                nameof(strings)
            );
    }

    /// <summary>
    /// The lick at its pitches on another neck or in another tuning: positions that still sound alike stay, the others are placed with the least effort.
    /// Where more of it lies on the neck some octaves away, it goes there.
    /// </summary>
    public static MovedLick On(this Lick lick, Neck neck, Hand? hand = null)
    {
        ArgumentNullException.ThrowIfNull(lick);
        ArgumentNullException.ThrowIfNull(neck);
        return new LickMover(lick).On(neck, hand);
    }

    /// <summary>The lick fingered for a hand: at its positions where the hand can play them, else placed anew.</summary>
    public static MovedLick For(this Lick lick, Hand hand)
    {
        ArgumentNullException.ThrowIfNull(lick);
        ArgumentNullException.ThrowIfNull(hand);
        return new LickMover(lick).For(hand);
    }

    /// <summary>The lick over one chord, which replaces every one that it has now; see <see cref="Refit(Lick, Changes)"/>.</summary>
    /// <exception cref="InvalidOperationException">It is over no changes.</exception>
    public static MovedLick Refit(this Lick lick, Chord chord)
    {
        ArgumentNullException.ThrowIfNull(lick);
        ArgumentNullException.ThrowIfNull(chord);
        var changes = lick.Path.Changes ?? throw new InvalidOperationException(NoChords(lick));
        var single = changes.Bars.Select(bar => bar.Select(_ => chord)).ToList();
        return new LickMover(lick).Refit(new(single, changes.Time), new LickMove.ToChord(chord));
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
    public static MovedLick Refit(this Lick lick, Changes changes)
    {
        ArgumentNullException.ThrowIfNull(lick);
        ArgumentNullException.ThrowIfNull(changes);
        if (lick.Path.Changes is null)
        {
            throw new InvalidOperationException(NoChords(lick));
        }

        return changes.Time == lick.Path.Time
            ? new LickMover(lick).Refit(changes, new LickMove.ToChanges(changes))
            : throw new ArgumentException(
                $"\"{lick.Name}\" is in {lick.Path.Time}, these changes are in {changes.Time}; changes in {lick.Path.Time} begin with \"{lick.Path.Time}:\".",
                nameof(changes)
            );
    }

    /// <summary>The lick from its last note to its first; see <see cref="Path.Reverse"/>.</summary>
    public static MovedLick Reversed(this Lick lick) => new LickMover(Check.NotNull(lick)).Reversed();

    /// <summary>The lick so many beats later, or earlier where negative, over the same changes: its notes have other functions then.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Its first note would begin before beat 0, or it would end after <see cref="Path.MaxBeats"/>.</exception>
    public static MovedLick Displaced(this Lick lick, Fraction beats)
    {
        ArgumentNullException.ThrowIfNull(lick);
        var first = lick.Path.Notes.Count > 0 ? lick.Path.Notes[0].Start : lick.Path.Beats;
        Check.Finite(beats);
        if (lick.Path.Beats + beats > Path.MaxBeats)
        {
            throw new ArgumentOutOfRangeException(
                nameof(beats),
                $"{beats}",
                $"The lick lasts {lick.Path.Beats} beats and would end beyond beat {Path.MaxBeats}, the last that a path has."
            );
        }

        return first + beats >= Fraction.Zero
            ? new LickMover(lick).Displaced(beats.Reduce())
            : throw new ArgumentOutOfRangeException(
                nameof(beats),
                $"{beats}",
                $"The first note begins {first} beats in and can't be played more than that earlier; displace it later by the rest of a bar instead."
            );
    }

    /// <summary>The lick in another rhythm; see <see cref="Path.InRhythm(Rhythm)"/>.</summary>
    public static MovedLick InRhythm(this Lick lick, Rhythm rhythm)
    {
        ArgumentNullException.ThrowIfNull(lick);
        ArgumentNullException.ThrowIfNull(rhythm);
        return new LickMover(lick).InRhythm(rhythm);
    }

    private static string NoChords(Lick lick) =>
        $"\"{lick.Name}\" is over no chords, so that its notes have no functions to keep; give it changes with {nameof(Path)}.{nameof(Path.With)}, or use {nameof(Transpose)}.";
}
