using Fractions;
using TheoryKit.Paths;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;

namespace TheoryKit.Licks.Analysis;

/// <summary>Finds the part of every note by the rules of <see cref="LickAnalysis"/>, in time linear in the notes.</summary>
internal sealed class LickAnalyser
{
    /// <summary>The most notes that surround one target.</summary>
    private const int MostAround = 4;

    /// <summary>The most steps in a row that lead to one target: the chromatic notes between a root and its major third.</summary>
    private const int MostSteps = 3;

    /// <summary>The finest common part of a beat in which time is counted exactly; beyond that it is rounded to <see cref="Rounded"/>.</summary>
    private const long Finest = 1L << 31;

    private const long Rounded = 4_838_400; // 2^10 3^3 5^2 7

    private readonly Path path;
    private readonly Read[] notes;
    private readonly List<Stretch> stretches = [];
    private readonly Over?[] chords;
    private readonly long beat;
    private readonly long pulse;
    private readonly int keyMask;

    // Notes that start together, dead and slid-from ones left out, as places in an array of indices.
    private readonly int[] line;
    private readonly List<int> groups = [];

    private LickAnalyser(Path path)
    {
        this.path = path;
        notes = new Read[path.Notes.Count];
        line = new int[notes.Length];
        beat = Parts(path);
        pulse = path.Time.IsCompound ? 3 * beat : beat;
        keyMask = KeyMask(path.Changes?.Key);
        AddStretches();
        chords = new Over[stretches.Count];
    }

    /// <summary>A time over one chord, or none, equal neighbours joined; counted in parts of a beat.</summary>
    public readonly record struct Stretch(Chord? Chord, long Start, long End);

    /// <summary>The notes, the chords as they follow each other up to the path's end, and how many parts a beat has.</summary>
    public static (AnalysedNote[] Notes, List<Stretch> Stretches, long Beat) Run(Path path)
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

