using System.Globalization;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Words;

/// <summary>What the search for a tuning has to say, in English.</summary>
public static class TuningSearchWords
{
    /// <summary>Why there is no tuning, in a sentence or two.</summary>
    /// <param name="reason">The reason.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="TheoryKit.Theory.Notes.NoteNaming"/>; null for English.</param>
    public static string InWords(this NoTuningReason reason, string? format = null, IFormatProvider? naming = null)
    {
        return reason switch
        {
            NoTuningReason.NothingToSearch => "There is no tuning to go through.",
            NoTuningReason.OnlyOneCutOff only =>
                $"The only tuning is no answer; it was cut off by this: {only.Limit.InWords(format, naming)}.",
            NoTuningReason.AllCutOff all =>
                $"None of {Count(all.Space)} tunings is an answer. What cut them off: {string.Join("; ", all.Cuts.Select(Cut))}.",
            _ => throw Check.NoKind(reason),
        };

        string Cut(TuningCut cut) => $"{cut.Limit.InWords(format, naming)} ({Count(cut.Count)})";
    }

    /// <summary>What keeps a tuning from being an answer, in a few words.</summary>
    /// <inheritdoc cref="InWords(NoTuningReason, string?, IFormatProvider?)"/>
    /// <param name="limit">The limit.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="TheoryKit.Theory.Notes.NoteNaming"/>; null for English.</param>
    public static string InWords(this TuningLimit limit, string? format = null, IFormatProvider? naming = null) =>
        limit switch
        {
            TuningLimit.BeyondPitches => "pitches that no string has",
            TuningLimit.TooSlack slack => $"a string slacker than {slack.Lightest}",
            TuningLimit.TooTight tight => $"a string tighter than {tight.Heaviest}",
            TuningLimit.NearBreaking near => string.Create(
                CultureInfo.InvariantCulture,
                $"a string beyond {near.MostOfBreaking * 100:0.#} % of its breaking stress"
            ),
            TuningLimit.Lacks lacks => lacks.Requirement.InWords(format, naming),
            TuningLimit.NoteNowhere => "notes of the line that lie nowhere",
            TuningLimit.NoGrip none => $"no grip for {none.Chord.ToString(format, naming)}",
            TuningLimit.NoFingering => "no fingering of the line",
            TuningLimit.Outdone { Best: 1 } => "more effort than the best and the next",
            TuningLimit.Outdone outdone => $"more effort than the best {Count(outdone.Best)} and the next",
            _ => throw Check.NoKind(limit),
        };

    /// <summary>What is required of a tuning, in a few words.</summary>
    /// <param name="requirement">What is required.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="TheoryKit.Theory.Notes.NoteNaming"/>; null for English.</param>
    public static string InWords(
        this TuningRequirement requirement,
        string? format = null,
        IFormatProvider? naming = null
    ) =>
        requirement switch
        {
            TuningRequirement.Different => "no two strings alike",
            TuningRequirement.Ascending => "each string higher than the one before",
            TuningRequirement.OpenNote open => $"an open {open.Note.ToString(format, naming)}",
            TuningRequirement.OpenTones open => $"{open.Chord.ToString(format, naming)} on the open strings",
            TuningRequirement.Kept kept => $"string {kept.Number} stays",
            TuningRequirement.Retuned retuned => $"at most {English.Count(retuned.Strings, "string")} retuned",
            _ => throw Check.NoKind(requirement),
        };

    private static string Count(long count) => count.ToString("N0", CultureInfo.InvariantCulture);
}
