using System.Globalization;
using System.Text;

namespace TheoryKit.Licks.Folders;

/// <summary>
/// The names of files that licks are kept in. Nothing of a lick's text becomes part of a path but letters and digits.
/// </summary>
internal static class LickFileName
{
    /// <summary>The most characters before the extension and a number.</summary>
    public const int MaxStem = 48;

    // Whatever the extension, Windows takes these for devices.
    private static readonly string[] Devices = ["con", "prn", "aux", "nul"];

    /// <summary>What the file of a lick of that name is called before the extension and, where another has it, a number.</summary>
    /// <remarks>
    /// Lower-case letters and digits, those of the Latin script without accents; a hyphen for anything between. Never empty, never the name of
    /// a device, at most <see cref="MaxStem"/> characters, no dots, so no hidden file and no way out of the folder.
    /// </remarks>
    public static string StemOf(string name)
    {
        var stem = new StringBuilder(MaxStem);
        foreach (var rune in name.Normalize(NormalizationForm.FormKD).EnumerateRunes())
        {
            var lower = Rune.ToLowerInvariant(rune);
            if (Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark)
            {
                continue;
            }

            if (Rune.IsLetterOrDigit(lower))
            {
                if (stem.Length + lower.Utf16SequenceLength > MaxStem)
                {
                    break;
                }

                stem.Append(lower);
            }
            else if (stem.Length is > 0 and < MaxStem && stem[^1] != '-')
            {
                stem.Append('-');
            }
        }

        var text = stem.ToString().Normalize(NormalizationForm.FormC).Trim('-');
        return text.Length == 0 ? "lick"
            : IsDevice(text) ? $"lick-{text}"
            : text;
    }

    /// <summary>Whether a file is one of licks by its name; names that begin with a dot are none.</summary>
    public static bool IsLick(string file) => file.Length > 0 && file[0] != '.' && ExtensionOf(file) is not null;

    /// <summary>The name without the extension.</summary>
    public static string StemOfFile(string file) =>
        ExtensionOf(file) is { } extension ? file[..^extension.Length] : file;

    private static string? ExtensionOf(string file) =>
        new[] { LickFolder.Extension, LickFolder.TabExtension }.FirstOrDefault(extension =>
            file.Length > extension.Length && file.EndsWith(extension, StringComparison.OrdinalIgnoreCase)
        );

    private static bool IsDevice(string text) =>
        Devices.Contains(text) || (text.Length == 4 && char.IsDigit(text[3]) && text[..3] is "com" or "lpt");
}
