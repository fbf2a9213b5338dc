using System.Text;
using TheoryKit.Licks.Folders;
using TheoryKit.Licks.Tab.Reading;
using TheoryKit.Licks.Words;

namespace TheoryKit.Licks.Tests.Folders;

public sealed class LickFolderTests : IDisposable
{
    private static readonly string Boats = """
        name: Boat call
        tune: Nine Tin Boats
        changes: 4/4, F major: Gm9 | C13
        tempo: 96
        tags: slow, opening
        from:  the second chorus
        Gefühl:   weich

        # Let the last note ring.
        e|---------------|---------------|
        B|-----3---6-----|---5---3-------|
        G|---3---5---3---|-----------3---|
        D|-5-------------|---------------|
        A|---------------|---------------|
        E|---------------|---------------|

        """.ReplaceLineEndings("\n");

    private readonly string path = Directory.CreateTempSubdirectory("licks").FullName;

    public void Dispose() => Directory.Delete(path, recursive: true);

    [Fact]
    public void A_folder_that_is_not_there_is_made()
    {
        var folder = LickFolder.Open(At("new/one"));
        Assert.True(Directory.Exists(At("new/one")));
        Assert.Empty(folder.Licks);
        Assert.Empty(folder.Broken);
    }

    [Fact]
    public void What_is_saved_is_there_when_it_is_opened_again()
    {
        Gen.Select(Gen.Int[0, int.MaxValue - 1], FolderGens.Name)
            .Array[1, 12]
            .Sample(
                each =>
                {
                    var place = At(Guid.NewGuid().ToString("N"));
                    var folder = LickFolder.Open(place);
                    var licks = each.Select(one => FolderGens.Make(one.Item1, one.Item2)).ToList();
                    var kept = folder.SaveAll(licks);

                    // Of a name given twice the last stays.
                    var expected = licks
                        .GroupBy(static lick => lick.Name)
                        .Select(static same => same.Last())
                        .ToHashSet();
                    foreach (var there in new[] { folder, LickFolder.Open(place) })
                    {
                        Assert.Empty(there.Broken);
                        Assert.Equal(expected, there.Licks.Select(static one => one.Lick).ToHashSet());
                        Assert.Equal(
                            expected.Count,
                            there.Licks.Select(static one => one.File.ToUpperInvariant()).Distinct().Count()
                        );
                    }
                },
                iter: 60,
                threads: 1
            );
    }

    [Fact]
    public void Any_name_gives_a_safe_file_inside_the_folder()
    {
        Gen.OneOf(FolderGens.Name, Gen.String.Where(static text => LickText.IsLine(text) && text.Trim().Length > 0))
            .Sample(
                static name =>
                {
                    var stem = LickFileName.StemOf(name.Trim());
                    Assert.InRange(stem.Length, 1, LickFileName.MaxStem + 5);
                    Assert.All(
                        stem.EnumerateRunes(),
                        static rune => Assert.True(rune.Value == '-' || Rune.IsLetterOrDigit(rune))
                    );
                    Assert.Equal(stem, stem.Trim('-'));
                    Assert.Equal(stem, stem.ToLowerInvariant());
                    Assert.True(stem.IsNormalized(NormalizationForm.FormC));
                    Assert.DoesNotMatch("^(con|prn|aux|nul|com[0-9]|lpt[0-9])$", stem);
                    Assert.True(Encoding.UTF8.GetByteCount(stem) < 200);
                    Assert.Equal(
                        "/folder",
                        Path.GetDirectoryName(Path.GetFullPath(Path.Combine("/folder", stem + LickFolder.Extension)))
                    );
                },
                iter: 20_000
            );
    }

    [Theory]
    [InlineData("Boat call", "boat-call")]
    [InlineData("  Élan: vital?! ", "elan-vital")]
    [InlineData("../../etc/passwd", "etc-passwd")]
    [InlineData("CON", "lick-con")]
    [InlineData("com1", "lick-com1")]
    [InlineData("com¹", "lick-com1")]
    [InlineData("...", "lick")]
    [InlineData("C:\\con", "c-con")]
    [InlineData("船が九つ", "船か九つ")]
    [InlineData(
        "one two three four five six seven eight nine ten eleven twelve",
        "one-two-three-four-five-six-seven-eight-nine-ten"
    )]
    public void Files_are_called_after_their_licks(string name, string stem) =>
        Assert.Equal(stem, LickFileName.StemOf(name));

