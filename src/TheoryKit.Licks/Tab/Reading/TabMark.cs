using TheoryKit.Fingering.Hands;
using TheoryKit.Paths;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Licks.Tab.Reading;

/// <summary>A number on a string, with all that is typed around it.</summary>
/// <param name="String">The string, from 1.</param>
/// <param name="Line">The line on which it stands.</param>
/// <param name="Column">The column in the line as it is read.</param>
internal readonly record struct TabMark(int String, TabLine Line, int Column)
{
    /// <summary>How many characters it has, signs included.</summary>
    public int Length { get; init; }

    /// <summary>The number; null for a dead note or a release that says none.</summary>
    public int? Number { get; init; }

    /// <summary>Whether the number is half a fret higher (a release of a quarter tone).</summary>
    public bool IsHalf { get; init; }

    public bool HasTwoDigits { get; init; }

    /// <summary>Whether it begins with a bracket.</summary>
    public bool IsBracketed { get; init; }

    /// <summary>Each once, in the order in which they are typed.</summary>
    public required IReadOnlyList<Technique> Techniques { get; init; }

    /// <summary>The fret in halves to which it is bent; null where that is not said.</summary>
    public int? BendHalves { get; init; }

    /// <summary>How far it is bent, in cents, where no fret is said.</summary>
    public int? BendCents { get; init; }

    public int? TrillNumber { get; init; }

    /// <summary>Whether a slide leads from it to the next number on its string.</summary>
    public bool SlidesOn { get; init; }

    /// <summary>Whether nothing stands between it and the number before it on its string.</summary>
    public bool IsAttached { get; init; }

    /// <summary>Which number is the one before it on its string, in the order in which they are read; null for the first one.</summary>
    public int? Before { get; init; }

    /// <summary>Where what holds it ends: the bar, counted as typed, and the column; null where nothing holds it.</summary>
    public (int Bar, int Column)? HeldTo { get; init; }

    /// <summary>Whether it rings until its string is struck again.</summary>
    public bool Rings { get; init; }

    public Finger? Finger { get; init; }

    public NoteName? Name { get; init; }

    /// <summary>Whether it sounds on from the one before.</summary>
    public bool IsJoined => Techniques.Any(static technique => technique.IsJoined);

    public bool Has(Technique technique) => Techniques.Contains(technique);

    public TabMark With(Technique technique) =>
        Has(technique) ? this : this with { Techniques = [.. Techniques, technique] };
}
