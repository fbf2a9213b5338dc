using Fractions;
using TheoryKit.Drawing.Grips;
using TheoryKit.Drawing.Ladders;
using TheoryKit.Drawing.Licks;
using TheoryKit.Drawing.Lines;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Paths;
using TheoryKit.Drawing.Routes;
using TheoryKit.Drawing.Tab;
using TheoryKit.Drawing.Tests.Licks;
using TheoryKit.Drawing.Tests.Practice;
using TheoryKit.Drawing.Theory;
using TheoryKit.Drawing.Tunings;
using TheoryKit.Drawing.Zones;
using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Learning;
using TheoryKit.Fingering.Lines;
using TheoryKit.Fingering.Moving;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Fingering.Zones;
using TheoryKit.Licks;
using TheoryKit.Licks.Analysis;
using TheoryKit.Licks.Folders;
using TheoryKit.Licks.Moves;
using TheoryKit.Licks.Search;
using TheoryKit.Licks.Tab;
using TheoryKit.Licks.Tab.Options;
using TheoryKit.Paths;
using TheoryKit.Paths.Exercises;
using TheoryKit.Paths.Joins;
using TheoryKit.Paths.MadeLines;
using TheoryKit.Paths.Routes;
using TheoryKit.Paths.Sounding;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Naming;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Theory.Relations;
using TheoryKit.Theory.Scales;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Strings;
using TheoryKit.Tunings.Turns;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Drawing.Tests;

/// <summary>A value of every public type, and random ones.</summary>
internal static class Samples
{
    public static Chord Ebmaj7 { get; } = Chord.Parse("Ebmaj7");

    public static IReadOnlyList<Chord> KestrelStairs { get; } =
    [Ebmaj7, Chord.Parse("Cm7"), Chord.Parse("Fm7"), Chord.Parse("Bb7")];

    public static GripAnswer Grips { get; } =
        GripSearch.Find(
            new()
            {
                Chord = Ebmaj7,
                Neck = Neck.Guitar,
                MinSounding = 4,
            }
        );

    /// <summary>A chord on a neck that has no fret with its root.</summary>
    public static ZoneAnswer Rootless { get; } =
        Chord.Parse("C#7").Zones(new Neck(Tuning.Parse("C3 G3 D4"), 400, frets: 5, capo: 2));

    /// <summary>A question that a small hand has no answer to.</summary>
    public static GripAnswer Unreachable { get; } =
        GripSearch.Find(
            new()
            {
                Chord = Chord.Parse("Gm7"),
                Neck = Neck.Guitar,
                Hand = Hand.Small.Scale(0.5),
                OpenStrings = OpenStrings.None,
                MinSounding = 6,
                LastFret = 5,
            }
        );

    public static IReadOnlyList<Zone> Zones { get; } = Ebmaj7.Zones(Neck.Guitar);

    public static LineAnswer Line { get; } =
        LineSearch.Place(
            Neck.Guitar,
            new[] { "G3", "Bb3", "D4", "F4", "A4", "Bb4", "D5", "F5", "A5", "G3" }.Select(static text =>
                Pitch.Parse(text)
            ),
            best: 2
        );

    /// <summary>A bass string far down, a top string near breaking, the rest in between.</summary>
    public static TensionReport Tensions { get; } =
        Neck
            .Guitar.With(Tuning.Parse("Bb1 F2 Bb2 Eb3 Bb3 Ab4"))
            .Tensions(StringSet.Find("Light electric 10-46")!, Tuning.Standard);

    public static JoinedChanges Joined { get; } =
        JoinSearch.Find(
            Changes.Parse("3/4, Eb major: Ebmaj7 | Cm7 | Fm7 | Bb7"),
            Neck.Guitar,
            new(5, 8),
            3,
            JoinRule.SemitoneApproach
        );

    /// <summary>A chord with no tone here, one that is silent, a lead-in.</summary>
    public static JoinedChanges JoinedWithSilence { get; } =
        JoinSearch.Find(
            Changes.Parse("Gm9 | N.C. C13 | F5 | Dm7 F#5"),
            Neck.Guitar.With(Tuning.Parse("G3 D4 A4")),
            new(2, 2),
            5
        );

    public static JoinTable JoinTable { get; } =
        JoinSearch.Table(
            Changes.Parse("4/4, F major: Gm9 | C13 | Fmaj9 | Dm7"),
            Neck.Guitar,
            [new(2, 5), new(5, 8), new(7, 11)],
            2,
            7
        );

