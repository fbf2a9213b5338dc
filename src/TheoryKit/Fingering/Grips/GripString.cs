using TheoryKit.Fingering.Hands;

namespace TheoryKit.Fingering.Grips;

/// <summary>What a grip does with one string: leaves it muted, open, or held at a fret by a finger. The default is muted.</summary>
public readonly record struct GripString
{
    private readonly byte fret; // one more than the fret, so that the default is muted
    private readonly byte finger; // one more than the finger; 0 for none

    private GripString(int fret, Finger? finger)
    {
        this.fret = (byte)(fret + 1);
        this.finger = finger is { } held ? (byte)(held + 1) : (byte)0;
    }

    /// <summary>A string that does not sound.</summary>
    public static GripString Muted => default;

    /// <summary>A string that sounds open.</summary>
    /// <param name="fret">The fret it is open at: 0, or the capo or start of a short string.</param>
    public static GripString Open(int fret = 0) => new(Checked(fret), null);

    /// <summary>A string held at a fret.</summary>
    public static GripString Held(int fret, Finger finger) => new(Checked(fret), finger);

    /// <summary>Whether it sounds.</summary>
    public bool Sounds => fret != 0;

    /// <summary>The fret, counted from the nut; null if muted.</summary>
    public int? Fret => fret == 0 ? null : fret - 1;

    /// <summary>The finger that holds it; null if muted or open.</summary>
    public Finger? Finger => finger == 0 ? null : (Finger)(finger - 1);

    private static int Checked(int fret) =>
        fret is >= 0 and <= TheoryKit.Tunings.Necks.Position.MaxFret
            ? fret
            : throw new ArgumentOutOfRangeException(
                nameof(fret),
                fret,
                $"A fret is 0 to {TheoryKit.Tunings.Necks.Position.MaxFret}."
            );
}
