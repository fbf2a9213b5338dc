using Fractions;
using TheoryKit.Fingering;
using TheoryKit.Theory;
using TheoryKit.Tunings;

namespace TheoryKit.Paths;

internal sealed partial class TabReader
{
    /// <summary>A number with its time, repeats written out.</summary>
    private sealed class Played
    {
        public required TabMark Mark { get; init; }
        public required Fraction Start { get; init; }
        public Fraction End { get; set; }
        public int Fret { get; set; }
        public int Bend { get; set; }
        public int? TrillFret { get; set; }
        public List<Technique> Techniques { get; } = [];
    }

    private Path Build()
    {
        FindFrets();
        var order = Order();
        var played = new List<Played>(marks.Count);
        var moments = new List<(Fraction Time, int First, bool EndsWithBar)>();
        var chords = new List<(Fraction Start, Chord? Chord)>();
        var held = HeldLengths();
        var at = 0;
        Fraction? end = null;
        for (var index = 0; index < order.Count; index++)
        {
            var bar = order[index];
            foreach (var moment in bar.Moments)
            {
                var start = (moment.Time + at).Reduce();
                moments.Add((start, played.Count, false));
                foreach (var mark in moment.Marks)
                {
                    played.Add(new() { Mark = mark, Start = start });
                }
            }

            foreach (var (time, chord, _, _, _) in bar.ChordTimes)
            {
                chords.Add(((time + at).Reduce(), chord));
            }

            if (bar.End is { } inside && index == order.Count - 1)
            {
                end = (inside + at).Reduce();
            }

            at = checked(at + bar.Beats);
            if (!bar.HasTime)
            {
                moments.Add((at, played.Count, true));
            }
        }

        SetEnds(played, moments, end ?? at, held);
        var changes = ChangesFor(chords, at);
        return new(neck, Notes(played, changes), time, changes, end ?? at);
    }

    /// <summary>The bars as they are played.</summary>
    private List<TabTypedBar> Order()
    {
        var order = new List<TabTypedBar>(bars.Count);
        var from = 0;
        for (var index = 0; index < bars.Count; index++)
        {
            from = bars[index].BeginsRepeat ? index : from;
            order.Add(bars[index]);
            if (bars[index].Times > 1)
            {
                for (var times = 1; times < bars[index].Times; times++)
                {
                    order.AddRange(bars.GetRange(from, index - from + 1));
                }

                from = index + 1;
            }
        }

        return order;
    }

    /// <summary>How long notes are that show how long they are held.</summary>
    private Dictionary<TabMark, Fraction> HeldLengths()
    {
        var held = new Dictionary<TabMark, Fraction>();
        if (!marks.Exists(static mark => mark.HeldTo is not null))
        {
            return held;
        }

        var starts = new Fraction[bars.Count + 1];
        for (var bar = 0; bar < bars.Count; bar++)
        {
            starts[bar + 1] = starts[bar] + bars[bar].Beats;
        }

        foreach (var bar in bars)
        {
            foreach (var moment in bar.Moments)
            {
                foreach (var mark in moment.Marks)
                {
                    if (mark.HeldTo is var (to, column))
                    {
                        var until = column >= bars[to].To ? starts[to + 1] : starts[to] + bars[to].At(column);
                        held[mark] = (until - (starts[bar.Number] + moment.Time)).Reduce();
                    }
                }
            }
        }

        return held;
    }

    private void SetEnds(
        List<Played> played,
        List<(Fraction Time, int First, bool EndsWithBar)> moments,
        Fraction end,
        Dictionary<TabMark, Fraction> held
    )
    {
        var next = new Played?[neck.StringCount + 1];
        var following = end;
        var last = played.Count;
        for (var index = moments.Count - 1; index >= 0; index--)
        {
            var (time, first, _) = moments[index];
            for (var number = first; number < last; number++)
            {
                var note = played[number];
                var after = next[note.Mark.String];
                note.End = following;
                if (held.TryGetValue(note.Mark, out var length) && length > Fraction.Zero)
                {
                    note.End = (note.Start + length).Reduce();
                }
                else if (note.Mark.Rings)
                {
                    note.End = after?.Start ?? end;
                }

                if (after is not null)
                {
                    // What is let go, or joined with nothing between, has to sound up to there.
                    var isJoined = after.Mark.Has(Technique.Release) || (after.Mark.IsAttached && after.Mark.IsJoined);
                    if (note.End > after.Start || (isJoined && after.Mark.Before == note.Mark))
                    {
                        note.End = after.Start;
                    }
                }

                note.End = note.End > end ? end : note.End;
            }

            for (var number = first; number < last; number++)
            {
                next[played[number].Mark.String] = played[number];
            }

            (last, following) = (first, time < following || index == 0 ? time : following);
        }
    }

