using System.Text;
using System.Text.RegularExpressions;
using ArchUnitNET.Loader;
using TheoryKit.Charts;
using TheoryKit.Drawing;
using TheoryKit.Interactive;
using TheoryKit.Licks;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Cli;

/// <summary>The house: which rooms there are, what each answers, and which may use which.</summary>
public partial class RoomTests
{
    private const int MostFiles = 20;

    // A room may use those above it and none below. Within a project the order is the order in which questions come up.
    private static readonly (string Room, string Question)[] Rooms =
    [
        ("TheoryKit.Values", "how is a value read, written and compared"),
        ("TheoryKit", "what is said wherever someone could come to harm"),
        ("TheoryKit.Theory.Notes", "which notes, how far apart, which set do they make"),
        ("TheoryKit.Theory.Chords", "which tones does a chord have, and how is it written"),
        ("TheoryKit.Theory.Scales", "which tones does a scale or a key have"),
        ("TheoryKit.Theory.Naming", "which chord are these notes"),
        ("TheoryKit.Theory.Progressions", "how does a tune go through its chords, in which time"),
        ("TheoryKit.Theory.Relations", "what is inside a chord, around it and next to it"),
        ("TheoryKit.Theory.Words", "how is theory said in English"),
        ("TheoryKit.Tunings.Necks", "where does a pitch lie on this neck"),
        ("TheoryKit.Tunings.Strings", "what does a string pull, and what does it bear"),
        ("TheoryKit.Tunings.Turns", "what is turned from one tuning to another"),
        ("TheoryKit.Tunings.Words", "how are strings and tunings said in English"),
        ("TheoryKit.Fingering.Hands", "how far does a hand reach, and what costs it effort"),
        ("TheoryKit.Fingering.Grips", "how can a chord be held"),
        ("TheoryKit.Fingering.Lines", "which fingers and strings play a line"),
        ("TheoryKit.Fingering.Zones", "what lies under one hand"),
        ("TheoryKit.Fingering.Learning", "what does a player's hand prefer"),
        ("TheoryKit.Fingering.Retuning", "which tuning suits these chords"),
        ("TheoryKit.Fingering.Moving", "what becomes of a tune in another tuning"),
        ("TheoryKit.Fingering.Words", "how is fingering said in English"),
        ("TheoryKit.Paths.Timing", "how are beats divided"),
        ("TheoryKit.Paths", "which notes in which order, where and how played"),
        ("TheoryKit.Paths.Sounding", "what sounds when a path is played"),
        ("TheoryKit.Paths.Exercises", "how is a shape drilled"),
        ("TheoryKit.Paths.Joins", "how do shapes join through changes, and when does it repeat"),
        ("TheoryKit.Paths.Routes", "which way along the neck"),
        ("TheoryKit.Paths.MadeLines", "which line could be played here"),
        ("TheoryKit.Paths.Words", "how are paths said in English"),
        ("TheoryKit.Licks.Tab.Options", "which ways of typing tab are there"),
        ("TheoryKit.Licks.Tab.Remarks", "what is told of tab that was read"),
        ("TheoryKit.Licks.Tab.Reading", "which lines, columns and signs are typed"),
        ("TheoryKit.Licks.Tab.Timing", "when is each typed note played"),
        ("TheoryKit.Licks.Tab.Playing", "how is each typed note played"),
        ("TheoryKit.Licks.Tab.Writing", "how is a path typed as tab"),
        ("TheoryKit.Licks.Tab", "what does typed tab say, and how is it typed"),
        ("TheoryKit.Licks", "what is a lick, and how is it kept as text"),
        ("TheoryKit.Licks.Analysis", "what does each note do over its chord"),
        ("TheoryKit.Licks.Moves", "what becomes of a lick elsewhere"),
        ("TheoryKit.Licks.Search", "which licks are these, and how alike are they"),
        ("TheoryKit.Licks.Folders", "where are licks kept"),
        ("TheoryKit.Licks.Practice", "what was practised, and what is due"),
        ("TheoryKit.Licks.Words", "how are licks said in English"),
        ("TheoryKit.Drawing.Rendering", "how is a value shown: the registry and the look"),
        ("TheoryKit.Drawing.Markup", "how is SVG and HTML written"),
        ("TheoryKit.Drawing.Sheets", "how do title, prose, table and picture make a page"),
        ("TheoryKit.Drawing.Necks", "how is a neck drawn"),
        ("TheoryKit.Drawing.Ladders", "how are formulas set side by side"),
        ("TheoryKit.Drawing.Hands", "how is a hand shown"),
        ("TheoryKit.Drawing.Grips", "how is a grip drawn"),
        ("TheoryKit.Drawing.Lines", "how is a fingered line shown"),
        ("TheoryKit.Drawing.Zones", "how is a zone shown"),
        ("TheoryKit.Drawing.Theory", "how are chords, scales and their relations shown"),
        ("TheoryKit.Drawing.Tunings", "how are tunings and strings shown"),
        ("TheoryKit.Drawing.Tab", "how is tab drawn"),
        ("TheoryKit.Drawing.Paths", "how are paths and exercises shown"),
        ("TheoryKit.Drawing.Joins", "how are joined changes shown"),
        ("TheoryKit.Drawing.Routes", "how is a route drawn"),
        ("TheoryKit.Drawing.Licks", "how are licks shown"),
        ("TheoryKit.Drawing.Practice", "how is practice shown"),
        ("TheoryKit.Drawing", "which renderers does the drawing bring"),
        ("TheoryKit.Charts.Figures", "how is a chart made of Plotly's parts"),
        ("TheoryKit.Charts.Theory", "which charts do formulas and chords have"),
        ("TheoryKit.Charts.Tunings", "which charts do tunings have"),
        ("TheoryKit.Charts.Paths", "which charts do paths have"),
        ("TheoryKit.Charts.Practice", "which charts does practice have"),
        ("TheoryKit.Charts", "which renderers do the charts bring"),
        ("TheoryKit.Interactive.Cells", "which languages do cells have"),
        ("TheoryKit.Interactive.Notebooks", "what can a cell wait for"),
        ("TheoryKit.Interactive", "how does a notebook host load all this"),
        ("TheoryKit.Cli.Answers", "which statuses and hints does the program answer with"),
        ("TheoryKit.Cli.Notebooks", "what is in a notebook file"),
        ("TheoryKit.Cli.Running.Channel", "what do the printing process and the running one tell each other"),
        ("TheoryKit.Cli.Running.Processes", "how is a process started, stopped and cleared away"),
        ("TheoryKit.Cli.Running.Inside", "what happens in the process that runs the cells"),
        ("TheoryKit.Cli.Running", "how is a notebook run, and what came of it"),
        ("TheoryKit.Cli.Pages", "how does a printed page look"),
        ("TheoryKit.Cli.Commands", "which commands are there"),
        ("TheoryKit.Cli", "how does the program start"),
    ];

