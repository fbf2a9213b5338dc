using System.Globalization;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Zones;
using TheoryKit.Licks;
using TheoryKit.Licks.Folders;
using TheoryKit.Licks.Moves;
using TheoryKit.Licks.Search;
using TheoryKit.Licks.Tab;
using TheoryKit.Licks.Tab.Remarks;
using TheoryKit.Paths;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Drawing.Tests.Licks;

/// <summary>A dozen licks over the three tunes that have every technique, for pictures.</summary>
internal static class DrawnLicks
{
    private const string Boats = "4/4, F major: Gm9 | C13 | Fmaj9 | Dm7";
    private const string Stairs = "3/4, Eb major: Ebmaj7 | Cm7 | Fm7 | Bb7";
    private const string Copper = "4/4, D major: D | G6 | A7sus4 | D";

    public static Lick Bends { get; } =
        Of(
            "Leaning mast",
            "Nine Tin Boats",
            Boats,
            "1/2 1/2 1 1 1 1/2 1/2 1/2 1/2 2",
            "2:8 2:6 2:8/bend=200 2:8/release 2:6/vibrato 3:5 3:5/bend=50 2:6/bend=100/accent 3:7/bend=300 3:7/release/vibrato"
        ) with
        {
            Tempo = 132,
            Tags = ["bends", "second phrase"],
            Headers = [new("from", "the run-through on the ferry"), new("sound", "neck pickup, little drive")],
            Words = "Let the first bend ring until the release.\nThe quarter tone is a lean, no more.",
        };

    /// <summary>Enclosed, approached, passed through, bent to, slid into, anticipated, left outside, and a click.</summary>
    public static Lick Analysed { get; } =
        Of(
            "Every part",
            "Nine Tin Boats",
            Boats,
            "1/2 1/2 1/2 1/2 1/2 1/2 1/2 3/2 1/2 1/2 1/2 1/2 1/2 1/2 1/8 7/8 1 1/2 1/2 1 1/2 1/2 1/2 1/2 1/2 1/2 1/2 1/2",
            "3:3 3:5 3:7 2:6 2:8 2:6 3:8 3:9/slide 2:8 2:8/dead_note 3:5 2:4 2:6 3:5 3:8 3:10/slide 2:8/bend=200 2:8/release 2:6/pull-off 3:9 3:7 3:6 3:7 4:6 4:9 4:7 3:5 3:6"
        );

    public static Lick PreBends { get; } =
        Of(
            "Slack rope",
            "Nine Tin Boats",
            Boats,
            "1 1/2 1/2 2 1 1/2 1/2 1 1",
            "3:7/pre-bend=200 3:7/release 3:5/pull-off 4:7/vibrato 2:8/pre-bend=400 2:8/release=200 2:8/release 2:6 1:5/pre-bend=100"
        );

    /// <summary>A bend held over the bar line, released in the next line where the picture is narrow.</summary>
    public static Lick OverTheLine { get; } =
        Of(
            "Across the sound",
            "Nine Tin Boats",
            Boats,
            "1 1 2 2 1/2 1/2 1 1 1 2",
            "2:10 2:8 1:8/bend=200 1:8/release 1:6/pull-off 1:8/hammer-on 1:6/pull-off 2:10 2:8/palm_mute 2:6/palm_mute"
        );

    public static Lick Slides { get; } =
        Of(
            "Wet planks",
            "Nine Tin Boats",
            Boats,
            "1/2 1/2 1/2 1/2 1 1 1/2 1/2 1 2",
            "4:5/slide_in_from_below 4:7/slide 3:5 3:7/slide 3:10/slide_in_from_above 2:10/slide_out_down 2:11/slide_in_from_below/slide_out_up 1:13 1:10/slide 1:8/vibrato/slide_out_down"
        );

