using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Turns;
using TheoryKit.Tunings.Words;

namespace TheoryKit.Tests.Tunings.Turns;

public class ScordaturaTests
{
    /// <summary>Two tunings of one instrument.</summary>
    private static readonly Gen<Scordatura> Any = Gen.Select(
        Gens.Tuning,
        Gens.UsualNoteName.Select(Gen.Int[0, 6], (name, octave) => new Pitch(name, octave)).Array[Tuning.MaxStrings],
        Gen.Bool.Array[Tuning.MaxStrings],
        (from, pitches, turned) =>
            new Scordatura(
                from,
                new(
                    from.Strings.Select(
                            (each, index) => turned[index] ? new TuningString(pitches[index], each.Start) : each
                        )
                        .Reverse()
                )
            )
    );

    [Fact]
    public void Text_round_trips() => Laws.RoundTrip(Any);

    [Fact]
    public void Equal_when_both_tunings_are() => Laws.Equality(Any);

    [Fact]
    public void Null_is_refused() => Laws.Null<Scordatura>();

    [Fact]
    public void Fuzz_of_the_parser() =>
        Fuzz.Parser<Scordatura>([
            "E2 A2 D3 G3 B3 E4, to D2 A2 D3 F#3 A3 D4",
            "G4@5 D3 G3 B3 D4,to G4@5 C3 G3 C4 D4",
            " C3 G3 D4 , to  C3 G3 D♭4 ",
        ]);

    [Theory]
    [InlineData("E2 A2 D3", 9, "a comma")]
    [InlineData("E2 A2 D3, D2 A2 D3", 11, "\"to\"")]
    [InlineData("E2 A2 D3, to", 13, "a pitch")]
    [InlineData("E2 A2 D3, to D2 A2 D3 G3", 14, "the first has 3 strings, the second 4")]
    [InlineData("E2 A2 D3@5, to D2 A2 D3", 16, "string 1 begins at fret 5 in the first, at fret 0 in the second")]
    [InlineData("E2 A2 D3, to D2 A2 D3, to D2 A2 D3", 22, "the end")]
    public void Bad_text_is_refused_with_its_place(string text, int position, string expected) =>
        Laws.Refuses<Scordatura>(text, position, expected);

    [Fact]
    public void Tunings_of_different_instruments_are_refused()
    {
        var error = Assert.Throws<ArgumentException>(() => new Scordatura(Tuning.Standard, Tuning.Find("Ukulele")!));
        Assert.Contains("the first has 6 strings, the second 4", error.Message);
    }

    [Fact]
    public void Turned_by_what_is_said_every_string_is_at_its_new_pitch() =>
        Any.Sample(scordatura =>
        {
            foreach (var turn in scordatura.Strings)
            {
                Assert.Equal(scordatura.From[turn.Number].Open, turn.From);
                Assert.Equal(scordatura.To[turn.Number].Open, turn.To);
                Assert.Equal(turn.To.MidiNumber, turn.From.MidiNumber + turn.Semitones);
                Assert.Equal(
                    turn.To.Frequency(),
                    turn.From.Frequency() * Math.Pow(2, turn.Cents / 1200.0),
                    turn.To.Frequency() * 1e-9
                );
            }
        });

    [Fact]
    public void Every_string_that_changes_is_turned_once() =>
        Any.Sample(scordatura =>
            Assert.Equal(
                Enumerable
                    .Range(1, scordatura.From.StringCount)
                    .Where(number => scordatura.From[number].Open.MidiNumber != scordatura.To[number].Open.MidiNumber),
                scordatura.Steps.Select(static step => step.Number).Order()
            )
        );

