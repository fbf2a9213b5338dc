using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Necks;

/// <summary>Where everything lies in the picture of a neck, in px; x already mirrored for the left hand.</summary>
/// <remarks>
/// Along the neck the picture is true to scale (<see cref="Neck.FretDistance"/>); across, the strings spread from nut to
/// saddle as on an instrument, and far enough apart for marks of one size.
/// </remarks>
internal sealed class NeckLayout
{
    public const double MarkRadius = 10;
    public const double NutWidth = 5;
    public const double EdgeMargin = 12; // board beyond the outer strings
    public const double TypeSize = 11;

    public const double Side = 12; // margin left and right
    public const double LaneHeight = 20; // of a band below the neck
    public const double LaneGap = 4;

    private const double SpacingAtNut = 24;
    private const double SpacingGrowth = 5; // from nut to saddle
    private const double NarrowestFret = 19;
    private const double WidestFret = 70;
    private const double UsualLength = 800;
    private const double NumberHeight = 24;
    private const double KeyHeight = 22;
    private const double CharacterWidth = 7.6;
    private const double StubLength = 12; // of strings beyond the frets shown

    private readonly Neck neck;
    private readonly bool isMirrored;
    private readonly double scale; // px per mm
    private readonly double startX; // of the first fret line drawn
    private readonly double startDistance; // its distance from the nut in mm
    private readonly double middle;
    private readonly double lanesTop;

    public NeckLayout(NeckDrawing drawing)
    {
        neck = drawing.Neck;
        isMirrored = drawing.IsLeftHanded;
        FirstLine = Math.Max(0, drawing.FirstFret - 1);
        LastLine = drawing.LastFret;
        ShowsOpen = drawing.FirstFret == 0;
        startDistance = neck.FretDistance(FirstLine);
        scale = Scale();

        var longest = neck.Tuning.Strings.Max(each => each.Open.Name.ToString("P", drawing.Naming).Length);
        NameEnd = Side + (longest * CharacterWidth);
        startX =
            NameEnd
            + (
                ShowsOpen ? 8 + (2 * MarkRadius) + 3 + NutWidth
                : FirstLine == 0 ? 6 + NutWidth
                : 6 + StubLength
            );
        EndX = Raw(LastLine);
        Width = Math.Ceiling(EndX + StubLength + Side + 4);

        var half = (neck.StringCount - 1) / 2.0 * SpacingAt(neck.FretDistance(LastLine)) + EdgeMargin;
        Top = neck.Capo > 0 && neck.Capo >= FirstLine ? 22 : 12;
        middle = Rounded(Top + half);
        Bottom = middle + half;
        lanesTop = Bottom + NumberHeight;
        var lanes = drawing.Lanes.Select(static each => each.Lane + 1).DefaultIfEmpty().Max();
        var lanesHeight = lanes == 0 ? 0 : (lanes * (LaneHeight + LaneGap)) + 6;
        Height = Math.Ceiling(lanesTop + lanesHeight + (drawing.HasKey ? KeyHeight : 0));
    }

    /// <summary>The fret lines drawn: from this one, 0 being the nut,</summary>
    public int FirstLine { get; }

    /// <summary>to this one.</summary>
    public int LastLine { get; }

    public bool ShowsOpen { get; }

    public double Width { get; }

    public double Height { get; }

    /// <summary>Above and below the board at its widest.</summary>
    public double Top { get; }

    public double Bottom { get; }

    /// <summary>Where string names end (for the right hand), before mirroring.</summary>
    public double NameEnd { get; }

    /// <summary>Where the last fret lies, before mirroring.</summary>
    public double EndX { get; }

    /// <summary>Where the first fret line lies, before mirroring.</summary>
    public double StartX => startX;

    /// <summary>How far strings run beyond what is shown, before mirroring.</summary>
    public double StringEnd => EndX + StubLength;

    public double StringStart(int number)
    {
        var start = neck.Tuning[number].Start;
        return start > FirstLine ? PegX(start)
            : FirstLine > 0 ? startX - StubLength
            : startX;
    }

    /// <summary>Where a short string is held, before mirroring: behind its first fret.</summary>
    public double PegX(int start) => Raw(start) - 6;

    /// <summary>The middle of the capo behind its fret, before mirroring.</summary>
    public double CapoX => Raw(neck.Capo) - 6;

    /// <summary>An x for the hand that plays.</summary>
    public double Mirrored(double x) => isMirrored ? Width - Rounded(x) : Rounded(x);

    /// <summary>A tenth of a px is finer than any screen shows; more digits would only make the picture longer.</summary>
    public static double Rounded(double length) => Math.Round(length, 1);

    /// <summary>Where a fret wire lies, before mirroring.</summary>
    public double Raw(int fret) => startX + ((neck.FretDistance(fret) - startDistance) * scale);

    /// <summary>Where a string lies at an x before mirroring.</summary>
    public double Y(double number, double x)
    {
        var distance = startDistance + Math.Max(0, (Math.Clamp(x, startX, EndX) - startX) / scale);
        return Rounded(middle + ((number - ((neck.StringCount + 1) / 2.0)) * SpacingAt(distance)));
    }

    /// <summary>The middle of a mark, before mirroring: close behind the fret, as a finger is, or left of where the string begins.</summary>
    public double MarkX(Position position)
    {
        var fret = position.Fret;
        if (fret == neck.OpenFret(position.String))
        {
            return Raw(fret) - 3 - MarkRadius - (fret == 0 ? NutWidth : MarkRadius);
        }

        var width = Raw(fret) - Raw(fret - 1);
        return Raw(fret) - Math.Min(width / 2, Math.Max(MarkRadius + 3, width * 0.36));
    }

    /// <summary>Where a lane of bands begins.</summary>
    public double LaneY(int lane) => Rounded(lanesTop + (lane * (LaneHeight + LaneGap)));

    /// <summary>Where a band begins and ends, before mirroring: at fret wires, and the open strings left of the nut.</summary>
    public (double From, double To) BandX(TheoryKit.Fingering.Hands.Window window)
    {
        var from =
            window.First > FirstLine ? Raw(window.First - 1)
            : window.First == 0 && ShowsOpen ? startX - NutWidth - (2 * MarkRadius) - 5
            : startX;
        return (from, window.Last > 0 ? Raw(Math.Min(window.Last, LastLine)) : startX);
    }

    /// <summary>The middle between two fret wires, before mirroring.</summary>
    public double BetweenFrets(int fret) => (Raw(fret) + Raw(fret - 1)) / 2;

    private double Scale()
    {
        double Gap(int fret) => neck.FretDistance(fret) - neck.FretDistance(fret - 1);
        var total = neck.FretDistance(LastLine) - startDistance;
        var comfortable = Math.Min(WidestFret / Gap(FirstLine + 1), UsualLength / total);
        return Math.Max(comfortable, NarrowestFret / Gap(LastLine));
    }

    private double SpacingAt(double distance) => SpacingAtNut + (SpacingGrowth * distance / neck.ScaleLength);
}
