using System.Collections.Concurrent;
using System.Diagnostics;
using System.IO.Pipes;
using TheoryKit.Cli.Answers;
using TheoryKit.Cli.Running.Channel;
using TheoryKit.Cli.Running.Processes;

namespace TheoryKit.Cli.Running.Inside;

/// <summary>The process of a notebook: runs the cells that the printing process sends, and tells it what they show.</summary>
internal static class NotebookHost
{
    /// <summary>The first word of the command line that makes this program the process of a notebook.</summary>
    public const string Command = "run-cells";

    /// <summary>The command line.</summary>
    public static string[] Arguments(string pipe, string folder) => [Command, pipe, folder];

    /// <summary>Serves the printing process at the other end of a pipe; ends this process.</summary>
    /// <param name="pipe">The pipe's name.</param>
    /// <param name="folder">The notebook's folder, which becomes the current one.</param>
    public static async Task<int> RunAsync(string pipe, string folder)
    {
        ProcessGroup.Found();
        var channel = new NamedPipeClientStream(".", pipe, PipeDirection.InOut, PipeOptions.Asynchronous);
        await using var _ = channel.ConfigureAwait(false);
        try
        {
            await channel.ConnectAsync(10_000).ConfigureAwait(false);
        }
        catch (Exception e) when (e is TimeoutException or IOException or UnauthorizedAccessException)
        {
            await Console.Error.WriteLineAsync($"{Command} is for the print command alone.").ConfigureAwait(false);
            return ExitStatus.BadRequest;
        }

        var sending = new Lock();
        var received = new BlockingCollection<Message>();
        new Thread(() => Receive(channel, received)) { IsBackground = true }.Start();
        try
        {
            Environment.CurrentDirectory = folder;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Send(new Unable($"The folder {folder} can't be entered: {e.Message}"));
            return 0;
        }

        using var kernel = new NotebookKernel(Send);
        Send(new Ready());
        foreach (var message in received.GetConsumingEnumerable())
        {
            if (message is not RunCell cell)
            {
                break;
            }

            var error = await kernel.RunAsync(cell).ConfigureAwait(false);
            Send(new CellEnded(error is null ? null : OutputLimits.Error(error)));
        }

        // Not back to Main: threads that cells have left behind would keep the process alive.
        kernel.Dispose();
        Environment.Exit(0);
        return 0;

        void Send(Message message)
        {
            try
            {
                lock (sending)
                {
                    channel.Write(MessageFormat.Bytes(message).Span);
                }
            }
            catch (Exception e) when (e is IOException or ObjectDisposedException)
            {
                ProcessGroup.End();
            }
        }
    }

    /// <summary>Reads what the printing process says. When that process is gone, this one has nothing left to do.</summary>
    private static void Receive(Stream channel, BlockingCollection<Message> received)
    {
        var reader = new MessageReader(channel);
        try
        {
            while (reader.ReadAsync().AsTask().GetAwaiter().GetResult() is { } message)
            {
                received.Add(message);
                if (message is Leave)
                {
                    return;
                }
            }
        }
        catch (Exception e) when (e is IOException or ObjectDisposedException or ChannelException)
        {
            Debug.WriteLine(e.Message);
        }

        ProcessGroup.End();
    }
}