    // ---- Frets ----

    private void FindFrets()
    {
        if (neck.Capo > 0)
        {
            CountFromCapo();
        }

        TellTwoDigits();
        var most = 0;
        TabMark? farthest = null;
        foreach (var mark in marks)
        {
            if (mark.Number is { } number && !mark.Has(Technique.Release) && number > most)
            {
                (most, farthest) = (number, mark);
            }
        }

        if (most > neck.Frets && options.Neck is null && most <= highest)
        {
            neck = new(neck.Tuning, neck.ScaleLength, highest, neck.Capo);
            remarks.Add(
                farthest!.Line,
                farthest.At,
                farthest.Length,
                $"Fret {most} is beyond fret {Neck.DefaultFrets}; read on a neck of {highest} frets."
            );
        }
    }

    /// <summary>Where the hand is at the first frets, 12 may have been meant as 1 and 2.</summary>
    private void TellTwoDigits()
    {
        const int Near = 4;
        var others = marks.Count(static mark => !mark.HasTwoDigits && mark.Number > 0);
        if (hasTimeRow || others < 3 || marks.Exists(static mark => !mark.HasTwoDigits && mark.Number > Near))
        {
            return;
        }

        foreach (var mark in marks)
        {
            if (mark is { HasTwoDigits: true, Number: { } number } && number / 10 <= Near && number % 10 <= Near)
            {
                Say(
                    mark,
                    $"Read as fret {number}, far from the others; {number / 10} and then {number % 10} are written {number / 10}-{number % 10}."
                );
            }
        }
    }

    /// <summary>Numbers below the capo say that all are counted from there.</summary>
    private void CountFromCapo()
    {
        var below = marks.Find(mark =>
            mark.Number is { } number && number < neck.Capo && neck.Tuning[mark.String].Start < neck.Capo
        );
        if (below is null)
        {
            return;
        }

        remarks.Add(
            below.Line,
            below.At,
            below.Length,
            $"Fret {below.Number} lies behind the capo at fret {neck.Capo}; all numbers are counted from the capo."
        );
        foreach (var mark in marks)
        {
            mark.Number += neck.Capo;
            mark.TrillNumber += neck.Capo;
            mark.BendHalves += 2 * neck.Capo;
        }
    }

    private int FretOf(int @string, int number)
    {
        var start = neck.Tuning[@string].Start;
        return number == 0 && start >= neck.Capo ? start : number;
    }

    private void Say(TabMark mark, string words) => remarks.Add(mark.Line, mark.At, mark.Length, words);

    /// <summary>What is not on the neck has no place in a path.</summary>
    private void CheckFret(Played note)
    {
        var (mark, open) = (note.Mark, neck.OpenFret(note.Mark.String));
        if (note.Fret >= open && note.Fret <= neck.Frets)
        {
            return;
        }

        throw Wrong(
            mark.Line,
            mark.At,
            mark.Length,
            note.Fret > neck.Frets
                ? $"a fret up to {neck.Frets}, the last of this neck"
                : $"a fret from {open}, where string {mark.String} begins"
        );
    }

    private IEnumerable<PathNote> Notes(List<Played> played, Changes? changes)
    {
        var before = new Played?[neck.StringCount + 1];
        var previous = new List<Played>();
        var chord = new ChordWalker(changes);
        var told = new HashSet<TabMark>();
        foreach (var group in GroupsOf(played))
        {
            foreach (var note in group)
            {
                var last = before[note.Mark.String];
                SetFret(note, last);
                CheckFret(note);
                SetTechniques(note, last, previous, told.Add(note.Mark));
            }

            foreach (var note in group)
            {
                before[note.Mark.String] = note;
            }

            previous = group;
        }

        foreach (var note in played)
        {
            if (note.End <= note.Start)
            {
                continue;
            }

            var position = new Position(note.Mark.String, note.Fret);
            var midi = neck.MidiNumberAt(position);
            yield return new()
            {
                Position = position,
                Pitch = PitchOf(note.Mark, midi, chord.At(note.Start)),
                Start = note.Start,
                Length = note.End - note.Start,
                Bend = note.Bend,
                TrillFret = note.TrillFret,
                Finger = note.Mark.Finger,
                Techniques = Listed(note.Techniques),
            };
        }
    }

    private static IEnumerable<List<Played>> GroupsOf(List<Played> played)
    {
        for (var first = 0; first < played.Count; )
        {
            var count = 1;
            while (first + count < played.Count && played[first + count].Start == played[first].Start)
            {
                count++;
            }

            yield return played.GetRange(first, count);
            first += count;
        }
    }

