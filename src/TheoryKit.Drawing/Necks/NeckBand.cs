using TheoryKit.Fingering.Hands;

namespace TheoryKit.Drawing.Necks;

/// <summary>A stretch of frets told below a neck. Equal when frets and words agree.</summary>
/// <param name="Window">The frets.</param>
/// <param name="Name">What it is, in a letter or a few.</param>
public sealed record NeckBand(Window Window, string Name)
{
    /// <summary>The frets as captions print them: <c>5–8</c>; a single one <c>0</c>.</summary>
    internal string Frets => Window.Width == 1 ? $"{Window.First}" : $"{Window.First}–{Window.Last}";
}
