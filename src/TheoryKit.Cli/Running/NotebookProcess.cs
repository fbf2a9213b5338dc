using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.IO.Pipes;
using TheoryKit.Cli.Answers;
using TheoryKit.Cli.Running.Channel;
using TheoryKit.Cli.Running.Inside;
using TheoryKit.Cli.Running.Processes;

namespace TheoryKit.Cli.Running;

/// <summary>
/// The process that runs the cells of a notebook: this program again, under <see cref="NotebookHost"/>. Cells own its
/// console, so that messages go through a pipe of their own. Once disposed, nothing of it is left.
/// </summary>
internal sealed class NotebookProcess : IAsyncDisposable
{
    /// <summary>How long the process may take to begin, on a machine with much else to do.</summary>
    private static readonly TimeSpan LongestStart = TimeSpan.FromMinutes(1);

    /// <summary>How long it may take to leave, with what its cells have arranged for the end.</summary>
    private static readonly TimeSpan LongestLeave = TimeSpan.FromSeconds(2);

    /// <summary>How long what is in the pipes when the process has ended may take to come out.</summary>
    private static readonly TimeSpan LongestRest = TimeSpan.FromSeconds(1);

    private readonly string mark = Guid.NewGuid().ToString("N");
    private readonly NamedPipeServerStream channel;
    private readonly MessageReader reader;
    private readonly CancellationTokenSource gone = new();
    private readonly TaskCompletionSource<Process> started = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly TaskCompletionSource<int> exited = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private Process? process;
    private StrayText? output;
    private StrayText? errors;

    private NotebookProcess()
    {
        channel = new(
            $"theorykit-{mark}",
            PipeDirection.InOut,
            maxNumberOfServerInstances: 1,
            PipeTransmissionMode.Byte,
            PipeOptions.Asynchronous | PipeOptions.CurrentUserOnly
        );
        reader = new(channel);
    }

    /// <summary>Cancelled when the process has ended and what it sent before has had time to come.</summary>
    public CancellationToken Gone => gone.Token;

    /// <summary>Starts the process and waits until it is ready for cells.</summary>
    /// <param name="folder">The notebook's folder.</param>
    /// <param name="memory">How much of the machine's memory it may use, in percent.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="NotebookProcessException">It didn't begin.</exception>
    public static async Task<NotebookProcess> StartAsync(string folder, int memory, CancellationToken cancellation)
    {
        NotebookProcess? begun = null;
        try
        {
            begun = new NotebookProcess();
            await begun.BeginAsync(folder, memory, cancellation).ConfigureAwait(false);
            return begun;
        }
        catch (Exception e)
        {
            if (begun is not null)
            {
                await begun.DisposeAsync().ConfigureAwait(false);
            }

            if (e is NotebookProcessException or OperationCanceledException)
            {
                throw;
            }

            throw new NotebookProcessException($"Its process could not be started: {e.Message}");
        }
    }

    /// <exception cref="ChannelException">The message is too long.</exception>
    /// <exception cref="IOException">The process is gone, or has closed the channel.</exception>
    public ValueTask SendAsync(Message message, CancellationToken cancellation) =>
        channel.WriteAsync(MessageFormat.Bytes(message), cancellation);

    /// <summary>The next message, or null where there will be none.</summary>
    /// <exception cref="ChannelException">What came is no message.</exception>
    /// <exception cref="IOException">The channel is broken.</exception>
    public ValueTask<Message?> ReadAsync(CancellationToken cancellation) => reader.ReadAsync(cancellation);

    /// <summary>Lets the process leave in its own way, but not for long.</summary>
    public async Task LeaveAsync()
    {
        try
        {
            using var limit = new CancellationTokenSource(LongestLeave);
            await SendAsync(new Leave(), limit.Token).ConfigureAwait(false);
            await exited.Task.WaitAsync(limit.Token).ConfigureAwait(false);
        }
        catch (Exception e) when (e is IOException or OperationCanceledException)
        {
            Debug.WriteLine(e.Message);
        }
    }

    /// <summary>Why the process sends no more, with its last words: it has ended, or has closed the channel.</summary>
    public async Task<string> LastWordsAsync()
    {
        var why = "It closed the channel to the program that prints.";
        try
        {
            why = ExitText.Of(await exited.Task.WaitAsync(LongestRest).ConfigureAwait(false));
        }
        catch (TimeoutException)
        {
            Debug.WriteLine(why);
        }

        await End().ConfigureAwait(false);
        var said = errors?.Text.Trim() ?? "";
        return said.Length > 0 ? $"{why}\n\n{said}" : why;
    }

