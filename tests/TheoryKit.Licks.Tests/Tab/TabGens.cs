using Fractions;
using TheoryKit.Fingering.Hands;
using TheoryKit.Paths;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Licks.Tests.Tab;

/// <summary>
/// Random licks of every kind: all techniques, bends and releases, notes held under others, tuplets, several necks and times, odd
/// spellings, fingers, words, tags and headers.
/// </summary>
internal static class TabGens
{
    private static readonly Neck[] Necks =
    [
        Neck.Guitar,
        Neck.Guitar,
        Neck.Guitar.WithCapo(2),
        Neck.Parse("E1 A1 D2 G2, 864 mm, 20 frets"),
        Neck.Parse("G4@5 C3 G3 B3 D4, 670 mm, 22 frets"),
        Neck.Parse("G4 C4 E4 A4, 350 mm, 15 frets"),
        Neck.Parse("B1 E2 A2 D3 G3 B3 E4, 24 frets"),
        Neck.Parse("D2 A2 D3 F#3 A3 D4, 36 frets"),
        Neck.Parse("G2 D3 G3, 500 mm, 18 frets"),
        Neck.Parse("D2 Bbb2 D3 F#x3 Ax3 Fbbb4"),
    ];

    private static readonly Changes[] SomeChanges =
    [
        Changes.Parse("4/4, F major: Gm9 | C13 | Fmaj9 | Dm7"),
        Changes.Parse("3/4, Eb major: Ebmaj7 | Cm7 | Fm7 | Bb7"),
        Changes.Parse("4/4: Gm7 C7 | N.C. | Fmaj7 / / E7alt"),
        Changes.Parse("6/8: Am | E7"),
        Changes.Parse("12/8: D[1 b2 4 #5] | Dbmaj7#11/F"),
        Changes.Parse("5/4: Em7 A7"),
    ];

    private static readonly string[] Times = ["2/4", "3/4", "4/4", "5/4", "7/8", "6/8", "9/8", "12/8", "3/2", "1/4"];

    private static readonly Fraction[] Lengths =
    [
        new(1, 2),
        new(1, 2),
        new(1, 2),
        1,
        1,
        new(1, 4),
        new(1, 4),
        new(3, 4),
        new(3, 2),
        2,
        3,
        new(1, 3),
        new(2, 3),
        new(1, 6),
        new(2, 5),
        new(4, 7),
        new(1, 8),
        new(1, 16),
        new(5, 48),
        new(9, 2),
    ];

    private static readonly string[] SomeWords =
    [
        "over the second chorus",
        "# twice",
        "e|--5--7--|",
        "name: not a header",
        "<b>bold</b> & \"quoted\" \u266d",
        "   set in",
        "1 & 2 &",
        "-----------",
        "\ud834\udd1e clef",
        "q e e",
        "Gm9",
        "",
    ];

    /// <summary>Any path that a lick may hold.</summary>
    public static readonly Gen<Path> Path = Gen.Select(
        Gen.Int[0, 14],
        Gen.Int[0, int.MaxValue - 1],
        static (events, seed) => Make(new Random(seed), events, isSimple: false)
    );

    /// <summary>Paths of quarters, eighths and sixteenths, one note at a time.</summary>
    public static readonly Gen<Path> SimplePath = Gen.Select(
        Gen.Int[1, 14],
        Gen.Int[0, int.MaxValue - 1],
        static (events, seed) => Make(new Random(seed), events, isSimple: true)
    );

    /// <summary>Any lick.</summary>
    public static readonly Gen<Lick> Lick = Gen.Select(Path, Gen.Int[0, int.MaxValue - 1], Make);

    private static Lick Make(Path path, int seed)
    {
        var random = new Random(seed);
        return new()
        {
            Name = Pick(
                random,
                "Kestrel turn",
                "Boats, end of the bridge",
                "n",
                "<i>\u00bd</i>: 1",
                "Nine Tin Boats #2",
                "tempo: 3"
            ),
            Path = path,
            Tune = Pick(random, "", "", "Kestrel Stairs", "Copper Weather", "a: b"),
            Tempo = Pick<double?>(random, null, null, 120, 92.5, 0.01, 1000, 66.67),
            Swing = Pick(random, Swing.Straight, Swing.Straight, new Swing(new(2, 3)), new Swing(new(3, 5))),
            Tags = Some(random, "bend", "slow", "needs work", "\u266d9", "#1", "a:b"),
            Headers =
            [
                .. Some(random, "from", "Sound", "from-2", "my_own line", "from")
                    .Select(name => new LickHeader(
                        name,
                        Pick(random, "", "the second chorus", "neck pickup: warm", "# x")
                    )),
            ],
            Words = string.Join('\n', Some(random, SomeWords)),
        };
    }

    private static string[] Some(Random random, params string[] all) =>
        random.Next(3) == 0 ? [] : [.. all.Where(_ => random.Next(3) == 0)];

    private static T Pick<T>(Random random, params T[] all) => all[random.Next(all.Length)];

