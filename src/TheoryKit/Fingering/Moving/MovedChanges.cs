using System.Collections.Immutable;
using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Turns;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Moving;

/// <summary>
/// Changes as they are held in one tuning, moved to another: which grips can stay, what must move, and two ways to play them
/// there, the easiest and the one that keeps what can stay.
/// </summary>
/// <remarks>
/// A grip can stay when the same frets sound a grip of the same chord under the same limits in the new tuning: every tone that
/// is required, none that is foreign, the bass asked for. Its fingers stay too, as frets alone decide the least effort. A
/// position stays when the same string and fret sound the same pitch, and must move when what they sound is no tone of the
/// chord. Immutable.
/// </remarks>
public sealed class MovedChanges
{
    private MovedChanges(
        Scordatura scordatura,
        Neck from,
        Hand hand,
        GripLimits limits,
        IReadOnlyList<Chord> chords,
        GripProgression before
    )
    {
        (Scordatura, From, To, Hand, Limits, Before) = (
            scordatura,
            from,
            from.With(scordatura.To),
            hand,
            limits,
            before
        );
        var questions = chords.Select(chord => limits.For(chord, To, hand)).ToList();
        var answers = questions.ConvertAll(GripSearch.Find);
        var same = chords.Select((_, index) => Same(before.Grips.ElementAtOrDefault(index), answers[index])).ToList();
        Easiest = GripProgression.Join(
            questions.Select((question, index) => (question, (IReadOnlyList<ChordGrip>)answers[index]))
        );
        Kept = same.TrueForAll(static grip => grip is null)
            ? Easiest
            : GripProgression.Join(
                questions.Select(
                    (question, index) =>
                        (question, same[index] is { } grip ? [grip] : (IReadOnlyList<ChordGrip>)answers[index])
                )
            );
        Grips = ImmutableArray.CreateRange(
            chords.Select(
                (chord, index) =>
                {
                    var old = before.Grips.ElementAtOrDefault(index);
                    var positions = old is null ? [] : Positions(old);
                    return new MovedGrip(
                        chord,
                        old,
                        same[index],
                        Easiest.Grips.ElementAtOrDefault(index),
                        Kept.Grips.ElementAtOrDefault(index)
                    )
                    {
                        Limits = limits,
                        Positions = positions,
                    };
                }
            )
        );
    }

    /// <summary>What is turned.</summary>
    public Scordatura Scordatura { get; }

    /// <summary>The neck in the old tuning.</summary>
    public Neck From { get; }

    /// <summary>The neck in the new one.</summary>
    public Neck To { get; }

    /// <summary>The hand.</summary>
    public Hand Hand { get; }

    /// <summary>The limits of every grip.</summary>
    public GripLimits Limits { get; }

    /// <summary>The grips in the old tuning; none, with the reason, where a chord has none.</summary>
    public GripProgression Before { get; }

    /// <summary>The least effort and motion in the new tuning.</summary>
    public GripProgression Easiest { get; }

    /// <summary>The least effort and motion in the new tuning with every grip kept that can stay. Exact, and never less than that of <see cref="Easiest"/>.</summary>
    public GripProgression Kept { get; }

    /// <summary>Chord by chord.</summary>
    public IReadOnlyList<MovedGrip> Grips { get; }

    /// <summary>How many grips can stay.</summary>
    public int Staying => Grips.Count(static grip => grip.CanStay);

    /// <summary>Chords, held in the old tuning by the least effort and motion, moved to another.</summary>
    /// <param name="chords">The chords in order.</param>
    /// <param name="from">The neck in the old tuning.</param>
    /// <param name="to">The new tuning of the same strings.</param>
    /// <param name="hand">The hand; the average one if null.</param>
    /// <param name="limits">The limits of every grip, before and after; common practice if null.</param>
    /// <exception cref="ArgumentException">No chord; or not a tuning of the same instrument; or limits that contradict the neck.</exception>
    public static MovedChanges Of(
        IEnumerable<Chord> chords,
        Neck from,
        Tuning to,
        Hand? hand = null,
        GripLimits? limits = null
    )
    {
        ArgumentNullException.ThrowIfNull(from);
        var scordatura = new Scordatura(from.Tuning, to);
        var all = Check.Items(chords).ToList();
        (hand, limits) = (hand ?? Hand.Average, limits ?? GripLimits.Default);
        return all.Count == 0
            ? throw new ArgumentException("There is nothing to move: give at least one chord.", nameof(chords))
            : new(
                scordatura,
                from,
                hand,
                limits,
                all,
                ProgressionSearch.Find(all.Select(chord => limits.For(chord, from, hand)))
            );
    }

