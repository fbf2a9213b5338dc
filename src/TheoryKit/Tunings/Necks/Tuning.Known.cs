using TheoryKit.Values;

namespace TheoryKit.Tunings.Necks;

public sealed partial class Tuning
{
    /// <summary>The tunings players use, one line of data each, by instrument; no tuning occurs twice. From memory: pitches and names as
    /// players know them.</summary>
    public static IReadOnlyList<KnownTuning> Known { get; } =
    [
        // Guitar: standard, lowered and dropped.
        Entry("Standard", "E2 A2 D3 G3 B3 E4", "guitar", "E standard"),
        Entry("Half step down", "Eb2 Ab2 Db3 Gb3 Bb3 Eb4", "guitar", "Eb standard"),
        Entry("Whole step down", "D2 G2 C3 F3 A3 D4", "guitar", "D standard"),
        Entry("C standard", "C2 F2 Bb2 Eb3 G3 C4", "guitar", "Two whole steps down"),
        Entry("Drop D", "D2 A2 D3 G3 B3 E4", "guitar"),
        Entry("Double drop D", "D2 A2 D3 G3 B3 D4", "guitar", "DADGBD"),
        Entry("Drop C#", "C#2 G#2 C#3 F#3 A#3 D#4", "guitar", "Drop Db"),
        Entry("Drop C", "C2 G2 C3 F3 A3 D4", "guitar"),
        Entry("Drop B", "B1 F#2 B2 E3 G#3 C#4", "guitar"),
        Entry("Drop A", "A1 E2 A2 D3 F#3 B3", "guitar"),
        // Guitar: open chords.
        Entry("Open D", "D2 A2 D3 F#3 A3 D4", "guitar"),
        Entry("Open E", "E2 B2 E3 G#3 B3 E4", "guitar"),
        Entry("Open G", "D2 G2 D3 G3 B3 D4", "guitar"),
        Entry("Open A", "E2 A2 E3 A3 C#4 E4", "guitar"),
        Entry("Open C", "C2 G2 C3 G3 C4 E4", "guitar"),
        Entry("Open C6", "C2 A2 C3 G3 C4 E4", "guitar"),
        Entry("Open D minor", "D2 A2 D3 F3 A3 D4", "guitar", "DADFAD"),
        Entry("Open E minor", "E2 B2 E3 G3 B3 E4", "guitar"),
        Entry("Open G minor", "D2 G2 D3 G3 Bb3 D4", "guitar"),
        Entry("Open A minor", "E2 A2 E3 A3 C4 E4", "guitar"),
        Entry("Open C minor", "C2 G2 C3 G3 C4 Eb4", "guitar"),
        Entry("High-bass open G", "G2 B2 D3 G3 B3 D4", "guitar"),
        // Guitar: modal, neither major nor minor.
        Entry("DADGAD", "D2 A2 D3 G3 A3 D4", "guitar", "D modal", "Dsus4"),
        Entry("DADEAD", "D2 A2 D3 E3 A3 D4", "guitar", "Dsus2"),
        Entry("DGDGCD", "D2 G2 D3 G3 C4 D4", "guitar", "G modal", "Gsus4"),
        Entry("CGDGCD", "C2 G2 D3 G3 C4 D4", "guitar", "C modal"),
        Entry("CGDGAD", "C2 G2 D3 G3 A3 D4", "guitar"),
        Entry("CGCGCD", "C2 G2 C3 G3 C4 D4", "guitar", "Csus2"),
        Entry("EADEAE", "E2 A2 D3 E3 A3 E4", "guitar", "Asus4"),
        Entry("EBEABE", "E2 B2 E3 A3 B3 E4", "guitar", "E modal", "Esus4"),
        // Guitar: one interval throughout, and strings an octave up.
        Entry("All fourths", "E2 A2 D3 G3 C4 F4", "guitar"),
        Entry("All fifths", "C2 G2 D3 A3 E4 B4", "guitar"),
        Entry("Major thirds", "G#2 C3 E3 G#3 C4 E4", "guitar"),
        Entry("Augmented fourths", "B1 F2 B2 F3 B3 F4", "guitar", "Tritones"),
        Entry("High strung", "E3 A3 D4 G4 B3 E4", "guitar", "Nashville"),
        // Guitars with other strings.
        Entry("Baritone B", "B1 E2 A2 D3 F#3 B3", "baritone guitar", "Baritone guitar", "B standard"),
        Entry("Baritone A", "A1 D2 G2 C3 E3 A3", "baritone guitar", "A standard"),
        Entry(
            "Seven-string standard",
            "B1 E2 A2 D3 G3 B3 E4",
            "seven-string guitar",
            "Seven-string guitar",
            "Seven-string"
        ),
        Entry("Seven-string drop A", "A1 E2 A2 D3 G3 B3 E4", "seven-string guitar"),
        Entry("Seven-string all fourths", "B1 E2 A2 D3 G3 C4 F4", "seven-string guitar"),
        Entry("Seven-string open G", "D2 G2 B2 D3 G3 B3 D4", "seven-string guitar", "Russian guitar"),
        Entry(
            "Eight-string standard",
            "F#1 B1 E2 A2 D3 G3 B3 E4",
            "eight-string guitar",
            "Eight-string guitar",
            "Eight-string"
        ),
        Entry("Eight-string drop E", "E1 B1 E2 A2 D3 G3 B3 E4", "eight-string guitar"),
        Entry("Lap steel C6", "C3 E3 G3 A3 C4 E4", "lap steel guitar", "C6"),
        Entry("Lap steel E7", "B2 D3 E3 G#3 B3 E4", "lap steel guitar", "E7"),
        // Bass.
        Entry("Bass standard", "E1 A1 D2 G2", "bass", "Bass", "Four-string bass"),
        Entry("Bass drop D", "D1 A1 D2 G2", "bass"),
        Entry("Bass half step down", "Eb1 Ab1 Db2 Gb2", "bass"),
        Entry("Bass whole step down", "D1 G1 C2 F2", "bass"),
        Entry("Bass BEAD", "B0 E1 A1 D2", "bass", "BEAD"),
        Entry("Bass all fifths", "C1 G1 D2 A2", "bass"),
        Entry("Tenor bass", "A1 D2 G2 C3", "bass"),
        Entry("Five-string bass", "B0 E1 A1 D2 G2", "five-string bass"),
        Entry("Five-string bass, high C", "E1 A1 D2 G2 C3", "five-string bass"),
        Entry("Six-string bass", "B0 E1 A1 D2 G2 C3", "six-string bass"),
        // Ukulele and its relatives.
        Entry("Ukulele", "G4 C4 E4 A4", "ukulele", "Ukulele standard", "High G"),
        Entry("Ukulele low G", "G3 C4 E4 A4", "ukulele", "Low G"),
        Entry("Ukulele D", "A4 D4 F#4 B4", "ukulele"),
        Entry("Ukulele open C", "G4 C4 E4 G4", "ukulele"),
        Entry("Baritone ukulele", "D3 G3 B3 E4", "baritone ukulele", "Tenor guitar DGBE"),
        Entry("Cavaquinho", "D4 G4 B4 D5", "cavaquinho"),
        // In fifths: mandolin, tenor guitar, tenor banjo.
        Entry("Mandolin", "G3 D4 A4 E5", "mandolin", "Violin"),
        Entry("Mandolin AEAE", "A3 E4 A4 E5", "mandolin", "Mandolin cross A"),
        Entry("Mandolin GDGD", "G3 D4 G4 D5", "mandolin", "Mandolin cross G"),
        Entry("Tenor banjo", "C3 G3 D4 A4", "tenor banjo", "Tenor guitar", "Mandola", "Viola"),
        Entry("Octave mandolin", "G2 D3 A3 E4", "octave mandolin", "Irish tenor banjo"),
        Entry("Irish bouzouki", "G2 D3 A3 D4", "bouzouki"),
        Entry("Mandocello", "C2 G2 D3 A3", "mandocello", "Cello"),
        // Banjo with its short fifth string, and without it.
        Entry("Banjo open G", "G4@5 D3 G3 B3 D4", "five-string banjo", "Banjo", "Five-string banjo"),
        Entry("Banjo G modal", "G4@5 D3 G3 C4 D4", "five-string banjo", "Sawmill", "Mountain minor"),
        Entry("Banjo G minor", "G4@5 D3 G3 Bb3 D4", "five-string banjo"),
        Entry("Banjo double C", "G4@5 C3 G3 C4 D4", "five-string banjo", "Double C"),
        Entry("Banjo drop C", "G4@5 C3 G3 B3 D4", "five-string banjo", "Banjo C"),
        Entry("Banjo open C", "G4@5 C3 G3 C4 E4", "five-string banjo"),
        Entry("Banjo open D", "F#4@5 D3 F#3 A3 D4", "five-string banjo"),
        Entry("Banjo double D", "A4@5 D3 A3 D4 E4", "five-string banjo", "Double D"),
        Entry("Plectrum banjo", "C3 G3 B3 D4", "plectrum banjo"),
        // Three strings.
        Entry("Three-string GDG", "G2 D3 G3", "three-string guitar"),
    ];

