using System.Globalization;
using TheoryKit.Drawing.Grips;
using TheoryKit.Drawing.Hands;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Fingering.Lines;
using TheoryKit.Fingering.Words;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Lines;

/// <summary>How fingered lines and the questions for them are described.</summary>
internal static class FingeredLines
{
    public static Description<FingeredNote> Notes { get; } =
        new(
            new("note", "notes"),
            static note => Words.Of(note.Position),
            [
                new("string", static note => note.Position.String, IsNumber: true),
                new("fret", static note => note.Position.Fret, IsNumber: true),
                new("finger", static note => HandValues.Sign(note.Finger), IsNumber: true),
                new("hand at fret", static note => note.Place, IsNumber: true),
            ]
        );

    public static Description<LineNote> Asked { get; } =
        new(
            new("note of a line", "notes of a line"),
            static note => note.Positions.IsEmpty ? "nowhere" : Words.Join(" or ", note.Positions),
            [new("rings through", static note => note.Rings == 0 ? null : note.Rings, IsNumber: true)]
        );

    public static Description<LineQuery> Queries { get; } =
        new(
            new("question for a line", "questions for lines"),
            static query => $"A line of {English.Count(query.Notes.Count, "note")}",
            [
                new("neck", static query => Words.Of(query.Neck)),
                new("hand", static query => Words.Of(query.Hand)),
                new("answers", static query => query.Best, IsNumber: true),
                new("open strings", static query => query.OpenStrings ? "allowed" : "none"),
                new("hand from fret", static query => query.FirstPlace, IsNumber: true),
                new("hand to fret", static query => Math.Min(query.LastPlace, query.Neck.Frets), IsNumber: true),
                new("rather at fret", static query => query.PreferredPlace, IsNumber: true),
            ]
        );

    /// <summary>A line whose neck is not known.</summary>
    public static Sheet Line(FingeredLine line) => new([Title(line), Table(line, null, null)]);

    /// <summary>A line on its neck.</summary>
    public static Sheet Line(LineDrawing drawing) => new([Title(drawing.Line), .. Blocks(drawing)]);

    /// <summary>The answers, the best first; where there is none, why.</summary>
    public static Sheet Answer(LineAnswer answer)
    {
        if (answer.Reason is { } reason)
        {
            return new(new Block.Prose(Words.Said(reason.InWords)));
        }

        var blocks = new List<Block>
        {
            new Block.Title(
                answer.Count == 1 ? "The best way" : $"The best {Printed.Number(answer.Count)} ways",
                $"effort {English.List(answer.Select(static line => GripWords.Effort(line.Effort)))}"
            ),
        };
        for (var i = 0; i < answer.Count; i++)
        {
            var isElsewhere =
                i == 0
                || !answer[i]
                    .Select(static note => note.Position)
                    .SequenceEqual(answer[i - 1].Select(static n => n.Position));
            if (answer.Count > 1)
            {
                blocks.Add(new Block.Heading($"Way {i + 1}, {Shifts(answer[i])}"));
            }

            blocks.AddRange(Blocks(new(answer[i], answer.Query.Neck), isElsewhere));
        }

        return new(blocks);
    }

    private static Block.Title Title(FingeredLine line) =>
        new(
            $"A line of {English.Count(line.Count, "note")}",
            $"effort {GripWords.Effort(line.Effort)}, {Shifts(line)}"
        );

    private static string Shifts(FingeredLine line) =>
        line.Shifts.Count() is var count && count == 0 ? "no shift" : English.Count(count, "shift");

    private static IEnumerable<Block> Blocks(LineDrawing drawing, bool showsNeck = true)
    {
        if (showsNeck && drawing.Line.Count > 0)
        {
            yield return Picture(drawing);
        }

        yield return Table(drawing.Line, drawing.Neck, drawing.Chord);
    }

    /// <summary>The order of the notes on the frets that they are at.</summary>
    public static NeckDrawing Drawing(LineDrawing line)
    {
        var marks = line
            .Line.Select(static (note, index) => (note.Position, Order: index + 1))
            .GroupBy(static note => note.Position)
            .Select(group =>
            {
                var (name, function) = Tone(group.Key, line.Neck, line.Chord);
                return new Mark(group.Key)
                {
                    Name = name,
                    Function = function,
                    Role = function is { } degree ? ToneRoles.Over(degree, line.Chord!.Formula) : ToneRole.ChordTone,
                    Label = Order([.. group.Select(static note => note.Order)]),
                };
            });
        return NeckDrawing.Of(line.Neck, marks).WithFretsOfMarks().WithLeftHand(line.IsLeftHanded);
    }

    private static Block.Picture Picture(LineDrawing line)
    {
        var drawing = Drawing(line);
        return new(
            (context, naming) =>
                NeckFigure.Write(drawing.WithNaming(naming).WithTitle("The order of the notes"), context),
            naming => drawing.WithNaming(naming).WithTitle("The order of the notes").ToString()
        );
    }

    private static string Order(IReadOnlyList<int> orders)
    {
        var all = string.Join(',', orders);
        return all.Length <= Mark.MaxLabelLength ? all : $"{orders[0]}…";
    }

    private static Block.Table Table(FingeredLine line, Neck? neck, Chord? chord)
    {
        var shifts = line.Shifts.ToHashSet();
        var rows = new List<IReadOnlyList<Cell>>();
        for (var i = 0; i < line.Count; i++)
        {
            var note = line[i];
            var row = new List<Cell> { i + 1 };
            if (neck is not null)
            {
                var (name, function) = Tone(note.Position, neck, chord);
                row.Add(Words.Of(Pitch.Nearest(name, neck.MidiNumberAt(note.Position))));
                if (chord is not null)
                {
                    row.Add(
                        function is { } degree ? new Cell(Words.Of(degree), ToneRoles.Over(degree, chord.Formula)) : ""
                    );
                }
            }

            row.AddRange([note.Position.String, note.Position.Fret, HandValues.Sign(note.Finger), note.Place]);
            if (shifts.Count > 0)
            {
                row.Add(shifts.Contains(i) ? Shift(line[i - 1].Place, note.Place, neck) : "");
            }

            rows.Add(row);
        }

        return new(
            "Note by note",
            [
                new("no.", IsNumber: true),
                .. neck is null ? [] : new Column[] { "note" },
                .. neck is null || chord is null ? [] : new Column[] { "function" },
                new("string", IsNumber: true),
                new("fret", IsNumber: true),
                new("finger", IsNumber: true),
                new("hand at fret", IsNumber: true),
                .. shifts.Count == 0 ? [] : new Column[] { "shift" },
            ],
            rows
        );
    }

    private static string Shift(int from, int to, Neck? neck)
    {
        var frets = English.Count(Math.Abs(to - from), "fret");
        var distance = neck is null
            ? ""
            : string.Create(
                CultureInfo.InvariantCulture,
                $", {Math.Abs(neck.FretDistance(to) - neck.FretDistance(from)):0}\u00a0mm"
            );
        return $"{frets} {(to > from ? "up" : "down")}{distance}";
    }

    private static (NoteName Name, Degree? Function) Tone(Position position, Neck neck, Chord? chord)
    {
        var sound = neck.MidiNumberAt(position);
        return chord?.Formula.At(sound - chord.Root.PitchClass) is { } degree
            ? (chord.Root.Add(degree), degree)
            : (Pitch.FromMidi(sound).Name, null);
    }
}
