using TheoryKit.Tests;
using TheoryKit.Theory.Progressions;
using TheoryKit.Values;

namespace TheoryKit.Licks.Tests.Tab;

public class LickTextTests
{
    private const string Text = """
        Name:   Kestrel turn
        changes:  3/4, Eb major: Ebmaj7 | Cm7
        TEMPO: 120
        from:  the second chorus,   heard twice
        tuning: E2 A2 D3 G3 B3 E4
        Sound: <b>neck</b> & "treble"

        # slowly at first
        a line that is no tab

        e|-----------|-----------|
        B|-----------|-----------|
        G|-----3-----|-5---------|
        D|---5---5---|-----------|
        A|-6-------6-|-----------|
        E|-----------|-----------|
           1 & 2 & 3   1   2   3

        """;

    [Fact]
    public void Every_lick_reads_back_from_its_text() =>
        TabGens.Lick.Sample(static lick => ReadsBack(lick), iter: 10_000);

    [Fact]
    public void Text_holds_every_way_of_parsing() => Laws.RoundTrip(TabGens.Lick);

    [Fact]
    public void Null_is_no_lick() => Laws.Null<Lick>();

    private static void ReadsBack(Lick lick)
    {
        var text = lick.ToString();
        var read = Lick.Parse(text);
        TabRoundTripTests.Same(lick.Path, read.Path, text);
        Assert.True(lick.Equals(read), text);
        Assert.Equal(lick.GetHashCode(), read.GetHashCode());
        Assert.Equal(text, read.ToString());
    }

