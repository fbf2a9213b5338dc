using Fractions;
using TheoryKit.Theory;

namespace TheoryKit.Paths;

/// <summary>Finds the part of every note by the rules of <see cref="LickAnalysis"/>, in time linear in the notes.</summary>
internal sealed class LickAnalyser
{
    /// <summary>The most notes that surround one target.</summary>
    private const int MostAround = 4;

    /// <summary>The most steps in a row that lead to one target: the chromatic notes between a root and its major third.</summary>
    private const int MostSteps = 3;

    private static readonly Fraction Sixteenth = new(1, 16);

    private readonly Path path;
    private readonly Read[] notes;
    private readonly List<Stretch> stretches;
    private readonly Fraction pulse;
    private readonly int keyMask;

    // Notes that start together, dead and slid-from ones left out, as places in an array of indices.
    private readonly int[] line;
    private readonly List<int> groups = [];

    private LickAnalyser(Path path)
    {
        this.path = path;
        notes = new Read[path.Notes.Count];
        line = new int[notes.Length];
        pulse = path.Time.IsCompound ? 3 : Fraction.One;
        keyMask = KeyMask(path.Changes?.Key);
        stretches = Stretches(path);
    }

    /// <summary>A time over one chord, or none, equal neighbours joined.</summary>
    public readonly record struct Stretch(Chord? Chord, Fraction Start, Fraction End);

    public static (AnalysedNote[] Notes, List<Stretch> Stretches) Run(Path path)
    {
        var analyser = new LickAnalyser(path);
        analyser.ReadNotes();
        analyser.FindGraces();
        analyser.Group();
        analyser.FindHeldAnticipations();
        analyser.FindEnclosures();
        for (var index = analyser.notes.Length - 1; index >= 0; index--)
        {
            analyser.Explain(index);
        }

        return (analyser.Results(), analyser.stretches);
    }

    /// <summary>The chords of a path as they follow each other, up to its end.</summary>
    private static List<Stretch> Stretches(Path path)
    {
        var list = new List<Stretch>();
        if (path.Changes is not { } changes)
        {
            list.Add(new(null, Fraction.Zero, path.Beats));
            return list;
        }

        for (var round = Fraction.Zero; round < path.Beats; round += changes.Beats)
        {
            foreach (var span in changes.Chords)
            {
                var start = round + span.Start;
                if (start >= path.Beats)
                {
                    break;
                }

                var end = start + span.Length;
                if (list.Count > 0 && list[^1].Chord == span.Chord)
                {
                    list[^1] = list[^1] with { End = end };
                }
                else
                {
                    list.Add(new(span.Chord, start, end));
                }
            }
        }

        return list;
    }

    private static int KeyMask(Key? key)
    {
        if (key is not { } known)
        {
            return 0;
        }

        var mask = 0;
        foreach (var degree in known.Scale.Formula)
        {
            mask |= 1 << ((known.Tonic.PitchClass + degree.PitchClass) % 12);
        }

        return known.IsMinor
            ? mask | (1 << ((known.Tonic.PitchClass + 9) % 12)) | (1 << ((known.Tonic.PitchClass + 11) % 12))
            : mask;
    }

    private void ReadNotes()
    {
        var (bar, barStart, stretch) = (0, Fraction.Zero, 0);
        var barLength = (Fraction)path.Time.Beats;
        var barEnd = barLength;
        for (var index = 0; index < notes.Length; index++)
        {
            var note = path.Notes[index];
            while (note.Start >= barEnd)
            {
                (bar, barStart, barEnd) = (bar + 1, barEnd, barEnd + barLength);
            }

            while (stretch + 1 < stretches.Count && note.Start >= stretches[stretch + 1].Start)
            {
                stretch++;
            }

            var chord = stretches[stretch].Chord;
            ref var read = ref notes[index];
            read.Bar = bar;
            read.Beat = (note.Start - barStart).Reduce();
            read.Stretch = stretch;
            read.Target = -1;
            read.End = note.End;
            Hear(ref read, path.Sounding(note, chord), chord);
            if (note.Has(Technique.Dead))
            {
                (read.Part, read.Function, read.Role, read.IsNamed) = (NotePart.Dead, null, ToneRole.Other, false);
            }
        }
    }

