using System.Collections.Immutable;
using Fractions;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tab;
using TheoryKit.Licks;
using TheoryKit.Licks.Moves;
using TheoryKit.Paths;
using TheoryKit.Values;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Drawing.Licks;

/// <summary>
/// Several licks one below the other, the same moment at the same place in all of them, so that what each does there can be compared.
/// Equal when the licks, in order, and what is shown agree.
/// </summary>
/// <remarks>
/// A note of a later lick differs where the first one has no note that starts with it and does the same over its chord, or, where either
/// has no chord, none of the same pitch class; a dead note does the same as another one. Licks may be of different lengths, and on different necks.
/// </remarks>
public sealed record LickComparison
{
    private readonly double width = 190;
    private readonly int columns = 100;
    private readonly ImmutableHashSet<(Fraction Start, int String)>? changed; // of a move, in the lick after it

    /// <summary>A comparison.</summary>
    /// <param name="licks">The licks; the first is the one that the others are compared with.</param>
    /// <exception cref="ArgumentException">There is none, or they are not in one time signature.</exception>
    public LickComparison(IEnumerable<Lick> licks)
    {
        Licks = [.. Check.Items(licks)];
        if (Licks.IsEmpty)
        {
            throw new ArgumentException("There is no lick to compare.", nameof(licks));
        }

        var time = Licks[0].Path.Time;
        if (Licks.FirstOrDefault(lick => lick.Path.Time != time) is { } other)
        {
            throw new ArgumentException(
                $"\"{other.Name}\" is in {other.Path.Time}, \"{Licks[0].Name}\" in {time}; bars can be compared only in one time signature.",
                nameof(licks)
            );
        }
    }

    /// <summary>A lick before and after a move, that may have shifted its notes in time: a note differs where it does not do what it did.</summary>
    /// <exception cref="ArgumentException">They are not in one time signature.</exception>
    internal LickComparison(MovedLick moved)
        : this([moved.From with { Name = "Before" }, moved.Lick with { Name = "Now" }]) =>
        changed = [
            .. moved
                .Tones.Where(static tone => !tone.DoesTheSame)
                .Select(static tone => (tone.After.Start, tone.After.Position.String)),
        ];

    /// <summary>The licks.</summary>
    public ImmutableArray<Lick> Licks { get; }

    /// <summary>How wide the picture may get, in mm: lines are broken before bars that would go beyond. From <see cref="TabDrawing.MinWidth"/> to <see cref="TabDrawing.MaxWidth"/>; 190 unless told.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not.</exception>
    public double Width
    {
        get => width;
        init => width = TabDrawing.CheckedWidth(value, nameof(Width));
    }

    /// <summary>How many characters wide the plain text may get, but for a bar that is wider. From <see cref="TabDrawing.MinColumns"/> to <see cref="TabDrawing.MaxColumns"/>; 100 unless told.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not.</exception>
    public int Columns
    {
        get => columns;
        init => columns = Check.Range(value, TabDrawing.MinColumns, TabDrawing.MaxColumns, nameof(Columns));
    }

    /// <summary>What is written below the notes at first.</summary>
    public Labels Labels { get; init; }

    /// <summary>Whether the rhythm is shown.</summary>
    public bool ShowsRhythm { get; init; } = true;

    /// <summary>How notes are named; null for English.</summary>
    public IFormatProvider? Naming { get; init; }

    /// <summary>All that the picture says, in words.</summary>
    public string Description => ComparisonPicture.Describe(this);

    /// <summary>Whether a note of a lick differs from what the first one does at its start.</summary>
    /// <param name="lick">Which lick, from 0.</param>
    /// <param name="note">One of its notes.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such lick.</exception>
    public bool Differs(int lick, PathNote note)
    {
        ArgumentNullException.ThrowIfNull(note);
        ArgumentOutOfRangeException.ThrowIfNegative(lick);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(lick, Licks.Length);
        if (changed is not null)
        {
            return lick > 0 && changed.Contains((note.Start, note.Position.String));
        }

        var (own, first) = (Licks[lick].Path, Licks[0].Path);
        return lick > 0 && !first.Notes.Any(other => other.Start == note.Start && DoesTheSame(own, note, first, other));
    }

