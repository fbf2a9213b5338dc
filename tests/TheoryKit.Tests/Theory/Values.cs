using TheoryKit.Theory;

namespace TheoryKit.Tests.Theory;

/// <summary>Random values for properties.</summary>
internal static class Values
{
    /// <summary>One of these.</summary>
    public static Gen<T> Any<T>(IReadOnlyList<T> values) => Gen.Int[0, values.Count - 1].Select(index => values[index]);

    /// <summary>Any note name.</summary>
    public static readonly Gen<NoteName> AnyNote = Gen.Select(
        Gen.Int[0, 6],
        Gen.Int[-NoteName.MaxAlteration, NoteName.MaxAlteration],
        (letter, alteration) => new NoteName((Letter)letter, alteration)
    );

    /// <summary>One of the 21 names with at most one accidental.</summary>
    public static readonly Gen<NoteName> Note = Any(NoteName.Common);

    /// <summary>A formula that is a scale, named or not.</summary>
    public static readonly Gen<Formula> ScaleFormula = Gen.Select(
        Gen.Int[0, (1 << 11) - 1],
        Gen.Int[0, int.MaxValue],
        (mask, spelling) =>
        {
            var formula = Formula.Empty.With(Degree.Root);
            var (last, random) = (Degree.Root, new Random(spelling));
            for (var semitones = 1; semitones < 12; semitones++)
            {
                Degree[] spelled =
                [
                    .. from number in Enumerable.Range(1, 8)
                    from alteration in Enumerable.Range(-2, 5)
                    let degree = new Degree(number, alteration)
                    where degree.Semitones == semitones && degree > last
                    select degree,
                ];
                if ((mask & (1 << (semitones - 1))) != 0 && spelled.Length > 0)
                {
                    last = spelled[random.Next(spelled.Length)];
                    formula = formula.With(last);
                }
            }

            return formula;
        }
    );

    /// <summary>A scale on a common tonic.</summary>
    public static readonly Gen<Scale> Scale = Gen.Select(
        Note,
        Gen.OneOf(ScaleFormula, Any(ScaleType.Known).Select(type => type.Formula)),
        (tonic, formula) => new Scale(tonic, formula)
    );
}
