using System.Globalization;
using System.Text;

namespace TheoryKit.Drawing.Sheets;

/// <summary>Writes a sheet as plain text.</summary>
internal static class SheetText
{
    private const string Gap = "  ";

    public static string Write(Sheet sheet, IFormatProvider? naming)
    {
        var text = new StringBuilder();
        WriteAll(text, sheet.Blocks, naming);
        return text.Replace('\u00a0', ' ').ToString().TrimEnd('\n');
    }

    private static void WriteAll(StringBuilder text, IReadOnlyList<Block> blocks, IFormatProvider? naming)
    {
        Block? before = null;
        foreach (var block in blocks)
        {
            if (before is Block.Picture && block is Block.Prose)
            {
                Part(text);
            }

            Write(text, block, naming);
            before = block;
        }
    }

    private static void Write(StringBuilder text, Block block, IFormatProvider? naming)
    {
        switch (block)
        {
            case Block.Title(var main, var sub):
                var title = main.Plain(naming) + (sub is null ? "" : $"{Gap}{sub.Plain(naming)}");
                text.Append(title).Append('\n');
                break;
            case Block.Heading(var words):
                Part(text);
                text.Append(words.Plain(naming)).Append('\n');
                break;
            case Block.Prose(var words):
                text.Append(words.Plain(naming)).Append('\n');
                break;
            case Block.Facts(var facts):
                Columns(
                    text,
                    [.. facts.Select(fact => new[] { Plain(fact.Name, naming), Plain(fact.Value, naming) })],
                    []
                );
                break;
            case Block.Table table:
                if (!table.HasQuietCaption)
                {
                    Part(text);
                    text.Append(table.Caption.Plain(naming)).Append('\n');
                }

                Columns(
                    text,
                    [
                        table.Columns.Select(column => Plain(column.Head, naming)).ToArray(),
                        .. table.Rows.Select(row => row.Select(cell => Plain(cell, naming)).ToArray()),
                    ],
                    [.. table.Columns.Select(column => column.IsNumber)]
                );
                break;
            case Block.Picture picture:
                Part(text);
                text.Append(picture.Text(naming).TrimEnd('\n')).Append('\n');
                break;
            case Block.Beside(var list):
                WriteAll(text, list, naming);
                break;
            case Block.Group(var list):
                WriteAll(text, list, naming);
                break;
        }
    }

    /// <summary>Parts the next block from what is there with an empty line.</summary>
    private static void Part(StringBuilder text)
    {
        if (text.Length > 0 && !(text.Length > 1 && text[^1] == '\n' && text[^2] == '\n'))
        {
            text.Append('\n');
        }
    }

    private static string Plain(Cell cell, IFormatProvider? naming) => cell.Words.Plain(naming);

    private static void Columns(StringBuilder text, string[][] rows, bool[] isNumber)
    {
        var widths = new int[rows.Select(static row => row.Length).DefaultIfEmpty().Max()];
        foreach (var row in rows)
        {
            for (var i = 0; i < row.Length; i++)
            {
                widths[i] = Math.Max(widths[i], Width(row[i]));
            }
        }

        foreach (var row in rows)
        {
            var line = new StringBuilder(Gap);
            for (var i = 0; i < row.Length; i++)
            {
                var space = new string(' ', widths[i] - Width(row[i]));
                var toTheRight = i < isNumber.Length && isNumber[i];
                line.Append(toTheRight ? space + row[i] : row[i] + space).Append(Gap);
            }

            text.Append(line.ToString().TrimEnd()).Append('\n');
        }
    }

    private static int Width(string text) => new StringInfo(text).LengthInTextElements;
}
