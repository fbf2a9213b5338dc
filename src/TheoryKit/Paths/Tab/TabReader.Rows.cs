using System.Globalization;
using Fractions;
using TheoryKit.Theory;
using TheoryKit.Tunings;

namespace TheoryKit.Paths;

internal sealed partial class TabReader
{
    private Tuning? titleTuning;
    private TimeSignature? titleTime;
    private int titleCapo;
    private readonly Dictionary<string, Chord?> chordsRead = new(StringComparer.Ordinal);

    /// <summary>A word of a row and where it begins.</summary>
    private readonly record struct Token(int At, string Text);

    private static List<Token> Tokens(string row, bool keepsBrackets = false)
    {
        var tokens = new List<Token>();
        for (var at = 0; at < row.Length; )
        {
            if (row[at] == ' ')
            {
                at++;
                continue;
            }

            var (end, depth) = (at, 0);
            while (end < row.Length && (row[end] != ' ' || depth > 0))
            {
                depth +=
                    !keepsBrackets ? 0
                    : row[end] == '[' ? 1
                    : row[end] == ']' ? -1
                    : 0;
                end++;
            }

            tokens.Add(new(at, row[at..end]));
            at = end;
        }

        return tokens;
    }

    // ---- What a row is ----

    private static bool IsBelow(string row) =>
        MarksOf(row) is not null || TimeTokens(row) is not null || IsSpans(row) || IsLabels(row);

    private bool IsAbove(string row) =>
        IsSpans(row) || IsSigns(row) || IsNumbers(row) || TimeTokens(row) is not null || IsChords(row);

    private static bool IsSigns(string row) => row.AsSpan().Trim().TrimStart(">.^~ ").IsEmpty;

    private static bool IsNumbers(string row)
    {
        var tokens = Tokens(row);
        for (var index = 0; index < tokens.Count; index++)
        {
            if (!int.TryParse(tokens[index].Text.TrimEnd('.'), NumberStyles.None, CultureInfo.InvariantCulture, out _))
            {
                return false;
            }
        }

        return tokens.Count > 0;
    }

    /// <summary>Numbers of bars: no more of them than there are bars, which a count has.</summary>
    private static bool IsBarNumbers(string row, TabSystem system) =>
        IsNumbers(row) && Tokens(row).Count is var count && (count == 1 || count < system.Strings[0].Text.Count('|'));

    // What holds for a stretch of notes, with a line as far as it goes or none.
    private static readonly (string Words, bool IsMuted)[] Spans =
    [
        ("PM", true),
        ("P.M.", true),
        ("P.M", true),
        ("palm mute", true),
        ("let ring", false),
        ("l.r.", false),
    ];

    private static bool IsSpans(string row)
    {
        var (at, found) = (0, false);
        while (at < row.Length)
        {
            if (SpanAt(row, at) is var (length, _))
            {
                at += length;
                found = true;
            }
            else if (SpanSigns.Contains(row[at]))
            {
                at++;
            }
            else
            {
                return false;
            }
        }

        return found;
    }

    private static (int Length, bool IsMuted)? SpanAt(string row, int at)
    {
        if (!char.IsLetter(row[at]))
        {
            return null;
        }

        foreach (var (words, isMuted) in Spans)
        {
            if (row.AsSpan(at).StartsWith(words, StringComparison.OrdinalIgnoreCase))
            {
                return (words.Length, isMuted);
            }
        }

        return null;
    }

    private static readonly System.Buffers.SearchValues<char> SpanSigns = System.Buffers.SearchValues.Create("-.|~ =");

    private static bool IsLabels(string row)
    {
        var tokens = Tokens(row);
        return tokens.Count > 0
            && tokens.TrueForAll(static token =>
                Degree.TryParse(token.Text, null, out _)
                || NoteName.TryParse(token.Text, null, out _)
                || token.Text is "T" or "o" or "|"
            );
    }

    private bool IsChords(string row)
    {
        var found = false;
        foreach (var token in Tokens(row, keepsBrackets: true))
        {
            if (ChordOf(token.Text, out _))
            {
                found = true;
            }
            else if (token.Text is not ("|" or "%" or "||") && !token.Text.All(char.IsAsciiDigit))
            {
                return false;
            }
        }

        return found;
    }

    private bool ChordOf(string text, out Chord? chord)
    {
        chord = null;
        if (text is "N.C." or "NC")
        {
            return true;
        }

        if (!char.IsAsciiLetterUpper(text[0]))
        {
            return false;
        }

        if (chordsRead.TryGetValue(text, out chord))
        {
            return chord is not null;
        }

        var isChord = Chord.TryParse(text, null, out chord);
        chordsRead[text] = chord;
        return isChord;
    }

