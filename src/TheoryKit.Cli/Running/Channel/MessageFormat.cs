using System.Buffers;
using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace TheoryKit.Cli.Running.Channel;

/// <summary>
/// A message as bytes: the length of what follows as a 32-bit number, a byte for its kind, then its parts. A text is the
/// number of its UTF-16 units and these units as they are, so that half a surrogate pair, which a cell may write, comes
/// through; -1 is no text. Numbers are little-endian.
/// </summary>
internal static class MessageFormat
{
    /// <summary>The longest message, in bytes after its length.</summary>
    public const int Longest = (2 * OutputLimits.CellCharacters) + (1 << 20);

    /// <summary>The bytes of the length itself.</summary>
    public const int Prefix = sizeof(int);

    private enum Kind : byte
    {
        RunCell = 1,
        Leave,
        Ready,
        Unable,
        Wrote,
        Showed,
        Warned,
        LeftOut,
        CellEnded,
    }

    /// <summary>The message with its length before it.</summary>
    /// <exception cref="ChannelException">It is longer than <see cref="Longest"/>.</exception>
    public static ReadOnlyMemory<byte> Bytes(Message message)
    {
        var bytes = new ArrayBufferWriter<byte>();
        Write(bytes, 0);
        switch (message)
        {
            case RunCell cell:
                Write(bytes, Kind.RunCell);
                Write(bytes, cell.Source);
                Write(bytes, cell.Kernel);
                break;
            case Leave:
                Write(bytes, Kind.Leave);
                break;
            case Ready:
                Write(bytes, Kind.Ready);
                break;
            case Unable unable:
                Write(bytes, Kind.Unable);
                Write(bytes, unable.Why);
                break;
            case Wrote wrote:
                Write(bytes, Kind.Wrote);
                Write(bytes, wrote.IsError ? 1 : 0);
                Write(bytes, wrote.Text);
                break;
            case Showed showed:
                Write(bytes, Kind.Showed);
                Write(bytes, showed.IsUpdate ? 1 : 0);
                Write(bytes, showed.Id);
                Write(bytes, showed.Forms.Count);
                foreach (var (type, content) in showed.Forms)
                {
                    Write(bytes, type);
                    Write(bytes, content);
                }

                break;
            case Warned warned:
                Write(bytes, Kind.Warned);
                Write(bytes, warned.Text);
                break;
            case LeftOut left:
                Write(bytes, Kind.LeftOut);
                Write(bytes, left.Characters);
                Write(bytes, left.Outputs);
                break;
            case CellEnded ended:
                Write(bytes, Kind.CellEnded);
                Write(bytes, ended.Error);
                break;
            default:
                throw new NotSupportedException($"A {message.GetType().Name} has no bytes.");
        }

        var length = bytes.WrittenCount - Prefix;
        if (length > Longest)
        {
            throw new ChannelException($"A message of {length} bytes is too long; the longest has {Longest}.");
        }

        MemoryMarshal.TryGetArray(bytes.WrittenMemory, out var array);
        BinaryPrimitives.WriteInt32LittleEndian(array.AsSpan(0, Prefix), length);
        return bytes.WrittenMemory;
    }

    /// <summary>The length of the message that follows.</summary>
    /// <param name="prefix">Its four bytes.</param>
    /// <param name="place">What they are the place of, for the error.</param>
    /// <exception cref="ChannelException">No message is as long.</exception>
    public static int Length(ReadOnlySpan<byte> prefix, string place)
    {
        var length = BinaryPrimitives.ReadInt32LittleEndian(prefix);
        return length is > 0 and <= Longest
            ? length
            : throw new ChannelException($"{place}: a length of {length}; a message has 1 to {Longest} bytes.");
    }

