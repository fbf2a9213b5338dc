using System.Security.Cryptography;
using System.Text;
using TheoryKit.Cli.Notebooks;

namespace TheoryKit.Cli.Pages;

/// <summary>
/// The folder that pages go to. One print at a time has it, so that its list is true of the pages beside it; a page is
/// there whole or not at all.
/// </summary>
internal sealed class PageFolder : IDisposable
{
    private const string Unfinished = ".unfinished";

    private readonly string folder;
    private readonly FileStream? held;

    private PageFolder(string folder, FileStream? held) => (this.folder, this.held) = (folder, held);

    /// <summary>Makes the folder if it is missing, and waits until no other print has it.</summary>
    /// <param name="folder">Its path.</param>
    /// <param name="waits">Is called once if there is a wait.</param>
    /// <param name="cancellation">Ends the wait.</param>
    /// <exception cref="NotebookException">It can't be made.</exception>
    public static async Task<PageFolder> OpenAsync(string folder, Action waits, CancellationToken cancellation)
    {
        var path = Path.GetFullPath(folder);
        Try(() => Directory.CreateDirectory(path), $"The folder {path} can't be made");
        var opened = new PageFolder(path, await Hold(path, waits, cancellation).ConfigureAwait(false));
        opened.TidyUp();
        return opened;
    }

    /// <summary>The path of a file in the folder.</summary>
    public string PathOf(string name) => Path.Combine(folder, name);

    /// <summary>Puts a text into a file in place of what it held.</summary>
    /// <exception cref="NotebookException">It can't be written.</exception>
    public void Write(string name, string text)
    {
        var file = PathOf(name);
        Try(
            () =>
            {
                try
                {
                    Replace(file, text);
                }
                catch (DirectoryNotFoundException)
                {
                    // A cell has deleted the folder.
                    Directory.CreateDirectory(folder);
                    Replace(file, text);
                }
            },
            $"{file} can't be written"
        );
    }

    /// <inheritdoc/>
    public void Dispose() => held?.Dispose();

    /// <summary>
    /// The lock is a file in the machine's folder for passing files, so that there is none beside the pages. The system
    /// gives it free when a process ends, however it ends.
    /// </summary>
    private static async Task<FileStream?> Hold(string folder, Action waits, CancellationToken cancellation)
    {
        var hash = SHA256.HashData(Encoding.UTF8.GetBytes($"{Environment.UserName}\n{folder}"));
        var file = Path.Combine(Path.GetTempPath(), $"theorykit-print-{Convert.ToHexStringLower(hash)[..16]}.lock");
        for (var isFirst = true; ; isFirst = false)
        {
            try
            {
                return new FileStream(file, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException) when (File.Exists(file))
            {
                if (isFirst)
                {
                    waits();
                }

                await Task.Delay(200, cancellation).ConfigureAwait(false);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                // Where there is no such folder, pages still replace each other whole.
                return null;
            }
        }
    }

    private void Replace(string file, string text)
    {
        var unfinished = PathOf($".{Guid.NewGuid():N}{Unfinished}");
        try
        {
            File.WriteAllText(unfinished, text);
            File.Move(unfinished, file, overwrite: true);
        }
        catch
        {
            if (File.Exists(unfinished))
            {
                File.Delete(unfinished);
            }

            throw;
        }
    }

    /// <summary>Deletes what a print that was killed has left.</summary>
    private void TidyUp() =>
        Try(
            () => Array.ForEach(Directory.GetFiles(folder, $".*{Unfinished}"), File.Delete),
            $"The folder {folder} can't be used"
        );

    private static void Try(Action action, string otherwise)
    {
        try
        {
            action();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new NotebookException($"{otherwise}: {e.Message}", e);
        }
    }
}
