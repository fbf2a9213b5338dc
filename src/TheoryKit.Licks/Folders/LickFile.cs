using System.Buffers;
using System.Security.Cryptography;
using System.Text;
using TheoryKit.Licks.Search;
using TheoryKit.Licks.Tab.Reading;
using TheoryKit.Values;

namespace TheoryKit.Licks.Folders;

/// <summary>A file of a lick folder as it was read or written: what it is found to be, and how to tell whether it has changed since.</summary>
internal sealed class LickFile
{
    private const string Temporary = ".saving";
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private LickFile(string name, byte[] hash, FileSystemInfo info)
    {
        Name = name;
        Hash = hash;
        (Length, Written) = Looks(info);
    }

    /// <summary>The name of the file.</summary>
    public string Name { get; }

    /// <summary>The lick; null if the file is broken.</summary>
    public KeptLick? Kept { get; private init; }

    /// <summary>What is wrong with it; null if nothing.</summary>
    public BrokenLick? Broken { get; private init; }

    /// <summary>The line that its name stands in.</summary>
    public int? NameLine { get; private init; }

    private byte[] Hash { get; }

    private long Length { get; }

    private DateTime Written { get; }

    // How the file was laid out, so that it is written back like that.
    private bool HasMark { get; init; }

    private string LineEnd { get; init; } = "\n";

    /// <summary>Reads a file; null if there is none.</summary>
    /// <remarks>
    /// Whether something is a file is told from outside, since opening a pipe waits for someone to write, and opening a device may set it
    /// going. The one thing that .NET says of them on every system is their length, which is 0; so nothing of that length is opened.
    /// </remarks>
    public static LickFile? Read(FileSystemInfo entry)
    {
        var name = entry.Name;
        try
        {
            if (!entry.Exists)
            {
                return null;
            }

            if (Followed(entry) is not { } end)
            {
                return Wrong(entry, new(name, LickFault.DeadLink) { Other = entry.LinkTarget });
            }

            if (end is not FileInfo info)
            {
                return Wrong(entry, new(name, LickFault.Folder));
            }

            if (info.Length == 0)
            {
                return Wrong(info, new(name, LickFault.NoBytes));
            }

            if (info.Length > LickFolder.MaxFileBytes)
            {
                return Wrong(info, new(name, LickFault.TooLong) { Bytes = info.Length });
            }

            using var stream = new FileStream(
                info.FullName,
                FileMode.Open,
                FileAccess.Read,
                FileShare.ReadWrite | FileShare.Delete,
                bufferSize: 0
            );
            if (!stream.CanSeek)
            {
                return Wrong(info, new(name, LickFault.NoFile));
            }

            if (stream.Length > LickFolder.MaxFileBytes)
            {
                // It has grown since.
                return Wrong(info, new(name, LickFault.TooLong) { Bytes = stream.Length });
            }

            var bytes = new byte[stream.Length];
            bytes = bytes[..stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false)];
            return Read(name, bytes, info);
        }
        catch (Exception exception) when (exception is FileNotFoundException or DirectoryNotFoundException)
        {
            return null;
        }
        catch (UnauthorizedAccessException)
        {
            return Wrong(entry, new(name, LickFault.Denied));
        }
        catch (IOException exception)
        {
            return Wrong(entry, new(name, LickFault.Unopened) { Detail = exception.Message });
        }

