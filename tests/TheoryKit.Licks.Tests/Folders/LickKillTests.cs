using System.Diagnostics;
using TheoryKit.Licks.Folders;

namespace TheoryKit.Licks.Tests.Folders;

/// <summary>Real processes that save, killed or racing.</summary>
public sealed class LickKillTests : IDisposable
{
    private const int Kills = 200;
    private readonly string path = Directory.CreateTempSubdirectory("licks").FullName;

    public void Dispose() => Directory.Delete(path, recursive: true);

    [Fact]
    public void Killed_while_it_saves_no_lick_is_lost_or_half_written()
    {
        var random = new Random(20_26);
        var own = FolderGens.Make(1, "Before");
        LickFolder.Open(path).Save(own);
        string[] names = ["Port", "Starboard"];
        var saved = names.ToDictionary(static name => name, static _ => 0);
        var (inside, leftOver) = (0, 0);
        for (var kill = 0; kill < Kills; kill += names.Length)
        {
            // Two at once in one folder, so that one is killed while it holds what the other waits for, too.
            var running = names.Select(name => Start(name, int.MaxValue)).ToList();
            for (var index = 0; index < names.Length; index++)
            {
                var until = random.Next(1, 5);
                for (var count = 0; count < until; count++)
                {
                    saved[names[index]] = int.Parse(
                        running[index].StandardOutput.ReadLine() ?? throw Ended(running[index])
                    );
                }

                Thread.SpinWait(random.Next(200_000));
                running[index].Kill();
            }

            for (var index = 0; index < names.Length; index++)
            {
                // What it still said before it was killed was saved as well.
                while (running[index].StandardOutput.ReadLine() is { } line)
                {
                    saved[names[index]] = int.TryParse(line, out var version) ? version : saved[names[index]];
                }

                running[index].WaitForExit();
                running[index].Dispose();
            }

            leftOver += Directory.GetFiles(path, ".*.saving").Length;
            var folder = LickFolder.Open(path);
            Assert.Empty(folder.Broken);
            Assert.Equal(own, folder["Before"]?.Lick);
            foreach (var name in names)
            {
                for (var version = Math.Max(1, saved[name] - LickSaver.Licks + 1); version <= saved[name]; version++)
                {
                    // Each as it was last said to be, or as the save that was under way had it; whole in any case.
                    var lick = folder[LickSaver.NameOf(name, version)]?.Lick;
                    Assert.NotNull(lick);
                    var there = LickSaver.VersionOf(lick);
                    Assert.True(
                        there == version || there == saved[name] + 1,
                        $"{lick.Name} is version {there}, {saved[name]} was the last that was said to be saved."
                    );
                    Assert.Equal(LickSaver.Make(name, there), lick);
                    inside += there == version ? 0 : 1;
                }
            }
        }

        var last = LickFolder.Open(path);
        last.Save(FolderGens.Make(2, "After"));
        Assert.Empty(Directory.GetFiles(path, ".*.saving"));
        Assert.Equal(2 + (names.Length * LickSaver.Licks), last.Licks.Count);
        Assert.True(inside + leftOver > 0, "No kill came in the middle of a save.");
    }

    [Fact]
    public void Two_processes_that_save_different_licks_lose_nothing()
    {
        // Names that make the same file names, so that they are in each other's way as much as can be.
        string[] names = ["Lick!", "Lick?"];
        var running = names.Select(name => Start(name, 60)).ToList();
        foreach (var process in running)
        {
            process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            Assert.Equal(0, process.ExitCode);
            process.Dispose();
        }

        var folder = LickFolder.Open(path);
        Assert.Empty(folder.Broken);
        Assert.Equal(
            names
                .SelectMany(static name =>
                    Enumerable
                        .Range(61 - LickSaver.Licks, LickSaver.Licks)
                        .Select(version => LickSaver.Make(name, version))
                )
                .ToHashSet(),
            folder.Licks.Select(static kept => kept.Lick).ToHashSet()
        );
    }

    private static InvalidOperationException Ended(Process process) =>
        new InvalidOperationException($"The process that saves has ended: {process.StandardError.ReadToEnd()}");

    private Process Start(string name, int most) =>
        ChildProcess.Start(
            nameof(LickSaver),
            path,
            name,
            most.ToString(System.Globalization.CultureInfo.InvariantCulture)
        );
}