    // Of strings, from 3.
    private static readonly string[] Counts = ["THREE", "FOUR", "FIVE", "SIX", "SEVEN", "EIGHT"];

    private static readonly Dictionary<string, Tuning> ByName = Known
        .SelectMany(static known => known.Aliases.Prepend(known.Name).Select(name => (Name: name, known.Tuning)))
        .ToDictionary(static entry => Plain(entry.Name), static entry => entry.Tuning);

    private static readonly Dictionary<Tuning, KnownTuning> ByStrings = Known.ToDictionary(static known =>
        known.Tuning
    );

    /// <summary>The six-string guitar's standard tuning, E2 A2 D3 G3 B3 E4.</summary>
    public static Tuning Standard { get; } = Known[0].Tuning;

    /// <summary>The name by which players know this tuning; null if the catalogue has none.</summary>
    public string? Name => ByStrings.GetValueOrDefault(this)?.Name;

    /// <summary>The tuning that goes by a name or another name of it, null if there is none.</summary>
    /// <remarks>Case says nothing; hyphens are read as spaces, ♯ and ♭ as # and b, <c>7-string</c> as <c>seven-string</c>.</remarks>
    public static Tuning? Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return ByName.GetValueOrDefault(Plain(name));
    }

    /// <summary>The tuning that goes by a name or another name of it, read as <see cref="Find"/> reads it.</summary>
    /// <exception cref="ArgumentException">There is none; the message says which names come nearest.</exception>
    public static Tuning Named(string name) =>
        Find(name) ?? throw NearNames.NoSuch(name, "tuning", Known.Select(static each => each.Name), nameof(name));

    private static string Plain(string name)
    {
        var words = name.Replace('♯', '#')
            .Replace('♭', 'b')
            .ToUpperInvariant()
            .Split([' ', '-', '\t'], StringSplitOptions.RemoveEmptyEntries);
        if (words is [[>= '3' and <= '8' and var digit], "STRING", ..])
        {
            words[0] = Counts[digit - '3'];
        }

        return string.Join(' ', words);
    }

    private static KnownTuning Entry(string name, string text, string instrument, params string[] aliases) =>
        new(name, Parse(text), instrument) { Aliases = [.. aliases] };
}
