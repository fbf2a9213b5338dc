using TheoryKit.Paths.Routes;

namespace TheoryKit.Drawing.Routes;

/// <summary>Writes the map of a route in characters: the neck from left to right, a line for every chord.</summary>
internal static class RouteMapText
{
    public static string Write(Route route, IFormatProvider? naming)
    {
        var (first, last) = Frets(route);
        var chords = route.Stops.Select(stop => stop.Chord.ToString("G", naming)).ToList();
        var width = chords.Max(static chord => chord.Length);
        var lines = new List<string> { $"{"".PadRight(width)} {Ruler(first, last)}" };
        var at = 0;
        for (var index = 0; index < chords.Count; index++)
        {
            var stop = route.Stops[index];
            var notes = route.Path.Notes.Skip(at).Take(stop.Notes).ToList();
            at += stop.Notes;
            var frets = string.Concat(
                Enumerable
                    .Range(first, last - first + 1)
                    .Select(fret =>
                        !stop.Window.Contains(fret) ? "  ·"
                        : notes.Exists(note => note.Position.Fret == fret) ? "  o"
                        : "  ="
                    )
            );
            lines.Add(
                $"{chords[index].PadRight(width)} {frets}   {stop.Window}: {string.Join(' ', notes.Select(note => stop.Chord.DegreeOf(note.Pitch.Name)))}"
            );
        }

        return string.Join('\n', lines);
    }

    /// <summary>The frets that the route's windows lie in.</summary>
    public static (int First, int Last) Frets(Route route) =>
        (route.Stops.Min(static stop => stop.Window.First), route.Stops.Max(static stop => stop.Window.Last));

    private static string Ruler(int first, int last) =>
        string.Concat(Enumerable.Range(first, last - first + 1).Select(static fret => $"{fret, 3}")).TrimEnd();
}