    /// <summary>Reads a message from the bytes after its length.</summary>
    /// <exception cref="ChannelException">They are no message.</exception>
    public static Message Read(ReadOnlySpan<byte> bytes, string place)
    {
        var parts = new Parts(bytes, place);
        Message message = (Kind)parts.Byte() switch
        {
            Kind.RunCell => new RunCell(parts.Text(), parts.Text()),
            Kind.Leave => new Leave(),
            Kind.Ready => new Ready(),
            Kind.Unable => new Unable(parts.Text()),
            Kind.Wrote => ReadWrote(ref parts),
            Kind.Showed => ReadShowed(ref parts),
            Kind.Warned => new Warned(parts.Text()),
            Kind.LeftOut => new LeftOut(parts.Amount(), parts.Amount()),
            Kind.CellEnded => new CellEnded(parts.TextOrNone()),
            _ => throw parts.Wrong("no kind of message", 0),
        };
        parts.End();
        return message;
    }

    private static Wrote ReadWrote(ref Parts parts)
    {
        var isError = parts.Truth();
        return new(parts.Text(), isError);
    }

    private static Showed ReadShowed(ref Parts parts)
    {
        var isUpdate = parts.Truth();
        var id = parts.TextOrNone();
        var forms = ImmutableDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        for (var left = parts.Count(); left > 0; left--)
        {
            var type = parts.Text();
            forms[type] = parts.Text();
        }

        return new(id, isUpdate, forms.ToImmutable());
    }

    private static void Write(ArrayBufferWriter<byte> bytes, Kind kind) => bytes.Write([(byte)kind]);

    private static void Write(ArrayBufferWriter<byte> bytes, int number)
    {
        BinaryPrimitives.WriteInt32LittleEndian(bytes.GetSpan(sizeof(int)), number);
        bytes.Advance(sizeof(int));
    }

    private static void Write(ArrayBufferWriter<byte> bytes, long number)
    {
        BinaryPrimitives.WriteInt64LittleEndian(bytes.GetSpan(sizeof(long)), number);
        bytes.Advance(sizeof(long));
    }

    private static void Write(ArrayBufferWriter<byte> bytes, string? text)
    {
        Write(bytes, text?.Length ?? -1);
        bytes.Write(MemoryMarshal.AsBytes(text.AsSpan()));
    }

    private ref struct Parts(ReadOnlySpan<byte> bytes, string place)
    {
        private readonly ReadOnlySpan<byte> bytes = bytes;
        private int at;

        public byte Byte() => Take(1, "a kind")[0];

        public bool Truth()
        {
            var value = Number();
            return value is 0 or 1 ? value == 1 : throw Wrong($"{value} for yes or no", sizeof(int));
        }

        public int Count()
        {
            var value = Number();
            return value >= 0 ? value : throw Wrong($"{value} for a count", sizeof(int));
        }

        public long Amount()
        {
            var value = BinaryPrimitives.ReadInt64LittleEndian(Take(sizeof(long), "an amount"));
            return value >= 0 ? value : throw Wrong($"{value} for an amount", sizeof(long));
        }

        public string Text() => TextOrNone() ?? throw Wrong("no text where one has to be", sizeof(int));

        public string? TextOrNone()
        {
            var length = Number();
            return length switch
            {
                -1 => null,
                < 0 => throw Wrong($"a text of {length} units", sizeof(int)),
                _ when length > (bytes.Length - at) / sizeof(char) => throw Wrong(
                    $"a text of {length} units, of which {(bytes.Length - at) / sizeof(char)} are there",
                    sizeof(int)
                ),
                _ => new string(MemoryMarshal.Cast<byte, char>(Take(length * sizeof(char), "a text"))),
            };
        }

        public readonly void End()
        {
            if (at != bytes.Length)
            {
                throw Wrong($"{bytes.Length - at} bytes too many", 0);
            }
        }

        /// <summary>The error about what was read last.</summary>
        public readonly ChannelException Wrong(string what, int size) => new($"{place}, byte {at - size}: {what}.");

        private int Number() => BinaryPrimitives.ReadInt32LittleEndian(Take(sizeof(int), "a number"));

        private ReadOnlySpan<byte> Take(int count, string what)
        {
            if (count > bytes.Length - at)
            {
                throw Wrong($"the end, where {what} of {count} bytes has to be", 0);
            }

            at += count;
            return bytes.Slice(at - count, count);
        }
    }
}
