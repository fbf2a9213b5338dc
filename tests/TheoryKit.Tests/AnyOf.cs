using Fractions;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Theory.Scales;

namespace TheoryKit.Tests;

/// <summary>Random values for properties.</summary>
internal static class AnyOf
{
    /// <summary>One of these.</summary>
    public static Gen<T> Any<T>(IReadOnlyList<T> values) => Gen.Int[0, values.Count - 1].Select(index => values[index]);

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

    /// <summary>Any formula but the empty one.</summary>
    public static readonly Gen<Formula> AnyFormula = Gens.Formula.Where(formula => formula.Count > 0);

    /// <summary>A chord on a common root, known or of any formula, over a common bass.</summary>
    public static readonly Gen<Chord> Chord = Gen.Select(
        Note,
        Gen.OneOf(Any(ChordQuality.Known).Select(quality => quality.Formula), AnyFormula),
        Gen.OneOf(Gen.Const(0), Gen.Int[0, 20]),
        Gen.Bool,
        (root, formula, bass, inverted) => new Chord(root, formula, inverted ? NoteName.Common[bass] : null)
    );

    /// <summary>A key on a common tonic.</summary>
    public static readonly Gen<Key> Key = Gen.Select(Note, Gen.Bool, (tonic, minor) => new Key(tonic, minor));

    /// <summary>A bar of so many beats: shared evenly, or cut anywhere on a grid.</summary>
    public static Gen<Bar> Bar(int beats, Gen<Chord> chords) =>
        Gen.Select(
            chords.Array[1, 5],
            Gen.Int[1, 4],
            Gen.Int[0, int.MaxValue],
            (chord, grid, seed) =>
            {
                var random = new Random(seed);
                var silent = random.Next(chord.Length * 4);
                var played = chord.Select((value, index) => index == silent ? null : value).ToArray();
                if (seed % 2 == 0)
                {
                    return TheoryKit.Theory.Progressions.Bar.Of(beats, played);
                }

                // Cuts on a grid of whole beats or halves, thirds, quarters of them.
                var parts = beats * grid;
                int[] cuts =
                [
                    0,
                    .. Enumerable.Range(1, parts - 1).OrderBy(_ => random.Next()).Take(played.Length - 1).Order(),
                    parts,
                ];
                return new Bar(
                    cuts.Zip(cuts.Skip(1), (from, to) => new Fraction(to - from, grid))
                        .Zip(played, (length, value) => (value, length))
                );
            }
        );

    /// <summary>Changes in common times and keys, some bars repeated.</summary>
    public static readonly Gen<Changes> Changes =
        from time in Any<TimeSignature>([default, new(3, 4), new(6, 8), new(5, 4), new(12, 8), new(1, 2)])
        from key in Gen.Nullable(Key)
        from bars in Bar(time.Beats, Chord).Array[1, 6]
        from again in Gen.Int[0, 6]
        select new Changes(bars.SelectMany((bar, index) => index == again ? [bar, bar] : new[] { bar }), time, key);
}