    private static readonly Lazy<Dictionary<string, SortedDictionary<string, string>>> Uses = new(FindUses);

    private static readonly Dictionary<string, HashSet<string>> Reached = new(StringComparer.Ordinal);

    [Fact]
    public void A_folder_is_one_room_of_at_most_twenty_files_and_its_name_is_the_namespace()
    {
        var src = Path.Combine(Repository.Root, "src");
        var folders = Directory
            .GetFiles(src, "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains("TheoryKit.Generators", StringComparison.Ordinal))
            .GroupBy(file =>
                Path.GetRelativePath(src, Path.GetDirectoryName(file)!).Replace(Path.DirectorySeparatorChar, '.')
            );
        foreach (var folder in folders)
        {
            Assert.True(
                Rooms.Any(room => room.Room == folder.Key),
                $"The folder of {folder.Key} is no room: give it a question in {nameof(RoomTests)}, or move its files to the room whose question they answer."
            );
            Assert.True(
                folder.Count() <= MostFiles,
                $"{folder.Key} has {folder.Count()} files: it answers more than one question."
            );
            foreach (var file in folder)
            {
                var named = NamespaceLine().Match(File.ReadAllText(file));
                Assert.True(
                    !named.Success || named.Groups[1].Value == folder.Key,
                    $"{Path.GetRelativePath(src, file)} says namespace {named.Groups[1].Value}."
                );
            }
        }

        Assert.Equal(Rooms.Select(room => room.Room).Order(), folders.Select(folder => folder.Key).Order());
    }

    [Fact]
    public void No_room_uses_one_that_comes_after_it()
    {
        var back =
            from room in Uses.Value
            from used in room.Value
            where Place(used.Key) > Place(room.Key)
            orderby Place(room.Key), Place(used.Key)
            select $"{room.Key} uses {used.Key}: {used.Value}";
        Assert.True(!back.Any(), string.Join("\n", back));
    }

    [Fact]
    public void The_guide_shows_the_map_of_the_code()
    {
        const string Begin = "<!-- The map: made by RoomTests. -->\n";
        const string End = "<!-- End of the map. -->";
        var guide = File.ReadAllText(Path.Combine(Repository.Root, "DEVELOPERS.md")).ReplaceLineEndings("\n");
        var from = guide.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length;
        var to = guide.IndexOf(End, StringComparison.Ordinal);
        Assert.True(from >= Begin.Length && to >= from, "DEVELOPERS.md has lost the place of its map.");
        var map = Map();
        if (guide[from..to] != map)
        {
            var folder = Repository.EmptyFolder("map");
            var received = Path.Combine(folder, "map.md");
            File.WriteAllText(received, map);
            Assert.Fail($"The map in DEVELOPERS.md is not that of the code: copy {received} between its two marks.");
        }
    }

    /// <summary>One table a project: each room, its question and the rooms of this project it stands on, those that others bring in left out.</summary>
    private static string Map()
    {
        var map = new StringBuilder("\n");
        foreach (
            var project in Rooms
                .GroupBy(room => Project(room.Room))
                .OrderBy(project => Array.FindIndex(Rooms, room => Project(room.Room) == project.Key))
        )
        {
            map.Append($"`src/{project.Key}`\n\n| room | what it answers | stands on |\n| --- | --- | --- |\n");
            foreach (var (room, question) in project)
            {
                var used = Direct(room).Select(other => Project(other) == project.Key ? Short(other) : other);
                map.Append(
                    $"| `{Short(room)}` | {question} | {string.Join(", ", used.Select(other => $"`{other}`"))} |\n"
                );
            }

            map.Append('\n');
        }

        return map.ToString();
    }

    /// <summary>The rooms that a room uses and does not reach through another one that it uses.</summary>
    private static IEnumerable<string> Direct(string room)
    {
        var used = Uses.Value.TryGetValue(room, out var all) ? all.Keys.ToList() : [];
        return used.Where(other => !used.Any(between => between != other && Below(between).Contains(other)))
            .OrderBy(Place);
    }

    /// <summary>All rooms that a room stands on. Arrows that point back are not followed: another test tells of them, and this one must end.</summary>
    private static HashSet<string> Below(string room)
    {
        if (!Reached.TryGetValue(room, out var below))
        {
            var used = Uses.Value.TryGetValue(room, out var all) ? all.Keys.ToList() : [];
            Reached[room] = below = [.. used, .. used.Where(next => Place(next) < Place(room)).SelectMany(Below)];
        }

        return below;
    }

    private static int Place(string room) => Array.FindIndex(Rooms, each => each.Room == room);

    private static string Project(string room) =>
        string.Join(
            '.',
            room.Split('.')
                .Take(room.Split('.') is [_, "Licks" or "Drawing" or "Charts" or "Interactive" or "Cli", ..] ? 2 : 1)
        );

    private static string Short(string room)
    {
        var project = Project(room);
        return room == project ? "(top)" : room[(project.Length + 1)..].Replace('.', '/');
    }

    private static Dictionary<string, SortedDictionary<string, string>> FindUses()
    {
        var architecture = new ArchLoader()
            .LoadAssemblies(
                typeof(NoteName).Assembly,
                typeof(Lick).Assembly,
                typeof(DrawingRenderers).Assembly,
                typeof(ChartRenderers).Assembly,
                typeof(InteractiveExtension).Assembly,
                typeof(Program).Assembly
            )
            .Build();
        var rooms = Rooms.Select(room => room.Room).ToHashSet(StringComparer.Ordinal);
        var uses = new Dictionary<string, SortedDictionary<string, string>>(StringComparer.Ordinal);
        foreach (var type in architecture.Types)
        {
            var own = type.Namespace?.FullName ?? "";
            if (!rooms.Contains(own))
            {
                continue;
            }

            foreach (var dependency in type.Dependencies)
            {
                var other = dependency.Target.Namespace?.FullName ?? "";
                if (other != own && rooms.Contains(other))
                {
                    if (!uses.TryGetValue(own, out var used))
                    {
                        uses[own] = used = new(StringComparer.Ordinal);
                    }

                    used.TryAdd(other, $"{type.Name} uses {dependency.Target.Name}");
                }
            }
        }

        return uses;
    }

    [GeneratedRegex(@"^namespace ([\w.]+);", RegexOptions.Multiline)]
    private static partial Regex NamespaceLine();
}
