using System.Globalization;
using Fractions;
using TheoryKit.Drawing.Joins;
using TheoryKit.Drawing.Paths;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tab;
using TheoryKit.Drawing.Zones;
using TheoryKit.Licks.Analysis;
using TheoryKit.Licks.Words;
using TheoryKit.Theory.Chords;

namespace TheoryKit.Drawing.Licks;

/// <summary>The sheet of an analysed lick, and how what it is made of is described.</summary>
internal static class LickAnalysisSheets
{
    /// <summary>The most notes and bars that a sheet lists; the analysis has them all.</summary>
    private const int MostListed = 256;

    public static Description<AnalysedNote> Notes { get; } =
        new(
            new("note", "notes"),
            static note => note.Part == NotePart.Dead ? Part(note) : Words.Of(note.Sounding),
            [
                new("bar", static note => note.Bar + 1, IsNumber: true),
                new("beat", static note => Beat(note.Beat), IsNumber: true),
                new("strong", static note => note.IsStrong ? "yes" : null),
                new("over", static note => Words.Of(note.Chord)),
                new("function", static note => Function(note)),
                new("part", static note => Part(note)),
                new("is early by beats", static note => note.Ahead?.ToString(), IsNumber: true),
            ]
        );

    public static Description<BarAnalysis> Bars { get; } =
        new(
            new("bar", "bars"),
            static bar => $"Bar {bar.Bar + 1}",
            [
                new("over", static bar => Words.Join(", ", bar.Chords)),
                new("notes", static bar => bar.Summary.Count, IsNumber: true),
                new("what it does", static bar => Said(bar.InWords)),
            ]
        );

    public static Description<ChangeAnalysis> Changes { get; } =
        new(
            new("change", "changes"),
            static change => (Words)$"{change.From} to {change.To}",
            [
                new("bar", static change => change.Bar + 1, IsNumber: true),
                new("left from", static change => Left(change)),
                new("met on", static change => Met(change)),
                new("semitones", static change => change.Step is { } step ? Signed(step) : null, IsNumber: true),
                new(
                    "guide tone",
                    static change =>
                        change.HitsGuideTone
                            ? change.Resolves
                                ? "yes, from a guide tone by step"
                                : "yes"
                            : null
                ),
            ]
        );

    public static Description<FunctionCount> Functions { get; } =
        new(
            new("function", "functions"),
            static count => Words.Of(count.Function),
            [
                new("on strong beats", static count => count.Strong, IsNumber: true),
                new("elsewhere", static count => count.Weak, IsNumber: true),
            ]
        );

    public static Description<PartCount> Parts { get; } =
        new(
            new("part", "parts"),
            static count => count.Part.InWords(),
            [
                new("notes", static count => count.Count, IsNumber: true),
                new("share", static count => count.Share > 0 ? Percent(count.Share) : null, IsNumber: true),
            ]
        );

    public static Description<LineSummary> Summaries { get; } =
        new(
            new("stretch of a line", "stretches of lines"),
            static sum => sum.InWords(),
            [
                new("from", static sum => sum.Lowest is { } low ? Words.Of(low.Sounding) : null),
                new("up to", static sum => sum.Highest is { } high ? Words.Of(high.Sounding) : null),
                new(
                    "notes a beat",
                    static sum => sum.Density.ToDouble().ToString("0.##", CultureInfo.InvariantCulture),
                    IsNumber: true
                ),
                new("chord tones", static sum => Percent(sum.ChordToneShare), IsNumber: true),
                new(
                    "on strong beats",
                    static sum =>
                        Words.Join(
                            ", ",
                            sum.Functions.Where(static count => count.Strong > 0).Select(static count => count.Function)
                        )
                ),
            ]
        );

    public static Description<ZoneUse> Zones { get; } =
        new(
            new("zone used", "zones used"),
            static use => Words.Of(use.Zone.Chord),
            [
                new("at beat", static use => use.Start.ToString(), IsNumber: true),
                new("frets", static use => Words.Of(use.Zone.Window)),
                new("form", static use => ZoneWords.Short(use.Zone.Form)),
                new("notes inside", static use => $"{use.Inside} of {use.Count}"),
            ]
        );

    /// <summary>The tab, what a teacher would say, then bar by bar, change by change and note by note.</summary>
    public static Sheet Of(LickAnalysis analysis)
    {
        var path = analysis.Path;
        var blocks = new List<Block>
        {
            new Block.Title(
                "What the notes do",
                path.Changes is { } changes ? (Words)$"over {Joinings.Names(changes)}" : "over no chords"
            ),
        };
        if (analysis.Notes.Count == 0)
        {
            blocks.Add(new Block.Prose(Said(analysis.InWords)));
            return new(blocks);
        }

        blocks.Add(
            new Block.Picture(
                (context, naming) => new TabDrawingRenderer(naming).Html(path.Tab(), context),
                naming => new TabDrawingRenderer(naming).Text(path.Tab())
            )
        );
        blocks.Add(new Block.Heading("In words"));
        blocks.Add(new Block.Prose(Said(analysis.InWords)));
        blocks.Add(new Block.Group(BarTable(analysis)));
        var beside = new List<Block>();
        if (analysis.Summary.Functions.Count > 0)
        {
            beside.Add(Table(Functions, analysis.Summary.Functions, "Where functions fall"));
        }

        beside.Add(Table(Parts, analysis.Summary.Parts, "Parts"));
        blocks.Add(new Block.Beside(beside));
        if (analysis.Changes.Count > 0)
        {
            blocks.Add(Table(Changes, analysis.Changes, "Over the changes"));
        }

        blocks.Add(NoteTable(analysis));
        return new(blocks);
    }

