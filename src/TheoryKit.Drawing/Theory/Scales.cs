using TheoryKit.Drawing.Ladders;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Theory.Scales;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Theory;

/// <summary>How scales, keys and time signatures are described.</summary>
internal static class Scales
{
    public static Description<ScaleType> Types { get; } =
        new(
            new("scale type", "scale types"),
            static type => Words.Of(type),
            [
                new("formula", static type => Words.Of(type.Formula)),
                new("steps", static type => Formulas.Steps(type.Formula)),
                new("also called", static type => Words.Join(", ", type.Aliases)),
                new("modes", static type => Words.Join(", ", type.Modes.Where(mode => mode != type))),
            ]
        )
        {
            More = static type => [Formulas.Ladder(new LadderColumn(type.Formula))],
        };

    public static Description<Scale> All { get; } =
        new(
            new("scale", "scales"),
            static scale => Words.Of(scale),
            [
                new("tones", static scale => Words.Tones(scale.Tones)),
                new("functions", static scale => Words.Of(scale.Formula)),
                new("steps", static scale => Formulas.Steps(scale.Formula)),
            ]
        )
        {
            More = static scale =>
                [
                    new Block.Beside([
                        Formulas.Ladder(new LadderColumn(scale.Formula, scale.Tonic, "")),
                        .. Steps(scale),
                    ]),
                ],
        };

    public static Description<Key> Keys { get; } =
        new(
            new("key", "keys"),
            static key => Words.Of(key),
            [
                new("signature", static key => Signature(key)),
                new("tones", static key => Words.Tones(key.Scale.Tones)),
                new("relative key", static key => Words.Of(key.Relative)),
                new("parallel key", static key => Words.Of(key.Parallel)),
            ]
        );

    public static Description<TimeSignature> Times { get; } =
        new(
            new("time signature", "time signatures"),
            static time => Words.Of(time),
            [
                new("beats in a bar", static time => time.Beats, IsNumber: true),
                new("a beat is", static time => $"a {Note(time.Unit)}"),
                new("felt as", static time => English.Count(time.Pulses, "pulse")),
            ]
        );

    public static Description<RomanNumeral> Numerals { get; } =
        new(
            new("numeral", "numerals"),
            static numeral => Words.Of(numeral),
            [
                new("root", static numeral => Words.Of(numeral.Degree)),
                new("counted from", static numeral => numeral.Of is { } of ? Words.Of(of) : null),
                new("formula", static numeral => Words.Of(numeral.Formula)),
                new("bass", static numeral => numeral.Bass is { } bass ? Words.Of(bass) : null),
                new("in C major", static numeral => Words.Of(numeral.In(new Key(new NoteName(Letter.C))))),
            ]
        );

    public static Description<ChordSpan> Spans { get; } =
        new(
            new("chord in time", "chords in time"),
            static span => span.Chord is { } chord ? Words.Of(chord) : "N.C.",
            [
                new("starts at beat", static span => $"{span.Start}", IsNumber: true),
                new("lasts beats", static span => $"{span.Length}", IsNumber: true),
            ]
        )
        {
            InWords = static span => span.Chord is { } chord ? Chords.Described(chord) : "no chord is played",
        };

    public static Sheet Changes(Changes changes) =>
        new(
            new Block.Title(
                changes.Key is { } key ? (Words)$"{changes.Time}, {key}" : Words.Of(changes.Time),
                English.Count(changes.Bars.Count, "bar")
            ),
            BarChart.Of(changes)
        );

    public static Sheet Bar(Bar bar) => Changes(new Changes([bar], new TimeSignature(bar.Beats, 4)));

    private static Words Signature(Key key)
    {
        var notes = key.SignatureNotes;
        return notes.Count == 0
            ? "no sharps or flats"
            : (Words)
                $"{English.Count(Math.Abs(key.Signature), key.Signature > 0 ? "sharp" : "flat")}: {Words.Join(" ", notes)}";
    }

    private static string Note(int unit) =>
        unit switch
        {
            1 => "whole note",
            2 => "half note",
            4 => "quarter note",
            _ => $"{English.Ordinal(unit)} note",
        };

    /// <summary>The chord on every step, where the scale has seven tones, so that every second one is a third.</summary>
    private static IEnumerable<Block> Steps(Scale scale)
    {
        if (scale.Count != 7)
        {
            yield break;
        }

        var rows = new List<IReadOnlyList<Cell>>();
        for (var step = 1; step <= scale.Count; step++)
        {
            rows.Add([
                step,
                Chords.Function(scale.Formula[step - 1]),
                Words.Of(scale.Tones[step - 1]),
                Words.Of(scale.Chord(step, 3)),
                Words.Of(scale.Chord(step, 4)),
            ]);
        }

        yield return new Block.Table(
            "The chord on every step",
            ["step", "function", "tone", "triad", "seventh chord"],
            rows
        );
    }
}
