using System.Collections;
using System.Collections.Immutable;
using TheoryKit.Values;

namespace TheoryKit.Paths.Exercises;

/// <summary>A note and the stroke that it is struck with; none for a note that sounds on from the one before.</summary>
[Checked]
public sealed partial record PickStroke(PathNote Note, PickDirection? Direction)
{
    /// <summary>The note and its stroke in words.</summary>
    public override string ToString() =>
        $"{Note}: {(Direction is { } direction ? direction == PickDirection.Down ? "down" : "up" : "no stroke")}";
}

/// <summary>
/// A path seen from the picking hand: the stroke of every note. A joined note takes none; notes that start together are
/// strummed with one, down from the highest-numbered string or up from the lowest; from strums to single notes and back the rule
/// begins anew. Equal when path and rule are.
/// </summary>
[EqualBy(nameof(Path), nameof(Rule))]
public sealed partial class PickStrokes : IReadOnlyList<PickStroke>, IEquatable<PickStrokes>
{
    private readonly ImmutableArray<PickStroke> strokes;

    /// <summary>The strokes of a path.</summary>
    /// <param name="path">The path.</param>
    /// <param name="rule">The rule; alternate if null.</param>
    public PickStrokes(Path path, Picking? rule = null)
    {
        ArgumentNullException.ThrowIfNull(path);
        (Path, Rule) = (path, rule ?? Picking.Alternate);
        var found = ImmutableArray.CreateBuilder<PickStroke>(path.Notes.Count);
        (PathNote Note, PickDirection Direction)? before = null;
        var wasStrum = false;
        foreach (var together in path.Notes.GroupBy(static note => note.Start))
        {
            var struck = together.Where(static note => !note.Techniques.Any(static each => each.IsJoined)).ToList();
            if (struck.Count > 0)
            {
                // Between strums and single notes the hand begins anew.
                before = struck.Count > 1 == wasStrum ? before : null;
                wasStrum = struck.Count > 1;
                var direction = Rule.Stroke(struck[0], before);
                // Strummed up, the pick ends at the highest-numbered string.
                before = (direction == PickDirection.Up ? struck[0] : struck[^1], direction);
            }

            found.AddRange(
                together.Select(note => new PickStroke(note, struck.Contains(note) ? before?.Direction : null))
            );
        }

        strokes = found.DrainToImmutable();
    }

    /// <summary>The path.</summary>
    public Path Path { get; }

    /// <summary>The rule.</summary>
    public Picking Rule { get; }

    /// <inheritdoc/>
    public int Count => strokes.Length;

    /// <inheritdoc/>
    public PickStroke this[int index] => strokes[Check.Index(index, Count)];

    /// <inheritdoc/>
    public IEnumerator<PickStroke> GetEnumerator() => ((IEnumerable<PickStroke>)strokes).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