    public static Scordatura ToOpenD { get; } = new(Tuning.Standard, Tuning.Find("Open D")!);

    /// <summary>The bossa, held low on the neck, in another tuning.</summary>
    public static MovedChanges NineTinBoats { get; } =
        MovedChanges.Of(
            Changes.Parse("4/4, F major: Gm9 | C13 | Fmaj9 | Dm7"),
            Neck.Guitar,
            Tuning.Find("Drop D")!,
            limits: new GripLimits { LastFret = 10, MinSounding = 4 }
        );

    public static MovedLine MovedLine { get; } =
        MovedLine.Of(
            "5:3 4:0 4:3 3:2 3:3 2:3 1:1 1:5".Split(' ').Select(static text => Position.Parse(text)),
            Neck.Guitar,
            Tuning.Find("DADGAD")!
        );

    public static OpenStringsReading OpenD { get; } = Tuning.Find("Open D")!.Reading();

    /// <summary>Copper Weather in four tunings on light strings.</summary>
    public static TuningComparison Tunings { get; } =
        TuningComparison.Of(
            Neck.Guitar,
            new[] { "Standard", "DADGAD", "Open D", "Drop C#" }.Select(static name => Tuning.Find(name)!),
            Chord.ParseList("Dadd9 Bm7 Gmaj7 A7sus4"),
            limits: new() { MinSounding = 4, LastFret = 12 },
            strings: StringSet.Find("Light electric 10-46")
        );

    /// <summary>Copper Weather, from an open tuning, within a semitone of each string.</summary>
    public static TuningAnswer Search { get; } =
        TuningSearch.Find(
            new()
            {
                Base = new(Tuning.Parse("D2 A2 D3 F#3 A3 D4"), 648, 20),
                Chords = [new(Chord.Parse("Bm7"), 2), new(Chord.Parse("Dmaj9")), new(Chord.Parse("F#m7"))],
                Within = 1,
                Best = 3,
                Limits = new() { MinSounding = 4, LastFret = 7 },
                Requirements = [TuningRequirement.Drone(NoteName.Parse("F#")), TuningRequirement.Rising],
                Strings = StringSet.Find("Light acoustic 12-53"),
                Line = [Pitch.Parse("D4"), Pitch.Parse("F#4"), Pitch.Parse("A4")],
                LineWeight = 0.5,
            }
        );

    /// <summary>A search that has no answer.</summary>
    public static TuningAnswer NoTuning { get; } =
        TuningSearch.Find(
            new()
            {
                Base = Neck.Guitar,
                Chords = [new(Ebmaj7)],
                Within = 1,
                Requirements = [TuningRequirement.OpenChord(Chord.Parse("Bb7")), TuningRequirement.AtMostRetuned(1)],
            }
        );

    /// <summary>A line for Kestrel Stairs with most techniques, a tuplet and a note over the bar line.</summary>
    /// <summary>The bossa, up the neck and into the thirds, each half a beat ahead.</summary>
    public static RouteAnswer Climbing { get; } =
        RouteSearch.Find(
            new()
            {
                Changes = Changes.Parse("4/4, F major: Gm9 | C13 | Fmaj9 | Dm7"),
                Neck = Neck.Guitar,
                Plan = new RoutePlan.Climb(3, 10),
                Targets = [3],
                Anticipation = new Fraction(1, 2),
                Times = 2,
                Best = 3,
            }
        );

    /// <summary>The waltz in upper triads, in one place.</summary>
    public static RouteAnswer Staying { get; } =
        RouteSearch.Find(
            new()
            {
                Changes = Changes.Parse("3/4, Eb major: Ebmaj7 | Cm7 | Fm7 | Bb7"),
                Neck = Neck.Guitar,
                Plan = new RoutePlan.Stay(),
                Rhythm = Rhythm.Parse("1> 1/2 1/2 1/2 1/2"),
                UpperTriads = true,
            }
        );

    /// <summary>A chord that has no third to start on.</summary>
    public static RouteAnswer Blocked { get; } =
        RouteSearch.Find(
            new()
            {
                Changes = Changes.Parse("Bb7sus4 | Eb"),
                Neck = Neck.Guitar,
                Targets = [3],
            }
        );

    public static Path KestrelLine { get; } =
        Played(
            "3/4, Eb major: Ebmaj7 | Cm7 | Fm7 | Bb7",
            "1/2 1/2 1/2> 1/2 1 3/2 1/2 1/2 1/2 1/3 1/3 1/3 1/2 2 r1/2 1/2",
            "5:6 4:5 4:8/hammer-on 3:7 3:8/slide/vibrato 3:5/pull-off 4:8 4:5/ghost_note 5:6 5:3 4:5 4:8/dead_note 3:7/staccato 3:8 2:6"
        );

