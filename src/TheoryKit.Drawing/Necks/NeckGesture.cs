using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Necks;

/// <summary>What a finger does on a neck besides stopping a string there.</summary>
internal enum NeckGestureKind
{
    /// <summary>Pushes the string aside: an arrow along the string to where that pitch would lie, so many cents higher.</summary>
    Bend,

    /// <summary>Slides to a fret: a line along the string.</summary>
    Slide,

    /// <summary>Slides in, or away if it is 1, at the side of the lower frets.</summary>
    SlideBelow,

    /// <summary>Slides in, or away if it is 1, at the side of the higher frets.</summary>
    SlideAbove,

    /// <summary>Only touches the string: a diamond around the mark.</summary>
    Harmonic,
}

/// <summary>A gesture at a position.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Position">Where.</param>
/// <param name="To">Cents, a fret, or whether it leads away, as the kind says.</param>
/// <param name="Words">What it is called, for plain text.</param>
internal readonly record struct NeckGesture(NeckGestureKind Kind, Position Position, int To, string Words);
