using System.Globalization;
using System.Numerics;
using System.Text;
using Fractions;
using TheoryKit.Theory;
using TheoryKit.Tunings;

namespace TheoryKit.Paths;

/// <summary>Writes a path as plain tab, as the remarks on <see cref="PlainTab"/> say.</summary>
internal sealed class TabWriter
{
    private const string NoChord = "N.C.";
    private const string PalmMuted = "PM";

    // A bar of more parts than this would be wider than any line.
    private const int MostSteps = 1 << 20;

    private readonly Path path;
    private readonly TabWriteOptions options;
    private readonly Fraction beats;
    private readonly List<Written> notes = [];
    private readonly List<Fraction> rests = [];
    private readonly List<(Fraction Start, Chord? Chord)> chords;
    private readonly bool endsInside;

    /// <summary>A note and what is written of it.</summary>
    private sealed class Written
    {
        public required PathNote Note { get; init; }
        public string Before { get; set; } = "";
        public string Sign { get; set; } = "";
        public bool IsHeld { get; set; }

        /// <summary>The note that sounds on its string up to its start; null for none.</summary>
        public Written? Previous { get; init; }
        public AboveSigns Above { get; set; }
        public string? Label { get; set; }
        public string? Spelled { get; set; }
        public string? Finger { get; set; }

        /// <summary>Which it is of the notes that start with it, from string 1 on.</summary>
        public int Row { get; set; }
    }

    /// <summary>A row of marks below the strings.</summary>
    private sealed record MarkRow(string Name, char[] Text);

    /// <summary>A bar as rows of characters.</summary>
    private sealed record BarText(
        int Number,
        string Chords,
        string Signs,
        string Muted,
        string[] Strings,
        string Time,
        List<MarkRow> Marks
    )
    {
        public int Width => Time.Length;
    }

    private TabWriter(Path path, TabWriteOptions options)
    {
        this.path = path;
        this.options = options;
        beats = (Fraction)(path.BarCount * path.Time.Beats);
        endsInside = options.SaysAll && (path.Beats < beats || path.BarCount == 0);
        chords = [.. ChordsOf(path, beats)];
        Prepare();
    }

    public static string Write(Path path, TabWriteOptions options) => new TabWriter(path, options).Write();

    /// <summary>The chords of a path where they begin; a chord that goes on over a bar line is not said again.</summary>
    private static IEnumerable<(Fraction Start, Chord? Chord)> ChordsOf(Path path, Fraction beats)
    {
        if (path.Changes is not { } changes)
        {
            yield break;
        }

        var (isFirst, last) = (true, (Chord?)null);
        for (var round = Fraction.Zero; round < beats; round += changes.Beats)
        {
            foreach (var span in changes.Chords)
            {
                var start = (round + span.Start).Reduce();
                if (start < beats && (isFirst || span.Chord != last))
                {
                    yield return (start, span.Chord);
                    (isFirst, last) = (false, span.Chord);
                }
            }
        }
    }

    /// <summary>What is written of each note, and where rests begin.</summary>
    private void Prepare()
    {
        var last = new Written?[path.Neck.StringCount + 1];
        var silence = Fraction.Zero;
        for (var first = 0; first < path.Notes.Count; )
        {
            var start = path.Notes[first].Start;
            var count = 1;
            while (first + count < path.Notes.Count && path.Notes[first + count].Start == start)
            {
                count++;
            }

            Rest(silence, start);
            var above = AboveOf(first, count);
            for (var index = first; index < first + count; index++)
            {
                var note = path.Notes[index];
                var before = last[note.Position.String];
                var goesOn = before is not null && before.Note.End == note.Start;
                var (lead, sign) = TabNoteText.Of(
                    path.Neck,
                    note,
                    goesOn ? before!.Note : null,
                    above,
                    options.SaysAll
                );
                if (goesOn && note.Has(Technique.Slide))
                {
                    // So that it is seen from where it slides.
                    before!.IsHeld = true;
                }

                var written = new Written
                {
                    Note = note,
                    Before = lead,
                    Previous = goesOn ? before : null,
                    Sign = sign,
                    Above = above,
                    Row = first + count - 1 - index,
                    Label = options.Label?.Invoke(note),
                    Finger = !options.SaysAll || note.Finger is null ? null : FingerSign(note.Finger.Value),
                    Spelled = options.SaysAll && note.Pitch != UsualPitch(note) ? note.Pitch.Name.ToString() : null,
                };
                notes.Add(written);
                last[note.Position.String] = written;
                silence = note.End > silence ? note.End : silence;
            }

            first += count;
        }

        Rest(silence, beats);
        MarkHeld();
        foreach (var note in notes)
        {
            if (
                note.Previous is { IsHeld: true }
                && note.Before is ['/' or '\\', ..]
                && !note.Note.Has(Technique.Slide)
            )
            {
                // One sign after what is held would join them.
                note.Before = note.Before[0] + note.Before;
            }
        }

        // A rest over a bar line is said again in each bar.
        void Rest(Fraction from, Fraction to)
        {
            for (; from < to; from = (Fraction)((Whole(from / path.Time.Beats) + 1) * path.Time.Beats))
            {
                rests.Add(from.Reduce());
            }
        }
    }

