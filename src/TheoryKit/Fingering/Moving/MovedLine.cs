using System.Collections.Immutable;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Turns;

namespace TheoryKit.Fingering.Moving;

/// <summary>
/// A line as it is played in one tuning, moved to another at the same pitches: which positions stay, and two ways to play it
/// there, the easiest and the one that keeps what can stay.
/// </summary>
/// <remarks>A position stays when the same string and fret sound the same pitch in the new tuning. Immutable.</remarks>
public sealed class MovedLine
{
    private MovedLine(
        Scordatura scordatura,
        Neck from,
        Hand hand,
        IReadOnlyList<Position> positions,
        FingeredLine? before,
        NoLineReason? reasonBefore
    )
    {
        (Scordatura, From, To, Hand, Before, ReasonBefore) = (
            scordatura,
            from,
            from.With(scordatura.To),
            hand,
            before,
            reasonBefore
        );
        var stays = positions.Select(position => from.MidiNumberAt(position) == To.MidiNumberAt(position)).ToList();
        var pitches = positions.Select(position => Pitch.FromMidi(from.MidiNumberAt(position))).ToList();
        var easiest = LineSearch.Place(To, pitches, hand);
        var kept = LineSearch.Find(
            new()
            {
                Neck = To,
                Hand = hand,
                Notes =
                [
                    .. positions.Select(
                        (position, index) => stays[index] ? LineNote.At(position) : LineNote.Of(pitches[index], To)
                    ),
                ],
            }
        );
        (Easiest, Reason) = (First(easiest), easiest.Reason);
        (Kept, ReasonKept) = (First(kept), kept.Reason);
        Notes = ImmutableArray.CreateRange(
            positions.Select(
                (position, index) =>
                    new MovedNote(
                        pitches[index],
                        position,
                        stays[index],
                        Easiest?[index].Position,
                        Kept?[index].Position
                    )
            )
        );
    }

    /// <summary>What is turned.</summary>
    public Scordatura Scordatura { get; }

    /// <summary>The neck in the old tuning.</summary>
    public Neck From { get; }

    /// <summary>The neck in the new one.</summary>
    public Neck To { get; }

    /// <summary>The hand.</summary>
    public Hand Hand { get; }

    /// <summary>The line in the old tuning, with its fingers; null if this hand can't play it there.</summary>
    public FingeredLine? Before { get; }

    /// <summary>Why the hand can't play it in the old tuning; null where it can.</summary>
    public NoLineReason? ReasonBefore { get; }

    /// <summary>The easiest version: the least effort among all positions of every pitch; null if there is none.</summary>
    public FingeredLine? Easiest { get; }

    /// <summary>Why there is no version in the new tuning; null where there is one.</summary>
    public NoLineReason? Reason { get; }

    /// <summary>The least effort with every position kept that stays; null if there is none. Never less than that of <see cref="Easiest"/>.</summary>
    public FingeredLine? Kept { get; }

    /// <summary>Why there is no version that keeps what stays; null where there is one.</summary>
    public NoLineReason? ReasonKept { get; }

    /// <summary>Note by note.</summary>
    public IReadOnlyList<MovedNote> Notes { get; }

    /// <summary>How many positions stay.</summary>
    public int Staying => Notes.Count(static note => note.Stays);

    /// <summary>Positions played one after the other, moved to another tuning.</summary>
    /// <param name="positions">The positions in order.</param>
    /// <param name="from">The neck in the old tuning.</param>
    /// <param name="to">The new tuning of the same strings.</param>
    /// <param name="hand">The hand; the average one if null.</param>
    /// <exception cref="ArgumentException">No position, or one that is not on the neck; or not a tuning of the same instrument.</exception>
    public static MovedLine Of(IEnumerable<Position> positions, Neck from, Tuning to, Hand? hand = null)
    {
        ArgumentNullException.ThrowIfNull(positions);
        ArgumentNullException.ThrowIfNull(from);
        var scordatura = new Scordatura(from.Tuning, to);
        var all = Checked([.. positions], from);
        var line = LineSearch.Finger(from, all, hand);
        return new(scordatura, from, hand ?? Hand.Average, all, First(line), line.Reason);
    }

    /// <summary>A line with its fingers, moved to another tuning.</summary>
    /// <inheritdoc cref="Of(IEnumerable{Position}, Neck, Tuning, Hand?)"/>
    /// <param name="line">The line.</param>
    /// <param name="from">The neck in the old tuning.</param>
    /// <param name="to">The new tuning of the same strings.</param>
    /// <param name="hand">The hand; the average one if null.</param>
    public static MovedLine Of(FingeredLine line, Neck from, Tuning to, Hand? hand = null)
    {
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(from);
        var scordatura = new Scordatura(from.Tuning, to);
        var positions = Checked([.. line.Select(static note => note.Position)], from);
        return new(scordatura, from, hand ?? Hand.Average, positions, line, null);
    }

    private static FingeredLine? First(LineAnswer answer) => answer.Count > 0 ? answer[0] : null;

    private static List<Position> Checked(List<Position> positions, Neck from)
    {
        if (positions.Count == 0)
        {
            throw new ArgumentException("There is nothing to move: give at least one position.", nameof(positions));
        }

        var wrong = positions.FindIndex(position => !from.Has(position));
        return wrong < 0
            ? positions
            : throw new ArgumentException(
                $"Note {wrong + 1} is at {positions[wrong]}, which is not on the neck {from}.",
                nameof(positions)
            );
    }
}
