namespace TheoryKit.Theory.Notes;

/// <summary>The arithmetic of the major scale that spelling, intervals and degrees share.</summary>
internal static class Diatonic
{
    public const int StepsPerOctave = 7;
    public const int SemitonesPerOctave = 12;

    private static ReadOnlySpan<byte> MajorScale => [0, 2, 4, 5, 7, 9, 11];

    /// <summary>Semitones of the major scale from its tonic to <paramref name="steps"/> letters above; any sign.</summary>
    public static int Semitones(int steps)
    {
        var octaves = FloorDivide(steps, StepsPerOctave);
        return (octaves * SemitonesPerOctave) + MajorScale[steps - (octaves * StepsPerOctave)];
    }

    public static int FloorDivide(int value, int by) => (value / by) - (value % by < 0 ? 1 : 0);

    public static int Modulo(int value, int by)
    {
        var rest = value % by;
        return rest < 0 ? rest + by : rest;
    }
}
