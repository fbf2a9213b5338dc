namespace TheoryKit.Cli.Running;

/// <summary>An exception as the reader of a notebook needs it: what it says, and where in the cell's calls it arose.</summary>
internal static class ExceptionText
{
    public static string Of(Exception exception)
    {
        var causes = new List<string>();
        for (var e = exception; e is not null; e = e.InnerException)
        {
            causes.Add($"{e.GetType().Name}: {e.Message}");
        }

        // What lies below the cell's own code is the kernel's.
        var frames = (exception.StackTrace ?? "")
            .ReplaceLineEndings("\n")
            .Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .TakeWhile(static frame => !frame.Contains("Microsoft.CodeAnalysis.Scripting", StringComparison.Ordinal))
            .Where(static frame => !frame.StartsWith("---", StringComparison.Ordinal))
            .Where(static frame => !frame.Contains("<<Initialize>>", StringComparison.Ordinal));
        return string.Join('\n', [string.Join("\n  because of ", causes), .. frames]);
    }
}
