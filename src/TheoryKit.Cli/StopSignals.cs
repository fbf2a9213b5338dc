using System.Runtime.InteropServices;
using TheoryKit.Cli.Answers;

namespace TheoryKit.Cli;

/// <summary>
/// The signals that ask this program to stop: Ctrl+C, SIGTERM, and SIGHUP when the terminal closes. The first one lets it
/// finish what it has; the second ends it at once.
/// </summary>
internal sealed class StopSignals : IDisposable
{
    private readonly CancellationTokenSource stop = new();
    private readonly List<PosixSignalRegistration> registrations = [];

    public StopSignals()
    {
        foreach (
            var (signal, status) in new[]
            {
                (PosixSignal.SIGINT, ExitStatus.Interrupted),
                (PosixSignal.SIGTERM, 143),
                (PosixSignal.SIGHUP, 129),
            }
        )
        {
            registrations.Add(PosixSignalRegistration.Create(signal, context => Receive(context, status)));
        }
    }

    /// <summary>Is cancelled by the first signal.</summary>
    public CancellationToken Stop => stop.Token;

    /// <summary>The exit code that tells which signal it was.</summary>
    public int Status { get; private set; } = ExitStatus.Interrupted;

    /// <inheritdoc/>
    public void Dispose()
    {
        registrations.ForEach(static each => each.Dispose());
        stop.Dispose();
    }

    private void Receive(PosixSignalContext context, int status)
    {
        if (stop.IsCancellationRequested)
        {
            return;
        }

        context.Cancel = true;
        Status = status;
        stop.Cancel();
    }
}
