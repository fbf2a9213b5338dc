using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Formatting;
using TheoryKit.Fingering.Retuning;

// Not TheoryKit.Interactive, which notebooks don't open: that is for hosts.

namespace TheoryKit.Interactive.Notebooks;

/// <summary>The search for a tuning in a cell of a notebook.</summary>
public static class NotebookSearch
{
    private const int Steps = 100;

    /// <summary>
    /// Searches with a bar below the cell that fills percent by percent, and ends when the host cancels the cell.
    /// <code>
    /// var answer = await query.FindAsync();
    /// answer
    /// </code>
    /// </summary>
    /// <remarks>
    /// When the search is done, one line of words stands in place of the bar; the answer is the value, which a cell shows as
    /// any other. Outside a notebook it only searches.
    /// <para>
    /// In Jupyter the interrupt button doesn't cancel a cell: it sends the kernel SIGINT, which shuts it down and loses all
    /// variables. To be safe there, give a time limit: <c>FindAsync(new CancellationTokenSource(60_000).Token)</c>.
    /// </para>
    /// </remarks>
    /// <param name="query">What is asked.</param>
    /// <param name="cancellation">Ends the search, as the host's cancelling of the cell does.</param>
    /// <exception cref="ArgumentException">The question contradicts itself or the neck.</exception>
    /// <exception cref="OperationCanceledException">The search was ended.</exception>
    public static async Task<TuningAnswer> FindAsync(this TuningQuery query, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(query);
        if (KernelInvocationContext.Current is not { } context)
        {
            return await Task.Run(() => TuningSearch.Find(query, cancellation: cancellation), cancellation)
                .ConfigureAwait(false);
        }

        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellation, context.CancellationToken);
        var bar = new Bar(context);
        // While the cell is being stopped it may still say so; once it is, nothing it shows is seen.
        using var stopping = stop.Token.Register(bar.Stop);
        try
        {
            var answer = await Task.Run(() => TuningSearch.Find(query, bar, cancellation: stop.Token), stop.Token)
                .ConfigureAwait(false);
            bar.End(
                FormattableString.Invariant(
                    $"{answer.Space:N0} tunings searched: {answer.Evaluated:N0} worked out, {answer.Space - answer.Evaluated:N0} cut off."
                )
            );
            return answer;
        }
        catch (ArgumentException)
        {
            bar.End("Nothing was searched.");
            throw;
        }
    }

    /// <summary>The bar below the cell.</summary>
    private sealed class Bar(KernelInvocationContext context) : IProgress<TuningProgress>
    {
        private readonly Lock sync = new();
        private DisplayedValue? shown;
        private TuningProgress? last;
        private int step = -1;
        private bool isOver;

        public void Report(TuningProgress value)
        {
            lock (sync)
            {
                last = value;
                var now = (int)(value.Part * Steps);
                if (!isOver && now > step)
                {
                    step = now;
                    Show(value);
                }
            }
        }

        public void Stop() =>
            End(
                last is null
                    ? "Stopped before the search began."
                    : FormattableString.Invariant($"Stopped after {last.Decided:N0} of {last.Space:N0} tunings.")
                        + (last.Best is { } best ? $" Best so far: {best}." : "")
            );

        public void End(string words)
        {
            lock (sync)
            {
                if (!isOver)
                {
                    isOver = true;
                    Show(words);
                }
            }
        }

        private void Show(object value)
        {
            if (shown is null)
            {
                shown = context.Display(value);
            }
            else
            {
                shown.Update(value);
            }
        }
    }
}