    /// <summary>Eighths for Nine Tin Boats, fingered.</summary>
    public static Path TinBoatsLine { get; } =
        Played(
                "4/4, F major: Gm9 | C13 | Fmaj9 | Dm7",
                "1/2",
                "6:3 6:6 5:5 4:3 3:3 2:3 2:6 1:5 1:3 2:5 2:3 3:5 3:3 4:5 4:2 5:3 5:8 4:7 4:10 3:9 2:8 2:10 1:8 1:12 1:10 1:8 2:10 2:6 3:7 3:5 4:7 4:3"
            )
            .Fingered();

    /// <summary>Grips, rests of every length, a beat in four and in five parts.</summary>
    public static Path GripsAndRests { get; } =
        Played(
            null,
            "2 r1 1/2 r1/2 1/4 r1/4 1/4 1/4 r1/2 1/2 1/5 1/5 1/5 1/5 1/5 r1 3 r5",
            "6:3+5:5+4:3+3:3 4:5 4:3 5:5 5:3 6:6 6:3 5:3 5:5 4:3 4:5 6:3+5:5+4:3+3:3"
        );

    /// <summary>A path written shortly: positions with their techniques, + between those struck together.</summary>
    /// <summary>A line made over the bossa, within six frets.</summary>
    public static MadeLine Made { get; } =
        LineMaker.Make(
            new()
            {
                Neck = Neck.Guitar,
                Changes = Changes.Parse("4/4, F major: Gm9 | C13 | Fmaj9 | Dm7"),
                Window = new(4, 9),
                Seed = 7,
                FewestPerBar = 5,
                MostPerBar = 8,
            }
        );

    public static ZoneTravel Travel { get; } = ZoneTravel.Of(Zones, accents: AccentPattern.Every(4));

    private static Path Played(string? changes, string rhythm, string notes)
    {
        var over = changes is null ? null : TheoryKit.Theory.Progressions.Changes.Parse(changes);
        var neck = Neck.Guitar;
        var key = over?.Key;
        return new(
            neck,
            notes
                .Split(' ')
                .Zip(Rhythm.Parse(rhythm).Strokes())
                .SelectMany(each =>
                    each.First.Split('+')
                        .Select(text =>
                        {
                            var words = text.Split('/');
                            var position = Position.Parse(words[0]);
                            var pitch = Pitch.FromMidi(neck.MidiNumberAt(position));
                            var name = key?.Scale.Tones.FirstOrDefault(
                                tone => tone.PitchClass == pitch.PitchClass,
                                pitch.Name
                            );
                            return new PathNote
                            {
                                Position = position,
                                Pitch = Pitch.Nearest(name ?? pitch.Name, pitch.MidiNumber),
                                Start = each.Second.Start,
                                Length = each.Second.Length,
                                Techniques =
                                [
                                    .. words.Skip(1).Select(word => Technique.Find(word.Replace('_', ' '))!),
                                    .. each.Second.IsAccented ? [Technique.Accent] : Array.Empty<Technique>(),
                                ],
                            };
                        })
                ),
            over?.Time,
            over
        );
    }

    /// <summary>An example as a player of second place writes it, and one that goes along a string.</summary>
    public static IReadOnlyList<PlayedLine> PlayedLines { get; } =
    [
        PlayedLine.Parse("6:3-2 6:5-4 5:2-1 5:3-2 5:5-4 4:2-1 4:4-3 4:5-4", Neck.Guitar),
        PlayedLine.Parse("3:5-1 3:7-3 3:9-3 2:8-1 2:10-3 3:9-2 3:7-1", Neck.Guitar),
    ];

    public static LearnedHand Learned { get; } = HandLearning.Learn(PlayedLines);

