using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Strings;
using TheoryKit.Tunings.Words;

namespace TheoryKit.Tests.Tunings.Strings;

public class FittedStringTests
{
    private static readonly Gen<double> Length = Gen.Double[200, 1200];
    private static readonly Gen<Pitch> Pitches = Gen.Int[24, 84].Select(Pitch.FromMidi);

    [Fact]
    public void Text_round_trips() => Laws.RoundTrip(StringGens.String);

    [Fact]
    public void Equal_when_written_alike() => Laws.Equality(StringGens.String);

    [Fact]
    public void Null_is_refused() => Laws.Null<FittedString>();

    [Fact]
    public void Fuzz_of_the_parser() =>
        Fuzz.Parser<FittedString>([
            "0.010 in plain steel",
            ".046 in nickel wound over 0.018 in",
            "0.66 mm nylon",
            "0.71mm fluorocarbon",
            "1.09 mm wound nylon over .4 mm",
            "0.0004 kg/m",
            "0.52 g/m",
            "0.00038 lb/in",
            "5E-05 kg/m",
            .. StringMaterial.Known.Select(static material => $"0.05 in {material}"),
        ]);

    [Theory]
    [InlineData("-0.010 in plain steel", 1, "a gauge with its material")]
    [InlineData("0 in plain steel", 1, "a gauge from 0.1 to 6.5 mm (0.0039 to 0.2559 in)")]
    [InlineData("10 in plain steel", 1, "a gauge from 0.1 to 6.5 mm")]
    [InlineData("0.010 plain steel", 7, "mm or in and the material")]
    [InlineData("0.010 in unobtainium", 10, "plain steel, nickel wound")]
    [InlineData("0.010 in plain steel over 0.004 in", 21, "no core")]
    [InlineData("0.046 in nickel wound over 0.05 in", 28, "thinner than the string")]
    [InlineData("0.046 in nickel wound over", 27, "a number")]
    [InlineData("0 kg/m", 1, "a unit weight from 0.00005 to 0.3 kg/m")]
    [InlineData("1 kg/m", 1, "a unit weight from 0.00005 to 0.3 kg/m")]
    [InlineData("0.010 in plain steel, 0.010 in", 21, "the end")]
    public void Bad_text_is_refused_with_its_place(string text, int position, string expected) =>
        Laws.Refuses<FittedString>(text, position, expected);

    [Theory]
    [InlineData("0.254 mm plain steel", "0.010 in plain steel")]
    [InlineData(".010 in plain steel", "0.010 in plain steel")]
    [InlineData("0.24130 mm plain steel", "0.0095 in plain steel")]
    [InlineData("0.52 g/m", "0.00052 kg/m")]
    [InlineData("6.24 g/m", "0.00624 kg/m")]
    [InlineData("0.66 mm nylon", "0.66 mm nylon")]
    public void One_string_has_one_text(string text, string written) =>
        Assert.Equal(written, FittedString.Parse(text).ToString());

