using System.Collections.Immutable;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Necks;

/// <summary>
/// A picture of a neck with marks on it. Equal when neck, marks and bands (in order), frets shown, labels, hand, key, words
/// and naming agree.
/// </summary>
/// <remarks>
/// Made by <c>Of</c> and changed by the methods that begin with <c>With</c>, each of which gives a new drawing. String 1
/// lies at the top; the nut is at the left, for left-handed players at the right. Marks outside the frets shown are kept but
/// neither drawn nor described.
/// </remarks>
public sealed partial class NeckDrawing : IEquatable<NeckDrawing>
{
    private const int FewestFitted = 4;

    private readonly string? title;
    private readonly string? description;
    private readonly IFormattable? subject; // whose name is the title unless one is given

    private NeckDrawing(Neck neck, ImmutableArray<Mark> marks, IFormattable? subject = null, string name = "marks")
    {
        ArgumentNullException.ThrowIfNull(neck);
        foreach (var mark in marks)
        {
            if (!neck.Has(mark.Position))
            {
                throw new ArgumentException($"A mark at {mark.Position} has no place on this neck: {neck}.", name);
            }
        }

        Neck = neck;
        this.subject = subject;
        Marks = marks;
        FirstFret = 0;
        LastFret = neck.Frets;
    }

    private NeckDrawing(NeckDrawing other)
    {
        (Neck, Marks, FirstFret, LastFret) = (other.Neck, other.Marks, other.FirstFret, other.LastFret);
        (Labels, IsLeftHanded, Naming, HasKey) = (other.Labels, other.IsLeftHanded, other.Naming, other.HasKey);
        (title, description, subject) = (other.title, other.description, other.subject);
        (Bands, Trail, Gestures, Remark) = (other.Bands, other.Trail, other.Gestures, other.Remark);
    }

    /// <summary>The neck.</summary>
    public Neck Neck { get; }

    /// <summary>The marks.</summary>
    public ImmutableArray<Mark> Marks { get; private init; }

    /// <summary>Stretches of frets told below the neck, those that overlap on lanes of their own.</summary>
    public ImmutableArray<NeckBand> Bands { get; private init; } = [];

    /// <summary>The order in which positions are played, drawn as a line that tapers towards the next; empty for none.</summary>
    public ImmutableArray<Position> Trail { get; private init; } = [];

    /// <summary>Bends, slides and harmonics.</summary>
    internal ImmutableArray<NeckGesture> Gestures { get; private init; } = [];

    /// <summary>What the description says at its end besides; empty for nothing.</summary>
    internal string Remark { get; private init; } = "";

    /// <summary>The first fret shown; 0 shows the open strings too.</summary>
    public int FirstFret { get; private init; }

    /// <summary>The last fret shown.</summary>
    public int LastFret { get; private init; }

    /// <summary>The labels shown at first.</summary>
    public Labels Labels { get; private init; }

    /// <summary>Whether it is mirrored for a left-handed player: nut at the right.</summary>
    public bool IsLeftHanded { get; private init; }

    /// <summary>Whether a line below tells what the marks mean.</summary>
    public bool HasKey { get; private init; }

    /// <summary>How notes are named; null for English.</summary>
    public IFormatProvider? Naming { get; private init; }

    /// <summary>What it is, in a few words.</summary>
    public string Title =>
        title ?? subject?.ToString("P", Naming) ?? $"{Printed.Capital(Printed.Number(Neck.StringCount))} strings";

    /// <summary>All that the picture says, in words.</summary>
    public string Description => description ?? Describe();

    /// <summary>A neck with no mark.</summary>
    public static NeckDrawing Of(Neck neck) => new(neck, []);

    /// <summary>A neck with the given marks.</summary>
    /// <exception cref="ArgumentException">A mark has no place on the neck.</exception>
    public static NeckDrawing Of(Neck neck, IEnumerable<Mark> marks)
    {
        return new(neck, [.. Check.Items(marks)]);
    }

    /// <summary>A neck with places marked; the role of each follows from its function alone.</summary>
    /// <exception cref="ArgumentException">A place is not on the neck.</exception>
    public static NeckDrawing Of(Neck neck, IEnumerable<Place> places)
    {
        ArgumentNullException.ThrowIfNull(places);
        return new(neck, [.. places.Select(static place => new Mark(place))], name: nameof(places));
    }

    /// <summary>A neck with every tone of a formula over a root, roles as they are within the formula.</summary>
    public static NeckDrawing Of(Neck neck, NoteName root, Formula formula) => Of(neck, root, formula, null);

