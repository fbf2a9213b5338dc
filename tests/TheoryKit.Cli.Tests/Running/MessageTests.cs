using System.Buffers.Binary;
using System.Collections.Immutable;
using TheoryKit.Cli.Running.Channel;

namespace TheoryKit.Cli.Running;

public sealed class MessageTests
{
    /// <summary>Any UTF-16 units, halves of surrogate pairs among them.</summary>
    private static readonly Gen<string> Text = Gen.Char.Array[0, 40].Select(static units => new string(units));

    private static readonly Gen<string?> TextOrNone = Gen.Frequency(
        (4, Text.Select(static text => (string?)text)),
        (1, Gen.Const((string?)null))
    );

    private static readonly Gen<Message> Any = Gen.OneOf(
        Gen.Select(Text, Text).Select(static m => (Message)new RunCell(m.Item1, m.Item2)),
        Gen.Const((Message)new Leave()),
        Gen.Const((Message)new Ready()),
        Text.Select(static m => (Message)new Unable(m)),
        Gen.Select(Text, Gen.Bool).Select(static m => (Message)new Wrote(m.Item1, m.Item2)),
        Gen.Select(TextOrNone, Gen.Bool, Gen.Dictionary(Text, Text)[0, 4])
            .Select(static m => (Message)new Showed(m.Item1, m.Item2, m.Item3.ToImmutableDictionary())),
        Text.Select(static m => (Message)new Warned(m)),
        Gen.Select(Gen.Long[0, long.MaxValue], Gen.Long[0, long.MaxValue])
            .Select(static m => (Message)new LeftOut(m.Item1, m.Item2)),
        TextOrNone.Select(static m => (Message)new CellEnded(m))
    );

    [Fact]
    public void What_is_sent_is_what_comes_however_it_is_cut_into_pieces() =>
        Gen.Select(Any.Array[0, 12], Gen.Int[1, 50])
            .Sample(
                static (messages, piece) =>
                {
                    var (read, error) = ReadAll(Bytes(messages), piece);
                    Assert.Null(error);
                    Assert.Equal(messages.Select(Told), read.Select(Told));
                },
                iter: 1_000
            );

    [Fact]
    public void Any_bytes_are_messages_or_an_error_that_says_where() =>
        Gen.Select(Gen.Byte.Array[0, 60], Any.Array[0, 4], Gen.Select(Gen.Int[0, 400], Gen.Byte).Array[0, 6], Gen.Bool)
            .Sample(
                static (noise, messages, changes, isNoise) =>
                {
                    var bytes = isNoise ? noise : Bytes(messages);
                    foreach (var (place, value) in changes.Where(change => change.Item1 < bytes.Length))
                    {
                        bytes[place] = value;
                    }

                    var (_, error) = ReadAll(bytes, 7);
                    Assert.True(error?.StartsWith("Message ", StringComparison.Ordinal) ?? true, error);
                },
                iter: 20_000
            );

    [Fact]
    public void A_stream_that_is_cut_off_gives_the_messages_before_and_an_error() =>
        Gen.Select(Any.Array[1, 6], Gen.Double[0, 0.999])
            .Sample(
                static (messages, part) =>
                {
                    var bytes = Bytes(messages);
                    var cut = (int)(bytes.Length * part);
                    var (read, error) = ReadAll(bytes[..cut], 16);
                    var whole = 0;
                    var length = 0;
                    while (length + MessageFormat.Bytes(messages[whole]).Length <= cut)
                    {
                        length += MessageFormat.Bytes(messages[whole++]).Length;
                    }

                    Assert.Equal(messages.Take(whole).Select(Told), read.Select(Told));
                    Assert.Equal(length == cut, error is null);
                    Assert.True(
                        error is null
                            || error.StartsWith($"Message {whole + 1}: the end after", StringComparison.Ordinal),
                        error
                    );
                },
                iter: 1_000
            );

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(int.MinValue)]
    [InlineData(int.MaxValue)]
    [InlineData(MessageFormat.Longest + 1)]
    public void A_length_that_no_message_has_is_refused_before_anything_is_read(int length)
    {
        var bytes = new byte[5];
        BinaryPrimitives.WriteInt32LittleEndian(bytes, length);
        Assert.Equal(
            $"Message 1: a length of {length}; a message has 1 to {MessageFormat.Longest} bytes.",
            ReadAll(bytes, 5).Error
        );
    }

    [Theory]
    [InlineData(new byte[] { 1, 0, 0, 0, 99 }, "Message 1, byte 1: no kind of message.")]
    [InlineData(new byte[] { 2, 0, 0, 0, 2, 0 }, "Message 1, byte 1: 1 bytes too many.")]
    [InlineData(new byte[] { 5, 0, 0, 0, 7, 255, 255, 255, 255 }, "Message 1, byte 1: no text where one has to be.")]
    [InlineData(new byte[] { 5, 0, 0, 0, 7, 254, 255, 255, 255 }, "Message 1, byte 1: a text of -2 units.")]
    [InlineData(
        new byte[] { 7, 0, 0, 0, 7, 2, 0, 0, 0, 65, 0 },
        "Message 1, byte 1: a text of 2 units, of which 1 are there."
    )]
    public void An_error_says_which_message_and_which_byte(byte[] bytes, string error) =>
        Assert.Equal(error, ReadAll(bytes, 3).Error);

    [Fact]
    public void A_message_that_is_too_long_is_not_sent() =>
        Assert.Throws<ChannelException>(static () =>
            MessageFormat.Bytes(new RunCell(new string('x', MessageFormat.Longest / 2), "csharp"))
        );

    [Fact]
    public void The_longest_output_of_a_cell_can_be_sent()
    {
        var forms = ImmutableDictionary<string, string>.Empty.Add(
            "text/html",
            new string('x', OutputLimits.CellCharacters)
        );
        var (read, error) = ReadAll(Bytes([new Showed("a", false, forms)]), 1 << 20);
        Assert.Null(error);
        Assert.Equal(OutputLimits.CellCharacters, ((Showed)Assert.Single(read)).Forms["text/html"].Length);
    }

    /// <summary>A record with a dictionary is equal only to itself.</summary>
    private static string Told(Message message) =>
        message is Showed showed
            ? $"{showed.Id ?? "none"} {showed.IsUpdate} {string.Join(", ", showed.Forms.OrderBy(static f => f.Key, StringComparer.Ordinal))}"
            : message.ToString();

    private static byte[] Bytes(IEnumerable<Message> messages) =>
        [.. messages.SelectMany(static message => MessageFormat.Bytes(message).ToArray())];

    private static (List<Message> Read, string? Error) ReadAll(byte[] bytes, int piece)
    {
        using var stream = new Pieces(bytes, piece);
        var reader = new MessageReader(stream);
        var read = new List<Message>();
        try
        {
            while (reader.ReadAsync().AsTask().GetAwaiter().GetResult() is { } message)
            {
                read.Add(message);
            }

            return (read, null);
        }
        catch (ChannelException e)
        {
            return (read, e.Message);
        }
    }

    /// <summary>Gives no more than so many bytes at a time.</summary>
    private sealed class Pieces(byte[] bytes, int piece) : MemoryStream(bytes)
    {
        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) =>
            base.ReadAsync(buffer[..Math.Min(piece, buffer.Length)], cancellationToken);
    }
}
