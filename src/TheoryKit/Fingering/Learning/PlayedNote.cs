using TheoryKit.Fingering.Hands;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Learning;

/// <summary>
/// A note as a player wrote it down: where it is played and, where that is written, with which finger. Equal when both
/// agree. The default value is no note (string 0).
/// </summary>
/// <remarks>Text: the position, then after a hyphen the finger, 1 to 4, as in <c>6:3-2</c>; <c>6:3</c> leaves the finger open.</remarks>
[ReadAs("a played note")]
public readonly partial record struct PlayedNote : ISpanParsable<PlayedNote>
{
    /// <summary>A note at a position.</summary>
    /// <param name="position">Where it is played.</param>
    /// <param name="finger">The finger that holds it; null for an open string, or where it is not written.</param>
    /// <exception cref="ArgumentOutOfRangeException">The finger is none of the four that play lines.</exception>
    public PlayedNote(Position position, Finger? finger = null)
    {
        if (
            finger is { } held
            && held is < TheoryKit.Fingering.Hands.Finger.Index or > TheoryKit.Fingering.Hands.Finger.Little
        )
        {
            throw new ArgumentOutOfRangeException(
                nameof(finger),
                finger,
                "Lines are played with four fingers, 1 to 4."
            );
        }

        (Position, Finger) = (position, finger);
    }

    /// <summary>Where it is played.</summary>
    public Position Position { get; }

    /// <summary>The finger that holds it; null for an open string, or where it is not written.</summary>
    public Finger? Finger { get; }

    /// <summary>The note as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() => Finger is { } finger ? $"{Position}-{(int)finger}" : $"{Position}";

    /// <summary>Notes with spaces between them.</summary>
    /// <exception cref="FormatException">One of them is not a note; the message says where and what would have worked.</exception>
    public static IReadOnlyList<PlayedNote> ParseList(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Parsing.ParseList<PlayedNote>(text, "a list of played notes", Read);
    }

    private static bool Read(ref TextCursor cursor, out PlayedNote note)
    {
        note = default;
        if (!Position.Read(ref cursor, out var position))
        {
            return false;
        }

        if (!cursor.Take('-'))
        {
            note = new(position);
            return true;
        }

        var start = cursor.Position;
        if (!cursor.TakeNumber(1, out var finger) || finger is < 1 or > 4)
        {
            return cursor.Fail(start, "a finger from 1 to 4");
        }

        note = new(position, (Finger)finger);
        return true;
    }
}