    public static IReadOnlyList<object> Values { get; } =
    [
        .. PracticeSamples.Values,
        Tunings,
        Tunings.Columns[1],
        Tunings.Columns,
        Tunings.Columns[2].Cells[3],
        Tunings.Columns[2].Cells,
        NoteName.Parse("Gb"),
        Pitch.Parse("E2"),
        Interval.Parse("m3"),
        Degree.Parse("#11"),
        Formula.Parse("1 b3 5 b7 9"),
        Formula.Empty,
        Chord.Parse("Gm9"),
        Chord.Parse("C13#11/G"),
        ChordQuality.Find(Formula.Parse("1 3 5"))!,
        ChordNaming.Readings(NoteName.ParseList("C E G A"))[0],
        ChordNaming.Readings(NoteName.ParseList("C E G A"))[0].Terms[0],
        ChordTone.Of(Ebmaj7)[1],
        ChordPair.Of(KestrelStairs[2], KestrelStairs[3]),
        ChordPair.Of(KestrelStairs[2], KestrelStairs[3]).CommonTones[0],
        VoiceMotion.Between(KestrelStairs[2], KestrelStairs[3]),
        VoiceMotion.Between(KestrelStairs[2], KestrelStairs[3]).Moves[0],
        ChordComparison.Of(KestrelStairs),
        ChordComparison.Of(KestrelStairs).Tones[0],
        Formula.Parse("1 b3 5 b7").Relations(),
        Formula.Parse("1 b3 5 b7").Relations().Triads[0],
        Formula.Parse("1 b3 5 b7").Relations().Triads[0].Functions[0],
        Formula.Parse("1 b3 5 b7").Relations().Scales[0],
        Formula.Parse("1 b3 5 b7").Relations().Neighbours[0],
        Scale.Parse("Eb dorian"),
        Scale.Parse("C [1 2 3 #4]"),
        ScaleType.Parse("melodic minor"),
        Key.Parse("Eb major"),
        TimeSignature.Parse("3/4"),
        RomanNumeral.Parse("V7/V"),
        Changes.Parse("4/4, F major: Gm9 | C13 | Fmaj9 | Dm7"),
        Changes.Parse("3/4, Eb major: Ebmaj7 | Cm7 | Fm7 | Bb7").Bars[0],
        Changes.Parse("3/4, Eb major: Ebmaj7 | Cm7 | Fm7 | Bb7").Chords[0],
        PitchClassSet.Parse("{0 3 7}"),
        SetClass.Parse("(0 3 6 9)"),
        IntervalVector.Parse("<0 0 1 1 1 0>"),
        Position.Parse("6:3"),
        Neck.Guitar.PlacesOf(Ebmaj7)[0],
        Tuning.Standard,
        Tuning.Standard[1],
        Tuning.Known[0],
        Neck.Guitar,
        StringMaterial.PlainSteel,
        StringMaterial.WoundNylon,
        FittedString.Parse("0.046 in nickel wound over 0.018 in"),
        FittedString.Parse("0.00624 kg/m"),
        StringSet.Find("Light electric 10-46")!,
        StringSet.Known[0],
        Tension.Parse("72.6 N"),
        TensionLimits.Default,
        Tensions,
        Tensions.Strings[0],
        Tensions.Strings[5],
        FittedString.GaugeFor(new(70), Pitch.Parse("Bb3"), 648, StringMaterial.PlainSteel),
        Hand.Average,
        Hand.Parse("small, thumb over; stretch 4"),
        EffortWeights.Default,
        EffortWeights.Parse("ring 1.5, inner mute 0"),
        ToOpenD,
        ToOpenD[6],
        ToOpenD[6].Check!.Value,
        NineTinBoats,
        NineTinBoats.Grips[0],
        NineTinBoats.Grips[0].Positions[0],
        MovedLine,
        MovedLine.Notes[0],
        OpenD,
        OpenD.Strings[0],
        OpenD.Shapes(OpenStringsReading.UsualQualities[1])[0],
        Grips[0].Grip,
        Grips[0].Grip.Strings[0],
        Grips[0],
        Grips,
        Unreachable,
        Grips.Query,
        NoTuning.Reason!,
        NoTuning.Cuts[0].Limit,
        Unreachable.Reason!,
        new ChordWithoutGrip(2, Unreachable.Reason),
        new NoLineReason.OffItsString(3),
        Rootless.Query,
        Rootless,
        Rootless.Reason!,
        new NoZoneReason.NoFrets(3),
        new MustMoveReason.OtherBass(Pitch.Parse("Bb2"), NoteName.Parse("Eb")),
        new ForeignTone(new(6, 3), IsOpen: false, Pitch.Parse("Bb2")),
        new TensionWarning.MuchMoreInAll(new(120), 0.2),
        new TensionNote.Estimated(),
        new StringAdvice.LowerOrShorterScale(Pitch.Parse("Bb4")),
        new GaugeWarning.ThinnerThanSold(FittedString.Parse("0.016 in phosphor bronze wound")),
        new ReadingReason.ToneInBass(Degree.Parse("b3")),
        new JoinReason.Turned(AtTop: true),
        Blocked.Reason!,
        new ChordLack.Zone(),
        new TechniqueLoss.OpenBend(),
        Grips.Query with
        {
            Top = Pitch.Parse("D5"),
            Strings = new HashSet<int> { 1, 2, 3, 4 },
        },
        ProgressionSearch.Find(KestrelStairs, Grips.Query),
        ProgressionSearch.Find([]),
        Zones[0],
        Zones,
        Zones[0].Window,
        Zones[0].Form,
        Zones[0].Shape,
        Zones[0].Shape.Notes[0],
        Zones[2].Alternatives()[0],
        ShapeRule.NotesPerString(3),
        Line,
        Line[0],
        Line[0][0],
        Line.Query,
        Line.Query.Notes[0],
        Search,
        Search.Query,
        Search.Query.Chords[0],
        Search.Query.Limits,
        Search.Query.Requirements[0],
        Search.Cuts[0],
        Search[0],
        new TuningProgress(300, 729, Search[0]),
        Made,
        Made.Request,
        Travel,
        Travel.Hinges[0],
        Travel.Hinges,
        new PickStrokes(Zones[1].Drill(Drill.Groups(3)), Picking.Economy),
        new PickStrokes(Zones[1].Drill(Drill.UpAndDown))[0],
        Picking.Economy,
        Drill.BrokenIntervals(2),
        AccentPattern.Parse(">--"),
        RootCycle.Shuffled(7),
        TempoLadder.Parse("60 to 120 by 5, 3 times"),
        Approach.EnclosureFromAbove,
        Approach.Known,
        LineSearch.Finger(Neck.Guitar, [Position.Parse("6:3"), Position.Parse("1:15")]),
        JoinRule.Nearest,
        Joined,
        JoinedWithSilence,
        JoinSearch.Cycles(Joined.Query),
        Joined.Query,
        Joined.Query with
        {
            NotesPerBeat = 2,
            Start = Pitch.Parse("Bb3"),
            Direction = Direction.Down,
        },
        Joined.Cycle,
        Joined.Chords[5],
        Joined.Joins[0],
        JoinTable,
        JoinTable.Longest!,
        Technique.HammerOn,
        Technique.Dead,
        KestrelLine.Notes[4] with
        {
            Why = new JoinReason.Entry(Chord.Parse("Cm7"), Pitch.Parse("Bb3"), JoinWay.WentOn, IsAbove: true),
        },
        TinBoatsLine.Notes[0],
        KestrelLine,
        Rhythm.Parse("3/2> 1/2 r1 1/3 1/3 1/3"),
        Rhythm.Parse("1/2>").Strokes().First(),
        Swing.Triplet,
        Swing.Straight,
        WrittenValue.Of(new(3, 16))!,
        new Performance(KestrelLine, 140, Swing.Triplet),
        Climbing,
        Climbing[1],
        Climbing[0].Stops[1],
        Climbing[0].Cost,
        Climbing.Query,
        Climbing.Query.Plan,
        Staying,
        Staying.Query,
        RouteWeights.Default,
        RouteWeights.Default with
        {
            Leap = 1.25,
        },
        new Performance(KestrelLine, 140).Notes[4],
        PlayedLines[0],
        PlayedLines[0].Notes[0],
        PlayedLines[0].TermsFor(Hand.Average)[0],
        PlayedLines[1].DifferenceFor(Hand.Average)!,
        PlayedLines[1].DifferenceFor(Hand.Average)!.Terms[0],
        HandLearningOptions.Default,
        Learned,
        Learned.Weights[0],
        Learned.Agreement[0],
        Learned.Agreement[0].After,
    ];

