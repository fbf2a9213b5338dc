using TheoryKit.Values;

namespace TheoryKit.Drawing.Sheets;

/// <summary>
/// How values of a type are described: by a name and traits. From one description come the card of a single value and the
/// table of a sequence.
/// </summary>
/// <param name="Kind">What such a value is called, one and many.</param>
/// <param name="Name">The value in its own notation.</param>
/// <param name="Traits">What there is to say about it.</param>
internal sealed record Description<T>(Kind Kind, Func<T, Words> Name, IReadOnlyList<Trait<T>> Traits)
{
    /// <summary>The most rows of a table; a sequence may have no end.</summary>
    private const int MaxRows = 500;

    /// <summary>The value's name in words.</summary>
    public Func<T, Words?>? InWords { get; init; }

    /// <summary>What a card shows besides, after the traits.</summary>
    public Func<T, IEnumerable<Block>>? More { get; init; }

    /// <summary>The caption of a table, from how many it shows and how many it leaves out; null for a plain count.</summary>
    public Func<int, int, string>? Counted { get; init; }

    /// <summary>Which of several values a table leaves out; the caption tells how many. Null for none.</summary>
    public Func<T, IReadOnlyList<T>, bool>? IsLeftOut { get; init; }

    /// <summary>The sheet about one value.</summary>
    public Sheet Card(T value)
    {
        var facts = new List<Fact>();
        foreach (var trait in Traits)
        {
            if (trait.Value(value) is { Words.IsEmpty: false } cell)
            {
                facts.Add(new(trait.Name, cell));
            }
        }

        var blocks = new List<Block> { new Block.Title(Name(value), InWords?.Invoke(value)) };
        if (facts.Count > 0)
        {
            blocks.Add(new Block.Facts(facts));
        }

        blocks.AddRange(More?.Invoke(value) ?? []);
        return new(blocks);
    }

    /// <summary>The sheet about several values: a table with a row for each and a column for every trait that any has.</summary>
    public Sheet Table(IEnumerable<T> values)
    {
        var all = values.Take(MaxRows + 1).ToList();
        var isCut = all.Count > MaxRows;
        if (isCut)
        {
            all.RemoveAt(MaxRows);
        }

        if (all.Count == 0)
        {
            return new(new Block.Prose($"No {Kind.Many}."));
        }

        var left = all.Count;
        if (IsLeftOut is not null)
        {
            var given = all.ToList();
            all.RemoveAll(value => value is not null && IsLeftOut(value, given));
        }

        left -= all.Count;
        var count =
            isCut ? $"The first {MaxRows} {Kind.Many}"
            : Counted is not null ? Counted(all.Count, left)
            : English.Count(all.Count, Kind.One, Kind.Many);
        if (all.Count == 0)
        {
            return new(new Block.Prose($"{count}."));
        }

        var columns = new List<Column> { new(Kind.One) };
        // A sequence from a notebook may have gaps, whatever its type says; the table shows them.
        var rows = all.Select(value => new List<Cell> { new(value is null ? "nothing" : Name(value)) }).ToList();
        if (InWords is not null)
        {
            Add(new("in words", value => InWords(value)));
        }

        Traits.ToList().ForEach(Add);
        return new(new Block.Table(count, columns, [.. rows]));

        void Add(Trait<T> trait)
        {
            var cells = all.Select(value => value is null ? null : trait.Value(value)).ToList();
            if (cells.TrueForAll(static cell => cell is null))
            {
                return;
            }

            columns.Add(new(trait.Name, trait.IsNumber));
            for (var i = 0; i < rows.Count; i++)
            {
                rows[i].Add(cells[i] ?? new Cell(Words.None));
            }
        }
    }
}

/// <summary>What values of a type are called.</summary>
internal readonly record struct Kind(string One, string Many);

/// <summary>Something to say about values of a type; null for a value that hasn't got it.</summary>
internal sealed record Trait<T>(string Name, Func<T, Cell?> Value, bool IsNumber = false);
