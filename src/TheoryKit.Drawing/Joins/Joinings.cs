using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Zones;
using TheoryKit.Paths;
using TheoryKit.Paths.Joins;
using TheoryKit.Paths.Words;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Joins;

/// <summary>How joined lines and what belongs to them are described.</summary>
internal static class Joinings
{
    /// <summary>The most chords of changes that stand in a title.</summary>
    private const int MostInTitle = 8;

    public static Description<JoinRule> Rules { get; } =
        new(
            new("rule for joining", "rules for joining"),
            static rule => rule.Name,
            [new("how", static rule => rule.InWords())]
        );

    public static Description<JoinQuery> Queries { get; } =
        new(
            new("question for a joined line", "questions for joined lines"),
            static query => (Words)$"{Names(query.Changes)} joined",
            [
                new("where", static query => Where(query)),
                new("notes", static query => Notes(query)),
                new("rule", static query => query.Rule.Name),
                new("starts", static query => Starts(query.Start, query.Direction)),
                new("neck", static query => Words.Of(query.Neck)),
                new("hand", static query => query.Window is null ? null : Words.Of(query.Hand)),
            ]
        );

    public static Description<JoinExtent> Extents { get; } =
        new(
            new("extent", "extents"),
            static extent => English.Count(extent.Chords, "chord"),
            [
                new("bars", static extent => $"{extent.Bars}", IsNumber: true),
                new("beats", static extent => $"{extent.Beats}", IsNumber: true),
                new("notes", static extent => extent.Notes, IsNumber: true),
            ]
        );

    public static Description<JoinedChord> Chords { get; } =
        new(
            new("chord of a joined line", "chords of a joined line"),
            static chord => Words.Of(chord.Span.Chord),
            [
                new("at beat", static chord => $"{chord.Span.Start}", IsNumber: true),
                new("entered", static chord => chord.Way is { } way ? Way(way) : "at the start"),
                new("on", static chord => Tone(chord.Entry, chord.Span.Chord!)),
                new("going", static chord => Going(chord.Direction)),
                new("notes", static chord => chord.Notes, IsNumber: true),
                new("left from", static chord => Tone(chord.Last, chord.Span.Chord!)),
                new("there instead", static chord => chord.Approach is { } approach ? Words.Of(approach) : null),
            ]
        );

    public static Description<Join> Joins { get; } =
        new(
            new("join", "joins"),
            static join => (Words)$"{join.From} to {join.To}",
            [
                new("from", static join => Function(join.FromFunction, join.From)),
                new("to", static join => Function(join.ToFunction, join.To)),
                new("the line", static join => Way(join.Way)),
                new("times", static join => join.Count, IsNumber: true),
            ]
        );

    public static Description<JoinCell> Cells { get; } =
        new(
            new("exercise", "exercises"),
            static cell =>
                (Words)$"{ZoneWords.Frets(cell.Window)}, {English.Count(cell.NotesPerChord, "note")} per chord",
            [
                new("starts", static cell => Starts(cell.Start, cell.Direction)),
                new("chords that lead in", static cell => cell.LeadIn, IsNumber: true),
                new("chords in the cycle", static cell => cell.Cycle, IsNumber: true),
                new("notes in it", static cell => cell.CycleNotes, IsNumber: true),
                new("joins made", static cell => (Words)$"{cell.Joins} of {cell.PossibleJoins}", IsNumber: true),
            ]
        );

    public static Description<JoinedChanges> Exercises { get; } =
        new(
            new("exercise", "exercises"),
            static joined => Starts(joined.Start.Pitch, joined.Query.Direction),
            [
                new("where", static joined => Where(joined.Query)),
                new("notes", static joined => Notes(joined.Query)),
                new("chords that lead in", static joined => joined.LeadIn.Chords, IsNumber: true),
                new("chords in the cycle", static joined => joined.Cycle.Chords, IsNumber: true),
                new("notes in it", static joined => joined.Cycle.Notes, IsNumber: true),
                new("joins made", static joined => Made(joined), IsNumber: true),
            ]
        );

    /// <summary>The first chords of changes by name.</summary>
    public static Words Names(Changes changes)
    {
        var names = changes.Chords.Select(static span => span.Chord).OfType<Chord>().ToList();
        var shown = Words.Join(", ", names.Take(MostInTitle));
        return names.Count <= MostInTitle ? shown : $"{shown} and {names.Count - MostInTitle} more";
    }

    /// <summary>"frets 5 to 8".</summary>
    public static string Where(JoinQuery query) =>
        query.Window is { } window ? ZoneWords.Frets(window) : "in shapes of their own";

    /// <summary>"8 notes per chord".</summary>
    public static string Notes(JoinQuery query) =>
        query.NotesPerBeat is { } perBeat
            ? $"{perBeat} {(perBeat == Fractions.Fraction.One ? "note" : "notes")} a beat"
            : $"{English.Count(query.NotesPerChord, "note")} per chord";

    /// <summary>What the line does at a change.</summary>
    public static string Way(JoinWay way) =>
        way switch
        {
            JoinWay.WentOn => "goes on",
            JoinWay.Turned => "turns",
            _ => "holds its pitch",
        };

    /// <summary>"28 of 41".</summary>
    public static Words Made(JoinedChanges joined) =>
        $"{joined.PossibleJoins - joined.Missed.Count} of {joined.PossibleJoins}";

    /// <summary>A tone with what it is to a chord.</summary>
    public static Cell Tone(Place place, Chord chord)
    {
        var function = chord.DegreeOf(place.Pitch.Name);
        return new($"{place.Pitch} ({function})", ToneRoles.Over(function, chord.Formula));
    }

    private static Cell Function(Degree degree, Chord chord) =>
        new(Words.Of(degree), ToneRoles.Over(degree, chord.Formula));

    private static string Going(Direction direction) => direction == Direction.Up ? "up" : "down";

    private static Words Starts(Pitch? start, Direction direction) =>
        start is { } pitch
            ? (Words)$"on {pitch} going {Going(direction)}"
            : $"on the lowest root going {Going(direction)}";
}