    /// <summary>A lick with every part that a note can play, and what is made of it.</summary>
    public static LickAnalysis Analysed { get; } = DrawnLicks.Analysed.Analyse();

    public static IReadOnlyList<object> Drawings { get; } =
    [
        Analysed,
        Analysed.Notes[0],
        Analysed.Bars[0],
        Analysed.Changes[0],
        Analysed.Summary,
        Analysed.Summary.Functions[0],
        Analysed.Summary.Parts[0],
        Analysed.Zones()[0],
        TinBoatsLine.Tab(),
        DrawnLicks.Bends,
        DrawnLicks.Bends.Headers[0],
        DrawnLicks.Everything.Draw(),
        DrawnLicks.InBossa.Compare(),
        DrawnLicks.Reading,
        DrawnLicks.Reading.Remarks[0],
        DrawnLicks.Refitted,
        DrawnLicks.Refitted.Tones[1],
        DrawnLicks.Refitted.Tones,
        DrawnLicks.Crossed,
        DrawnLicks.Crossed.Remarks[0],
        DrawnLicks.Crossed.Remarks,
        new[] { DrawnLicks.Refitted, DrawnLicks.Bends.InOctave(-1) },
        DrawnLicks.Folder,
        DrawnLicks.Folder.Licks[0],
        DrawnLicks.Folder.Licks,
        DrawnLicks.Folder.Broken[0],
        DrawnLicks.Found[0],
        DrawnLicks.Found,
        DrawnLicks.Found.Sheet(),
        DrawnLicks.Folder.Duplicates()[0],
        Likeness.Of(DrawnLicks.Bends, DrawnLicks.SevenNine),
        Likeness.Of(DrawnLicks.Bends, DrawnLicks.SevenNine).Differences[0],
        LickLine.Of(DrawnLicks.Bends),
        LickQuery.Parse("function:b3,..,5 technique:bend -tag:altered"),
        LickQuery.Parse("tempo:120-150").Criteria[0],
        new Performance(DrawnLicks.Bends.Path, 100).Notes[2],
        new Performance(DrawnLicks.Bends.Path, 100).Notes[2].Curve[1],
        new TabWriteOptions { Columns = 80 },
        new TabReadOptions { Neck = Neck.Guitar, Timing = TabTiming.Even },
        Climbing[0].Map(),
        Staying[0].Map() with
        {
            Width = 300,
        },
        KestrelLine.OnNeck(),
        new ComparisonOfTunings(Tunings)
        {
            Chord = Ebmaj7,
            FirstFret = 3,
            LastFret = 7,
            IsLeftHanded = true,
            ShowsGrips = false,
            ShowsNumbers = false,
        },
        NeckDrawing.Of(Neck.Guitar, Ebmaj7),
        LadderDrawing.Of(Ebmaj7),
        LadderDrawing.Of(KestrelStairs),
        new ChordPage(Ebmaj7),
        new ChordPage(Chord.Parse("Ebmaj7/A")) { Neck = null },
        ComparisonPage.Of(KestrelStairs),
        GripDrawing.Of(Grips[0]),
        GripDrawing.Of(Grip.Parse("x 3-3 2-2 o 1-1 o")),
        new GripSheet(Grips) { Most = 3, IsLeftHanded = true },
        new GripSheet(Unreachable),
        new ZoneMap(Zones),
        new ZonePage(Zones[2]),
        new RootSheet(Zones[1]),
        new RootSheet(Zones[1]) { Order = RootOrder.Semitones, IsLeftHanded = true },
        ZoneAcrossQualities.Of(Zones[2], [Formula.Parse("1 3 5 b7"), Formula.Parse("1 b3 5 b7")]),
        new LineDrawing(Line[0], Neck.Guitar) { Chord = Chord.Parse("Gm9") },
        ComparisonPage.Of(NoteName.Parse("C"), Formula.Parse("1 3 5 7"), Formula.Parse("1 b3 5 7")),
        ToOpenD.Fitted(StringSet.Find("Light electric 10-46")!, 648),
    ];