    /// <summary>Notes that end elsewhere than at the next moment show how long they are held.</summary>
    private void MarkHeld()
    {
        var rest = rests.Count;
        var (following, from) = (beats, notes.Count);
        for (var index = notes.Count - 1; index >= 0; index--)
        {
            var start = notes[index].Note.Start;
            if (from < notes.Count && notes[from].Note.Start != start)
            {
                following = notes[from].Note.Start;
            }

            from = index;
            while (rest > 0 && rests[rest - 1] > start)
            {
                rest--;
            }

            var end = rest < rests.Count && rests[rest] < following ? rests[rest] : following;
            notes[index].IsHeld |= notes[index].Note.End != end;
        }
    }

    private AboveSigns AboveOf(int first, int count)
    {
        return Of(Technique.Accent, AboveSigns.Accent)
            | Of(Technique.Staccato, AboveSigns.Staccato)
            | Of(Technique.PalmMute, AboveSigns.PalmMute);

        AboveSigns Of(Technique technique, AboveSigns sign)
        {
            for (var index = first; index < first + count; index++)
            {
                if (path.Notes[index].Techniques.Count == 0 || !path.Notes[index].Has(technique))
                {
                    return AboveSigns.None;
                }
            }

            return sign;
        }
    }

    /// <summary>How a reader spells it who is not told.</summary>
    private Pitch UsualPitch(PathNote note) => TabReader.Spell(path.ChordAt(note.Start), note.Pitch.MidiNumber);

    private static string FingerSign(Fingering.Finger finger) =>
        finger == Fingering.Finger.Thumb ? "T" : ((int)finger).ToString(CultureInfo.InvariantCulture);

    private string Write()
    {
        var text = new StringBuilder(2048);
        var names = path.Neck.Tuning.Strings.Select(each => each.Open.Name.ToString("G", options.Naming)).ToList();
        var barCount = Math.Max(1, path.BarCount);
        var margin = Math.Max(names.Max(static name => name.Length), $"{barCount}".Length);
        var room = options.Columns - margin - 2;
        var bars = new List<BarText>(barCount);
        var (note, rest, chord) = (0, 0, 0);
        for (var bar = 0; bar < barCount; bar++)
        {
            var to = (Fraction)((bar + 1) * path.Time.Beats);
            var (notesEnd, restsEnd, chordsEnd) = (note, rest, chord);
            while (notesEnd < notes.Count && notes[notesEnd].Note.Start < to)
            {
                notesEnd++;
            }

            while (restsEnd < rests.Count && rests[restsEnd] < to)
            {
                restsEnd++;
            }

            while (chordsEnd < chords.Count && chords[chordsEnd].Start < to)
            {
                chordsEnd++;
            }

            bars.Add(
                new BarWriter(
                    this,
                    bar,
                    notes.GetRange(note, notesEnd - note),
                    rests.GetRange(rest, restsEnd - rest),
                    chords.GetRange(chord, chordsEnd - chord)
                ).Write(room)
            );
            (note, rest, chord) = (notesEnd, restsEnd, chordsEnd);
        }

        for (var first = 0; first < bars.Count; )
        {
            var count = 1;
            var width = margin + 1 + bars[first].Width + 1;
            while (first + count < bars.Count && width + bars[first + count].Width + 1 <= options.Columns)
            {
                width += bars[first + count].Width + 1;
                count++;
            }

            text.Append(first > 0 ? "\n" : "");
            WriteLine(text, bars.GetRange(first, count), names, margin, bars.Count > count);
            first += count;
        }

        return text.ToString().TrimEnd('\n');
    }

