using TheoryKit.Tunings.Strings;

namespace TheoryKit.Tests.Tunings.Strings;

public class StringMaterialTests
{
    [Fact]
    public void Every_material_is_found_by_its_name_and_read_in_a_string()
    {
        Assert.Equal(StringMaterial.Known.Length, StringMaterial.Known.Select(each => each.Name).Distinct().Count());
        foreach (var material in StringMaterial.Known)
        {
            Assert.Equal(material, StringMaterial.Find($" {material.Name.ToUpperInvariant()} "));
            Assert.Equal(material, FittedString.Parse($"0.030 in {material.Name}").Material);
        }

        Assert.Null(StringMaterial.Find("gut"));
    }

    [Fact]
    public void A_wound_string_weighs_what_its_core_and_the_wire_of_its_helix_weigh()
    {
        // The wire laid out turn by turn, its length measured along short pieces.
        Gen.Select(Gen.Double[0.2, 0.9], Gen.Double[0.5, 3], StringGens.Material.Where(material => material.IsWound))
            .Sample(
                (ratio, outer, material) =>
                {
                    if (ratio * outer < FittedString.MinDiameter)
                    {
                        return;
                    }

                    var fitted = new FittedString(outer, material).Over(ratio * outer);
                    var (core, wire) = (fitted.Core!.Value, (fitted.Diameter!.Value - fitted.Core!.Value) / 2);
                    const int pieces = 2000;
                    var radius = (core + wire) / 2;
                    var turn = 0.0;
                    for (var i = 0; i < pieces; i++)
                    {
                        var (from, to) = (2 * Math.PI * i / pieces, 2 * Math.PI * (i + 1) / pieces);
                        var x = radius * (Math.Cos(to) - Math.Cos(from));
                        var y = radius * (Math.Sin(to) - Math.Sin(from));
                        turn += Math.Sqrt((x * x) + (y * y) + Math.Pow(wire / pieces, 2));
                    }

                    // Per mm of string: core, and 1 / wire turns; mm³ and kg/m³ give 10^-9 kg per mm, 10^-6 kg per m.
                    var volume = turn / wire * Math.PI / 4 * wire * wire;
                    var weight =
                        1e-6
                        * ((Math.PI / 4 * core * core * material.Density) + (volume * material.WrapDensity!.Value));
                    Assert.Equal(1, fitted.UnitWeight / weight, 1e-5);
                },
                iter: 200
            );
    }

    [Fact]
    public void Round_wire_fills_a_quarter_of_pi_of_its_room_and_a_little_more_for_its_climb()
    {
        Gen.Double[0.01, 0.99]
            .Sample(ratio => Assert.InRange(StringMaterial.RoundWirePacking(ratio), Math.PI / 4, Math.PI / 4 * 1.05));
        Assert.InRange(StringMaterial.RoundWirePacking(0.45), Math.PI / 4, Math.PI / 4 * 1.01);
        foreach (var ratio in new[] { 0, 1, -0.5, double.NaN })
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => StringMaterial.RoundWirePacking(ratio));
        }
    }

    [Fact]
    public void The_usual_core_is_within_four_per_cent_of_the_weight_over_any_usual_core()
    {
        foreach (var material in StringMaterial.Known.Where(each => each is { IsWound: true, Density: > 7000 }))
        {
            var usual = new FittedString(1, material);
            for (var ratio = 0.35; ratio <= 0.6; ratio += 0.01)
            {
                Assert.InRange(usual.Over(ratio).UnitWeight / usual.UnitWeight, 0.96, 1.04);
            }
        }
    }

    [Theory]
    [InlineData(0.2)]
    [InlineData(0.254)]
    [InlineData(0.43)]
    [InlineData(0.6)]
    [InlineData(1.2)]
    public void The_strength_of_steel_is_near_other_published_fits(double diameter)
    {
        // Two handbooks of machine design on ASTM A228 wire: 2153.5 MPa / d^0.1625 (0.3 to 6 mm), and the older 2060 MPa / d^0.163.
        var strength = StringMaterial.PlainSteel.TensileStrength(diameter)!.Value;
        Assert.InRange(strength / (2153.5e6 / Math.Pow(diameter, 0.1625)), 0.96, 1.04);
        Assert.InRange(strength / (2060e6 / Math.Pow(diameter, 0.163)), 1, 1.08);
    }

    [Fact]
    public void Strength_is_known_of_steel_only_and_of_no_diameter_that_is_none()
    {
        Assert.Null(StringMaterial.Nylon.TensileStrength(0.7));
        Assert.Null(StringMaterial.Fluorocarbon.TensileStrength(0.7));
        Assert.Throws<ArgumentOutOfRangeException>(() => StringMaterial.PlainSteel.TensileStrength(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => StringMaterial.PlainSteel.TensileStrength(double.NaN));
    }
}