    [Fact]
    public void On_the_way_the_pull_of_all_strings_is_never_above_both_ends() =>
        // T = 4 L^2 f^2 mu; with any unit weights, here those that pull alike before.
        Any.Select(Gen.Double[0.5, 2].Array[Tuning.MaxStrings])
            .Sample(
                (scordatura, weights) =>
                {
                    var now = scordatura.From.Strings.Select(static each => each.Open.Frequency()).ToArray();
                    double Pull(double[] frequencies) => frequencies.Select((f, index) => weights[index] * f * f).Sum();
                    var most = Math.Max(
                        Pull(now),
                        Pull([.. scordatura.To.Strings.Select(static each => each.Open.Frequency())])
                    );
                    foreach (var step in scordatura.Steps)
                    {
                        now[step.Number - 1] = step.To.Frequency();
                        Assert.True(Pull(now) <= most * (1 + 1e-9));
                    }
                }
            );

    [Fact]
    public void A_check_sounds_alike_on_a_string_that_is_right_by_then() =>
        Any.Sample(scordatura =>
        {
            var right = scordatura
                .Strings.Where(static turn => turn.Direction == Turn.Leave)
                .Select(static turn => turn.Number)
                .ToHashSet();
            Assert.All(right, number => Assert.Null(scordatura[number].Check));
            foreach (var step in scordatura.Steps)
            {
                if (step.Check is var (turned, inTune, octaves))
                {
                    Assert.Equal(step.Number, turned.String);
                    Assert.Contains(inTune.String, right);
                    int Sound(Position position) =>
                        scordatura.To[position.String].Open.MidiNumber
                        + position.Fret
                        - scordatura.To[position.String].Start;
                    Assert.Equal(Sound(inTune) + (12 * octaves), Sound(turned));
                }
                else
                {
                    // Nothing right is within an octave, nor octaves away.
                    var here = step.To.MidiNumber;
                    Assert.DoesNotContain(
                        right,
                        number =>
                            scordatura.To[number].Open.MidiNumber is var there
                            && (
                                (there - here) % 12 == 0
                                || (
                                    Math.Abs(there - here) <= 12
                                    && scordatura.To[there < here ? number : step.Number].Start + Math.Abs(there - here)
                                        <= Position.MaxFret
                                )
                            )
                    );
                }

                right.Add(step.Number);
            }
        });

    [Fact]
    public void The_way_back_turns_every_string_as_far_the_other_way() =>
        Any.Sample(scordatura =>
        {
            Assert.Equal(scordatura.Distance, scordatura.Back.Distance);
            Assert.All(
                scordatura.Strings,
                turn => Assert.Equal(-turn.Semitones, scordatura.Back[turn.Number].Semitones)
            );
        });

    [Fact]
    public void To_open_D_four_strings_go_down_and_are_checked_on_what_stays()
    {
        // From any table of tunings: E to D, G to F#, B to A, E to D; the A and the D string stay.
        var scordatura = new Scordatura(Tuning.Standard, Tuning.Find("Open D")!);
        Assert.Equal([-2, -2, -1, 0, 0, -2], scordatura.Strings.Select(static turn => turn.Semitones));
        Assert.Equal([6, 2, 1, 3], scordatura.Steps.Select(static step => step.Number));
        Assert.Equal("6:0 an octave below 4:0", scordatura[6].Check!.Value.InWords());
        Assert.Equal("2:0 an octave above 5:0", scordatura[2].Check!.Value.InWords());
        Assert.Equal("1:0 an octave above 4:0", scordatura[1].Check!.Value.InWords());
        Assert.Equal("3:3 as 2:0", scordatura[3].Check!.Value.InWords());
        Assert.Equal("string 3: G3 down 1 semitone to F#3", scordatura[3].InWords());
        Assert.Equal(7, scordatura.Distance);
    }

    [Fact]
    public void Spelling_alone_turns_nothing()
    {
        var scordatura = new Scordatura(Tuning.Parse("Eb2 A2 D3"), Tuning.Parse("D#2 A2 D3"));
        Assert.Empty(scordatura.Steps);
        Assert.NotEqual(scordatura, scordatura.Back);
    }
}
