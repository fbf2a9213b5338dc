using System.Collections.Immutable;
using Fractions;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Zones;
using TheoryKit.Theory.Chords;
using TheoryKit.Values;

namespace TheoryKit.Licks.Analysis;

/// <summary>
/// What every note of a path does over its changes. Equal when the paths are.
/// </summary>
/// <remarks>
/// <para>Every note is read at its sounding pitch (<see cref="Path.SoundingPitch"/>: where a bend leads, where a release ends) over the chord that it starts
/// with. It has one part, the first of these that fits:</para>
/// <list type="number">
/// <item><b>Dead</b>: a dead note; it has no pitch to read.</item>
/// <item><b>Grace</b>: a slide leaves it at once, it is at most a sixteenth note and shorter than the note slid to. The ear takes both for
/// one note that is slid into, so it is read at that one's pitch and does not count as a note of the line.</item>
/// <item><b>Anticipation, held</b>: struck at most one pulse before the next chord, not together with its own, sounding over
/// the next at least as long as before it, and named by its symbol. Most of it is heard over that chord, so this goes before what it is
/// to its own.</item>
/// <item><b>Chord tone</b>: it sounds the harmony whatever it leads to.</item>
/// <item><b>Enclosure</b>: of the two to four notes just before a target all lie a half or whole step from it, on both sides; chord tones of the
/// target's own chord break the run, those of the chord before it may be a side but stay chord tones. Before colour, because the two sides need
/// each other: heard alone one may be a ninth, together they point.</item>
/// <item><b>Colour tone, named or held</b>: the symbol names it, it is the bass after the slash, or the chord takes it well
/// (<see cref="ToneRoles.Over"/>) and it lasts longer than a pulse. Such a note is heard as part of the chord, even if it moves on by step.</item>
/// <item><b>Anticipation, struck again</b>: the next note is the same pitch over the next chord, which names it.</item>
/// <item><b>Passing, neighbour, approach</b>: it goes by a half or whole step to a target struck next, or through up to two more such notes
/// in the same direction. <i>Passing</i> where it also comes by step, in the same direction, from a target; <i>neighbour</i> where
/// it comes from the pitch it goes to; <i>approach</i> otherwise. The step is what the ear follows.</item>
/// <item><b>Anticipation, left</b>: within a pulse before the next chord, named by it, no note that belongs to its own chord after it, and
/// nothing above explains it.</item>
/// <item><b>Colour tone, passing by</b>: the chord takes it well.</item>
/// <item><b>No chord</b> over none; else <b>outside</b>.</item>
/// </list>
/// <para>A target is a chord tone, a colour tone that is named or held, or an anticipation; it is struck after at most one pulse of
/// silence. A pulse is a beat, in a compound time three. A note struck again does what it does the last time. Of notes struck together each is led
/// from and to the nearest.</para>
/// </remarks>
[EqualBy(nameof(Path))]
public sealed partial class LickAnalysis : IEquatable<LickAnalysis>
{
    private readonly ImmutableArray<AnalysedNote> notes;
    private readonly List<LickAnalyser.Stretch> stretches;
    private readonly long parts; // of a beat, in which the stretches are counted
    private readonly Lazy<ImmutableArray<BarAnalysis>> bars;
    private readonly Lazy<ImmutableArray<ChangeAnalysis>> changes;
    private readonly Lazy<LineSummary> summary;

    /// <summary>The analysis of a path.</summary>
    public LickAnalysis(Path path)
    {
        ArgumentNullException.ThrowIfNull(path);
        Path = path;
        (var results, stretches, parts) = LickAnalyser.Run(path);
        notes = System.Runtime.InteropServices.ImmutableCollectionsMarshal.AsImmutableArray(results);
        bars = new(() => [.. FindBars()]);
        changes = new(() => [.. FindChanges()]);
        summary = new(() => new(notes, path.Beats));
    }

    /// <summary>The path.</summary>
    public Path Path { get; }

    /// <summary>What each note does, in the order of the path's notes.</summary>
    public IReadOnlyList<AnalysedNote> Notes => notes;

    /// <summary>Bar by bar.</summary>
    public IReadOnlyList<BarAnalysis> Bars => bars.Value;

    /// <summary>The changes from one chord to another within the path.</summary>
    public IReadOnlyList<ChangeAnalysis> Changes => changes.Value;

    /// <summary>What the notes come to as a whole.</summary>
    public LineSummary Summary => summary.Value;

