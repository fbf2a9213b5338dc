using TheoryKit.Paths;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Licks.Tests.Folders;

/// <summary>Random licks, in families that are alike, with texts of all kinds.</summary>
internal static class FolderGens
{
    /// <summary>Texts that try to be markup, script, style or a path.</summary>
    public static readonly string[] Attacks =
    [
        "<script>alert(1)</script>",
        "\"><img src=x onerror=alert(1)>",
        "' onmouseover='alert(1)",
        "../../etc/passwd",
        "..\\..\\windows\\system32",
        "/etc/passwd",
        "C:\\con",
        "javascript:alert(1)",
        "</style><style>*{display:none}",
        "</svg><svg onload=alert(1)>",
        "]]><!--",
        "-->",
        "url(http://example.invalid/x)",
        "@import 'http://example.invalid/x'",
        "&lt;b&gt;&#x3c;b>",
        "con",
        "NUL",
        "com1.txt",
        ".",
        "..",
        "~",
        "$HOME `id` $(id); rm -rf *",
        "\u202egpj.exe",
        "a\u0301\u0301\u0301 ｅｔｃ／ｐａｓｓｗｄ",
        "𝔅𝔬𝔞𝔱 🎸",
        "Лодки девять",
        "船が九つ",
        "{{constructor.constructor('alert(1)')()}}",
    ];

    /// <summary>One of some values.</summary>
    public static Gen<T> OneOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(index => values[index]);

    private static readonly Changes[] SomeChanges =
    [
        Changes.Parse("4/4, F major: Gm9 | C13 | Fmaj9 | Dm7"),
        Changes.Parse("3/4, Eb major: Ebmaj7 | Cm7 | Fm7 | Bb7"),
        Changes.Parse("4/4: Am7 | D7"),
    ];

    public static readonly Gen<string> Name = Gen.OneOf(
        OneOf(Attacks),
        Gen.String[1, 80].Select(static text => Clean(text)).Where(static text => text.Length > 0),
        OneOf("Boat call", "boat call", "Boat-call", "Boat  call!", "BOAT CALL?")
    );

    /// <summary>Licks of one note after the other on a guitar, with tags, tunes and tempos that searches meet.</summary>
    public static readonly Gen<Lick> Lick =
        from seed in Gen.Int[0, int.MaxValue - 1]
        from name in Name
        select Make(seed, name);

    /// <summary>A lick by a number: the same every time.</summary>
    public static Lick Make(int seed, string name)
    {
        var random = new Random(seed);
        var changes = random.Next(4) == 0 ? null : SomeChanges[random.Next(SomeChanges.Length)];
        var notes = new List<PathNote>();
        var (at, number, fret) = (new Fractions.Fraction(0), random.Next(1, 7), random.Next(3, 9));
        var count = random.Next(4, 17);
        for (var index = 0; index < count; index++)
        {
            var length = random.Next(5) == 0 ? new Fractions.Fraction(1) : new Fractions.Fraction(1, 2);
            (fret, number) = (
                Math.Clamp(fret + random.Next(-3, 4), 1, 15),
                Math.Clamp(number + random.Next(-1, 2), 1, 6)
            );
            var position = new Position(number, fret);
            var midi = Neck.Guitar.MidiNumberAt(position);
            Technique[] techniques = random.Next(8) switch
            {
                0 => [Technique.Bend],
                1 => [Technique.Vibrato],
                2 => [Technique.Dead],
                _ => [],
            };
            var isDead = techniques is [var only] && only == Technique.Dead;
            notes.Add(
                new()
                {
                    Position = position,
                    Pitch = changes?.At(at % changes.Beats).Chord?.Spell(midi) ?? Pitch.Simplest(midi),
                    Start = at,
                    Length = length,
                    Techniques = techniques,
                    Bend = techniques is [var first] && first == Technique.Bend ? 100 * random.Next(1, 3) : 0,
                }
            );
            at += length;
        }

        return new()
        {
            Name = name,
            Path = new Path(Neck.Guitar, notes, changes?.Time, changes).ToWholeBars(),
            Tempo = random.Next(3) == 0 ? null : random.Next(50, 180),
            Tune = random.Next(3) switch
            {
                0 => "",
                1 => "Nine Tin Boats",
                _ => "Kestrel Stairs",
            },
            Tags = random.Next(2) == 0 ? [] : ["slow", "second chorus"],
            Headers = random.Next(3) == 0 ? [new("from", "a boat on the river")] : [],
        };
    }

    private static string Clean(string text) =>
        new string([.. text.Where(static c => !char.IsControl(c) && !char.IsSurrogate(c))]).Trim();
}
