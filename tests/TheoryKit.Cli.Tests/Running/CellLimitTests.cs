namespace TheoryKit.Cli.Running;

public sealed class CellLimitTests
{
    [Theory]
    [InlineData("90", 90, "90 seconds")]
    [InlineData("90s", 90, "90 seconds")]
    [InlineData("5m", 300, "5 minutes")]
    [InlineData(" 5 m ", 300, "5 minutes")]
    [InlineData("1.5h", 5400, "90 minutes")]
    [InlineData("1h", 3600, "1 hour")]
    [InlineData("0.1", 0.1, "0.1 seconds")]
    [InlineData("1s", 1, "1 second")]
    [InlineData("24h", 86400, "24 hours")]
    [InlineData("0.5m", 30, "30 seconds")]
    public void A_time_is_seconds_or_has_a_unit(string text, double seconds, string said)
    {
        var time = CellLimit.Parse(text);
        Assert.Equal(seconds, time.TotalSeconds, 9);
        Assert.Equal(said, CellLimit.Said(time));
    }

    [Theory]
    [InlineData("")]
    [InlineData("soon")]
    [InlineData("-5")]
    [InlineData("5 min")]
    [InlineData("5,5")]
    [InlineData("1:30")]
    [InlineData("1e3")]
    [InlineData("٣")]
    [InlineData("0")]
    [InlineData("0.05s")]
    [InlineData("25h")]
    [InlineData("999999999h")]
    public void What_is_no_time_is_refused_with_what_would_work(string text)
    {
        var error = Assert.Throws<FormatException>(() => CellLimit.Parse(text));
        Assert.StartsWith($"\"{text}\" is no", error.Message, StringComparison.Ordinal);
        Assert.Contains("90s, 5m or 1.5h", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Any_text_is_a_time_or_a_clear_error() =>
        Gen.OneOf(Gen.String, Gen.String["0123456789.smh "])
            .Sample(static text =>
            {
                try
                {
                    Assert.InRange(CellLimit.Parse(text).TotalSeconds, 0.1, 86_400);
                }
                catch (FormatException e)
                {
                    Assert.StartsWith($"\"{text}\" is no", e.Message, StringComparison.Ordinal);
                }
            });

    [Fact]
    public void What_holds_where_nothing_is_said_is_ten_minutes() =>
        Assert.Equal(TimeSpan.FromMinutes(10), CellLimit.Parse(CellLimit.Default));
}
