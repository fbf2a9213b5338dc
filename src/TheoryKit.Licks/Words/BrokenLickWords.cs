using System.Diagnostics;
using System.Globalization;
using TheoryKit.Licks.Folders;

namespace TheoryKit.Licks.Words;

/// <summary>The words of a file that is no lick.</summary>
public static class BrokenLickWords
{
    /// <summary>What is wrong with it, and what would have worked: <c>it has 104,857,600 bytes; a lick has at most 1,048,576</c>.</summary>
    public static string InWords(this BrokenLick broken)
    {
        ArgumentNullException.ThrowIfNull(broken);
        return broken.Fault switch
        {
            LickFault.Text => broken.Detail ?? "its text is not that of a lick",
            LickFault.Blank => "it is empty",
            LickFault.NotUtf8 => $"it is not UTF-8 text, first at byte {Number(broken.Byte)}; save it as UTF-8",
            LickFault.NotText => $"it is not text: byte {Number(broken.Byte)} is 0; save it as UTF-8",
            LickFault.TooLong =>
                $"it has {(broken.Bytes is { } bytes ? Number(bytes) : "too many")} bytes; a lick has at most {Number(LickFolder.MaxFileBytes)}",
            LickFault.NoBytes =>
                "it is empty, or a pipe or a device, which are never opened; a lick is a plain file of text",
            LickFault.NoFile => "it is a pipe or a device; a lick is a plain file of text",
            LickFault.Folder => "it is a folder; a lick is a plain file of text",
            LickFault.DeadLink => broken.Other is { } other
                ? $"it is a link that leads to no file, by way of {other}"
                : "it is a link that leads to no file",
            LickFault.Denied => "it may not be read; allow reading it",
            LickFault.Unopened => broken.Detail is { } detail ? $"it can't be opened: {detail}" : "it can't be opened",
            LickFault.NameTaken => $"its name \"{broken.Name}\" is that of {broken.Other}; give one of the two another",
            _ => throw new UnreachableException(),
        };
    }

    private static string Number(long? number) => number?.ToString("N0", CultureInfo.InvariantCulture) ?? "?";
}
