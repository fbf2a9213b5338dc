namespace TheoryKit.Cli.Pages;

/// <summary>Turns the pictures that a text cell names into data, so that a page stands alone.</summary>
/// <param name="folder">Where relative names start.</param>
/// <param name="attachments">Pictures that the cell carries: name to data URI.</param>
internal sealed class PictureSource(string folder, IReadOnlyDictionary<string, string> attachments)
{
    private static readonly Dictionary<string, string> Types = new(StringComparer.OrdinalIgnoreCase)
    {
        [".png"] = "image/png",
        [".jpg"] = "image/jpeg",
        [".jpeg"] = "image/jpeg",
        [".gif"] = "image/gif",
        [".webp"] = "image/webp",
        [".svg"] = "image/svg+xml",
    };

    /// <summary>A data URI for the picture at <paramref name="url"/>, or null where there is none to be had here.</summary>
    public string? Find(string url)
    {
        if (url.StartsWith("data:image/", StringComparison.OrdinalIgnoreCase))
        {
            return url;
        }

        const string Attachment = "attachment:";
        if (url.StartsWith(Attachment, StringComparison.Ordinal))
        {
            return attachments.GetValueOrDefault(Uri.UnescapeDataString(url[Attachment.Length..]));
        }

        if (url.Contains("://", StringComparison.Ordinal) || !Types.TryGetValue(Path.GetExtension(url), out var type))
        {
            return null;
        }

        var file = Path.Combine(folder, Uri.UnescapeDataString(url));
        return File.Exists(file) ? $"data:{type};base64,{Convert.ToBase64String(File.ReadAllBytes(file))}" : null;
    }
}