    private static Path Make(Random random, int events, bool isSimple)
    {
        var neck = Pick(random, Necks);
        var changes = random.Next(2) == 0 ? null : Pick(random, SomeChanges);
        var time = changes?.Time ?? TimeSignature.Parse(random.Next(2) == 0 ? "4/4" : Pick(random, Times));
        var (hasFingers, hasNames) = (random.Next(3) == 0, random.Next(3) == 0);
        var lengths = isSimple ? Lengths[..9] : Lengths[..Pick(random, 7, 11, 14, Lengths.Length)];
        var free = new Fraction[neck.StringCount + 1];
        var last = new PathNote?[neck.StringCount + 1];
        var at = random.Next(4) == 0 ? Pick(random, lengths) : Fraction.Zero;
        var notes = new List<PathNote>();
        for (var index = 0; index < events; index++)
        {
            var length = Pick(random, lengths);
            var strings = Enumerable
                .Range(1, neck.StringCount)
                .Where(number => free[number] <= at)
                .OrderBy(_ => random.Next())
                .Take(isSimple || random.Next(3) > 0 ? 1 : random.Next(1, neck.StringCount + 1))
                .ToList();
            foreach (var number in strings)
            {
                var note = Note(random, neck, number, at, last[number], isSimple);
                var lasts = !isSimple && random.Next(5) == 0 ? length * new Fraction(random.Next(1, 9), 4) : length;
                note = note with
                {
                    Length = lasts,
                    Finger = hasFingers && random.Next(2) == 0 ? (Finger)random.Next(5) : null,
                    Pitch = hasNames && random.Next(2) == 0 ? Renamed(random, note.Pitch) : Usual(changes, note),
                };
                notes.Add(note);
                last[number] = note;
                free[number] = note.End;
            }

            at += random.Next(7) == 0 ? length + Pick(random, lengths) : length;
        }

        var end = notes.Count == 0 ? at : notes.Max(static note => note.End);
        var beats =
            random.Next(3) > 0 ? (Fraction?)null : end + (random.Next(2) == 0 ? Pick(random, lengths) : Fraction.Zero);
        var path = new Path(neck, notes, time, changes, beats);
        return random.Next(2) == 0 ? path.ToWholeBars() : path;
    }

    private static PathNote Note(Random random, Neck neck, int number, Fraction at, PathNote? before, bool isSimple)
    {
        var open = neck.OpenFret(number);
        if (before is { Bend: > 0 } && before.End == at && random.Next(2) == 0)
        {
            return new()
            {
                Position = before.Position,
                Pitch = before.Pitch,
                Start = at,
                Bend = random.Next(before.Bend / PathNote.BendStep) * PathNote.BendStep,
                Techniques = random.Next(3) == 0 ? [Technique.Vibrato, Technique.Release] : [Technique.Release],
            };
        }

        var position = new Position(number, random.Next(open, neck.Frets + 1));
        var techniques = new List<Technique>();
        foreach (var technique in Technique.Known)
        {
            var isUsual =
                technique == Technique.HammerOn
                || technique == Technique.PullOff
                || technique == Technique.Slide
                || technique == Technique.Vibrato;
            if (
                random.Next(isUsual ? 6 : 18) == 0
                && (!isSimple || isUsual)
                && CanBe(neck, technique, position, open)
                && Leads(technique, position, before?.End == at ? before : null)
            )
            {
                techniques.Add(technique);
            }
        }

        if (techniques.Contains(Technique.SlideInFromBelow))
        {
            // Nobody slides into a note from both sides; after a note on the same string tab has no sign for it.
            techniques.Remove(Technique.SlideInFromAbove);
        }

        var trill = random.Next(open, neck.Frets);
        trill += trill >= position.Fret ? 1 : 0;

        return new()
        {
            Position = position,
            Pitch = Pitch.FromMidi(neck.MidiNumberAt(position)),
            Start = at,
            Techniques = techniques,
            TrillFret = techniques.Contains(Technique.Trill) ? trill : null,
            Bend = techniques.Exists(static each => each.IsBent)
                ? random.Next(1, PathNote.MaxBend / PathNote.BendStep) * PathNote.BendStep
                : 0,
        };
    }

    // What leads the wrong way reads back too, with a remark.
    private static bool Leads(Technique technique, Position to, PathNote? before) =>
        before is null
        || (
            technique == Technique.HammerOn
                ? to.Fret > before.Position.Fret
                : technique != Technique.PullOff || to.Fret < before.Position.Fret
        );

    private static bool CanBe(Neck neck, Technique technique, Position position, int open) =>
        technique == Technique.Release ? false
        : technique.IsBent ? position.Fret > open
        : technique == Technique.NaturalHarmonic
            ? position.Fret - open is 3 or 4 or 5 or 7 or 9 or 12 or 16 or 19 or 24 or 28
        : technique != Technique.Trill || neck.Frets > open;

    private static Pitch Usual(Changes? changes, PathNote note) =>
        changes?.At((note.Start % changes.Beats).Reduce()).Chord?.Spell(note.Pitch.MidiNumber) ?? note.Pitch;

    private static Pitch Renamed(Random random, Pitch pitch)
    {
        var letter = (Letter)random.Next(7);
        var natural = new NoteName(letter).PitchClass;
        var alteration = ((pitch.PitchClass - natural + 18) % 12) - 6;
        return Pitch.Nearest(new NoteName(letter, alteration), pitch.MidiNumber);
    }
}
