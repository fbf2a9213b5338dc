using TheoryKit.Values;

namespace TheoryKit.Paths.Joins;

/// <summary>What a line does where the chord changes.</summary>
public enum JoinWay
{
    /// <summary>It goes on in its direction.</summary>
    WentOn,

    /// <summary>It turns round.</summary>
    Turned,

    /// <summary>It stays on the pitch it is on and keeps its direction.</summary>
    Held,
}

/// <summary>
/// How a line that travels through the tones of one chord enters the next. A closed catalogue, <see cref="Known"/>: a further rule is a
/// further entry in this file. Equal when the names are.
/// </summary>
/// <remarks>
/// Whatever the rule, a new chord whose only tone in the zone is the pitch just played is entered on that, the direction kept.
/// </remarks>
[EqualBy(nameof(Name))]
[Checked]
public abstract partial record JoinRule
{
    private JoinRule(string name) => Name = name;

    /// <summary>
    /// The nearest tone of the new chord strictly beyond the last note in the direction of travel; if there is none, the line turns and
    /// takes the nearest on the other side.
    /// </summary>
    public static JoinRule Beyond { get; } = new BeyondRule();

    /// <summary>If the new chord has the last note too, that again, the direction kept; else as <see cref="Beyond"/>.</summary>
    public static JoinRule CommonTone { get; } = new CommonToneRule();

    /// <summary>
    /// The nearest tone of the new chord above or below the last note; of two equally near the one in the direction of travel. The line
    /// goes on in the direction of that step.
    /// </summary>
    public static JoinRule Nearest { get; } = new NearestRule();

    /// <summary>
    /// As <see cref="Beyond"/>, but the last note of the old chord gives way to the pitch a semitone before the new tone, below it in a
    /// line that travels up into it and above it in one that travels down. Where that does not fit the last note stays: where it is the only
    /// one of its chord, where silence parts the chords, where the pitch is not in the frets of the old chord's shape, and where it is the
    /// note played just before.
    /// </summary>
    public static JoinRule SemitoneApproach { get; } = new SemitoneRule();

    /// <summary>Every rule, the plain one first.</summary>
    public static IReadOnlyList<JoinRule> Known { get; } = [Beyond, CommonTone, Nearest, SemitoneApproach];

    /// <summary>A short name, unique in the catalogue: "strictly beyond".</summary>
    public string Name { get; }

    /// <summary>Whether the last note of a chord may give way to one that leads into the next.</summary>
    internal virtual bool Approaches => false;

    /// <summary>A rule by its name; null if it is none.</summary>
    public static JoinRule? Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return Known.FirstOrDefault(rule => rule.Name.Equals(name.Trim(), StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>A rule by its name.</summary>
    /// <exception cref="ArgumentException">There is none; the message says which names come nearest.</exception>
    public static JoinRule Named(string name) =>
        Find(name)
        ?? throw NearNames.NoSuch(name, "rule of joining", Known.Select(static each => each.Name), nameof(name));

    /// <summary>The name.</summary>
    public sealed override string ToString() => Name;

    /// <summary>The tone that is entered, by its number in the shape.</summary>
    /// <param name="tones">The MIDI numbers of the new chord's tones, rising; at least one.</param>
    /// <param name="last">The MIDI number of the last note of the old chord.</param>
    /// <param name="direction">Where the line is travelling.</param>
    internal abstract Entry Enter(ReadOnlySpan<int> tones, int last, Direction direction);

    private static Entry EnterBeyond(ReadOnlySpan<int> tones, int last, Direction direction)
    {
        var (below, above) = Around(tones, last);
        return direction == Direction.Up
            ? above < tones.Length
                ? new(above, Direction.Up, JoinWay.WentOn)
                : below >= 0
                    ? new(below, Direction.Down, JoinWay.Turned)
                    : new(0, direction, JoinWay.Held)
            : below >= 0
                ? new(below, Direction.Down, JoinWay.WentOn)
                : above < tones.Length
                    ? new(above, Direction.Up, JoinWay.Turned)
                    : new(0, direction, JoinWay.Held);
    }

    /// <summary>The last tone below a pitch and the first above it, -1 and the number of tones for none.</summary>
    private static (int Below, int Above) Around(ReadOnlySpan<int> tones, int pitch)
    {
        var at = tones.BinarySearch(pitch);
        return at >= 0 ? (at - 1, at + 1) : (~at - 1, ~at);
    }

    /// <summary>Which tone is entered, where the line goes from there, and how it came.</summary>
    internal readonly record struct Entry(int Tone, Direction Direction, JoinWay Way);

    internal sealed partial record BeyondRule() : JoinRule("strictly beyond")
    {
        internal override Entry Enter(ReadOnlySpan<int> tones, int last, Direction direction) =>
            EnterBeyond(tones, last, direction);
    }

    internal sealed partial record CommonToneRule() : JoinRule("common tone held")
    {
        internal override Entry Enter(ReadOnlySpan<int> tones, int last, Direction direction) =>
            tones.BinarySearch(last) is >= 0 and var held
                ? new(held, direction, JoinWay.Held)
                : EnterBeyond(tones, last, direction);
    }

    internal sealed partial record NearestRule() : JoinRule("nearest either way")
    {
        internal override Entry Enter(ReadOnlySpan<int> tones, int last, Direction direction)
        {
            var (below, above) = Around(tones, last);
            if (below < 0 || above == tones.Length)
            {
                return EnterBeyond(tones, last, direction);
            }

            var (down, up) = (last - tones[below], tones[above] - last);
            return down == up ? EnterBeyond(tones, last, direction)
                : down < up ? new(below, Direction.Down, Way(Direction.Down))
                : new(above, Direction.Up, Way(Direction.Up));

            JoinWay Way(Direction step) => step == direction ? JoinWay.WentOn : JoinWay.Turned;
        }
    }

    internal sealed partial record SemitoneRule() : JoinRule("semitone approach")
    {
        internal override bool Approaches => true;

        internal override Entry Enter(ReadOnlySpan<int> tones, int last, Direction direction) =>
            EnterBeyond(tones, last, direction);
    }
}
