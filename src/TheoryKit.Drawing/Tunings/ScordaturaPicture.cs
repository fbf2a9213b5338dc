using System.Text;
using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Tunings.Turns;

namespace TheoryKit.Drawing.Tunings;

/// <summary>Writes the picture of a retuning: a row for each string, string 1 on top, with what it is tuned to before and after.</summary>
internal static class ScordaturaPicture
{
    private const double Row = 34;
    private const double Top = 12;
    private const double Width = 396;
    private const double Number = 20; // where everything stands, from the left
    private const double From = 68;
    private const double LineStart = 78;
    private const double Box = 100;
    private const double BoxWidth = 196;
    private const double BoxHeight = 26;
    private const double LineEnd = 318;
    private const double To = 328;

    private const string Css =
        ".tk-turn-from{font-size:14px}.tk-turn-to{font-size:15px;font-weight:600}.tk-turn-how{font-size:13px}.tk-turn-step{font-size:13px;font-weight:600}.tk-turn-number{font-size:12px}";

    public static string Html(Scordatura scordatura, RenderContext context, IFormatProvider? naming)
    {
        var count = scordatura.From.StringCount;
        var svg = new SvgWriter(8 * 1024);
        svg.Picture(context, Width, (2 * Top) + (Row * count), "What to turn", Describe(scordatura, naming), Css);
        for (var number = 1; number <= count; number++)
        {
            WriteString(svg, scordatura, scordatura[number], naming);
        }

        return svg.Close().ToString();
    }

    public static string Text(Scordatura scordatura, IFormatProvider? naming)
    {
        var text = new StringBuilder();
        foreach (var turn in scordatura.Strings)
        {
            var step = Step(scordatura, turn);
            var how = step is null ? new string('-', 27) : $" ({step}) {TuningWords.Turned(turn)} ".PadRight(27, '-');
            text.Append($"{turn.Number, 2}  {turn.From.ToString("G", naming), -4}---{how}---  ");
            text.Append(turn.To.ToString("G", naming)).Append('\n');
        }

        return text.ToString();
    }

    private static void WriteString(SvgWriter svg, Scordatura scordatura, StringTurn turn, IFormatProvider? naming)
    {
        var y = Top + (Row * (turn.Number - 0.5));
        var step = Step(scordatura, turn);
        var baseline = y + 5;
        Label(svg, Number, baseline - 0.5, Look.Quiet, "middle", "tk-turn-number", $"{turn.Number}");
        Label(
            svg,
            From,
            baseline,
            step is null ? Look.Ink : Look.Quiet,
            "end",
            "tk-turn-from",
            turn.From.ToString("P", naming)
        );
        // A short string is as thin as string 1.
        var thickness = scordatura.From[turn.Number].Start > 0 ? 1 : 1 + (0.35 * (turn.Number - 1));
        svg.Line(LineStart, y, LineEnd, y).Stroke(Look.Line, thickness).Close();
        Label(
            svg,
            To,
            baseline,
            step is null ? Look.Quiet : Look.Ink,
            "start",
            step is null ? "tk-turn-from" : "tk-turn-to",
            turn.To.ToString("P", naming)
        );
        if (step is null)
        {
            return;
        }

        svg.Rectangle(Box, y - (BoxHeight / 2), BoxWidth, BoxHeight, BoxHeight / 2).Fill(Look.Board).Close();
        svg.Circle(Box + (BoxHeight / 2), y, BoxHeight / 2).Fill(Look.Root).Close();
        Label(svg, Box + (BoxHeight / 2), baseline - 0.5, Look.OnRoot, "middle", "tk-turn-step", $"{step}");
        var x = Box + BoxHeight + 15;
        var tip = turn.Direction == Turn.Up ? -5.5 : 5.5;
        svg.Path(PenMove.To(x - 6, y - tip), PenMove.Line(x + 6, y - tip), PenMove.Line(x, y + tip), PenMove.Back)
            .Fill(Look.Ink)
            .Close();
        Label(svg, x + 14, baseline - 0.5, Look.Ink, "start", "tk-turn-how", TuningWords.Turned(turn));
    }

    private static void Label(
        SvgWriter svg,
        double x,
        double y,
        LookColour colour,
        string anchor,
        string cssClass,
        string text
    ) =>
        svg.Label(x, y)
            .Attribute("fill", colour.Light)
            .Attribute("class", $"{colour.FillClass} {cssClass}")
            .Attribute("text-anchor", anchor)
            .Text(text)
            .Close();

    private static int? Step(Scordatura scordatura, StringTurn turn)
    {
        for (var index = 0; index < scordatura.Steps.Count; index++)
        {
            if (scordatura.Steps[index].Number == turn.Number)
            {
                return index + 1;
            }
        }

        return null;
    }

    private static string Describe(Scordatura scordatura, IFormatProvider? naming)
    {
        var words = new StringBuilder(
            $"{Printed.Capital(Printed.Number(scordatura.From.StringCount))} strings, string 1 on top."
        );
        foreach (var turn in scordatura.Strings)
        {
            var step = Step(scordatura, turn);
            words.Append($" String {turn.Number}: {turn.From.ToString("P", naming)}");
            words.Append(
                step is null
                    ? ", stays."
                    : $", {TuningWords.Turned(turn)} to {turn.To.ToString("P", naming)}, step {step}."
            );
        }

        return words.ToString();
    }
}
