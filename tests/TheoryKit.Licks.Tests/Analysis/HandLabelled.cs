using System.Globalization;
using Fractions;
using TheoryKit.Licks.Analysis;
using TheoryKit.Licks.Words;
using TheoryKit.Paths;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Licks.Tests.Analysis;

/// <summary>A lick with a label for each note, as <c>hand-labelled.txt</c> has it.</summary>
internal sealed record HandLabelled(string Name, Path Path, IReadOnlyList<string> Labels)
{
    public static IReadOnlyList<HandLabelled> All { get; } = Read();

    public override string ToString() => Name;

    /// <summary>What the analysis says of a note, as the file would.</summary>
    public static string LabelOf(LickAnalysis analysis, AnalysedNote note)
    {
        var early = note.AnticipatedFunction is { } function ? $" of {function}" : "";
        var target = analysis.TargetOf(note) is { } aim ? $" > {aim.Sounding}" : "";
        return $"{note.Function?.ToString() ?? "-"} {note.Part.InWords()}{early}{target}";
    }

    private static List<HandLabelled> Read()
    {
        var all = new List<HandLabelled>();
        var (name, changes) = ("", (Changes?)null);
        var notes = new List<PathNote>();
        var labels = new List<string>();
        var at = Fraction.Zero;
        foreach (var line in File.ReadAllLines(FileName()).Select(static line => line.Trim()).Append("lick:"))
        {
            if (line.StartsWith("lick:", StringComparison.Ordinal))
            {
                if (notes.Count > 0)
                {
                    all.Add(new(name, new(Neck.Guitar, notes, changes!.Time, changes, at), [.. labels]));
                }

                (name, at) = (line["lick:".Length..].Trim(), Fraction.Zero);
                notes.Clear();
                labels.Clear();
            }
            else if (line.StartsWith("changes:", StringComparison.Ordinal))
            {
                changes = Changes.Parse(line["changes:".Length..].Trim());
            }
            else if (line.StartsWith("rest ", StringComparison.Ordinal))
            {
                at += Fraction.FromString(line[5..], CultureInfo.InvariantCulture);
            }
            else if (line.Length > 0 && line[0] != '#' && line != "//")
            {
                var halves = line.Split('|', StringSplitOptions.TrimEntries);
                var note = Note(halves[0].Split(' '), at, notes.LastOrDefault());
                notes.Add(note);
                labels.Add(halves[1]);
                at = note.End;
            }
        }

        return all;
    }

    private static PathNote Note(string[] words, Fraction at, PathNote? before)
    {
        var pitch = Pitch.Parse(words[0]);
        var (bend, techniques) = (0, new List<Technique>());
        foreach (var word in words[2..])
        {
            var sign = word.TrimEnd("0123456789".ToCharArray());
            techniques.Add(Technique.Find(sign)!);
            bend = sign.Length == word.Length ? 0 : int.Parse(word[sign.Length..], CultureInfo.InvariantCulture);
        }

        var positions = Neck.Guitar.PositionsOf(pitch);
        var isJoined = techniques.Any(static technique => technique.IsJoined);
        return new()
        {
            Pitch = pitch,
            Position = isJoined
                ? positions.Single(position => position.String == before!.Position.String)
                : positions.MinBy(static position => Math.Abs(position.Fret - 7)),
            Start = at,
            Length = Fraction.FromString(words[1], CultureInfo.InvariantCulture),
            Techniques = techniques,
            Bend = bend,
        };
    }

    private static string FileName() =>
        System.IO.Path.Combine(Repository.Root, "tests/TheoryKit.Licks.Tests/Analysis/hand-labelled.txt");
}
