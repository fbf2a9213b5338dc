using TheoryKit.Licks.Tab.Reading;
using TheoryKit.Paths;
using TheoryKit.Paths.Timing;
using TheoryKit.Values;

namespace TheoryKit.Licks;

/// <summary>
/// A path worth keeping: with a name, its chords, and what the player wants to remember of it. Equal when all of that agrees; how its
/// text was laid out does not count.
/// </summary>
/// <remarks>
/// The path's notes carry position, spelling, time, finger and techniques; reasons and the place of the hand are left out, and
/// techniques stand in the order of <see cref="Technique.Known"/>. Text: header lines (<c>name: …</c>), an empty line, words and tab;
/// see <see cref="Parse(string, IFormatProvider?)"/>.
/// </remarks>
[EqualBy(
    nameof(name),
    nameof(tune),
    nameof(words),
    nameof(tempo),
    nameof(Swing),
    nameof(tags),
    nameof(headers),
    nameof(path)
)]
public sealed partial record Lick
{
    /// <summary>The fastest tempo, in beats a minute: 1000.</summary>
    public const double MaxTempo = 1000;

    private readonly string name = "";
    private readonly string tune = "";
    private readonly string words = "";
    private readonly Path path = null!;
    private readonly double? tempo;
    private readonly Sequence<string> tags = new([]);
    private readonly Sequence<LickHeader> headers = new([]);

    /// <summary>What it is called: one line that is not empty.</summary>
    /// <exception cref="ArgumentException">It is empty or not one line of text.</exception>
    public required string Name
    {
        get => name;
        init =>
            name = LickText.OneLine(value, nameof(Name)) is { Length: > 0 } line
                ? line
                : throw new ArgumentException("A lick has a name.", nameof(Name));
    }

    /// <summary>The notes, their neck, and the chords that they are played over.</summary>
    public required Path Path
    {
        get => path;
        init => path = Kept(value);
    }

    /// <summary>The tune that it belongs to; empty for none.</summary>
    /// <exception cref="ArgumentException">Not one line of text.</exception>
    public string Tune
    {
        get => tune;
        init => tune = LickText.OneLine(value, nameof(Tune));
    }

    /// <summary>Beats a minute, in hundredths, above 0 and at most <see cref="MaxTempo"/>; null for none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not such a number.</exception>
    public double? Tempo
    {
        get => tempo;
        init =>
            tempo = value is null or (>= 0.01 and <= MaxTempo)
                ? value is { } beats
                    ? Math.Round(beats, 2)
                    : null
                : throw new ArgumentOutOfRangeException(
                    nameof(Tempo),
                    value,
                    $"A tempo is 0.01 to {MaxTempo} beats a minute."
                );
    }

    /// <summary>How its eighths are swung; straight unless told.</summary>
    public Swing Swing { get; init; }

    /// <summary>Words to find it by, each once; without commas.</summary>
    /// <exception cref="ArgumentException">One is empty, has a comma or is not one line of text.</exception>
    public IReadOnlyList<string> Tags
    {
        get => tags;
        init => tags = Check.Items(value, nameof(Tags)).Select(TagOf).Distinct(StringComparer.Ordinal).ToSequence();
    }

    /// <summary>Lines of the player's own kind, in order.</summary>
    public IReadOnlyList<LickHeader> Headers
    {
        get => headers;
        init => headers = Check.Items(value, nameof(Headers));
    }

    /// <summary>Words that stand beside the tab, in lines; empty for none.</summary>
    /// <exception cref="ArgumentException">They hold control characters.</exception>
    public string Words
    {
        get => words;
        init => words = LickText.Lines(value, nameof(Words));
    }

    private static string TagOf(string tag)
    {
        var line = LickText.OneLine(tag, nameof(Tags));
        return line.Length > 0 && !line.Contains(',', StringComparison.Ordinal)
            ? line
            : throw new ArgumentException(
                $"\"{tag}\" is not a tag: tags are not empty and have no comma.",
                nameof(Tags)
            );
    }

    private static Path Kept(Path path)
    {
        ArgumentNullException.ThrowIfNull(path, nameof(Path));
        return path.Notes.All(IsKept)
            ? path
            : path.With(
                path.Notes.Select(static note =>
                    note with
                    {
                        Place = null,
                        Why = null,
                        TrillFret = note.Has(Technique.Trill) ? note.TrillFret : null,
                        Techniques = [.. Technique.Known.Where(note.Has)],
                    }
                ),
                beats: path.Beats
            );
    }

    /// <summary>Whether a note has nothing that text does not keep.</summary>
    private static bool IsKept(PathNote note) =>
        note.Place is null
        && note.Why is null
        && (note.TrillFret is null || note.Has(Technique.Trill))
        && (note.Techniques.Count < 2 || note.Techniques.SequenceEqual(Technique.Known.Where(note.Has)));
}
