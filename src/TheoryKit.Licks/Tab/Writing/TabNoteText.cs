using System.Globalization;
using TheoryKit.Paths;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Licks.Tab.Writing;

/// <summary>How a note is written on its string.</summary>
internal static class TabNoteText
{
    // Brackets around the number, from the outside in.
    private static readonly (Technique Technique, char Open, char Close)[] Brackets =
    [
        (Technique.Ghost, '(', ')'),
        (Technique.NaturalHarmonic, '<', '>'),
        (Technique.ArtificialHarmonic, '[', ']'),
    ];

    /// <summary>What stands before the moment of the note, and from it on.</summary>
    /// <param name="neck">The neck.</param>
    /// <param name="note">The note.</param>
    /// <param name="before">The note that sounds on its string up to its start; null for none.</param>
    /// <param name="above">What stands above the strings and is not said again.</param>
    /// <param name="saysAll">Whether the fret of a dead note is written.</param>
    public static (string Before, string Sign) Of(
        Neck neck,
        PathNote note,
        PathNote? before,
        AboveSigns above,
        bool saysAll
    )
    {
        if (note.Techniques.Count == 0)
        {
            return ("", Fret(neck, note.Position.String, note.Position.Fret));
        }

        var lead = "";
        if (note.Has(Technique.Slide))
        {
            // Of two slides the one that joins is the letter.
            lead +=
                before is null || note.Has(Technique.SlideInFromBelow) || note.Has(Technique.SlideInFromAbove) ? "s"
                : before.Position.Fret > note.Position.Fret ? "\\"
                : "/";
        }

        lead += note.Has(Technique.HammerOn) ? "h" : "";
        lead += note.Has(Technique.PullOff) ? "p" : "";
        lead += note.Has(Technique.Release) ? "r" : "";
        lead += note.Has(Technique.SlideInFromBelow) ? "/" : "";
        lead += note.Has(Technique.SlideInFromAbove) ? "\\" : "";
        lead += note.Has(Technique.Tap) ? "t" : "";

        var fret = note.Has(Technique.Release) ? Bent(note) : Fret(neck, note.Position.String, note.Position.Fret);
        var sign =
            !note.IsDead ? fret
            : !saysAll || (note.Position.Fret == neck.OpenFret(note.Position.String) && !note.Has(Technique.Release))
                ? "x"
            : $"x({fret})";
        for (var index = Brackets.Length - 1; index >= 0; index--)
        {
            var (technique, open, close) = Brackets[index];
            sign = note.Has(technique) ? $"{open}{sign}{close}" : sign;
        }

        sign += note.Has(Technique.PreBend) ? $"pb{Bent(note)}" : "";
        sign += note.Has(Technique.Bend) ? $"b{Bent(note)}" : "";
        sign += note.Has(Technique.Trill) ? $"tr{Fret(neck, note.Position.String, note.TrillFret!.Value)}" : "";
        sign += note.Has(Technique.Vibrato) ? "~" : "";
        sign += note.Has(Technique.Accent) && !above.HasFlag(AboveSigns.Accent) ? ">" : "";
        sign += note.Has(Technique.Staccato) && !above.HasFlag(AboveSigns.Staccato) ? "." : "";
        sign += note.Has(Technique.PalmMute) && !above.HasFlag(AboveSigns.PalmMute) ? "m" : "";
        sign += note.Has(Technique.SlideOutDown) ? "\\" : "";
        sign += note.Has(Technique.SlideOutUp) ? "/" : "";
        return (lead, sign);
    }

    /// <summary>A string that begins up the neck says 0 when open, as any string does.</summary>
    public static string Fret(Neck neck, int @string, int fret)
    {
        var start = neck.Tuning[@string].Start;
        return (start >= neck.Capo && fret == start ? 0 : fret).ToString(CultureInfo.InvariantCulture);
    }

    /// <summary>The fret that sounds like the bent note, in halves: 7.5 for a quarter tone above 7.</summary>
    private static string Bent(PathNote note)
    {
        var fret = note.Position.Fret + (note.Bend / 100);
        return note.Bend % 100 == 0 ? $"{fret}" : $"{fret}.5";
    }
}

/// <summary>Signs that stand above the strings for all that is struck at a moment.</summary>
[Flags]
internal enum AboveSigns
{
    None = 0,
    Accent = 1,
    Staccato = 2,
    PalmMute = 4,
}