    /// <summary>A neck with every tone of a chord; its title is the chord's symbol.</summary>
    public static NeckDrawing Of(Neck neck, Chord chord)
    {
        ArgumentNullException.ThrowIfNull(chord);
        return Of(neck, chord.Root, chord.Formula, chord);
    }

    /// <summary>A neck with every tone of a scale; its title is the scale's name.</summary>
    public static NeckDrawing Of(Neck neck, Scale scale)
    {
        ArgumentNullException.ThrowIfNull(scale);
        return Of(neck, scale.Tonic, scale.Formula, scale);
    }

    /// <summary>With other marks.</summary>
    /// <exception cref="ArgumentException">A mark has no place on the neck.</exception>
    public NeckDrawing WithMarks(IEnumerable<Mark> marks)
    {
        var placed = Of(Neck, marks).Marks;
        return new(this) { Marks = placed };
    }

    /// <summary>With each mark replaced by what <paramref name="change"/> makes of it; left out where that is null.</summary>
    /// <exception cref="ArgumentException">A mark has no place on the neck.</exception>
    public NeckDrawing WithEach(Func<Mark, Mark?> change)
    {
        ArgumentNullException.ThrowIfNull(change);
        return WithMarks(Marks.Select(change).OfType<Mark>());
    }

    /// <summary>With other bands below the neck.</summary>
    public NeckDrawing WithBands(IEnumerable<NeckBand> bands)
    {
        ArgumentNullException.ThrowIfNull(bands);
        return new(this) { Bands = [.. bands] };
    }

    /// <summary>With the order in which positions are played; positions outside the frets shown are left out of the line.</summary>
    /// <exception cref="ArgumentException">A position is not on the neck.</exception>
    public NeckDrawing WithTrail(IEnumerable<Position> positions)
    {
        ArgumentNullException.ThrowIfNull(positions);
        ImmutableArray<Position> trail = [.. positions];
        return trail.All(Neck.Has)
            ? new(this) { Trail = trail }
            : throw new ArgumentException(
                $"{trail.First(position => !Neck.Has(position))} is not on this neck: {Neck}.",
                nameof(positions)
            );
    }

    /// <summary>With bends, slides and harmonics.</summary>
    internal NeckDrawing WithGestures(IEnumerable<NeckGesture> gestures) => new(this) { Gestures = [.. gestures] };

    /// <summary>With more to say at the end of the description.</summary>
    internal NeckDrawing WithRemark(string remark) => new(this) { Remark = remark };

    /// <summary>With another title.</summary>
    public NeckDrawing WithTitle(string title)
    {
        ArgumentNullException.ThrowIfNull(title);
        return new(this, title, description);
    }

    /// <summary>With a description of one's own; null for the one made from what is drawn.</summary>
    public NeckDrawing WithDescription(string? words) => new(this, title, words);

    /// <summary>With other labels shown at first.</summary>
    public NeckDrawing WithLabels(Labels labels) => new(this) { Labels = labels };

    /// <summary>Mirrored for a left-handed player, or not.</summary>
    public NeckDrawing WithLeftHand(bool isLeftHanded = true) => new(this) { IsLeftHanded = isLeftHanded };

    /// <summary>With a line below that tells what the marks mean, or without.</summary>
    public NeckDrawing WithKey(bool hasKey = true) => new(this) { HasKey = hasKey };

    /// <summary>With notes named another way; null for English.</summary>
    public NeckDrawing WithNaming(IFormatProvider? naming) => new(this) { Naming = naming };