    private static void Hear(ref Read read, Pitch pitch, Chord? chord)
    {
        read.Part = NotePart.NoChord;
        read.Pitch = pitch;
        read.Sound = pitch.MidiNumber;
        if (chord is null)
        {
            return;
        }

        read.Function = Path.FunctionOver(chord, pitch);
        read.Role = ToneRoles.Over(read.Function.Value, chord.Formula);
        read.IsNamed = Names(chord, pitch);
        if (read is { IsNamed: true, Role: ToneRole.Other })
        {
            read.Role = ToneRole.ColourTone; // the bass after a slash
        }
    }

    private static bool Names(Chord chord, Pitch pitch) =>
        chord.FunctionOf(pitch.Name) is not null || chord.Bass.PitchClass == pitch.PitchClass;

    private void FindGraces()
    {
        var next = new int[path.Neck.StringCount + 1];
        for (var index = notes.Length - 1; index >= 0; index--)
        {
            var note = path.Notes[index];
            var after = next[note.Position.String] - 1;
            next[note.Position.String] = index + 1;
            ref var read = ref notes[index];
            if (
                after < 0
                || read.Part == NotePart.Dead
                || notes[after].Part == NotePart.Dead
                || !path.Notes[after].Has(Technique.Slide)
                || path.Notes[after].Start != read.End
                || note.Length >= path.Notes[after].Length
                || note.Length * path.Time.BeatLength > Sixteenth
            )
            {
                continue;
            }

            Hear(ref read, notes[after].Pitch, stretches[read.Stretch].Chord);
            (read.Part, read.Target) = (NotePart.Grace, after);
        }
    }

    private void Group()
    {
        var count = 0;
        for (var index = 0; index < notes.Length; index++)
        {
            ref var read = ref notes[index];
            read.Group = -1;
            if (read.Part is NotePart.Dead or NotePart.Grace)
            {
                continue;
            }

            if (count == 0 || path.Notes[line[count - 1]].Start != path.Notes[index].Start)
            {
                groups.Add(count);
            }

            read.Group = groups.Count - 1;
            read.IsStable = IsTone(read) || read.IsNamed || IsSettled(index);
            line[count++] = index;
        }

        groups.Add(count);
    }

    private static bool IsTone(in Read read) => read.Role is ToneRole.Root or ToneRole.ChordTone;

    private bool IsSettled(int index) => notes[index].Role == ToneRole.ColourTone && path.Notes[index].Length > pulse;

    /// <summary>Of the notes that start with the group, the one nearest to a sound; -1 where there is no such group.</summary>
    private int Nearest(int group, int sound)
    {
        if (group < 0 || group >= groups.Count - 1)
        {
            return -1;
        }

        var best = line[groups[group]];
        for (var at = groups[group] + 1; at < groups[group + 1]; at++)
        {
            if (Math.Abs(notes[line[at]].Sound - sound) < Math.Abs(notes[best].Sound - sound))
            {
                best = line[at];
            }
        }

        return best;
    }

    private int Next(int index) =>
        Nearest(notes[index].Group + 1, notes[index].Sound) is >= 0 and var next && Follows(index, next) ? next : -1;

    private int Before(int index) =>
        Nearest(notes[index].Group - 1, notes[index].Sound) is >= 0 and var before && Follows(before, index)
            ? before
            : -1;

    /// <summary>Whether no more than a pulse of silence parts two notes.</summary>
    private bool Follows(int index, int next) =>
        notes[index].End >= path.Notes[next].Start || path.Notes[next].Start - notes[index].End <= pulse;

