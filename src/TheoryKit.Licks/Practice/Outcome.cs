using System.Diagnostics.CodeAnalysis;
using TheoryKit.Values;

namespace TheoryKit.Licks.Practice;

/// <summary>
/// How a lick went, as a teacher would say it. A closed catalogue, <see cref="Known"/>, in order from the worst; what follows from each is
/// said here and read by <see cref="SpacedDay"/> and <see cref="TempoAdvice"/>. Equal when the names are.
/// </summary>
/// <remarks>Text: the name, in any case. Chosen: the figures of each, teaching practice put in numbers.</remarks>
[ReadAs("how a lick went")]
[EqualBy(nameof(Name))]
public sealed partial record Outcome : ISpanParsable<Outcome>
{
    private Outcome(string name) => Name = name;

    /// <summary>It could not be played through.</summary>
    public static Outcome FellApart { get; } =
        new("fell apart")
        {
            Rank = 0,
            FirstGap = 1,
            Gap = 0.25,
            Tempo = 0.85,
        };

    /// <summary>Played through, with stops or wrong notes.</summary>
    public static Outcome Stumbled { get; } =
        new("stumbled")
        {
            Rank = 1,
            FirstGap = 1,
            Gap = 0.5,
            Tempo = 0.95,
        };

    /// <summary>Played through in time without a slip, with some care.</summary>
    public static Outcome Clean { get; } =
        new("clean")
        {
            Rank = 2,
            FirstGap = 2,
            Gap = 2,
            Tempo = 1.04,
        };

    /// <summary>Clean, with thoughts to spare.</summary>
    public static Outcome AtEase { get; } =
        new("at ease")
        {
            Rank = 3,
            FirstGap = 4,
            Gap = 3,
            Tempo = 1.08,
        };

    /// <summary>All of them, from the worst.</summary>
    public static IReadOnlyList<Outcome> Known { get; } = [FellApart, Stumbled, Clean, AtEase];

    /// <summary>The name: "clean".</summary>
    public string Name { get; }

    /// <summary>The place in the catalogue, from 0 for the worst.</summary>
    public int Rank { get; private init; }

    /// <summary>Whether it was played without a slip.</summary>
    public bool IsClean => Gap > 1;

    /// <summary>After how many days a lick comes back that went so on its first day.</summary>
    public int FirstGap { get; private init; }

    /// <summary>What the days since the last time are multiplied by to give those to the next.</summary>
    public double Gap { get; private init; }

    /// <summary>What the tempo is multiplied by to give the next one.</summary>
    public double Tempo { get; private init; }

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    internal static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out Outcome outcome)
    {
        foreach (var known in Known)
        {
            if (cursor.Rest.StartsWith(known.Name, StringComparison.OrdinalIgnoreCase))
            {
                cursor.Position += known.Name.Length;
                outcome = known;
                return true;
            }
        }

        outcome = null;
        return cursor.Fail($"how it went: {string.Join(", ", Known.SkipLast(1))} or {Known[^1]}");
    }
}
