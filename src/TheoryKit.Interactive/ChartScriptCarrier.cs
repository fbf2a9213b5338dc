using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using TheoryKit.Charts.Figures;

namespace TheoryKit.Interactive;

/// <summary>
/// Puts plotly.js before the first chart of a session. The cell that carries it brings it again when it runs again, since
/// its earlier output is gone then; a new session brings it too. In the page a second copy does nothing.
/// </summary>
internal sealed class ChartScriptCarrier
{
    private readonly Lock sync = new();
    private string? carrier;
    private KernelCommand? lastRun;

    public string With(string html) =>
        PlotlyScript.IsNeededBy(html) && IsDue(Root(KernelInvocationContext.Current?.Command))
            ? PlotlyScript.CompressedHtml + html
            : html;

    private bool IsDue(KernelCommand? run)
    {
        // Cells have no name here: the same source counts as the same cell.
        var cell = (run as SubmitCode)?.Code ?? "";
        lock (sync)
        {
            carrier ??= cell;
            if (carrier != cell || (run is not null && run == lastRun))
            {
                return false;
            }

            lastRun = run;
            return true;
        }
    }

    private static KernelCommand? Root(KernelCommand? command)
    {
        while (command?.Parent is { } parent)
        {
            command = parent;
        }

        return command;
    }
}