    [Fact]
    public void Names_that_differ_in_odd_characters_only_get_files_of_their_own()
    {
        var folder = LickFolder.Open(path);
        foreach (var name in new[] { "Boat call", "boat call", "Boat-call", "Boat call!", "Böat call" })
        {
            folder.Save(FolderGens.Make(1, name));
        }

        Assert.Equal(
            [
                "boat-call-2.lick.txt",
                "boat-call-3.lick.txt",
                "boat-call-4.lick.txt",
                "boat-call-5.lick.txt",
                "boat-call.lick.txt",
            ],
            LickFiles()
        );
        Assert.Equal(5, LickFolder.Open(path).Licks.Count);
    }

    [Fact]
    public void A_file_is_text_that_git_can_compare()
    {
        LickFolder.Open(path).Save(FolderGens.Make(3, "Boat call"));
        var bytes = File.ReadAllBytes(At("boat-call.lick.txt"));
        Assert.DoesNotContain((byte)'\r', bytes);
        Assert.Equal((byte)'\n', bytes[^1]);
        Assert.StartsWith("name: Boat call\n", Encoding.UTF8.GetString(bytes), StringComparison.Ordinal);
    }

    [Fact]
    public void Saving_what_has_not_changed_writes_nothing()
    {
        Write("boats.lick.txt", Boats);
        var when = new DateTime(2020, 1, 1, 0, 0, 0, DateTimeKind.Utc);
        File.SetLastWriteTimeUtc(At("boats.lick.txt"), when);
        var folder = LickFolder.Open(path);
        folder.Save(folder["Boat call"]!.Lick);
        Assert.Equal(when, File.GetLastWriteTimeUtc(At("boats.lick.txt")));
    }

    [Theory]
    [InlineData(false, false)]
    [InlineData(true, false)]
    [InlineData(false, true)]
    [InlineData(true, true)]
    public void What_is_not_changed_stays_to_the_byte(bool mark, bool returns)
    {
        var text = returns ? Boats.Replace("\n", "\r\n", StringComparison.Ordinal) : Boats;
        Write("odd name.lick.txt", text, mark);
        var folder = LickFolder.Open(path);
        var kept = folder["Boat call"]!;
        folder.Save(kept.Lick with { Tempo = 104 });
        byte[] expected =
        [
            .. mark ? Encoding.UTF8.GetPreamble() : [],
            .. Encoding.UTF8.GetBytes(text.Replace("tempo: 96", "tempo: 104", StringComparison.Ordinal)),
        ];
        Assert.Equal(expected, File.ReadAllBytes(At("odd name.lick.txt")));
        Assert.Equal(["odd name.lick.txt"], LickFiles());
    }

    [Fact]
    public void A_lick_is_known_by_the_name_in_its_file()
    {
        Write("anything.LICK.TXT", Boats);
        var folder = LickFolder.Open(path);
        Assert.Equal("anything.LICK.TXT", folder["Boat call"]!.File);
        Assert.Null(folder["anything"]);
    }

