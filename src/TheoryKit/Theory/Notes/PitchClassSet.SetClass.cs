using System.Numerics;
using System.Runtime.CompilerServices;
using TheoryKit.Values;

namespace TheoryKit.Theory.Notes;

/// <remarks>
/// Text: the members between braces, <c>{0 3 7}</c>, the empty set <c>{}</c>. Ten and eleven are written as numbers; <c>t</c>
/// and <c>e</c> are read for them too. Commas may stand in place of white space.
/// </remarks>
[CollectionBuilder(typeof(PitchClassSet), nameof(Of))]
public readonly partial struct PitchClassSet : ISpanParsable<PitchClassSet>
{
    private const int Size = Diatonic.SemitonesPerOctave;
    private const int AllBits = 0xFFF;

    /// <summary>The set with no member.</summary>
    public static PitchClassSet Empty => default;

    /// <summary>All twelve pitch classes.</summary>
    public static PitchClassSet All => new(AllBits);

    /// <summary>The set of these pitch classes, each counted modulo 12; what occurs again is one member.</summary>
    public static PitchClassSet Of(params ReadOnlySpan<int> pitchClasses)
    {
        var mask = 0;
        foreach (var pitchClass in pitchClasses)
        {
            mask |= 1 << Diatonic.Modulo(pitchClass, Size);
        }

        return new((ushort)mask);
    }

    /// <summary>The set of the notes' pitch classes, C = 0.</summary>
    public static PitchClassSet Of(IEnumerable<NoteName> notes)
    {
        ArgumentNullException.ThrowIfNull(notes);
        return new((ushort)notes.Aggregate(0, static (mask, note) => mask | (1 << note.PitchClass)));
    }

    /// <summary>Every member so many semitones higher, modulo 12.</summary>
    public PitchClassSet Transpose(int semitones)
    {
        var by = Diatonic.Modulo(semitones, Size);
        return new((ushort)(((mask << by) | (mask >> (Size - by))) & AllBits));
    }

    /// <summary>Every member x turned into <paramref name="sum"/> - x, modulo 12: by default mirrored about 0.</summary>
    /// <param name="sum">What a member and its image add up to; any number.</param>
    public PitchClassSet Invert(int sum = 0)
    {
        var mirrored = 0;
        for (var rest = (int)mask; rest != 0; rest &= rest - 1)
        {
            mirrored |= 1 << (Size - 1 - BitOperations.TrailingZeroCount(rest));
        }

        // The mirror image above takes x to 11 - x.
        return new PitchClassSet((ushort)mirrored).Transpose(sum - (Size - 1));
    }

    /// <summary>The pitch classes that are no members.</summary>
    public PitchClassSet Complement => new((ushort)(~mask & AllBits));

    /// <summary>The members of either.</summary>
    public PitchClassSet Union(PitchClassSet other) => new((ushort)(mask | other.mask));

    /// <summary>The members of both.</summary>
    public PitchClassSet Intersect(PitchClassSet other) => new((ushort)(mask & other.mask));

    /// <summary>The members that the other has not.</summary>
    public PitchClassSet Except(PitchClassSet other) => new((ushort)(mask & ~other.mask));

    /// <summary>
    /// The members in normal order: going up from the member that makes the whole most compact. The smallest span from the first
    /// to the last decides; then, as Rahn has it, the smallest from the first to the last but one, and so on. Where the set
    /// repeats within the octave, the order that begins on the lowest number.
    /// </summary>
    /// <remarks>Looked up: J. Rahn, Basic Atonal Theory, 1980, which counts from the far end. From memory: Longman, chapter 3.</remarks>
    public IReadOnlyList<int> NormalOrder
    {
        get
        {
            if (mask == 0)
            {
                return [];
            }

            var first = BestStart();
            return [.. Transpose(-first).Select(each => (each + first) % Size)];
        }
    }

    /// <summary>
    /// The normal order moved to begin on 0. Two sets have the same normal form when one is the other transposed: there are 352
    /// of them, the empty one included.
    /// </summary>
    public PitchClassSet NormalForm => mask == 0 ? this : Transpose(-BestStart());

    /// <summary>
    /// The prime form: the more compact of the normal forms of the set and of its inversion. Two sets have the same prime form
    /// when one is the other transposed, or inverted and transposed.
    /// </summary>
    /// <remarks>
    /// By Rahn's rule, compactness counted from the far end. Looked up: Forte's rule (The Structure of Atonal Music, Yale 1973) counts from
    /// the near end. Derived: it differs for six classes: Rahn's are {0 1 5 6 8}, {0 2 3 6 7 9}, {0 1 4 5 7 9}, {0 1 4 5 6 7 9},
    /// {0 1 2 5 6 7 9} and {0 1 3 4 5 7 8 10}.
    /// </remarks>
    public PitchClassSet PrimeForm
    {
        get
        {
            var (up, down) = (NormalForm, Invert().NormalForm);
            return up.mask <= down.mask ? up : down;
        }
    }

    /// <summary>Its class under transposition and inversion.</summary>
    public SetClass SetClass => SetClass.Of(this);

    /// <summary>How often each interval class occurs between two of its members.</summary>
    public IntervalVector IntervalVector
    {
        get
        {
            Span<int> counts = stackalloc int[IntervalVector.Length];
            for (var intervalClass = 1; intervalClass <= IntervalVector.Length; intervalClass++)
            {
                var pairs = Intersect(Transpose(intervalClass)).Count;
                counts[intervalClass - 1] = intervalClass == Size / 2 ? pairs / 2 : pairs;
            }

            return new(counts);
        }
    }

    /// <summary>How many transpositions give the same set again, the one by nothing included: 1 for most, 3 for an augmented triad.</summary>
    public int TranspositionalSymmetry
    {
        get
        {
            var count = 0;
            for (var by = 0; by < Size; by++)
            {
                count += Transpose(by) == this ? 1 : 0;
            }

            return count;
        }
    }

    /// <summary>How many inversions give the same set again: 0 for most, 1 for a minor seventh chord, 4 for a diminished seventh.</summary>
    public int InversionalSymmetry
    {
        get
        {
            var count = 0;
            for (var sum = 0; sum < Size; sum++)
            {
                count += Invert(sum) == this ? 1 : 0;
            }

            return count;
        }
    }

    /// <summary>Every subset with so many members, in the order of their masks.</summary>
    /// <param name="count">How many members; any number, there are none where the set has fewer.</param>
    public IEnumerable<PitchClassSet> Subsets(int count)
    {
        // Goes through the submasks upwards: (sub - all) & all is the next.
        var (all, sub) = ((int)mask, 0);
        do
        {
            if (BitOperations.PopCount((uint)sub) == count)
            {
                yield return new((ushort)sub);
            }

            sub = (sub - all) & all;
        } while (sub != 0);
    }

    /// <summary>The set as <see cref="Parse(string, IFormatProvider?)"/> reads it, <c>{0 3 7}</c>.</summary>
    public override string ToString() => $"{{{string.Join(' ', this)}}}";

    internal static bool Read(ref TextCursor cursor, out PitchClassSet set) => Read(ref cursor, '{', '}', out set);

    internal static bool Read(ref TextCursor cursor, char open, char close, out PitchClassSet set)
    {
        set = default;
        if (!cursor.Take(open))
        {
            return cursor.Fail($"{open} and then pitch classes (as in {open}0 3 7{close})");
        }

        cursor.SkipSpaces();
        while (!cursor.Take(close))
        {
            var start = cursor.Position;
            int pitchClass;
            if (cursor.Take('t'))
            {
                pitchClass = 10;
            }
            else if (cursor.Take('e'))
            {
                pitchClass = 11;
            }
            else if (!cursor.TakeNumber(2, out pitchClass) || pitchClass >= Size)
            {
                return cursor.Fail(start, $"a pitch class from 0 to 11, or {close}");
            }

            if (set.Contains(pitchClass))
            {
                return cursor.Fail(start, $"another pitch class: {pitchClass} is there already");
            }

            set = new((ushort)(set.mask | (1 << pitchClass)));
            var parted = cursor.SkipSpaces();
            if (cursor.Take(','))
            {
                parted = true;
                cursor.SkipSpaces();
            }

            if (!parted && cursor.Current != close)
            {
                return cursor.Fail($"white space, a comma or {close}");
            }
        }

        return true;
    }

    /// <summary>
    /// The member to begin on. Rahn's rule compares the last members, then those before them: that is to say, of all transpositions
    /// the one whose mask is the smallest number.
    /// </summary>
    private int BestStart()
    {
        var (best, smallest) = (0, int.MaxValue);
        for (var first = 0; first < Size; first++)
        {
            var moved = Transpose(-first).mask;
            if ((moved & 1) != 0 && moved < smallest)
            {
                (best, smallest) = (first, moved);
            }
        }

        return best;
    }
}
