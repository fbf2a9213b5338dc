using TheoryKit.Cli.Notebooks;
using TheoryKit.Cli.Running.Channel;

namespace TheoryKit.Cli.Running;

/// <summary>Runs the cells of a notebook in a process of its own, as far as they go.</summary>
/// <param name="notebook">The notebook.</param>
/// <param name="limit">How long a cell may run.</param>
/// <param name="memory">How much of the machine's memory its process may use, in percent.</param>
internal sealed class NotebookRun(Notebook notebook, TimeSpan limit, int memory)
{
    private readonly CellOutputs outputs = new();
    private readonly List<(CodeCell Cell, CellEnd End, string? Error)> ended = [];

    /// <summary>The cells run so far with what they show by now: a cell may still change what an earlier one showed.</summary>
    public IReadOnlyList<CellRun> Cells =>
        [.. ended.Select((each, i) => new CellRun(each.Cell, outputs.Of(i), each.End, each.Error))];

    /// <summary>What cells wrote past the notebook, in words; empty where they did not.</summary>
    public string Stray { get; private set; } = "";

    /// <summary>Runs the cells in order, up to the first that does not end well.</summary>
    /// <param name="report">Is told of each cell before it is run.</param>
    /// <param name="cancellation">Stops the run.</param>
    public async Task RunAsync(Action<CodeCell> report, CancellationToken cancellation)
    {
        if (!notebook.CodeCells.Any())
        {
            return;
        }

        NotebookProcess process;
        try
        {
            process = await NotebookProcess
                .StartAsync(Path.GetDirectoryName(notebook.Path) ?? ".", memory, cancellation)
                .ConfigureAwait(false);
        }
        catch (Exception e) when (e is NotebookProcessException or OperationCanceledException)
        {
            outputs.BeginCell();
            var isStopped = cancellation.IsCancellationRequested;
            ended.Add(
                (
                    notebook.CodeCells.First(),
                    isStopped ? CellEnd.Stopped : CellEnd.NotBegun,
                    isStopped ? null : e.Message
                )
            );
            return;
        }

        await using var _ = process.ConfigureAwait(false);
        foreach (var cell in notebook.CodeCells)
        {
            report(cell);
            outputs.BeginCell();
            var (end, error) = await RunAsync(process, cell, cancellation).ConfigureAwait(false);
            ended.Add((cell, end, error is null ? null : OutputLimits.Error(error)));
            if (end != CellEnd.Ran)
            {
                return;
            }
        }

        await process.LeaveAsync().ConfigureAwait(false);
        Stray = await process.StrayAsync().ConfigureAwait(false);
    }

    private async Task<(CellEnd End, string? Error)> RunAsync(
        NotebookProcess process,
        CodeCell cell,
        CancellationToken cancellation
    )
    {
        using var wait = CancellationTokenSource.CreateLinkedTokenSource(cancellation, process.Gone);
        wait.CancelAfter(limit);
        try
        {
            await process.SendAsync(new RunCell(cell.Source, cell.Kernel), wait.Token).ConfigureAwait(false);
            while (await process.ReadAsync(wait.Token).ConfigureAwait(false) is { } message)
            {
                if (message is CellEnded over)
                {
                    return (over.Error is null ? CellEnd.Ran : CellEnd.Failed, over.Error);
                }

                outputs.Take(message);
            }
        }
        catch (OperationCanceledException) when (cancellation.IsCancellationRequested)
        {
            return (CellEnd.Stopped, null);
        }
        catch (OperationCanceledException) when (!process.Gone.IsCancellationRequested)
        {
            return (
                CellEnd.PastLimit,
                $"It did not end within {CellLimit.Said(limit)}; \"--cell-limit 1h\" would give it an hour."
            );
        }
        catch (ChannelException e)
        {
            return (CellEnd.ProcessEnded, $"It sent what cannot be read. {e.Message}");
        }
        catch (Exception e) when (e is IOException or OperationCanceledException)
        {
            // The process is gone; its last words say more.
        }

        return (CellEnd.ProcessEnded, await process.LastWordsAsync().ConfigureAwait(false));
    }
}