    /// <summary>The chords of changes in order, each once where it goes on from bar to bar, moved to another tuning.</summary>
    /// <inheritdoc cref="Of(IEnumerable{Chord}, Neck, Tuning, Hand?, GripLimits?)"/>
    /// <param name="changes">The changes; where they have no chord they are passed over.</param>
    /// <param name="from">The neck in the old tuning.</param>
    /// <param name="to">The new tuning of the same strings.</param>
    /// <param name="hand">The hand; the average one if null.</param>
    /// <param name="limits">The limits of every grip, before and after; common practice if null.</param>
    public static MovedChanges Of(Changes changes, Neck from, Tuning to, Hand? hand = null, GripLimits? limits = null)
    {
        ArgumentNullException.ThrowIfNull(changes);
        var chords = new List<Chord>();
        foreach (var span in changes.Chords)
        {
            if (span.Chord is { } chord && (chords.Count == 0 || chords[^1] != chord))
            {
                chords.Add(chord);
            }
        }

        return Of(chords, from, to, hand, limits);
    }

    /// <summary>Grips as they are, moved to another tuning.</summary>
    /// <param name="grips">The grips in order, all on one neck.</param>
    /// <param name="to">The new tuning of the same strings.</param>
    /// <param name="hand">The hand; the average one if null.</param>
    /// <param name="limits">The limits of every grip in the new tuning; common practice if null.</param>
    /// <exception cref="ArgumentException">No grip, or on more than one neck; or not a tuning of the same instrument; or limits that contradict the neck.</exception>
    public static MovedChanges Of(IEnumerable<ChordGrip> grips, Tuning to, Hand? hand = null, GripLimits? limits = null)
    {
        var all = Check.Items(grips).ToList();
        if (all.Count == 0)
        {
            throw new ArgumentException("There is nothing to move: give at least one grip.", nameof(grips));
        }

        var from = all[0].Neck;
        if (all.Find(grip => grip.Neck != from) is { } other)
        {
            throw new ArgumentException(
                $"The grips are on more than one neck: {from} and {other.Neck}; move those of one neck at a time.",
                nameof(grips)
            );
        }

        var scordatura = new Scordatura(from.Tuning, to);
        (hand, limits) = (hand ?? Hand.Average, limits ?? GripLimits.Default);
        return new(
            scordatura,
            from,
            hand,
            limits,
            [.. all.Select(static grip => grip.Chord)],
            GripProgression.Join(
                all.Select(grip => (limits.For(grip.Chord, from, hand), (IReadOnlyList<ChordGrip>)[grip]))
            )
        );
    }

    private static ChordGrip? Same(ChordGrip? before, GripAnswer answer) =>
        before is null
            ? null
            : answer.FirstOrDefault(grip =>
                grip.Grip.Strings.Select(static each => each.Fret)
                    .SequenceEqual(before.Grip.Strings.Select(static each => each.Fret))
            );

    private List<MovedPosition> Positions(ChordGrip before)
    {
        var chord = before.Chord;
        var places = before.Places.OrderBy(static place => place.Position);
        return
        [
            .. places.Select(place =>
            {
                var sound = To.MidiNumberAt(place.Position);
                Degree? function =
                    chord.Formula.At(sound - chord.Root.PitchClass) is { } degree ? degree
                    : chord.Bass.PitchClass == Diatonic.Modulo(sound, Diatonic.SemitonesPerOctave)
                        ? chord.DegreeOf(chord.Bass)
                    : null;
                var name =
                    sound == place.Pitch.MidiNumber ? place.Pitch.Name
                    : chord.Formula.At(sound - chord.Root.PitchClass) is { } tone ? chord.Root.Add(tone)
                    : function is not null ? chord.Bass
                    : Pitch.FromMidi(sound).Name;
                return new MovedPosition(place.Position, place.Pitch, Pitch.Nearest(name, sound), function);
            }),
        ];
    }
}
