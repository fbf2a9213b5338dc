using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Strings;
using TheoryKit.Tunings.Words;

namespace TheoryKit.Tests.Tunings.Strings;

public class TensionReportTests
{
    private static readonly StringSet Light = StringSet.Find("Light electric 10-46")!;

    [Fact]
    public void A_report_says_of_each_string_what_the_string_says_itself()
    {
        StringGens.Fitted.Sample(
            (neck, set, reference) =>
            {
                var report = neck.Tensions(set, reference);
                var total = 0.0;
                var before = 0.0;
                for (var number = 1; number <= neck.StringCount; number++)
                {
                    var (found, tuned) = (report.Strings[number - 1], neck.Tuning[number]);
                    // What is left of the string where a short one begins, counted fret by fret; a capo changes nothing.
                    var length = neck.ScaleLength;
                    for (var fret = 0; fret < tuned.Start; fret++)
                    {
                        length /= Math.Pow(2, 1.0 / 12);
                    }

                    var newtons = set[number].UnitWeight * Math.Pow(2 * length / 1000 * tuned.Open.Frequency(), 2);
                    var then =
                        set[number].UnitWeight * Math.Pow(2 * length / 1000 * reference[number].Open.Frequency(), 2);
                    Assert.Equal(newtons, found.Tension.Newtons, 1e-9 * newtons);
                    Assert.Equal(newtons - then, found.Change!.Value.Newtons, 1e-9 * newtons);
                    Assert.Equal(tuned.Open.MidiNumber - reference[number].Open.MidiNumber, found.Retuned);
                    // A semitone is 12 % of tension, whatever the string.
                    Assert.Equal(Math.Pow(2, found.Retuned!.Value / 6.0), newtons / then, 1e-9);
                    Assert.Equal(report.Limits.StateOf(found.Tension, found.BreakingPart), found.State);
                    total += newtons;
                    before += then;
                }

                Assert.Equal(total, report.Total.Newtons, 1e-9 * total);
                Assert.Equal(total - before, report.TotalChange!.Value.Newtons, 1e-8 * total);
            }
        );
    }

    [Fact]
    public void No_string_that_is_amiss_goes_without_warning_advice_and_caution()
    {
        StringGens.Fitted.Sample(
            (neck, set, reference) =>
            {
                var report = neck.Tensions(set, reference);
                foreach (var each in report.Strings)
                {
                    var warned = report.Warnings.Count(warning =>
                        warning is TensionWarning.NotComfortable { String: var amiss } && amiss == each
                    );
                    Assert.Equal(each.State == StringState.Comfortable ? 0 : 1, warned);
                    Assert.Equal(each.State == StringState.Comfortable, each.Advice is null);
                }

                var isCautioned = report.Warnings.Count > 0 || report.Strings.Any(static each => each.Retuned > 0);
                Assert.Equal(isCautioned ? Cautions.Strings : null, report.Caution);
                Assert.Equal(isCautioned, report.ToString().Contains(Cautions.Strings, StringComparison.Ordinal));
                Assert.Equal(isCautioned, report.InWords().Contains(Cautions.Strings, StringComparison.Ordinal));
                Assert.All(
                    report.Warnings,
                    warning => Assert.Contains(warning.InWords(), report.InWords(), StringComparison.Ordinal)
                );
            }
        );
    }

