using TheoryKit.Licks.Tab;
using TheoryKit.Licks.Tab.Options;
using TheoryKit.Licks.Tab.Remarks;
using TheoryKit.Paths;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Licks.Tests.Tab;

/// <summary>
/// A tab as a player types it, and what it says, read by hand: after a line of <c>====</c> neck, changes, time and words where they
/// are not the usual ones, then each note (position, start, length, techniques) and each remark (!, its line, its kind and figures).
/// </summary>
internal sealed record TypedTab(string Name, string Text, string[] Notes, string[] Remarks)
{
    public Neck Neck { get; private init; } = Neck.Guitar;

    public TimeSignature Time { get; private init; }

    public Changes? Changes { get; private init; }

    public string Words { get; private init; } = "";

    public static IReadOnlyList<TypedTab> All { get; } =
    [.. Directory.GetFiles(Folder(), "*.txt").Order(StringComparer.Ordinal).Select(Read)];

    public override string ToString() => Name;

    private static TypedTab Read(string file)
    {
        var text = File.ReadAllText(file).ReplaceLineEndings("\n");
        var at = text.IndexOf("\n====", StringComparison.Ordinal);
        var said = text[(at + 1)..].Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var tab = new TypedTab(
            System.IO.Path.GetFileNameWithoutExtension(file),
            text[..(at + 1)],
            [.. said.Skip(1).Where(static line => line[0] != '!').Select(static line => line.Trim())],
            [.. said.Where(static line => line[0] == '!').Select(static line => line[1..].Trim())]
        );
        foreach (
            var option in said[0]
                ["====".Length..]
                .Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
        )
        {
            var space = option.IndexOf(' ', StringComparison.Ordinal);
            var value = option[(space + 1)..];
            tab = option[..space] switch
            {
                "neck" => tab with { Neck = Neck.Parse(value) },
                "time" => tab with { Time = TimeSignature.Parse(value) },
                "changes" => tab with { Changes = Changes.Parse(value) },
                _ => tab with { Words = value.Replace('|', '\n') },
            };
        }

        return tab;
    }

    private static string Folder() => System.IO.Path.Combine(Repository.Root, "tests/TheoryKit.Licks.Tests/Tab/Tabs");
}

public class TypedTabTests
{
    public static TheoryData<string> Names => [.. TypedTab.All.Select(static tab => tab.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Says_what_a_player_reads(string name)
    {
        var tab = TypedTab.All.Single(each => each.Name == name);
        var reading = PlainTab.Read(tab.Text);
        Assert.Equal(tab.Neck, reading.Path.Neck);
        Assert.Equal(tab.Time, reading.Path.Time);
        Assert.Equal(tab.Changes, reading.Path.Changes);
        Assert.Equal(tab.Words, reading.Words);
        Assert.Equal(tab.Notes, reading.Path.Notes.Select(Say));
        Assert.Equal(tab.Remarks, reading.Remarks.Select(Say));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Says_the_same_whatever_the_ends_of_lines_and_when_written(string name)
    {
        var tab = TypedTab.All.Single(each => each.Name == name);
        var path = PlainTab.Read(tab.Text).Path;
        Assert.Equal(path, PlainTab.Read(tab.Text.Replace("\n", "\r\n", StringComparison.Ordinal)).Path);
        var options = new TabReadOptions
        {
            Neck = path.Neck,
            Time = path.Time,
            Changes = path.Changes,
        };
        Assert.Equal(path, PlainTab.Read(PlainTab.Write(path), options).Path);
    }

    /// <summary>The line, the kind and its figures.</summary>
    private static string Say(TabRemark remark)
    {
        var text = remark.ToString();
        var figures =
            text.IndexOf($"Length = {remark.Length}", StringComparison.Ordinal) + $"Length = {remark.Length}".Length;
        return $"{remark.Line} {remark.GetType().Name} {text[figures..].Trim(' ', ',', '}')}".Trim();
    }

    private static string Say(PathNote note)
    {
        var techniques = note.Techniques.Select(each =>
            each.IsBent || each == Technique.Release ? $"{each} {note.Bend}"
            : each == Technique.Trill ? $"{each} {note.TrillFret}"
            : $"{each}"
        );
        return $"{note.Position} {note.Start} {note.Length} {string.Join(" + ", techniques)}".Trim();
    }
}
