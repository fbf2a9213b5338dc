using Fractions;
using TheoryKit.Drawing.Licks;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Licks;
using TheoryKit.Licks.Moves;
using TheoryKit.Licks.Words;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Drawing.Tests.Licks;

/// <summary>Where a move shifts notes in time, what is marked, counted and listed is still told of each note by itself.</summary>
public class MovedInTimeTests
{
    private static readonly RendererSet All = DrawingRenderers.All;

    [Fact]
    public void As_many_notes_are_marked_as_do_not_do_what_they_did() =>
        Gen.Select(
                Samples.Of(DrawnLicks.All),
                Samples.Of<Func<Lick, MovedLick>>([
                    static lick => lick.Displaced(new Fraction(1, 2)),
                    static lick => lick.Displaced(4),
                    static lick => lick.Reversed(),
                    static lick => lick.InRhythm(Rhythm.Parse("1/2 1/2 1")),
                    static lick => lick.Transpose(Interval.Parse("m3")),
                ])
            )
            .Sample(
                static (lick, move) =>
                {
                    var moved = move(lick);
                    var comparison = new LickComparison(moved);
                    Assert.Equal(
                        moved.Tones.Count(static tone => !tone.DoesTheSame),
                        moved.Lick.Path.Notes.Count(note => comparison.Differs(1, note))
                    );
                    Assert.All(moved.Tones, tone => Assert.Equal(!tone.DoesTheSame, comparison.Differs(1, tone.After)));
                    Assert.DoesNotContain(moved.From.Path.Notes, note => comparison.Differs(0, note));
                },
                iter: 100
            );

    [Fact]
    public void A_lick_half_a_beat_later_over_one_chord_is_not_marked()
    {
        var lick = DrawnLicks.Of("Late", "Copper Weather", "4/4: A7", "1", "5:0 5:4 4:2 4:5");
        var moved = lick.Displaced(new Fraction(1, 2));
        var text = All.Text(moved);
        Assert.Contains("4 of 4 notes", text, StringComparison.Ordinal);
        Assert.Contains("bar 1, beat 2 and 1/2", text, StringComparison.Ordinal);
        Assert.EndsWith(
            "Every note does what it did before.",
            new LickComparison(moved).Description,
            StringComparison.Ordinal
        );
        Assert.Equal("Bar 1, beat 2, now bar 1, beat 2 and 1/2: C#3 (3) stays.", moved.Tones[1].InWords());
    }

    [Fact]
    public void Backwards_a_note_that_does_what_another_did_there_is_marked()
    {
        // The same over the same chords.
        var lick = DrawnLicks.Of("Round", "Nine Tin Boats", "4/4: A7 | G7 | A7", "4", "5:0 6:3 5:0");
        Assert.DoesNotContain(lick.Reversed().Tones, static tone => !tone.DoesTheSame);

        // One pitch over both chords: at every moment there is what there was, and no note does what it did.
        var other = DrawnLicks.Of("Turn", "Nine Tin Boats", "4/4: A7 | D7", "4", "5:4 5:4");
        var turned = other.Reversed();
        Assert.Equal(["3", "7", "7", "3"], Functions(turned));
        Assert.All(turned.Lick.Path.Notes, note => Assert.True(new LickComparison(turned).Differs(1, note)));
        Assert.Contains("0 of 2 notes", All.Text(turned), StringComparison.Ordinal);
    }

    private static IEnumerable<string> Functions(MovedLick moved) =>
        moved.Tones.SelectMany(static tone => new[] { $"{tone.FunctionBefore}", $"{tone.FunctionAfter}" });

    [Fact]
    public void Where_no_time_changes_none_is_told()
    {
        Assert.DoesNotContain("now in", All.Text(DrawnLicks.Refitted), StringComparison.Ordinal);
        Assert.Contains("now in", All.Text(DrawnLicks.Bends.Reversed()), StringComparison.Ordinal);
    }
}
