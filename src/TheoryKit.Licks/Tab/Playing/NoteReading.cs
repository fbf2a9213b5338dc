using System.Collections.Immutable;
using TheoryKit.Licks.Tab.Options;
using TheoryKit.Licks.Tab.Reading;
using TheoryKit.Licks.Tab.Remarks;
using TheoryKit.Paths;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Licks.Tab.Playing;

/// <summary>From numbers that sound to notes of a path: their frets, techniques and pitches.</summary>
internal sealed class NoteReading(ImmutableArray<TabMark> marks, Neck neck, bool isTold, TabRemarks remarks)
{
    private static readonly IReadOnlyList<Technique> None = [];

    // What is repeated is told of once.
    private readonly bool[] seen = new bool[marks.Length];
    private readonly HashSet<int> misnamed = [];

    /// <summary>A note as far as it is read.</summary>
    private sealed class Draft(PlayedNote played, TabMark mark, bool isFirst)
    {
        public PlayedNote Played { get; } = played;
        public TabMark Mark { get; } = mark;
        public bool IsFirst { get; } = isFirst;
        public int Fret { get; set; }
        public int Bend { get; set; }
        public int? TrillFret { get; set; }
        public List<Technique> Techniques { get; } = [];
    }

    public IEnumerable<PathNote> Of(IReadOnlyList<PlayedNote> played, Changes? changes)
    {
        var chords = new ChordWalker(changes);
        foreach (var note in Drafts(played))
        {
            var (number, start, end) = note.Played;
            if (end <= start)
            {
                continue;
            }

            var position = new Position(note.Mark.String, note.Fret);
            yield return new()
            {
                Position = position,
                Pitch = PitchOf(number, note.Mark, neck.MidiNumberAt(position), chords.At(start)),
                Start = start,
                Length = end - start,
                Bend = note.Bend,
                TrillFret = note.TrillFret,
                Finger = note.Mark.Finger,
                Techniques = Listed(note.Techniques),
            };
        }
    }

    private static IReadOnlyList<Technique> Listed(List<Technique> techniques) =>
        techniques.Count == 0 ? None
        : techniques.Count == 1 ? techniques
        : [.. Technique.Known.Where(techniques.Contains)];

    private Pitch PitchOf(int number, TabMark mark, int midi, Chord? chord)
    {
        if (mark.Name is not { } name || misnamed.Contains(number))
        {
            return TabSpelling.Of(chord, midi);
        }

        if (name.PitchClass == midi % 12)
        {
            return Pitch.Nearest(name, midi);
        }

        misnamed.Add(number);
        var pitch = TabSpelling.Of(chord, midi);
        remarks.Add(mark, new TabRemark.OtherName(pitch, name));
        return pitch;
    }

    /// <summary>All notes with frets and techniques, those that are struck together after the ones before.</summary>
    private List<Draft> Drafts(IReadOnlyList<PlayedNote> played)
    {
        var drafts = new List<Draft>(played.Count);
        var before = new Draft?[neck.StringCount + 1];
        var previous = (First: 0, Count: 0);
        for (var first = 0; first < played.Count; first = drafts.Count)
        {
            var alone = previous.Count == 1 ? drafts[previous.First] : null;
            for (var index = first; index < played.Count && played[index].Start == played[first].Start; index++)
            {
                var number = played[index].Mark;
                var note = new Draft(played[index], marks[number], !seen[number]);
                seen[number] = true;
                var last = before[note.Mark.String];
                SetFret(note, last);
                CheckFret(note);
                SetTechniques(note, last, alone);
                drafts.Add(note);
            }

            for (var index = first; index < drafts.Count; index++)
            {
                before[drafts[index].Mark.String] = drafts[index];
            }

            previous = (first, drafts.Count - first);
        }

        return drafts;
    }

    private void Remark(Draft note, TabRemark remark)
    {
        if (note.IsFirst)
        {
            remarks.Add(note.Mark, remark);
        }
    }

    private int FretOf(int @string, int number)
    {
        var start = neck.Tuning[@string].Start;
        return number == 0 && start >= neck.Capo ? start : number;
    }

    private void SetFret(Draft note, Draft? last)
    {
        var mark = note.Mark;
        if (mark.Number is not { } number)
        {
            note.Fret = mark.Has(Technique.Release) && last is not null ? last.Fret : neck.OpenFret(mark.String);
            return;
        }

        var (isReleased, cents) = (mark.Has(Technique.Release) && last is not null, number * 100);
        note.Fret =
            isReleased && last!.Bend > 0 && cents >= last.Fret * 100 && cents <= (last.Fret * 100) + last.Bend
                ? last.Fret
                : FretOf(mark.String, number);
        note.Bend =
            isReleased && note.Fret == last!.Fret ? Math.Max(0, cents - (note.Fret * 100) + (mark.IsHalf ? 50 : 0)) : 0;
    }

