using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using TheoryKit.Values;

namespace TheoryKit.Charts.Figures;

/// <summary>The numbers of a chart in rows, for a reader who does without the picture. Equal when all texts are.</summary>
/// <remarks>The first column names the row.</remarks>
public sealed class ChartTable : IEquatable<ChartTable>
{
    /// <summary>A table.</summary>
    /// <param name="columns">What the columns hold, with units; one or more.</param>
    /// <param name="rows">One text for each column.</param>
    /// <exception cref="ArgumentException">No column, or a row with more or fewer texts.</exception>
    public ChartTable(IEnumerable<string> columns, IEnumerable<IEnumerable<string>> rows)
    {
        Columns = [.. Check.Items(columns)];
        Rows = [.. Check.Items(rows).Select(static row => Check.Items(row, nameof(rows)).ToImmutableArray())];
        if (Columns.IsEmpty)
        {
            throw new ArgumentException("A table has a column or more.", nameof(columns));
        }

        if (Rows.Any(row => row.Length != Columns.Length))
        {
            throw new ArgumentException($"Each row has {Columns.Length} texts, one for each column.", nameof(rows));
        }
    }

    /// <summary>What the columns hold.</summary>
    public ImmutableArray<string> Columns { get; }

    /// <summary>The rows, a text for each column.</summary>
    public ImmutableArray<ImmutableArray<string>> Rows { get; }

    /// <inheritdoc/>
    public bool Equals(ChartTable? other) =>
        other is not null
        && Columns.SequenceEqual(other.Columns)
        && Rows.Length == other.Rows.Length
        && Rows.Zip(other.Rows).All(static pair => pair.First.SequenceEqual(pair.Second));

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as ChartTable);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (var text in Columns.Concat(Rows.SelectMany(static row => row)))
        {
            hash.Add(text);
        }

        return hash.ToHashCode();
    }

    /// <summary>The table in columns of plain text, numbers to the right.</summary>
    public override string ToString()
    {
        var lines = Rows.Insert(0, Columns);
        var widths = Columns.Select((_, column) => lines.Max(line => Width(line[column]))).ToList();
        var text = new StringBuilder();
        foreach (var line in lines)
        {
            var start = text.Length;
            for (var column = 0; column < widths.Count; column++)
            {
                var padding = new string(' ', widths[column] - Width(line[column]));
                text.Append(IsNumeric(column) ? padding + line[column] : line[column] + padding).Append("  ");
            }

            while (text.Length > start && text[^1] == ' ')
            {
                text.Length--;
            }

            text.Append('\n');
        }

        return text.ToString();
    }

    /// <summary>Whether every text of a column beyond the first is a number.</summary>
    internal bool IsNumeric(int column) =>
        column > 0
        && !Rows.IsEmpty
        && Rows.All(row => double.TryParse(row[column], CultureInfo.InvariantCulture, out _));

    private static int Width(string text) => new StringInfo(text).LengthInTextElements;
}