    private void WriteLine(StringBuilder text, List<BarText> bars, List<string> names, int margin, bool isNumbered)
    {
        var blank = new string(' ', margin + 1);
        var number = isNumbered ? $"{bars[0].Number + 1}" : "";
        Row(number.PadRight(margin + 1) + string.Join(' ', bars.Select(static bar => bar.Chords)));
        Row(blank + string.Join(' ', bars.Select(static bar => bar.Signs)));
        Row(blank + string.Join(' ', bars.Select(static bar => bar.Muted)));
        for (var index = 0; index < names.Count; index++)
        {
            Row($"{names[index].PadRight(margin)}|{string.Join('|', bars.Select(bar => bar.Strings[index]))}|");
        }

        if (options.ShowsTime)
        {
            Row(blank + string.Join(' ', bars.Select(static bar => bar.Time)));
        }

        foreach (
            var name in bars.SelectMany(static bar => bar.Marks)
                .Select(static row => row.Name)
                .Distinct()
                .Order(MarkOrder)
        )
        {
            var row =
                blank
                + string.Join(
                    ' ',
                    bars.Select(bar =>
                        bar.Marks.Find(row => row.Name == name) is { } found
                            ? new string(found.Text)
                            : new string(' ', bar.Width)
                    )
                );
            Row(name[0] == ' ' ? row : $"{row}  {name}");
        }

        void Row(string row)
        {
            if (!string.IsNullOrWhiteSpace(row))
            {
                text.Append(row.TrimEnd()).Append('\n');
            }
        }
    }

    // Labels first, then fingers, then names, each from string 1 on.
    private static readonly Comparer<string> MarkOrder = Comparer<string>.Create(
        static (left, right) =>
            (left[0], left.Length).CompareTo((right[0], right.Length)) is var order and not 0
                ? order
                : string.CompareOrdinal(left, right)
    );

    private static BigInteger Whole(Fraction value) => BigInteger.Divide(value.Numerator, value.Denominator);

    /// <summary>Writes one bar.</summary>
    private sealed class BarWriter
    {
        private readonly TabWriter owner;
        private readonly int bar;
        private readonly Fraction from;
        private readonly Fraction to;
        private readonly List<Written> notes;
        private readonly List<Fraction> rests;
        private readonly List<(Fraction Start, Chord? Chord)> chords;

        // Every moment at which something is written, and how far it reaches to the left and to the right.
        private readonly SortedDictionary<Fraction, (int Before, int After)> moments = [];
        private int lead = 1;

        public BarWriter(
            TabWriter owner,
            int bar,
            List<Written> notes,
            List<Fraction> rests,
            List<(Fraction Start, Chord? Chord)> chords
        )
        {
            (this.owner, this.bar, this.notes, this.rests, this.chords) = (owner, bar, notes, rests, chords);
            (from, to) = ((Fraction)(bar * owner.path.Time.Beats), (Fraction)((bar + 1) * owner.path.Time.Beats));
        }

        private TimeSignature Time => owner.path.Time;

        private bool EndsHere =>
            owner.endsInside
            && owner.path.Beats >= from
            && owner.path.Beats < to
            && bar == Math.Max(0, owner.path.BarCount - 1);

