using TheoryKit.Licks.Search;
using TheoryKit.Licks.Tests.Folders;
using TheoryKit.Tests;
using TheoryKit.Tests.Paths;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Licks.Tests.Search;

public class LickLineTests
{
    [Fact]
    public void A_line_is_read_back() => Laws.RoundTrip(FolderGens.Lick.Select(LickLine.Of));

    [Fact]
    public void The_line_of_any_path_is_read_back() => Laws.RoundTrip(PathGens.Any.Select(LickLine.Of));

    [Fact]
    public void Lines_are_equal_exactly_when_written_alike() => Laws.Equality(FolderGens.Lick.Select(LickLine.Of));

    [Fact]
    public void Any_text_is_read_or_refused_clearly() =>
        Fuzz.Parser<LickLine>(["0:1/2 +3:1/2 -2.5:1 x:1/2", "none", "x:1 0:0 +4:0 +3:2", "0:7/3"], 20_000);

    [Theory]
    [InlineData("+3:1", 1, "0 for the first note")]
    [InlineData("0:1 +128:1", 5, "up to 127")]
    [InlineData("0:1 3", 6, "a colon and beats")]
    [InlineData("0:1/0", 3, "beats as one whole number over another")]
    [InlineData("0", 2, "a colon and beats")]
    public void A_complaint_says_where(string text, int position, string expected) =>
        Laws.Refuses<LickLine>(text, position, expected);

    [Fact]
    public void Null_is_no_line() => Laws.Null<LickLine>();

    [Fact]
    public void Key_and_register_say_nothing()
    {
        FolderGens
            .Lick.Select(Gen.Int[-4, 4])
            .Sample(
                (lick, semitones) =>
                {
                    var moved = Moved(lick, semitones);
                    return moved is null || LickLine.Of(moved).Equals(LickLine.Of(lick));
                }
            );
    }

    [Theory]
    [InlineData("0:1 +2:1 +2:1 +1:1", "Up")]
    [InlineData("0:1 -2:1 -2:1 -1:1", "Down")]
    [InlineData("0:1 +7:1 -7:1", "Up Down")]
    [InlineData("0:1 +7:1 -3:1 +3:1", "Up")]
    [InlineData("0:1 +7:1 -4:1 +4:1", "Up Down Up")]
    [InlineData("0:1 0:1 x:1 0:1", "")]
    [InlineData("none", "")]
    [InlineData("0:0 +4:0 +3:1 -7:0 +4:0 +4:1", "Up")]
    public void The_shape_turns_where_the_line_goes_back_by_half_of_its_range(string line, string shape) =>
        Assert.Equal(shape, string.Join(' ', LickLine.Parse(line).Contour));

    /// <summary>The same frets so many higher; null where the neck ends.</summary>
    internal static Lick? Moved(Lick lick, int semitones)
    {
        var notes = lick
            .Path.Notes.Select(note =>
                note with
                {
                    Position = new(note.Position.String, Math.Max(0, note.Position.Fret + semitones)),
                    Pitch = Pitch.Simplest(note.Pitch.MidiNumber + semitones),
                }
            )
            .ToList();
        return lick.Path.Notes.Any(note => note.Position.Fret + semitones is < 1 or > 22)
            ? null
            : lick with
            {
                Name = $"{lick.Name} moved",
                Path = new TheoryKit.Paths.Path(lick.Path.Neck, notes, lick.Path.Time, null, lick.Path.Beats),
            };
    }
}