    [Fact]
    public void Says_what_it_reads()
    {
        var lick = Lick.Parse(Text);
        Assert.Equal("Kestrel turn", lick.Name);
        Assert.Equal(120, lick.Tempo);
        Assert.Equal(Changes.Parse("3/4, Eb major: Ebmaj7 | Cm7"), lick.Path.Changes);
        Assert.Equal(6, lick.Path.Notes.Count);
        Assert.Equal("slowly at first\na line that is no tab", lick.Words);
        Assert.Equal(
            [new("from", "the second chorus,   heard twice"), new("Sound", "<b>neck</b> & \"treble\"")],
            lick.Headers
        );
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    public void A_change_of_tempo_changes_that_line_and_no_other(string lineEnd)
    {
        var text = Text.ReplaceLineEndings(lineEnd);
        var lick = Lick.Parse(text);
        Assert.Equal(text, lick.ToString());
        Assert.Equal(
            text.Replace("TEMPO: 120", "tempo: 92.5", StringComparison.Ordinal),
            (lick with { Tempo = 92.5 }).ToString()
        );
        Assert.Equal(
            text.Replace($"TEMPO: 120{lineEnd}", "", StringComparison.Ordinal),
            (lick with { Tempo = null }).ToString()
        );
        Assert.Equal(
            text.Replace(
                $"\"treble\"{lineEnd}",
                $"\"treble\"{lineEnd}tags: bend, slow{lineEnd}",
                StringComparison.Ordinal
            ),
            (lick with { Tags = ["bend", "slow"] }).ToString()
        );
    }

    [Fact]
    public void A_line_of_the_players_own_is_added_without_touching_the_others()
    {
        var lick = Lick.Parse(Text);
        Assert.Equal(
            Text.Replace("Sound:", "Mood: dark\nSound:", StringComparison.Ordinal),
            (lick with { Headers = [lick.Headers[0], new("Mood", "dark"), lick.Headers[1]] }).ToString()
        );
        Assert.Equal(
            Text.Replace("from:  the second chorus,   heard twice\n", "", StringComparison.Ordinal),
            (lick with { Headers = [lick.Headers[1]] }).ToString()
        );
    }

    [Fact]
    public void What_the_tab_alone_said_is_said_by_headers_when_it_is_written_anew()
    {
        var lick = Lick.Parse("name: three\n\n   Am  E7\nA|-0---3-|\nE|-------|\nC|-------|\nG|-------|\n   1 2 3\n");
        Assert.Equal("G4 C4 E4 A4", lick.Path.Neck.Tuning.ToString());
        var anew = lick with { Path = lick.Path.Then(lick.Path) };
        Assert.Equal(anew, Lick.Parse(anew.ToString()));
        Assert.Contains("neck: G4 C4 E4 A4\n", anew.ToString(), StringComparison.Ordinal);
        Assert.Contains("changes: 3/4: Am", anew.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Changes_are_in_the_time_of_the_header()
    {
        var lick = Lick.Parse("name: n\nchanges: Eb major: Ebmaj7 | Cm7\ntime: 3/4\n\n" + Strings);
        Assert.Equal(Changes.Parse("3/4, Eb major: Ebmaj7 | Cm7"), lick.Path.Changes);
    }

    private const string Strings = "e|-----|\nB|-----|\nG|-----|\nD|-----|\nA|-----|\nE|-5---|\n";

    [Theory]
    [InlineData("tune: none\n\ne|--5--|", 1, 1, "name: …")]
    [InlineData("name: n\ntempo: fast\n\n" + Strings, 2, 8, "beats a minute")]
    [InlineData("name: n\nchanges: Gm9 | H13\n\n" + Strings, 2, 16, "another \"changes\"")]
    [InlineData("name: n\nname: m\n\n" + Strings, 2, 7, "only once; line 1")]
    [InlineData("name: n\nno header\n\n" + Strings, 2, 1, "a header line")]
    [InlineData("name: n\nneck: E2 A2\n\n" + Strings, 2, 12, "another \"neck\"")]
    [InlineData("name: n\nbeats: 1/0\n\n" + Strings, 2, 8, "how many beats")]
    [InlineData("name: n\nbeats: 3\n\n" + Strings, 2, 1, "what fits together")]
    [InlineData("name: n\n\nwords alone", 3, 1, "a line for each string")]
    [InlineData("name: n\n", 2, 1, "a line for each string")]
    [InlineData("name: n\nneck: G4 C4 E4 A4\n\n" + Strings, 4, 1, "4 lines, one for each string of the neck, not 6")]
    [InlineData("name: n\nneck: E2 A2 D3 G3 B3 E4, 4 frets\n\n" + Strings, 9, 4, "a fret up to 4")]
    public void Errors_point_at_the_place(string text, int line, int column, string expected)
    {
        var exception = Assert.Throws<PlacedFormatException>(() => Lick.Parse(text));
        Assert.Equal((line, column), (exception.Line, exception.Column));
        Assert.Contains(expected, exception.Message, StringComparison.Ordinal);
        Assert.Contains("^", exception.Message, StringComparison.Ordinal);
        Assert.False(Lick.TryParse(text, null, out _));
    }

    [Fact]
    public void A_file_that_is_tab_alone_takes_its_name_from_elsewhere_and_stays_as_it_is()
    {
        var lick = Lick.Read(Strings, "Boat call", null);
        Assert.Equal("Boat call", lick.Name);
        Assert.Equal(Strings, lick.Write("Boat call"));
        Assert.Equal($"tempo: 80\n\n{Strings}", (lick with { Tempo = 80 }).Write("Boat call"));

        // Away from there its text has the name in it.
        Assert.Equal($"name: Boat call\n\n{Strings}", lick.ToString());
        Assert.Equal(lick, Lick.Parse(lick.ToString()));
        Assert.Equal($"name: Cast off\n\n{Strings}", (lick with { Name = "Cast off" }).Write("Boat call"));
    }

    [Fact]
    public void A_line_before_the_headers_is_no_tab_alone()
    {
        var exception = Assert.Throws<PlacedFormatException>(() =>
            Lick.Read($"my lick\nname: n\ntempo: 90\n\n{Strings}", "Boat call", null)
        );
        Assert.Equal((1, 1), (exception.Line, exception.Column));
    }
}