        public BarText Write(int room)
        {
            foreach (var note in notes)
            {
                var after = Math.Max(note.Sign.Length, note.Label?.Length ?? 0);
                after = Math.Max(after, Math.Max(note.Spelled?.Length ?? 0, AboveRow(note.Above).Length));
                after = note.Above.HasFlag(AboveSigns.PalmMute) ? Math.Max(after, PalmMuted.Length) : after;
                Need(note.Note.Start, note.Before.Length, after);
            }

            foreach (var end in HoldEnds())
            {
                Need(end, 0, 1);
            }

            foreach (var rest in rests)
            {
                Need(rest, 0, 1);
            }

            if (EndsHere)
            {
                Need(owner.path.Beats, 0, "end".Length);
            }

            var fine = moments.ToList();
            for (var beat = from; beat < to; beat += Fraction.One)
            {
                Need(beat, 0, owner.options.ShowsTime ? $"{beat - from + 1}".Length : 0);
            }

            lead = Math.Max(1, moments.First().Value.Before);
            var steps = Steps();
            if (steps is not null)
            {
                var step = Math.Max(Width((int)steps), ChordsWidth((int)steps));
                var width = lead + ((int)steps * (long)step);
                if (width <= room)
                {
                    return Rows(
                        (int)width,
                        start => lead + ((int)Whole((start - from) / Time.Beats * steps.Value) * step),
                        isExact: true
                    );
                }
            }

            // What comes after the end has no time here.
            chords.RemoveAll(chord => EndsHere && chord.Start > owner.path.Beats);
            moments.Clear();
            foreach (var (start, need) in fine)
            {
                moments.Add(start, need);
            }

            Need(from, 0, 0);
            foreach (var (start, _) in chords)
            {
                Need(start, 0, 0);
            }

            lead = Math.Max(1, moments.First().Value.Before);
            var values = Values();
            var columns = Squeezed(values, room, out var squeezed);
            return Rows(squeezed, start => columns[start.Reduce()], isExact: false, values);
        }

        private List<Fraction> HoldEnds() => owner.HoldEnds(from, to);

        private void Need(Fraction start, int before, int after)
        {
            var (left, right) = moments.GetValueOrDefault(start.Reduce());
            moments[start.Reduce()] = (Math.Max(left, before), Math.Max(right, after));
        }

        /// <summary>The least number of equal parts of a bar that all moments are multiples of; null for too many.</summary>
        private BigInteger? Steps()
        {
            var steps = BigInteger.One;
            foreach (var moment in moments.Keys.Concat(chords.Select(static chord => chord.Start)))
            {
                var part = ((moment - from) / Time.Beats).Reduce().Denominator;
                steps = steps / BigInteger.GreatestCommonDivisor(steps, part) * part;
                if (steps > MostSteps)
                {
                    return null;
                }
            }

            return steps;
        }

        /// <summary>How many characters a step takes, so that nothing touches.</summary>
        private int Width(int steps)
        {
            var (least, at, reach) = (1, from, 0);
            foreach (var (start, (before, after)) in moments)
            {
                if (start > from)
                {
                    least = Math.Max(least, Needed(reach + before + 1, start - at, steps));
                }

                (at, reach) = (start, after);
            }

            return Math.Max(least, Needed(reach + 1, to - at, steps));
        }

        private int ChordsWidth(int steps)
        {
            var least = 1;
            for (var index = 0; index < chords.Count; index++)
            {
                var next = index + 1 < chords.Count ? chords[index + 1].Start : to;
                least = Math.Max(
                    least,
                    Needed(Name(chords[index].Chord).Length + 1, next - chords[index].Start, steps)
                );
            }

            return least;
        }

        private int Needed(int characters, Fraction beats, int steps)
        {
            var between = (int)Whole(beats / Time.Beats * steps);
            return (characters + between - 1) / between;
        }

        /// <summary>What the row of rhythm says at each moment.</summary>
        private Dictionary<Fraction, string> Values()
        {
            var values = new Dictionary<Fraction, string>();
            var starts = moments.Keys.ToList();
            for (var index = 0; index < starts.Count; index++)
            {
                if (EndsHere && starts[index] == owner.path.Beats)
                {
                    values[starts[index]] = "end";
                    continue;
                }

                var next = index + 1 < starts.Count ? starts[index + 1] : to;
                var rest = rests.BinarySearch(starts[index]) >= 0 ? "r" : "";
                values[starts[index]] = rest + TabRhythm.Write(next - starts[index], Time.Unit);
            }

            return values;
        }

