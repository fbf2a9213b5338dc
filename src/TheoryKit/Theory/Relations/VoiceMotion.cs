using TheoryKit.Theory.Chords;
using TheoryKit.Values;

namespace TheoryKit.Theory.Relations;

/// <summary>The way of one voice from a tone of one chord to a tone of the next.</summary>
/// <param name="From">Where it comes from.</param>
/// <param name="To">Where it goes.</param>
/// <param name="Semitones">
/// The shortest way, octaves aside: up if positive, down if negative, 0 if the tone is held; from -5 to 6. A tritone, as far up as
/// down, is 6.
/// </param>
public readonly record struct VoiceMove(ChordTone From, ChordTone To, int Semitones)
{
    /// <summary>The shortest way, octaves aside, from -5 to 6.</summary>
    public int Semitones
    {
        get;
        init => field = Check.Range(value, -5, 6, nameof(Semitones));
    } = Check.Range(Semitones, -5, 6);

    /// <summary>How far, in semitones: 0 to 6.</summary>
    public int Distance => Math.Abs(Semitones);

    /// <summary>Whether the tone stays, whatever it is called.</summary>
    public bool IsHeld => Semitones == 0;

    /// <summary>The move as in <c>B -> C +1</c>.</summary>
    public override string ToString() => $"{From.Name} -> {To.Name} {Semitones:+0;-0;0}";
}

/// <summary>
/// The least motion between two chords: which tone goes where so that all voices together go the fewest semitones. Equal when
/// the chords are.
/// </summary>
/// <remarks>
/// There are as many voices as the larger chord has tones, octaves aside. Each tone of both chords has a voice; so with chords of
/// one size every tone has exactly one, and of a smaller chord some tones are doubled: voices part from them or meet on them. Of
/// several ways with the same total the one that holds most tones is taken, then the one whose moves are most even (the
/// smallest sum of squares), then the first in the order of the larger chord's tones. The answer is exact: a search over all assignments by
/// dynamic programming over which tones of the smaller chord have a voice.
/// </remarks>
[EqualBy(nameof(From), nameof(To))]
public sealed partial class VoiceMotion : IEquatable<VoiceMotion>
{
    private VoiceMotion(Chord from, Chord to, IReadOnlyList<VoiceMove> moves)
    {
        From = from;
        To = to;
        Moves = moves;
        Total = moves.Sum(static move => move.Distance);
        Held = moves.Count(static move => move.IsHeld);
    }

    /// <summary>The chord the voices come from.</summary>
    public Chord From { get; }

    /// <summary>The chord they go to.</summary>
    public Chord To { get; }

    /// <summary>The voices, in the order of the first chord's tones, then of the second's.</summary>
    public IReadOnlyList<VoiceMove> Moves { get; }

    /// <summary>How far all voices go together, in semitones.</summary>
    public int Total { get; }

    /// <summary>How many voices stay where they are.</summary>
    public int Held { get; }

    /// <summary>The least motion from one chord to another.</summary>
    /// <exception cref="OverflowException">A tone would need more accidentals than a note name has.</exception>
    public static VoiceMotion Between(Chord from, Chord to)
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
        var (starts, ends) = (ChordTone.Of(from), ChordTone.Of(to));
        var pairs = LeastAssignment.Of(
            [.. starts.Select(static tone => tone.PitchClass)],
            [.. ends.Select(static tone => tone.PitchClass)]
        );
        return new(
            from,
            to,
            pairs
                .Select(pair =>
                {
                    var (start, end) = (starts[pair.From], ends[pair.To]);
                    return new VoiceMove(start, end, LeastAssignment.Way(start.PitchClass, end.PitchClass));
                })
                .ToSequence()
        );
    }

    /// <summary>The moves, as in <c>D -> D 0, F -> E -1</c>.</summary>
    public override string ToString() => string.Join(", ", Moves);
}
