namespace TheoryKit.Cli.Running.Channel;

/// <summary>Reads messages from a stream, one after the other.</summary>
internal sealed class MessageReader(Stream stream)
{
    private byte[] buffer = new byte[1 << 16];
    private int start;
    private int end;
    private long message;

    /// <summary>The next message, or null where the stream ends after the last one.</summary>
    /// <exception cref="ChannelException">What follows is no message.</exception>
    public async ValueTask<Message?> ReadAsync(CancellationToken cancellation = default)
    {
        // A stream that always has something would never look at it.
        cancellation.ThrowIfCancellationRequested();
        message++;
        var place = $"Message {message}";
        if (!await Fill(MessageFormat.Prefix, cancellation).ConfigureAwait(false))
        {
            return end == start
                ? null
                : throw new ChannelException(
                    $"{place}: the end after {end - start} of the {MessageFormat.Prefix} bytes of its length."
                );
        }

        var length = MessageFormat.Length(buffer.AsSpan(start, MessageFormat.Prefix), place);
        if (!await Fill(MessageFormat.Prefix + length, cancellation).ConfigureAwait(false))
        {
            throw new ChannelException(
                $"{place}: the end after {end - start - MessageFormat.Prefix} of its {length} bytes."
            );
        }

        var read = MessageFormat.Read(buffer.AsSpan(start + MessageFormat.Prefix, length), place);
        start += MessageFormat.Prefix + length;
        return read;
    }

    /// <summary>Reads until the buffer holds so many bytes.</summary>
    /// <returns>Whether there are as many.</returns>
    private async ValueTask<bool> Fill(int wanted, CancellationToken cancellation)
    {
        while (end - start < wanted)
        {
            if (buffer.Length - start < wanted)
            {
                var room = wanted > buffer.Length ? new byte[wanted] : buffer;
                Buffer.BlockCopy(buffer, start, room, 0, end - start);
                (buffer, start, end) = (room, 0, end - start);
            }

            var got = await stream.ReadAsync(buffer.AsMemory(end), cancellation).ConfigureAwait(false);
            if (got == 0)
            {
                return false;
            }

            end += got;
        }

        return true;
    }
}
