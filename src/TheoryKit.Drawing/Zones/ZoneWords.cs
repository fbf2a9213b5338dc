using System.Globalization;
using TheoryKit.Drawing.Hands;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Zones;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Zones;

/// <summary>What there is to say about zones.</summary>
internal static class ZoneWords
{
    /// <summary>The form in a letter, or the strings of its roots: "E", "6 1 | 4".</summary>
    public static string Short(Form form) =>
        form.Letter
        ?? string.Join(
            " | ",
            new[] { form.Lower, form.Upper }
                .Where(static strings => strings.Count > 0)
                .Select(static strings => string.Join(' ', strings))
        );

    /// <summary>"E form", "zone with roots on strings 5 and 2, then 4".</summary>
    public static string Named(Form form) =>
        form.Letter is { } letter ? $"{letter} form"
        : form.Lower.Count + form.Upper.Count == 0 ? "zone between the roots"
        : $"zone of {Roots(form)}";

    /// <summary>"roots on strings 6 and 1, then 4".</summary>
    public static string Roots(Form form)
    {
        if (form.Lower.Count + form.Upper.Count == 0)
        {
            return "no root";
        }

        var lower = English.List(form.Lower.Select(static number => $"{number}"));
        var upper = English.List(form.Upper.Select(static number => $"{number}"));
        var one = form.Lower.Count + form.Upper.Count == 1;
        return (one ? "root on string " : "roots on strings ")
            + (
                lower.Length == 0 ? upper
                : upper.Length == 0 ? lower
                : $"{lower}, then {upper}"
            );
    }

    /// <summary>"frets 5 to 8", "open strings to fret 3".</summary>
    public static string Frets(Window window) =>
        window.Width == 1 ? $"fret {window.First}"
        : window.First == 0 ? $"open strings to fret {window.Last}"
        : $"frets {window.First} to {window.Last}";

    /// <summary>How far apart the fingertips on the first and the last fret are, in mm.</summary>
    public static double Spread(Window window, Neck neck) =>
        neck.FretDistance(window.Last)
        - neck.FretDistance(Math.Min(window.Last, Math.Max(window.First, neck.Capo + 1)));

    /// <summary>"string 5, fret 6 with 4, a stretch 30 mm past the window", "..., shifting 34 mm up".</summary>
    /// <param name="other">The other place.</param>
    /// <param name="zone">The zone that it is an alternative in; null for none.</param>
    public static Words Alternative(ShapeAlternative other, Zone? zone = null)
    {
        var how = other.Shift switch
        {
            0 when zone is not null && Beyond(other.Position.Fret, zone) is > 0 and var beyond =>
                $"a stretch of {Millimetres(beyond)} past the window",
            0 => "without a shift",
            > 0 => $"shifting {Millimetres(other.Shift)} up",
            _ => $"shifting {Millimetres(-other.Shift)} down",
        };
        return other.Finger is { } finger
            ? $"string {other.Position.String}, fret {other.Position.Fret} with {HandValues.Sign(finger)}, {how}"
            : (Words)$"string {other.Position.String} open";
    }

    /// <summary>How far a fret lies outside the window, in mm.</summary>
    private static double Beyond(int fret, Zone zone)
    {
        var (neck, window) = (zone.Neck, zone.Window);
        var edge = Math.Clamp(fret, window.First, window.Last);
        return Math.Abs(neck.FretDistance(fret) - neck.FretDistance(edge));
    }

    private static string Millimetres(double length) =>
        Math.Round(length).ToString(CultureInfo.InvariantCulture) + "\u00a0mm";
}
