using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Grips;

/// <summary>Finds grips that follow one another well.</summary>
public static class ProgressionSearch
{
    /// <summary>The least-effort, least-motion grips for questions asked one after the other. Exact: every grip of each is weighed against every grip of the next.</summary>
    /// <remarks>
    /// Motion is what the hand and the voices do: shifting the hand as in a line, and <see cref="EffortWeights.VoiceStep"/>
    /// for every semitone that a voice goes. The voices go by the least total motion in which every note of both grips has
    /// its voice; voices part and meet where one grip sounds more notes.
    /// </remarks>
    public static GripProgression Find(IEnumerable<GripQuery> questions)
    {
        return GripProgression.Join(
            Check
                .Items(questions)
                .Select(static question => (question, (IReadOnlyList<ChordGrip>)GripSearch.Find(question)))
        );
    }

    /// <summary>The grips for chords that all are asked alike, each under its melody note where one is given.</summary>
    /// <param name="chords">The chords in order.</param>
    /// <param name="like">The question for all; its chord and top do not count.</param>
    /// <param name="melody">The top note for each chord, null for any; or null for no melody.</param>
    /// <exception cref="ArgumentException">There are not as many melody notes as chords.</exception>
    public static GripProgression Find(
        IReadOnlyList<Chord> chords,
        GripQuery like,
        IReadOnlyList<Pitch?>? melody = null
    )
    {
        ArgumentNullException.ThrowIfNull(like);
        chords = Check.Items(chords);
        return melody is null || melody.Count == chords.Count
            ? Find(chords.Select((chord, index) => like with { Chord = chord, Top = melody?[index] }))
            : throw new ArgumentException($"{melody.Count} melody notes for {chords.Count} chords.", nameof(melody));
    }
}
