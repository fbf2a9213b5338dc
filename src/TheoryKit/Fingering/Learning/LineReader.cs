using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Fingering.Learning;

/// <summary>
/// A hand that reads the lines of players on one neck: plays them as written, or its own way. Exact; for one thread.
/// </summary>
internal sealed class LineReader(Neck neck, Hand hand)
{
    private readonly LineSolver solver = new(new(neck, hand));
    private readonly Dictionary<int, IReadOnlyList<Position>> positionsOf = [];

    public Neck Neck => neck;

    public Hand Hand => hand;

    /// <summary>The least-effort way to play a line just as it is written; null if there is none.</summary>
    public FingeredLine? AsWritten(PlayedLine line) =>
        First(
            [.. line.Notes.Select(static note => (IReadOnlyList<Position>)[note.Position])],
            (index, note) =>
                line.Notes[index].Finger is { } finger && note.Finger != finger ? double.PositiveInfinity : 0
        );

    /// <summary>The least-effort fingers for the positions as written.</summary>
    public FingeredLine? Fingered(PlayedLine line) =>
        First([.. line.Notes.Select(static note => (IReadOnlyList<Position>)[note.Position])], null);

    /// <summary>The least-effort way to play the pitches of a line anywhere.</summary>
    public FingeredLine? Placed(PlayedLine line) => First(Candidates(line), null);

    /// <summary>
    /// The least-effort way to play the pitches of a line anywhere, where each note that is not as written costs so much
    /// besides, less than zero where it is to be favoured.
    /// </summary>
    public FingeredLine? Placed(PlayedLine line, double unlike) =>
        First(Candidates(line), (index, note) => IsAsWritten(line.Notes[index], note) ? 0 : unlike);

    /// <summary>How many notes are not as written.</summary>
    public static int Unlike(PlayedLine written, FingeredLine played) =>
        played.Where((note, index) => !IsAsWritten(written.Notes[index], note)).Count();

    public static bool IsAsWritten(PlayedNote written, FingeredNote played) =>
        written.Position == played.Position && (written.Finger is null || written.Finger == played.Finger);

    private FingeredLine? First(
        IReadOnlyList<IReadOnlyList<Position>> candidates,
        Func<int, FingeredNote, double>? extra
    ) => solver.Solve(candidates, 1, extra) is [var first, ..] ? first : null;

    private IReadOnlyList<IReadOnlyList<Position>> Candidates(PlayedLine line) =>
        [.. line.Notes.Select(note => PositionsOf(neck.MidiNumberAt(note.Position)))];

    private IReadOnlyList<Position> PositionsOf(int sound)
    {
        if (!positionsOf.TryGetValue(sound, out var positions))
        {
            positionsOf[sound] = positions = [.. neck.PositionsOf(TheoryKit.Theory.Notes.Pitch.FromMidi(sound))];
        }

        return positions;
    }
}