    private static readonly Neck Uke3 = new(Tuning.Parse("G3 D4 A4"), 500, 5);

    private static readonly Neck Long = new(Tuning.Standard, 648, 36);

    private static readonly Chord OneTone = new(NoteName.Parse("C"), Formula.Parse("1"));

    // Two instruments that have nothing in common, and a hand that holds nothing on one of them.
    private static readonly TuningComparison NoGrips = TuningComparison.Of(
        [new(Tuning.Parse("Db1 Db2 Db2"), 900, 3), new(Tuning.Find("Banjo")!, 667, 22, 2)],
        KestrelStairs,
        Hand.Small
    );

    /// <summary>Values as small, as large, as empty or as nameless as they can be.</summary>
    public static IReadOnlyList<object> Extremes { get; } =
    [
        new Path(Uke3, []).Analyse(),
        DrawnLicks.Plain.Analyse(),
        DrawnLicks.Mutes.Analyse(),
        DrawnLicks.Harmonics.Analyse(),
        DrawnLicks.Everything.Analyse(),
        .. PracticeSamples.Extremes,
        HandLearning.Learn([]),
        Array.Empty<PlayedLine>(),
        PlayedNote.Parse("1:0"),
        Blocked,
        RouteSearch.Find(new() { Changes = Changes.Parse("N.C."), Neck = Uke3 }),
        TuningComparison.Of([Uke3], [OneTone]),
        NoTuning,
        NoTuning.Query,
        NoTuning.Query.Requirements[0],
        new TuningCut(new TuningLimit.Lacks(NoTuning.Query.Requirements[0]), 3),
        new TuningProgress(0, 15_625, null),
        new TuningProgress(729, 729, Search[0]),
        NoGrips,
        NoGrips.Columns[0].Cells[0],
        new ComparisonOfTunings(NoGrips) { FirstFret = 30, LastFret = 99 },
        OneTone,
        OneTone.Formula,
        new Path(Uke3, []),
        new PickStrokes(new Path(Uke3, [])),
        ZoneTravel.Of([OneTone.Zones(Uke3)[0]]),
        TempoLadder.Parse("1 to 1000 by 1, 100 times"),
        LineMaker.Make(
            new()
            {
                Neck = Uke3,
                Changes = Changes.Parse("1/4: N.C."),
                Approaches = [],
            }
        ),
        new Path(Uke3, []).OnNeck(),
        new Lick { Name = "1", Path = new Path(Uke3, []) },
        new Lick { Name = "1", Path = new Path(Uke3, []) }.Draw() with
        {
            ShowsNeck = false,
            ShowsRhythm = false,
            ShowsFunctions = false,
        },
        new TabReading { Path = new Path(Uke3, []) },
        new TabReadOptions(),
        new TabWriteOptions { ShowsTime = false, Label = static _ => "o" },
        new MovedLick
        {
            From = DrawnLicks.Plain,
            Lick = DrawnLicks.Slurs,
            Remarks = [new(null, null, null, new MoveLoss.PositionsOfHand())],
        },
        DrawnLicks.Plain.InOctave(0),
        DrawnLicks.Everything.Reversed(),
        DrawnLicks.Slides.Displaced(new(1, 2)),
        new Lick { Name = "1", Path = new Path(Uke3, []) }.Reversed(),
        Array.Empty<MovedLick>(),
        new MoveRemark(3, null, null, new MoveLoss.TrillNote()),
        DrawnLicks.Kept([]),
        Array.Empty<FoundLick>().Sheet(""),
        Enumerable.Range(0, 60).Select(static _ => DrawnLicks.Found[0]).Sheet("Sixty"),
        Array.Empty<SimilarLicks>(),
        LickQuery.All,
        Likeness.Of(DrawnLicks.Bends, DrawnLicks.Bends.InOctave(-1).Lick),
        LickLine.Of(new Lick { Name = "1", Path = new Path(Uke3, []) }),
        new BrokenLick("b.tab", LickFault.NoBytes),
        default(PitchPoint),
        Array.Empty<Lick>(),
        new[]
        {
            new Lick { Name = "1", Path = new Path(Uke3, []) },
        }.Compare(),
        new[] { DrawnLicks.Plain, DrawnLicks.Plain, DrawnLicks.Harmonics }.Compare() with
        {
            Width = TabDrawing.MinWidth,
            Columns = TabDrawing.MinColumns,
            ShowsRhythm = false,
        },
        DrawnLicks.All,
        new Performance(new(Uke3, []), 1),
        Rhythm.Parse("64 r64 1/192"),
        KestrelLine.Tab() with
        {
            ShowsRhythm = false,
            ShowsFunctions = false,
            Width = TabDrawing.MinWidth,
            Columns = TabDrawing.MinColumns,
        },
        OneTone.Formula.Relations(),
        Formula.Parse("5"),
        Formula.Parse("1 ##1 #2 4 ##4 6 7"),
        Formula.Parse("1 ##1 #2 4 ##4 6 7").Relations(),
        new ChordPage(OneTone),
        new ChordPage(new Chord(NoteName.Parse("C"), Formula.Parse("1 b2"))),
        new ChordPage(Chord.Parse("G#7alt/D")),
        ChordComparison.Of(OneTone),
        ComparisonPage.Of(OneTone),
        ComparisonPage.Of(Chord.Parse("C")) with
        {
            Neck = null,
        },
        ComparisonPage.Of(Chord.Parse("C"), Chord.Parse("C")),
        new Scordatura(Tuning.Standard, Tuning.Standard),
        new Scordatura(Tuning.Standard, Tuning.Find("Half step down")!),
        new Scordatura(Tuning.Find("Banjo open G")!, Tuning.Find("Banjo double C")!),
        new Scordatura(Tuning.Standard, Tuning.Find("Drop C#")!).Fitted(StringSet.Find("Light electric 10-46")!, 648),
        // No grip before, none after, and a chord that no neck of three strings has.
        MovedChanges.Of([Chord.Parse("C13"), OneTone], Uke3, Uke3.Tuning.With(1, Pitch.Parse("Bb4"))),
        MovedChanges.Of([Chord.Parse("Bb")], new Neck(Tuning.Standard, capo: 3), Tuning.Find("Drop C#")!),
        MovedChanges.Of([Chord.Parse("Bb")], new Neck(Tuning.Standard, capo: 3), Tuning.Find("Drop C#")!).Grips[0],
        MovedLine.Of([new(6, 0)], Neck.Guitar, Tuning.Standard.With(6, Pitch.Parse("F2"))),
        MovedLine.Of([new(6, 1), new(1, 22)], Neck.Guitar, Tuning.Standard),
        Uke3.Tuning.Reading(Key.Parse("Gb minor")),
        new Neck(Tuning.Find("Ukulele")!, 350, 4, 4).Reading(),
        Tuning.Find("Eight-string standard")!.Reading(),
        ComparisonPage.Of(Chord.Parse("C5"), Chord.Parse("F#5")) with
        {
            Neck = Long,
            LastFret = 36,
        },
        ChordPair.Of(OneTone, OneTone),
        ChordPair.Of(Chord.Parse("C5"), Chord.Parse("F#5")),
        VoiceMotion.Between(OneTone, OneTone),
        PitchClassSet.Parse("{}"),
        SetClass.Parse("()"),
        Scale.Parse("C [1]"),
        Changes.Parse("1/4: N.C."),
        Scale.Parse("C chromatic"),
        Uke3,
        Uke3.Tuning,
        Long,
        NeckDrawing.Of(Uke3),
        NeckDrawing.Of(Uke3).WithFrets(5, 5),
        NeckDrawing.Of(Long, Chord.Parse("C13")),
        NeckDrawing.Of(new Neck(Tuning.Standard, 648, 1), OneTone),
        LadderDrawing.Of(OneTone),
        new ZoneMap(OneTone.Zones(Uke3)),
        OneTone.Zones(Uke3),
        OneTone.Zones(Uke3)[0],
        new RootSheet(OneTone.Zones(Uke3)[0]),
        ZoneAcrossQualities.Of(OneTone.Zones(Uke3)[0], Array.Empty<Formula>()),
        Array.Empty<Zone>(),
        Array.Empty<ChordGrip>(),
        new GripSheet([]),
        GripSearch.Find(new() { Chord = OneTone, Neck = Uke3 }),
        GripDrawing.Of(Grip.Parse("x x x")),
        Grip.Parse("x x x"),
        LineSearch.Finger(Uke3, []),
        LineSearch.Finger(Uke3, [Position.Parse("1:0")]),
        LineSearch.Place(Uke3, Array.Empty<Pitch>()),
        LineSearch.Place(Uke3, new[] { Pitch.Parse("C9") }),
        LineSearch.Place(Uke3, new[] { Pitch.Parse("A4") }),
        JoinSearch.Find(new([Bar.Of(1, OneTone)], TimeSignature.Parse("1/4")), Uke3, new(3, 3), 1),
        JoinSearch.Table(new([Bar.Of(1, OneTone)], TimeSignature.Parse("1/4")), Uke3, [new(4, 4), new(3, 3)], 64, 64),
        JoinSearch.Table(new([Bar.Of(1, OneTone)], TimeSignature.Parse("1/4")), Uke3, [new(4, 4)], 1, 2),
    ];

    /// <summary>Chords of every known quality over every common root, some over another bass.</summary>
    public static Gen<Chord> AnyChord { get; } =
        from root in Of(NoteName.Common)
        from quality in Of(ChordQuality.Known)
        from bass in Gen.Frequency(
            (3, Of<NoteName?>([null])),
            (1, Of(NoteName.Common).Select(static note => (NoteName?)note))
        )
        select new Chord(root, quality.Formula, bass);

    /// <summary>Formulas of any degrees, however odd.</summary>
    public static Gen<Formula> AnyFormula { get; } =
        Gen.Select(Gen.Int[1, Degree.MaxNumber], Gen.Int[-Degree.MaxAlteration, Degree.MaxAlteration])
            .Select(static (number, alteration) => new Degree(number, alteration))
            .Array[1, 8]
            .Select(static degrees => new Formula(degrees.Distinct()));

    public static Gen<T> Of<T>(IReadOnlyList<T> values) => Gen.Int[0, values.Count - 1].Select(i => values[i]);
}