    [Fact]
    public void A_suggested_gauge_is_comfortable()
    {
        StringGens.Fitted.Sample(
            (neck, set, reference) =>
            {
                foreach (var each in neck.Tensions(set, reference).Strings)
                {
                    if (each.Suggested is { } choice)
                    {
                        Assert.Contains(each.State, new[] { StringState.Slack, StringState.Heavy });
                        if (each.String.Material is { IsWound: true } wound && choice.Nearest.Material == wound)
                        {
                            Assert.True(wound == StringMaterial.WoundNylon || choice.Nearest.Diameter >= 0.4571);
                        }
                        else
                        {
                            Assert.True(
                                choice.Nearest.Material == each.String.Material
                                    || (
                                        each.String.Material is { IsWound: true }
                                        && choice.Nearest.Material == StringMaterial.PlainSteel
                                    )
                            );
                        }

                        Assert.False(choice.Nearest.BreakingPart(each.Pitch, each.Length) > 0.75);
                        Assert.Equal(StringState.Comfortable, choice.State);
                        Assert.InRange(choice.Tension.Newtons, 0.9 * 40, 1.1 * 170);
                        Assert.Equal(
                            each.State == StringState.Slack
                                ? new StringAdvice.FitHeavier(choice.Nearest, choice.Tension)
                                : new StringAdvice.FitLighter(choice.Nearest, choice.Tension),
                            each.Advice
                        );
                    }
                }
            }
        );
    }

    [Fact]
    public void The_highest_safe_pitch_is_safe_and_the_next_is_not()
    {
        Gen.Select(Gen.Int[40, 90], Gen.Double[500, 700], Gen.Int[16, 48])
            .Sample(
                (number, length, gauge) =>
                {
                    var pitch = Pitch.FromMidi(number);
                    var fitted = new FittedString(gauge * FittedString.GaugeStep, StringMaterial.PlainSteel);
                    var set = new StringSet(fitted, fitted, fitted);
                    var found = new Neck(new Tuning(pitch, pitch, pitch), length).Tensions(set).Strings[0];
                    var safe = found.HighestSafePitch!.Value;
                    Assert.True(fitted.BreakingPart(safe, length) <= 0.75 + 1e-9);
                    Assert.True(fitted.BreakingPart(Pitch.FromMidi(safe.MidiNumber + 1), length) > 0.75);
                }
            );
    }

