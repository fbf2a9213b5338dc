using System.Globalization;
using TheoryKit.Drawing.Joins;
using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Paths;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tab;
using TheoryKit.Licks;
using TheoryKit.Licks.Tab;
using TheoryKit.Licks.Tab.Options;
using TheoryKit.Licks.Tab.Remarks;
using TheoryKit.Licks.Words;
using TheoryKit.Paths;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Chords;

namespace TheoryKit.Drawing.Licks;

/// <summary>What the sheets of licks and of tab that was read say. Everything that a user wrote goes through <see cref="UserText"/>.</summary>
internal static class LickSheets
{
    // Several lines of a long lick may be parted by the end of a page, one or two not.
    private const int MostKeptTogether = 2;

    private const string Css =
        "@media(min-width:561px){.tk-neck.tk-lick{grid-template-columns:auto 1fr}}.tk-lick .tk-pictures{grid-column:1/-1;display:flex;flex-wrap:wrap;gap:.8em 1.5em;align-items:flex-start;min-width:0}.tk-lick svg{display:block}.tk-lick figcaption{align-self:center}";

    /// <summary>The sheet of a lick.</summary>
    public static Sheet Drawing(LickDrawing drawing)
    {
        var lick = drawing.Lick;
        var blocks = new List<Block>
        {
            new Block.Title(UserText.Of(lick.Name), lick.Tune.Length > 0 ? UserText.Of(lick.Tune) : null),
        };
        if (Facts(lick).ToList() is { Count: > 0 } facts)
        {
            blocks.Add(new Block.Facts(facts));
        }

        if (lick.Words.Length > 0)
        {
            blocks.Add(new Block.Prose(Lines(lick.Words)));
        }

        blocks.Add(Pictures(drawing));
        return new(blocks);
    }

    /// <summary>What was read in a tab, and what of it could have been read otherwise.</summary>
    public static Sheet Reading(TabReading reading)
    {
        var blocks = new List<Block>();
        if (reading.Words.Length > 0)
        {
            blocks.Add(new Block.Prose(Lines(reading.Words)));
        }

        blocks.Add(Pictures(new TabDrawing(reading.Path), null));
        if (reading.Remarks.Count > 0)
        {
            blocks.AddRange(Remarks.Table(reading.Remarks).Blocks);
        }

        return new(blocks);
    }

    public static Description<TabRemark> Remarks { get; } =
        new(
            new("remark", "remarks"),
            static remark =>
                remark.Length > 1
                    ? $"line {remark.Line}, characters {remark.Column} to {remark.Column + remark.Length - 1}"
                    : $"line {remark.Line}, character {remark.Column}",
            [new("what was made of it", static remark => UserText.Of(remark.InWords()))]
        );

    public static Description<TabReadOptions> Options { get; } =
        new(
            new("way to read tab", "ways to read tab"),
            static options =>
                options.Timing switch
                {
                    TabTiming.Spacing => "time by the spacing",
                    TabTiming.Even => "equal notes",
                    _ => "time as written",
                },
            [
                new("neck", static options => options.Neck is { } neck ? Words.Of(neck) : "as the tab says"),
                new("changes", static options => options.Changes is { } changes ? Joinings.Names(changes) : null),
                new("time signature", static options => options.Time is { } time ? Words.Of(time) : null),
                new("an equal note lasts beats", static options => $"{options.Even}", IsNumber: true),
            ]
        );

    public static Description<TabWriteOptions> WriteOptions { get; } =
        new(
            new("way to write tab", "ways to write tab"),
            static options => $"At most {options.Columns} characters wide",
            [
                new("with the rhythm", static options => options.ShowsTime ? "yes" : "no"),
                new(
                    "with fingers and all else that numbers don't show",
                    static options => options.SaysAll ? "yes" : "no"
                ),
                new("below the notes", static options => options.Label is null ? null : "labels"),
            ]
        );

    public static Description<LickHeader> Headers { get; } =
        new(
            new("line", "lines"),
            static header => UserText.Of(header.Name),
            [new("says", static header => header.Value.Length == 0 ? null : UserText.Of(header.Value))]
        );

