using TheoryKit.Paths;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Licks.Moves;

/// <summary>Where notes lie that stay on their strings.</summary>
internal static class KeptStrings
{
    /// <summary>Every note on the string that it was on; null if one has no place there.</summary>
    public static List<Position>? Of(Neck neck, List<WantedNote> wanted)
    {
        var kept = new List<Position>(wanted.Count);
        foreach (var each in wanted)
        {
            if (At(neck, each) is not { } position)
            {
                return null;
            }

            kept.Add(position);
        }

        return kept;
    }

    public static Position? At(Neck neck, WantedNote wanted)
    {
        var (number, fret) = (wanted.Note.Position.String, wanted.Note.Position.Fret);
        var moved = fret + wanted.Pitch.MidiNumber - wanted.Note.Pitch.MidiNumber;
        if (wanted.Harmonic is not null)
        {
            var nodes = wanted.Places(neck).FindAll(node => node.String == number);
            return nodes.Count == 0 ? null
                : nodes.Contains(wanted.Note.Position) ? wanted.Note.Position
                : nodes.MinBy(node => (Math.Abs(node.Fret - moved), node.Fret));
        }

        if (wanted.IsDead && !wanted.IsHeld)
        {
            // A click on an open string stays one.
            moved = fret == neck.OpenFret(number) ? fret : moved;
            moved = Math.Clamp(moved, neck.OpenFret(number), neck.Frets);
        }

        return
            moved is >= 0 and <= Position.MaxFret
            && new Position(number, moved) is var position
            && wanted.Fits(neck, position)
            ? position
            : null;
    }

    /// <summary>What the string that a note was on lacks for it.</summary>
    public static StringLack Lack(Neck neck, WantedNote wanted)
    {
        var (number, fret) = (wanted.Note.Position.String, wanted.Note.Position.Fret);
        var moved = fret + wanted.Pitch.MidiNumber - wanted.Note.Pitch.MidiNumber;
        return wanted.Harmonic is not null ? StringLack.Node
            : moved < neck.OpenFret(number) ? StringLack.Low
            : moved > neck.Frets ? StringLack.High
            : wanted.IsHeld && moved == neck.OpenFret(number) ? StringLack.Finger
            : StringLack.TrillFret;
    }
}
