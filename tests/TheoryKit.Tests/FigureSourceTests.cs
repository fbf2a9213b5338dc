using System.Text.RegularExpressions;

namespace TheoryKit.Tests;

/// <summary>Comments at figures say how the figures were had.</summary>
public sealed partial class FigureSourceTests
{
    [Fact]
    public void Every_file_of_presets_says_how_its_figures_were_had()
    {
        var presets = Sources().Where(static file => file.EndsWith(".Known.cs", StringComparison.Ordinal)).ToList();
        Assert.True(presets.Count >= 7);
        Assert.DoesNotContain(presets, static file => !Comments(file).Any(static comment => HowHad().IsMatch(comment)));
    }

    [Fact]
    public void Every_comment_that_cites_a_book_or_a_paper_says_how_it_was_had()
    {
        var cited = Sources().SelectMany(Comments).Where(static comment => Citation().IsMatch(comment)).ToList();
        Assert.True(cited.Count >= 15, $"{cited.Count} found");
        Assert.DoesNotContain(cited, static comment => !HowHad().IsMatch(comment));
    }

    [Theory]
    [InlineData("Psychological Bulletin 132 (2006), 354", true)]
    [InlineData("Exp. Brain Res. 192, 2009, 293-298", true)]
    [InlineData("The Structure of Atonal Music, Yale 1973)", true)]
    [InlineData("EN 1991-1-1, table A.4", true)]
    [InlineData("2026-11-24 \"Low tide\" at 96: clean", false)]
    [InlineData("the longest, in mm: 2000.", false)]
    public void Citations_are_known_by_their_years_and_titles(string comment, bool isCitation) =>
        Assert.Equal(isCitation, Citation().IsMatch(comment));

    [GeneratedRegex("(looked up|from memory|chosen|fitted|derived):", RegexOptions.IgnoreCase)]
    private static partial Regex HowHad();

    [GeneratedRegex(
        @"\((1[89]|20)\d\d[);]|[\w.)] ?,? (19[5-9]|20[0-2])\d[,);](?! 20)|\bEN \d|\bASTM\b|Handbook|Engineering Design"
    )]
    private static partial Regex Citation();

    private static IEnumerable<string> Sources() =>
        Directory.EnumerateFiles(Path.Combine(Repository.Root, "src"), "*.cs", SearchOption.AllDirectories);

    /// <summary>The comments of a file, each of whole lines that follow one another.</summary>
    private static IEnumerable<string> Comments(string file)
    {
        var comment = new List<string>();
        foreach (var line in File.ReadLines(file).Append(""))
        {
            var text = line.TrimStart();
            if (text.StartsWith("//", StringComparison.Ordinal))
            {
                comment.Add(text.TrimStart('/', ' '));
            }
            else if (comment.Count > 0)
            {
                yield return $"{Path.GetFileName(file)}: {string.Join(' ', comment)}";
                comment.Clear();
            }
        }
    }
}