        return (analyser.Results(), analyser.stretches, analyser.beat);
    }

    /// <summary>The parts of a beat that all times of a path are multiples of: whole numbers are compared many times as fast as fractions.</summary>
    private static long Parts(Path path)
    {
        var parts = 1L;
        var isFine = Divides(path.Beats, ref parts);
        for (var index = 0; index < path.Notes.Count && isFine; index++)
        {
            var note = path.Notes[index];
            isFine = Divides(note.Start, ref parts) && Divides(note.Length, ref parts);
        }

        for (var index = 0; index < path.Changes?.Chords.Count && isFine; index++)
        {
            isFine = Divides(path.Changes.Chords[index].Start, ref parts);
        }

        return isFine ? parts : Rounded;

        static bool Divides(Fraction time, ref long parts)
        {
            if (time.Denominator.IsOne)
            {
                return true;
            }

            if (time.Denominator > Finest)
            {
                return false;
            }

            var denominator = (long)time.Denominator;
            if (parts % denominator != 0)
            {
                parts =
                    parts / (long)System.Numerics.BigInteger.GreatestCommonDivisor(parts, denominator) * denominator;
            }

            return parts <= Finest;
        }
    }

    private long In(Fraction time)
    {
        var (numerator, denominator) = (time.Numerator, time.Denominator);
        return denominator.IsOne ? (long)numerator * beat
            : denominator <= Finest && beat % (long)denominator == 0 ? (long)numerator * (beat / (long)denominator)
            : (long)(numerator * beat / denominator);
    }

    private void AddStretches()
    {
        var end = In(path.Beats);
        if (path.Changes is not { } changes)
        {
            stretches.Add(new(null, 0, end));
            return;
        }

        var starts = new long[changes.Chords.Count + 1];
        for (var index = 0; index < changes.Chords.Count; index++)
        {
            starts[index] = In(changes.Chords[index].Start);
        }

        starts[^1] = changes.Beats * beat;
        for (var round = 0L; round < end; round += starts[^1])
        {
            for (var index = 0; index < changes.Chords.Count && round + starts[index] < end; index++)
            {
                var chord = changes.Chords[index].Chord;
                if (stretches.Count > 0 && stretches[^1].Chord == chord)
                {
                    stretches[^1] = stretches[^1] with { End = round + starts[index + 1] };
                }
                else
                {
                    stretches.Add(new(chord, round + starts[index], round + starts[index + 1]));
                }
            }
        }
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
        var stretch = 0;
        var bar = path.Time.Beats * beat;
        for (var index = 0; index < notes.Length; index++)
        {
            var note = path.Notes[index];
            ref var read = ref notes[index];
            read.Start = In(note.Start);
            read.End = read.Start + In(note.Length);
            while (stretch + 1 < stretches.Count && read.Start >= stretches[stretch + 1].Start)
            {
                stretch++;
            }

            read.Bar = (int)(read.Start / bar);
            read.Stretch = stretch;
            (read.Target, read.SlidFrom) = (-1, -1);
            Hear(ref read, path.Sounding(note, stretches[stretch].Chord));
            if (note.IsDead)
            {
                (read.Part, read.Function, read.Role, read.IsNamed) = (NotePart.Dead, null, ToneRole.Other, false);
            }
        }
    }

    private void Hear(ref Read read, Pitch pitch)
    {
        read.Part = NotePart.NoChord;
        read.Pitch = pitch;
        read.Sound = pitch.MidiNumber;
        if (stretches[read.Stretch].Chord is not { } chord)
        {
            return;
        }

        ref var over = ref chords[read.Stretch];
        over ??= new(chord);
        var above = Diatonic.Modulo(read.Sound - chord.Root.PitchClass, 12);
        read.Function = Path.FunctionOver(chord, pitch);
        read.IsNamed = over.Names(above);
        read.Role = over.Role(above, read.Function.Value);
    }

    private bool IsNamedNext(in Read read) => Names(stretches[read.Stretch + 1].Chord!, read.Pitch);

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
                || notes[after].Start != read.End
                || read.Length >= notes[after].Length
                || 16 * read.Length > path.Time.Unit * beat
            )
            {
                continue;
            }

            Hear(ref read, notes[after].Pitch);
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

            if (count == 0 || notes[line[count - 1]].Start != read.Start)
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

    private bool IsSettled(int index) => notes[index].Role == ToneRole.ColourTone && notes[index].Length > pulse;

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
    private bool Follows(int index, int next) => notes[next].Start - notes[index].End <= pulse;

    /// <summary>How long before the next chord a note starts, where that is at most a pulse and it does not start with its own chord.</summary>
    private bool IsAhead(in Read read, out long ahead)
    {
        ahead = 0;
        if (read.Stretch + 1 >= stretches.Count || stretches[read.Stretch + 1].Chord is null)
        {
            return false;
        }

        ahead = stretches[read.Stretch + 1].Start - read.Start;
        return ahead <= pulse && read.Start > stretches[read.Stretch].Start;
    }

    private void FindHeldAnticipations()
    {
        foreach (ref var read in notes.AsSpan())
        {
            if (read.Group >= 0 && IsAhead(read, out var ahead) && read.Length >= 2 * ahead && IsNamedNext(read))
            {
                (read.Part, read.IsStable) = (NotePart.Anticipation, true);
            }
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
                    || side.IsAround
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
                (notes[side].Target, notes[side].IsAround) = (target, true);
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
            if (IsAhead(read, out _) && IsNamedNext(read) && !ReturnsTo(read))
            {
                (read.Part, read.IsStable) = (NotePart.Anticipation, true);
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

    /// <summary>Whether a note after this one still belongs to the same chord.</summary>
    private bool ReturnsTo(in Read read) =>
        Nearest(read.Group + 1, read.Sound) is >= 0 and var next
        && notes[next].Stretch == read.Stretch
        && notes[next].Part != NotePart.Anticipation;

    /// <summary>A note struck again does what it does then; over the next chord, that it names, it is anticipated.</summary>
    private bool IsStruckAgain(ref Read read, int index)
    {
        if (Next(index) is var next && (next < 0 || notes[next].Sound != read.Sound))
        {
            return false;
        }

        if (notes[next] is { IsNamed: true } again && again.Stretch == read.Stretch + 1 && IsAhead(read, out _))
        {
            (read.Part, read.IsStable, read.Target) = (NotePart.Anticipation, true, next);
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
        for (var at = 0; at < path.Time.Beats; at++)
        {
            strong |= path.Time.IsStrong(at) ? 1UL << at : 0;
        }

        var bar = path.Time.Beats * beat;
        for (var index = 0; index < notes.Length; index++)
        {
            ref var read = ref notes[index];
            var (at, rest) = Math.DivRem(read.Start % bar, beat);
            read.IsStrong |= rest == 0 && (strong & (1UL << (int)at)) != 0;
            if (read.Part == NotePart.Grace)
            {
                notes[read.Target].IsStrong |= read.IsStrong;
                notes[read.Target].SlidFrom = read.SlidFrom < 0 ? index : read.SlidFrom;
            }
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
                Ahead = next is null
                    ? null
                    : new Fraction(stretches[read.Stretch + 1].Start - read.Start, beat).Reduce(),
                Bar = read.Bar,
                BarStart = read.Bar * path.Time.Beats,
                SlidFrom = read.SlidFrom < 0 ? null : path.Notes[read.SlidFrom].Start,
                IsStrong = read.IsStrong,
            };
        }

        return results;
    }

    private bool IsForeign(in Read read) =>
        keyMask == 0 ? read.Role == ToneRole.Other : (keyMask & (1 << read.Pitch.PitchClass)) == 0;

    /// <summary>What the sounds above its root are to a chord, found when asked.</summary>
    private sealed class Over
    {
        private readonly Formula formula;
        private readonly int named;
        private readonly ToneRole?[] roles = new ToneRole?[12];

        public Over(Chord chord)
        {
            formula = chord.Formula;
            named = 1 << Diatonic.Modulo(chord.Bass.PitchClass - chord.Root.PitchClass, 12);
            foreach (var degree in formula)
            {
                named |= 1 << degree.PitchClass;
            }
        }

        public bool Names(int above) => (named & (1 << above)) != 0;

        public ToneRole Role(int above, Degree function) => roles[above] ??= Found(above, function);

        private ToneRole Found(int above, Degree function) =>
            ToneRoles.Over(function, formula) is var role && role == ToneRole.Other && Names(above)
                ? ToneRole.ColourTone // the bass after a slash
                : role;
    }

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
        public bool IsStrong;
        public NotePart Part;
        public int Target;
        public int SlidFrom;
        public int Steps;
        public int Stretch;
        public int Group;
        public int Bar;
        public long Start;
        public long End;

        public readonly long Length => End - Start;
    }
}
