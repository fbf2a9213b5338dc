namespace TheoryKit.Charts.Figures;

/// <summary>A heat map with a text in every cell that can be read on any ground and on paper without colour.</summary>
internal static class Matrix
{
    private const int CellHeight = 40;
    private const int LowCellHeight = 22;
    private const int ManyRows = 16;
    private const int LineHeight = 15;

    /// <summary>Draws it: rows from the top, cells of the same strength in the same shade.</summary>
    /// <param name="palette">The colours.</param>
    /// <param name="title">The chart's title.</param>
    /// <param name="rows">The rows' names and their axis title.</param>
    /// <param name="columns">The columns' names and their axis title.</param>
    /// <param name="cell">For row and column: the strength from 0 to 1 or null for an empty cell, the text, and what hovering tells.</param>
    /// <param name="lines">The most lines in a cell.</param>
    public static ChartFigure Draw(
        Palette palette,
        string title,
        (IReadOnlyList<string> Names, string Title) rows,
        (IReadOnlyList<string> Names, string Title) columns,
        Func<int, int, Cell> cell,
        int lines = 1
    )
    {
        var height = rows.Names.Count > ManyRows ? LowCellHeight : CellHeight + ((lines - 1) * LineHeight);
        var cells = rows
            .Names.Select((_, row) => columns.Names.Select((_, column) => cell(row, column)).ToList())
            .ToList();
        var figure = new ChartFigure(title, (rows.Names.Count * height) + 72, palette);
        figure.Add(
            "heatmap",
            ("z", cells.Select(static row => row.Select(static each => (object?)each.Strength))),
            ("customdata", cells.Select(static row => row.Select(static each => each.Hover))),
            ("hovertemplate", "%{customdata}<extra></extra>"),
            ("colorscale", Shades.Scale(palette)),
            ("zmin", 0),
            ("zmax", 1),
            ("xgap", 2),
            ("ygap", 2),
            ("showscale", false)
        );
        foreach (var texts in Texts().ToLookup(static each => Shades.Text(each.Cell.Strength ?? 0)))
        {
            figure.Add(
                "scatter",
                ("mode", "text"),
                ("x", texts.Select(static each => each.X)),
                ("y", texts.Select(static each => each.Y)),
                ("text", texts.Select(static each => each.Cell.Text)),
                ("textfont", new { size = FontSize(columns.Names.Count), color = palette[texts.Key] }),
                ("hoverinfo", "skip"),
                ("showlegend", false)
            );
        }

        return figure
            .Axis("xaxis", columns.Title, Ticks(columns.Names, isDown: false))
            .Axis("yaxis", rows.Title, Ticks(rows.Names, isDown: true));

        IEnumerable<(int X, int Y, Cell Cell)> Texts() =>
            cells.SelectMany((row, y) => row.Select((each, x) => (x, y, each)));
    }

    private static int FontSize(int columns) =>
        columns switch
        {
            <= 8 => 13,
            <= 12 => 12,
            _ => 10,
        };

    private static (string, object)[] Ticks(IReadOnlyList<string> names, bool isDown) =>
        [
            ("tickmode", "array"),
            ("tickvals", Enumerable.Range(0, names.Count)),
            ("ticktext", names),
            ("range", isDown ? new[] { names.Count - 0.5, -0.5 } : [-0.5, names.Count - 0.5]),
            ("showgrid", false),
            ("ticks", ""),
        ];

    /// <summary>A cell: its strength from 0 to 1 (null for none: the ground shows), its text, and what hovering tells.</summary>
    public readonly record struct Cell(double? Strength, string Text, string Hover);
}
