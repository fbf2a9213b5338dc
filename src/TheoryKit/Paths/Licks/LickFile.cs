using System.Security.Cryptography;
using System.Text;
using TheoryKit.Theory;

namespace TheoryKit.Paths;

/// <summary>A file of a lick folder as it was read or written: what it is found to be, and how to tell whether it has changed since.</summary>
internal sealed class LickFile
{
    private const string Temporary = ".saving";
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private LickFile(string name, byte[] hash, FileInfo info)
    {
        Name = name;
        Hash = hash;
        (Length, Written) = info.Exists ? (info.Length, info.LastWriteTimeUtc) : default;
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

    private bool HasReturns { get; init; }

    /// <summary>The bytes of a lick's file, and the lick as they read.</summary>
    private sealed record Content(Lick Lick, byte[] Bytes);

    /// <summary>Reads a file; null if there is none.</summary>
    public static LickFile? Read(FileInfo info)
    {
        var name = info.Name;
        try
        {
            if (info.Attributes.HasFlag(FileAttributes.ReparsePoint) && info.LinkTarget is not null)
            {
                return Wrong([], "it is a link; put the file itself here");
            }

            if (info.Length > LickFolder.MaxFileBytes)
            {
                return Wrong([], $"it has {info.Length} bytes; a lick has at most {LickFolder.MaxFileBytes}");
            }

            using var stream = new FileStream(
                info.FullName,
                FileMode.Open,
                FileAccess.Read,
                FileShare.ReadWrite | FileShare.Delete,
                bufferSize: 0
            );
            var bytes = new byte[Math.Min(stream.Length, LickFolder.MaxFileBytes + 1)];
            bytes = bytes[..stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false)];
            return Read(name, bytes, info);
        }
        catch (Exception exception) when (exception is FileNotFoundException or DirectoryNotFoundException)
        {
            return null;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return Wrong([], $"it can't be opened: {exception.Message}");
        }

        LickFile Wrong(byte[] bytes, string problem) =>
            new(name, SHA256.HashData(bytes), info) { Broken = new(name, problem) };
    }

    /// <summary>Whether it looks, from outside, as it did when it was read.</summary>
    public bool LooksLike(FileInfo info) => info.Exists && info.Length == Length && info.LastWriteTimeUtc == Written;

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
        var target = new FileInfo(System.IO.Path.Combine(folder, file));
        if (before is null || !before.Hash.AsSpan().SequenceEqual(SHA256.HashData(bytes)))
        {
            var temporary = System.IO.Path.Combine(folder, $".{Guid.NewGuid():N}{Temporary}");
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

                File.Move(temporary, target.FullName, overwrite: true);
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
        if (bytes.Length > LickFolder.MaxFileBytes)
        {
            return Wrong($"it has more than {LickFolder.MaxFileBytes} bytes");
        }

        var hasMark = bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble);
        var content = bytes.AsSpan(hasMark ? 3 : 0);
        string text;
        try
        {
            text = Utf8.GetString(content);
        }
        catch (DecoderFallbackException exception)
        {
            var line = 1 + content[..Math.Max(0, exception.Index)].Count((byte)'\n');
            return Wrong($"it is not UTF-8 text, first at byte {exception.Index + (hasMark ? 4 : 1)}", line);
        }

        // The reader of licks knows one kind of line end; a file with the other one, all through, gets it back.
        var hasReturns = text.Contains("\r\n", StringComparison.Ordinal);
        text = hasReturns ? text.Replace("\r\n", "\n", StringComparison.Ordinal) : text;
        if (string.IsNullOrWhiteSpace(text))
        {
            return Wrong("it is empty");
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
                HasReturns = hasReturns,
            };
        }
        catch (PlacedFormatException exception)
        {
            return Wrong(exception.Message, exception.Line);
        }
        catch (Exception exception)
            when (exception is ArgumentException or ArithmeticException or InvalidOperationException)
        {
            // No reader should; but one file must not hide the others.
            return Wrong($"it can't be read: {exception.Message}");
        }

        LickFile Wrong(string problem, int? line = null) => new(name, hash, info) { Broken = new(name, problem, line) };
    }

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

        text = before is { HasReturns: true } ? text.Replace("\n", "\r\n", StringComparison.Ordinal) : text;
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
