using System.Globalization;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Fingering.Hands;

namespace TheoryKit.Drawing.Hands;

/// <summary>How hands and their effort are described.</summary>
internal static class HandValues
{
    public static Description<Hand> All { get; } =
        new(
            new("hand", "hands"),
            static hand => Name(hand),
            [
                new("fingers 1\u00a0to\u00a02", static hand => Millimetres(hand.IndexToMiddle), IsNumber: true),
                new("fingers 2\u00a0to\u00a03", static hand => Millimetres(hand.MiddleToRing), IsNumber: true),
                new("fingers 3\u00a0to\u00a04", static hand => Millimetres(hand.RingToLittle), IsNumber: true),
                new("fingers 1\u00a0to\u00a03", static hand => Millimetres(hand.IndexToRing), IsNumber: true),
                new("fingers 2\u00a0to\u00a04", static hand => Millimetres(hand.MiddleToLittle), IsNumber: true),
                new("fingers 1\u00a0to\u00a04", static hand => Millimetres(hand.IndexToLittle), IsNumber: true),
                new("at rest", static hand => Millimetres(hand.Rest), IsNumber: true),
                new("finger 1 flat", static hand => Flat(hand.BarreStrings)),
                new("others flat", static hand => Flat(hand.OtherBarreStrings)),
                new("thumb over", static hand => hand.ThumbOver ? $"yes, {Millimetres(hand.ThumbReach)} from 1" : null),
            ]
        )
        {
            More = static hand =>
                hand.Weights == EffortWeights.Default
                    ? [new Block.Prose(Cautions.Hands)]
                    : [new Block.Prose($"Its own weights of effort: {hand.Weights}."), new Block.Prose(Cautions.Hands)],
        };

    public static Description<EffortWeights> Weights { get; } =
        new(
            new("weights of effort", "weights of effort"),
            static weights =>
                weights == EffortWeights.Default ? "Weights of effort" : (Words)$"Weights of effort: {weights}",
            [
                Weight("setting the index finger", static weights => weights.Index),
                Weight("setting the middle finger", static weights => weights.Middle),
                Weight("setting the ring finger", static weights => weights.Ring),
                Weight("setting the little finger", static weights => weights.Little),
                Weight("setting the thumb", static weights => weights.Thumb),
                Weight($"each fret beyond the {EffortWeights.UpperFret}th", static weights => weights.Upper),
                Weight("a spread to the limit", static weights => weights.Stretch),
                Weight("a squeeze into no room", static weights => weights.Crowding),
                Weight("laying a finger flat", static weights => weights.Barre),
                Weight("each further string under it", static weights => weights.BarreString),
                Weight("a flat finger other than the index", static weights => weights.OtherBarre),
                Weight("a turned hand", static weights => weights.Twist),
                Weight("a muted string between sounding ones", static weights => weights.InnerMute),
                Weight("a shift", static weights => weights.Shift),
                Weight("shifting by a metre", static weights => weights.ShiftDistance),
                Weight("each string crossed", static weights => weights.StringCrossing),
                Weight("the same finger twice", static weights => weights.SameFinger),
                Weight("rolling to another string", static weights => weights.Roll),
                Weight("an open string, a metre from its start", static weights => weights.OpenString),
                Weight("a voice going a semitone", static weights => weights.VoiceStep),
                Weight("a metre from the preferred place", static weights => weights.Preference),
            ]
        );

    /// <summary>"index finger", "thumb".</summary>
    public static string Word(Finger finger) =>
        finger switch
        {
            Finger.Thumb => "thumb",
            Finger.Index => "index finger",
            Finger.Middle => "middle finger",
            Finger.Ring => "ring finger",
            _ => "little finger",
        };

    /// <summary>1 to 4, T for the thumb, o for an open string.</summary>
    public static string Sign(Finger? finger) => finger is { } held ? Mark.FingerSign((int)held) : "o";

    /// <summary>A length to a tenth of a mm.</summary>
    public static string Millimetres(double length) =>
        length.ToString("0.#", CultureInfo.InvariantCulture) + "\u00a0mm";

    /// <summary>A preset by its name, any other hand as it is written.</summary>
    public static Words Name(Hand hand) =>
        hand == Hand.Small ? "Small hand"
        : hand == Hand.Average ? "Average hand"
        : hand == Hand.Large ? "Large hand"
        : $"Hand: {hand}";

    private static string Flat(int strings) => strings < 2 ? "no" : $"{strings}\u00a0strings";

    private static Trait<EffortWeights> Weight(string name, Func<EffortWeights, double> of) =>
        new(name, weights => of(weights).ToString("0.###", CultureInfo.InvariantCulture), IsNumber: true);
}
