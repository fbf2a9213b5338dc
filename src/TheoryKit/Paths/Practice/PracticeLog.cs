using System.Text;

namespace TheoryKit.Paths;

/// <summary>
/// The file of a practice log: plain text, a line for each time that a lick was practised, only ever added to; made to lie beside the folder
/// of licks and under version control. This is its place, not what it says: see <see cref="Read"/>. Equal when the places are.
/// </summary>
/// <remarks>
/// A line is added in one write, at the end, with the file locked against other programs of this library, and has reached the disk when
/// the method returns. A file that ends in the middle of a line, because something was stopped there, keeps that piece on a line of
/// its own. Nothing that stands in the file is ever rewritten. In a repository the line
/// <c>practice.log merge=union</c> of the file <c>.gitattributes</c> joins what was logged in two places.
/// </remarks>
public sealed class PracticeLog : IEquatable<PracticeLog>
{
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

    /// <summary>What the log says now; nothing if there is no file.</summary>
    /// <exception cref="IOException">The file can't be read.</exception>
    public PracticeHistory Read()
    {
        using var stream = Locked(FileMode.Open, FileAccess.Read, FileShare.Read);
        if (stream is null)
        {
            return PracticeHistory.Empty;
        }

        using var reader = new StreamReader(stream, Encoding.UTF8);
        return PracticeHistory.Read(reader.ReadToEnd());
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
    public PracticeDay Due(DateOnly today, IEnumerable<Lick> licks, PracticeOptions? options = null) =>
        Read().Due(today, licks, options);

    /// <inheritdoc/>
    public bool Equals(PracticeLog? other) => other is not null && Path == other.Path;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as PracticeLog);

    /// <inheritdoc/>
    public override int GetHashCode() => Path.GetHashCode(StringComparison.Ordinal);

    /// <summary>The path.</summary>
    public override string ToString() => Path;

    private void Append(string line)
    {
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(Path)!);
        using var stream = Locked(FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None)!;
        var isEnded = true;
        if (stream.Length > 0)
        {
            stream.Seek(-1, SeekOrigin.End);
            isEnded = stream.ReadByte() == '\n';
        }

        stream.Seek(0, SeekOrigin.End);
        stream.Write(Encoding.UTF8.GetBytes($"{(isEnded ? "" : "\n")}{line}\n"));
        stream.Flush(flushToDisk: true);
    }

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
