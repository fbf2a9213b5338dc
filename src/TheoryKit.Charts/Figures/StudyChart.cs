using Plotly.NET;

namespace TheoryKit.Charts.Figures;

/// <summary>
/// A chart of TheoryKit values that also tells in words and in numbers what it shows. Each kind is a class of its own.
/// Equal when kind, title, description and numbers agree.
/// </summary>
public abstract class StudyChart : IEquatable<StudyChart>
{
    private protected StudyChart() { }

    /// <summary>What is shown, in a few words.</summary>
    public abstract string Title { get; }

    /// <summary>What the picture says, in a sentence or two.</summary>
    public abstract string Description { get; }

    /// <summary>The numbers behind the picture.</summary>
    public ChartTable Table => Tabulate(null);

    /// <summary>The chart for Plotly.NET, made anew each time: restyle it, combine it, save it as any other.</summary>
    /// <remarks>Its colours are those of a light page; a renderer's follow the page, light, dark or paper.</remarks>
    public GenericChart ToPlotly() => Draw(Palette.Light);

    /// <summary>The numbers: "G" (or null) plain, "P" with printed signs.</summary>
    internal abstract ChartTable Tabulate(string? format);

    internal abstract GenericChart Draw(Palette palette);

    /// <inheritdoc/>
    public bool Equals(StudyChart? other) =>
        other is not null
        && GetType() == other.GetType()
        && Title == other.Title
        && Description == other.Description
        && Table.Equals(other.Table);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as StudyChart);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(GetType(), Title, Table);

    /// <summary>Title, description and numbers as plain text.</summary>
    public override string ToString() => $"{Title}\n{Description}\n\n{Table}";
}