    /// <summary>With only these frets shown.</summary>
    /// <param name="first">The first; 0 shows the open strings too.</param>
    /// <param name="last">The last, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not on the neck, or the last lies before the first.</exception>
    public NeckDrawing WithFrets(int first, int last)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(first);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(last, Neck.Frets);
        ArgumentOutOfRangeException.ThrowIfLessThan(last, Math.Max(first, 1));
        return new(this) { FirstFret = first, LastFret = last };
    }

    /// <summary>With only the frets shown that have marks: four or more, from the nut if the marks begin within two frets of it.</summary>
    public NeckDrawing WithFretsOfMarks()
    {
        if (Marks.IsEmpty)
        {
            return WithFrets(0, Neck.Frets);
        }

        var first = Marks.Min(static mark => mark.Position.Fret);
        var last = Marks.Max(static mark => mark.Position.Fret);
        if (first <= Neck.Capo + 2)
        {
            first = 0;
        }

        last = Math.Min(Neck.Frets, Math.Max(last, Math.Max(first, 1) + FewestFitted - 1));
        return WithFrets(Math.Clamp(first, 0, Math.Max(0, last - FewestFitted + 1)), last);
    }

    /// <inheritdoc/>
    public bool Equals(NeckDrawing? other) =>
        other is not null
        && Neck == other.Neck
        && Marks.AsSpan().SequenceEqual(other.Marks.AsSpan())
        && Bands.AsSpan().SequenceEqual(other.Bands.AsSpan())
        && Trail.AsSpan().SequenceEqual(other.Trail.AsSpan())
        && Gestures.AsSpan().SequenceEqual(other.Gestures.AsSpan())
        && (FirstFret, LastFret, Labels, IsLeftHanded, HasKey)
            == (other.FirstFret, other.LastFret, other.Labels, other.IsLeftHanded, other.HasKey)
        && Title == other.Title
        && Remark == other.Remark
        && description == other.description
        && Equals(Naming, other.Naming);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as NeckDrawing);

    /// <inheritdoc/>
    public override int GetHashCode() =>
        HashCode.Combine(Neck, Marks.Length, FirstFret, LastFret, Labels, IsLeftHanded, Title);

    /// <summary>Whether both draw the same.</summary>
    public static bool operator ==(NeckDrawing? left, NeckDrawing? right) =>
        left is null ? right is null : left.Equals(right);

    /// <summary>Whether they differ.</summary>
    public static bool operator !=(NeckDrawing? left, NeckDrawing? right) => !(left == right);

    /// <summary>The neck in plain text, for a terminal.</summary>
    public override string ToString() => NeckText.Write(this);

    /// <summary>The picture as SVG, a file of its own or part of a page.</summary>
    /// <param name="context">The page it goes into; null for a file of its own.</param>
    public string Svg(RenderContext? context = null) => NeckPicture.Write(this, context ?? new RenderContext());

    /// <summary>The marks within the frets shown, in order of strings and frets.</summary>
    internal IEnumerable<Mark> Shown =>
        Marks
            .Where(mark => mark.Position.Fret >= FirstFret && mark.Position.Fret <= LastFret)
            .OrderBy(static mark => mark.Position);

    /// <summary>The bands within the frets shown, each with its lane, 0 nearest the neck: the lowest lane that is free.</summary>
    internal IEnumerable<(NeckBand Band, int Lane)> Lanes
    {
        get
        {
            var ends = new List<int>();
            foreach (
                var band in Bands
                    .Where(band => band.Window.Last >= FirstFret && band.Window.First <= LastFret)
                    .OrderBy(static band => band.Window.First)
                    .ThenBy(static band => band.Window.Last)
            )
            {
                var lane = ends.FindIndex(end => end < band.Window.First);
                if (lane < 0)
                {
                    lane = ends.Count;
                    ends.Add(0);
                }

                ends[lane] = band.Window.Last;
                yield return (band, lane);
            }
        }
    }

    /// <summary>The kinds of label that some mark has, and none.</summary>
    internal IEnumerable<Labels> Offered =>
        Enum.GetValues<Labels>()
            .Where(labels =>
                labels == Labels.None
                || Marks.Any(mark =>
                    mark.Label is null
                    && labels switch
                    {
                        Labels.Functions => mark.Function is not null,
                        Labels.NoteNames => mark.Name is not null,
                        Labels.Order => mark.Order is not null,
                        _ => mark.Finger is not null,
                    }
                )
            );

    private NeckDrawing(NeckDrawing other, string? title, string? description)
        : this(other) => (this.title, this.description) = (title, description);

    private static NeckDrawing Of(Neck neck, NoteName root, Formula formula, IFormattable? subject)
    {
        ArgumentNullException.ThrowIfNull(neck);
        var marks = neck.PlacesOf(root, formula)
            .Select(place => new Mark(place) { Role = ToneRoles.Of(place.Function, formula) });
        return new(neck, [.. marks], subject ?? new Tones(root, formula));
    }

    /// <summary>A root and a formula, named by both: <c>E♭ 1 3 5 7</c>.</summary>
    private sealed record Tones(NoteName Root, Formula Formula) : IFormattable
    {
        public string ToString(string? format, IFormatProvider? formatProvider) =>
            $"{Root.ToString(format, formatProvider)} {Formula.ToString(format, formatProvider)}";
    }
}
