using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Learning;

/// <summary>
/// A line as a player wrote it down, one note after the other: tab, with as many of the fingers as are written. Equal when
/// neck and notes are.
/// </summary>
/// <remarks>Text: the notes with spaces between them, <c>6:3-2 6:5-4 5:2-1</c>; the neck is not in it.</remarks>
public sealed record PlayedLine
{
    private readonly Sequence<PlayedNote> notes;

    /// <summary>A line on a neck.</summary>
    /// <exception cref="ArgumentException">A note is not on the neck, or an open string has a finger.</exception>
    public PlayedLine(Neck neck, IEnumerable<PlayedNote> notes)
    {
        ArgumentNullException.ThrowIfNull(neck);
        ArgumentNullException.ThrowIfNull(notes);
        (Neck, this.notes) = (neck, notes.ToSequence());
        for (var index = 0; index < this.notes.Count; index++)
        {
            var note = this.notes[index];
            if (!neck.Has(note.Position))
            {
                throw new ArgumentException(
                    $"Note {index + 1} is at {note.Position}, which is not on the neck {neck}.",
                    nameof(notes)
                );
            }

            if (note.Finger is not null && neck.OpenFret(note.Position.String) == note.Position.Fret)
            {
                throw new ArgumentException(
                    $"Note {index + 1}, {note}, is an open string: no finger holds it.",
                    nameof(notes)
                );
            }
        }
    }

    /// <summary>The neck.</summary>
    public Neck Neck { get; }

    /// <summary>The notes in order.</summary>
    public IReadOnlyList<PlayedNote> Notes => notes;

    /// <summary>The line read from the text of its notes.</summary>
    /// <exception cref="FormatException">The text is no line; the message says where and what would have worked.</exception>
    /// <exception cref="ArgumentException">A note is not on the neck, or an open string has a finger.</exception>
    public static PlayedLine Parse(string text, Neck neck) => new(neck, PlayedNote.ParseList(text));

    /// <summary>The notes as <see cref="Parse"/> reads them.</summary>
    public override string ToString() => string.Join(' ', notes);

    /// <summary>
    /// The least-effort way for a hand to play the line just as it is written, with the fingers and places of the hand that
    /// are not; null if this hand can't.
    /// </summary>
    public FingeredLine? By(Hand hand) => new LineReader(Neck, hand).AsWritten(this);

    /// <summary>Where a hand would rather play the same pitches; null if it can't play them anywhere.</summary>
    public FingeredLine? PlacedBy(Hand hand) => new LineReader(Neck, hand).Placed(this);

    /// <summary>What the line costs a hand as it is written, term by term; empty if this hand can't play it so.</summary>
    public IReadOnlyList<EffortTerm> TermsFor(Hand hand) =>
        By(hand) is { } line ? EffortTerms.Named(new EffortTerms(Neck, hand).AmountsIn(line), hand.Weights) : [];

    /// <summary>
    /// Where a hand would choose otherwise, and which terms of effort decide it; null where it would not, or where it can't
    /// play the line as written.
    /// </summary>
    public LineDifference? DifferenceFor(Hand hand) => LineDifference.Of(this, new(Neck, hand));
}