    /// <summary>How long before the next chord a note starts, where that is at most a pulse and it does not start with its own chord.</summary>
    private Fraction? AheadOf(int index)
    {
        var stretch = notes[index].Stretch;
        if (stretch + 1 >= stretches.Count || stretches[stretch + 1].Chord is null)
        {
            return null;
        }

        var start = path.Notes[index].Start;
        return start > stretches[stretch].Start && stretches[stretch + 1].Start - start is var ahead && ahead <= pulse
            ? ahead.Reduce()
            : null;
    }

    private void FindHeldAnticipations()
    {
        for (var index = 0; index < notes.Length; index++)
        {
            ref var read = ref notes[index];
            if (
                read.Group < 0
                || read.Stretch + 1 >= stretches.Count
                || stretches[read.Stretch + 1].Start is var change && read.End <= change
                || AheadOf(index) is not { } ahead
                || read.End - change < ahead
                || !Names(stretches[read.Stretch + 1].Chord!, read.Pitch)
            )
            {
                continue;
            }

            (read.Part, read.Ahead, read.IsStable) = (NotePart.Anticipation, ahead, true);
        }
    }

    private void FindEnclosures()
    {
        Span<int> around = stackalloc int[MostAround];
        for (var target = 0; target < notes.Length; target++)
        {
            ref readonly var aim = ref notes[target];
            if (aim.Group < 2 || !aim.IsStable)
            {
                continue;
            }

            var (count, isAbove, isBelow, isForeign, last) = (0, false, false, false, target);
            while (count < MostAround && Nearest(notes[last].Group - 1, aim.Sound) is >= 0 and var before)
            {
                ref readonly var side = ref notes[before];
                var away = side.Sound - aim.Sound;
                var isOwnTone = IsTone(side) && side.Stretch == aim.Stretch;
                if (
                    Math.Abs(away) is 0 or > 2
                    || isOwnTone
                    || side.Part == NotePart.Anticipation
                    || !Follows(before, last)
                )
                {
                    break;
                }

                around[count++] = before;
                isAbove |= away > 0;
                isBelow |= away < 0;
                isForeign |= !IsTone(side);
                last = before;
            }

            if (!isAbove || !isBelow || !isForeign)
            {
                continue;
            }

            foreach (var side in around[..count])
            {
                if (notes[side].Target < 0)
                {
                    notes[side].Target = target;
                    notes[side].IsAround = true;
                }
            }
        }
    }

    /// <summary>The part of a note, all later ones being known.</summary>
    private void Explain(int index)
    {
        ref var read = ref notes[index];
        if (read.Group < 0 || read.Part == NotePart.Anticipation)
        {
            return;
        }

        if (IsTone(read))
        {
            read.Part = NotePart.ChordTone;
        }
        else if (read.IsAround)
        {
            read.Part = NotePart.Enclosure;
        }
        else if (read.IsNamed || IsSettled(index))
        {
            read.Part = NotePart.ColourTone;
        }
        else if (!IsStruckAgain(ref read, index) && !LeadsOn(ref read, index))
        {
            if (AheadOf(index) is { } ahead && Names(stretches[read.Stretch + 1].Chord!, read.Pitch))
            {
                (read.Part, read.Ahead, read.IsStable) = (NotePart.Anticipation, ahead, true);
            }
            else if (read.Role == ToneRole.ColourTone)
            {
                read.Part = NotePart.ColourTone;
            }
            else if (stretches[read.Stretch].Chord is not null)
            {
                read.Part = NotePart.Outside;
            }
        }
    }