    private static readonly IReadOnlyList<Technique> None = [];

    private static IReadOnlyList<Technique> Listed(List<Technique> techniques) =>
        techniques.Count == 0 ? None
        : techniques.Count == 1 ? techniques
        : [.. Technique.Known.Where(techniques.Contains)];

    private Pitch PitchOf(TabMark mark, int midi, Chord? chord)
    {
        if (mark.Name is not { } name)
        {
            return Spell(chord, midi);
        }

        if (name.PitchClass == midi % 12)
        {
            return Pitch.Nearest(name, midi);
        }

        Say(mark, $"The note here is {Spell(chord, midi)}, which is not called {name}; its name is passed over.");
        mark.Name = null;
        return Spell(chord, midi);
    }

    private void SetFret(Played note, Played? last)
    {
        var mark = note.Mark;
        if (mark.Number is not { } number)
        {
            note.Fret = mark.Has(Technique.Release) && last is not null ? last.Fret : neck.OpenFret(mark.String);
            return;
        }

        note.Fret =
            mark.Has(Technique.Release) && last is not null && IsBentTo(last, number * 100)
                ? last.Fret
                : FretOf(mark.String, number);
        note.Bend =
            mark.Has(Technique.Release) && last is not null && note.Fret == last.Fret
                ? Math.Max(0, ((number - note.Fret) * 100) + (mark.IsHalf ? 50 : 0))
                : 0;
    }

    private static bool IsBentTo(Played last, int cents) =>
        last.Bend > 0 && cents >= last.Fret * 100 && cents <= (last.Fret * 100) + last.Bend;

    private void SetTechniques(Played note, Played? last, List<Played> previous, bool isFirst)
    {
        var mark = note.Mark;
        if (mark.Techniques is null)
        {
            return;
        }

        var isReleased =
            mark.Has(Technique.Release)
            && last is not null
            && last.End == note.Start
            && last.Fret == note.Fret
            && last.Bend > note.Bend;
        if (mark.Has(Technique.Release) && !isReleased)
        {
            note.Bend = 0;
            Tell($"Nothing bent sounds up to here that could be let go; read as fret {note.Fret}.");
        }

        foreach (var technique in mark.Techniques)
        {
            if (technique == Technique.Bend || technique == Technique.PreBend)
            {
                SetBend(note, technique, isReleased, isFirst);
            }
            else if (technique == Technique.Release)
            {
                if (isReleased)
                {
                    note.Techniques.Add(technique);
                }
            }
            else if (
                technique == Technique.NaturalHarmonic
                && PathChecks.NodeAbove(note.Fret - neck.OpenFret(mark.String)) is null
            )
            {
                Tell(
                    $"A string has no node at fret {note.Fret}; read as a plain note. Natural harmonics lie 3, 4, 5, 7, 9, 12, 16, 19 and 24 frets above the open string."
                );
            }
            else if (technique == Technique.Trill)
            {
                SetTrill(note, isFirst);
            }
            else if (IsSlideFrom(technique, note, previous))
            {
                note.Techniques.Add(Technique.Slide);
                Tell(
                    $"Read as a slide from {previous[0].Fret}; written {previous[0].Fret}{(technique == Technique.SlideInFromBelow ? "/" : "\\")}{note.Fret} it is sure."
                );
            }
            else
            {
                note.Techniques.Add(technique);
                TellDirection(technique);
            }
        }

        // Left as it is typed, so that every path reads back from its tab.
        void TellDirection(Technique technique)
        {
            if (
                (technique != Technique.HammerOn && technique != Technique.PullOff)
                || last is null
                || last.End != note.Start
                || last.Mark.Number is null
                || mark.Number is null
                || last.TrillFret is not null
            )
            {
                return;
            }

            var (isHammered, way) = (technique == Technique.HammerOn, note.Fret.CompareTo(last.Fret));
            if (way == 0 && !last.Techniques.Exists(static each => each.IsBent))
            {
                Tell($"A {technique.Name} leads to another fret; from {last.Fret} to {note.Fret} it can't be played.");
            }
            else if (way != 0 && isHammered != way > 0)
            {
                Tell(
                    isHammered
                        ? $"A hammer-on leads to a higher fret; from {last.Fret} to {note.Fret} it would be a pull-off, p."
                        : $"A pull-off leads to a lower fret; from {last.Fret} to {note.Fret} it would be a hammer-on, h."
                );
            }
        }

        void Tell(string words)
        {
            if (isFirst)
            {
                Say(mark, words);
            }
        }
    }

