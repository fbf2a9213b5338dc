using TheoryKit.Paths;
using TheoryKit.Theory;
using TheoryKit.Tunings;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Drawing;

/// <summary>
/// A path on its neck: a mark for each position it visits, and the order as a line that tapers towards the next note. Equal
/// when the path and what is shown agree.
/// </summary>
/// <remarks>
/// A position that does the same whenever it is played shows that function. One that does different things over different chords
/// shows none; its mark is a plain dot, and the description says so. Without chords every mark is a plain disc.
/// </remarks>
/// <param name="Path">The path.</param>
public sealed record PathNeck(Path Path)
{
    /// <summary>What is written on the marks at first.</summary>
    public Labels Labels { get; init; }

    /// <summary>Whether the neck is mirrored for a left-handed player.</summary>
    public bool IsLeftHanded { get; init; }

    /// <summary>Whether the line that tells the order is drawn.</summary>
    public bool ShowsTrail { get; init; } = true;

    /// <summary>The path as a drawing of its neck.</summary>
    public NeckDrawing Drawing
    {
        get
        {
            var marks = Path
                .Notes.Index()
                .GroupBy(static each => each.Item.Position)
                .Select(group => Mark(group.Key, [.. group]));
            var drawing = NeckDrawing
                .Of(Path.Neck, marks)
                .WithFretsOfMarks()
                .WithLabels(Labels)
                .WithLeftHand(IsLeftHanded)
                .WithTitle(TabWords.Title(Path, "P", null));
            drawing = drawing.WithRemark(Remark(drawing));
            return ShowsTrail ? drawing.WithTrail(Path.Notes.Select(static note => note.Position)) : drawing;
        }
    }

    /// <summary>The drawing with its title, in a format, and notes named in the reader's way.</summary>
    internal NeckDrawing Of(string format, IFormatProvider? naming) =>
        Drawing.WithTitle(TabWords.Title(Path, format, naming)).WithNaming(naming);

    // "string 4 fret 5 is the ♭3 and the 5".
    private string Remark(NeckDrawing drawing)
    {
        var several = Path
            .Notes.GroupBy(static note => note.Position)
            .Select(group =>
                (Position: group.Key, Functions: group.Select(note => Path.FunctionOf(note)).Distinct().ToList())
            )
            .Where(static each => each.Functions.Count > 1)
            .Select(each =>
                $"{drawing.Place(each.Position)} is {InWords.List([.. each.Functions.Select(static f => f is { } function ? $"the {function.ToString("P")}" : "of no chord")])}"
            )
            .ToList();
        return several.Count == 0 ? "" : $"These change with the chord: {string.Join("; ", several)}.";
    }

    private Mark Mark(Position position, IReadOnlyList<(int Index, PathNote Note)> notes)
    {
        var functions = notes.Select(each => Path.FunctionOf(each.Note)).Distinct().ToList();
        var names = notes.Select(static each => each.Note.Pitch.Name).Distinct().ToList();
        var fingers = notes.Select(static each => each.Note.Finger).Distinct().ToList();
        var order = string.Join(',', notes.Select(static each => each.Index + 1));
        return new(position)
        {
            Function = functions.Count == 1 ? functions[0] : null,
            Name = names.Count == 1 ? names[0] : null,
            Finger = fingers.Count == 1 ? (int?)fingers[0] : null,
            Order = order.Length <= TheoryKit.Drawing.Mark.MaxLabelLength ? order : $"{notes[0].Index + 1}…",
            Role = functions.Count > 1 ? ToneRole.Other : TabNote.Role(Path, notes[0].Note) ?? ToneRole.ChordTone,
        };
    }
}
