using TheoryKit.Drawing.Sheets;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Theory;

/// <summary>How sets of pitch classes, their classes and their interval content are described.</summary>
internal static class Sets
{
    public static Description<PitchClassSet> All { get; } =
        new(
            new("pitch-class set", "pitch-class sets"),
            static set => Words.Of(set),
            [
                new("members", static set => set.Count, IsNumber: true),
                new("prime form", static set => Words.Of(set.SetClass)),
                new("interval vector", static set => Words.Of(set.IntervalVector)),
                new("complement", static set => Words.Of(set.Complement)),
                new("symmetry", static set => Symmetry(set.SetClass)),
            ]
        );

    public static Description<SetClass> Classes { get; } =
        new(
            new("set class", "set classes"),
            static each => Words.Of(each),
            [
                new("members", static each => each.Cardinality, IsNumber: true),
                new("interval vector", static each => Words.Of(each.IntervalVector)),
                new("sets in it", static each => each.SetCount, IsNumber: true),
                new("complement", static each => Words.Of(each.Complement)),
                new("same vector as", static each => each.ZPartner is { } partner ? Words.Of(partner) : null),
                new("symmetry", static each => Symmetry(each)),
            ]
        );

    public static Description<IntervalVector> Vectors { get; } =
        new(
            new("interval vector", "interval vectors"),
            static vector => Words.Of(vector),
            [
                new("m2, M7", static vector => vector.Of(1), IsNumber: true),
                new("M2, m7", static vector => vector.Of(2), IsNumber: true),
                new("m3, M6", static vector => vector.Of(3), IsNumber: true),
                new("M3, m6", static vector => vector.Of(4), IsNumber: true),
                new("P4, P5", static vector => vector.Of(5), IsNumber: true),
                new("A4, d5", static vector => vector.Of(6), IsNumber: true),
            ]
        )
        {
            InWords = static vector => English.Count(vector.Total, "interval"),
        };

    private static Words? Symmetry(SetClass each)
    {
        var steps = each.TranspositionalSymmetry;
        return (steps > 1, each.IsInversionallySymmetrical) switch
        {
            (true, true) => $"repeats every {English.Count(12 / steps, "semitone")}, mirrors itself",
            (true, false) => $"repeats every {English.Count(12 / steps, "semitone")}",
            (false, true) => "mirrors itself",
            _ => null,
        };
    }
}