    /// <summary>Without a row of time a sign between two numbers of one string with nothing in between joins them, line or not.</summary>
    private bool IsSlideFrom(Technique technique, Played note, List<Played> previous) =>
        (technique == Technique.SlideInFromBelow || technique == Technique.SlideInFromAbove)
        && !hasTimeRow
        && previous.Count == 1
        && previous[0].Mark == note.Mark.Before
        && previous[0].End == note.Start
        && previous[0].Fret != note.Fret
        && (previous[0].Fret < note.Fret) == (technique == Technique.SlideInFromBelow);

    private void SetBend(Played note, Technique technique, bool isReleased, bool isFirst)
    {
        var mark = note.Mark;
        var cents = mark.BendHalves is { } halves ? (halves * 50) - (note.Fret * 100) : mark.BendCents ?? 0;
        if (isReleased && cents != note.Bend)
        {
            if (isFirst)
            {
                Say(mark, "What is let go is not bent again at once; read as the release alone.");
            }
        }
        else if (cents is > 0 and <= PathNote.MaxBend && note.Fret > neck.OpenFret(mark.String))
        {
            note.Bend = cents;
            note.Techniques.Add(technique);
        }
        else if (isFirst)
        {
            Say(
                mark,
                note.Fret == neck.OpenFret(mark.String)
                        ? "An open string has no finger that could bend it; read as a plain note."
                    : cents > PathNote.MaxBend
                        ? $"A bend goes up to {PathNote.MaxBend / 100} frets; read as a plain note."
                    : "A bend leads to a higher fret; read as a plain note."
            );
        }
    }

    private void SetTrill(Played note, bool isFirst)
    {
        var mark = note.Mark;
        var fret = mark.TrillNumber is { } number ? FretOf(mark.String, number) : note.Fret + 2;
        if (fret == note.Fret || fret < neck.OpenFret(mark.String) || fret > neck.Frets)
        {
            if (isFirst)
            {
                Say(mark, "A trill takes turns with another fret of the neck; read as a plain note.");
            }

            return;
        }

        if (mark.TrillNumber is null && isFirst)
        {
            Say(mark, $"With which fret it takes turns is not said; read as {fret}, a whole tone above.");
        }

        note.TrillFret = fret;
        note.Techniques.Add(Technique.Trill);
    }

    // ---- Chords ----

    /// <summary>Walks through changes that are repeated, beat by beat.</summary>
    private sealed class ChordWalker(Changes? changes)
    {
        private Fraction round;
        private int index;

        public Chord? At(Fraction beat)
        {
            if (changes is null)
            {
                return null;
            }

            while (round + changes.Beats <= beat)
            {
                (round, index) = ((round + changes.Beats).Reduce(), 0);
            }

            while (index + 1 < changes.Chords.Count && round + changes.Chords[index + 1].Start <= beat)
            {
                index++;
            }

            return changes.Chords[index].Chord;
        }
    }

    private Changes? ChangesFor(List<(Fraction Start, Chord? Chord)> chords, int beats)
    {
        if (options.Changes is { } given)
        {
            Compare(given);
            return given;
        }

        if (chords.Count == 0 || beats == 0)
        {
            return null;
        }

        var all = new List<Bar>();
        var (next, now) = (0, (Chord?)null);
        for (var from = 0; from < beats; from += time.Beats)
        {
            var parts = new List<(Chord? Chord, Fraction Length)>();
            var at = (Fraction)from;
            while (next < chords.Count && chords[next].Start < from + time.Beats)
            {
                if (chords[next].Start > at)
                {
                    parts.Add((now, chords[next].Start - at));
                    at = chords[next].Start;
                }

                now = chords[next++].Chord;
            }

            parts.Add((now, from + time.Beats - at));
            all.Add(BarOf(parts));
        }

        return new(all, time);
    }

    private Bar BarOf(List<(Chord? Chord, Fraction Length)> parts)
    {
        try
        {
            return new(parts);
        }
        catch (ArgumentException)
        {
            // Too fine to be written in a chart.
            return Bar.Of(time.Beats, [.. parts.Take(Bar.MaxParts).Select(static part => part.Chord)]);
        }
    }

    private void Compare(Changes given)
    {
        var walker = new ChordWalker(given);
        var at = 0;
        foreach (var bar in bars)
        {
            foreach (var (start, chord, line, column, length) in bar.ChordTimes)
            {
                if (walker.At(start + at) is var meant && meant != chord)
                {
                    remarks.Add(
                        line,
                        column,
                        length,
                        $"The changes have {meant?.ToString() ?? "no chord"} here, not {chord?.ToString() ?? "no chord"}; the changes count."
                    );
                }
            }

            at += bar.Beats;
        }
    }
}
