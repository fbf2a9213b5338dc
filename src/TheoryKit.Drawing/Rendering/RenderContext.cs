using TheoryKit.Values;

namespace TheoryKit.Drawing.Rendering;

/// <summary>
/// The page that fragments are rendered for. It hands out the ids, so that no two pictures in one page share one.
/// </summary>
/// <remarks>
/// A context may be used from several threads. With the same prefix and the same order of calls it gives the same ids,
/// so a printed page is reproducible; a host whose outputs outlive it (a saved notebook) takes a new prefix each time.
/// </remarks>
/// <param name="idPrefix">Put before every id; an ASCII letter, then letters, digits, hyphens.</param>
/// <exception cref="ArgumentException">The prefix is not of that form.</exception>
public sealed class RenderContext(string idPrefix = "tk")
{
    private readonly string prefix = IsPrefix(Check.NotNull(idPrefix))
        ? idPrefix
        : throw new ArgumentException(
            $"\"{idPrefix}\" can't begin an id: it takes an ASCII letter, then letters, digits and hyphens.",
            nameof(idPrefix)
        );
    private int last;

    /// <summary>An id not handed out before by this context.</summary>
    public string NextId() => $"{prefix}-{Interlocked.Increment(ref last)}";

    private static bool IsPrefix(string text) =>
        text.Length > 0
        && char.IsAsciiLetter(text[0])
        && text.All(static c => char.IsAsciiLetterOrDigit(c) || c == '-');
}
