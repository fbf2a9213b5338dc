namespace TheoryKit.Theory.Scales;

public sealed partial class ScaleType
{
    /// <summary>The major scale.</summary>
    public static ScaleType Major => Known[0];

    /// <summary>The natural minor scale.</summary>
    public static ScaleType Minor => Known[5];

    // One line each: name, formula, other names. Modes follow their parent in order. A new scale is a new line.

    /// <summary>All types of scale that have a name here, families together, each mode after its parent. From memory: formulas and names of the
    /// trade.</summary>
    public static IReadOnlyList<ScaleType> Known { get; } =
    [
        new("major", "1 2 3 4 5 6 7", "ionian"),
        new("dorian", "1 2 b3 4 5 6 b7"),
        new("phrygian", "1 b2 b3 4 5 b6 b7"),
        new("lydian", "1 2 3 #4 5 6 7"),
        new("mixolydian", "1 2 3 4 5 6 b7"),
        new("minor", "1 2 b3 4 5 b6 b7", "natural minor", "aeolian"),
        new("locrian", "1 b2 b3 4 b5 b6 b7"),
        // the modes of melodic minor
        new("melodic minor", "1 2 b3 4 5 6 7", "jazz minor"),
        new("dorian b2", "1 b2 b3 4 5 6 b7", "phrygian #6", "phrygian natural 6"),
        new("lydian augmented", "1 2 3 #4 #5 6 7", "lydian #5"),
        new("lydian dominant", "1 2 3 #4 5 6 b7", "lydian b7", "mixolydian #4", "acoustic", "overtone"),
        new("mixolydian b6", "1 2 3 4 5 b6 b7", "aeolian dominant", "melodic major"),
        new("locrian #2", "1 2 b3 4 b5 b6 b7", "locrian natural 2", "aeolian b5", "half-diminished"),
        new("altered", "1 b2 b3 b4 b5 b6 b7", "super locrian", "altered dominant", "diminished whole tone"),
        // the modes of harmonic minor
        new("harmonic minor", "1 2 b3 4 5 b6 7"),
        new("locrian #6", "1 b2 b3 4 b5 6 b7", "locrian natural 6"),
        new("ionian #5", "1 2 3 4 #5 6 7", "ionian augmented", "major #5"),
        new("dorian #4", "1 2 b3 #4 5 6 b7", "ukrainian dorian"),
        new("phrygian dominant", "1 b2 3 4 5 b6 b7", "mixolydian b2 b6", "freygish"),
        new("lydian #2", "1 #2 3 #4 5 6 7"),
        new("ultralocrian", "1 b2 b3 b4 b5 b6 bb7", "super locrian bb7", "altered bb7"),
        // the modes of harmonic major
        new("harmonic major", "1 2 3 4 5 b6 7"),
        new("dorian b5", "1 2 b3 4 b5 6 b7", "locrian #2 #6"),
        new("phrygian b4", "1 b2 b3 b4 5 b6 b7"),
        new("lydian b3", "1 2 b3 #4 5 6 7", "melodic minor #4", "lydian diminished"),
        new("mixolydian b2", "1 b2 3 4 5 6 b7"),
        new("lydian augmented #2", "1 #2 3 #4 #5 6 7"),
        new("locrian bb7", "1 b2 b3 4 b5 b6 bb7"),
        // the modes of double harmonic
        new("double harmonic", "1 b2 3 4 5 b6 7", "double harmonic major", "byzantine"),
        new("lydian #2 #6", "1 #2 3 #4 5 #6 7"),
        new("ultraphrygian", "1 b2 b3 b4 5 b6 bb7"),
        new("hungarian minor", "1 2 b3 #4 5 b6 7", "double harmonic minor"),
        new("mixolydian b2 b5", "1 b2 3 4 b5 6 b7", "oriental"),
        new("ionian #2 #5", "1 #2 3 4 #5 6 7", "ionian augmented #2"),
        new("locrian bb3 bb7", "1 b2 bb3 4 b5 b6 bb7"),
        // other scales of seven tones
        new("neapolitan minor", "1 b2 b3 4 5 b6 7"),
        new("neapolitan major", "1 b2 b3 4 5 6 7"),
        new("leading whole tone", "1 2 3 #4 #5 #6 7"),
        new("major locrian", "1 2 3 4 b5 b6 b7"),
        new("hungarian major", "1 #2 3 #4 5 6 b7"),
        new("enigmatic", "1 b2 3 #4 #5 #6 7"),
        new("persian", "1 b2 3 4 b5 b6 7"),
        // five tones: the modes of the major pentatonic, then others
        new("major pentatonic", "1 2 3 5 6"),
        new("egyptian", "1 2 4 5 b7", "suspended pentatonic"),
        new("man gong", "1 b3 4 b6 b7", "blues minor pentatonic"),
        new("ritusen", "1 2 4 5 6", "blues major pentatonic"),
        new("minor pentatonic", "1 b3 4 5 b7"),
        new("dominant pentatonic", "1 2 3 5 b7"),
        new("minor 6 pentatonic", "1 b3 4 5 6", "minor sixth pentatonic"),
        // the modes of hirajoshi
        new("hirajoshi", "1 2 b3 5 b6"),
        new("iwato", "1 b2 4 b5 b7"),
        new("in", "1 b2 4 5 b6", "miyako-bushi"),
        new("lydian pentatonic", "1 3 #4 5 7", "chinese"),
        new("insen", "1 b2 4 5 b7"),
        new("kumoi", "1 2 b3 5 6"),
        new("ryukyu", "1 3 4 5 7", "okinawan"),
        new("balinese", "1 b2 b3 5 b6"),
        // six tones
        new("blues", "1 b3 4 b5 5 b7", "minor blues"),
        new("major blues", "1 2 b3 3 5 6"),
        new("whole tone", "1 2 3 #4 #5 b7"),
        new("augmented", "1 #2 3 5 #5 7"),
        new("inverted augmented", "1 b2 3 4 b6 6"),
        new("prometheus", "1 2 3 #4 6 b7"),
        new("tritone", "1 b2 3 b5 5 b7"),
        // eight tones and more
        new("whole-half diminished", "1 2 b3 4 b5 b6 6 7", "diminished", "whole-half octatonic"),
        new("half-whole diminished", "1 b2 b3 3 #4 5 6 b7", "dominant diminished", "half-whole octatonic"),
        new("bebop major", "1 2 3 4 5 #5 6 7"),
        new("bebop dominant", "1 2 3 4 5 6 b7 7", "bebop"),
        new("bebop dorian", "1 2 b3 3 4 5 6 b7", "bebop minor"),
        new("bebop melodic minor", "1 2 b3 4 5 #5 6 7"),
        new("bebop harmonic minor", "1 2 b3 4 5 b6 b7 7"),
        new("spanish eight-tone", "1 b2 b3 3 4 b5 b6 b7"),
        new("chromatic", "1 b2 2 b3 3 4 b5 5 b6 6 b7 7"),
    ];
}
