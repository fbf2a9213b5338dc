namespace TheoryKit.Paths;

// Chosen: how loud a note is and how long it sounds, by ear; nothing measured. From memory: the letters and signs, as tab has them.
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

    /// <summary>The string is pushed aside after the stroke, or from where it is held, until the pitch is <see cref="PathNote.Bend"/> higher than the fret's.</summary>
    public static Technique Bend { get; } = new("bend", "b") { IsBent = true };

    /// <summary>The string is pushed aside before the stroke; the note sounds bent from the beginning.</summary>
    public static Technique PreBend { get; } = new("pre-bend", "pb") { IsBent = true };

    /// <summary>A bent string let go, with no stroke of its own: the pitch of the note before comes down, to the fret's or to what is left of the bend.</summary>
    public static Technique Release { get; } = new("release", "r") { IsJoined = true, Loudness = 0.8 };

    /// <summary>Slid into from nowhere in particular, from below.</summary>
    public static Technique SlideInFromBelow { get; } = new("slide in from below", "/n");

    /// <summary>Slid into from nowhere in particular, from above.</summary>
    public static Technique SlideInFromAbove { get; } = new("slide in from above", "\\n");

    /// <summary>Slid away downwards to nowhere in particular at its end.</summary>
    public static Technique SlideOutDown { get; } = new("slide out down", "n\\");

    /// <summary>Slid away upwards to nowhere in particular at its end.</summary>
    public static Technique SlideOutUp { get; } = new("slide out up", "n/");

    /// <summary>An open string touched where a whole-number part of it ends: it sounds that partial, whatever the fret's pitch.</summary>
    public static Technique NaturalHarmonic { get; } = new("natural harmonic", "<>");

    /// <summary>A fretted string touched half way to the saddle by the plucking hand: it sounds an octave above the fret.</summary>
    public static Technique ArtificialHarmonic { get; } = new("artificial harmonic", "[]");

    /// <summary>The note and the one at <see cref="PathNote.TrillFret"/> in quick turns, hammered on and pulled off.</summary>
    public static Technique Trill { get; } = new("trill", "tr");

    /// <summary>The string hammered on by a finger of the plucking hand.</summary>
    public static Technique Tap { get; } = new("tap", "t");

    /// <summary>The edge of the plucking hand on the strings at the bridge.</summary>
    public static Technique PalmMute { get; } = new("palm mute", "PM") { Loudness = 0.8, Sounds = 0.6 };

    /// <summary>Every technique.</summary>
    public static IReadOnlyList<Technique> Known { get; } =
    [
        HammerOn,
        PullOff,
        Slide,
        Vibrato,
        Dead,
        Ghost,
        Accent,
        Staccato,
        Bend,
        PreBend,
        Release,
        SlideInFromBelow,
        SlideInFromAbove,
        SlideOutDown,
        SlideOutUp,
        NaturalHarmonic,
        ArtificialHarmonic,
        Trill,
        Tap,
        PalmMute,
    ];
}
