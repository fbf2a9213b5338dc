using System.Globalization;
using TheoryKit.Hosts;

namespace TheoryKit.Cli;

[Collection("one notebook at a time")]
public sealed class CultureTests : IDisposable
{
    private readonly CommandLine program = new();

    public void Dispose() => program.Dispose();

    [Fact]
    public async Task Every_notebook_is_printed_alike_where_numbers_are_written_in_another_way()
    {
        Repository.CopyNotebooks(program.At("notebooks"));

        // Plain text is what a reader without pictures gets.
        program.Write(
            "texts.ipynb",
            "#r \"nuget:TheoryKit.Interactive, 0.1.0\"",
            "using Microsoft.DotNet.Interactive.Formatting;\nvar neck = new Neck(Tuning.Find(\"DADGAD\")!, scaleLength: 640.5);\n"
                + "object[] values = [neck, neck.Tuning, Pitch.Parse(\"C-1\"), Hand.Small, Chord.Parse(\"G7\").On(neck), "
                + "Changes.Parse(\"3/4: Fm7 Bb7 | Ebmaj7\"), new ChordPage(Chord.Parse(\"Gm9\")), "
                + "GripSearch.Find(new GripQuery { Chord = Chord.Parse(\"G7\"), Neck = neck }), Chord.Parse(\"G7\").Zones(neck)];\n"
                + "foreach (var value in values) { display(value); Console.WriteLine(value.ToDisplayString(\"text/plain\")); }"
        );
        var plain = await Pages(CultureInfo.InvariantCulture);
        var german = (CultureInfo)CultureInfo.GetCultureInfo("de-DE").Clone();
        german.NumberFormat.NegativeSign = "\u2212";
        var foreign = await Pages(german);
        Assert.Equal(plain.Keys, foreign.Keys);
        foreach (var (name, page) in plain)
        {
            Assert.Equal(page, foreign[name]);
        }
    }

    [Fact]
    public async Task A_cell_may_use_any_culture()
    {
        program.Write(
            "copper-weather.ipynb",
            "(1.5).ToString(System.Globalization.CultureInfo.GetCultureInfo(\"de-DE\"))"
        );
        Assert.Equal(0, await program.Print());
        Assert.Contains("1,5", program.Page("copper-weather"), StringComparison.Ordinal);
    }

    private async Task<SortedDictionary<string, string>> Pages(CultureInfo culture)
    {
        var before = (CultureInfo.CurrentCulture, CultureInfo.DefaultThreadCurrentCulture);
        try
        {
            (CultureInfo.CurrentCulture, CultureInfo.DefaultThreadCurrentCulture) = (culture, culture);
            Assert.True(await program.Print() == 0, program.Errors);
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.DefaultThreadCurrentCulture) = before;
        }

        var pages = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var file in Directory.GetFiles(program.At("out")))
        {
            pages[Path.GetFileName(file)] = File.ReadAllText(file);
        }

        return pages;
    }
}