        static LickFile Wrong(FileSystemInfo info, BrokenLick broken) =>
            new(broken.File, SHA256.HashData([]), info) { Broken = broken };
    }

    /// <summary>Whether it looks, from outside, as it did when it was read.</summary>
    public bool LooksLike(FileSystemInfo entry)
    {
        try
        {
            return Followed(entry) is { } end && Looks(end) == (Length, Written);
        }
        catch (UnauthorizedAccessException)
        {
            return false;
        }
    }

    /// <summary>Whether both have the same bytes.</summary>
    public bool IsSameAs(LickFile other) => Hash.AsSpan().SequenceEqual(other.Hash);

    /// <summary>
    /// Writes a lick's file, whole or not at all: into a temporary file of the folder, out to the disk, and from there over the file.
    /// </summary>
    /// <param name="folder">The folder.</param>
    /// <param name="file">The name of the file.</param>
    /// <param name="lick">The lick.</param>
    /// <param name="before">The file that is written over; null for a new one.</param>
    /// <exception cref="ArgumentException">The lick's text does not read back to it.</exception>
    public static LickFile Write(string folder, string file, Lick lick, LickFile? before)
    {
        var bytes = BytesOf(lick, file, before);
        var place = new FileInfo(System.IO.Path.Combine(folder, file));

        // Behind a link the file itself is written, beside which the temporary one has to be: a move is one step inside one file system only.
        var target = before is not null && Followed(place) is FileInfo followed ? followed : place;
        if (before is null || !before.Hash.AsSpan().SequenceEqual(SHA256.HashData(bytes)))
        {
            var temporary = System.IO.Path.Combine(target.DirectoryName!, $".{Guid.NewGuid():N}{Temporary}");
            try
            {
                using (var stream = new FileStream(temporary, FileMode.CreateNew, FileAccess.Write, FileShare.None))
                {
                    stream.Write(bytes);
                    stream.Flush(flushToDisk: true);
                }

                if (before is not null && !OperatingSystem.IsWindows())
                {
                    File.SetUnixFileMode(temporary, File.GetUnixFileMode(target.FullName));
                }

                // A new file is never put over one, whatever the system takes for the same name.
                File.Move(temporary, target.FullName, overwrite: before is not null);
            }
            catch
            {
                File.Delete(temporary);
                throw;
            }
        }

        target.Refresh();
        return Read(file, bytes, target);
    }

    /// <summary>Whether a file is what a save that was killed has left.</summary>
    public static bool IsLeftOver(string file) =>
        file.Length == 33 + Temporary.Length
        && file[0] == '.'
        && file.EndsWith(Temporary, StringComparison.Ordinal)
        && Guid.TryParseExact(file.AsSpan(1, 32), "N", out _);

    private static LickFile Read(string name, byte[] bytes, FileInfo info)
    {
        var hash = SHA256.HashData(bytes);
        var hasMark = bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble);
        var content = bytes.AsSpan(hasMark ? 3 : 0);
        string text;
        try
        {
            text = Utf8.GetString(content);
        }
        catch (DecoderFallbackException)
        {
            return NoText(LickFault.NotUtf8, content, FirstBroken(content));
        }

        if (content.IndexOf((byte)0) is var zero and >= 0)
        {
            return NoText(LickFault.NotText, content, zero);
        }

        // The reader of licks knows one kind of line end; a file with another one, all through, gets it back.
        var lineEnd =
            text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n"
            : text.Contains('\n') || !text.Contains('\r') ? "\n"
            : "\r";
        text = lineEnd == "\n" ? text : text.Replace(lineEnd, "\n", StringComparison.Ordinal);
        if (string.IsNullOrWhiteSpace(text))
        {
            return Wrong(new(name, LickFault.Blank));
        }

        try
        {
            var lick = Lick.Read(text, NameOf(name), null, out var remarks);
            return new(name, hash, info)
            {
                Kept = new()
                {
                    Lick = lick,
                    File = name,
                    Remarks = remarks,
                },
                NameLine = NameLineOf(text),
                HasMark = hasMark,
                LineEnd = lineEnd,
            };
        }
        catch (PlacedFormatException exception)
        {
            return Wrong(new(name, LickFault.Text, exception.Line) { Detail = exception.Message });
        }
        catch (Exception exception)
            when (exception is ArgumentException or ArithmeticException or InvalidOperationException)
        {
            // No reader should; but one file must not hide the others.
            return Wrong(new(name, LickFault.Text) { Detail = $"it can't be read: {exception.Message}" });
        }

        LickFile NoText(LickFault fault, ReadOnlySpan<byte> content, int at) =>
            Wrong(
                new(name, fault, 1 + content[..at].Count((byte)'\n'))
                {
                    // Counted as an editor of bytes does, the mark too.
                    Byte = at + 1 + bytes.Length - content.Length,
                }
            );

        LickFile Wrong(BrokenLick broken) => new(name, hash, info) { Broken = broken };
    }

    /// <summary>Where the first bytes stand that are not UTF-8, from 0.</summary>
    private static int FirstBroken(ReadOnlySpan<byte> content)
    {
        var at = 0;
        while (Rune.DecodeFromUtf8(content[at..], out _, out var length) == OperationStatus.Done)
        {
            at += length;
        }

        return at;
    }

    /// <summary>What an entry of the folder is, at the end of its links; null where they lead nowhere.</summary>
    /// <exception cref="UnauthorizedAccessException">The links may not be followed.</exception>
    private static FileSystemInfo? Followed(FileSystemInfo entry)
    {
        try
        {
            // Of the files that are no links some systems mark others too: those kept elsewhere until they are asked for.
            var isLink = entry.Attributes.HasFlag(FileAttributes.ReparsePoint) && entry.LinkTarget is not null;
            var end = isLink ? entry.ResolveLinkTarget(returnFinalTarget: true) : entry;
            return end is { Exists: true } ? end : null;
        }
        catch (IOException)
        {
            return null; // round in a circle
        }
    }

    private static (long Length, DateTime Written) Looks(FileSystemInfo info) =>
        info.Exists && info is FileInfo file ? (file.Length, file.LastWriteTimeUtc) : default;

    /// <summary>The name of a lick whose file has no header for it: the file's own.</summary>
    private static string NameOf(string file)
    {
        var stem = LickFileName.StemOfFile(file).Trim();
        return stem.Length > 0 && LickText.IsLine(stem) ? stem : "lick";
    }

    private static int? NameLineOf(string text)
    {
        var number = 0;
        foreach (var line in text.AsSpan().EnumerateLines())
        {
            number++;
            var colon = line.IndexOf(':');
            if (colon < 0)
            {
                return null;
            }

            if (line[..colon].Trim().Equals("name", StringComparison.OrdinalIgnoreCase))
            {
                return number;
            }
        }

        return null;
    }

    private static byte[] BytesOf(Lick lick, string file, LickFile? before)
    {
        // A lick that has its name from its file needs none in it.
        var text = lick.Write(NameOf(file));
        var read = TryRead(text, file);
        if (read is null || !read.Equals(lick))
        {
            throw new ArgumentException(
                $"The lick \"{lick.Name}\" can't be kept as text: what would be written reads as another lick.",
                nameof(lick)
            );
        }

        text = before is null ? text : text.Replace("\n", before.LineEnd, StringComparison.Ordinal);
        var bytes = Utf8.GetBytes(text);
        bytes = before is { HasMark: true } ? [.. Encoding.UTF8.Preamble, .. bytes] : bytes;
        return bytes.Length <= LickFolder.MaxFileBytes
            ? bytes
            : throw new ArgumentException(
                $"The lick \"{lick.Name}\" takes {bytes.Length} bytes; at most {LickFolder.MaxFileBytes} are kept.",
                nameof(lick)
            );
    }

    private static Lick? TryRead(string text, string file)
    {
        try
        {
            return Lick.Read(text, NameOf(file), null);
        }
        catch (PlacedFormatException)
        {
            return null;
        }
    }
}
