using TheoryKit.Fingering.Hands;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Paths;

/// <summary>
/// Fits techniques to places that notes have moved to. What worked where a note came from and can't be played where it is now is changed
/// or left out, and told; what did not work before (a hammer-on to a lower note) is left as the player wrote it.
/// </summary>
/// <remarks>
/// <list type="bullet">
/// <item>A hammer-on or pull-off needs the note before to end on its string where it begins; where the line has turned, one becomes the
/// other. Between equal frets, after a rest or across strings it is struck, and so where even a large hand does not reach from one fret to
/// the other: an open string before may have become a fretted one.</item>
/// <item>A slide needs two frets of one string. A slide in from below or out downwards needs a fret below its own, the others one above.</item>
/// <item>A release needs the same string and fret, and a greater bend before it; otherwise the note is struck, pre-bent if a bend is left.</item>
/// <item>A bend, vibrato, a tap need a fretted string; a natural harmonic its node; a trill another fret of the string.</item>
/// </list>
/// </remarks>
internal static class TechniqueFit
{
    /// <summary>Tells of a note, by its number, what it could not keep.</summary>
    public delegate void Tell(int note, TechniqueLoss loss);

    /// <summary>The note that ends on its string where another begins, by the number of that one; null for none.</summary>
    public static PathNote?[] Before(Path path)
    {
        var before = new PathNote?[path.Notes.Count];
        var last = new PathNote?[path.Neck.StringCount + 1];
        for (var index = 0; index < before.Length; index++)
        {
            var note = path.Notes[index];
            ref var onString = ref last[note.Position.String];
            before[index] = onString is not null && onString.End == note.Start ? onString : null;
            onString = note;
        }

        return before;
    }

    /// <summary>The same where every note is there.</summary>
    public static PathNote[] Fit(Path from, Neck neck, IReadOnlyList<PathNote> moved, Tell? tell = null) =>
        [.. FitThere(from, neck, moved, tell).OfType<PathNote>()];

    /// <summary>The moved notes with techniques that fit, in the order of the path that they come from.</summary>
    /// <param name="from">Where the notes come from.</param>
    /// <param name="neck">The neck that they are on now.</param>
    /// <param name="moved">The notes of <paramref name="from"/>, moved, one for one; null where one is left out.</param>
    /// <param name="tell">Who is told what is lost.</param>
    public static PathNote?[] FitThere(Path from, Neck neck, IReadOnlyList<PathNote?> moved, Tell? tell = null)
    {
        var before = Before(from);
        var fitted = moved.ToArray();
        var last = new PathNote?[neck.StringCount + 1];
        var hands = (new HandOnNeck(from.Neck, Hand.Large), new HandOnNeck(neck, Hand.Large));
        foreach (
            var index in Enumerable
                .Range(0, fitted.Length)
                .Where(index => moved[index] is not null)
                .OrderBy(index => moved[index]!.Start)
                .ThenByDescending(index => moved[index]!.Position.String)
        )
        {
            ref var onString = ref last[moved[index]!.Position.String];
            var note = new One(
                from,
                before[index],
                from.Notes[index],
                neck,
                hands,
                onString,
                moved[index]!,
                index,
                tell
            ).Fit();
            if (PathChecks.Of(neck, note, onString) is not null)
            {
                tell?.Invoke(
                    index,
                    new TechniqueLoss.Unplayable(note.Techniques.Where(static technique => !IsFree(technique)))
                );
                note = note with { Techniques = [.. note.Techniques.Where(IsFree)], Bend = 0, TrillFret = null };
            }

            onString = fitted[index] = note;
        }

        return fitted;
    }

    private static bool IsFree(Technique technique) =>
        !technique.IsBent
        && technique != Technique.Release
        && technique != Technique.NaturalHarmonic
        && technique != Technique.Trill;