    public static Lick Slurs { get; } =
        Of(
            "Running the steps",
            "Kestrel Stairs",
            Stairs,
            "1/4 1/4 1/4 1/4 1/2 1/2 1/2 1/2 1/3 1/3 1/3 2 1",
            "3:5 3:7/hammer-on 3:8/hammer-on 3:7/pull-off 3:5/pull-off 4:8 4:5/pull-off 4:8/hammer-on 3:5 3:8/hammer-on 3:5/pull-off 4:6 5:8/ghost_note"
        );

    public static Lick Trills { get; } =
        Of(
            "Two birds",
            "Kestrel Stairs",
            Stairs,
            "1 1/2 1/2 1 2 1 3/2 3/2",
            "2:8/trill=10/accent 2:8 2:6/pull-off 3:8/trill=7 1:11/tap 1:8/pull-off 1:6/tap/staccato 3:7/vibrato/accent"
        );

    public static Lick Harmonics { get; } =
        Of(
            "Bells over the harbour",
            "Copper Weather",
            Copper,
            "1 1 1 1 2 2 1 1 2",
            "6:12/natural_harmonic 4:7/natural_harmonic 3:5/natural_harmonic+2:5/natural_harmonic 1:12/natural_harmonic 4:5/artificial_harmonic 2:3/artificial_harmonic/vibrato 5:12/natural_harmonic 6:0+5:0+4:0 6:0",
            new(Tuning.Find("Open D")!)
        );

    public static Lick Mutes { get; } =
        Of(
            "Low tide",
            "Copper Weather",
            Copper,
            "1/2 1/2 1/2 1/2 1/2 1/2 1 1/2 1/2 1/2 1/2 1 1 4",
            "6:0/palm_mute 6:0/palm_mute 6:3/palm_mute 5:0/palm_mute 6:0/dead_note 5:2 6:0+5:0/accent 6:0/palm_mute 4:x 6:0/palm_mute 6:3/palm_mute 5:3/bend=100 4:0/ghost_note 6:0+5:0+4:0/vibrato".Replace(
                "4:x",
                "4:0/dead_note",
                StringComparison.Ordinal
            ),
            new(Tuning.Find("Open D")!)
        );

    public static Lick DoubleStops { get; } =
        Of(
            "Side by side",
            "Kestrel Stairs",
            Stairs,
            "1 1/2 1/2 1 1 1 1",
            "2:11/bend=100+1:11 2:8/bend=200+1:8/bend=200 3:8/slide_in_from_below+2:8/slide_in_from_below 3:7/bend=200+2:8 2:6+1:6 4:5+3:5/palm_mute 5:6"
        );

    public static Lick Everything { get; } =
        Of(
            "All hands",
            "Kestrel Stairs",
            Stairs,
            "1/2 1/2 1/2 1/2 1 3/4 1/4 1/2 1/2 1 1 1 1",
            "1:11/tap/accent/vibrato 1:8/pull-off 2:11/bend=150/vibrato 2:11/release=50 3:8/artificial_harmonic/accent/tap 3:10/slide/trill=12 3:8/pull-off 4:8/palm_mute/accent 4:5/palm_mute/staccato 5:6/dead_note 4:8/ghost_note 3:7/pre-bend=250 3:7/release"
        );

    public static Lick Plain { get; } =
        Of("Four on the floor", "", null, "1", "5:3 4:2 4:5 3:4") with
        {
            Tempo = 90.5,
            Swing = Swing.Triplet,
        };

    public static Lick SevenNine { get; } =
        Of(
            "Same steps, other shoes",
            "Nine Tin Boats",
            Boats,
            "1/2 1/2 1 1 1 1/2 1/2 1/2 1/2 1 1",
            "2:8 2:6 2:8/bend=200 1:5 2:6/vibrato 3:5 3:7 2:6/bend=100 2:5 3:7/bend=200 3:7/release"
        );

    public static IReadOnlyList<Lick> All { get; } =
    [Bends, PreBends, OverTheLine, Slides, Slurs, Trills, Harmonics, Mutes, DoubleStops, Everything, Plain, SevenNine];

