namespace TheoryKit.Charts.Tests;

/// <summary>Compares a text with a file in <c>Expectations</c> that a reviewer can read.</summary>
public static class Expectation
{
    /// <summary>Asserts that the text is that of the file; if not, writes what came beside the test's assembly and says where.</summary>
    public static void Matches(string file, string actual)
    {
        var expected = Path.Combine(AppContext.BaseDirectory, "Expectations", file);
        var text = actual.ReplaceLineEndings("\n").TrimEnd('\n') + "\n";
        if (File.Exists(expected) && File.ReadAllText(expected).ReplaceLineEndings("\n") == text)
        {
            return;
        }

        var received = Path.Combine(AppContext.BaseDirectory, "Received", file);
        Directory.CreateDirectory(Path.GetDirectoryName(received)!);
        File.WriteAllText(received, text);
        Assert.Fail(
            $"Expectations/{file} {(File.Exists(expected) ? "has another text" : "is missing")}; what came is in {received}."
        );
    }
}