        /// <summary>
        /// Where everything stands in a bar too fine for its exact places: as near to them as it can without touching, in as many
        /// characters as there is room for, or as it takes.
        /// </summary>
        private Dictionary<Fraction, int> Squeezed(Dictionary<Fraction, string> values, int room, out int width)
        {
            var names = chords.ToDictionary(static each => each.Start.Reduce(), each => Name(each.Chord).Length);
            var starts = moments.Keys.ToList();

            // How far each is at least from the left end, all packed as closely as can be.
            var least = new int[starts.Count];
            var (at, chordEnd) = (lead, 0);
            for (var index = 0; index < starts.Count; index++)
            {
                var (before, after) = moments[starts[index]];
                after = Math.Max(after, owner.options.ShowsTime ? values[starts[index]].Length : 0);
                least[index] = index == 0 ? lead : at + before;
                if (names.TryGetValue(starts[index], out var length))
                {
                    least[index] = Math.Max(least[index], chordEnd);
                    chordEnd = least[index] + length + 1;
                }

                at = least[index] + Math.Max(1, after + 1);
            }

            width = Math.Max(room, Math.Max(at, chordEnd));

            // Each stands where it belongs, but for those before it and for the room that those after it take.
            var places = new Dictionary<Fraction, int>();
            var slack = width - Math.Max(at, chordEnd);
            var moved = 0;
            for (var index = 0; index < starts.Count; index++)
            {
                var exact = lead + (int)Math.Round(((starts[index] - from) / Time.Beats).ToDouble() * (width - lead));
                moved = Math.Clamp(exact - least[index], moved, slack);
                places[starts[index]] = least[index] + moved;
            }

            return places;
        }

        private BarText Rows(
            int width,
            Func<Fraction, int> At,
            bool isExact,
            Dictionary<Fraction, string>? values = null
        )
        {
            var strings = Enumerable.Range(0, owner.path.Neck.StringCount).Select(_ => Blank('-')).ToArray();
            var (chordRow, signRow, mutedRow, time) = (Blank(' '), Blank(' '), Blank(' '), Blank(' '));
            foreach (var (number, until) in owner.HeldInto(from))
            {
                Array.Fill(strings[number - 1], '=', 0, until >= to ? width : At(until));
            }

            foreach (var note in notes)
            {
                var row = strings[note.Note.Position.String - 1];
                var at = At(note.Note.Start);
                if (note.Previous is not null && note.Note.Start == from && note.Note.Has(Technique.Slide))
                {
                    Array.Fill(row, '=', 0, at);
                }

                if (note.IsHeld)
                {
                    Array.Fill(row, '=', at, (note.Note.End >= to ? width : At(note.Note.End)) - at);
                }
            }

            foreach (var note in notes)
            {
                var at = At(note.Note.Start);
                Put(strings[note.Note.Position.String - 1], at - note.Before.Length, note.Before + note.Sign);
                Put(signRow, at, AboveRow(note.Above));
            }

            WriteMuted(mutedRow, At);
            foreach (var (start, chord) in chords)
            {
                Put(chordRow, At(start), Name(chord));
            }

            if (isExact)
            {
                WriteCount(time, At);
            }
            else
            {
                foreach (var (start, value) in values!)
                {
                    Put(time, At(start), value);
                }
            }

            return new(
                bar,
                new(chordRow),
                new(signRow),
                new(mutedRow),
                [.. strings.Select(static row => new string(row))],
                new(time),
                Marks(At, Blank)
            );

            char[] Blank(char fill)
            {
                var row = new char[width];
                Array.Fill(row, fill);
                return row;
            }
        }