    /// <summary>The moments at which the notes of some lick differ from the first, or it has more, in order; in beats.</summary>
    public IReadOnlyList<Fraction> Differences
    {
        get
        {
            if (changed is not null)
            {
                return [.. changed.Select(static each => each.Start).Distinct().Order()];
            }

            var differing = new SortedSet<Fraction>();
            for (var index = 1; index < Licks.Length; index++)
            {
                var (own, first) = (Licks[index].Path, Licks[0].Path);
                differing.UnionWith(own.Notes.Where(note => Differs(index, note)).Select(static note => note.Start));
                differing.UnionWith(
                    first
                        .Notes.Where(note =>
                            !own.Notes.Any(other => other.Start == note.Start && DoesTheSame(own, other, first, note))
                        )
                        .Select(static note => note.Start)
                );
            }

            return [.. differing];
        }
    }

    /// <inheritdoc/>
    public bool Equals(LickComparison? other) =>
        other is not null
        && Licks.AsSpan().SequenceEqual(other.Licks.AsSpan())
        && (Width, Columns, Labels, ShowsRhythm) == (other.Width, other.Columns, other.Labels, other.ShowsRhythm)
        && Equals(Naming, other.Naming)
        && (changed is null ? other.changed is null : other.changed is not null && changed.SetEquals(other.changed));

    /// <inheritdoc/>
    public override int GetHashCode() =>
        HashCode.Combine(Licks.Length, Licks[0], Licks[^1], Width, Columns, Labels, ShowsRhythm);

    /// <summary>The comparison in plain text, for a terminal.</summary>
    public override string ToString() => SheetText.Write(ComparedLicks.Of(this), Naming);

    /// <summary>The picture as SVG, a file of its own or part of a page.</summary>
    /// <param name="context">The page it goes into; null for a file of its own.</param>
    public string Svg(RenderContext? context = null) => ComparisonPicture.Write(this, context ?? new RenderContext());

    /// <summary>What it means that a note differs.</summary>
    internal string Difference => changed is null ? "not what 1 does there" : "not what it did before";

    /// <summary>Where some note differs, in a sentence, the moments as they are worded.</summary>
    internal string Differing(IReadOnlyList<string> moments) =>
        changed is null
            ? moments.Count == 0
                ? "They do the same at every moment."
                : $"They differ at {English.List(moments)}."
            : moments.Count == 0
                ? "Every note does what it did before."
                : $"Now not what it did before: {English.List(moments)}.";

    /// <summary>The tabs, each as it is drawn.</summary>
    internal IReadOnlyList<TabDrawing> Tabs =>
        [
            .. Licks.Select(lick => new TabDrawing(lick.Path)
            {
                Width = Width,
                Columns = Columns,
                Labels = Shown,
                ShowsRhythm = ShowsRhythm,
                Naming = Naming,
            }),
        ];

    /// <summary>The kinds of label that some note has, and none.</summary>
    internal IReadOnlyList<Labels> Offered =>
        [.. Licks.SelectMany(static lick => new TabDrawing(lick.Path).Offered).Distinct().Order()];

    /// <summary>The kind shown at first that some note has.</summary>
    internal Labels Shown => Offered.Contains(Labels) ? Labels : Offered.FirstOrDefault(Labels.None);

    private static bool DoesTheSame(Path own, PathNote note, Path first, PathNote other) =>
        note.IsDead || other.IsDead
            ? note.IsDead && other.IsDead
            : note.Bend % 100 == other.Bend % 100
                && (
                    own.FunctionOf(note) is { } function && first.FunctionOf(other) is { } otherFunction
                        ? function == otherFunction
                        : own.SoundingPitch(note).PitchClass == first.SoundingPitch(other).PitchClass
                );
}
