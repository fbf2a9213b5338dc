using Fractions;
using Plotly.NET;
using TheoryKit.Charts.Figures;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Paths;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Charts.Paths;

/// <summary>
/// How a path rises and falls: pitch over beats, each note as long as it lasts, its function by colour and mark, the chords as
/// bands behind. Dead notes, which have no pitch, are not in it.
/// </summary>
public sealed class ContourChart : StudyChart
{
    /// <summary>The most notes whose functions are written on their marks: 64.</summary>
    public const int MostNamed = 64;

    private const int MarkSize = 21;
    private const int SmallMarkSize = 9;
    private const int DotSize = 8;
    private const int MostBarTicks = 16;
    private const int LeastPlot = 240;
    private const int MostPlot = 520;
    private const int TickHeight = 15; // px that a label beside the axis takes
    private const int Room = 2; // semitones above and below

    private readonly List<PathNote> notes;

    /// <summary>A chart of a path.</summary>
    /// <exception cref="ArgumentException">The path has no note, or dead ones only.</exception>
    public ContourChart(Path path)
    {
        ArgumentNullException.ThrowIfNull(path);
        notes = [.. path.Notes.Where(static note => !note.IsDead)];
        if (notes.Count == 0)
        {
            throw new ArgumentException("This path has no note to show.", nameof(path));
        }

        Path = path;
    }

    /// <summary>The path.</summary>
    public Path Path { get; }

    /// <inheritdoc/>
    public override string Title => "How the path rises and falls";

    /// <inheritdoc/>
    public override string Description
    {
        get
        {
            var low = notes.MinBy(static note => note.Pitch.MidiNumber)!;
            var high = notes.MaxBy(static note => note.Pitch.MidiNumber)!;
            var (rises, falls) = (Steps.Count(static step => step > 0), Steps.Count(static step => step < 0));
            var widest = Steps.Select(Math.Abs).DefaultIfEmpty().Max();
            return $"{Names.Some(notes.Count, "note")} in {Names.Some(Path.BarCount, "bar")} of {Path.Time}, "
                + $"lowest {low.Pitch.ToString("P")} in bar {BarOf(low) + 1}, highest {high.Pitch.ToString("P")} in bar {BarOf(high) + 1}. "
                + $"The line goes up {Times(rises)} and down {Times(falls)}, at most {Names.Some(widest, "semitone")} at once."
                + Functions();
        }
    }

    /// <summary>Semitones from each note to the next one that starts later.</summary>
    public IReadOnlyList<int> Steps
    {
        get
        {
            // Of notes that start together the highest is the line.
            var line = notes
                .GroupBy(static note => note.Start)
                .Select(static group => group.Max(static note => note.Pitch.MidiNumber))
                .ToList();
            return [.. line.Skip(1).Zip(line, static (next, last) => next - last)];
        }
    }

    internal override ChartTable Tabulate(string? format) =>
        new(
            ["note", "bar", "beat", "beats long", "pitch", "chord", "function"],
            notes.Select(
                (note, index) =>
                    (IEnumerable<string>)
                        [
                            $"{index + 1}",
                            $"{BarOf(note) + 1}",
                            Beat(note.Start),
                            $"{note.Length}",
                            note.Pitch.ToString(format),
                            Path.ChordAt(note.Start)?.ToString(format) ?? "",
                            Path.FunctionOf(note)?.ToString(format) ?? "",
                        ]
            )
        );

    internal override GenericChart Draw(Palette palette)
    {
        var (low, high) = (
            notes.Min(static note => note.Pitch.MidiNumber) - Room,
            notes.Max(static note => note.Pitch.MidiNumber) + Room
        );
        var height = Math.Clamp((high - low) * 14, LeastPlot, MostPlot);
        var figure = new ChartFigure(Title, height + 88, palette);
        figure.Add(
            "scatter",
            ("mode", "lines"),
            ("name", "line"),
            ("x", notes.SelectMany(static note => new object?[] { At(note.Start), At(note.End), null })),
            (
                "y",
                notes.SelectMany(static note => new object?[] { note.Pitch.MidiNumber, note.Pitch.MidiNumber, null })
            ),
            ("line", new { color = palette[Look.Line], width = 5 }),
            ("hoverinfo", "skip"),
            ("showlegend", false)
        );
        var isNamed = notes.Count <= MostNamed;
        var roles = notes.ToLookup(Role);
        foreach (var role in roles.OrderBy(static group => (group.Key == ToneRole.Other, group.Key)))
        {
            var isDot = role.Key == ToneRole.Other;
            var colour = palette[Look.Of(role.Key)];
            figure.Add(
                "scatter",
                ("mode", isNamed ? "markers+text" : "markers"),
                ("name", Path.Changes is null ? "note" : ToneRoles.Words(role.Key)),
                ("x", role.Select(static note => At(note.Start))),
                ("y", role.Select(static note => note.Pitch.MidiNumber)),
                ("text", role.Select(note => Path.FunctionOf(note)?.ToString("P") ?? "")),
                ("textposition", isDot ? "top center" : "middle center"),
                ("textfont", new { size = 11, color = palette[Look.On(role.Key)] }),
                (
                    "marker",
                    new
                    {
                        symbol = role.Key == ToneRole.Root ? "square" : "circle",
                        size = isDot ? DotSize
                        : isNamed ? MarkSize
                        : SmallMarkSize,
                        color = role.Key == ToneRole.ColourTone ? palette[Look.Paper] : colour,
                        opacity = 1,
                        line = new { color = colour, width = 2 },
                    }
                ),
                ("customdata", role.Select(Hover)),
                ("hovertemplate", "%{customdata}<extra></extra>"),
                ("cliponaxis", false)
            );
        }

        var chords = Chords().ToList();
        var everyBar = Math.Max(1, (Path.BarCount + MostBarTicks - 1) / MostBarTicks);
        var bars = Enumerable.Range(0, Path.BarCount).Where(bar => bar % everyBar == 0).ToList();
        var ticks = Ticks((double)height / (high - low));
        figure
            .Axis(
                "xaxis",
                $"bar (of {Names.Some(Path.Time.Beats, "beat")})",
                ("tickmode", "array"),
                ("tickvals", bars.Select(bar => bar * Path.Time.Beats)),
                ("ticktext", bars.Select(static bar => $"{bar + 1}")),
                ("range", new[] { -0.02 * End, End * 1.01 })
            )
            .Axis(
                "yaxis",
                "pitch",
                ("tickmode", "array"),
                ("tickvals", ticks.Select(static tick => tick.MidiNumber)),
                ("ticktext", ticks.Select(static tick => tick.ToString("P"))),
                ("range", new[] { low, high + (chords.Count > 0 ? Room : 0) })
            )
            .With("shapes", chords.Where(static (_, index) => index % 2 == 0).Select(chord => Band(palette, chord)))
            .With("annotations", Named(palette, chords));
        return (Path.Changes is null ? figure : figure.WithLegend(isReadOnly: true)).ToPlotly();
    }