        private void WriteCount(char[] count, Func<Fraction, int> At)
        {
            for (var beat = from; beat < to; beat += Fraction.One)
            {
                Put(count, At(beat), $"{beat - from + 1}");
            }

            foreach (var start in notes.Select(static note => note.Note.Start).Concat(HoldEnds()))
            {
                if (!start.Denominator.IsOne)
                {
                    Put(count, At(start), Count(start));
                }
            }

            foreach (var rest in rests)
            {
                Put(count, At(rest), "r".PadRight(rest.Denominator.IsOne ? $"{rest - from + 1}".Length : 1));
            }

            if (EndsHere)
            {
                Put(count, At(owner.path.Beats), "end");
            }
        }

        private static string Count(Fraction start)
        {
            var part = (start - (Fraction)Whole(start)).Reduce();
            return part == new Fraction(1, 2) ? "&"
                : part == new Fraction(1, 4) ? "e"
                : part == new Fraction(3, 4) ? "a"
                : ".";
        }

        /// <summary>From the first to the last of those muted one after the other.</summary>
        private void WriteMuted(char[] row, Func<Fraction, int> At)
        {
            for (var first = 0; first < notes.Count; first++)
            {
                if (!notes[first].Above.HasFlag(AboveSigns.PalmMute))
                {
                    continue;
                }

                var last = first;
                while (last + 1 < notes.Count && notes[last + 1].Above.HasFlag(AboveSigns.PalmMute))
                {
                    last++;
                }

                var (left, right) = (At(notes[first].Note.Start), At(notes[last].Note.Start));
                Put(row, left, PalmMuted);
                if (right > left + 1)
                {
                    Array.Fill(row, '-', left + PalmMuted.Length, right + 1 - left - PalmMuted.Length);
                }

                first = last;
            }
        }

        private List<MarkRow> Marks(Func<Fraction, int> At, Func<char, char[]> blank)
        {
            var rows = new List<MarkRow>();
            foreach (var note in notes)
            {
                var at = At(note.Note.Start);
                Mark(new string(' ', note.Row + 1), note.Label);
                Mark(note.Row == 0 ? "fingers" : $"fingers {note.Row + 1}", note.Finger);
                Mark(note.Row == 0 ? "notes" : $"notes {note.Row + 1}", note.Spelled);

                void Mark(string name, string? text)
                {
                    if (string.IsNullOrEmpty(text))
                    {
                        return;
                    }

                    var row = rows.Find(row => row.Name == name);
                    if (row is null)
                    {
                        rows.Add(row = new(name, blank(' ')));
                    }

                    Put(row.Text, at, text);
                }
            }

            return rows;
        }

        private string Name(Chord? chord) => chord?.ToString("G", owner.options.Naming) ?? NoChord;

        private static string AboveRow(AboveSigns above) =>
            above.HasFlag(AboveSigns.Accent)
                ? above.HasFlag(AboveSigns.Staccato)
                    ? ">."
                    : ">"
                : above.HasFlag(AboveSigns.Staccato)
                    ? "."
                    : "";

        private static void Put(char[] row, int at, string text)
        {
            for (var index = 0; index < text.Length && at + index < row.Length; index++)
            {
                row[at + index] = text[index];
            }
        }
    }

    // Notes held so far that may reach into later bars; bars are written in order.
    private readonly List<Written> held = [];
    private int heldNext;

    /// <summary>The strings held over the beginning of a bar, and until when.</summary>
    private List<(int String, Fraction Until)> HeldInto(Fraction from)
    {
        return
        [
            .. held.Where(note => note.Note.Start < from && note.Note.End > from)
                .Select(static note => (note.Note.Position.String, note.Note.End)),
        ];
    }

    /// <summary>Where held notes end within a bar.</summary>
    private List<Fraction> HoldEnds(Fraction from, Fraction to)
    {
        Advance(to);
        return [.. held.Where(note => note.Note.End > from && note.Note.End < to).Select(static note => note.Note.End)];
    }

    /// <summary>Takes in what starts before the end of a bar, and lets go of what ends before it begins.</summary>
    private void Advance(Fraction to)
    {
        held.RemoveAll(note => note.Note.End <= to - path.Time.Beats);
        while (heldNext < notes.Count && notes[heldNext].Note.Start < to)
        {
            if (notes[heldNext].IsHeld)
            {
                held.Add(notes[heldNext]);
            }

            heldNext++;
        }
    }
}