    [Fact]
    public void A_string_beyond_breaking_is_told_never_silently()
    {
        var report = Neck.Guitar.With(Tuning.Parse("E2 A2 D3 G3 B3 E5")).Tensions(Light);
        Assert.Equal(StringState.Breaking, report.Strings[0].State);
        // Twice the frequency, four times the stress: 1.43 GPa of 2.70, 53 %, becomes 212 %.
        Assert.Equal(2.12, report.Strings[0].BreakingPart!.Value, 0.01);
        var warning = Assert
            .Single(report.Warnings, each => each == new TensionWarning.NotComfortable(report.Strings[0]))
            .InWords();
        Assert.Contains("breaks before it is in tune", warning, StringComparison.Ordinal);
        Assert.Contains("212 % of the breaking stress", warning, StringComparison.Ordinal);
        foreach (var words in new[] { "eye protection", "Tune lower rather than force", "luthier" })
        {
            Assert.Contains(words, report.Caution!, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Strings_that_keep_their_tension_but_would_nearly_break_are_refused()
    {
        // A4 is 440 Hz: 4 · 0.648² · 440² · 7850 = 2.55 GPa; 0.0075 in (0.1905 mm) bears 2211 / 0.1905^0.145 = 2812 MPa: 91 %,
        // 72 % two semitones lower.
        var report = Neck.Guitar.With(Tuning.Parse("E2 A2 D3 G3 B3 A4")).Tensions(Light, Tuning.Standard);
        var error = Assert.Throws<InvalidOperationException>(report.Refitted);
        Assert.Contains("0.0075 in plain steel at A4 would be at 91 %", error.Message, StringComparison.Ordinal);
        Assert.Contains("tune it to G4 or lower", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wound_string_beyond_breaking_is_told_too()
    {
        // 0.024 in phosphor bronze weighs 2.095 g/m; at C4 on 648 mm it pulls 4 · 0.648² · 261.63² · 0.002095 = 241 N, which a core of
        // 0.55 · 0.6096 mm bears with 2.73 GPa of 2.59: 105 %.
        var set = StringSet.Find("Light acoustic 12-53")!;
        var high = Neck.Guitar.With(Tuning.Parse("E2 A2 D3 C4 B3 E4")).Tensions(set);
        Assert.Equal(StringState.Breaking, high.Strings[2].State);
        Assert.Contains(
            high.Warnings.Select(static each => each.InWords()),
            static each => each.Contains("240.9 N, about 105 % of the breaking stress", StringComparison.Ordinal)
        );
        Assert.Equal(new TensionNote.Estimated(), Assert.Single(high.Notes));

        // Its own tuning: 60 %.
        var usual = Neck.Guitar.Tensions(set).Strings[2];
        Assert.Equal(StringState.Comfortable, usual.State);
        Assert.Equal("about 59 %", usual.BreakingPartInWords());
    }

    [Fact]
    public void What_is_not_known_of_breaking_is_told()
    {
        var nylon = new Neck(Tuning.Standard, 650).Tensions(StringSet.Find("Classical nylon")!);
        Assert.Equal(new TensionNote.NotKnown([6, 5, 4, 3, 2, 1], 6), Assert.Single(nylon.Notes));
        Assert.All(nylon.Strings, static each => Assert.Equal("not known", each.BreakingPartInWords()));
        var mixed = Neck.Guitar.Tensions(Light.With(1, FittedString.Parse("0.0004 kg/m")));
        Assert.Equal(new TensionNote.NotKnown([1], 6), mixed.Notes[^1]);
        Assert.Empty(
            new Neck(Tuning.Parse("G3 B3 E4"))
                .Tensions(StringSet.Parse("0.017 in plain steel, 0.013 in plain steel, 0.010 in plain steel"))
                .Notes
        );
    }

    [Fact]
    public void Any_string_that_is_tuned_up_goes_with_the_caution()
    {
        var report = Neck.Guitar.With(Tuning.Parse("E2 A2 D3 G3 B3 F4")).Tensions(Light, Tuning.Standard);
        Assert.Empty(report.Warnings);
        Assert.Equal(Cautions.Strings, report.Caution);
        Assert.Null(Neck.Guitar.With(Tuning.Find("DADGAD")!).Tensions(Light, Tuning.Standard).Caution);
    }

    [Theory]
    // The top string at E4 is at 53.12 % of its breaking stress.
    [InlineData(0.75, "53 %")]
    [InlineData(0.53, "53.1 %")]
    [InlineData(0.531, "53.12 %")]
    public void A_part_has_the_decimals_it_takes_to_stand_on_its_side_of_the_limit(double most, string expected)
    {
        var report = Neck.Guitar.Tensions(Light, limits: new(new(40), new(170), most));
        Assert.Equal(expected, report.Strings[0].BreakingPartInWords());
        Assert.Equal(most < 0.7, report.Strings[0].State == StringState.NearBreaking);
    }

    [Fact]
    public void A_load_that_grows_by_a_tenth_is_told()
    {
        var up = Neck.Guitar.With(Tuning.Parse("F#2 B2 E3 A3 C#4 F#4")).Tensions(Light, Tuning.Standard);
        // A whole tone is 2^(4/12) = 1.26 times the tension.
        var more = Assert.IsType<TensionWarning.MuchMoreInAll>(up.Warnings[^1]);
        Assert.Equal(Math.Pow(2, 4 / 12.0) - 1, more.Part, 1e-6);
        Assert.Equal(up.TotalChange, more.More);
        Assert.NotNull(up.Caution);
        var down = Neck.Guitar.With(Tuning.Parse("D2 A2 D3 G3 A3 D4")).Tensions(Light, Tuning.Standard);
        Assert.Empty(down.Warnings);
    }

    [Fact]
    public void A_set_that_keeps_tensions_has_the_nearest_gauges()
    {
        StringGens.Fitted.Sample(
            (neck, set, reference) =>
            {
                var report = neck.Tensions(set, reference);
                var isSafe = report.Strings.All(each =>
                    each.Retuned == 0
                    || !(
                        FittedString
                            .GaugeFor(each.Tension - each.Change!.Value, each.Pitch, each.Length, each.String.Material!)
                            .BreakingPart > 0.75
                    )
                );
                if (!isSafe)
                {
                    Assert.Contains(
                        "can't keep its tension safely",
                        Assert.Throws<InvalidOperationException>(report.Refitted).Message,
                        StringComparison.Ordinal
                    );
                    return;
                }

                var kept = report.Refitted();
                for (var number = 1; number <= set.Count; number++)
                {
                    var each = report.Strings[number - 1];
                    if (each.Retuned == 0)
                    {
                        Assert.Equal(set[number], kept[number]);
                        continue;
                    }

                    var wanted = (each.Tension - each.Change!.Value).Newtons;
                    double Miss(FittedString one) => Math.Abs(one.TensionAt(each.Pitch, each.Length).Newtons - wanted);
                    var diameter = kept[number].Diameter!.Value;
                    Assert.Equal(set[number].Material, kept[number].Material);
                    Assert.True(Miss(kept[number]) <= Miss(new(diameter + 0.0127, kept[number].Material!)) + 1e-9);
                    Assert.True(Miss(kept[number]) <= Miss(new(diameter - 0.0127, kept[number].Material!)) + 1e-9);
                }
            }
        );
    }

    [Fact]
    public void A_set_by_weight_or_over_known_cores_keeps_its_tensions_too()
    {
        var set = StringSet.Parse("6.24 g/m, 3.61 g/m, 0.026 in nickel wound over 0.013 in, 0.9 g/m");
        var report = new Neck(Tuning.Parse("D2 A2 C3 G3")).Tensions(set, Tuning.Parse("E2 A2 D3 G3"));
        var kept = report.Refitted();
        // A tone lower for the same tension takes 1.26 times the weight.
        Assert.Equal(Math.Pow(2, 4 / 12.0), kept[4].UnitWeight / set[4].UnitWeight, 1e-9);
        Assert.Equal(Math.Pow(2, 4 / 12.0), kept[2].UnitWeight / set[2].UnitWeight, 0.03);
        Assert.Equal(0.5, kept[2].Core!.Value / kept[2].Diameter!.Value, 0.001);
        Assert.Equal(set[1], kept[1]);
        Assert.Throws<InvalidOperationException>(() => Neck.Guitar.Tensions(Light).Refitted());
    }

    [Fact]
    public void A_set_or_a_reference_of_another_size_is_refused()
    {
        var set = StringSet.Find("Seven-string electric 10-59")!;
        var error = Assert.Throws<ArgumentException>(() => Neck.Guitar.Tensions(set));
        Assert.Contains("The set has 7 strings, the neck 6", error.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Neck.Guitar.Tensions(Light, Tuning.Find("Banjo")));
        Assert.Throws<ArgumentNullException>(() => Neck.Guitar.Tensions(null!));
        Assert.Throws<ArgumentOutOfRangeException>(() => Neck.Guitar.Tensions(Light, a4: 0));
    }

    [Fact]
    public void Reports_of_the_same_are_equal()
    {
        var (one, other) = (Neck.Guitar.Tensions(Light, Tuning.Standard), Neck.Guitar.Tensions(Light, Tuning.Standard));
        Assert.Equal(one, other);
        Assert.Equal(one.GetHashCode(), other.GetHashCode());
        Assert.NotEqual(one, Neck.Guitar.Tensions(Light, Tuning.Standard, a4: 432));
    }

    [Fact]
    public void Pitches_in_warnings_are_printed_on_request()
    {
        var report = Neck.Guitar.With(Tuning.Parse("E2 A2 D3 G3 B3 Bb4")).Tensions(Light);
        Assert.Contains("(Bb4, ", report.Warnings[0].InWords(), StringComparison.Ordinal);
        Assert.Contains("(B♭4, ", report.Warnings[0].InWords("P"), StringComparison.Ordinal);
        Assert.Contains("(B4, ", report.Warnings[0].InWords("P", NoteNaming.German), StringComparison.Ordinal);
    }
}
