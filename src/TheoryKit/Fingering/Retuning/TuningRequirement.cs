using System.Numerics;
using TheoryKit.Fingering.Grips;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Retuning;

/// <summary>
/// Something that a tuning must have to be an answer of <see cref="TuningSearch"/>. Each kind is one nested record that
/// answers one question; the search asks it of half-decided tunings too. Equal when kind and properties agree.
/// </summary>
[Checked]
public abstract partial record TuningRequirement
{
    private protected TuningRequirement() { }

    /// <summary>Whether no two strings are tuned to the same pitch.</summary>
    public static TuningRequirement NoTwoAlike { get; } = new Different();

    /// <summary>Whether every string is tuned higher than its neighbour with the higher number.</summary>
    public static TuningRequirement Rising { get; } = new Ascending();

    /// <summary>Some open string sounds this note, in any octave.</summary>
    public static TuningRequirement Drone(NoteName note) => new OpenNote(note);

    /// <summary>
    /// The open strings together sound this chord: each one of its tones, and every tone that
    /// <see cref="GripLimits.CommonlyOptional"/> does not let go.
    /// </summary>
    public static TuningRequirement OpenChord(Chord chord)
    {
        ArgumentNullException.ThrowIfNull(chord);
        return new OpenTones(chord);
    }

    /// <summary>A string stays as it is.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 1 to <see cref="Position.MaxString"/>.</exception>
    public static TuningRequirement Keeps(int number)
    {
        return number is >= 1 and <= Position.MaxString
            ? new Kept(number)
            : throw new ArgumentOutOfRangeException(
                nameof(number),
                number,
                $"A string that stays is 1 to {Position.MaxString}, not {number}."
            );
    }

    /// <summary>At most so many strings are tuned otherwise.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public static TuningRequirement AtMostRetuned(int strings)
    {
        return strings >= 0
            ? new Retuned(strings)
            : throw new ArgumentOutOfRangeException(
                nameof(strings),
                strings,
                $"At most 0 strings or more can be retuned, not {strings}."
            );
    }

    /// <summary>
    /// Whether a tuning that begins like this can still have it. Exact once every string is decided; before that it may say
    /// yes too often, never no too often.
    /// </summary>
    internal abstract bool MayHold(TuningPrefix tuning);

    /// <summary>Throws where this can't be asked of the neck.</summary>
    internal virtual void Validate(Neck neck) { }

    /// <summary>No two strings are tuned to the same pitch.</summary>
    public sealed record Different : TuningRequirement
    {
        internal Different() { }

        internal override bool MayHold(TuningPrefix tuning)
        {
            for (var one = 1; one <= tuning.Strings; one++)
            {
                for (var other = one + 1; other <= tuning.Strings && tuning.IsDecided(one); other++)
                {
                    if (tuning.IsDecided(other) && tuning.Midi(one) == tuning.Midi(other))
                    {
                        return false;
                    }
                }
            }

            return true;
        }
    }

    /// <summary>Every string is tuned higher than its neighbour with the higher number.</summary>
    public sealed record Ascending : TuningRequirement
    {
        internal Ascending() { }

        internal override bool MayHold(TuningPrefix tuning)
        {
            for (var number = 1; number < tuning.Strings; number++)
            {
                if (
                    tuning.IsDecided(number)
                    && tuning.IsDecided(number + 1)
                    && tuning.Midi(number) <= tuning.Midi(number + 1)
                )
                {
                    return false;
                }
            }

            return true;
        }
    }

    /// <summary>Some open string sounds a note.</summary>
    public sealed record OpenNote : TuningRequirement
    {
        internal OpenNote(NoteName note) => Note = note;

        /// <summary>The note, in any octave.</summary>
        public NoteName Note { get; }

        internal override bool MayHold(TuningPrefix tuning)
        {
            for (var number = 1; number <= tuning.Strings; number++)
            {
                if ((tuning.OpenClasses(number) & (1 << Note.PitchClass)) != 0)
                {
                    return true;
                }
            }

            return false;
        }
    }

    /// <summary>The open strings together sound a chord.</summary>
    public sealed record OpenTones : TuningRequirement
    {
        private readonly GripTones tones;

        internal OpenTones(Chord chord) => (Chord, tones) = (chord, new(chord, null, anyBass: true));

