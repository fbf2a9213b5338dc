namespace TheoryKit.Words;

public class RoomsTests
{
    [Theory]
    [InlineData("Theory")]
    [InlineData("Tunings")]
    [InlineData("Fingering")]
    [InlineData("Paths")]
    public void What_is_spoken_about_does_not_use_the_words(string layer)
    {
        var folder = Path.Combine(Repository.Root, "src", "TheoryKit", layer);
        var files = Directory
            .EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.StartsWith(Path.Combine(folder, "Words"), StringComparison.Ordinal))
            .ToList();
        Assert.NotEmpty(files);
        Assert.All(
            files,
            file => Assert.DoesNotContain($"TheoryKit.{layer}.Words", File.ReadAllText(file), StringComparison.Ordinal)
        );
    }
}
