using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Fingering;

public class ValueTests
{
    private static readonly Gen<GripString> GripString = Gen.Select(
        Gen.Int[0, 3],
        Gen.Int[0, Position.MaxFret],
        Gen.Int[0, 4],
        (kind, fret, finger) =>
            kind == 0 ? TheoryKit.Fingering.Grips.GripString.Muted
            : kind == 1 ? TheoryKit.Fingering.Grips.GripString.Open(fret % 2 == 0 ? 0 : fret)
            : TheoryKit.Fingering.Grips.GripString.Held(fret, (Finger)finger)
    );

    private static readonly Gen<Grip> AnyGrip = GripString
        .Array[Tuning.MinStrings, Tuning.MaxStrings]
        .Select(strings => new Grip(strings));

    [Fact]
    public void GripsReadBackAsTheyAreWritten() =>
        AnyGrip.Sample(grip =>
        {
            var read = Grip.Parse(grip.ToString());
            Assert.Equal(grip, read);
            Assert.Equal(grip.GetHashCode(), read.GetHashCode());
        });

    [Fact]
    public void WindowsReadBackAsTheyAreWritten() =>
        Gen.Select(Gen.Int[0, Position.MaxFret], Gen.Int[0, Position.MaxFret])
            .Select((one, other) => new Window(Math.Min(one, other), Math.Max(one, other)))
            .Sample(window => Assert.Equal(window, Window.Parse(window.ToString())));

    [Fact]
    public void HandsReadBackAsTheyAreWritten() =>
        Gen.OneOf(FingeringGens.Hand, FingeringGens.UsualHand)
            .Sample(hand =>
            {
                var read = Hand.Parse(hand.ToString());
                Assert.Equal(hand, read);
                Assert.Equal(hand.GetHashCode(), read.GetHashCode());
            });

    [Fact]
    public void WeightsReadBackAsTheyAreWritten() =>
        FingeringGens.Weights.Sample(weights => Assert.Equal(weights, EffortWeights.Parse(weights.ToString())));

    [Theory]
    [InlineData("average")]
    [InlineData("small")]
    [InlineData("large, thumb over")]
    [InlineData("small, 1-4 120 mm, rest 17.5 mm, thumb over, barre 5, other barre 0; stretch 4, inner mute 0")]
    public void HandsAreWrittenByWhatDiffersFromAPreset(string text) => Assert.Equal(text, Hand.Parse(text).ToString());

    [Fact]
    public void VerySmallAndVeryLargeFiguresAreRead()
    {
        var hand = new Hand
        {
            Rest = 1e-7,
            IndexToLittle = Hand.MaxReach,
            Weights = new() { Twist = 1e-300 },
        };
        Assert.Equal(hand, Hand.Parse(hand.ToString()));
    }

    [Theory]
    [InlineData("", "at position 1 expected a hand to begin with: small, average or large, but the text is empty")]
    [InlineData("small, 1-4 500 mm", "at position 12 expected a number from")]
    [InlineData("small, 1-4 100", "at position 15 expected mm after the number, but it ends there")]
    [InlineData("small, barre 13", "at position 14 expected a count of strings from 0 to 12")]
    [InlineData("small, barre 3, barre 4", "at position 17 expected something else: barre is there already")]
    [InlineData("small; stretch -1", "at position 16 expected a number from 0 to 1000")]
    [InlineData("small; patience 3", "at position 8 expected a weight: thumb, index")]
    public void ErrorsSayWhatWouldHaveWorked(string text, string message) =>
        Assert.Contains(message, Fuzz.Complaint<Hand>(text), StringComparison.Ordinal);

    [Fact]
    public void AnyTextGivesAGripOrSaysWhatIsWrong() =>
        Fuzz.Parser<Grip>(["x 3-3 2-2 o 1-1 o", "3-T x 12-4", "o@5 2-1 o", "x x x x x x x"]);

    [Fact]
    public void AnyTextGivesAWindowOrSaysWhatIsWrong() => Fuzz.Parser<Window>(["5-8", "0-3", "12-16"]);

    [Fact]
    public void AnyTextGivesAHandOrSaysWhatIsWrong() =>
        Fuzz.Parser<Hand>([
            "average",
            "small, 1-4 120 mm, thumb over; stretch 4",
            "large, rest 17.5 mm, thumb 70 mm, barre 5, other barre 2",
            "average; default",
            "large, 2-3 1E-05 mm; barre string 1, barre 2, inner mute 0",
        ]);

    [Fact]
    public void AnyTextGivesWeightsOrSaysWhatIsWrong() =>
        Fuzz.Parser<EffortWeights>(["default", "stretch 4, shift 2, shift distance 0.5", "voice step 1E-05"]);

    [Fact]
    public void WeightsAreFiniteAndNotNegative()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new EffortWeights { Stretch = -1 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new EffortWeights { Shift = double.NaN });
        Assert.Throws<ArgumentOutOfRangeException>(() => new EffortWeights { Roll = double.PositiveInfinity });
        Assert.Equal(
            "Twist",
            Assert.Throws<ArgumentOutOfRangeException>(() => new EffortWeights { Twist = 1001 }).ParamName
        );
    }

    [Fact]
    public void LengthsOfAHandAreInRange()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new Hand { IndexToLittle = 0 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new Hand { Rest = double.NaN });
        Assert.Throws<ArgumentOutOfRangeException>(() => new Hand { BarreStrings = -1 });
        Assert.Throws<ArgumentOutOfRangeException>(() => Hand.Average.Scale(4));
        Assert.Throws<ArgumentNullException>(() => new Hand { Weights = null! });
        Assert.Throws<ArgumentException>(() => Hand.Average.Reach(Finger.Ring, Finger.Ring));
    }

    [Fact]
    public void TheAverageHandIsTheFanOfItsFingersAndALittleMore()
    {
        // Index and little fingertip from knuckles 20 mm apart, by the lengths and angles of the source.
        var index = (X: -63.9 * Math.Sin(17.2 * Math.PI / 180), Y: 63.9 * Math.Cos(17.2 * Math.PI / 180));
        var angle = (14.3 + 32.1) * Math.PI / 180;
        var little = (X: 60 + (53.3 * Math.Sin(angle)), Y: 53.3 * Math.Cos(angle));
        var fan = Math.Sqrt(Math.Pow(index.X - little.X, 2) + Math.Pow(index.Y - little.Y, 2));
        Assert.Equal(120, fan, 1.0);
        Assert.InRange(Hand.Average.IndexToLittle, fan, fan * 1.2);
    }

    [Fact]
    public void LinesAndShapesAreEqualByValue()
    {
        Position[] positions = [new(6, 3), new(5, 2), new(5, 5)];
        Assert.Equal(LineSearch.Finger(Neck.Guitar, positions)[0], LineSearch.Finger(Neck.Guitar, positions)[0]);
        Assert.Equal(
            LineSearch.Finger(Neck.Guitar, positions)[0].GetHashCode(),
            LineSearch.Finger(Neck.Guitar, positions)[0].GetHashCode()
        );
        Assert.NotEqual(
            LineSearch.Finger(Neck.Guitar, positions)[0],
            LineSearch.Finger(Neck.Guitar, positions[..2])[0]
        );
    }
}