    [Fact]
    public void What_is_no_string_is_refused()
    {
        var steel = StringMaterial.PlainSteel;
        foreach (var diameter in new[] { 0, -0.254, 0.05, 7, double.NaN, double.PositiveInfinity })
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => new FittedString(diameter, steel));
        }

        foreach (var weight in new[] { 0, -0.0004, 0.00001, 1, double.NaN, double.PositiveInfinity })
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => FittedString.OfUnitWeight(weight));
        }

        Assert.Throws<ArgumentNullException>(() => new FittedString(0.254, null!));
        Assert.Throws<InvalidOperationException>(() => new FittedString(0.254, steel).Over(0.1));
        Assert.Throws<InvalidOperationException>(() => FittedString.OfUnitWeight(0.001).Over(0.1));
        var wound = FittedString.Inches(0.046, StringMaterial.NickelWound);
        foreach (var core in new[] { 0, -1, 0.05, 1.2, double.NaN })
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => wound.Over(core));
        }

        foreach (var length in new[] { 0, -648, double.NaN, double.PositiveInfinity })
        {
            var error = Assert.Throws<ArgumentOutOfRangeException>(() => wound.TensionAt(82.4, length));
            Assert.Contains("A sounding length is a positive number of mm", error.Message, StringComparison.Ordinal);
            Assert.Throws<ArgumentOutOfRangeException>(() => wound.TensionAt(length, 648));
            Assert.Throws<ArgumentOutOfRangeException>(() =>
                FittedString.GaugeFor(new(70), Pitch.Parse("E4"), length, steel)
            );
        }

        Assert.Throws<ArgumentOutOfRangeException>(() => FittedString.GaugeFor(new(0), Pitch.Parse("E4"), 648, steel));
        var tooThick = Assert.Throws<ArgumentOutOfRangeException>(() =>
            FittedString.GaugeFor(new(900), Pitch.Parse("E1"), 300, steel)
        );
        Assert.Contains("a string is 0.1 to 6.5 mm thick", tooThick.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_top_string_of_a_guitar_worked_out_by_hand()
    {
        // 0.010 in, 7850 kg/m³: pi/4 (0.254 mm)² 7850 = 0.39777 g/m. E4 is 329.628 Hz; 4 · 0.648² · 329.628² · 0.00039777 = 72.59 N.
        var tension = FittedString.Parse("0.010 in plain steel").TensionAt(Pitch.Parse("E4"), 648);
        Assert.Equal(72.6, tension.Newtons, 0.05);
        Assert.Equal(1.43e9, FittedString.Parse("0.010 in plain steel").StressAt(tension)!.Value, 0.005e9);
    }

    [Theory]
    // A piano wire, reckoned by a technician: C6 on 181 mm of 0.925 mm, 7.85 g/cm³, pulls 170.2 lbf.
    [InlineData(0.925, "C6", 181, 170.2, 0.1)]
    // Another one, in inches: A4 on 16 in of 0.020 in, 0.283 lb/in³ (7833 kg/m³, so 0.2 % less), pulls 45.6 lbf.
    [InlineData(0.508, "A4", 406.4, 45.6, 0.2)]
    public void Tensions_that_others_reckoned(
        double diameter,
        string pitch,
        double length,
        double pounds,
        double room
    ) =>
        Assert.Equal(
            pounds,
            new FittedString(diameter, StringMaterial.PlainSteel).TensionAt(Pitch.Parse(pitch), length).PoundsForce,
            room
        );

    [Fact]
    public void Tensions_of_a_classical_guitar_as_measured()
    {
        // J. Woodhouse, "Plucked guitar transients", Acta Acustica 90 (2004) 945, table 1: tension in N and mass in g/m, 650 mm.
        (string Pitch, double Newtons)[] published =
        [
            ("E4", 70.3),
            ("B3", 53.4),
            ("G3", 58.3),
            ("D3", 71.2),
            ("A2", 73.9),
            ("E2", 71.6),
        ];
        var report = new Neck(Tuning.Standard, 650).Tensions(StringSet.Find("Classical nylon")!);
        foreach (var (found, expected) in report.Strings.Zip(published))
        {
            Assert.Equal(expected.Pitch, found.Pitch.ToString());
            Assert.InRange(found.Tension.Newtons / expected.Newtons, 0.99, 1.01);
        }
    }

    [Fact]
    public void Tension_is_what_the_rule_in_inches_and_pounds_says()
    {
        // The rule on packets: T (lbf) = unit weight (lb/in) · (2 · length (in) · frequency)² / 386.09, gravity in in/s².
        Gen.Select(StringGens.Plain, Pitches, Length)
            .Sample(
                (fitted, pitch, length) =>
                {
                    var density = fitted.Material!.Density * 1.6387064e-5 / 0.45359237; // lb/in³
                    var inches = fitted.Diameter!.Value / 25.4;
                    var unitWeight = Math.PI * inches * inches / 4 * density;
                    var frequency = 440 * Math.Pow(2, (pitch.MidiNumber - 69) / 12.0);
                    var pounds = unitWeight * Math.Pow(2 * (length / 25.4) * frequency, 2) / (9.80665 / 0.0254);
                    Assert.Equal(1, fitted.TensionAt(pitch, length).PoundsForce / pounds, 1e-9);
                }
            );
    }

    [Fact]
    public void Twice_the_frequency_or_the_length_is_four_times_the_tension()
    {
        Gen.Select(StringGens.String, Gen.Double[20, 1000], Length)
            .Sample(
                (fitted, frequency, length) =>
                {
                    var tension = fitted.TensionAt(frequency, length).Newtons;
                    Assert.Equal(4, fitted.TensionAt(2 * frequency, length).Newtons / tension, 1e-12);
                    Assert.Equal(4, fitted.TensionAt(frequency, 2 * length).Newtons / tension, 1e-12);
                }
            );
    }

    [Fact]
    public void Stress_is_independent_of_the_gauge()
    {
        Gen.Select(StringGens.Plain, StringGens.Diameter, Pitches, Length)
            .Sample(
                (one, diameter, pitch, length) =>
                {
                    var other = new FittedString(diameter, one.Material!);
                    Assert.Equal(1, other.StressAt(pitch, length)!.Value / one.StressAt(pitch, length)!.Value, 1e-9);
                }
            );
    }

    [Fact]
    public void The_part_of_the_breaking_stress_changes_little_with_the_gauge_and_goes_with_the_square_of_the_frequency()
    {
        // Thin wire is drawn harder: from 0.008 to 0.024 in the strength falls by 3^0.145, 17 %.
        var thin = FittedString.Parse("0.008 in plain steel").BreakingPart(Pitch.Parse("E4"), 648)!.Value;
        var thick = FittedString.Parse("0.024 in plain steel").BreakingPart(Pitch.Parse("E4"), 648)!.Value;
        Assert.Equal(Math.Pow(3, 0.145), thick / thin, 1e-9);
        Assert.Equal(
            4 * thin,
            FittedString.Parse("0.008 in plain steel").BreakingPart(Pitch.Parse("E5"), 648)!.Value,
            1e-9
        );
        Assert.Null(FittedString.Parse("0.66 mm nylon").BreakingPart(new Tension(70)));
        Assert.Null(FittedString.Parse("0.0004 kg/m").BreakingPart(new Tension(70)));
        Assert.Null(FittedString.Parse("1.1 mm wound nylon").BreakingPart(new Tension(70)));
    }

    [Theory]
    // Worked out by hand. The core is 0.55 of the gauge up to 0.024 in, 0.36 from 0.056 in, 0.455 half-way; the strength 2211 MPa / d^0.145.
    [InlineData("0.024 in phosphor bronze wound", 0.55 * 0.6096, 120)]
    [InlineData("0.020 in nickel wound", 0.55 * 0.508, 60)]
    [InlineData("0.040 in nickel wound", 0.455 * 1.016, 100)]
    [InlineData("0.105 in nickel wound", 0.36 * 2.667, 200)]
    public void Without_a_known_core_how_near_a_wound_string_is_to_breaking_is_an_estimate(
        string text,
        double core,
        double newtons
    )
    {
        var fitted = FittedString.Parse(text);
        Assert.True(fitted.IsStressEstimated);
        var stress = newtons / (Math.PI / 4 * core * core);
        Assert.Equal(stress / (2211 / Math.Pow(core, 0.145)), fitted.BreakingPart(new Tension(newtons))!.Value, 1e-9);
        Assert.False(fitted.Over(core).IsStressEstimated);
        Assert.Equal(
            fitted.BreakingPart(new Tension(newtons))!.Value,
            fitted.Over(core).BreakingPart(new Tension(newtons))!.Value,
            1e-9
        );
        Assert.False(FittedString.Parse("0.010 in plain steel").IsStressEstimated);
    }

    [Fact]
    public void A_gauge_that_breaks_is_never_offered_without_a_word()
    {
        // C5 is 523.25 Hz: 4 · 0.648² · 523.25² · 7850 = 3.61 GPa; 0.007 in (0.1778 mm) bears 2211 / 0.1778^0.145 = 2840 MPa: 127 %.
        var choice = FittedString.GaugeFor(new(90), Pitch.Parse("C5"), 648, StringMaterial.PlainSteel);
        Assert.Equal(StringState.Breaking, choice.State);
        Assert.Equal(1.27, choice.BreakingPart!.Value, 0.005);
        Assert.Contains("breaks before it is in tune: 127 %", choice.Warning!.InWords(), StringComparison.Ordinal);
        Assert.Equal(Cautions.Strings, choice.Caution);

        var wound = FittedString.GaugeFor(new(90), Pitch.Parse("D4"), 648, StringMaterial.PhosphorBronzeWound);
        Assert.Equal(StringState.Breaking, wound.State);
        Assert.Contains(": about ", wound.Warning!.InWords(), StringComparison.Ordinal);

        var fine = FittedString.GaugeFor(new(70), Pitch.Parse("E4"), 648, StringMaterial.PlainSteel);
        Assert.Equal(StringState.Comfortable, fine.State);
        Assert.Null(fine.Warning);
        Assert.Null(fine.Caution);
    }

    [Fact]
    public void The_core_alone_carries_a_wound_string()
    {
        var wound = FittedString.Parse("0.046 in nickel wound over 0.018 in");
        var plain = FittedString.Parse("0.018 in plain steel");
        Assert.Equal(plain.StressAt(new Tension(80)), wound.StressAt(new Tension(80)));
        Assert.Equal(plain.BreakingPart(new Tension(80)), wound.BreakingPart(new Tension(80)));
    }

    [Fact]
    public void A_gauge_for_a_tension_gives_it_and_no_other_gauge_is_nearer()
    {
        Gen.Select(StringGens.Diameter, StringGens.Material, Pitches, Length)
            .Sample(
                (diameter, material, pitch, length) =>
                {
                    var wanted = new FittedString(diameter, material).TensionAt(pitch, length);
                    var choice = FittedString.GaugeFor(wanted, pitch, length, material);
                    Assert.Equal(diameter, choice.Exact.Diameter!.Value, 1e-6);
                    Assert.Equal(1, choice.Exact.TensionAt(pitch, length).Newtons / wanted.Newtons, 1e-6);
                    Assert.Equal(choice.Tension, choice.Nearest.TensionAt(pitch, length));
                    var best = Enumerable
                        .Range(8, 504)
                        .Where(static steps => steps * 0.0127 <= FittedString.MaxDiameter)
                        .Min(steps =>
                            Math.Abs(
                                (new FittedString(steps * 0.0127, material).TensionAt(pitch, length) - wanted).Newtons
                            )
                        );
                    Assert.Equal(best, Math.Abs(choice.Difference.Newtons), 1e-6 * wanted.Newtons);
                },
                iter: 30
            );
    }

    [Fact]
    public void A_lower_reference_pitch_pulls_less()
    {
        var fitted = FittedString.Parse("0.010 in plain steel");
        var ratio =
            fitted.TensionAt(Pitch.Parse("E4"), 648, 415).Newtons / fitted.TensionAt(Pitch.Parse("E4"), 648).Newtons;
        Assert.Equal(415.0 / 440 * 415 / 440, ratio, 1e-12);
    }
}
