using System.Globalization;

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
        var swedish = CultureInfo.GetCultureInfo("sv-SE");
        Assert.Equal("\u22121,5", (-1.5).ToString(swedish));
        var foreign = await Pages(swedish);
        Assert.Equal(plain.Keys, foreign.Keys);
        foreach (var (name, page) in plain)
        {
            Assert.Equal(page, foreign[name]);
        }
    }

    [Fact]
    public async Task Cells_run_in_the_culture_of_the_machine()
    {
        program.Write("copper-weather.ipynb", "Console.Write(-1.5);");
        var pages = await Pages(CultureInfo.GetCultureInfo("sv-SE"));
        Assert.Contains("\u22121,5</pre>", pages["copper-weather.html"], StringComparison.Ordinal);
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

    /// <summary>What is printed where this culture is the machine's.</summary>
    private async Task<SortedDictionary<string, string>> Pages(CultureInfo culture)
    {
        const string Setting = "LC_ALL";
        var setting = Environment.GetEnvironmentVariable(Setting);
        var before = (CultureInfo.CurrentCulture, CultureInfo.DefaultThreadCurrentCulture);
        try
        {
            (CultureInfo.CurrentCulture, CultureInfo.DefaultThreadCurrentCulture) = (culture, culture);
            Environment.SetEnvironmentVariable(
                Setting,
                culture.Name.Length == 0 ? "C" : culture.Name.Replace('-', '_') + ".UTF-8"
            );
            Assert.True(await program.Print() == 0, program.Errors);
        }
        finally
        {
            Environment.SetEnvironmentVariable(Setting, setting);
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
