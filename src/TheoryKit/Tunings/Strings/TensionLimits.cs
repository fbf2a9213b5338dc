using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Tunings.Strings;

/// <summary>Between which tensions a string plays well and lasts. Equal when all three figures agree.</summary>
/// <remarks>Text: <c>40 N to 170 N, 0.75 of breaking</c>; kgf and lbf are read too.</remarks>
[ReadAs("limits of tension")]
public sealed partial record TensionLimits : ISpanParsable<TensionLimits>
{
    /// <summary>Limits.</summary>
    /// <param name="lightest">The least tension, 0 N or more.</param>
    /// <param name="heaviest">The most tension, more than the least.</param>
    /// <param name="mostOfBreaking">The most stress as a part of the breaking stress, above 0 and at most 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">One of them is beyond its range.</exception>
    public TensionLimits(Tension lightest, Tension heaviest, double mostOfBreaking = DefaultMostOfBreaking)
    {
        if (lightest.Newtons < 0)
        {
            throw new ArgumentOutOfRangeException(nameof(lightest), lightest, "The least tension is 0 N or more.");
        }

        if (heaviest <= lightest)
        {
            throw new ArgumentOutOfRangeException(
                nameof(heaviest),
                heaviest,
                $"The most tension is more than the least, {lightest}."
            );
        }

        if (!(mostOfBreaking is > 0 and <= 1))
        {
            throw new ArgumentOutOfRangeException(
                nameof(mostOfBreaking),
                mostOfBreaking,
                "A part of the breaking stress is above 0 and at most 1."
            );
        }

        Lightest = lightest;
        Heaviest = heaviest;
        MostOfBreaking = mostOfBreaking;
    }

    /// <summary>
    /// Three quarters of the breaking stress: up to there music wire stretches and comes back. Looked up: its elastic limit is 65 to 75 %
    /// of the breaking stress, Shigley's Mechanical Engineering Design, table 10-5. Derived: a bend by a whole tone, which takes 2^(4/12) = 1.26 times
    /// the tension, goes from 0.75 to 0.94; from 0.8 it would break the string.
    /// </summary>
    public const double DefaultMostOfBreaking = 0.75;

    /// <summary>
    /// For guitars: 40 to 170 N. The usual sets in the tunings they are sold for pull 49 to 161 N a string (derived from the guitar sets of
    /// <see cref="StringSet.Known"/> at 648 mm); the limits lie somewhat beyond, nearly a tone below the one and half a semitone above the
    /// other. Chosen: set your own.
    /// </summary>
    public static TensionLimits Default { get; } = new(new(40), new(170));

    /// <summary>For basses of some 860 mm: 120 to 260 N, where usual sets pull 160 to 230 N a string. Chosen: as for guitars.</summary>
    public static TensionLimits Bass { get; } = new(new(120), new(260));

    /// <summary>For ukuleles and other small instruments with plain plastic strings: 20 to 80 N, where usual sets pull 25 to 45 N a
    /// string. Chosen: as for guitars.</summary>
    public static TensionLimits Small { get; } = new(new(20), new(80));

