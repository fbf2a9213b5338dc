using System.Collections.Immutable;
using System.Globalization;
using TheoryKit.Values;

namespace TheoryKit.Tunings.Strings;

public sealed partial class StringSet
{
    /// <summary>Usual sets. A further one is one line. From memory: the gauges under which the trade sells them.</summary>
    public static ImmutableArray<KnownStringSet> Known { get; } =
    [
        // In thousandths of an inch from the highest number down to string 1, w for wound.
        Of("Extra light electric 9-42", "electric guitar", StringMaterial.NickelWound, "42w 32w 24w 16 11 9"),
        Of("Light electric 10-46", "electric guitar", StringMaterial.NickelWound, "46w 36w 26w 17 13 10"),
        Of("Light top heavy bottom 10-52", "electric guitar", StringMaterial.NickelWound, "52w 42w 30w 17 13 10"),
        Of("Medium electric 11-49", "electric guitar", StringMaterial.NickelWound, "49w 38w 28w 18 14 11"),
        Of("Heavy electric 12-52", "electric guitar", StringMaterial.NickelWound, "52w 42w 32w 24w 16 12"),
        Of("Baritone electric 14-68", "baritone guitar", StringMaterial.NickelWound, "68w 56w 44w 26w 18 14"),
        Of(
            "Seven-string electric 10-59",
            "seven-string guitar",
            StringMaterial.NickelWound,
            "59w 46w 36w 26w 17 13 10"
        ),
        Of(
            "Eight-string electric 10-74",
            "eight-string guitar",
            StringMaterial.NickelWound,
            "74w 59w 46w 36w 26w 17 13 10"
        ),
        Of(
            "Extra light acoustic 10-47",
            "steel-string guitar",
            StringMaterial.PhosphorBronzeWound,
            "47w 39w 30w 23w 14 10"
        ),
        Of(
            "Custom light acoustic 11-52",
            "steel-string guitar",
            StringMaterial.PhosphorBronzeWound,
            "52w 42w 32w 22w 15 11"
        ),
        Of("Light acoustic 12-53", "steel-string guitar", StringMaterial.PhosphorBronzeWound, "53w 42w 32w 24w 16 12"),
        Of("Medium acoustic 13-56", "steel-string guitar", StringMaterial.PhosphorBronzeWound, "56w 45w 35w 26w 17 13"),
        // From memory: weighed by J. Woodhouse, "Plucked guitar transients: comparison of measurements and synthesis", Acta Acustica united
        // with Acustica 90 (2004) 945, the strings of a classical guitar. Looked up: volume and year, by its companion paper on page 928.
        new("Classical nylon", Parse("6.24 g/m, 3.61 g/m, 1.95 g/m, 0.90 g/m, 0.52 g/m, 0.38 g/m"), "classical guitar"),
        Of("Bass 45-105", "bass", StringMaterial.NickelWound, "105w 85w 65w 45w"),
        Of("Five-string bass 45-130", "five-string bass", StringMaterial.NickelWound, "130w 105w 85w 65w 45w"),
        Of("Light banjo 9-20", "five-string banjo", StringMaterial.NickelWound, "9 20w 13 10 9"),
        Of("Light mandolin 10-34", "mandolin", StringMaterial.PhosphorBronzeWound, "34w 24w 14 10"),
        new(
            "Fluorocarbon ukulele",
            Parse("0.021 in fluorocarbon, 0.029 in fluorocarbon, 0.026 in fluorocarbon, 0.021 in fluorocarbon"),
            "ukulele"
        ),
    ];

    /// <summary>The set that goes by a name, whatever the case; null if there is none.</summary>
    public static StringSet? Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return Known.FirstOrDefault(each => each.Name.Equals(name.Trim(), StringComparison.OrdinalIgnoreCase))?.Set;
    }

    /// <summary>The set that goes by a name, whatever the case.</summary>
    /// <exception cref="ArgumentException">There is none; the message says which names come nearest.</exception>
    public static StringSet Named(string name) =>
        Find(name)
        ?? throw NearNames.NoSuch(name, "set of strings", Known.Select(static each => each.Name), nameof(name));

    /// <summary>The name by which players know this set; null if the catalogue has none.</summary>
    public string? Name => Known.FirstOrDefault(each => each.Set == this)?.Name;

    private static KnownStringSet Of(string name, string instrument, StringMaterial wound, string gauges) =>
        new(
            name,
            new(
                gauges
                    .Split(' ')
                    .Select(gauge =>
                        FittedString.Inches(
                            int.Parse(gauge.TrimEnd('w'), CultureInfo.InvariantCulture) / 1000.0,
                            gauge.EndsWith('w') ? wound : StringMaterial.PlainSteel
                        )
                    )
            ),
            instrument
        );
}
