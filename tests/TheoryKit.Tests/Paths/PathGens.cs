using Fractions;
using TheoryKit.Paths;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Tests.Paths;

/// <summary>Random paths and what they are made of.</summary>
internal static class PathGens
{
    private static readonly Neck[] Necks =
    [
        Neck.Guitar,
        Neck.Guitar.WithCapo(2),
        Neck.Parse("E1 A1 D2 G2, 864 mm, 20 frets"),
        Neck.Parse("G4@5 C3 G3 B3 D4, 670 mm, 22 frets"),
        Neck.Parse("G4 C4 E4 A4, 350 mm, 15 frets"),
    ];

    private static readonly Changes[] SomeChanges =
    [
        Changes.Parse("4/4, F major: Gm9 | C13 | Fmaj9 | Dm7"),
        Changes.Parse("3/4, Eb major: Ebmaj7 | Cm7 | Fm7 | Bb7"),
        Changes.Parse("4/4: Gm7 C7 | N.C. | Fmaj7 / / E7alt"),
        Changes.Parse("6/8: Am | E7"),
    ];

    /// <summary>From 1/192 of a beat to 16 beats, mostly as players count.</summary>
    public static readonly Gen<Fraction> Length = Gen.Frequency(
        (
            6,
            Pick(
                new Fraction(1),
                new Fraction(1, 2),
                new Fraction(1, 4),
                new Fraction(3, 2),
                new Fraction(3, 4),
                new Fraction(2),
                new Fraction(1, 3),
                new Fraction(2, 3),
                new Fraction(1, 5)
            )
        ),
        (1, Gen.Select(Gen.Int[1, 64], Gen.Int[1, 12], static (over, under) => new Fraction(over, under * 4).Reduce()))
    );

    public static readonly Gen<Rhythm> Rhythm = Gen.Select(
            Gen.Select(
                Gen.Int[1, 64],
                Gen.Int[1, TheoryKit.Paths.Timing.Rhythm.MaxDenominator],
                static (o, u) => new Fraction(o, u).Reduce()
            ),
            Gen.Int[0, 3],
            static (length, kind) => $"{(kind == 0 ? "r" : "")}{length}{(kind == 1 ? ">" : "")}"
        )
        .Array[1, 8]
        .Where(static steps => steps.Any(static step => step[0] != 'r'))
        .Select(static steps => TheoryKit.Paths.Timing.Rhythm.Parse(string.Join(' ', steps)));

    public static readonly Gen<Swing> Swing = Gen.Select(
        Gen.Int[1, 100],
        Gen.Int[0, 100],
        static (under, over) =>
        {
            var part = new Fraction((under + 1) / 2 + (over % Math.Max(1, under - ((under + 1) / 2))), under);
            return part >= new Fraction(1, 2) && part < Fraction.One ? new Swing(part) : default;
        }
    );

    public static readonly Gen<TimeSignature> Time = Gen.Select(
        Gen.Int[1, 13],
        Gen.Int[0, 4],
        static (beats, log) => new TimeSignature(beats, 1 << log)
    );

    /// <summary>A path of events one after the other, some of several notes, some after a rest, over changes or none.</summary>
    public static readonly Gen<Path> Any = Of(mostTogether: 3);

    /// <summary>A path of one note at a time.</summary>
    public static readonly Gen<Path> Line = Of(mostTogether: 1);

    private static Gen<Path> Of(int mostTogether) =>
        from neck in Pick(Necks)
        from changes in Pick<Changes?>([null, .. SomeChanges])
        from events in Gen.Select(
            Gen.Int[0, 5],
            Length,
            Length,
            Position(neck).Array[1, mostTogether],
            Gen.Int[0, TheoryKit.Paths.Technique.Known.Count * 2].Array[0, 2]
        ).Array[0, 12]
        from rest in Length
        select Make(neck, changes, events, rest);

    private static Gen<T> Pick<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(index => values[index]);

    private static Gen<Position> Position(Neck neck) =>
        from number in Gen.Int[1, neck.StringCount]
        from fret in Gen.Int[neck.OpenFret(number), neck.Frets]
        select new Position(number, fret);

    private static Path Make(
        Neck neck,
        Changes? changes,
        (int Kind, Fraction Before, Fraction Length, Position[] Positions, int[] Techniques)[] events,
        Fraction rest
    )
    {
        var at = Fraction.Zero;
        var notes = new List<PathNote>();
        foreach (var (kind, before, length, positions, techniques) in events)
        {
            at += kind == 0 ? before : Fraction.Zero;
            notes.AddRange(
                positions
                    .DistinctBy(static position => position.String)
                    .Select(position => new PathNote
                    {
                        Pitch = Pitch.FromMidi(neck.MidiNumberAt(position)),
                        Position = position,
                        Start = at,
                        Length = length,
                        Techniques =
                        [
                            .. techniques
                                .Where(static index => index < Technique.Known.Count)
                                .Distinct()
                                .Select(static index => Technique.Known[index]),
                        ],
                    })
            );
            at += length;
        }

        return new(neck, Playable(neck, notes), changes?.Time, changes, at + rest);
    }

    /// <summary>The notes without what can't be played so, and with a bend and a trill's other fret where they are called for.</summary>
    private static IEnumerable<PathNote> Playable(Neck neck, IEnumerable<PathNote> notes)
    {
        foreach (var note in notes)
        {
            var (number, fret) = (note.Position.String, note.Position.Fret);
            var open = neck.OpenFret(number);
            var techniques = note.Techniques.Where(technique =>
                technique != Technique.Release
                && (!technique.IsBent || (fret > open && !note.Has(Technique.NaturalHarmonic)))
                && (
                    technique != Technique.NaturalHarmonic
                    || fret - open is 3 or 4 or 5 or 7 or 9 or 12 or 16 or 19 or 24 or 28
                )
            );
            yield return note with
            {
                Techniques = [.. techniques],
                Bend = techniques.Any(static technique => technique.IsBent) ? 50 * (1 + (fret % 6)) : 0,
                TrillFret =
                    !note.Has(Technique.Trill) ? null
                    : fret == neck.Frets ? fret - 1
                    : fret + 1,
            };
        }
    }
}