        /// <summary>The chord.</summary>
        public Chord Chord { get; }

        /// <inheritdoc/>
        public bool Equals(OpenTones? other) => other is not null && Chord == other.Chord;

        /// <inheritdoc/>
        public override int GetHashCode() => Chord.GetHashCode();

        internal override bool MayHold(TuningPrefix tuning)
        {
            var (heard, open) = (0u, 0);
            for (var number = 1; number <= tuning.Strings; number++)
            {
                var own = 0u;
                for (var classes = tuning.OpenClasses(number); classes != 0; classes &= classes - 1)
                {
                    var tone = tones.At[BitOperations.TrailingZeroCount(classes)];
                    own |= tone < 0 ? 0u : 1u << tone;
                }

                if (own == 0)
                {
                    return false;
                }

                heard |= own & (tuning.IsDecided(number) ? uint.MaxValue : 0u);
                open += tuning.IsDecided(number) ? 0 : 1;
            }

            return BitOperations.PopCount(tones.Required & ~heard) <= open;
        }
    }

    /// <summary>A string stays as it is.</summary>
    public sealed record Kept : TuningRequirement
    {
        internal Kept(int number) => Number = number;

        /// <summary>The string.</summary>
        public int Number { get; }

        internal override bool MayHold(TuningPrefix tuning) => !tuning.IsDecided(Number) || tuning.Offset(Number) == 0;

        internal override void Validate(Neck neck)
        {
            if (Number > neck.StringCount)
            {
                throw new ArgumentException(
                    $"String {Number} is to stay, but the neck has {neck.StringCount} strings.",
                    nameof(TuningQuery.Requirements)
                );
            }
        }
    }

    /// <summary>At most so many strings are tuned otherwise.</summary>
    public sealed record Retuned : TuningRequirement
    {
        internal Retuned(int strings) => Strings = strings;

        /// <summary>How many at most.</summary>
        public int Strings { get; }

        internal override bool MayHold(TuningPrefix tuning)
        {
            var count = 0;
            for (var number = 1; number <= tuning.Strings; number++)
            {
                count += tuning.IsDecided(number) && tuning.Offset(number) != 0 ? 1 : 0;
            }

            return count <= Strings;
        }
    }
}

/// <summary>A tuning of which the strings from the highest number down to some string are decided, and what the others may be.</summary>
internal sealed class TuningPrefix
{
    private readonly int[] open; // the open pitch by string number
    private readonly int[] capo; // what a capo adds
    private readonly ushort[] may; // a bit for each pitch class that an undecided string may sound open
    private readonly int[] offsets;

    public TuningPrefix(Neck neck, IReadOnlyList<int>[] allowed)
    {
        Strings = neck.StringCount;
        First = Strings + 1;
        open = new int[Strings + 1];
        capo = new int[Strings + 1];
        may = new ushort[Strings + 1];
        offsets = new int[Strings + 1];
        for (var number = 1; number <= Strings; number++)
        {
            open[number] = neck.Tuning[number].Open.MidiNumber;
            capo[number] = neck.OpenFret(number) - neck.Tuning[number].Start;
            foreach (var offset in allowed[number])
            {
                may[number] |= (ushort)(1 << PitchClass(number, offset));
            }
        }
    }

    /// <summary>How many strings there are.</summary>
    public int Strings { get; }

    /// <summary>The lowest string number that is decided.</summary>
    public int First { get; private set; }

    public bool IsDecided(int number) => number >= First;

    /// <summary>By how many semitones a decided string is retuned.</summary>
    public int Offset(int number) => offsets[number];

    /// <summary>The open pitch of a decided string, with no capo.</summary>
    public int Midi(int number) => open[number] + offsets[number];

    /// <summary>A bit for each pitch class that the string sounds open, or may sound; over a capo, if there is one.</summary>
    public int OpenClasses(int number) => IsDecided(number) ? 1 << PitchClass(number, offsets[number]) : may[number];

    public void Decide(int number, int offset)
    {
        First = number;
        offsets[number] = offset;
    }

    private int PitchClass(int number, int offset) =>
        Diatonic.Modulo(open[number] + capo[number] + offset, Diatonic.SemitonesPerOctave);
}