    private sealed class One(
        Path from,
        PathNote? before,
        PathNote old,
        Neck neck,
        (HandOnNeck From, HandOnNeck To) hands,
        PathNote? onString,
        PathNote moved,
        int index,
        Tell? tell
    )
    {
        private readonly PathNote? now = onString is not null && onString.End == moved.Start ? onString : null;
        private readonly List<Technique> techniques = [.. moved.Techniques];
        private int bend = moved.Bend;
        private int? trill = moved.TrillFret;

        public PathNote Fit()
        {
            if (moved.Has(Technique.Release))
            {
                Release();
            }

            foreach (var joined in new[] { Technique.HammerOn, Technique.PullOff, Technique.Slide })
            {
                if (moved.Has(joined) && before is not null)
                {
                    Join(joined);
                }
            }

            if (IsOpen(neck, moved.Position) && techniques.Exists(static technique => technique.IsBent))
            {
                Drop(static technique => technique.IsBent, new TechniqueLoss.OpenBend());
                bend = 0;
            }

            if (
                moved.Has(Technique.NaturalHarmonic)
                && PathChecks.NodeAbove(moved.Position.Fret - neck.OpenFret(moved.Position.String)) is null
            )
            {
                Drop(static technique => technique == Technique.NaturalHarmonic, new TechniqueLoss.NoNode());
            }

            if (
                moved.Has(Technique.Trill)
                && (
                    trill is not { } fret
                    || fret == moved.Position.Fret
                    || fret is < 0 or > Position.MaxFret
                    || !neck.Has(new(moved.Position.String, fret))
                )
            )
            {
                Drop(static technique => technique == Technique.Trill, new TechniqueLoss.TrillOffString());
            }

            trill = techniques.Contains(Technique.Trill) ? trill : null;
            foreach (var technique in moved.Techniques)
            {
                if (
                    Needs(technique) is { } needs
                    && needs.Met(from.Neck, old.Position)
                    && !needs.Met(neck, moved.Position)
                )
                {
                    Drop(other => other == technique, new TechniqueLoss.NoFret(technique, needs.Lack));
                }
            }

            return moved with
            {
                Techniques = techniques,
                Bend = bend,
                TrillFret = trill,
            };
        }

        private void Release()
        {
            if (now is not null && now.Position == moved.Position && now.Bend > bend)
            {
                return;
            }

            var stays = bend > 0 && !IsOpen(neck, moved.Position);
            Drop(
                static technique => technique == Technique.Release,
                new TechniqueLoss.Unreleased(
                    now is null || now.Position != moved.Position
                        ? ReleaseLack.NothingBent
                        : ReleaseLack.NotBentFarther,
                    stays
                )
            );
            if (stays)
            {
                techniques.Add(Technique.PreBend);
            }
            else
            {
                bend = 0;
            }
        }

        private void Join(Technique joined)
        {
            bool Is(Technique other) => other == joined;
            if (now is null)
            {
                Drop(
                    Is,
                    new TechniqueLoss.Unjoined(
                        joined,
                        onString is not null && moved.Start > onString.End ? JoinLack.HasEnded : JoinLack.OtherString
                    )
                );
                return;
            }

            if (joined == Technique.Slide)
            {
                if (Slides(from.Neck, before!.Position, old.Position) && !Slides(neck, now.Position, moved.Position))
                {
                    Drop(
                        Is,
                        new TechniqueLoss.Unjoined(
                            joined,
                            now.Position.Fret == moved.Position.Fret ? JoinLack.SameFret : JoinLack.OpenString
                        )
                    );
                }

                return;
            }

            if (IsInReach(hands.From, before!, old) && !IsInReach(hands.To, now, moved))
            {
                Drop(Is, new TechniqueLoss.OutOfReach(joined, now.Position.Fret, moved.Position.Fret));
                return;
            }

            var asked = joined == Technique.HammerOn ? 1 : -1;
            var direction = Math.Sign(moved.Position.Fret - now.Position.Fret);
            if (Math.Sign(old.Position.Fret - before!.Position.Fret) != asked || direction == asked)
            {
                return;
            }

            if (direction == 0)
            {
                Drop(Is, new TechniqueLoss.Unjoined(joined, JoinLack.SameFret));
                return;
            }

            var other = joined == Technique.HammerOn ? Technique.PullOff : Technique.HammerOn;
            Drop(Is, new TechniqueLoss.Turned(joined, other, Rises: direction > 0));
            techniques.Add(other);
        }

        private void Drop(Predicate<Technique> which, TechniqueLoss loss)
        {
            if (techniques.RemoveAll(which) > 0)
            {
                tell?.Invoke(index, loss);
            }
        }

        private static bool Slides(Neck neck, Position one, Position other) =>
            one.Fret != other.Fret && !IsOpen(neck, one) && !IsOpen(neck, other);
    }

    // A tapped note is the other hand's.
    private static bool IsInReach(HandOnNeck hand, PathNote one, PathNote other) =>
        one.Has(Technique.Tap) || other.Has(Technique.Tap) || hand.Holds(one.Position, other.Position);

    private sealed record Need(Func<Neck, Position, bool> Met, FretLack Lack);

    private static readonly Need Fretted = new(static (neck, at) => !IsOpen(neck, at), FretLack.Open);

    private static readonly Need Below = new(
        static (neck, at) => at.Fret > neck.OpenFret(at.String) + 1,
        FretLack.NoneBelow
    );

    private static readonly Need Above = new(
        static (neck, at) => at.Fret < neck.Frets && !IsOpen(neck, at),
        FretLack.NoneAbove
    );

    private static Need? Needs(Technique technique) =>
        technique == Technique.Vibrato || technique == Technique.Tap ? Fretted
        : technique == Technique.SlideInFromBelow || technique == Technique.SlideOutDown ? Below
        : technique == Technique.SlideInFromAbove || technique == Technique.SlideOutUp ? Above
        : null;

    private static bool IsOpen(Neck neck, Position position) => position.Fret == neck.OpenFret(position.String);
}
