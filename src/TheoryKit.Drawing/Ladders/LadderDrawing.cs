using TheoryKit.Drawing.Sheets;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Ladders;

/// <summary>What the rungs of a ladder stand for.</summary>
public enum LadderAlignment
{
    /// <summary>Semitones above the root: every column stands on its own root, up as far as the formulas go.</summary>
    Function,

    /// <summary>The twelve pitch classes, from the first column's root: equal sounds lie on one rung.</summary>
    Sound,
}

/// <summary>One formula on a ladder. Equal when title, formula and root agree.</summary>
/// <param name="Formula">Its degrees; at least one.</param>
/// <param name="Root">The note they are counted from, if there is one: then the tones have names.</param>
/// <param name="Title">What stands over it; null for the chord's symbol if it is one, empty for nothing.</param>
public sealed record LadderColumn(Formula Formula, NoteName? Root = null, string? Title = null)
{
    private Chord? Chord { get; init; }

    /// <summary>A chord's formula over its root, under its symbol.</summary>
    public static LadderColumn Of(Chord chord)
    {
        ArgumentNullException.ThrowIfNull(chord);
        return new(chord.Formula, chord.Root) { Chord = chord };
    }

    /// <summary>A quality's formula under its name.</summary>
    public static LadderColumn Of(ChordQuality quality)
    {
        ArgumentNullException.ThrowIfNull(quality);
        return new(quality.Formula, Title: quality.Name);
    }

    /// <summary>A scale's formula under its name.</summary>
    public static LadderColumn Of(ScaleType type)
    {
        ArgumentNullException.ThrowIfNull(type);
        return new(type.Formula, Title: type.ToString("P"));
    }

    /// <summary>What stands over it.</summary>
    internal Words Heading => Title ?? Words.Of(Chord);

    /// <summary>What it is called where something has to be said.</summary>
    internal Words Name => Heading.IsEmpty ? Words.Of(Formula) : Heading;
}

/// <summary>
/// Formulas against the chromatic ladder: one rung for every semitone, one column for every formula, a mark for every
/// tone. Equal when columns and alignment agree.
/// </summary>
public sealed class LadderDrawing : IEquatable<LadderDrawing>
{
    /// <summary>A ladder of these columns.</summary>
    /// <exception cref="ArgumentException">No column, a column without a tone, or one without a root where the alignment
    /// is by sound.</exception>
    public LadderDrawing(IEnumerable<LadderColumn> columns, LadderAlignment alignment = LadderAlignment.Function)
    {
        Columns = [.. Check.Items(columns)];
        if (Columns.Count == 0 || Columns.Any(column => column.Formula.Count == 0))
        {
            throw new ArgumentException("A ladder has at least one column, and each column a tone.", nameof(columns));
        }

        if (alignment == LadderAlignment.Sound && Columns.Any(column => column.Root is null))
        {
            throw new ArgumentException("To align formulas by sound, each needs a root.", nameof(columns));
        }

        Alignment = alignment;
    }

    /// <summary>The columns, from left to right.</summary>
    public IReadOnlyList<LadderColumn> Columns { get; }

    /// <summary>What the rungs stand for.</summary>
    public LadderAlignment Alignment { get; }

    /// <summary>Formulas side by side, counted from their roots.</summary>
    public static LadderDrawing Of(params IEnumerable<Formula> formulas) =>
        new(WithTones(Check.Items(formulas)).Select(formula => new LadderColumn(formula)));

    /// <summary>
    /// Chords side by side: over one root by function, over several by sound, so that a common tone lies on one rung.
    /// </summary>
    public static LadderDrawing Of(params IEnumerable<Chord> chords)
    {
        var all = Check.Items(chords).ToList();
        if (all.Count == 0)
        {
            throw new ArgumentException("A ladder has at least one column; give one chord or more.", nameof(chords));
        }

        return new(
            all.Select(LadderColumn.Of),
            all.TrueForAll(chord => chord.Root == all[0].Root) ? LadderAlignment.Function : LadderAlignment.Sound
        );
    }

    private static Sequence<Formula> WithTones(Sequence<Formula> formulas) =>
        formulas.Count > 0 && formulas.All(static formula => formula.Count > 0)
            ? formulas
            : throw new ArgumentException(
                "A ladder has at least one column, and each column a tone; give one formula or more, none of them empty.",
                nameof(formulas)
            );

    /// <inheritdoc/>
    public bool Equals(LadderDrawing? other) =>
        other is not null && Alignment == other.Alignment && Columns.SequenceEqual(other.Columns);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as LadderDrawing);

    /// <inheritdoc/>
    public override int GetHashCode() =>
        Columns.Aggregate((int)Alignment, static (code, column) => HashCode.Combine(code, column));

    /// <summary>The lowest rung, in semitones from the root: 0, or less for a formula that goes below its root.</summary>
    internal int LowestRung =>
        Alignment == LadderAlignment.Sound ? 0 : Math.Min(0, Columns.Min(static c => c.Formula.Min(d => d.Semitones)));

    /// <summary>The highest rung: 11, or more for a formula that goes beyond the seventh.</summary>
    internal int HighestRung =>
        Alignment == LadderAlignment.Sound
            ? 11
            : Math.Max(11, Columns.Max(static c => c.Formula.Max(d => d.Semitones)));

    /// <summary>The rung a tone lies on.</summary>
    internal int RungOf(LadderColumn column, Degree degree) =>
        Alignment == LadderAlignment.Function
            ? degree.Semitones
            : (degree.PitchClass + column.Root!.Value.PitchClass - Columns[0].Root!.Value.PitchClass + 24) % 12;

    /// <summary>What stands before a rung: the usual degree of so many semitones, or a note name.</summary>
    internal Words NameOf(int rung)
    {
        if (Alignment == LadderAlignment.Function)
        {
            return Words.Of(UsualDegree(rung));
        }

        // The first spelling any of the chords gives the sound; else the simplest.
        foreach (var column in Columns)
        {
            foreach (var degree in column.Formula)
            {
                if (RungOf(column, degree) == rung)
                {
                    return Words.Of(column.Root!.Value + degree.Interval);
                }
            }
        }

        var root = Columns[0].Root!.Value;
        return Words.Of((root + UsualDegree(rung)!.Value.Interval).Simplest());
    }

    /// <summary>Whether the name of its rung says the degree.</summary>
    internal bool IsNamedAs(Degree degree) =>
        Alignment == LadderAlignment.Function && UsualDegree(degree.Semitones) == degree;

    private static Degree? UsualDegree(int semitones)
    {
        ReadOnlySpan<(int Number, int Alteration)> usual =
        [
            (1, 0),
            (2, -1),
            (2, 0),
            (3, -1),
            (3, 0),
            (4, 0),
            (5, -1),
            (5, 0),
            (6, -1),
            (6, 0),
            (7, -1),
            (7, 0),
            (8, 0),
            (9, -1),
            (9, 0),
            (9, 1),
            (10, 0),
            (11, 0),
            (11, 1),
            (12, 0),
            (13, -1),
            (13, 0),
            (14, -1),
            (14, 0),
            (15, 0),
        ];
        return semitones >= 0 && semitones < usual.Length
            ? new(usual[semitones].Number, usual[semitones].Alteration)
            : null;
    }
}
