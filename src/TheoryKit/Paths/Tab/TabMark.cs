using Fractions;

namespace TheoryKit.Paths;

/// <summary>A number on a string, with all that is typed around it.</summary>
internal sealed class TabMark
{
    /// <summary>The string, from 1.</summary>
    public required int String { get; init; }

    /// <summary>The line on which it stands.</summary>
    public required TabLine Line { get; init; }

    /// <summary>The column in the line as it is read.</summary>
    public required int At { get; init; }

    /// <summary>The column that counts for time.</summary>
    public int Column { get; set; }

    /// <summary>How many characters it has, signs included.</summary>
    public int Length { get; set; } = 1;

    /// <summary>The number; null for a dead note or a release that says none.</summary>
    public int? Number { get; set; }

    /// <summary>Whether the number is half a fret higher (a release of a quarter tone).</summary>
    public bool IsHalf { get; set; }

    public bool HasTwoDigits { get; init; }

    /// <summary>Whether it begins with a bracket.</summary>
    public bool IsBracketed { get; init; }

    public HashSet<Technique>? Techniques { get; private set; }

    /// <summary>The fret in halves to which it is bent; null where that is not said.</summary>
    public int? BendHalves { get; set; }

    /// <summary>How far it is bent, in cents, where no fret is said.</summary>
    public int? BendCents { get; set; }

    public int? TrillNumber { get; set; }

    /// <summary>Whether nothing stands between it and the number before it on its string.</summary>
    public bool IsAttached { get; init; }

    /// <summary>Where what holds it ends: the bar, counted as typed, and the column; null where nothing holds it.</summary>
    public (int Bar, int Column)? HeldTo { get; set; }

    /// <summary>Whether it rings until its string is struck again.</summary>
    public bool Rings { get; set; }

    public Fingering.Finger? Finger { get; set; }

    public Theory.NoteName? Name { get; set; }

    /// <summary>The number on its string before it; null for the first one.</summary>
    public TabMark? Before { get; set; }

    public bool Has(Technique technique) => Techniques is not null && Techniques.Contains(technique);

    /// <summary>Whether it sounds on from the one before.</summary>
    public bool IsJoined
    {
        get
        {
            if (Techniques is not null)
            {
                foreach (var technique in Techniques)
                {
                    if (technique.IsJoined)
                    {
                        return true;
                    }
                }
            }

            return false;
        }
    }

    public void Add(Technique technique) => (Techniques ??= []).Add(technique);

    public void Remove(Technique technique) => Techniques?.Remove(technique);
}

/// <summary>What stands in one column of a bar, and when that is.</summary>
internal sealed class TabMoment(int column)
{
    public int Column { get; } = column;

    /// <summary>In beats from the beginning of the bar.</summary>
    public Fraction Time { get; set; }

    public List<TabMark> Marks { get; } = [];

    /// <summary>Whether what rings ends here.</summary>
    public bool IsRest { get; set; }
}

/// <summary>A bar as typed.</summary>
internal sealed class TabTypedBar(int number, int from, int to)
{
    /// <summary>Which bar of the text it is, from 0.</summary>
    public int Number { get; } = number;

    /// <summary>Its first column.</summary>
    public int From { get; } = from;

    /// <summary>The column after its last.</summary>
    public int To { get; } = to;

    public List<TabMoment> Moments { get; } = [];

    public List<(int Column, int Length, string Text)> TimeMarks { get; } = [];

    /// <summary>The chords above it, each with its column in this system and in its own line.</summary>
    public List<(int Column, Theory.Chord? Chord, TabLine Line, int At, int Length)> Chords { get; } = [];

    public List<(Fraction Time, Theory.Chord? Chord, TabLine Line, int At, int Length)> ChordTimes { get; } = [];

    /// <summary>Whether a count or a rhythm tells the time.</summary>
    public bool HasTime { get; set; }

    /// <summary>When a column is, in beats from the beginning of the bar.</summary>
    public Func<int, Fraction> At { get; set; } = static _ => Fraction.Zero;

    /// <summary>How many beats it lasts: whole bars of the time signature.</summary>
    public int Beats { get; set; }

    /// <summary>Where the path ends inside it; null for at its end or later.</summary>
    public Fraction? End { get; set; }

    public bool BeginsRepeat { get; set; }

    /// <summary>How many times what ends here is played.</summary>
    public int Times { get; set; } = 1;
}

/// <summary>Lines of strings that belong together, with the rows above and below.</summary>
internal sealed class TabSystem
{
    public required List<TabLine> Strings { get; init; }

    public required List<string?> Labels { get; init; }

    /// <summary>Where what is on each string begins, after its name.</summary>
    public required List<int> Starts { get; init; }

    public List<TabLine> Above { get; } = [];

    public List<TabLine> Below { get; } = [];
}
