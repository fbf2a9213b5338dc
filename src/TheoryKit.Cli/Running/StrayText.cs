using System.Text;

namespace TheoryKit.Cli.Running;

/// <summary>
/// Reads what a process writes on one of its outputs, so that it never waits for a reader. The first of it is kept: the
/// runtime names an error first and then lists its calls.
/// </summary>
internal sealed class StrayText
{
    private const int Kept = 4_000;

    private readonly byte[] start = new byte[Kept];
    private int filled;
    private long bytes;

    public StrayText(Stream stream) => Whole = Task.Run(() => Read(stream));

    /// <summary>Ends with the stream.</summary>
    public Task Whole { get; }

    /// <summary>How much was written so far.</summary>
    public long Bytes => Interlocked.Read(ref bytes);

    /// <summary>How it begins. What is no text is shown as such, and control characters other than ends of lines are not.</summary>
    public string Text
    {
        get
        {
            lock (start)
            {
                var text = Encoding.UTF8.GetString(start, 0, filled);
                return string.Concat(text.Where(static c => c == '\n' || !char.IsControl(c)))
                    + (Bytes > filled ? " ..." : "");
            }
        }
    }

    private async Task Read(Stream stream)
    {
        var buffer = new byte[1 << 16];
        try
        {
            while (await stream.ReadAsync(buffer).ConfigureAwait(false) is > 0 and var got)
            {
                Interlocked.Add(ref bytes, got);
                lock (start)
                {
                    var more = Math.Min(got, Kept - filled);
                    buffer.AsSpan(0, more).CopyTo(start.AsSpan(filled));
                    filled += more;
                }
            }
        }
        catch (Exception e) when (e is IOException or ObjectDisposedException)
        {
            // The process has been given up.
            System.Diagnostics.Debug.WriteLine(e.Message);
        }
    }
}