    /// <summary>The limits for an instrument by its name in <see cref="KnownStringSet"/> or <see cref="KnownTuning"/>: <see cref="Bass"/>
    /// for basses, <see cref="Small"/> for ukuleles, else <see cref="Default"/>.</summary>
    public static TensionLimits For(string instrument)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        return instrument.Split(' ')[^1].ToUpperInvariant() switch
        {
            "BASS" => Bass,
            "UKULELE" => Small,
            _ => Default,
        };
    }

    /// <summary>
    /// The limits for the instrument that a set of strings is known for; where the set has no name, for that of the first tuning that has
    /// one; else <see cref="Default"/>.
    /// </summary>
    /// <param name="strings">The strings fitted; null where they aren't known.</param>
    /// <param name="tunings">What they are tuned to; what is null doesn't count.</param>
    public static TensionLimits For(StringSet? strings, params IEnumerable<Tuning?> tunings)
    {
        ArgumentNullException.ThrowIfNull(tunings);
        var instrument =
            StringSet.Known.FirstOrDefault(each => each.Set == strings)?.Instrument
            ?? tunings
                .Select(tuning => Tuning.Known.FirstOrDefault(each => each.Tuning == tuning)?.Instrument)
                .FirstOrDefault(static found => found is not null);
        return instrument is null ? Default : For(instrument);
    }

    /// <summary>The least tension: below it a string is slack.</summary>
    public Tension Lightest { get; }

    /// <summary>The most tension: above it a string is heavy for the hand, the neck and the bridge.</summary>
    public Tension Heaviest { get; }

    /// <summary>The most stress as a part of the breaking stress, above 0 and at most 1.</summary>
    public double MostOfBreaking { get; }

    /// <summary>The tension as far above the least as it is below the most, by ratio: what a new gauge aims at.</summary>
    internal Tension Middle => new(Math.Sqrt(Math.Max(Lightest.Newtons, 1) * Heaviest.Newtons));

    /// <summary>What these limits say of a string at a tension: the worst that is true.</summary>
    /// <param name="tension">The tension.</param>
    /// <param name="breakingPart">The stress as a part of the breaking stress, where it is known.</param>
    public StringState StateOf(Tension tension, double? breakingPart = null) =>
        BreakingState(breakingPart, MostOfBreaking) is { } state ? state
        : tension > Heaviest ? StringState.Heavy
        : tension < Lightest ? StringState.Slack
        : StringState.Comfortable;

    /// <summary>Whether a part of the breaking stress is all of it or more than the most; null for neither and where it isn't known.</summary>
    internal static StringState? BreakingState(double? breakingPart, double most) =>
        breakingPart >= 1 ? StringState.Breaking
        : breakingPart > most ? StringState.NearBreaking
        : null;

    /// <summary>"53 %": with as many decimals as it takes to stand on the right side of the limit and of 100 %.</summary>
    internal static string Percent(double breakingPart, double most)
    {
        var decimals = 0;
        while (
            decimals < 4
            && BreakingState(Math.Round(breakingPart, decimals + 2), most) != BreakingState(breakingPart, most)
        )
        {
            decimals++;
        }

        return $"{(100 * breakingPart).ToString($"F{decimals}", CultureInfo.InvariantCulture)} %";
    }

    /// <summary>The stress goes with the square of the frequency: so many semitones down, or up, to the limit.</summary>
    internal static Pitch? HighestSafe(Pitch pitch, double part, double most)
    {
        // A hair of room, so that a string just at its limit stays where it is.
        var semitones = (int)Math.Floor((6 * Math.Log2(most / part)) + 1e-9);
        var number = pitch.MidiNumber + semitones;
        return semitones == 0 ? pitch
            : number is >= 0 and <= 127 ? Pitch.FromMidi(number)
            : null;
    }

    /// <summary>What these limits say of a string at a pitch.</summary>
    /// <param name="fitted">The string.</param>
    /// <param name="pitch">The pitch.</param>
    /// <param name="length">The sounding length in mm.</param>
    /// <param name="a4">The frequency of A4 in Hz; 440 by ISO 16.</param>
    /// <exception cref="ArgumentOutOfRangeException">Length or reference is not a positive number.</exception>
    public StringState StateOf(FittedString fitted, Pitch pitch, double length, double a4 = Pitch.StandardA4)
    {
        ArgumentNullException.ThrowIfNull(fitted);
        var tension = fitted.TensionAt(pitch, length, a4);
        return StateOf(tension, fitted.BreakingPart(tension));
    }

    /// <summary>The limits as <see cref="Parse(string, IFormatProvider?)"/> reads them.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Lightest} to {Heaviest}, {MostOfBreaking:R} of breaking");

    internal static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out TensionLimits limits)
    {
        limits = null;
        cursor.SkipSpaces();
        var start = cursor.Position;
        if (!Tension.Read(ref cursor, out var lightest))
        {
            return false;
        }

        if (lightest.Newtons < 0)
        {
            return cursor.Fail(start, "a least tension of 0 N or more");
        }

        cursor.SkipSpaces();
        if (!cursor.Take("to"))
        {
            return cursor.Fail("\"to\" and the most tension (as in 40 N to 170 N)");
        }

        cursor.SkipSpaces();
        start = cursor.Position;
        if (!Tension.Read(ref cursor, out var heaviest))
        {
            return false;
        }

        if (heaviest <= lightest)
        {
            return cursor.Fail(start, $"a tension of more than {lightest}");
        }

        var part = DefaultMostOfBreaking;
        cursor.SkipSpaces();
        if (cursor.Take(','))
        {
            cursor.SkipSpaces();
            start = cursor.Position;
            if (!Measure.Read(ref cursor, 0, 1, out part))
            {
                return false;
            }

            if (part <= 0)
            {
                return cursor.Fail(start, "a part above 0");
            }

            cursor.SkipSpaces();
            if (!cursor.Take("of breaking"))
            {
                return cursor.Fail("\"of breaking\" after the part (as in 0.75 of breaking)");
            }
        }

        limits = new(lightest, heaviest, part);
        return true;
    }
}
