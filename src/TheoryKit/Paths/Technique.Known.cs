namespace TheoryKit.Paths;

public sealed partial record Technique
{
    /// <summary>A finger set down on a sounding string; the note is higher than the one before.</summary>
    public static Technique HammerOn { get; } = new("hammer-on", "h") { IsJoined = true, Loudness = 0.9 };

    /// <summary>A finger pulled off a sounding string; the note is lower than the one before.</summary>
    public static Technique PullOff { get; } = new("pull-off", "p") { IsJoined = true, Loudness = 0.85 };

    /// <summary>The finger of the note before slid along its string.</summary>
    public static Technique Slide { get; } = new("slide", "s") { IsJoined = true, Loudness = 0.9 };

    /// <summary>The pitch wavers.</summary>
    public static Technique Vibrato { get; } = new("vibrato", "~");

    /// <summary>A damped string struck: a click with hardly a pitch.</summary>
    public static Technique Dead { get; } = new("dead note", "x") { Loudness = 0.7, Sounds = 0.2 };

    /// <summary>A note more felt than heard.</summary>
    public static Technique Ghost { get; } = new("ghost note", "()") { Loudness = 0.5 };

    /// <summary>Louder than its neighbours.</summary>
    public static Technique Accent { get; } = new("accent", ">") { Loudness = 1.4 };

    /// <summary>Cut short.</summary>
    public static Technique Staccato { get; } = new("staccato", ".") { Sounds = 0.5 };

    /// <summary>Every technique.</summary>
    public static IReadOnlyList<Technique> Known { get; } =
    [HammerOn, PullOff, Slide, Vibrato, Dead, Ghost, Accent, Staccato];
}
