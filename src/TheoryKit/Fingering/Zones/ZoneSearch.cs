using System.Collections.Immutable;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Fingering.Zones;

/// <summary>Finds the zones of a chord on a neck.</summary>
public static class ZoneSearch
{
    /// <summary>
    /// The zones of a chord up the neck. The frets at which some string gives the root divide the neck; between each two
    /// neighbouring ones lies a zone: the least-effort complete window that holds both and, where such a window exists, no
    /// third one, else as few others as can be. Where no complete window within the hand's reach holds both, each has its own,
    /// and more are added until every tone between the first and the last zone is in one.
    /// </summary>
    /// <remarks>
    /// Windows compare by the effort of their shape per note, without <see cref="EffortWeights.Upper"/>: a zone lies where its
    /// root frets are, and a window is no better for holding more of the frets below them. Of equals the narrower is taken,
    /// then the lower one. In a tuning where no window within reach is complete, the one that misses the fewest tones
    /// stands in.
    /// </remarks>
    public static ZoneAnswer Find(ZoneQuery query)
    {
        ArgumentNullException.ThrowIfNull(query);
        return new(query, new Search(query.Chord, query.Neck, query.Hand).Run());
    }

    /// <summary>The zones of a chord on a neck.</summary>
    /// <param name="chord">The chord.</param>
    /// <param name="neck">The neck.</param>
    /// <param name="hand">The hand; the average one if null.</param>
    public static ZoneAnswer Zones(this Chord chord, Neck neck, Hand? hand = null) =>
        Find(
            new()
            {
                Chord = chord,
                Neck = neck,
                Hand = hand ?? Hand.Average,
            }
        );

    private sealed class Search
    {
        private readonly Chord chord;
        private readonly Neck neck;
        private readonly LineSolver line;
        private readonly WindowShapes shapes;
        private readonly WindowShapes candidates; // by which windows compare
        private readonly List<(int Fret, ImmutableArray<int> Strings)> roots = [];
        private readonly List<Zone> zones = [];

        public Search(Chord chord, Neck neck, Hand hand)
        {
            (this.chord, this.neck) = (chord, neck);
            line = new(new(neck, hand));
            shapes = new(line, chord.Root, chord.Formula);
            var anywhere = hand with { Weights = hand.Weights with { Upper = 0 } };
            candidates = new(new(new(neck, anywhere)), chord.Root, chord.Formula);
            for (var fret = 0; fret <= neck.Frets; fret++)
            {
                var strings = ImmutableArray.CreateBuilder<int>();
                for (var number = neck.StringCount; number >= 1; number--)
                {
                    if (
                        fret >= neck.OpenFret(number)
                        && Diatonic.Modulo(neck.MidiNumberAt(new(number, fret)), 12) == chord.Root.PitchClass
                    )
                    {
                        strings.Add(number);
                    }
                }

                if (strings.Count > 0)
                {
                    roots.Add((fret, strings.DrainToImmutable()));
                }
            }
        }

        public List<Zone> Run()
        {
            var held = new bool[roots.Count];
            for (var index = 0; index + 1 < roots.Count; index++)
            {
                var (lower, upper) = (roots[index], roots[index + 1]);
                if (Best(lower.Fret, upper.Fret, complete: true) is { } shape)
                {
                    Add(shape, lower.Strings, upper.Strings);
                    held[index] = held[index + 1] = true;
                }
            }

            for (var index = 0; index < roots.Count; index++)
            {
                if (!held[index] && Best(roots[index].Fret, roots[index].Fret) is { } shape)
                {
                    Add(shape, roots[index].Strings, []);
                }
            }

            Fill();

            // The sort is stable: zones that share a window keep the order of their root frets.
            return [.. zones.OrderBy(static zone => zone.Window.First).ThenBy(static zone => zone.Window.Last)];
        }

        /// <summary>Adds windows until every tone between the first and the last zone is in one.</summary>
        private void Fill()
        {
            if (zones.Count == 0)
            {
                return;
            }

            var (first, last) = (
                zones.Min(static zone => zone.Window.First),
                zones.Max(static zone => zone.Window.Last)
            );
            for (var fret = first; fret <= last; fret++)
            {
                if (!zones.Exists(zone => zone.Window.Contains(fret)) && Sounds(fret) && Best(fret, fret) is { } shape)
                {
                    Add(shape, [], []);
                }
            }
        }

        private bool Sounds(int fret)
        {
            for (var number = 1; number <= neck.StringCount; number++)
            {
                if (shapes.IsTone(number, fret))
                {
                    return true;
                }
            }

            return false;
        }

        private void Add(Shape shape, ImmutableArray<int> lower, ImmutableArray<int> upper) =>
            zones.Add(
                new(
                    chord,
                    line,
                    shape.Window,
                    new(lower, upper, upper.IsEmpty ? null : Form.LetterOf(neck.Tuning, lower)),
                    shapes.In(shape.Window)!
                )
            );

        private Shape? Best(int lower, int upper) =>
            Best(lower, upper, complete: true) ?? Best(lower, upper, complete: false);

        /// <summary>The best window that holds both frets: without a third root fret, complete if asked or missing least, of least effort.</summary>
        private Shape? Best(int lower, int upper, bool complete)
        {
            Shape? best = null;
            var fewest = int.MaxValue;
            for (var first = lower; first >= neck.Capo; first--)
            {
                if (!candidates.Covers(new(first, upper)))
                {
                    break;
                }

                for (var last = upper; last <= neck.Frets && candidates.Covers(new(first, last)); last++)
                {
                    if (candidates.In(new(first, last)) is not { } shape || (complete && !shape.IsComplete))
                    {
                        continue;
                    }

                    var thirds = complete
                        ? roots.Count(root =>
                            root.Fret != lower && root.Fret != upper && shape.Window.Contains(root.Fret)
                        )
                        : shape.Missing.Count;
                    if (best is null || thirds < fewest || (thirds == fewest && IsBetter(shape, best)))
                    {
                        (best, fewest) = (shape, thirds);
                    }
                }
            }

            return best;
        }

        private static bool IsBetter(Shape shape, Shape than)
        {
            var (one, other) = (shape.EffortPerNote, than.EffortPerNote);
            return one != other ? one < other
                : shape.Window.Width != than.Window.Width ? shape.Window.Width < than.Window.Width
                : shape.Window.First < than.Window.First;
        }
    }
}
