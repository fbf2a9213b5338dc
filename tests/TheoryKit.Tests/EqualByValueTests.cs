using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Fingering.Zones;
using TheoryKit.Paths.Exercises;
using TheoryKit.Paths.Joins;
using TheoryKit.Paths.MadeLines;
using TheoryKit.Paths.Routes;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Naming;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Theory.Relations;
using TheoryKit.Theory.Scales;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests;

/// <summary>Values with no text of their own: each row of them differs in one thing at a time that counts.</summary>
public class EqualByValueTests
{
    private static readonly Neck Short = new(Tuning.Standard, 628);

    private static Changes Boats => Changes.Parse("F major: Gm9 | C13 | Fmaj9 | Dm7");

    private static Changes Stairs => Changes.Parse("3/4, Eb major: Ebmaj7 | Cm7 | Fm7 | Bb7");

    [Fact]
    public void Notes_and_chords()
    {
        Laws.ByValue(() => Bar.Of(4, [C("Gm9")]), () => Bar.Of(4, [C("C13")]), () => Bar.Of(4, [C("Gm9"), C("C13")]));
        Laws.ByValue(() => Reading("C E G"), () => Reading("C Eb G"));
        Laws.ByValue(
            () => VoiceMotion.Between(C("Gm9"), C("C13")),
            () => VoiceMotion.Between(C("C13"), C("Gm9")),
            () => VoiceMotion.Between(C("Gm9"), C("Dm7"))
        );
        Laws.ByValue(() => ChordPair.Of(C("Gm9"), C("C13")), () => ChordPair.Of(C("C13"), C("Gm9")));
        Laws.ByValue(() => Formula.Parse("1 3 5").Relations(), () => Formula.Parse("1 b3 5").Relations());
        Laws.ByValue(
            () => new KnownTuning("Copper", Tuning.Standard, "guitar"),
            () => new KnownTuning("Weather", Tuning.Standard, "guitar"),
            () => new KnownTuning("Copper", Tuning.Standard.Transpose(new Interval(2, -1)), "guitar"),
            () => new KnownTuning("Copper", Tuning.Standard, "lute")
        );
    }

    [Fact]
    public void Grips_shapes_and_zones()
    {
        Laws.ByValue(
            () => C("F").Grips(Neck.Guitar)[0].Grip,
            () => C("F").Grips(Neck.Guitar)[1].Grip,
            () => C("F").Grips(Neck.Guitar)[2].Grip
        );
        Laws.ByValue(
            () => C("F").Grips(Neck.Guitar)[0],
            () => C("F").Grips(Neck.Guitar)[1],
            () => C("F").Grips(Short)[0]
        );
        Laws.ByValue(
            () => C("Gm9").Zones(Neck.Guitar)[0],
            () => C("Gm9").Zones(Neck.Guitar)[1],
            () => C("Gm7").Zones(Neck.Guitar)[0],
            () => C("Gm9").Zones(Short)[0]
        );
        Laws.ByValue(
            () => C("Gm9").Zones(Neck.Guitar)[0].Shape,
            () => C("Gm9").Zones(Neck.Guitar)[1].Shape,
            () => C("Gm7").Zones(Neck.Guitar)[0].Shape
        );
        Laws.ByValue(() => C("Gm9").Zones(Neck.Guitar)[0].Form, () => C("Gm9").Zones(Neck.Guitar)[1].Form);
        Laws.ByValue(() => Line(5, 7, 8)[0], () => Line(5, 7)[0], () => Line(5, 7, 9)[0]);
        Laws.ByValue(
            () => Note(5),
            () => Note(6),
            () => Note(5) with { Rings = 2 },
            () => Note(5) with { StaysOnString = true }
        );
    }

