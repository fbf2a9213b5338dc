using Fractions;
using TheoryKit.Paths;
using TheoryKit.Paths.Sounding;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Paths.Sounding;

public class PerformanceTests
{
    [Fact]
    public void Straight_it_starts_as_written_and_sounds_no_longer() =>
        PathGens.Any.Sample(
            static path =>
            {
                var performance = new Performance(path, 120);
                Assert.Equal(path.Notes, performance.Notes.Select(static note => note.Note));
                Assert.All(
                    performance.Notes,
                    note =>
                    {
                        Assert.Equal(note.Note.Start, note.Start);
                        Assert.Equal(
                            path.SoundingPitch(note.Note).MidiNumber - (note.Note.Bend / 100),
                            note.Pitch.MidiNumber
                        );
                        Assert.True(note.Length > 0 && note.Length <= note.Note.Length);
                        Assert.True(note.Loudness > 0);
                    }
                );
                Assert.Equal(path.Beats.ToDouble() / 2, performance.Seconds, 9);
            },
            iter: 300
        );

    [Fact]
    public void Swung_no_note_sounds_into_the_next_on_its_string() =>
        Gen.Select(PathGens.Any, PathGens.Swing)
            .Sample(
                static (path, swing) =>
                {
                    foreach (
                        var onString in new Performance(path, 90, swing).Notes.GroupBy(static note =>
                            note.Note.Position.String
                        )
                    )
                    {
                        Assert.All(
                            onString.Zip(onString.Skip(1)),
                            static pair => Assert.True(pair.First.Start + pair.First.Length <= pair.Second.Start)
                        );
                    }
                },
                iter: 300
            );

    [Fact]
    public void Techniques_change_how_loud_and_how_long_a_note_is() =>
        PathGens.Any.Sample(
            static path =>
            {
                foreach (var note in new Performance(path, 60).Notes)
                {
                    var techniques = note.Note.Techniques;
                    Assert.Equal(
                        techniques.Aggregate(1.0, static (product, each) => product * each.Loudness),
                        note.Loudness,
                        9
                    );
                    var part = (note.Length / note.Note.Length).ToDouble();
                    Assert.Equal(techniques.Aggregate(1.0, static (product, each) => product * each.Sounds), part, 9);
                }
            },
            iter: 300
        );

    [Fact]
    public void Eighths_swung_two_to_one_are_triplets()
    {
        var path = new TheoryKit.Paths.Path(
            Neck.Guitar,
            [
                new()
                {
                    Pitch = Pitch.Parse("E4"),
                    Position = new(1, 0),
                    Length = new(1, 2),
                },
                new()
                {
                    Pitch = Pitch.Parse("F4"),
                    Position = new(1, 1),
                    Start = new(1, 2),
                    Length = new(1, 2),
                },
            ]
        );
        Assert.Equal(
            [(Fraction.Zero, new Fraction(2, 3)), (new Fraction(2, 3), new Fraction(1, 3))],
            new Performance(path, 100, Swing.Triplet).Notes.Select(static note => (note.Start, note.Length))
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => new Performance(path, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Performance(path, 1001));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Performance(path, double.NaN));
    }

    [Fact]
    public void Every_technique_has_a_name_and_a_sign_of_its_own()
    {
        Assert.Equal(Technique.Known.Count, Technique.Known.Select(static each => each.Name).Distinct().Count());
        Assert.Equal(Technique.Known.Count, Technique.Known.Select(static each => each.Sign).Distinct().Count());
        Assert.All(
            Technique.Known,
            static each =>
            {
                Assert.Same(each, Technique.Find(each.Name));
                Assert.Same(each, Technique.Find($" {each.Sign} "));
                Assert.InRange(each.Sounds, 0.01, 1);
            }
        );
        Assert.Null(Technique.Find("no such thing"));
    }
}