    [Fact]
    public void A_file_of_tab_alone_has_the_name_of_the_file()
    {
        Write("from an old folder.tab", "e|-0-1-3-|\nB|-------|\nG|-------|\nD|-------|\nA|-------|\nE|-------|\n");
        var folder = LickFolder.Open(path);
        Assert.Empty(folder.Broken);
        var lick = folder["from an old folder"]!.Lick;
        folder.Save(lick with { Tempo = 90 });
        Assert.Equal(["from an old folder"], LickFolder.Open(path).Licks.Select(static each => each.Lick.Name));

        // In another folder its file is called otherwise, so the name is written down.
        var other = LickFolder.Open(At("other"));
        other.Save(lick);
        Assert.Equal("from an old folder", Assert.Single(LickFolder.Open(At("other")).Licks).Lick.Name);
        Assert.StartsWith(
            "name: from an old folder\n\ne|-0-1-3-|",
            File.ReadAllText(At("other/from-an-old-folder.lick.txt")),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Broken_files_are_listed_with_what_is_wrong_and_the_rest_is_there()
    {
        Write("a.lick.txt", Boats);
        Write("b.lick.txt", Boats);
        Write(
            "c.lick.txt",
            Boats
                .Replace("Boat call", "Fast", StringComparison.Ordinal)
                .Replace("tempo: 96", "tempo: fast", StringComparison.Ordinal)
        );
        Write(
            "d.lick.txt",
            Boats
                .Replace("name: Boat call", "no header", StringComparison.Ordinal)
                .Replace("tune:", "name: Twice\ntune:", StringComparison.Ordinal)
        );
        File.WriteAllBytes(At("e.lick.txt"), [.. Encoding.UTF8.GetBytes("name: E\ntags: "), 0xC3, 0x28, (byte)'\n']);
        File.WriteAllBytes(At("f.lick.txt"), []);
        File.WriteAllBytes(At("g.lick.txt"), new byte[LickFolder.MaxFileBytes + 1]);
        Write(
            "h.lick.txt",
            Boats
                .Replace("Boat call", "Twice", StringComparison.Ordinal)
                .Replace("tune:", "tempo: 90\ntune:", StringComparison.Ordinal)
        );
        Write("README.txt", "no lick");
        Write(".hidden.lick.txt", "no lick");
        Directory.CreateDirectory(At("inside.lick.txt"));
        Directory.CreateDirectory(At("inside"));
        File.WriteAllText(At("inside/x.lick.txt"), "no lick");
        var folder = LickFolder.Open(path);
        Assert.Equal(["Boat call"], folder.Licks.Select(static each => each.Lick.Name));
        var broken = folder.Broken.Select(static each =>
            $"{each.File}{(each.Line is { } line ? $", line {line}" : "")}: {each.InWords()}"
        );
        Expectations.Matches(string.Join("\n", broken), "broken-licks.txt");

        // Saving leaves them as they are.
        var before = Directory
            .GetFiles(path)
            .Where(static file => !file.EndsWith("/a.lick.txt", StringComparison.Ordinal))
            .ToDictionary(static file => file, File.ReadAllBytes);
        folder.Save(folder.Licks[0].Lick with { Tempo = 50 });
        Assert.All(before, static file => Assert.Equal(file.Value, File.ReadAllBytes(file.Key)));
    }

    [Fact]
    public void A_file_changed_since_it_was_read_is_not_written_over()
    {
        Write("boats.lick.txt", Boats);
        var folder = LickFolder.Open(path);
        var lick = folder["Boat call"]!.Lick;
        var changed = Boats.Replace("opening", "ending ", StringComparison.Ordinal);
        Write("boats.lick.txt", changed);
        Assert.Contains(
            "was changed since",
            Assert.Throws<IOException>(() => folder.Save(lick with { Tempo = 80 })).Message,
            StringComparison.Ordinal
        );
        Assert.Throws<IOException>(() => folder.Delete("Boat call"));
        Assert.Throws<IOException>(() => folder.Rename("Boat call", "Other"));

        // Nor after something else was saved in between.
        folder.Save(FolderGens.Make(5, "Something else"));
        Assert.Throws<IOException>(() => folder.Save(lick with { Tempo = 80 }));
        Assert.Equal(changed, File.ReadAllText(At("boats.lick.txt")));
        folder.Reload();
        folder.Save(folder["Boat call"]!.Lick with { Tempo = 80 });
        Assert.Equal(changed.Replace("96", "80", StringComparison.Ordinal), File.ReadAllText(At("boats.lick.txt")));
    }

    [Fact]
    public void A_new_name_that_someone_else_has_saved_since_is_refused()
    {
        var (first, second) = (LickFolder.Open(path), LickFolder.Open(path));
        first.Save(FolderGens.Make(1, "Same"));
        Assert.Contains(
            "reload",
            Assert.Throws<IOException>(() => second.Save(FolderGens.Make(2, "Same"))).Message,
            StringComparison.Ordinal
        );
        second.Save(FolderGens.Make(3, "Other"));
        Assert.Throws<IOException>(() => second.Save(FolderGens.Make(2, "Same")));
        second.Reload();
        second.Save(FolderGens.Make(2, "Same"));
        Assert.Equal(FolderGens.Make(2, "Same"), LickFolder.Open(path)["Same"]!.Lick);
    }

    [Fact]
    public void A_file_that_is_gone_is_written_anew()
    {
        Write("odd.lick.txt", Boats);
        var folder = LickFolder.Open(path);
        File.Delete(At("odd.lick.txt"));
        folder.Save(folder["Boat call"]!.Lick);
        Assert.Equal(["boat-call.lick.txt"], LickFiles());
        Assert.Empty(folder.Broken);
        Assert.Equal("boat-call.lick.txt", Assert.Single(folder.Licks).File);
    }

    [Fact]
    public void A_renamed_lick_keeps_its_text_and_moves_its_file()
    {
        Write("boats.lick.txt", Boats);
        var folder = LickFolder.Open(path);
        folder.Save(FolderGens.Make(1, "Taken"));
        Assert.Equal("taken-too.lick.txt", folder.Rename("Boat call", "Taken, too").File);
        Assert.Equal(["taken-too.lick.txt", "taken.lick.txt"], LickFiles());
        Assert.Equal(
            Boats.Replace("Boat call", "Taken, too", StringComparison.Ordinal),
            File.ReadAllText(At("taken-too.lick.txt"))
        );
        Assert.Throws<ArgumentException>(() => folder.Rename("Taken, too", "Taken"));
        Assert.Throws<ArgumentException>(() => folder.Rename("Boat call", "Another"));
        Assert.Throws<ArgumentException>(() => folder.Rename("Taken", " "));
        Assert.Equal("taken.lick.txt", folder.Rename("Taken", "taken").File);
        Assert.Equal(folder.Licks, LickFolder.Open(path).Licks);
    }

    [Fact]
    public void A_deleted_lick_is_gone()
    {
        var folder = LickFolder.Open(path);
        folder.Save(FolderGens.Make(1, "One"));
        folder.Save(FolderGens.Make(2, "Two"));
        Assert.True(folder.Delete("One"));
        Assert.False(folder.Delete("One"));
        Assert.Equal(["two.lick.txt"], LickFiles());
        Assert.Equal(["Two"], folder.Licks.Select(static each => each.Lick.Name));
    }

    [Fact]
    public void What_killed_saves_have_left_is_not_read_and_goes_with_the_next_save()
    {
        var left = $".{Guid.NewGuid():N}.saving";
        Write(left, "name: half a li");
        Write(".notes", "the player's own");
        var folder = LickFolder.Open(path);
        Assert.Empty(folder.Licks);
        Assert.Empty(folder.Broken);
        Assert.True(File.Exists(At(left)));
        folder.Save(FolderGens.Make(1, "One"));
        Assert.False(File.Exists(At(left)));
        Assert.True(File.Exists(At(".notes")));
    }

    [Fact]
    public void Many_threads_save_at_once_and_lose_nothing()
    {
        var folders = new[] { LickFolder.Open(path), LickFolder.Open(path) };
        Parallel.For(0, 40, index => folders[index % 2].Save(FolderGens.Make(index, $"Lick {index}")));
        Assert.Equal(40, folders.Sum(static folder => folder.Licks.Count));
        Assert.Equal(
            Enumerable.Range(0, 40).Select(static index => FolderGens.Make(index, $"Lick {index}")).ToHashSet(),
            LickFolder.Open(path).Licks.Select(static each => each.Lick).ToHashSet()
        );
    }

    private string At(string file) => Path.Combine(path, file);

    private IEnumerable<string> LickFiles() =>
        Directory
            .GetFiles(path)
            .Select(static file => Path.GetFileName(file))
            .Where(static file => file[0] != '.')
            .Order(StringComparer.Ordinal);

    private void Write(string file, string text, bool mark = false) =>
        File.WriteAllText(At(file), text, new UTF8Encoding(mark));
}