    private double End => Path.BarCount * (double)Path.Time.Beats;

    private static object Band(Palette palette, (double From, double To, Chord? Chord) chord) =>
        new
        {
            type = "rect",
            layer = "below",
            xref = "x",
            yref = "paper",
            x0 = chord.From,
            x1 = chord.To,
            y0 = 0,
            y1 = 1,
            fillcolor = palette[Look.Inlay, 0.45],
            line = new { width = 0 },
        };

    /// <summary>The names of the chords at the top of their bands, as many as there is room for.</summary>
    private IEnumerable<object> Named(Palette palette, List<(double From, double To, Chord? Chord)> chords)
    {
        var free = double.MinValue;
        foreach (var (from, _, chord) in chords)
        {
            var name = chord?.ToString("P") ?? "N.C.";
            if (from < free)
            {
                continue;
            }

            // About as many characters as fit over the whole width.
            free = from + ((name.Length + 1) * End / 88);
            yield return new
            {
                x = from,
                y = 1,
                xref = "x",
                yref = "paper",
                xanchor = "left",
                yanchor = "top",
                showarrow = false,
                text = $"<b>{Names.InPlot(name)}</b>",
                font = new { size = 12, color = palette[Look.Ink] },
            };
        }
    }

    private IEnumerable<(double From, double To, Chord? Chord)> Chords()
    {
        if (Path.Changes is not { } changes)
        {
            yield break;
        }

        (double From, double To, Chord? Chord)? last = null;
        for (var round = 0; round < End; round += changes.Beats)
        {
            foreach (var span in changes.Chords)
            {
                var (from, to) = (round + At(span.Start), Math.Min(End, round + At(span.End)));
                if (from >= End)
                {
                    break;
                }

                if (last is { } open && open.Chord == span.Chord)
                {
                    last = (open.From, to, open.Chord);
                    continue;
                }

                if (last is { } done)
                {
                    yield return done;
                }

                last = (from, to, span.Chord);
            }
        }

        if (last is { } final)
        {
            yield return final;
        }
    }

    /// <summary>The pitches of the path, from the lowest on those that have room beside the axis.</summary>
    private List<Pitch> Ticks(double pixels)
    {
        var ticks = new List<Pitch>();
        foreach (
            var pitch in notes
                .Select(static note => note.Pitch)
                .DistinctBy(static each => each.MidiNumber)
                .OrderBy(static each => each.MidiNumber)
        )
        {
            if (ticks.Count == 0 || (pitch.MidiNumber - ticks[^1].MidiNumber) * pixels >= TickHeight)
            {
                ticks.Add(pitch);
            }
        }

        return ticks;
    }

    private ToneRole Role(PathNote note) =>
        Path.ChordAt(note.Start) is { } chord && Path.FunctionOf(note) is { } function
            ? ToneRoles.Over(function, chord.Formula)
        : Path.Changes is null ? ToneRole.ChordTone
        : ToneRole.Other;

    private int BarOf(PathNote note) => (int)(note.Start / Path.Time.Beats).ToBigInteger();

    private string Beat(Fraction start) => $"{((start % Path.Time.Beats) + Fraction.One).Reduce()}";

    private string Functions()
    {
        var counts = notes
            .Select(Path.FunctionOf)
            .OfType<Degree>()
            .GroupBy(static degree => degree)
            .OrderByDescending(static group => group.Count())
            .ThenBy(static group => group.Key.Semitones)
            .Take(3)
            .Select(static group => $"{group.Key.ToString("P")} ({group.Count()})")
            .ToList();
        return counts.Count == 0 ? "" : $" Functions heard most: {string.Join(", ", counts)}.";
    }

    private string Hover(PathNote note)
    {
        var function =
            Path.ChordAt(note.Start) is { } chord && Path.FunctionOf(note) is { } degree
                ? $", {degree.ToString("P")} of {Names.InPlot(chord.ToString("P"))}"
                : "";
        return $"<b>{note.Pitch.ToString("P")}</b>{function}<br>bar {BarOf(note) + 1}, beat {Beat(note.Start)}, {note.Length} beats long"
            + $"<br>string {note.Position.String}, fret {note.Position.Fret}";
    }

    private static string Times(int count) => count == 1 ? "once" : $"{count} times";

    private static double At(Fraction beat) => Math.Round(beat.ToDouble(), 4);
}
