using Fractions;
using TheoryKit.Paths;

namespace TheoryKit.Licks.Moves;

/// <summary>Keeps account of what the notes of a path lose when they are moved.</summary>
internal sealed class MoveAccount(Path path)
{
    private readonly List<MoveRemark> whole = [];
    private readonly List<(int Note, MoveRemark Remark)> remarks = [];

    /// <summary>What was lost, in the order of the notes; what is about all of it first.</summary>
    public IEnumerable<MoveRemark> Remarks =>
        [.. whole, .. remarks.OrderBy(static each => each.Note).Select(static each => each.Remark)];

    /// <summary>The lick as a whole lost something.</summary>
    public void Whole(MoveLoss loss) => whole.Add(new(null, null, null, loss));

    /// <summary>A note, by its number, lost something.</summary>
    public void Tell(int note, MoveLoss loss)
    {
        var told = path.Notes[note];
        var (bar, beat) = Place(path, told);
        remarks.Add((note, new(bar, beat, told.IsDead ? null : path.SoundingPitch(told), loss)));
    }

    /// <summary>A note, by its number, lost a technique.</summary>
    public void Tell(int note, TechniqueLoss loss) => Tell(note, new MoveLoss.OfTechnique(loss));

    /// <summary>The bar and the beat of a note, both from 1.</summary>
    public static (int Bar, Fraction Beat) Place(Path path, PathNote note)
    {
        var bar = (int)Math.Floor((note.Start / path.Time.Beats).ToDouble());
        return (bar + 1, (note.Start - (bar * path.Time.Beats) + 1).Reduce());
    }
}
