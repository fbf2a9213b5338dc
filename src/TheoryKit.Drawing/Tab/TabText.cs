using TheoryKit.Drawing.Necks;
using TheoryKit.Licks.Tab;

namespace TheoryKit.Drawing.Tab;

/// <summary>Writes a drawing of tab as plain tab, as <see cref="PlainTab"/> does, below a title and with what each note does below it.</summary>
internal static class TabText
{
    public static string Write(TabDrawing drawing)
    {
        var (path, neck) = (drawing.Path, drawing.Path.Neck);
        var tuning = Printed.Of(neck.Tuning, drawing.Naming, "G");
        var capo = neck.Capo > 0 ? $", {TabWords.Capo(neck)}" : "";
        var tab = PlainTab.Write(
            path,
            new()
            {
                Columns = drawing.Columns,
                Naming = drawing.Naming,
                ShowsTime = drawing.ShowsRhythm,
                Label = drawing.ShowsFunctions
                    ? note => TabNote.Label(path, note, drawing.Shown, "G", drawing.Naming)
                    : null,
                SaysAll = false,
            }
        );
        return $"{drawing.Named("G")}  ({tuning}{capo}, {path.Time})\n\n{tab}";
    }
}
