using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Strings;

namespace TheoryKit.Tests.Tunings.Strings;

/// <summary>Random strings, sets and tensions.</summary>
internal static class StringGens
{
    public static readonly Gen<StringMaterial> Material = Gen.Int[0, StringMaterial.Known.Length - 1]
        .Select(index => StringMaterial.Known[index]);

    /// <summary>In mm; every other one a gauge of the trade.</summary>
    public static readonly Gen<double> Diameter = Gen.OneOf(
        Gen.Double[FittedString.MinDiameter, FittedString.MaxDiameter],
        Gen.Int[8, 255].Select(steps => steps * 0.0005 * 25.4)
    );

    /// <summary>By gauge, with and without a known core, or by unit weight.</summary>
    public static readonly Gen<FittedString> String = Gen.Select(
        Diameter,
        Material,
        Gen.Int[0, 4],
        Gen.Double[0.2, 0.8],
        Gen.Double[FittedString.MinUnitWeight, FittedString.MaxUnitWeight],
        (diameter, material, kind, core, weight) =>
            kind == 0 ? FittedString.OfUnitWeight(weight)
            : kind == 1 && material.IsWound && diameter * core >= FittedString.MinDiameter
                ? new FittedString(diameter, material).Over(diameter * core)
            : new FittedString(diameter, material)
    );

    public static readonly Gen<FittedString> Plain = Gen.Select(
        Diameter,
        Material.Where(material => !material.IsWound),
        (diameter, material) => new FittedString(diameter, material)
    );

    public static readonly Gen<StringSet> Set = String
        .Array[Tuning.MinStrings, Tuning.MaxStrings]
        .Select(strings => new StringSet(strings));

    public static readonly Gen<Tension> Tension = Gen.OneOf(
        Gen.Double[-1000, 1000].Select(newtons => new Tension(newtons)),
        Gen.Double[-1e-9, 1e-9].Select(newtons => new Tension(newtons)),
        Gen.Int[-200, 200].Select(newtons => new Tension(newtons))
    );

    public static readonly Gen<TensionLimits> Limits = Gen.Select(
        Gen.Double[0, 100],
        Gen.Double[0.001, 300],
        Gen.Double[0.01, 1],
        (least, more, part) => new TensionLimits(new(least), new(least + more), part)
    );

    /// <summary>A neck as instruments have it, with a set that fits, in a tuning and another one.</summary>
    public static readonly Gen<(Neck Neck, StringSet Set, Tuning Reference)> Fitted = Gen.Select(
        Gen.Int[Tuning.MinStrings, Tuning.MaxStrings],
        Gen.Double[300, 900],
        Gen.Int[0, int.MaxValue],
        (count, length, seed) =>
        {
            var random = new Random(seed);
            FittedString Any(int i) =>
                new(
                    FittedString.GaugeStep * random.Next(16, 120),
                    StringMaterial.Known[random.Next(StringMaterial.Known.Length)]
                );
            var pitches = Enumerable.Range(0, count).Select(_ => Pitch.FromMidi(random.Next(30, 72))).ToList();
            var reference = pitches.Select(pitch => Pitch.FromMidi(pitch.MidiNumber + random.Next(-3, 4)));
            var start = random.Next(0, 6);
            TuningString Tuned(Pitch pitch, int i) => new(pitch, i == 0 ? start : 0);
            return (
                new Neck(new Tuning(pitches.Select(Tuned)), length, 20, random.Next(0, 5)),
                new StringSet(Enumerable.Range(0, count).Select(Any)),
                new Tuning(reference.Select(Tuned))
            );
        }
    );
}