    /// <summary>The words of a row of time, cut where a count is written without spaces; null for another row.</summary>
    private static List<Token>? TimeTokens(string row)
    {
        var found = new List<Token>();
        var (last, rests, hasCount, hasUpper, hasOtherUpper) = (0, 0, false, false, false);
        foreach (var token in Tokens(row))
        {
            if (token.Text is "end" or "|" or "||")
            {
                // It may stand over a beat, as an r may.
                rests += token.Text == "end" ? 1 : 0;
                found.Add(token);
                continue;
            }

            if (IsRhythm(token.Text))
            {
                hasUpper |= char.IsAsciiLetterUpper(token.Text[0]);
                hasOtherUpper |= char.IsAsciiLetterUpper(token.Text[0]) && token.Text[0] != 'E';
                found.Add(token);
                continue;
            }

            for (var at = 0; at < token.Text.Length; )
            {
                var end = at + 1;
                if (char.IsAsciiDigit(token.Text[at]))
                {
                    while (end < token.Text.Length && end < at + 2 && char.IsAsciiDigit(token.Text[end]))
                    {
                        end++;
                    }

                    var number = int.Parse(token.Text.AsSpan(at, end - at), CultureInfo.InvariantCulture);
                    var from = number > last ? last : 0;
                    if (number is 0 or > TimeSignature.MaxBeats || number - from - 1 > rests)
                    {
                        return null;
                    }

                    (last, rests, hasCount) = (number, 0, true);
                }
                else if (token.Text[at] == 'r')
                {
                    rests++;
                }
                else if (token.Text[at] is not ('&' or '+' or 'e' or 'a' or '.' or '|'))
                {
                    return null;
                }

                found.Add(new(token.At + at, token.Text[at..end]));
                at = end;
            }
        }

        // A lone E above is a chord.
        return found.Count == 0 || (hasUpper && (!hasOtherUpper || hasCount)) ? null : found;
    }

    private static bool IsRhythm(string text)
    {
        var rest = text.AsSpan();
        rest = rest.Length > 1 && rest[0] is 'r' or 'R' ? rest[1..] : rest;
        foreach (var range in rest.Split('+'))
        {
            var part = rest[range];
            if (part.IsEmpty || !IsValue(part))
            {
                return false;
            }
        }

        return true;

        static bool IsValue(ReadOnlySpan<char> part)
        {
            if (part[0] == '(')
            {
                part = part[1..];
                if (!part.EndsWith(")"))
                {
                    return false;
                }

                part = part[..^1];
                var slash = part.IndexOf('/');
                return IsDigits(slash < 0 ? part : part[..slash]) && (slash < 0 || IsDigits(part[(slash + 1)..]));
            }

            if (!TabRhythm.Letters.Contains(char.ToLowerInvariant(part[0]), StringComparison.Ordinal))
            {
                return false;
            }

            part = part[1..].TrimStart('.');
            return part.IsEmpty || (part.Length <= 4 && IsDigits(part));
        }

        static bool IsDigits(ReadOnlySpan<char> digits) =>
            digits.Length is > 0 and <= 18
            && !digits.ContainsAnyExceptInRange('0', '9')
            && digits.ContainsAnyExcept('0');
    }

