using TheoryKit.Values;

namespace TheoryKit.Paths;

/// <summary>
/// Why a note of a path is there. What makes paths has its own kinds: drills, joins, routes, made lines. Equal when kind and figures are.
/// </summary>
[Checked]
public abstract partial record NoteReason
{
    private protected NoteReason() { }
}
