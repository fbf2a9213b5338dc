using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Zones;

/// <summary>Why a chord has no zone. Equal when kind and figures are.</summary>
[Checked]
public abstract partial record NoZoneReason
{
    private NoZoneReason() { }

    /// <summary>The capo lies on the last fret, so that there is none to hold.</summary>
    /// <param name="Capo">Its fret.</param>
    public sealed partial record NoFrets(int Capo) : NoZoneReason;

    /// <summary>No string gives the root, and zones lie between root frets.</summary>
    /// <param name="Root">The root.</param>
    /// <param name="First">The first fret that sounds, 0 for the open strings.</param>
    /// <param name="Last">The last fret.</param>
    public sealed partial record RootNowhere(NoteName Root, int First, int Last) : NoZoneReason;
}
