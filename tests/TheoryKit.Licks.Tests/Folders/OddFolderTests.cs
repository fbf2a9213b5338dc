using System.Diagnostics;
using System.Text;
using TheoryKit.Licks.Folders;
using TheoryKit.Licks.Words;

namespace TheoryKit.Licks.Tests.Folders;

/// <summary>What may lie in a folder of licks besides licks. Each of it is told of, and costs the others nothing.</summary>
public sealed class OddFolderTests : IDisposable
{
    private const string Tab = "e|-0-1-3-|\nB|-------|\nG|-------|\nD|-------|\nA|-------|\nE|-------|\n";

    // Nothing here waits; but a pipe that is opened would, for ever.
    private static readonly TimeSpan Bound = TimeSpan.FromSeconds(60);

    private readonly string path = Directory.CreateTempSubdirectory("odd").FullName;

    public void Dispose() => Directory.Delete(path, recursive: true);

    [Fact]
    public async Task A_folder_of_odd_files_opens_and_tells_of_each()
    {
        Write("good.lick.txt", Tab);
        Write("blank.lick.txt", " \r\n\t\n");
        Write("latin.lick.txt", [.. "name: Gef"u8, 0xFC, .. "hl\n\n"u8, .. Encoding.ASCII.GetBytes(Tab)]);
        Write("mark.lick.txt", [.. Encoding.UTF8.Preamble, .. "name: Gef\n"u8, 0xFC]);
        Write("utf16.lick.txt", [.. Encoding.Unicode.Preamble, .. Encoding.Unicode.GetBytes(Tab)]);
        Write("nul.lick.txt", [.. "name: N\n"u8, 0, .. Encoding.ASCII.GetBytes(Tab)]);
        Write("none.lick.txt", []);
        Directory.CreateDirectory(At("folder.lick.txt"));
        using (var large = File.Create(At("large.tab")))
        {
            large.SetLength(100 << 20); // sparse
        }

        var folder = await Opened();
        Assert.Equal(["good"], folder.Licks.Select(static each => each.Lick.Name));
        Assert.Equal(
            [
                new BrokenLick("blank.lick.txt", LickFault.Blank),
                new BrokenLick("folder.lick.txt", LickFault.Folder),
                new BrokenLick("large.tab", LickFault.TooLong) { Bytes = 104_857_600 },
                new BrokenLick("latin.lick.txt", LickFault.NotUtf8, 1) { Byte = 10 },
                new BrokenLick("mark.lick.txt", LickFault.NotUtf8, 2) { Byte = 14 },
                new BrokenLick("none.lick.txt", LickFault.NoBytes),
                new BrokenLick("nul.lick.txt", LickFault.NotText, 2) { Byte = 9 },
                new BrokenLick("utf16.lick.txt", LickFault.NotUtf8, 1) { Byte = 1 },
            ],
            folder.Broken
        );
        Assert.Equal(
            "it has 104,857,600 bytes; a lick has at most 1,048,576",
            folder.Broken.Single(static each => each.Fault == LickFault.TooLong).InWords()
        );
    }

    [Fact]
    public async Task A_file_that_is_too_long_is_not_even_opened()
    {
        // Held as they are here no other file can be opened: of the short one that is told, of the long one only its length.
        using var length = File.Open(At("long.lick.txt"), FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None);
        using var other = File.Open(At("short.lick.txt"), FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None);
        length.SetLength(LickFolder.MaxFileBytes + 1);
        other.SetLength(LickFolder.MaxFileBytes);
        Assert.Equal(
            [("long.lick.txt", LickFault.TooLong), ("short.lick.txt", LickFault.Unopened)],
            (await Opened()).Broken.Select(static each => (each.File, each.Fault))
        );
    }

    [Fact]
    public async Task Pipes_and_devices_are_never_opened_and_links_lead_to_files()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        Directory.CreateDirectory(At("elsewhere"));
        Write("elsewhere/real.txt", Tab);
        Write("elsewhere/large.txt", new byte[LickFolder.MaxFileBytes + 1]);
        using (var made = Process.Start("mkfifo", [At("a.lick.txt"), At("b.lick.txt")]))
        {
            await made.WaitForExitAsync();
            Assert.Equal(0, made.ExitCode);
        }

