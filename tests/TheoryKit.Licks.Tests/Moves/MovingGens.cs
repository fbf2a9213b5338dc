using Fractions;
using TheoryKit.Paths;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Licks.Tests.Moves;

/// <summary>Random licks in which every technique is where a player could play it.</summary>
internal static class MovingGens
{
    public static readonly Changes[] SomeChanges =
    [
        Changes.Parse("4/4, F major: Gm9 | C13 | Fmaj9 | Dm7"),
        Changes.Parse("4/4: Cmaj7"),
        Changes.Parse("4/4, Eb major: Cm7"),
        Changes.Parse("4/4: A7 | A7 | D7 | A7"),
        Changes.Parse("4/4: Bm7b5 | E7b9 | Am | N.C."),
    ];

    /// <summary>Lines on a guitar between the frets 3 and 15.</summary>
    public static readonly Gen<Lick> Line = Of(Neck.Guitar, false);

    /// <summary>The same, with chords struck together among them.</summary>
    public static readonly Gen<Lick> Any = Of(Neck.Guitar, true);

    public static Gen<Lick> Of(Neck neck, bool hasChords, Gen<Changes>? over = null) =>
        from changes in over ?? Gen.Int[0, SomeChanges.Length - 1].Select(static index => SomeChanges[index])
        from events in Gen.Select(
            Gen.Int[0, 19],
            Gen.Int[1, neck.StringCount],
            Gen.Int[3, 15],
            Gen.Int[1, 4],
            Gen.Int[0, 3],
            Gen.Int[0, 6]
        ).Array[1, 10]
        select Make(neck, changes, hasChords, events);

    private static Lick Make(
        Neck neck,
        Changes changes,
        bool hasChords,
        (int Kind, int String, int Fret, int Step, int Length, int Extra)[] events
    )
    {
        var notes = new List<PathNote>();
        var at = Fraction.Zero;
        foreach (var (kind, number, fret, step, length, extra) in events)
        {
            var last = notes.Count > 0 && notes[^1].End == at ? notes[^1] : null;
            var beats = new Fraction(length + 1, 2);
            var technique = Technique.Known[
                extra switch
                {
                    0 => 3,
                    1 => 5,
                    2 => 6,
                    3 => 7,
                    4 => 19,
                    _ => 3,
                }
            ];
            switch (kind)
            {
                case 0 when last is not null && last.Position.Fret + step <= 18:
                    Add(last.Position.String, last.Position.Fret + step, Technique.HammerOn);
                    break;
                case 1 when last is not null && last.Position.Fret - step >= 2:
                    Add(last.Position.String, last.Position.Fret - step, Technique.PullOff);
                    break;
                case 2 when last is not null && last.Position.Fret - step >= 2:
                    Add(last.Position.String, last.Position.Fret - step, Technique.Slide);
                    break;
                case 3 when last is not null && last.Position.Fret + step <= 18:
                    Add(last.Position.String, last.Position.Fret + step, Technique.Slide);
                    break;
                case 4:
                    Add(number, fret, Technique.Bend, 50 * (step + 1));
                    break;
                case 5:
                    Add(number, fret, Technique.Bend, 200);
                    at += beats;
                    Add(number, fret, Technique.Release);
                    break;
                case 6:
                    Add(number, fret, Technique.PreBend, 100 * step);
                    at += beats;
                    Add(number, fret, Technique.Release, step > 1 ? 100 : 0);
                    break;
                case 7:
                    notes.Add(Note(number, fret) with { Techniques = [Technique.Trill], TrillFret = fret + step });
                    break;
                case 8:
                    Add(
                        number,
                        step switch
                        {
                            1 => 5,
                            2 => 7,
                            3 => 12,
                            _ => 4,
                        },
                        Technique.NaturalHarmonic
                    );
                    break;
                case 9:
                    Add(number, fret, Technique.ArtificialHarmonic);
                    break;
                case 10:
                    Add(number, fret, Technique.Dead);
                    break;
                case 11:
                    Add(number, fret, Technique.Known[11 + step - 1]);
                    break;
                case 12 or 13 when hasChords:
                    foreach (var other in Enumerable.Range(number, Math.Min(step, neck.StringCount + 1 - number)))
                    {
                        notes.Add(Note(other, fret + (other % 3)));
                    }

                    break;
                case 14:
                    notes.Add(Note(number, fret) with { Techniques = [technique] });
                    break;
                case 15:
                    break; // a rest
                default:
                    notes.Add(Note(number, fret));
                    break;
            }

            at += beats;

            void Add(int on, int where, Technique how, int bend = 0) =>
                notes.Add(Note(on, where) with { Techniques = [how], Bend = bend });

            PathNote Note(int on, int where)
            {
                var chord = changes.At((at % changes.Beats).Reduce()).Chord;
                var sound = neck.MidiNumberAt(new(on, where));
                return new()
                {
                    Position = new(on, where),
                    Pitch = chord?.Spell(sound) ?? Pitch.FromMidi(sound),
                    Start = at,
                    Length = beats,
                };
            }
        }

        return new() { Name = "made up", Path = new Path(neck, notes, changes.Time, changes, at).ToWholeBars() };
    }
}