    /// <summary>Those in 4/4 over the bossa.</summary>
    public static IReadOnlyList<Lick> InBossa { get; } = [Bends, SevenNine, OverTheLine];

    public static TabReading Reading { get; } =
        new()
        {
            Path = Bends.Path,
            Words = "from the ferry\nslowly",
            Remarks =
            [
                new TabRemark.BendUnsaid { Line = 3, Column = 12 },
                new TabRemark.SignPassedOver("zzz")
                {
                    Line = 5,
                    Column = 4,
                    Length = 3,
                },
            ],
        };

    /// <summary>A folder with three of them, one of these in another key too, and a file that is no tab.</summary>
    public static LickFolder Folder { get; } =
        Kept(
            [
                Bends,
                Bends.Transpose(Interval.Parse("P4")).Lick with
                {
                    Name = "Leaning mast, higher",
                },
                Slurs,
                SevenNine,
            ],
            ("torn.tab", "name: Torn\n\ne|--z")
        );

    /// <summary>What a search finds there.</summary>
    public static IReadOnlyList<FoundLick> Found { get; } = Folder.Find("tune:\"Nine Tin Boats\" technique:bend");

    /// <summary>To chords of the other kind: thirds and sevenths go with them, one bend becomes another.</summary>
    public static MovedLick Refitted { get; } = Bends.Refit(Changes.Parse("Gmaj9 | Cm7"));

    /// <summary>On another instrument, where hardly anything can stay.</summary>
    public static MovedLick Crossed { get; } = Harmonics.On(new Neck(Tuning.Parse("Eb2 Bb2 Eb3 G3 Bb3 Eb4"), 648, 12));

    /// <summary>Licks in a folder as it is read from the disk.</summary>
    public static LickFolder Kept(IEnumerable<Lick> licks, params (string Name, string Text)[] files)
    {
        var parent = Directory.CreateTempSubdirectory();
        try
        {
            var directory = parent.CreateSubdirectory("ferry").FullName;
            foreach (var (name, text) in files)
            {
                File.WriteAllText(System.IO.Path.Combine(directory, name), text);
            }

            var folder = LickFolder.Open(directory);
            folder.SaveAll(licks);
            return folder; // it knows by now what it holds
        }
        finally
        {
            parent.Delete(recursive: true);
        }
    }

    /// <summary>A lick written shortly: positions with their techniques after slashes, a bend's cents or a trill's fret after =.</summary>
    public static Lick Of(string name, string tune, string? changes, string rhythm, string notes, Neck? on = null)
    {
        var over = changes is null ? null : Changes.Parse(changes);
        var neck = on ?? Neck.Guitar;
        return new()
        {
            Name = name,
            Tune = tune,
            Path = new Path(
                neck,
                notes
                    .Split(' ')
                    .Zip(Rhythm.Parse(rhythm).Strokes())
                    .SelectMany(each => each.First.Split('+').Select(text => Note(text, neck, over, each.Second))),
                over?.Time,
                over
            ),
        };
    }

    private static PathNote Note(string text, Neck neck, Changes? over, Stroke stroke)
    {
        var words = text.Split('/');
        var position = Position.Parse(words[0]);
        var midi = neck.MidiNumberAt(position);
        var note = new PathNote
        {
            Position = position,
            Pitch = over?.At((stroke.Start % over.Beats).Reduce()).Chord?.Spell(midi) ?? Pitch.FromMidi(midi),
            Start = stroke.Start,
            Length = stroke.Length,
        };
        foreach (var word in words.Skip(1))
        {
            var parts = word.Split('=');
            var technique = Technique.Find(parts[0].Replace('_', ' '))!;
            var number = parts.Length > 1 ? int.Parse(parts[1], CultureInfo.InvariantCulture) : 0;
            note = note with
            {
                Techniques = [.. note.Techniques, technique],
                Bend = technique.IsBent || technique == Technique.Release ? number : note.Bend,
                TrillFret = technique == Technique.Trill ? number : note.TrillFret,
            };
        }

        return note;
    }
}
