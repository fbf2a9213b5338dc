using TheoryKit.Licks;
using TheoryKit.Licks.Analysis;
using TheoryKit.Licks.Tab;
using TheoryKit.Licks.Tab.Options;
using TheoryKit.Licks.Words;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Progressions;
using TheoryKit.Values;

namespace TheoryKit.Interactive.Cells;

/// <summary>
/// Cells that hold tab as players type it: <c>#!tab --name lowTide --changes "Gm9 | C13" --tempo 96</c>. They show it drawn, what each
/// bar of it does and what was decided in reading, and leave a <see cref="Lick"/>.
/// </summary>
internal sealed class TabCells()
    : CellLanguage(
        Language,
        "tab",
        ("--title", "What the lick is called; the words of the variable's name unless told"),
        ("--changes", "The chords, such as \"Gm9 | C13\"; those above the tab unless told"),
        ("--tempo", "Beats a minute"),
        ("--swing", "How eighths are swung: straight, or the part of a beat such as 2/3"),
        ("--tuning", "The strings from the thickest, such as \"D2 A2 D3 F#3 A3 D4\", or the name of a tuning"),
        ("--time", "The time signature; that of the changes unless told"),
        ("--tune", "The tune that it belongs to"),
        ("--tags", "Words to find it by, commas between")
    )
{
    public const string Language = "tab";

    /// <inheritdoc/>
    protected override CellValue Read(CellSource source, CellOptions given)
    {
        var name = given.Variable("lick");
        var time = given.ParsedValue<TimeSignature>("--time");
        var options = new TabReadOptions
        {
            Changes = given.Changes("--changes", time),
            Time = time,
            Neck = given.Neck("--tuning"),
        };
        var (tempo, swing, tags) = (given.Tempo("--tempo"), given.ParsedValue<Swing>("--swing"), given.Tags("--tags"));
        var (title, tune) = (given.Line("--title") ?? InWords(name), given.Line("--tune") ?? "");
        TabReading reading;
        try
        {
            reading = PlainTab.Read(source.InPlace, options);
        }
        catch (PlacedFormatException error)
        {
            // The message has the line and the caret.
            throw new CellException(error.Message, error.Line, error.Column, error.Length);
        }

        var lick = new Lick
        {
            Name = title,
            Path = reading.Path,
            Tune = tune,
            Tempo = tempo,
            Swing = swing ?? Swing.Straight,
            Tags = tags,
            Words = reading.Words,
        };
        var bars = lick.Analyse().Bars;
        return new(name, lick, reading.Remarks.Count > 0 ? [lick, bars, reading.Remarks] : [lick, bars])
        {
            Remarks =
            [
                .. reading.Remarks.Select(static remark =>
                    (remark.Line, remark.Column, remark.Length, remark.InWords())
                ),
            ],
        };
    }

    /// <summary>"lowTideTurn", "low_tide_turn": "Low tide turn".</summary>
    private static string InWords(string identifier)
    {
        var words = new System.Text.StringBuilder();
        foreach (var c in identifier)
        {
            var isStart = c == '_' || (char.IsUpper(c) && words.Length > 0 && char.IsLower(words[^1]));
            words.Append(isStart && words.Length > 0 && words[^1] != ' ' ? " " : "");
            words.Append(c == '_' ? "" : char.ToLowerInvariant(c));
        }

        var text = words.ToString().Trim();
        return text.Length == 0 ? identifier : char.ToUpperInvariant(text[0]) + text[1..];
    }
}