    /// <summary>What cells wrote past the notebook, on the process's own outputs; empty where they did not.</summary>
    public async Task<string> StrayAsync()
    {
        await End().ConfigureAwait(false);
        var (bytes, text) = ((output?.Bytes ?? 0) + (errors?.Bytes ?? 0), (output?.Text ?? "") + (errors?.Text ?? ""));
        return bytes == 0
            ? ""
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{bytes:N0} bytes were written past the notebook and are on no page: {text.Trim()}"
            );
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await End().ConfigureAwait(false);
        await channel.DisposeAsync().ConfigureAwait(false);
        process?.Dispose();
        gone.Dispose();
    }

    private async Task BeginAsync(string folder, int memory, CancellationToken cancellation)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        limit.CancelAfter(LongestStart);

        // The thread that starts a process is its parent, and when that thread ends, Linux gives the process the signal for
        // its parent's death. So the thread stays as long as the process.
        new Thread(() => Live(folder, memory)) { IsBackground = true, Name = "notebook" }.Start();
        process = await started.Task.ConfigureAwait(false);
        output = new(process.StandardOutput.BaseStream);
        errors = new(process.StandardError.BaseStream);
        using var begun = CancellationTokenSource.CreateLinkedTokenSource(limit.Token, gone.Token);
        try
        {
            await channel.WaitForConnectionAsync(begun.Token).ConfigureAwait(false);
            switch (await ReadAsync(begun.Token).ConfigureAwait(false))
            {
                case Ready:
                    return;
                case Unable unable:
                    throw new NotebookProcessException(unable.Why);
            }
        }
        catch (Exception e)
            when (e is IOException or ChannelException
                || (e is OperationCanceledException && !cancellation.IsCancellationRequested)
            )
        {
            Debug.WriteLine(e.Message);
        }

        cancellation.ThrowIfCancellationRequested();
        throw new NotebookProcessException(
            exited.Task.IsCompleted
                ? $"Its process did not begin. {await LastWordsAsync().ConfigureAwait(false)}"
                : $"Its process did not begin within {CellLimit.Said(LongestStart)}."
        );
    }

    private void Live(string folder, int memory)
    {
        Process born;
        try
        {
            born = Process.Start(StartInfo(folder, memory))!;
        }
        catch (Exception e) when (e is Win32Exception or InvalidOperationException or IOException)
        {
            started.SetException(e);
            exited.SetResult(0);
            return;
        }

        started.SetResult(born);
        born.WaitForExit();
        exited.SetResult(born.ExitCode);
        Thread.Sleep(LongestRest);
        try
        {
            gone.Cancel();
        }
        catch (ObjectDisposedException)
        {
            // Nobody waits any more.
        }
    }

    private ProcessStartInfo StartInfo(string folder, int memory)
    {
        var (file, before) = ThisProgram.Executable;
        var start = new ProcessStartInfo(file, [.. before, .. NotebookHost.Arguments($"theorykit-{mark}", folder)])
        {
            // Of all folders this one can be trusted to stay.
            WorkingDirectory = AppContext.BaseDirectory,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            CreateNoWindow = true,
        };
        start.Environment[Offspring.Mark] = mark;
        if (
            !start.Environment.Keys.Any(static name =>
                name.StartsWith("DOTNET_GCHeapHardLimit", StringComparison.Ordinal)
            )
        )
        {
            start.Environment["DOTNET_GCHeapHardLimitPercent"] = memory.ToString("X", CultureInfo.InvariantCulture);
        }

        // What is compiled once and run for seconds does not earn back what the runtime spends on watching it.
        start.Environment.TryAdd("DOTNET_TieredPGO", "0");
        return start;
    }

    /// <summary>Ends the process and all that it started.</summary>
    private async Task End()
    {
        if (process is null)
        {
            return;
        }

        if (!exited.Task.IsCompleted)
        {
            try
            {
                process.Kill(entireProcessTree: OperatingSystem.IsWindows());
            }
            catch (Exception e) when (e is InvalidOperationException or Win32Exception)
            {
                Debug.WriteLine(e.Message);
            }
        }

        Offspring.End(process.Id, mark);
        await Task.WhenAny(
                Task.WhenAll(exited.Task, output?.Whole ?? Task.CompletedTask, errors?.Whole ?? Task.CompletedTask),
                Task.Delay(LongestRest)
            )
            .ConfigureAwait(false);
    }
}