    /// <summary>What is not on the neck has no place in a path.</summary>
    private void CheckFret(Draft note)
    {
        var (mark, open) = (note.Mark, neck.OpenFret(note.Mark.String));
        if (note.Fret < open || note.Fret > neck.Frets)
        {
            throw mark.Line.Wrong(
                mark.Column,
                mark.Length,
                note.Fret > neck.Frets
                    ? $"a fret up to {neck.Frets}, the last of this neck"
                    : $"a fret from {open}, where string {mark.String} begins"
            );
        }
    }

    private void SetTechniques(Draft note, Draft? last, Draft? alone)
    {
        var mark = note.Mark;
        var isReleased =
            mark.Has(Technique.Release)
            && last is not null
            && last.Played.End == note.Played.Start
            && last.Fret == note.Fret
            && last.Bend > note.Bend;
        if (mark.Has(Technique.Release) && !isReleased)
        {
            note.Bend = 0;
            Remark(note, new TabRemark.NothingBent(note.Fret));
        }

        foreach (var technique in mark.Techniques)
        {
            if (technique == Technique.Bend || technique == Technique.PreBend)
            {
                SetBend(note, technique, isReleased);
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
                Remark(note, new TabRemark.NoNode(note.Fret));
            }
            else if (technique == Technique.Trill)
            {
                SetTrill(note);
            }
            else if (IsSlideFrom(technique, note, alone))
            {
                note.Techniques.Add(Technique.Slide);
                Remark(note, new TabRemark.SlideFrom(alone!.Fret, note.Fret));
            }
            else
            {
                note.Techniques.Add(technique);
                if (IsWrongWay(technique, note, last))
                {
                    Remark(note, new TabRemark.WrongWay(technique, last!.Fret, note.Fret));
                }
            }
        }
    }

    /// <summary>A hammer-on to no higher fret or a pull-off to no lower one: left as it is typed, so that every path reads back from its tab.</summary>
    private static bool IsWrongWay(Technique technique, Draft note, Draft? last)
    {
        if (
            (technique != Technique.HammerOn && technique != Technique.PullOff)
            || last is null
            || last.Played.End != note.Played.Start
            || last.Mark.Number is null
            || note.Mark.Number is null
            || last.TrillFret is not null
        )
        {
            return false;
        }

        var way = note.Fret.CompareTo(last.Fret);
        return way == 0
            ? !last.Techniques.Exists(static each => each.IsBent)
            : technique == Technique.HammerOn != way > 0;
    }

    /// <summary>Without a row of time a sign between two numbers of one string with nothing in between joins them, line or not.</summary>
    private bool IsSlideFrom(Technique technique, Draft note, Draft? alone) =>
        (technique == Technique.SlideInFromBelow || technique == Technique.SlideInFromAbove)
        && !isTold
        && alone is not null
        && alone.Played.Mark == note.Mark.Before
        && alone.Played.End == note.Played.Start
        && alone.Fret != note.Fret
        && (alone.Fret < note.Fret) == (technique == Technique.SlideInFromBelow);

    private void SetBend(Draft note, Technique technique, bool isReleased)
    {
        var mark = note.Mark;
        var cents = mark.BendHalves is { } halves ? (halves * 50) - (note.Fret * 100) : mark.BendCents ?? 0;
        if (isReleased && cents != note.Bend)
        {
            Remark(note, new TabRemark.ReleaseAlone());
        }
        else if (cents is > 0 and <= PathNote.MaxBend && note.Fret > neck.OpenFret(mark.String))
        {
            note.Bend = cents;
            note.Techniques.Add(technique);
        }
        else
        {
            Remark(
                note,
                note.Fret == neck.OpenFret(mark.String) ? new TabRemark.OpenBend()
                    : cents > PathNote.MaxBend ? new TabRemark.BendTooFar()
                    : new TabRemark.BendNowhere()
            );
        }
    }

    private void SetTrill(Draft note)
    {
        var mark = note.Mark;
        var fret = mark.TrillNumber is { } number ? FretOf(mark.String, number) : note.Fret + 2;
        if (fret == note.Fret || fret < neck.OpenFret(mark.String) || fret > neck.Frets)
        {
            Remark(note, new TabRemark.TrillNowhere());
            return;
        }

        if (mark.TrillNumber is null)
        {
            Remark(note, new TabRemark.TrillUnsaid(fret));
        }

        note.TrillFret = fret;
        note.Techniques.Add(Technique.Trill);
    }
}
