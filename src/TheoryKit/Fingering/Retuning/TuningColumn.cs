using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Strings;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Retuning;

/// <summary>What one tuning of a <see cref="TuningComparison"/> does to the chords. Equal when the comparison and the neck are.</summary>
[EqualBy(nameof(Neck), nameof(comparison))]
public sealed partial class TuningColumn : IEquatable<TuningColumn>, IFormattable
{
    private readonly TuningComparison comparison;
    private readonly string measures; // what the name has besides the tuning
    private readonly Lazy<int> distinctShapes;

    internal TuningColumn(TuningComparison comparison, Neck neck, string measures)
    {
        (this.comparison, Neck, this.measures) = (comparison, neck, measures);
        Cells = comparison.Chords.Select(chord => new TuningCell(comparison, neck, chord)).ToSequence();
        OpenPitches = Enumerable.Range(1, neck.StringCount).Select(OpenPitch).ToSequence();
        Retuned = Steps(comparison.Reference.Tuning, neck.Tuning);
        Tensions = comparison.Strings is { } strings
            ? neck.Tensions(strings, Retuned is null ? null : comparison.Reference.Tuning, comparison.TensionLimits)
            : null;
        distinctShapes = new(() => Cells.SelectMany(static cell => cell.ShapeKeys).Distinct().Count());
    }

    /// <summary>The neck.</summary>
    public Neck Neck { get; }

    /// <summary>
    /// The tuning by its name, or by its strings where it has none; with the capo if there is one, and with length and frets
    /// where that tells it from another column.
    /// </summary>
    public string Name => ToString(null, null);

    /// <summary>A cell for each chord, in their order.</summary>
    public IReadOnlyList<TuningCell> Cells { get; }

    /// <summary>What the open strings sound, behind the capo, string 1 first. Spelled as tuned where the capo changes nothing.</summary>
    public IReadOnlyList<Pitch> OpenPitches { get; }

    /// <summary>The lowest pitch: of the open strings the lowest.</summary>
    public Pitch Lowest => OpenPitches.MinBy(static pitch => pitch.MidiNumber);

    /// <summary>The highest pitch: of all strings at the last fret the highest, spelled with a sharp where it needs one.</summary>
    public Pitch Highest =>
        Pitch.FromMidi(
            Enumerable.Range(1, Neck.StringCount).Max(number => Neck.MidiNumberAt(new Position(number, Neck.Frets)))
        );

    /// <summary>From the lowest pitch to the highest, in semitones.</summary>
    public int Range => Highest.MidiNumber - Lowest.MidiNumber;

    /// <summary>
    /// The intervals between the open strings of neighbouring numbers, as tuned, from the highest-numbered string down to
    /// string 1; one descends where a string is tuned lower than the one before it.
    /// </summary>
    public IReadOnlyList<Interval> OpenIntervals =>
        [
            .. Enumerable
                .Range(1, Neck.StringCount - 1)
                .Reverse()
                .Select(number => Neck.Tuning[number].Open - Neck.Tuning[number + 1].Open),
        ];

    /// <summary>Groups of strings that sound the same pitch open, each from the highest number down; empty where no two do.</summary>
    public IReadOnlyList<IReadOnlyList<int>> Unisons => Alike(static pitch => pitch.MidiNumber);

    /// <summary>
    /// Groups of strings that sound the same note open in whatever octave, each from the highest number down; the unisons are
    /// among them.
    /// </summary>
    public IReadOnlyList<IReadOnlyList<int>> Doublings => Alike(static pitch => pitch.PitchClass);

    /// <summary>
    /// By how many semitones each string is tuned away from the reference, string 1 first, negative where it is let down;
    /// null where the necks have not the same strings (number, and where a short one begins), so that no retuning leads from
    /// one to the other.
    /// </summary>
    public IReadOnlyList<int>? Retuned { get; }

    /// <summary>How far it is to retune from the reference: the semitones of all strings, up or down, added; null as for <see cref="Retuned"/>.</summary>
    public int? RetuneDistance => Retuned?.Sum(Math.Abs);

    /// <summary>
    /// The tensions of the fitted strings, with the change against the tuning of the reference where one can retune from it;
    /// null where the comparison has no strings.
    /// </summary>
    public TensionReport? Tensions { get; }

    /// <summary>How many grips there are of all the chords.</summary>
    public int Count => Cells.Sum(static cell => cell.Count);

    /// <summary>How many of the chords have a grip.</summary>
    public int Playable => Cells.Count(static cell => cell.Best is not null);

    /// <summary>The least efforts of all chords added; null where a chord has no grip.</summary>
    public double? LeastEffort => Playable == Cells.Count ? Cells.Sum(static cell => cell.LeastEffort!.Value) : null;

    /// <summary>
    /// How many different shapes the hand takes for all the chords together (see <see cref="TuningCell.DistinctShapes"/>); a
    /// shape that serves several chords counts once.
    /// </summary>
    public int DistinctShapes => distinctShapes.Value;

    /// <summary>How many zones the chords have together.</summary>
    public int Zones => Cells.Sum(static cell => cell.Zones.Count);

    /// <summary>How many of the zones miss no tone.</summary>
    public int CompleteZones => Cells.Sum(static cell => cell.CompleteZones);

    /// <summary>How many open strings the best grips of all chords use together.</summary>
    public int OpenStringsInUse => Cells.Sum(static cell => cell.OpenStringsInUse ?? 0);

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    /// <summary>The name: "G" (or null) plain, "P" with printed signs.</summary>
    /// <param name="format">"G", "P" or null.</param>
    /// <param name="formatProvider">A <see cref="NoteNaming"/> for a tuning that goes by its strings; null for English.</param>
    /// <exception cref="FormatException">Another format.</exception>
    public string ToString(string? format, IFormatProvider? formatProvider = null)
    {
        var isPrinted = TextFormat.IsPrinted(format);
        var tuning = Neck.Tuning.Name is { } name
            ? (isPrinted ? name.Replace('#', '♯') : name)
            : string.Join(
                ' ',
                Neck.Tuning.Strings.Reverse()
                    .Select(each =>
                        each.Open.ToString(format, formatProvider) + (each.Start == 0 ? "" : $"@{each.Start}")
                    )
            );
        return tuning + measures;
    }

    private static Sequence<int>? Steps(Tuning from, Tuning to) =>
        from.StringCount == to.StringCount
        && from.Strings.Zip(to.Strings).All(static pair => pair.First.Start == pair.Second.Start)
            ? from
                .Strings.Zip(to.Strings, static (one, other) => other.Open.MidiNumber - one.Open.MidiNumber)
                .ToSequence()
            : null;

    private Pitch OpenPitch(int number)
    {
        var (each, fret) = (Neck.Tuning[number], Neck.OpenFret(number));
        return fret == each.Start ? each.Open : Pitch.FromMidi(Neck.MidiNumberAt(new(number, fret)));
    }

    private List<IReadOnlyList<int>> Alike(Func<Pitch, int> sound) =>
        [
            .. Enumerable
                .Range(1, Neck.StringCount)
                .Reverse()
                .GroupBy(number => sound(OpenPitches[number - 1]))
                .Where(static group => group.Count() > 1)
                .Select(static group => (IReadOnlyList<int>)[.. group]),
        ];
}
