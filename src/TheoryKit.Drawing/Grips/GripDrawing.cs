using System.Collections.Immutable;
using System.Text;
using TheoryKit.Drawing.Hands;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Grips;

/// <summary>
/// A picture of a grip: an upright box with the strings from the thickest at the left to string 1, mirrored for left-handed
/// players. Equal when everything that is drawn agrees.
/// </summary>
public sealed record GripDrawing
{
    /// <summary>The fewest frets a box has: 4.</summary>
    public const int FewestFrets = 4;

    private readonly ChordGrip? sounding;
    private readonly string? title;

    private GripDrawing(Grip grip, Neck? neck, ChordGrip? sounding = null)
    {
        ArgumentNullException.ThrowIfNull(grip);
        if (neck is not null)
        {
            Check(grip, neck);
        }

        (Grip, Neck, this.sounding) = (grip, neck, sounding);
    }

    /// <summary>What is held.</summary>
    public Grip Grip { get; }

    /// <summary>Where; null for a grip by itself, whose tones have no names then.</summary>
    public Neck? Neck { get; }

    /// <summary>The chord it sounds, if that was told.</summary>
    public Chord? Chord => sounding?.Chord;

    /// <summary>What is written on the marks at first.</summary>
    public Labels Labels { get; init; } = Labels.Fingers;

    /// <summary>Whether it is mirrored for a left-handed player: the thickest string at the right.</summary>
    public bool IsLeftHanded { get; init; }

    /// <summary>Another grip: the strings on which both do the same stand back. Null for none.</summary>
    public Grip? Against { get; init; }

    /// <summary>How notes are named; null for English.</summary>
    public IFormatProvider? Naming { get; init; }

    /// <summary>What stands above the box: the chord's symbol unless given; may be empty.</summary>
    public string Title
    {
        get => title ?? Chord?.ToString("P", Naming) ?? "";
        init => title = value;
    }

    /// <summary>All that the picture says, in words.</summary>
    public string Description => Describe();

    /// <summary>The box of a grip that sounds a chord.</summary>
    public static GripDrawing Of(ChordGrip grip)
    {
        ArgumentNullException.ThrowIfNull(grip);
        return new(grip.Grip, grip.Neck, grip);
    }

    /// <summary>The box of a grip.</summary>
    /// <param name="grip">The grip.</param>
    /// <param name="neck">Where it is held; null if that does not matter.</param>
    /// <exception cref="ArgumentException">The grip has not as many strings as the neck, or a place that the neck has not.</exception>
    public static GripDrawing Of(Grip grip, Neck? neck = null) => new(grip, neck);

    /// <summary>The picture as SVG, a file of its own or part of a page.</summary>
    /// <param name="context">The page it goes into; null for a file of its own.</param>
    public string Svg(RenderContext? context = null) => GripPicture.Write(this, context ?? new RenderContext());

    /// <summary>The box in plain text, for a terminal.</summary>
    public override string ToString() => string.Join('\n', GripText.Lines(this));

    /// <summary>The marks of the strings that sound, the highest-numbered string first.</summary>
    public IReadOnlyList<Mark> Marks
    {
        get
        {
            var places = sounding?.Places.ToDictionary(static place => place.Position);
            var marks = ImmutableArray.CreateBuilder<Mark>();
            foreach (var position in Grip.Positions.Reverse())
            {
                var mark = new Mark(position);
                if (places is not null)
                {
                    var place = places[position];
                    mark = new(place) { Role = ToneRoles.Of(place.Function, Chord!.Formula) };
                }
                else
                {
                    mark = mark with
                    {
                        Role = ToneRole.ChordTone,
                        Name = Neck is null ? null : Pitch.FromMidi(Neck.MidiNumberAt(position)).Name,
                    };
                }

                marks.Add(
                    mark with
                    {
                        Finger = (int?)Grip[position.String].Finger,
                        IsPale =
                            Against is not null
                            && position.String <= Against.Strings.Count
                            && Against[position.String].Fret == position.Fret,
                    }
                );
            }

            return marks.DrainToImmutable();
        }
    }