    /// <summary>Licks in a list: what each is called, and what there is to it.</summary>
    public static Description<Lick> Licks { get; } =
        new(
            new("lick", "licks"),
            static lick => UserText.Of(lick.Name),
            [
                new("tune", static lick => lick.Tune.Length == 0 ? null : UserText.Of(lick.Tune)),
                new("over", static lick => Over(lick)),
                new("notes", static lick => lick.Path.Notes.Count(static note => !note.IsDead), IsNumber: true),
                new("bars", static lick => lick.Path.BarCount, IsNumber: true),
                new("beats a minute", static lick => lick.Tempo is { } tempo ? Number(tempo) : null, IsNumber: true),
                new("played with", static lick => Techniques(lick)),
                new("tags", static lick => lick.Tags.Count == 0 ? null : LickFolderValues.Tags(lick)),
            ]
        );

    private static IEnumerable<Fact> Facts(Lick lick)
    {
        var path = lick.Path;
        if (Over(lick) is { } over)
        {
            yield return new("over", path.Changes!.Key is { } key ? (Words)$"{over}, in {key}" : over);
        }

        if (lick.Tempo is { } tempo)
        {
            yield return new("tempo", $"{Number(tempo)} beats a minute");
        }

        if (lick.Swing != Swing.Straight)
        {
            yield return new("swing", $"the first half of a beat lasts {lick.Swing} of it");
        }

        if (lick.Tags.Count > 0)
        {
            yield return new("tags", LickFolderValues.Tags(lick));
        }

        foreach (var header in lick.Headers)
        {
            yield return new(UserText.Of(header.Name), header.Value.Length == 0 ? "yes" : UserText.Of(header.Value));
        }
    }

    private static Words? Over(Lick lick) =>
        TabParts.ChordsOf(lick.Path).Select(static each => each.Chord).OfType<Chord>().ToList() is { Count: > 0 } chords
            ? Words.Join(", ", chords.Distinct())
            : null;

    private static string? Techniques(Lick lick)
    {
        var used = Technique.Known.Where(technique => lick.Path.Notes.Any(note => note.Has(technique))).ToList();
        return used.Count == 0 ? null : string.Join(", ", used.Select(static technique => technique.Name));
    }

    private static string Lines(string words) => string.Join('\n', words.Split('\n').Select(UserText.Of));

    private static string Number(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);

    private static Block.Picture Pictures(LickDrawing drawing) =>
        Pictures(
            drawing.Tab,
            drawing.ShowsNeck && drawing.Lick.Path.Notes.Any(static note => !note.IsDead) ? drawing.Neck : null
        );

    /// <summary>The tab and the neck, side by side where there is room, with one switch for the labels of both.</summary>
    private static Block.Picture Pictures(TabDrawing tab, PathNeck? neck) =>
        new(
            (context, naming) =>
            {
                var drawn = tab.Naming is null ? tab with { Naming = naming } : tab;
                var offered = drawn.Offered.Union(neck?.Drawing.Offered ?? []).Order().ToList();
                var shown = offered.Contains(drawn.Labels) ? drawn.Labels : offered.FirstOrDefault(Labels.None);
                drawn = drawn with { Labels = shown };
                var board = neck?.Of("P", drawn.Naming).WithLabels(shown);
                var layout = new TabLayout(drawn);
                return NeckFigure.Write(
                    "",
                    $"{NeckFigure.Detail(drawn.Path.Neck, neck?.IsLeftHanded ?? false, drawn.Naming)} · {drawn.Path.Time}",
                    offered,
                    shown,
                    context,
                    html =>
                    {
                        html.Open("div", "tk-pictures");
                        Frame(html, layout.Width, $"{drawn.Title}, as tab", TabPicture.Lines(drawn, context));
                        if (board is not null)
                        {
                            var width = new NeckLayout(board).Width;
                            Frame(html, width, $"{board.Title}, along the neck", [board.Svg(context)]);
                        }

                        html.Close();
                    },
                    layout.Lines.Count > MostKeptTogether ? "tk-tab tk-lick" : "tk-lick",
                    layout.Lines.Count > MostKeptTogether ? TabDrawingRenderer.Css + Css : Css
                );
            },
            naming =>
            {
                var drawn = tab.Naming is null ? tab with { Naming = naming } : tab;
                return neck is null ? $"{drawn}" : $"{drawn}\n\n{neck.Of("G", drawn.Naming)}";
            }
        );

    private static void Frame(HtmlWriter html, double width, string label, IEnumerable<string> pictures)
    {
        html.Open("div", "tk-scroll").Attribute("tabindex", "0").Attribute("role", "group");
        html.Attribute("aria-label", label).Attribute("style", $"flex:0 1 {(int)Math.Ceiling(width)}px");
        foreach (var picture in pictures)
        {
            html.Raw(picture);
        }

        html.Close();
    }
}
