using System.Diagnostics;

namespace TheoryKit.Cli.Running.Inside;

/// <summary>An exception as the reader of a notebook needs it: what it says, and where in the cells' own code it arose.</summary>
internal static class ExceptionText
{
    /// <summary>The compiler names the class of the nth cell's own code with this and n.</summary>
    private const string OwnCode = "Submission#";

    public static string Of(Exception exception)
    {
        if (exception is FormatException { InnerException: null })
        {
            // It says already what was read, where, and what would have worked.
            return exception.Message;
        }

        var causes = new List<string>();
        var calls = new List<string>();
        for (var e = exception; e is not null; e = e.InnerException)
        {
            causes.Add($"{e.GetType().Name}: {e.Message}");
            calls.InsertRange(0, OwnCalls(e));
        }

        return string.Join('\n', [string.Join("\n  because of ", causes), .. calls.Distinct(StringComparer.Ordinal)]);
    }

    /// <summary>The methods of the cells that were under way, the innermost first. The rest is the library's or the kernel's.</summary>
    private static IEnumerable<string> OwnCalls(Exception exception) =>
        new StackTrace(exception)
            .ToString()
            .ReplaceLineEndings("\n")
            .Split('\n')
            .Where(static frame =>
                frame.Contains(OwnCode, StringComparison.Ordinal)
                && !frame.Contains("<<Initialize>>", StringComparison.Ordinal)
            )
            .Select(static frame => "  " + frame.Trim());
}