    /// <summary>What a teacher would say of the whole; each bar has remarks of its own. Picked anew each time.</summary>
    public IReadOnlyList<LineRemark> Remarks => LineRemarks.Of(this);

    /// <summary>The note that a note leads to; null for none.</summary>
    public AnalysedNote? TargetOf(AnalysedNote note)
    {
        ArgumentNullException.ThrowIfNull(note);
        return note.Target is { } target ? notes[target] : null;
    }

    /// <summary>
    /// The zones that the notes use, chord by chord; chords with no zone on this neck and those without notes are left out. Dead notes, that
    /// any hand nearby can play, do not count. Searched anew each time, about a third of a millisecond a chord.
    /// </summary>
    /// <param name="hand">The hand; an average one if null.</param>
    public IReadOnlyList<ZoneUse> Zones(Hand? hand = null)
    {
        var zones = new Dictionary<Chord, IReadOnlyList<Zone>>();
        var uses = new List<ZoneUse>();
        var note = 0;
        foreach (var stretch in stretches)
        {
            var (from, count) = (note, 0);
            for (; note < notes.Length && notes[note].Note.Start < At(stretch.End); note++)
            {
                count += notes[note].Part == NotePart.Dead ? 0 : 1;
            }

            if (stretch.Chord is not { } chord || count == 0)
            {
                continue;
            }

            if (!zones.TryGetValue(chord, out var found))
            {
                zones.Add(chord, found = chord.Zones(Path.Neck, hand));
            }

            ZoneUse? best = null;
            foreach (var zone in found)
            {
                var inside = 0;
                for (var index = from; index < note; index++)
                {
                    var position = notes[index].Note.Position;
                    inside +=
                        notes[index].Part != NotePart.Dead
                        && (zone.Window.Contains(position.Fret) || position.Fret == Path.Neck.OpenFret(position.String))
                            ? 1
                            : 0;
                }

                if (best is null || inside > best.Inside)
                {
                    best = new(zone, At(stretch.Start), inside, count);
                }
            }

            if (best is not null)
            {
                uses.Add(best);
            }
        }

        return uses;
    }

    /// <summary>The notes, each as it is written.</summary>
    public override string ToString() => string.Join(", ", notes);

    private Fraction At(long time) => new Fraction(time, parts).Reduce();

    private IEnumerable<BarAnalysis> FindBars()
    {
        var (note, stretch, length) = (0, 0, Path.Time.Beats * parts);
        for (var bar = 0; bar < Path.BarCount; bar++)
        {
            var from = note;
            while (note < notes.Length && notes[note].Bar == bar)
            {
                note++;
            }

            while (stretches[stretch].End <= bar * length)
            {
                stretch++;
            }

            var chords = stretches
                .Skip(stretch)
                .TakeWhile(each => each.Start < (bar + 1) * length)
                .Select(static each => each.Chord)
                .OfType<Chord>();
            yield return new(this, bar, notes[from..note], chords);
        }
    }

    private IEnumerable<ChangeAnalysis> FindChanges()
    {
        var line = notes
            .Where(static note => note.Counts)
            .GroupBy(static note => note.Note.Start)
            .Select(static group => group.MaxBy(static note => note.Sounding.MidiNumber)!)
            .ToList();
        var at = 0; // the first note over the chord that ends
        for (var index = 1; index < stretches.Count; index++)
        {
            var (change, end) = (At(stretches[index].Start), At(stretches[index].End));
            var from = at;
            while (at < line.Count && line[at].Note.Start < change)
            {
                at++;
            }

            if (stretches[index - 1].Chord is not { } old || stretches[index].Chord is not { } next)
            {
                continue;
            }

            var first = at;
            while (first > from && line[first - 1].Anticipates is not null)
            {
                first--;
            }

            yield return new()
            {
                From = old,
                To = next,
                Beat = change,
                Bar = (int)(stretches[index].Start / (Path.Time.Beats * parts)),
                First = first < line.Count && line[first].Note.Start < end ? line[first] : null,
                Last = first > from ? line[first - 1] : null,
            };
        }
    }
}

/// <summary>Short ways to an analysis.</summary>
public static class LickAnalyses
{
    /// <summary>What every note of the path does over its changes.</summary>
    public static LickAnalysis Analyse(this Path path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return new(path);
    }

    /// <summary>What every note of the lick does over its changes.</summary>
    public static LickAnalysis Analyse(this Lick lick)
    {
        ArgumentNullException.ThrowIfNull(lick);
        return new(lick.Path);
    }
}
