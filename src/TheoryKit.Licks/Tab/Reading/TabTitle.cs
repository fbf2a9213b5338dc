using System.Globalization;
using TheoryKit.Licks.Tab.Remarks;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Licks.Tab.Reading;

/// <summary>What the line above a drawing's tab says after its title: (tuning, capo, time).</summary>
internal sealed record TabTitle(Tuning Tuning, TimeSignature Time, int Capo)
{
    /// <summary>From the lines that belong to no system to words, and the last title among them.</summary>
    public static List<(int Line, string Text)> Of(
        IReadOnlyList<TypedLine> lines,
        out TabTitle? title,
        TabRemarks remarks
    )
    {
        var words = new List<(int Line, string Text)>(lines.Count);
        title = null;
        foreach (var each in lines)
        {
            words.Add((each.Number, each.IsBlank ? "" : WordsOf(each.Line, ref title, remarks)));
        }

        return words;
    }

    private static string WordsOf(TabLine line, ref TabTitle? title, TabRemarks remarks)
    {
        var words = line.Raw.TrimEnd();
        var lead = words.AsSpan().IndexOfAnyExcept(' ');
        if (words[lead] == '#')
        {
            words = words[(lead + 1)..];
            words = words.StartsWith(' ') ? words[1..] : words;
        }
        else if (In(words, out var at) is { } found)
        {
            title = found;
            words = words[..at].TrimEnd();
        }

        if (LickText.IsLine(words))
        {
            return words;
        }

        if (!LickText.IsLine(line.Raw.Replace('\t', ' ')))
        {
            remarks.Add(line, 0, line.Text.Length, new TabRemark.CharactersReplaced());
        }

        return LickText.Cleaned(words);
    }

    private static TabTitle? In(string line, out int at)
    {
        at = line.LastIndexOf('(');
        if (at < 0 || line[^1] != ')')
        {
            return null;
        }

        var parts = line[(at + 1)..^1].Split(", ");
        if (
            parts.Length < 2
            || !Tuning.TryParse(parts[0], null, out var tuning)
            || !TimeSignature.TryParse(parts[^1], null, out var time)
        )
        {
            return null;
        }

        const string Capo = "capo ";
        var isCapo = int.TryParse(
            parts[1].StartsWith(Capo, StringComparison.Ordinal) ? parts[1].AsSpan(Capo.Length) : "",
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out var fret
        );
        return new(tuning, time, parts.Length > 2 && isCapo && fret <= Neck.DefaultFrets ? fret : 0);
    }
}
