using TheoryKit.Licks.Search;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Licks;

/// <summary>Short ways from what a folder of licks gives to its pictures, for notebooks.</summary>
public static class LickFolderExtensions
{
    /// <summary>What a search has found, for one sheet of paper.</summary>
    public static LickResults Sheet(this IEnumerable<FoundLick> found, string title = "Licks") => new(found, title);

    /// <summary>Licks of a folder, for one sheet of paper.</summary>
    public static LickResults Sheet(this IEnumerable<KeptLick> licks, string title = "Licks")
    {
        return new(Check.Items(licks).Select(static each => new FoundLick { Kept = each, Score = 1 }), title);
    }
}