    [Fact]
    public void Tunings_compared_and_searched()
    {
        Laws.ByValue(
            () => OpenStringsReading.Of(Neck.Guitar),
            () => OpenStringsReading.Of(Short),
            () => OpenStringsReading.Of(Neck.Guitar, Key.Parse("E major")),
            () => OpenStringsReading.Of(Neck.Guitar, hand: Hand.Large),
            () => OpenStringsReading.Of(Neck.Guitar, limits: GripLimits.Default with { MinSounding = 2 })
        );
        Laws.ByValue(() => Shape("1 3 5", 0), () => Shape("1 3 5", 1), () => Shape("1 b3 5", 0));
        Laws.ByValue(
            () => Compared(Neck.Guitar).Columns[0],
            () => Compared(Short).Columns[0],
            () => Compared(Neck.Guitar, Short).Columns[0]
        );
        Laws.ByValue(() => Compared(Neck.Guitar).Columns[0].Cells[0], () => Compared(Neck.Guitar).Columns[0].Cells[1]);
        Laws.ByValue(() => Compared(Neck.Guitar), () => Compared(Short), () => Compared(Neck.Guitar, Short));
        var (found, again) = (Searched(), Searched());
        Laws.ByValue(Turn(found[0], again[0]), Turn(found[1], again[1]));
    }

    [Fact]
    public void Lines_and_exercises()
    {
        Laws.ByValue(
            () => JoinSearch.Find(Boats, Zone(1), 4),
            () => JoinSearch.Find(Stairs, Zone(1), 4),
            () => JoinSearch.Find(Boats, Zone(2), 4),
            () => JoinSearch.Find(Boats, Zone(1), 3)
        );
        Laws.ByValue(
            () => JoinSearch.Table(Boats, Neck.Guitar, most: 3),
            () => JoinSearch.Table(Stairs, Neck.Guitar, most: 3),
            () => JoinSearch.Table(Boats, Short, most: 3),
            () => JoinSearch.Table(Boats, Neck.Guitar, most: 4),
            () => JoinSearch.Table(Boats, Neck.Guitar, [new(5, 8)], most: 3)
        );
        Laws.ByValue(
            () => ZoneTravel.Of(C("Dm7").Zones(Neck.Guitar)),
            () => ZoneTravel.Of(C("Dm7").Zones(Neck.Guitar), isDown: true),
            () => ZoneTravel.Of(C("Dm7").Zones(Neck.Guitar), rhythm: Rhythm.Parse("1/4"))
        );
        Laws.ByValue(() => Made(1), () => Made(2));
        Laws.ByValue(() => Route(0), () => Route(1));
    }

    private static Chord C(string symbol) => Chord.Parse(symbol);

    private static Zone Zone(int index) => C("Gm9").Zones(Neck.Guitar)[index];

    private static ChordReading Reading(string notes) => ChordNaming.Readings(NoteName.ParseList(notes))[0];

    private static MovableShape Shape(string formula, int index) =>
        MovableShape.Find(Formula.Parse(formula), Neck.Guitar)[index];

    private static LineNote Note(int fret) => LineNote.At(new(1, fret));

    private static IReadOnlyList<FingeredLine> Line(params int[] frets) =>
        [.. LineSearch.Find(new LineQuery { Neck = Neck.Guitar, Notes = [.. frets.Select(Note)] })];

    private static TuningComparison Compared(params Neck[] necks) => TuningComparison.Of(necks, [C("Gm9"), C("C13")]);

    private static TuningAnswer Searched() =>
        TuningSearch.Find(
            new()
            {
                Base = Neck.Guitar,
                Chords = [new(C("G"), 1)],
                Best = 2,
            }
        );

    private static Func<T> Turn<T>(T first, T second)
    {
        var isFirst = false;
        return () => (isFirst = !isFirst) ? first : second;
    }

    private static MadeLine Made(ulong seed) =>
        LineMaker.Make(
            new()
            {
                Neck = Neck.Guitar,
                Changes = Boats,
                Window = new(4, 9),
                Seed = seed,
            }
        );

    private static Route Route(int index) =>
        RouteSearch.Find(
            new()
            {
                Changes = Boats,
                Neck = Neck.Guitar,
                Best = 2,
            }
        )[index];
}
