using System.Collections.Immutable;
using System.Text;
using TheoryKit.Cli.Running.Channel;

namespace TheoryKit.Cli.Running;

/// <summary>
/// Gathers what the cells of a notebook show, as far as <see cref="OutputLimits"/> go. A value that is updated stays where
/// it was first shown, also when a later cell updates it.
/// </summary>
internal sealed class CellOutputs
{
    private readonly List<Shown> cells = [];

    /// <summary>Where the values lie that can be updated.</summary>
    private readonly Dictionary<string, (Shown Cell, int Place)> places = new(StringComparer.Ordinal);

    private readonly HashSet<string> updated = new(StringComparer.Ordinal);

    private long characters;

    /// <summary>What follows belongs to the next cell.</summary>
    public void BeginCell() => cells.Add(new());

    /// <summary>What a cell has shown, as it stands now.</summary>
    /// <param name="cell">0 for the first cell begun.</param>
    public ImmutableList<CellOutput> Of(int cell)
    {
        var shown = cells[cell];
        var outputs = shown.Entries.Select(static entry => entry.Output);
        return shown.LeftOut is (0, 0)
            ? [.. outputs]
            : [.. outputs, new WarningOutput(OutputLimits.Said(shown.LeftOut.Characters, shown.LeftOut.Outputs))];
    }

    /// <summary>Takes up what the cell begun last has shown.</summary>
    public void Take(Message message)
    {
        switch (message)
        {
            case Wrote wrote:
                Write(wrote.Text, wrote.IsError);
                break;
            case Showed { IsUpdate: true, Id: { } id } showed:
                Update(id, new(showed.Forms));
                break;
            case Showed showed:
                Add(new(showed.Id, new ValueOutput(showed.Forms)));
                break;
            case Warned warned:
                Add(new(null, new WarningOutput(warned.Text)));
                break;
            case LeftOut left:
                cells[^1].Leave(left.Characters, left.Outputs);
                break;
        }
    }

    private void Add(Entry entry)
    {
        var cell = cells[^1];
        if (cell.Entries.Count >= OutputLimits.CellOutputs || entry.Length > Room(cell))
        {
            cell.Leave(entry.Length, 1);
            return;
        }

        Count(cell, entry.Length);
        if (entry.Id is not null)
        {
            places.TryAdd(entry.Id, (cell, cell.Entries.Count));
        }

        cell.Entries.Add(entry);
    }

    private void Update(string id, ValueOutput value)
    {
        if (places.TryGetValue(id, out var known))
        {
            Replace(known.Cell, known.Place, new(id, value));
            return;
        }

        // display(...) announces a value under one name and hands out another: the first update tells which value
        // went with it, if there is only one left that it can be.
        var cell = cells[^1];
        var open = Enumerable
            .Range(0, cell.Entries.Count)
            .Where(i =>
                cell.Entries[i] is { Id: { } name, Output: ValueOutput } && !updated.Contains(name) && !cell.HasLeftOut
            )
            .Take(2)
            .ToList();
        if (open is [var place])
        {
            if (places.Remove(cell.Entries[place].Id!, out var before) && before != (cell, place))
            {
                places.Add(cell.Entries[place].Id!, before);
            }

            Replace(cell, place, new(id, value));
            places.TryAdd(id, (cell, place));
        }
        else
        {
            Add(new(id, value));
            if (!places.ContainsKey(id))
            {
                return;
            }
        }

        updated.Add(id);
    }

    private void Replace(Shown cell, int place, Entry entry)
    {
        var grown = entry.Length - cell.Entries[place].Length;
        if (grown > Room(cell))
        {
            cell.Leave(entry.Length, 1);
            return;
        }

        Count(cell, grown);
        cell.Entries[place] = entry;
    }

    private void Write(string text, bool isError)
    {
        var cell = cells[^1];
        var goesOn = cell.Entries is [.., { Text: not null } last] && last.IsError == isError;
        if (!goesOn && cell.Entries.Count >= OutputLimits.CellOutputs)
        {
            cell.Leave(text.Length, 1);
            return;
        }

        var start = OutputLimits.Start(text, Room(cell));
        if (start.Length < text.Length)
        {
            cell.Leave(text.Length - start.Length, 0);
        }

        if (start.Length == 0 && text.Length > 0)
        {
            return;
        }

        if (!goesOn)
        {
            cell.Entries.Add(new(isError));
        }

        cell.Entries[^1].Text!.Append(start);
        Count(cell, start.Length);
    }

    private long Room(Shown cell) =>
        Math.Min(OutputLimits.CellCharacters - cell.Characters, OutputLimits.NotebookCharacters - characters);

    private void Count(Shown cell, long more)
    {
        cell.Characters += more;
        characters += more;
    }

    private sealed class Shown
    {
        public List<Entry> Entries { get; } = [];

        public long Characters { get; set; }

        public (long Characters, long Outputs) LeftOut { get; private set; }

        public bool HasLeftOut => LeftOut is not (0, 0);

        public void Leave(long characters, long outputs) =>
            LeftOut = (LeftOut.Characters + characters, LeftOut.Outputs + outputs);
    }

    /// <summary>Something shown; text of the console grows while it is written.</summary>
    private sealed class Entry
    {
        private readonly CellOutput? output;

        public Entry(string? id, CellOutput output) => (Id, this.output) = (id, output);

        public Entry(bool isError) => (Text, IsError) = (new(), isError);

        public string? Id { get; }

        public StringBuilder? Text { get; }

        public bool IsError { get; }

        public CellOutput Output => output ?? new ConsoleOutput(Text!.ToString(), IsError);

        public long Length =>
            output switch
            {
                null => Text!.Length,
                ValueOutput value => value.Forms.Sum(static form => (long)form.Value.Length),
                WarningOutput warning => warning.Text.Length,
                _ => 0,
            };
    }
}