    /// <summary>A table with a caption of its own that tells what it leaves out.</summary>
    public static Block.Table Table<T>(Description<T> description, IReadOnlyList<T> values, string caption) =>
        description.Table(values.Take(MostListed)).Blocks.OfType<Block.Table>().Single() with
        {
            Caption = values.Count <= MostListed ? caption : $"{caption}, the first {MostListed} of {values.Count}",
        };

    private static Block.Table BarTable(LickAnalysis analysis) =>
        new(
            Caption("Bar by bar", analysis.Bars.Count),
            [new("bar", IsNumber: true), "over", "what it does"],
            [
                .. analysis
                    .Bars.Take(MostListed)
                    .Select(static bar =>
                        (IReadOnlyList<Cell>)[bar.Bar + 1, Words.Join(", ", bar.Chords), new Cell(Said(bar.InWords))]
                    ),
            ]
        );

    private static Block.Table NoteTable(LickAnalysis analysis)
    {
        var rows = new List<IReadOnlyList<Cell>>();
        var (bar, chord) = (-1, (Chord?)null);
        foreach (var note in analysis.Notes.Take(MostListed))
        {
            var over = note.Chord != chord || note.Bar != bar ? Words.Of(note.Chord) : Words.None;
            (bar, chord) = (note.Bar, note.Chord);
            rows.Add([
                new(Words.Of(note.Index + 1)),
                new(Words.Of(note.Bar + 1)),
                new(Beat(note.Beat), IsStrong: note.IsStrong),
                new(note.Part == NotePart.Dead ? Words.None : Words.Of(note.Sounding)),
                new(over),
                Function(note) ?? new(Words.None),
                new(Part(note)),
                new(analysis.TargetOf(note) is { } target ? Target(target) : Words.None),
            ]);
        }

        return new(
            Caption("Note by note (strong beats stand out)", analysis.Notes.Count),
            [
                new("note", IsNumber: true),
                new("bar", IsNumber: true),
                new("beat", IsNumber: true),
                "sounds",
                "over",
                "function",
                "part",
                "leads to",
            ],
            rows
        );
    }

    private static Words Caption(string caption, int count) =>
        count <= MostListed ? caption : $"{caption}, the first {MostListed} of {count}";

    private static Cell? Function(AnalysedNote note) =>
        note.Function is { } function ? new Cell(Words.Of(function), note.Role) : null;

    /// <summary>The part, and what there is to say about it.</summary>
    private static Words Part(AnalysedNote note)
    {
        var part = note.Part.InWords();
        if (note.Anticipates is { } early)
        {
            return $"{part}, {note.AnticipatedFunction} of {early}";
        }

        return note.Part.Leads() && note.Step != 0
            ? $"{part} from {(note.Step > 0 ? "below" : "above")}{(note.IsChromatic ? ", chromatic" : "")}"
            : part;
    }

    private static Words Target(AnalysedNote note) =>
        note.Function is { } function ? (Words)$"{note.Sounding} ({function})" : Words.Of(note.Sounding);

    private static Words? Left(ChangeAnalysis change) =>
        change.Last is { } last
            ? last.Function is { } function
                ? $"{last.Sounding} ({function})"
                : Words.Of(last.Sounding)
            : null;

    private static Cell? Met(ChangeAnalysis change)
    {
        if (change is not { First: { } first, Function: { } function })
        {
            return null;
        }

        var when =
            first.Ahead is not null ? ", early"
            : change.IsMet ? ""
            : ", late";
        return new((Words)$"{first.Sounding} ({function}){when}", ToneRoles.Over(function, change.To.Formula));
    }

    private static Words Said(Func<string?, IFormatProvider?, IReadOnlyList<string>> say) =>
        Words.Said((format, naming) => string.Join(' ', say(format, naming)));

    /// <summary>A beat as it is counted: 1, 2 1/2.</summary>
    private static string Beat(Fraction beat)
    {
        var whole = beat.Numerator / beat.Denominator;
        var rest = (beat - whole).Reduce();
        return rest.IsZero ? $"{whole + 1}" : $"{whole + 1}\u00a0{rest}";
    }

    private static string Signed(int step) =>
        step > 0 ? $"+{step}"
        : step < 0 ? $"−{-step}"
        : "0";

    private static string Percent(double share) =>
        $"{Math.Round(100 * share, MidpointRounding.AwayFromZero).ToString(CultureInfo.InvariantCulture)}\u00a0%";
}