        // One pipe has nobody who writes, so whoever opened it would wait; at the other stands someone whom opening would set free.
        using var writer = Process.Start("/bin/sh", ["-c", "echo 'name: x' > \"$0\"", At("b.lick.txt")]);
        Link("c.lick.txt", "/dev/zero");
        Link("d.lick.txt", "a.lick.txt");
        Link("e.lick.txt", "nowhere.lick.txt");
        Link("f.lick.txt", "f.lick.txt");
        Link("g.lick.txt", "elsewhere");
        Link("h.lick.txt", "elsewhere/large.txt");
        Link("i.lick.txt", "j.lick.txt");
        Link("j.lick.txt", "elsewhere/real.txt");
        try
        {
            var folder = await Opened();
            foreach (var (what, reload) in new[] { ("opened", false), ("reloaded", true) })
            {
                if (reload)
                {
                    await Task.Run(folder.Reload).WaitAsync(Bound);
                }

                Assert.Equal(["i", "j"], folder.Licks.Select(static each => each.Lick.Name));
                Assert.Equal(
                    [
                        new BrokenLick("a.lick.txt", LickFault.NoBytes),
                        new BrokenLick("b.lick.txt", LickFault.NoBytes),
                        new BrokenLick("c.lick.txt", LickFault.NoBytes),
                        new BrokenLick("d.lick.txt", LickFault.NoBytes),
                        new BrokenLick("e.lick.txt", LickFault.DeadLink) { Other = "nowhere.lick.txt" },
                        new BrokenLick("f.lick.txt", LickFault.DeadLink) { Other = "f.lick.txt" },
                        new BrokenLick("g.lick.txt", LickFault.Folder),
                        new BrokenLick("h.lick.txt", LickFault.TooLong) { Bytes = LickFolder.MaxFileBytes + 1 },
                    ],
                    folder.Broken
                );
                Assert.False(writer.HasExited, what);
            }

            // Saving looks around too, and leaves all of them as they are.
            await Task.Run(() => folder.Save(FolderGens.Make(1, "a"))).WaitAsync(Bound);
            Assert.Equal("a-2.lick.txt", folder["a"]!.File);
            Assert.False(writer.HasExited);
        }
        finally
        {
            writer.Kill();
            await writer.WaitForExitAsync();
        }
    }

    [Fact]
    public void What_is_saved_behind_a_link_is_saved_in_the_file()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        Directory.CreateDirectory(At("elsewhere"));
        Write("elsewhere/real.txt", "name: Low tide\n\n" + Tab);
        Link("link.lick.txt", "elsewhere/real.txt");
        var folder = LickFolder.Open(path);
        folder.Save(folder["Low tide"]!.Lick with { Tempo = 80 });
        folder.Save(folder["Low tide"]!.Lick with { Tempo = 90 });
        Assert.Equal("elsewhere/real.txt", new FileInfo(At("link.lick.txt")).LinkTarget);
        Assert.Equal("name: Low tide\ntempo: 90\n\n" + Tab, File.ReadAllText(At("elsewhere/real.txt")));
        Assert.Equal(["real.txt"], Directory.GetFiles(At("elsewhere")).Select(static each => Path.GetFileName(each)));

        // Under another name it is the link that moves; deleted, the link that goes.
        Assert.Equal("ebb.lick.txt", folder.Rename("Low tide", "Ebb").File);
        Assert.Equal("elsewhere/real.txt", new FileInfo(At("ebb.lick.txt")).LinkTarget);
        Assert.True(folder.Delete("Ebb"));
        Assert.False(File.Exists(At("ebb.lick.txt")));
        Assert.StartsWith("name: Ebb\n", File.ReadAllText(At("elsewhere/real.txt")), StringComparison.Ordinal);
    }

    [Fact]
    public void Files_whose_names_differ_in_capitals_only_are_both_found_and_a_new_one_is_called_like_neither()
    {
        Write("boat call.lick.txt", Tab);
        Write("Boat Call.lick.txt", Tab.Replace('1', '5'));
        Write("EBB.lick.txt", "name: Ebb tide\n\n" + Tab);
        var isTold = Directory.GetFiles(path).Length == 3;
        var folder = LickFolder.Open(path);
        Assert.Empty(folder.Broken);
        Assert.Equal(isTold ? 3 : 2, folder.Licks.Count);
        Assert.Equal(folder.Licks.Count, folder.Find("boat").Count + folder.Find("ebb").Count);

        // On a system that takes capitals for small letters "ebb" would be that other lick's file.
        Assert.Equal("ebb-2.lick.txt", folder.Save(FolderGens.Make(1, "ebb")).File);
        Assert.Equal("ebb-3.lick.txt", folder.Save(FolderGens.Make(2, "EBB")).File);
        Assert.Equal(
            "Ebb tide",
            LickFolder.Open(path).Licks.Single(static each => each.File == "EBB.lick.txt").Lick.Name
        );
        foreach (
            var kept in folder.Licks.Where(static each =>
                each.File.StartsWith("boat", StringComparison.OrdinalIgnoreCase)
            )
        )
        {
            var others = Directory
                .GetFiles(path)
                .Where(file => Path.GetFileName(file) != kept.File)
                .ToDictionary(static file => file, File.ReadAllBytes);
            folder.Save(kept.Lick with { Tempo = 77 });
            Assert.Contains("tempo: 77", File.ReadAllText(At(kept.File)), StringComparison.Ordinal);
            Assert.All(others, static file => Assert.Equal(file.Value, File.ReadAllBytes(file.Key)));
        }
    }

    [Fact]
    public void Line_ends_of_carriage_returns_are_read_and_kept()
    {
        var text = ("name: Low tide\ntempo: 96\n\n" + Tab).Replace('\n', '\r');
        Write("old.lick.txt", text);
        var folder = LickFolder.Open(path);
        Assert.Empty(folder.Broken);
        folder.Save(folder["Low tide"]!.Lick with { Tempo = 104 });
        Assert.Equal(text.Replace("96", "104", StringComparison.Ordinal), File.ReadAllText(At("old.lick.txt")));
    }

    [Fact]
    public void A_file_that_may_not_be_read_is_told_of()
    {
        Write("mine.lick.txt", Tab);
        if (OperatingSystem.IsWindows() || Environment.IsPrivilegedProcess)
        {
            return; // who may do everything is denied nothing
        }

        File.SetUnixFileMode(At("mine.lick.txt"), UnixFileMode.None);
        Assert.Equal([new("mine.lick.txt", LickFault.Denied)], LickFolder.Open(path).Broken);
    }

    [Fact]
    public void A_deep_folder_is_one_like_any_other()
    {
        var deep = Path.Combine([path, .. Enumerable.Repeat(new string('d', 60), 30)]);
        var folder = LickFolder.Open(deep);
        folder.Save(FolderGens.Make(1, "One"));
        Assert.Equal(folder.Licks, LickFolder.Open(deep).Licks);
    }

    [Fact]
    public async Task Files_that_come_grow_and_go_meanwhile_harm_nothing()
    {
        Write("stays.lick.txt", Tab);
        using var stop = new CancellationTokenSource();
        var stirring = Task.Run(() =>
        {
            for (var number = 0; !stop.IsCancellationRequested; number++)
            {
                var file = At($"comes-{number % 40}.lick.txt");
                Write(Path.GetFileName(file), Tab);
                using (
                    var stream = File.Open(
                        file,
                        FileMode.Append,
                        FileAccess.Write,
                        FileShare.ReadWrite | FileShare.Delete
                    )
                )
                {
                    stream.SetLength(LickFolder.MaxFileBytes + 1);
                }

                File.Delete(At($"comes-{(number + 20) % 40}.lick.txt"));
            }
        });
        try
        {
            for (var times = 0; times < 30; times++)
            {
                Assert.NotNull((await Opened())["stays"]);
            }
        }
        finally
        {
            await stop.CancelAsync();
            await stirring;
        }
    }

    [Fact]
    public void Every_fault_has_words_of_its_own()
    {
        var words = Enum.GetValues<LickFault>()
            .Select(static fault => new BrokenLick("x.tab", fault).InWords())
            .ToList();
        Assert.Equal(words.Count, words.Distinct().Count());
        Assert.All(words, static each => Assert.NotEmpty(each));
    }

    private Task<LickFolder> Opened() => Task.Run(() => LickFolder.Open(path)).WaitAsync(Bound);

    private string At(string file) => Path.Combine(path, file);

    private void Link(string file, string target) => File.CreateSymbolicLink(At(file), target);

    private void Write(string file, string text) => File.WriteAllText(At(file), text);

    private void Write(string file, byte[] bytes) => File.WriteAllBytes(At(file), bytes);
}
