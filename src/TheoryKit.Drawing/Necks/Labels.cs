namespace TheoryKit.Drawing.Necks;

/// <summary>What is written on the marks.</summary>
public enum Labels
{
    /// <summary>Each tone's degree over the root.</summary>
    Functions,

    /// <summary>Note names.</summary>
    NoteNames,

    /// <summary>Fingers of the fretting hand: 1 index, 2 middle, 3 ring, 4 little finger, T thumb.</summary>
    Fingers,

    /// <summary>When each is played, counted from 1.</summary>
    Order,

    /// <summary>Nothing.</summary>
    None,
}
