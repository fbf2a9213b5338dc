using TheoryKit.Cli.Answers;

namespace TheoryKit.Cli;

[Collection("one notebook at a time")]
public sealed class RetuneCommandTests : IDisposable
{
    private readonly CommandLine program = new();

    public void Dispose() => program.Dispose();

    [Fact]
    public async Task The_answer_of_the_library_comes_after_plain_lines_of_progress()
    {
        Assert.Equal(
            0,
            await program.Run("retune", "Gm9 | C13 | Fmaj9 | Dm7", "--within", "1", "--best", "2", "--last-fret", "7")
        );
        var answer = TheoryKit.Fingering.Retuning.TuningSearch.Find(
            new()
            {
                Base = TheoryKit.Tunings.Necks.Neck.Guitar,
                Chords = TheoryKit.Fingering.Retuning.WeightedChord.Of(
                    TheoryKit.Theory.Progressions.Changes.Parse("Gm9 | C13 | Fmaj9 | Dm7")
                ),
                Within = 1,
                Best = 2,
                Limits = new() { LastFret = 7 },
            }
        );
        Assert.EndsWith(Drawing.DrawingRenderers.All.Text(answer), program.Output.TrimEnd(), StringComparison.Ordinal);
        Assert.Contains("729 of 729 tunings", program.Output, StringComparison.Ordinal);
        Assert.Empty(program.Errors);
    }

    [Fact]
    public async Task Every_option_narrows_the_search()
    {
        Assert.Equal(
            0,
            await program.Run([
                "retune",
                "Bm7 Dmaj9",
                "--tuning",
                "Open D",
                "--scale",
                "640",
                "--frets",
                "20",
                "--capo",
                "2",
                "--within",
                "1",
                "--best",
                "1",
                "--hand",
                "small",
                "--min-sounding",
                "4",
                "--last-fret",
                "9",
                "--strings",
                "Light acoustic 12-53",
                "--drone",
                "E",
                "--rising",
                "--different",
                "--keep",
                "6,1",
                "--at-most",
                "2",
            ])
        );
        foreach (
            var said in new[]
            {
                "Open D",
                "capo at fret 2",
                "within  1 semitone",
                "Small hand",
                "4 strings or more",
                "1 to 9",
                "an open E",
                "each string higher",
                "no two strings alike",
                "string 6 stays",
                "string 1 stays",
                "at most 2 strings retuned",
                "Light acoustic 12-53",
            }
        )
        {
            Assert.Contains(said, program.Output, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false, "--tension", "40 N to 150 N")]
    public async Task A_bass_has_the_limits_of_a_bass_unless_others_are_said(bool isFound, params string[] tension)
    {
        string[] bass = ["--tuning", "Bass standard", "--scale", "864", "--strings", "Bass 45-105", "--within", "1"];
        Assert.Equal(0, await program.Run(["retune", "E A", "--min-sounding", "2", .. bass, .. tension]));
        Assert.Equal(!isFound, program.Output.Contains("None of", StringComparison.Ordinal));
        Assert.Contains(isFound ? "120 N to 260 N" : "40 N to 150 N", program.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task No_tuning_is_an_answer_too()
    {
        Assert.Equal(0, await program.Run("retune", "Gm7", "--within", "0", "--drone", "C#"));
        Assert.Contains("The only tuning is no answer", program.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"Qm\" is not a list of chords", "Qm")]
    [InlineData("is not", "Gm7 | Qm")]
    [InlineData("\"Stndrd\" is not a tuning", "Gm7", "--tuning", "Stndrd")]
    [InlineData("--tuning: \"Stndrd\"", "Gm7", "--tuning", "Stndrd")]
    [InlineData("Known by name are \"Standard\"", "Gm7", "--tuning", "Stndrd")]
    [InlineData("Known by name are \"Light acoustic 12-53\"", "Gm7", "--strings", "Light acoustic")]
    [InlineData("--within: A string can be retuned by 0 to 12 semitones, not by 40.", "Gm7", "--within", "40")]
    [InlineData("--within: \"abc\" is not a whole number.", "Gm7", "--within", "abc")]
    [InlineData("--min-sounding: At least 9 strings", "Gm7", "--min-sounding", "9")]
    [InlineData("Nothing to play", "N.C.")]
    [InlineData("--keep: String 9 is to stay", "Gm7", "--keep", "9")]
    [InlineData("\"x\" in --keep", "Gm7", "--keep", "1,x")]
    [InlineData("\"H\" is not a note name", "Gm7", "--drone", "H")]
    [InlineData("is not a set of strings", "Gm7", "--strings", "wool")]
    [InlineData("--strings: The set has 4 strings, the neck 6", "Gm7", "--strings", "Light mandolin 10-34")]
    [InlineData("--min-sounding: ", "Gm7", "--min-sounding", "0")]
    [InlineData("\"huge\" is not a hand", "Gm7", "--hand", "huge")]
    [InlineData("--capo: ", "Gm7", "--capo", "30")]
    [InlineData("--scale: ", "Gm7", "--scale", "0")]
    [InlineData("--best: ", "Gm7", "--best", "0")]
    [InlineData("--at-most: ", "Gm7", "--at-most", "-1")]
    [InlineData("is not limits of tension", "Gm7", "--strings", "Light acoustic 12-53", "--tension", "120 N")]
    [InlineData("name them with --strings", "Gm7", "--tension", "120 N to 260 N")]
    public async Task What_is_wrong_is_said_with_its_option(string error, params string[] command)
    {
        Assert.Equal(2, await program.Run(["retune", .. command]));
        Assert.Contains(error, program.Errors, StringComparison.Ordinal);
        Assert.DoesNotContain("Parameter", program.Errors, StringComparison.Ordinal);
        Assert.Empty(program.Output);
    }

    [Fact]
    public async Task Stopping_ends_the_search()
    {
        using var stop = new CancellationTokenSource();
        await stop.CancelAsync();
        Assert.Equal(130, await program.Run(stop.Token, "retune", "Gm9 C13 Fmaj9 Dm7", "--within", "7"));
        Assert.Equal("Stopped.", program.Errors.Trim());
    }

    [Fact]
    public async Task A_search_in_a_notebook_is_printed_as_its_answer_with_no_bar_left()
    {
        program.Write(
            "copper-weather.ipynb",
            $"#r \"nuget:TheoryKit.Interactive, {ThisProgram.Version}\"",
            "var query = new TuningQuery { Base = Neck.Guitar, Within = 1, Chords = WeightedChord.Of(Chord.ParseList(\"Gm7 C7\")) };\n"
                + "await query.FindAsync()"
        );
        Assert.Equal(0, await program.Print());
        var page = program.Page("copper-weather");
        Assert.Contains("729 tunings searched: ", page, StringComparison.Ordinal);
        Assert.Contains("The least effort first", page, StringComparison.Ordinal);
        Assert.DoesNotContain("progressbar", page, StringComparison.Ordinal);
    }
}
