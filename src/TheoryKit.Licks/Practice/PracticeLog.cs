using System.Buffers;
using System.Globalization;
using System.Text;
using TheoryKit.Values;

namespace TheoryKit.Licks.Practice;

/// <summary>
/// The file of a practice log: plain text, a line for each time that a lick was practised, only ever added to; made to lie beside the folder
/// of licks and under version control. This is its place, not what it says: see <see cref="Read"/>. Equal when the places are.
/// </summary>
/// <remarks>
/// A line is added in one write, at the end, with the file locked against other programs of this library, and has reached the disk when
/// the method returns. A file that ends in the middle of a line, because something was stopped there, keeps that piece on a line of
/// its own. Nothing that stands in the file is ever rewritten. A line with bytes that are not UTF-8 is one of those that are not
/// understood: which characters were meant is not guessed at. A file of more than <see cref="MaxFileBytes"/> bytes is not read, a pipe or a device
/// neither read nor written. In a repository
/// the line <c>practice.log merge=union</c> of the file <c>.gitattributes</c> joins what was logged in two places.
/// </remarks>
[EqualBy(nameof(Path))]
public sealed partial class PracticeLog : IEquatable<PracticeLog>
{
    /// <summary>
    /// The longest file in bytes that is read: 16,777,216. Chosen: at twenty lines of forty bytes a day it lasts for fifty years.
    /// </summary>
    public const int MaxFileBytes = 1 << 24;

    private const string Expected = "A practice log is a plain file, such as practice.log.";

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private PracticeLog(string path) => Path = path;

    /// <summary>The file's full path.</summary>
    public string Path { get; }

    /// <summary>The log in a file, which need not be there yet.</summary>
    /// <param name="path">The file, such as <c>practice.log</c>.</param>
    /// <exception cref="ArgumentException">The path is empty or that of a folder.</exception>
    public static PracticeLog Open(string path)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        var full = System.IO.Path.GetFullPath(path);
        return Directory.Exists(full)
            ? throw new ArgumentException(
                $"{path} is a folder; a practice log is a file, such as {System.IO.Path.Combine(path, "practice.log")}.",
                nameof(path)
            )
            : new(full);
    }

    /// <summary>What the log says now; nothing if there is no file, or nothing in it.</summary>
    /// <exception cref="IOException">The file can't be read, or has more than <see cref="MaxFileBytes"/> bytes.</exception>
    public PracticeHistory Read()
    {
        // From outside: a pipe would keep us waiting, a device might never end. Both have a length of 0, see LickFile.
        var info = new FileInfo(Path);
        info = info.Exists ? info.ResolveLinkTarget(returnFinalTarget: true) as FileInfo ?? info : info;
        if (!info.Exists || info.Length == 0)
        {
            return PracticeHistory.Empty;
        }

        Check(info.Length);
        using var stream = Locked(FileMode.Open, FileAccess.Read, FileShare.Read);
        if (stream is null)
        {
            return PracticeHistory.Empty;
        }

        Check(stream);
        Check(stream.Length);
        var bytes = new byte[stream.Length];
        return PracticeHistory.Read(
            Decode(bytes.AsSpan(..stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false)))
        );
    }

    /// <summary>Adds an entry at the end.</summary>
    /// <exception cref="IOException">The file can't be written.</exception>
    public void Add(Practised entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        Append(entry.ToString());
    }

    /// <summary>Adds an entry at the end: a lick as practised on a day.</summary>
    /// <exception cref="IOException">The file can't be written.</exception>
    public void Add(DateOnly date, Lick lick, Outcome outcome, double? tempo = null, string note = "")
    {
        ArgumentNullException.ThrowIfNull(lick);
        Add(
            new Practised
            {
                Date = date,
                Lick = lick.Name,
                Outcome = outcome,
                Tempo = tempo,
                Note = note,
            }
        );
    }

    /// <summary>Adds that a lick has a new name.</summary>
    /// <exception cref="IOException">The file can't be written.</exception>
    public void Add(LickRenamed renamed)
    {
        ArgumentNullException.ThrowIfNull(renamed);
        Append(renamed.ToString());
    }

    /// <summary>What to practise on a day, by what the log says now.</summary>
    /// <inheritdoc cref="PracticeHistory.Due"/>
    /// <exception cref="IOException">The file can't be read.</exception>
    public PracticeDay Due(DateOnly today, IEnumerable<Lick> licks, PracticeOptions? options = null) =>
        Read().Due(today, licks, options);

    /// <summary>The path.</summary>
    public override string ToString() => Path;

    private void Append(string line)
    {
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(Path)!);
        using var stream = Locked(FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None)!;
        Check(stream);
        var isEnded = true;
        if (stream.Length > 0)
        {
            stream.Seek(-1, SeekOrigin.End);
            isEnded = stream.ReadByte() == '\n';
        }

        var before = stream.Seek(0, SeekOrigin.End);
        var bytes = Encoding.UTF8.GetBytes($"{(isEnded ? "" : "\n")}{line}\n");
        if (before + bytes.Length > MaxFileBytes)
        {
            throw new IOException(
                $"{Path} is full: a log has at most {Number(MaxFileBytes)} bytes. Begin another, or put old years into one of their own."
            );
        }

        stream.Write(bytes);
        stream.Flush(flushToDisk: true);
        if (stream.Length < before + bytes.Length)
        {
            throw new IOException($"{Path} keeps nothing: it is a device. {Expected}");
        }
    }

    /// <summary>A log's text; for each byte that is not UTF-8 half a character, which no text has, so that its line is told of.</summary>
    internal static string Decode(ReadOnlySpan<byte> bytes)
    {
        try
        {
            return Utf8.GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            var text = new StringBuilder(bytes.Length);
            while (!bytes.IsEmpty)
            {
                if (Rune.DecodeFromUtf8(bytes, out var rune, out var length) == OperationStatus.Done)
                {
                    text.Append(rune);
                    bytes = bytes[length..];
                }
                else
                {
                    text.Append((char)('\uDC00' + bytes[0]));
                    bytes = bytes[1..];
                }
            }

            return text.ToString();
        }
    }

    private void Check(FileStream stream)
    {
        if (!stream.CanSeek)
        {
            throw new IOException($"{Path} is a pipe or a device. {Expected}");
        }
    }

    private void Check(long length)
    {
        if (length > MaxFileBytes)
        {
            throw new IOException(
                $"{Path} has {Number(length)} bytes; a log of which all is read has at most {Number(MaxFileBytes)}. Put old years into one of their own."
            );
        }
    }

    private static string Number(long number) => number.ToString("N0", CultureInfo.InvariantCulture);

    /// <summary>The file, waited for while another has it; null if it is to be there and is not.</summary>
    private FileStream? Locked(FileMode mode, FileAccess access, FileShare share)
    {
        var waited = System.Diagnostics.Stopwatch.StartNew();
        for (var pause = 1; ; pause = Math.Min(2 * pause, 50))
        {
            try
            {
                // No buffer of our own: one write is one write.
                return new(Path, mode, access, share, bufferSize: 0);
            }
            catch (Exception exception) when (exception is FileNotFoundException or DirectoryNotFoundException)
            {
                return null;
            }
            catch (IOException) when (File.Exists(Path) && waited.Elapsed < Patience)
            {
                Thread.Sleep(pause);
            }
        }
    }
}
