namespace TheoryKit.Theory.Notes;

/// <summary>The seven letters that name notes, in the order of the octave of scientific pitch notation (it begins at C).</summary>
public enum Letter
{
    /// <summary>C, the first letter of an octave.</summary>
    C,

    /// <summary>D.</summary>
    D,

    /// <summary>E.</summary>
    E,

    /// <summary>F.</summary>
    F,

    /// <summary>G.</summary>
    G,

    /// <summary>A.</summary>
    A,

    /// <summary>B, the last letter of an octave (H in German).</summary>
    B,
}
