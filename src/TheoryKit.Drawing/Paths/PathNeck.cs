using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Tab;
using TheoryKit.Paths;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Drawing.Paths;

/// <summary>
/// A path on its neck: a mark for each position it visits, and the order as a line that tapers towards the next note. Equal
/// when the path and what is shown agree.
/// </summary>
/// <remarks>
/// A position that does the same whenever it is played shows that function. One that does different things over different chords
/// shows none; its mark is a plain dot, and the description says so. Without chords every mark is a plain disc. A mark says what its
/// fret sounds by itself; a bend leads from there in an arrow to a small mark where the pitch lies that it reaches. A harmonic, in a
/// diamond, says what it sounds. Dead notes, clicks that sound no pitch, are not there.
/// </remarks>
/// <param name="Path">The path.</param>
public sealed record PathNeck(Path Path)
{
    /// <summary>The path.</summary>
    public Path Path
    {
        get;
        init => field = Check.NotNull(value, nameof(Path));
    } = Check.NotNull(Path);

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
            var marks = Sounding
                .Index()
                .GroupBy(static each => each.Item.Position)
                .Select(group => Mark(group.Key, [.. group]))
                .ToList();
            var drawing = NeckDrawing
                .Of(Path.Neck, [.. marks, .. Reached(marks)])
                .WithFretsOfMarks()
                .WithLabels(Labels)
                .WithLeftHand(IsLeftHanded)
                .WithTitle(TabWords.Title(Path, "P", null))
                .WithGestures(Gestures());
            drawing = drawing.WithRemark(Remark(drawing));
            return ShowsTrail ? drawing.WithTrail(Sounding.Select(static note => note.Position)) : drawing;
        }
    }

    private IEnumerable<PathNote> Sounding => Path.Notes.Where(static note => !note.IsDead);

    /// <summary>The drawing with its title, in a format, and notes named in the reader's way.</summary>
    internal NeckDrawing Of(string format, IFormatProvider? naming) =>
        Drawing.WithTitle(TabWords.Title(Path, format, naming)).WithNaming(naming);

    /// <summary>A note as its fret sounds by itself; a harmonic as it is.</summary>
    private static PathNote Held(PathNote note) => note.Bend > 0 ? note with { Bend = 0, Techniques = [] } : note;

    /// <summary>Where the pitches lie that bends reach, if nothing is played there.</summary>
    private IEnumerable<Mark> Reached(List<Mark> marks) =>
        Sounding
            .Where(static note => note.Bend > 0 && note.Bend % 100 == 0)
            .GroupBy(static note => new Position(note.Position.String, note.Position.Fret + (note.Bend / 100)))
            .Where(group => Path.Neck.Has(group.Key) && marks.TrueForAll(mark => mark.Position != group.Key))
            .Select(group =>
            {
                var functions = group.Select(Path.FunctionOf).Distinct().ToList();
                var first = group.First();
                return new Mark(group.Key)
                {
                    Function = functions.Count == 1 ? functions[0] : null,
                    Name = Path.SoundingPitch(first).Name,
                    Role = functions.Count > 1 ? ToneRole.Other : TabNote.Role(Path, first) ?? ToneRole.ChordTone,
                    IsPale = true,
                };
            });

    private IEnumerable<NeckGesture> Gestures()
    {
        var last = new PathNote?[Path.Neck.StringCount + 1];
        foreach (var note in Path.Notes)
        {
            var position = note.Position;
            if (note.IsDead)
            {
                last[position.String] = null;
                continue;
            }

            if (note.Techniques.Any(static each => each.IsBent))
            {
                yield return new(NeckGestureKind.Bend, position, note.Bend, $"bend {TabWords.PlainAmount(note.Bend)}");
            }

            if (note.Has(Technique.Slide) && last[position.String] is { } before && before.End == note.Start)
            {
                yield return new(NeckGestureKind.Slide, before.Position, position.Fret, $"slide to {position}");
            }

            foreach (var (technique, kind, leadsAway) in Slides.Where(each => note.Has(each.Technique)))
            {
                yield return new(kind, position, leadsAway, technique.Name);
            }

            foreach (var harmonic in Harmonics.Where(note.Has))
            {
                yield return new(NeckGestureKind.Harmonic, position, 0, harmonic.Name);
            }

            last[position.String] = note;
        }
    }

    private static readonly (Technique Technique, NeckGestureKind Kind, int LeadsAway)[] Slides =
    [
        (Technique.SlideInFromBelow, NeckGestureKind.SlideBelow, 0),
        (Technique.SlideInFromAbove, NeckGestureKind.SlideAbove, 0),
        (Technique.SlideOutDown, NeckGestureKind.SlideBelow, 1),
        (Technique.SlideOutUp, NeckGestureKind.SlideAbove, 1),
    ];

    private static readonly Technique[] Harmonics = [Technique.NaturalHarmonic, Technique.ArtificialHarmonic];

    // "These change with the chord: string 4 fret 5 is the ♭3 and the 5. Played: string 2 fret 8 bend by a whole tone to A4, the 9."
    private string Remark(NeckDrawing drawing)
    {
        var several = Sounding
            .GroupBy(static note => note.Position)
            .Select(group =>
                (Position: group.Key, Functions: group.Select(note => Path.FunctionOf(Held(note))).Distinct().ToList())
            )
            .Where(static each => each.Functions.Count > 1)
            .Select(each =>
                $"{drawing.Place(each.Position)} is {English.List([.. each.Functions.Select(static f => f is { } function ? $"the {function.ToString("P")}" : "of no chord")])}"
            )
            .ToList();
        var changing = several.Count == 0 ? "" : $"These change with the chord: {string.Join("; ", several)}.";
        var played = Played(drawing).Distinct().ToList();
        return played.Count == 0 ? changing : $"{changing} Played: {string.Join("; ", played)}.".TrimStart();
    }

    private IEnumerable<string> Played(NeckDrawing drawing)
    {
        foreach (var note in Sounding)
        {
            foreach (
                var technique in note.Techniques.Where(static each =>
                    each == Technique.Slide
                    || (TabWords.IsOfPitch(each) && each != Technique.Release)
                    || Slides.Any(slide => slide.Technique == each)
                )
            )
            {
                var function =
                    TabWords.IsOfPitch(technique) && Path.FunctionOf(note) is { } sounding
                        ? $", {(note.Bend % 100 == 0 ? "" : "a quarter tone above ")}the {sounding.ToString("P")}"
                        : "";
                var what = TabWords.IsOfPitch(technique)
                    ? TabWords.Pitched(Path, note, technique, drawing.Naming) + function
                    : "";
                yield return $"{drawing.Place(note.Position)} {technique.Name}{what}";
            }
        }
    }

    private Mark Mark(Position position, IReadOnlyList<(int Index, PathNote Note)> notes)
    {
        var held = notes.Select(static each => Held(each.Note)).ToList();
        var functions = held.Select(Path.FunctionOf).Distinct().ToList();
        var names = held.Select(note => Path.SoundingPitch(note).Name).Distinct().ToList();
        var fingers = notes.Select(static each => each.Note.Finger).Distinct().ToList();
        var order = string.Join(',', notes.Select(static each => each.Index + 1));
        return new(position)
        {
            Function = functions.Count == 1 ? functions[0] : null,
            Name = names.Count == 1 ? names[0] : null,
            Finger = fingers.Count == 1 ? (int?)fingers[0] : null,
            Order = order.Length <= TheoryKit.Drawing.Necks.Mark.MaxLabelLength ? order : $"{notes[0].Index + 1}…",
            Role = functions.Count > 1 ? ToneRole.Other : TabNote.Role(Path, held[0]) ?? ToneRole.ChordTone,
        };
    }
}
