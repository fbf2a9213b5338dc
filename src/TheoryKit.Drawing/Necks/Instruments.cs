using System.Globalization;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Necks;

/// <summary>How tunings and necks are described.</summary>
internal static class Instruments
{
    public static Description<Tuning> All { get; } =
        new(
            new("tuning", "tunings"),
            static tuning => Words.Of(new Strings(tuning)),
            [
                new("name", static tuning => (Words?)tuning.Name),
                new("strings", static tuning => tuning.StringCount, IsNumber: true),
            ]
        )
        {
            More = static tuning => [StringTable(tuning)],
        };

    public static Description<KnownTuning> Known { get; } =
        new(
            new("tuning", "tunings"),
            static known => known.Name,
            [
                new("instrument", static known => known.Instrument),
                new("tuned to", static known => Words.Of(new Strings(known.Tuning))),
                new("also called", static known => known.Aliases.IsEmpty ? null : Words.Join(", ", known.Aliases)),
            ]
        )
        {
            More = static known => [StringTable(known.Tuning)],
        };

    public static Description<TuningString> TunedStrings { get; } =
        new(
            new("string", "strings"),
            static each => Words.Of(each.Open),
            [
                new("frequency at A4 = 440 Hz", static each => Hertz(each), IsNumber: true),
                new("begins at fret", static each => each.Start == 0 ? null : each.Start, IsNumber: true),
            ]
        );

    public static Description<Neck> Necks { get; } =
        new(
            new("neck", "necks"),
            static neck => $"Neck of {Printed.Number(neck.StringCount)} strings",
            [
                new("tuning", static neck => Words.Of(new Strings(neck.Tuning))),
                new("scale length", static neck => Millimetres(neck.ScaleLength), IsNumber: true),
                new("frets", static neck => neck.Frets, IsNumber: true),
                new("capo at fret", static neck => neck.Capo == 0 ? null : neck.Capo, IsNumber: true),
                new("width of the first fret", static neck => Millimetres(neck.FretDistance(1)), IsNumber: true),
                new(
                    "width of the last fret",
                    static neck => Millimetres(neck.FretDistance(neck.Frets) - neck.FretDistance(neck.Frets - 1)),
                    IsNumber: true
                ),
            ]
        )
        {
            More = static neck => [Picture(NeckDrawing.Of(neck).WithTitle("Frets true to scale"))],
        };

    private static Block.Picture Picture(NeckDrawing drawing) =>
        new Block.Picture(
            (context, naming) => NeckFigure.Write(drawing.WithNaming(naming), context),
            naming => drawing.WithNaming(naming).ToString()
        );

    // From the last string down to string 1, the way a tuning is said.
    private static Block.Table StringTable(Tuning tuning)
    {
        var hasShort = tuning.Strings.Any(static each => each.Start > 0);
        List<Column> columns =
        [
            new("string", IsNumber: true),
            "pitch",
            new("at A4 = 440 Hz", IsNumber: true),
            "from the string before",
        ];
        if (hasShort)
        {
            columns.Add(new("begins at fret", IsNumber: true));
        }

        var rows = new List<IReadOnlyList<Cell>>();
        for (var number = tuning.StringCount; number >= 1; number--)
        {
            var each = tuning[number];
            List<Cell> row =
            [
                number,
                new(Words.Of(each.Open)),
                Hertz(each),
                new(number == tuning.StringCount ? Words.None : Step(tuning[number + 1], each)),
            ];
            if (hasShort)
            {
                row.Add(new(each.Start == 0 ? Words.None : Words.Of(each.Start)));
            }

            rows.Add(row);
        }

        return new Block.Table("The strings", columns, rows) { HasQuietCaption = true };
    }

    private static Words Step(TuningString from, TuningString to)
    {
        var interval = to.Open - from.Open;
        return interval.Descends ? $"{-interval} down" : $"{interval} up";
    }

    private static string Hertz(TuningString each) =>
        each.Open.Frequency().ToString("0.00 Hz", CultureInfo.InvariantCulture);

    private static string Millimetres(double length) => length.ToString("0.# mm", CultureInfo.InvariantCulture);

    /// <summary>A tuning with its notes named in the reader's way.</summary>
    private sealed record Strings(Tuning Tuning) : IFormattable
    {
        public string ToString(string? format, IFormatProvider? formatProvider) =>
            Printed.Of(Tuning, formatProvider, format);
    }
}
