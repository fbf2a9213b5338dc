using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Licks.Tab.Options;

/// <summary>How a sound is spelled that no row of names spells: as its chord spells it.</summary>
internal static class TabSpelling
{
    public static Pitch Of(Chord? chord, int midiNumber)
    {
        try
        {
            return chord?.Spell(midiNumber) ?? Pitch.FromMidi(midiNumber);
        }
        catch (OverflowException)
        {
            return Pitch.FromMidi(midiNumber);
        }
    }
}
