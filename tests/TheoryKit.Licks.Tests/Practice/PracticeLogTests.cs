using System.Globalization;
using System.Text;
using TheoryKit.Licks.Practice;

namespace TheoryKit.Licks.Tests.Practice;

public sealed class PracticeLogTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("theorykit-log-").FullName;

    private string File => System.IO.Path.Combine(folder, "beside", "practice.log");

    public void Dispose() => Directory.Delete(folder, recursive: true);

    /// <summary>What a process of its own does.</summary>
    /// <summary>What a process of its own does: a file, a name, and how many entries of it are added.</summary>
    internal static void AppendMany(string[] arguments) =>
        AppendMany(arguments[0], arguments[1], int.Parse(arguments[2], CultureInfo.InvariantCulture));

    private static void AppendMany(string file, string name, int count)
    {
        var log = PracticeLog.Open(file);
        for (var number = 0; number < count; number++)
        {
            log.Add(Entry(name, number));
        }
    }

    [Fact]
    public void WhatIsAddedIsReadInOrder()
    {
        var log = PracticeLog.Open(File);
        Assert.Equal(PracticeHistory.Empty, log.Read());
        log.Add(new DateOnly(2026, 11, 24), LogGens.Lick("Low tide turn"), Outcome.Clean, 96, "flat");
        log.Add(new LickRenamed(new(2026, 11, 25), "Low tide turn", "Turn"));
        log.Add(Practised.Parse("2026-11-26 \"Turn\": at ease"));
        Assert.Equal(
            "2026-11-24 \"Low tide turn\" at 96: clean, flat\n2026-11-25 \"Low tide turn\" is now \"Turn\"\n2026-11-26 \"Turn\": at ease\n",
            System.IO.File.ReadAllText(File)
        );
        Assert.Equal(2, log.Read().Find("Turn")!.Days.Count);
        Assert.Equal(log, PracticeLog.Open(File));
        Assert.Equal(
            ["Turn"],
            log.Due(new(2027, 11, 26), [LogGens.Lick("Turn")]).Licks.Select(static each => each.Name)
        );
    }

    [Theory]
    [InlineData("2026-11-24 \"x\": cle")]
    [InlineData("2026-11-24 \"x\": clean")]
    [InlineData("# a remark")]
    public void AFileThatEndsInTheMiddleOfALineKeepsThatPieceOnALineOfItsOwn(string rest)
    {
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(File)!);
        System.IO.File.WriteAllText(File, rest);
        PracticeLog.Open(File).Add(Entry("y", 1));
        Assert.Equal($"{rest}\n{Entry("y", 1)}\n", System.IO.File.ReadAllText(File));
        Assert.Single(PracticeLog.Open(File).Read().Find("y")!.Entries);
    }

    [Fact]
    public void ABrokenCharacterAtTheEndIsKeptAndCostsNothingElse()
    {
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(File)!);
        var bytes = Encoding.UTF8.GetBytes("2026-11-24 \"é");
        System.IO.File.WriteAllBytes(File, bytes[..^1]);
        PracticeLog.Open(File).Add(Entry("y", 1));
        Assert.Equal(bytes[..^1], System.IO.File.ReadAllBytes(File)[..(bytes.Length - 1)]);
        var history = PracticeLog.Open(File).Read();
        Assert.Single(history.Entries);
        Assert.Single(history.Broken);
    }

    [Fact]
    public void ALineThatIsNotUtf8IsToldOfAndTheRestCounts()
    {
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(File)!);
        var (before, after) = (Entry("é 🎸", 1), Entry("y", 2));
        System.IO.File.WriteAllBytes(
            File,
            [
                .. Encoding.UTF8.GetBytes($"{before}\n"),
                .. Encoding.Latin1.GetBytes("2026-11-24 \"Gefühl\": clean\n"),
                .. Encoding.Latin1.GetBytes("# Übung\n"),
                .. Encoding.UTF8.GetBytes($"{after}\n"),
            ]
        );
        var history = PracticeLog.Open(File).Read();
        Assert.Equal(
            [before, after],
            history.Entries.OrderBy(static each => each.Lick, StringComparer.Ordinal).Reverse()
        );
        var broken = Assert.Single(history.Broken);
        Assert.Equal((2, 16), (broken.Line, broken.Error.Column));
        Assert.Contains("UTF-8", broken.Error.Message, StringComparison.Ordinal);

        // The same when more is added, or days are left out.
        Assert.Equal([2], history.With(after).Broken.Select(static each => each.Line));
        Assert.DoesNotContain(
            history.Until(new(2000, 1, 1)).Licks,
            static each => each.Name.StartsWith("Gef", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void ALogThatIsTooLongIsRefusedUnopened()
    {
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(File)!);
        using (var stream = System.IO.File.Open(File, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None))
        {
            stream.SetLength(100 << 20);
            var error = Assert.Throws<IOException>(() => PracticeLog.Open(File).Read());
            Assert.Contains("104,857,600 bytes", error.Message, StringComparison.Ordinal);
            Assert.Contains("16,777,216", error.Message, StringComparison.Ordinal);
        }

        Assert.Throws<IOException>(() => PracticeLog.Open(File).Add(Entry("y", 1)));
        Assert.Equal(100 << 20, new FileInfo(File).Length);
    }

    [Fact]
    public async Task APipeOrADeviceIsNoLog()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(File)!);
        using (var made = System.Diagnostics.Process.Start("mkfifo", [File]))
        {
            await made.WaitForExitAsync();
        }

        var bound = TimeSpan.FromSeconds(60);
        Assert.Equal(PracticeHistory.Empty, await Task.Run(PracticeLog.Open(File).Read).WaitAsync(bound));
        await Assert.ThrowsAsync<IOException>(() =>
            Task.Run(() => PracticeLog.Open(File).Add(Entry("y", 1))).WaitAsync(bound)
        );
        var device = PracticeLog.Open(System.IO.Path.Combine(folder, "null"));
        System.IO.File.CreateSymbolicLink(device.Path, "/dev/null");
        Assert.Equal(PracticeHistory.Empty, device.Read());
        Assert.Contains(
            "device",
            Assert.Throws<IOException>(() => device.Add(Entry("y", 1))).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void AFolderIsNoLog() => Assert.Throws<ArgumentException>(() => PracticeLog.Open(folder));

    [Fact]
    public async Task ThreadsThatAddAtOnceLoseNothing()
    {
        await Task.WhenAll(
            Enumerable.Range(0, 4).Select(thread => Task.Run(() => AppendMany(File, $"thread {thread}", 50)))
        );
        Check(Enumerable.Range(0, 4).Select(static thread => $"thread {thread}"), 50);
    }

    [Fact]
    public async Task ProcessesThatAddAtOnceLoseNothing()
    {
        string[] names = ["one \"quoted\"", "another \\ one", "a third"];
        var processes = names.Select(name => ChildProcess.Start(nameof(AppendMany), File, name, "150")).ToList();
        foreach (var process in processes)
        {
            var error = await process.StandardError.ReadToEndAsync();
            await process.WaitForExitAsync();
            Assert.True(process.ExitCode == 0, error);
            process.Dispose();
        }

        Check(names, 150);
    }

    [Fact]
    public async Task KilledWhileItAddsALogLosesNothingThatWasThere()
    {
        var random = new Random(6);
        var before = 0;
        for (var kill = 0; kill < 12; kill++)
        {
            using var process = ChildProcess.Start(nameof(AppendMany), File, $"kill {kill}", "1000000");
            while (Count() <= before && !process.HasExited)
            {
                await Task.Delay(5);
            }

            await Task.Delay(random.Next(30));
            process.Kill();
            await process.WaitForExitAsync();
            var history = PracticeLog.Open(File).Read();

            // At most the one line being written is not whole, and each run's are all there up to it.
            Assert.InRange(history.Broken.Count, 0, kill + 1);
            foreach (var lick in history.Licks.Where(static lick => lick.Name != "after"))
            {
                Assert.Equal(
                    Enumerable.Range(0, lick.Entries.Count).Select(number => Entry(lick.Name, number)),
                    lick.Entries
                );
            }

            PracticeLog.Open(File).Add(Entry("after", kill));
            Assert.Equal(kill + 1, PracticeLog.Open(File).Read().Find("after")!.Entries.Count);
            before = Count();
        }

        int Count() => PracticeLog.Open(File).Read().Entries.Count;
    }

    [Fact]
    public void AHundredThousandLinesAreRead()
    {
        var text = new StringBuilder();
        for (var number = 0; number < 100_000; number++)
        {
            text.Append(Entry($"lick {number % 1000}", number % 1000)).Append('\n');
        }

        var history = PracticeHistory.Read(text.ToString());
        Assert.Equal((100_000, 1000, 0), (history.Entries.Count, history.Licks.Count, history.Broken.Count));
    }

    private void Check(IEnumerable<string> names, int count)
    {
        var history = PracticeLog.Open(File).Read();
        Assert.Empty(history.Broken);
        Assert.All(
            names,
            name =>
                Assert.Equal(
                    Enumerable.Range(0, count).Select(number => Entry(name, number)),
                    history.Find(name)!.Entries
                )
        );
    }

    private static Practised Entry(string name, int number) =>
        new()
        {
            Date = LogGens.First.AddDays(number % 2_000_000),
            Lick = name,
            Outcome = Outcome.Known[number % 4],
            Note = new string('é', number % 50),
        };
}
