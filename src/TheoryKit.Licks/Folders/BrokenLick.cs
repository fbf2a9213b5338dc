using TheoryKit.Values;

namespace TheoryKit.Licks.Folders;

/// <summary>
/// A file of a lick folder that is none of its licks, and why; in words by <see cref="Words.BrokenLickWords.InWords"/>. Equal when all of it is.
/// </summary>
/// <param name="File">Its name.</param>
/// <param name="Fault">What is wrong with it.</param>
/// <param name="Line">The line that it is about, from 1; null where it is about the file.</param>
[Checked]
public sealed partial record BrokenLick(string File, LickFault Fault, int? Line = null)
{
    /// <summary>How many bytes it has, where there are too many; else null.</summary>
    public long? Bytes { get; init; }

    /// <summary>The byte of the file, from 1, at which it stops being text; null where it is about something else.</summary>
    public int? Byte { get; init; }

    /// <summary>The lick's name that another file says too; else null.</summary>
    public string? Name { get; init; }

    /// <summary>The other file: the one that says the same name, or what a dead link names. Null where there is none.</summary>
    public string? Other { get; init; }

    /// <summary>What the reader of licks or the system says about it; null where neither was asked.</summary>
    public string? Detail { get; init; }

    /// <summary>The file, the line and the fault by its name.</summary>
    public override string ToString() => Line is null ? $"{File}: {Fault}" : $"{File}, line {Line}: {Fault}";
}
