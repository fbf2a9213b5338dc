using TheoryKit.Values;

namespace TheoryKit.Paths;

/// <summary>
/// How a note is played beyond plucking it. A closed catalogue, <see cref="Known"/>: a new technique is one entry there. Equal
/// when the names are.
/// </summary>
[EqualBy(nameof(Name))]
public sealed partial record Technique
{
    private Technique(string name, string sign) => (Name, Sign) = (name, sign);

    /// <summary>The name in the trade's words, unique in the catalogue: "hammer-on".</summary>
    public string Name { get; }

    /// <summary>The sign in tab; <c>n</c> stands for the number where the sign goes around or beside it.</summary>
    public string Sign { get; }

    /// <summary>Whether the note sounds on from the one before it on its string, with no stroke of its own.</summary>
    public bool IsJoined { get; private init; }

    /// <summary>Whether the string is pushed aside, by <see cref="PathNote.Bend"/>.</summary>
    public bool IsBent { get; private init; }

    /// <summary>How loud the note is against a plain one, as a factor of amplitude; 1 for a plain one.</summary>
    public double Loudness { get; private init; } = 1;

    /// <summary>How much of its length the note sounds, above 0 and at most 1.</summary>
    public double Sounds { get; private init; } = 1;

    /// <summary>A technique by its name or its sign; null if it is none.</summary>
    public static Technique? Find(string nameOrSign)
    {
        ArgumentNullException.ThrowIfNull(nameOrSign);
        var asked = nameOrSign.Trim();
        return Known.FirstOrDefault(each => each.Sign == asked)
            ?? Known.FirstOrDefault(each => each.Name.Equals(asked, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>A technique by its name or its sign.</summary>
    /// <exception cref="ArgumentException">There is none; the message says which names come nearest.</exception>
    public static Technique Named(string nameOrSign) =>
        Find(nameOrSign)
        ?? throw NearNames.NoSuch(nameOrSign, "technique", Known.Select(static each => each.Name), nameof(nameOrSign));

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}
