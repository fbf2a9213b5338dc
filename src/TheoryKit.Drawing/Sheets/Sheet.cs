using System.Diagnostics.CodeAnalysis;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Theory.Chords;

namespace TheoryKit.Drawing.Sheets;

/// <summary>
/// What is to be shown, said once: blocks from which both the HTML and the plain text are written (see
/// <see cref="SheetHtml"/> and <see cref="SheetText"/>).
/// </summary>
internal sealed record Sheet(params IReadOnlyList<Block> Blocks);

/// <summary>One block of a sheet.</summary>
internal abstract record Block
{
    /// <summary>The name of the thing shown, and what more there is to its name.</summary>
    public sealed record Title(Words Main, Words? Sub = null) : Block;

    /// <summary>The name of the blocks that follow.</summary>
    public sealed record Heading(Words Words) : Block;

    /// <summary>A sentence or two.</summary>
    public sealed record Prose(Words Words) : Block;

    /// <summary>Names of facts, and the facts.</summary>
    public sealed record Facts(IReadOnlyList<Fact> List) : Block;

    /// <summary>A table; the first cell of each row names the row.</summary>
    public sealed record Table(Words Caption, IReadOnlyList<Column> Columns, IReadOnlyList<IReadOnlyList<Cell>> Rows)
        : Block
    {
        /// <summary>The caption is for those who don't see the table's place: it stands under a heading that says the same.</summary>
        public bool HasQuietCaption { get; init; }
    }

    /// <summary>Something that draws itself.</summary>
    public sealed record Picture(
        Func<RenderContext, IFormatProvider?, string> Html,
        Func<IFormatProvider?, string> Text
    ) : Block;

    /// <summary>Blocks side by side where there is room for that.</summary>
    public sealed record Beside(IReadOnlyList<Block> List) : Block;

    /// <summary>Blocks that belong together.</summary>
    public sealed record Group(params IReadOnlyList<Block> List) : Block;
}

/// <summary>A fact and its name.</summary>
internal readonly record struct Fact(Words Name, Cell Value);

/// <summary>The head of a column.</summary>
internal readonly record struct Column(Words Head, bool IsNumber = false)
{
    public static implicit operator Column(string head) => new(head);
}

/// <summary>What stands in a cell of a table or in a fact: words, with the mark of a tone in front if it is one.</summary>
internal sealed record Cell(Words Words, ToneRole? Role = null, bool IsStrong = false)
{
    [return: NotNullIfNotNull(nameof(text))]
    public static implicit operator Cell?(string? text) => text is null ? null : new(text);

    [return: NotNullIfNotNull(nameof(words))]
    public static implicit operator Cell?(Words? words) => words is null ? null : new(words);

    public static implicit operator Cell(int number) => new(Words.Of(number));
}
