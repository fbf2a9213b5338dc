using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Tunings.Necks;

/// <summary>
/// One string as tuned: the pitch it gives open, and where it begins. The default value is C0 from the nut.
/// </summary>
/// <remarks>
/// A short string (the fifth of a banjo) begins at a fret: <c>G4@5</c> sounds G4 open and A4 at fret 7. Text: a pitch, then
/// <c>@</c> and the fret if it is short. Open pitches go from C-1 (MIDI 0) to C8 (MIDI 108), so that every fret of every
/// string has a pitch.
/// </remarks>
[ReadAs("a tuned string")]
public readonly partial record struct TuningString : ISpanParsable<TuningString>
{
    /// <summary>The MIDI number of the highest open string, C8; the lowest is 0, C-1.</summary>
    public const int MaxMidiNumber = 108;

    private readonly byte start;

    /// <summary>A string that sounds <paramref name="open"/> open and begins at <paramref name="start"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The start is not 0 to <see cref="Position.MaxFret"/>, or the pitch is lower
    /// than C-1 or higher than C8.</exception>
    public TuningString(Pitch open, int start = 0)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(start);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(start, Position.MaxFret);
        if (!IsInRange(open))
        {
            throw new ArgumentOutOfRangeException(nameof(open), open, $"An open string is {Range}.");
        }

        Open = open;
        this.start = (byte)start;
    }

    /// <summary>The pitch of the open string, with no capo.</summary>
    public Pitch Open { get; }

    /// <summary>The fret at which the string begins: 0, the nut, unless it is short.</summary>
    public int Start => start;

    /// <summary>The string as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() => start == 0 ? $"{Open}" : $"{Open}@{start}";

    internal static bool Read(ref TextCursor cursor, out TuningString value)
    {
        value = default;
        var pitchStart = cursor.Position;
        if (!Pitch.Read(ref cursor, out var open))
        {
            return false;
        }

        if (!IsInRange(open))
        {
            return cursor.Fail(pitchStart, $"a pitch that is {Range}");
        }

        var fret = 0;
        if (cursor.Take('@'))
        {
            var start = cursor.Position;
            if (!cursor.TakeNumber(2, out fret) || fret > Position.MaxFret)
            {
                return cursor.Fail(start, $"the fret where the short string begins, 0 to {Position.MaxFret}");
            }
        }

        value = new(open, fret);
        return true;
    }

    private const string Range = "C-1 to C8";

    private static bool IsInRange(Pitch open) => open.MidiNumber is >= 0 and <= MaxMidiNumber;
}