    /// <summary>A note struck again does what it does then; over the next chord, that it names, it is anticipated.</summary>
    private bool IsStruckAgain(ref Read read, int index)
    {
        if (Next(index) is var next && (next < 0 || notes[next].Sound != read.Sound))
        {
            return false;
        }

        if (notes[next] is { IsNamed: true } again && again.Stretch == read.Stretch + 1 && AheadOf(index) is { } ahead)
        {
            (read.Part, read.Ahead, read.IsStable, read.Target) = (NotePart.Anticipation, ahead, true, next);
            return true;
        }

        if (notes[next].Part.Leads())
        {
            (read.Part, read.Target, read.Steps) = (notes[next].Part, notes[next].Target, notes[next].Steps);
            return true;
        }

        return false;
    }

    private bool LeadsOn(ref Read read, int index)
    {
        if (Next(index) is var next && (next < 0 || Math.Abs(notes[next].Sound - read.Sound) is 0 or > 2))
        {
            return false;
        }

        var way = Math.Sign(notes[next].Sound - read.Sound);
        var before = Before(index);
        var comesFrom = before >= 0 && notes[before].IsStable ? before : -1;
        var comesByStep = comesFrom >= 0 && read.Sound - notes[comesFrom].Sound is var step && step * way is 1 or 2;
        if (notes[next].IsStable)
        {
            read.Target = next;
            read.Steps = 1;
            read.Part =
                comesByStep ? NotePart.Passing
                : comesFrom >= 0 && notes[comesFrom].Sound == notes[next].Sound ? NotePart.Neighbour
                : NotePart.Approach;
            return true;
        }

        if (
            notes[next] is not { Part: NotePart.Approach, Steps: < MostSteps } on
            || Math.Sign(notes[on.Target].Sound - on.Sound) != way
        )
        {
            return false;
        }

        (read.Target, read.Steps) = (on.Target, on.Steps + 1);
        read.Part = comesByStep ? NotePart.Passing : NotePart.Approach;
        for (var after = next; comesByStep && after >= 0 && after != on.Target; after = Next(after))
        {
            notes[after].Part = NotePart.Passing;
        }

        return true;
    }

    private AnalysedNote[] Results()
    {
        var strong = 0UL;
        foreach (var beat in path.Time.StrongBeats)
        {
            strong |= 1UL << beat;
        }

        var results = new AnalysedNote[notes.Length];
        for (var index = 0; index < results.Length; index++)
        {
            ref readonly var read = ref notes[index];
            var next =
                read.Part == NotePart.Anticipation && read.Stretch + 1 < stretches.Count
                    ? stretches[read.Stretch + 1].Chord
                    : null;
            results[index] = new()
            {
                Index = index,
                Note = path.Notes[index],
                Sounding = read.Pitch,
                Chord = stretches[read.Stretch].Chord,
                Function = read.Function,
                Role = read.Role,
                Part = read.Part,
                Target = read.Target < 0 ? null : read.Target,
                Step = read.Target < 0 ? 0 : notes[read.Target].Sound - read.Sound,
                IsChromatic = read.Part.Leads() && IsForeign(read),
                Anticipates = next,
                AnticipatedFunction = next is null ? null : Path.FunctionOver(next, read.Pitch),
                Ahead = next is null ? null : read.Ahead,
                Bar = read.Bar,
                Beat = read.Beat,
                IsStrong = read.Beat.Denominator.IsOne && (strong & (1UL << (int)read.Beat.Numerator)) != 0,
            };
        }

        return results;
    }

    private bool IsForeign(in Read read) =>
        keyMask == 0 ? read.Role == ToneRole.Other : (keyMask & (1 << read.Pitch.PitchClass)) == 0;

    /// <summary>What is known of a note so far.</summary>
    private struct Read
    {
        public Pitch Pitch;
        public int Sound;
        public Degree? Function;
        public ToneRole Role;
        public bool IsNamed;
        public bool IsStable;
        public bool IsAround;
        public NotePart Part;
        public int Target;
        public int Steps;
        public int Stretch;
        public int Group;
        public int Bar;
        public Fraction Beat;
        public Fraction End;
        public Fraction Ahead;
    }
}