    /// <summary>A row of fingers or names that says so at its end: which, of which of the notes struck together, and where the words end.</summary>
    private static (bool IsFingers, int Row, int End)? MarksOf(string row)
    {
        var end = row.AsSpan().TrimEnd();
        var number = 1;
        var space = end.LastIndexOf(' ');
        if (
            space > 0
            && char.IsAsciiDigit(end[^1])
            && int.TryParse(end[(space + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out number)
        )
        {
            end = end[..space].TrimEnd();
        }
        else
        {
            number = 1;
        }

        return end.EndsWith(" fingers") ? (true, number, end.Length - "fingers".Length)
            : end.EndsWith(" notes") && number is >= 1 and <= Tuning.MaxStrings && AreNames(end[..^"notes".Length])
                ? (false, number, end.Length - "notes".Length)
            : null;

        static bool AreNames(ReadOnlySpan<char> names)
        {
            foreach (var token in Tokens(names.ToString()))
            {
                if (!NoteName.TryParse(token.Text, null, out _))
                {
                    return false;
                }
            }

            return true;
        }
    }

    /// <summary>The line above a drawing's tab: its title, then (tuning, capo, time).</summary>
    private static (int At, Tuning? Tuning, TimeSignature? Time, int Capo)? TitleAt(string line)
    {
        var open = line.LastIndexOf('(');
        if (open < 0 || line[^1] != ')')
        {
            return null;
        }

        var parts = line[(open + 1)..^1].Split(", ");
        if (
            parts.Length < 2
            || !Tuning.TryParse(parts[0], null, out var tuning)
            || !TimeSignature.TryParse(parts[^1], null, out var time)
        )
        {
            return null;
        }

        var capo =
            parts.Length > 2
            && parts[1].StartsWith("capo ", StringComparison.Ordinal)
            && int.TryParse(
                parts[1].AsSpan("capo ".Length),
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out var fret
            )
            && fret <= Neck.DefaultFrets
                ? fret
                : 0;
        return (open, tuning, time, capo);
    }

    // ---- The neck ----

    private bool isUpsideDown;

    // How many strings of the neck are thinner than those that are typed.
    private int above;

    private void FindNeck()
    {
        var system = systems[0];
        var labels = system.Labels;
        var names = new NoteName?[labels.Count];
        for (var index = 0; index < labels.Count; index++)
        {
            names[index] = labels[index] is { } label && !char.IsAsciiDigit(label[0]) ? NameOf(label) : null;
        }

        FindUpsideDown(labels, names);
        if (isUpsideDown)
        {
            Array.Reverse(names);
            remarks.Add(
                system.Strings[0],
                0,
                system.Starts[0],
                "The names say that the thickest string is on top; the lines are read upside down."
            );
        }

        if (options.Neck is { } given)
        {
            neck = given;
            for (var index = 0; index < names.Length; index++)
            {
                if (names[index] is { } name && name.PitchClass != given.Tuning.Strings[index].Open.PitchClass)
                {
                    remarks.Add(
                        Row(system, index),
                        0,
                        Math.Max(1, system.Starts[isUpsideDown ? names.Length - 1 - index : index]),
                        $"The line is called {name}, but string {index + 1} of the neck is {given.Tuning.Strings[index].Open}; read on the neck."
                    );
                    break;
                }
            }

            return;
        }

        if (titleTuning is { } tuning && tuning.StringCount == labels.Count)
        {
            neck = new(tuning, capo: titleCapo);
            return;
        }

        neck = new(TuningFor(names, system));
    }

    private TabLine Row(TabSystem system, int index) =>
        system.Strings[isUpsideDown ? system.Strings.Count - 1 - index : index];

    private static NoteName? NameOf(string label)
    {
        var end = label.Length;
        while (end > 1 && char.IsAsciiDigit(label[end - 1]))
        {
            end--;
        }

        return NoteName.TryParse($"{char.ToUpperInvariant(label[0])}{label[1..end]}", null, out var name) ? name : null;
    }

    /// <summary>By numbers that fall, by a small e (b, g) at the bottom, or by names that fit only so.</summary>
    private void FindUpsideDown(List<string?> labels, NoteName?[] names)
    {
        if (labels.TrueForAll(static label => label is not null && char.IsAsciiDigit(label[0])))
        {
            isUpsideDown = labels[^1] == "1";
            return;
        }

        if (!Array.TrueForAll(names, static name => name is not null))
        {
            return;
        }

        var classes = names.Select(static name => name!.Value.PitchClass).ToList();
        var fits = options.Neck is { } given
            ? (Func<bool, bool>)(down => Fits(given.Tuning, down))
            : down =>
                Tuning.Known.Any(known => Fits(known.Tuning, down))
                || RunOf([.. down ? names.Reverse() : names]) is not null;
        isUpsideDown = fits(true) && !fits(false);
        if (!isUpsideDown && fits(true) && fits(false))
        {
            // Both fit: a small letter is the thin one of two that are called alike.
            isUpsideDown =
                char.IsAsciiLetterLower(labels[^1]![0])
                && char.IsAsciiLetterUpper(labels[0]![0])
                && char.ToUpperInvariant(labels[^1]![0]) == labels[0]![0];
        }

        bool Fits(Tuning tuning, bool down)
        {
            if (tuning.StringCount != classes.Count)
            {
                return false;
            }

            for (var index = 0; index < classes.Count; index++)
            {
                if (tuning.Strings[index].Open.PitchClass != classes[down ? classes.Count - 1 - index : index])
                {
                    return false;
                }
            }

            return true;
        }
    }

    private Tuning TuningFor(NoteName?[] names, TabSystem system)
    {
        var sameCount = Tuning.Known.Where(known => known.Tuning.StringCount == names.Length).ToList();
        var octaves = OctavesIn(system);
        if (octaves is not null)
        {
            return octaves;
        }

        if (sameCount.Find(known => Agrees(known.Tuning)) is { } fitting)
        {
            if (names.Length != 6 && Array.TrueForAll(names, static name => name is null))
            {
                remarks.Add(
                    system.Strings[0],
                    0,
                    Math.Max(1, system.Starts[0]),
                    $"Which strings these are is not said; read as {fitting.Name}, {fitting.Tuning}."
                );
            }

            return fitting.Tuning;
        }

        if (RunOf(names) is { } run)
        {
            above = run;
            remarks.Add(
                system.Strings[0],
                0,
                Math.Max(1, system.Starts[0]),
                $"Only the strings {run + 1} to {run + names.Length} are typed; read on the six of {Tuning.Standard}."
            );
            return Tuning.Standard;
        }

        if (sameCount.Count == 0)
        {
            throw Wrong(
                system.Strings[0],
                0,
                system.Strings[0].Text.Length,
                $"a neck given with it: no tuning of {names.Length} strings is usual"
            );
        }

        // No known one: that which needs the least turning, turned.
        var best = sameCount.MinBy(known => Turned(known.Tuning).Sum(static each => Math.Abs(each.Turn)))!.Tuning;
        var tuning = new Tuning(
            Turned(best).Select(each => new TuningString(Pitch.Nearest(each.Name, each.Midi), each.Start)).Reverse()
        );
        remarks.Add(
            system.Strings[0],
            0,
            Math.Max(1, system.Starts[0]),
            $"The names are of no usual tuning; read as {tuning}, the nearest octaves to {best}."
        );
        return tuning;

        bool Agrees(Tuning tuning)
        {
            for (var index = 0; index < names.Length; index++)
            {
                if (names[index] is { } name && name.PitchClass != tuning.Strings[index].Open.PitchClass)
                {
                    return false;
                }
            }

            return true;
        }

        List<(NoteName Name, int Midi, int Turn, int Start)> Turned(Tuning tuning) =>
            [
                .. tuning.Strings.Select(
                    (each, index) =>
                    {
                        var name = names[index] ?? each.Open.Name;
                        var turn = ((name.PitchClass - each.Open.PitchClass + 18) % 12) - 6;
                        return (name, each.Open.MidiNumber + turn, turn, each.Start);
                    }
                ),
            ];
    }

    /// <summary>After how many strings of standard tuning all names, fewer than its six, stand in a row; null if nowhere.</summary>
    private static int? RunOf(NoteName?[] names)
    {
        var open = Tuning.Standard.Strings.Select(static each => (int?)each.Open.PitchClass).ToList();
        var typed = names.Select(static name => name?.PitchClass).ToList();
        var from = Enumerable
            .Range(0, Math.Max(0, open.Count - typed.Count + 1))
            .FirstOrDefault(at => open.GetRange(at, typed.Count).SequenceEqual(typed), -1);
        return from < 0 || typed.Count == open.Count ? null : from;
    }

    /// <summary>The tuning where every line is called by a pitch; null if not.</summary>
    private Tuning? OctavesIn(TabSystem system)
    {
        var pitches = new List<TuningString>();
        for (var index = system.Labels.Count - 1; index >= 0; index--)
        {
            var label = system.Labels[isUpsideDown ? system.Labels.Count - 1 - index : index];
            if (
                label is null
                || char.IsAsciiDigit(label[0])
                || !char.IsAsciiDigit(label[^1])
                || !TuningString.TryParse($"{char.ToUpperInvariant(label[0])}{label[1..]}", null, out var open)
            )
            {
                return null;
            }

            pitches.Add(open);
        }

        return new(pitches);
    }

    // ---- The time signature ----

    private void FindTime()
    {
        var (most, hasRests) = (0, false);
        TabLine? row = null;
        foreach (var system in systems)
        {
            foreach (var line in system.Above.Concat(system.Below))
            {
                if (TimeTokens(line.Text) is not { } tokens || IsBarNumbers(line.Text, system))
                {
                    continue;
                }

                hasTimeRow = true;
                foreach (var token in tokens)
                {
                    hasRests |= token.Text is "r" or "end";
                    if (
                        char.IsAsciiDigit(token.Text[0])
                        && int.Parse(token.Text, CultureInfo.InvariantCulture) is var number
                        && number > most
                    )
                    {
                        (most, row) = (number, line);
                    }
                }
            }
        }

        hasTimeRow &= options.Timing == TabTiming.AsWritten;
        isTimeGiven = options.Time is not null || options.Changes is not null || titleTime is not null;
        time = options.Time ?? options.Changes?.Time ?? titleTime ?? TimeSignature.Common;
        // An r may stand in the place of the last beat.
        if (!isTimeGiven && hasTimeRow && most is > 1 and not 4 && (most > 4 || !hasRests))
        {
            time = new(most, most is 6 or 7 or >= 9 ? 8 : 4);
            remarks.Add(row!, 0, row!.Text.Length, $"The count goes up to {most}; read in {time}.");
        }
    }
}
