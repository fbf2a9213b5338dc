using System.Reflection;

namespace TheoryKit;

/// <summary>
/// Compares output with a file that a reviewer can open: <c>Expected/NAME</c> in the test project. Where they differ, what was
/// received is written beside it, as <c>NAME.received.EXT</c>; copy it over the expectation if it is right.
/// </summary>
internal static class Expectations
{
    private static readonly string Folder = Path.Combine(
        Repository.Root,
        "tests",
        Assembly.GetExecutingAssembly().GetName().Name!,
        "Expected"
    );

    /// <summary>Fails unless the text is that of the file. Markup is compared with one element per line.</summary>
    public static void Matches(string received, string fileName)
    {
        var extension = Path.GetExtension(fileName);
        if (extension is ".svg" or ".html")
        {
            received = received.Replace("><", ">\n<", StringComparison.Ordinal);
        }

        received = received.ReplaceLineEndings("\n").TrimEnd('\n') + "\n";
        var expectedPath = Path.Combine(Folder, fileName);
        var receivedPath = Path.ChangeExtension(expectedPath, ".received" + extension);
        var expected = File.Exists(expectedPath) ? File.ReadAllText(expectedPath).ReplaceLineEndings("\n") : "";
        if (expected == received)
        {
            File.Delete(receivedPath);
            return;
        }

        Directory.CreateDirectory(Folder);
        File.WriteAllText(receivedPath, received);
        var (was, now) = (expected.Split('\n'), received.Split('\n'));
        var line = was.Zip(now).TakeWhile(static pair => pair.First == pair.Second).Count();
        Assert.Fail(
            $"""
            {fileName} differs from line {line + 1} on; what was received is in {receivedPath}
            expected: {was.ElementAtOrDefault(line)}
            received: {now.ElementAtOrDefault(line)}
            """
        );
    }
}
