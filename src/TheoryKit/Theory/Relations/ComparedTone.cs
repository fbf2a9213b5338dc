using TheoryKit.Theory.Chords;
using TheoryKit.Values;

namespace TheoryKit.Theory.Relations;

/// <summary>One sound among the chords compared: which of them have it, and as what.</summary>
public sealed record ComparedTone
{
    internal ComparedTone(int pitchClass, int semitones, IEnumerable<ChordTone?> tones)
    {
        PitchClass = pitchClass;
        Semitones = semitones;
        Tones = tones.ToSequence();
        var holders = Tones.Select(static (tone, index) => tone is null ? -1 : index).Where(static index => index >= 0);
        Holders = holders.ToSequence();
    }

    /// <summary>The pitch class, 0 (C) to 11 (B).</summary>
    public int PitchClass { get; }

    /// <summary>Semitones above the first chord's root, 0 to 11.</summary>
    public int Semitones { get; }

    /// <summary>For each chord the tone as it has it, or null if it has it not.</summary>
    public IReadOnlyList<ChordTone?> Tones { get; }

    /// <summary>The places (from 0) of the chords that have it, ascending; at least one.</summary>
    public IReadOnlyList<int> Holders { get; }

    /// <summary>Whether every chord has it.</summary>
    public bool IsShared => Holders.Count == Tones.Count;

    /// <summary>The place of the only chord that has it; null if several have.</summary>
    public int? OnlyIn => Holders.Count == 1 && Tones.Count > 1 ? Holders[0] : null;

    /// <summary>Whether the chords that have it spell it differently.</summary>
    public bool IsRespelled => Holders.Select(index => Tones[index]!.Value.Name).Distinct().Skip(1).Any();

    /// <summary>Whether it has a different function in some of the chords.</summary>
    public bool ChangesFunction => Holders.Select(index => Tones[index]!.Value.Function).Distinct().Skip(1).Any();
}