    /// <summary>The kinds of label that the marks have, and none.</summary>
    internal IEnumerable<Labels> Offered =>
        Enum.GetValues<Labels>()
            .Where(labels =>
                labels switch
                {
                    Labels.Functions => Chord is not null,
                    Labels.NoteNames => Neck is not null,
                    Labels.Order => false, // a grip is struck at once
                    _ => true,
                }
            );

    /// <summary>Behind which fret the strings begin: the capo, or the nut.</summary>
    internal int Base => Neck?.Capo ?? 0;

    /// <summary>Whether a string sounds open.</summary>
    internal bool IsOpen(int number) => Grip[number] is { Sounds: true, Finger: null };

    /// <summary>Where a short string begins, 0 for a string from the nut.</summary>
    internal int StartOf(int number) => Neck?.Tuning[number].Start ?? 0;

    /// <summary>The frets of the box.</summary>
    internal (int First, int Last) Frets
    {
        get
        {
            var (low, high) = (Grip.LowestFret ?? Base + 1, Grip.HighestFret ?? Base + 1);
            var first = high <= Base + FewestFrets ? Base + 1 : low;
            var last = Math.Max(high, first + FewestFrets - 1);
            if (Neck is not null && last > Neck.Frets)
            {
                last = Math.Max(high, Neck.Frets);
                first = Math.Max(Base + 1, Math.Min(first, last - FewestFrets + 1));
            }

            // A neck whose capo sits behind its last fret has no fret to show.
            return (first, Math.Max(first, last));
        }
    }

    /// <summary>The fingers that lie flat, with the strings they reach over and their fret.</summary>
    internal IEnumerable<(Finger Finger, int Fret, int Thick, int Thin)> Barres
    {
        get
        {
            for (var finger = Finger.Thumb; finger <= Finger.Little; finger++)
            {
                var held = Enumerable
                    .Range(1, Grip.Strings.Count)
                    .Where(number => Grip[number].Finger == finger)
                    .GroupBy(number => Grip[number].Fret!.Value);
                foreach (var group in held.Where(static group => group.Count() > 1))
                {
                    yield return (finger, group.Key, group.Max(), group.Min());
                }
            }
        }
    }

    private static void Check(Grip grip, Neck neck)
    {
        if (grip.Strings.Count != neck.StringCount)
        {
            throw new ArgumentException(
                $"A grip of {grip.Strings.Count} strings on a neck of {neck.StringCount}.",
                nameof(grip)
            );
        }

        foreach (var position in grip.Positions)
        {
            if (!neck.Has(position))
            {
                throw new ArgumentException($"{position} of the grip is not on this neck: {neck}.", nameof(grip));
            }
        }
    }

    private string Describe()
    {
        var words = new StringBuilder(256);
        words.Append($"A grip on {Printed.Number(Grip.Strings.Count)} strings");
        words.Append(Neck is null ? "" : $", {Printed.Of(Neck.Tuning, Naming)}");
        words.Append(Neck is { Capo: > 0 and var capo } ? $", capo at fret {capo}" : "");
        words.Append(IsLeftHanded ? ", for the left hand: string 1 is at the left." : ".");
        var marks = Marks.ToDictionary(static mark => mark.Position.String);
        for (var number = Grip.Strings.Count; number >= 1; number--)
        {
            words.Append($" String {number}: ");
            if (!marks.TryGetValue(number, out var mark))
            {
                words.Append("muted.");
                continue;
            }

            words.Append(IsOpen(number) ? "open" : $"fret {mark.Position.Fret}");
            words.Append(
                mark.Finger switch
                {
                    null => "",
                    0 => ", thumb",
                    var finger => $", finger {finger}",
                }
            );
            words.Append(mark.Name is { } name ? $", {name.ToString("P", Naming)}" : "");
            words.Append(mark.Function is { } function ? $", the {function.ToString("P")}" : "");
            words.Append(mark.IsPale ? ", held as before." : ".");
        }

        foreach (var (finger, fret, thick, thin) in Barres)
        {
            words.Append($" {Printed.Capital(HandValues.Word(finger))} lies flat at fret {fret}");
            words.Append($", from string {thick} to string {thin}.");
        }

        return words.ToString();
    }
}
