namespace TheoryKit.Cli.Pages;

/// <summary>What becomes of the cells' code on a page.</summary>
internal enum CodeOnPage
{
    /// <summary>Folded on the screen, left out on paper.</summary>
    Fold,

    /// <summary>Open on the screen, small on paper.</summary>
    Show,

    /// <summary>Left out.</summary>
    Hide,
}
