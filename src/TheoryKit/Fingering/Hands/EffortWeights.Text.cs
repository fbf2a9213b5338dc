using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Hands;

public sealed partial record EffortWeights : ISpanParsable<EffortWeights>
{
    // A further weight needs its property and its line here.
    internal static readonly ImmutableArray<Entry> Entries =
    [
        new("thumb", static w => w.Thumb, static (w, value) => w with { Thumb = value }),
        new("index", static w => w.Index, static (w, value) => w with { Index = value }),
        new("middle", static w => w.Middle, static (w, value) => w with { Middle = value }),
        new("ring", static w => w.Ring, static (w, value) => w with { Ring = value }),
        new("little", static w => w.Little, static (w, value) => w with { Little = value }),
        new("upper", static w => w.Upper, static (w, value) => w with { Upper = value }),
        new("stretch", static w => w.Stretch, static (w, value) => w with { Stretch = value }),
        new("crowding", static w => w.Crowding, static (w, value) => w with { Crowding = value }),
        new("barre", static w => w.Barre, static (w, value) => w with { Barre = value }),
        new("barre string", static w => w.BarreString, static (w, value) => w with { BarreString = value }),
        new("other barre", static w => w.OtherBarre, static (w, value) => w with { OtherBarre = value }),
        new("twist", static w => w.Twist, static (w, value) => w with { Twist = value }),
        new("inner mute", static w => w.InnerMute, static (w, value) => w with { InnerMute = value }),
        new("shift distance", static w => w.ShiftDistance, static (w, value) => w with { ShiftDistance = value }),
        new("shift", static w => w.Shift, static (w, value) => w with { Shift = value }),
        new("string crossing", static w => w.StringCrossing, static (w, value) => w with { StringCrossing = value }),
        new("same finger", static w => w.SameFinger, static (w, value) => w with { SameFinger = value }),
        new("roll", static w => w.Roll, static (w, value) => w with { Roll = value }),
        new("open string", static w => w.OpenString, static (w, value) => w with { OpenString = value }),
        new("voice step", static w => w.VoiceStep, static (w, value) => w with { VoiceStep = value }),
        new("preference", static w => w.Preference, static (w, value) => w with { Preference = value }),
    ];

    /// <summary>The weights as <see cref="Parse(string, IFormatProvider?)"/> reads them.</summary>
    public override string ToString()
    {
        var differing = Entries.Where(entry => !entry.Get(this).Equals(entry.Get(Default)));
        var text = string.Join(
            ", ",
            differing.Select(entry => string.Create(CultureInfo.InvariantCulture, $"{entry.Name} {entry.Get(this):R}"))
        );
        return text.Length == 0 ? "default" : text;
    }

    internal static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out EffortWeights weights)
    {
        weights = Default;
        cursor.SkipSpaces();
        if (cursor.Take("default"))
        {
            cursor.SkipSpaces();
            return true;
        }

        var read = new HashSet<string>();
        do
        {
            cursor.SkipSpaces();
            var start = cursor.Position;
            var entry = Take(ref cursor);
            if (entry is null)
            {
                return cursor.Fail(start, $"a weight: {string.Join(", ", Entries.Select(static each => each.Name))}");
            }

            if (!read.Add(entry.Name))
            {
                return cursor.Fail(start, $"another weight: {entry.Name} is there already");
            }

            if (!Measure.Read(ref cursor, 0, MaxWeight, out var value))
            {
                return false;
            }

            weights = entry.With(weights, value);
            cursor.SkipSpaces();
        } while (cursor.Take(','));

        return true;
    }

    /// <summary>Steps over the longest name that is here.</summary>
    private static Entry? Take(ref TextCursor cursor)
    {
        Entry? longest = null;
        foreach (var entry in Entries)
        {
            if (
                cursor.Rest.StartsWith(entry.Name, StringComparison.Ordinal)
                && entry.Name.Length > (longest?.Name.Length ?? 0)
            )
            {
                longest = entry;
            }
        }

        return longest is not null && cursor.Take(longest.Name) ? longest : null;
    }

    /// <summary>A weight by its name in the text.</summary>
    internal sealed record Entry(
        string Name,
        Func<EffortWeights, double> Get,
        Func<EffortWeights, double, EffortWeights> With
    );
}
