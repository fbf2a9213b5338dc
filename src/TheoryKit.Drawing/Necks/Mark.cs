using System.Globalization;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Necks;

/// <summary>A mark on a neck: where it is and what can be said about it. Equal when all of it agrees.</summary>
public sealed record Mark
{
    /// <summary>The most characters of a label of one's own: 4.</summary>
    public const int MaxLabelLength = 4;

    private readonly ToneRole? role;
    private readonly int? finger;
    private readonly string? label;
    private readonly string? order;

    /// <summary>A mark that says no more than its place.</summary>
    public Mark(Position position) => Position = position;

    /// <summary>A mark of a tone.</summary>
    /// <param name="position">String and fret.</param>
    /// <param name="function">The tone's degree over the root; its role follows from it.</param>
    /// <param name="name">The tone's name.</param>
    public Mark(Position position, Degree function, NoteName? name = null)
        : this(position) => (Function, Name) = (function, name);

    /// <summary>A mark of a place.</summary>
    public Mark(Place place)
        : this(place.Position, place.Function, place.Pitch.Name) { }

    /// <summary>String and fret.</summary>
    public Position Position { get; init; }

    /// <summary>The tone's degree over the root.</summary>
    public Degree? Function { get; init; }

    /// <summary>The tone's name.</summary>
    public NoteName? Name { get; init; }

    /// <summary>The finger of the fretting hand: 1 (index) to 4 (little finger), 0 the thumb.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Another number.</exception>
    public int? Finger
    {
        get => finger;
        init =>
            finger = value is null or (>= 0 and <= 4)
                ? value
                : throw new ArgumentOutOfRangeException(nameof(value), value, "Fingers are 1 to 4, and 0 the thumb.");
    }

    /// <summary>What the tone does: by its <see cref="Function"/> unless given.</summary>
    public ToneRole Role
    {
        get => role ?? (Function is { } function ? ToneRoles.Of(function) : ToneRole.Other);
        init => role = value;
    }

    /// <summary>A label of one's own, of at most <see cref="MaxLabelLength"/> characters, in place of every other; null for none.</summary>
    /// <exception cref="ArgumentException">It is longer.</exception>
    public string? Label
    {
        get => label;
        init => label = Short(value);
    }

    /// <summary>When it is played: a number, or several with commas; of at most <see cref="MaxLabelLength"/> characters.</summary>
    /// <exception cref="ArgumentException">It is longer.</exception>
    public string? Order
    {
        get => order;
        init => order = Short(value);
    }

    /// <summary>Whether it stands back: drawn small and without a label.</summary>
    public bool IsPale { get; init; }

    /// <summary>What is written on it, with printed signs; null for nothing.</summary>
    /// <param name="labels">The kind of label.</param>
    /// <param name="naming">How notes are named; null for English.</param>
    public string? Written(Labels labels, IFormatProvider? naming = null) =>
        Label
        ?? labels switch
        {
            Labels.Functions => Function?.ToString("P", naming),
            Labels.NoteNames => Name?.ToString("P", naming),
            Labels.Fingers => finger is null ? null : FingerSign(finger.Value),
            Labels.Order => Order,
            _ => null,
        };

    private static string? Short(string? value) =>
        value is null || new StringInfo(value).LengthInTextElements <= MaxLabelLength
            ? value
            : throw new ArgumentException(
                $"\"{value}\" does not fit on a mark; a label has at most {MaxLabelLength} characters.",
                nameof(value)
            );

    internal static string FingerSign(int finger) => finger == 0 ? "T" : ((char)('0' + finger)).ToString();
}
