using TheoryKit.Paths.Joins;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Charts.Paths;

/// <summary>The charts of lines and joined changes, asked for from what they show.</summary>
public static class PathCharts
{
    /// <summary>Pitch over beats, functions as marks, chords as bands.</summary>
    /// <exception cref="ArgumentException">The path has no note.</exception>
    public static ContourChart ContourChart(this Path path) => new(path);

    /// <summary>How many chords the cycles of joined changes have.</summary>
    public static JoinMapChart MapChart(this JoinTable table) => new(table);
}
