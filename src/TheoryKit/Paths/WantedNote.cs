using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Paths;

/// <summary>A note that is to be moved: what it shall sound, before it has a place.</summary>
internal sealed record WantedNote
{
    /// <summary>What it came from, with start, length and techniques as they shall be.</summary>
    public required PathNote Note
    {
        get;
        init => field = Check.NotNull(value, nameof(Note));
    }

    /// <summary>The pitch of the fret.</summary>
    public required Pitch Pitch { get; init; }

    /// <summary>How far it is bent, in cents.</summary>
    public int Bend { get; init; }

    /// <summary>Whether the string has to be fretted, because it is bent or was.</summary>
    public bool IsHeld { get; init; }

    /// <summary>Of a natural harmonic: what sounds.</summary>
    public Pitch? Harmonic { get; init; }

    /// <summary>How many frets away the other note of a trill is.</summary>
    public int? Trill { get; init; }

    /// <summary>The number of the note that it sounds on from, on one string; null for none.</summary>
    public int? Before { get; init; }

    /// <summary>Whether it would rather not be an open string, for a slide or vibrato.</summary>
    public bool LikesFret { get; init; }

    /// <summary>Whether it is not played at all, because no string is free for it.</summary>
    public bool IsLeftOut { get; init; }

    /// <summary>Whether it is a click that keeps its string and has no pitch worth keeping.</summary>
    public bool IsDead => Note.IsDead;

    /// <summary>The notes of a path as they are.</summary>
    public static List<WantedNote> Of(Path path)
    {
        var before = TechniqueFit.Before(path);
        var numbers = new Dictionary<PathNote, int>(ReferenceEqualityComparer.Instance);
        var wanted = new List<WantedNote>(path.Notes.Count);
        for (var index = 0; index < path.Notes.Count; index++)
        {
            var note = path.Notes[index];
            numbers[note] = index;
            int? joined =
                note.Techniques.Any(static technique => technique.IsJoined) && before[index] is { } from
                    ? numbers[from]
                    : null;
            wanted.Add(
                new()
                {
                    Note = note,
                    Pitch = note.Pitch,
                    Bend = note.Bend,
                    IsHeld = note.Techniques.Any(static technique => technique.IsBent) || note.Has(Technique.Release),
                    Harmonic = note.Has(Technique.NaturalHarmonic) ? path.SoundingPitch(note) : null,
                    Trill = note.TrillFret - note.Position.Fret,
                    Before = joined,
                    LikesFret =
                        note.Position.Fret != path.Neck.OpenFret(note.Position.String)
                        && note.Techniques.Any(static technique =>
                            technique == Technique.Slide
                            || technique == Technique.Vibrato
                            || technique == Technique.Tap
                            || technique == Technique.SlideInFromAbove
                            || technique == Technique.SlideInFromBelow
                            || technique == Technique.SlideOutDown
                            || technique == Technique.SlideOutUp
                        ),
                }
            );
        }

        return wanted;
    }

    /// <summary>The same an interval away.</summary>
    public WantedNote Moved(Interval interval) =>
        this with
        {
            Pitch = Pitch + interval,
            Harmonic = Harmonic is { } sound ? sound + interval : null,
        };

    /// <summary>The same some octaves away.</summary>
    public WantedNote InOctave(int octaves) => Moved(new(7 * octaves, 12 * octaves));

    /// <summary>Whether pitches go as far.</summary>
    public bool HasOctave(int octaves) =>
        Pitch.Octave + octaves is >= Pitch.MinOctave and <= Pitch.MaxOctave
        && (Harmonic is not { } sound || sound.Octave + octaves is >= Pitch.MinOctave and <= Pitch.MaxOctave);

    /// <summary>Where it can be played on a neck; of a click every fret of its string.</summary>
    public List<Position> Places(Neck neck)
    {
        if (IsDead && !IsHeld)
        {
            var number = Math.Min(Note.Position.String, neck.StringCount);
            return
            [
                .. Enumerable
                    .Range(neck.OpenFret(number), neck.Frets - neck.OpenFret(number) + 1)
                    .Select(fret => new Position(number, fret))
                    .Where(position => Fits(neck, position)),
            ];
        }

        if (Harmonic is { } sound)
        {
            var nodes = new List<Position>();
            for (var number = 1; number <= neck.StringCount; number++)
            {
                var open = neck.OpenFret(number);
                for (var fret = open; fret <= neck.Frets; fret++)
                {
                    if (
                        PathChecks.NodeAbove(fret - open) is { } above
                        && neck.MidiNumberAt(new(number, open)) + above.Semitones == sound.MidiNumber
                        && Fits(neck, new(number, fret))
                    )
                    {
                        nodes.Add(new(number, fret));
                    }
                }
            }

            return nodes;
        }

        return Preferred(neck, AtPitch(neck));
    }

    /// <summary>Where it can be played on some strings of a neck; a click too at its pitch only.</summary>
    public List<Position> PlacesAtPitch(Neck neck, Func<int, bool> isAllowed)
    {
        var places = Harmonic is null || (IsDead && !IsHeld) ? AtPitch(neck) : Places(neck);
        return Preferred(neck, places.Where(position => isAllowed(position.String)));
    }

    private IEnumerable<Position> AtPitch(Neck neck) => neck.PositionsOf(Pitch).Where(position => Fits(neck, position));

    /// <summary>Those of some places where the note can be as it was played.</summary>
    private List<Position> Preferred(Neck neck, IEnumerable<Position> places)
    {
        var all = places.ToList();
        var fretted = LikesFret ? all.FindAll(position => position.Fret != neck.OpenFret(position.String)) : all;
        return fretted.Count > 0 ? fretted : all;
    }

    /// <summary>Whether a position has what the note needs: a finger to bend with, the other fret of a trill.</summary>
    public bool Fits(Neck neck, Position position) =>
        neck.Has(position)
        && (!IsHeld || position.Fret > neck.OpenFret(position.String))
        && (
            Trill is not { } trill
            || (position.Fret + trill >= neck.OpenFret(position.String) && position.Fret + trill <= neck.Frets)
        );
}
