using System.Text.Json;

namespace TheoryKit.Hosts;

/// <summary>The programs of the machine that host tests need.</summary>
internal static class HostTools
{
    public const string Jupyter = "Jupyter with nbconvert";
    public const string Kernel = "the notebook kernel (dotnet tool restore)";
    public const string Browser = "Chromium";

    public static string? Chromium { get; } =
        OnPath("chromium") ?? OnPath("chromium-browser") ?? OnPath("google-chrome");

    public static string PackageCache { get; } =
        Environment.GetEnvironmentVariable("NUGET_PACKAGES")
        ?? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");

    /// <summary>Why a test that needs these can't run here, or null if it can or has to.</summary>
    public static string? ReasonToSkip(string[] hosts)
    {
        if (Environment.GetEnvironmentVariable("THEORYKIT_REQUIRE_HOSTS") == "1")
        {
            return null;
        }

        var missing = hosts.Where(static host => !IsHere(host)).ToList();
        return missing.Count > 0 ? $"Not on this machine: {string.Join(", ", missing)}." : null;
    }

    private static bool IsHere(string host) =>
        host switch
        {
            Jupyter => OnPath("jupyter") is not null && OnPath("jupyter-nbconvert") is not null,
            Kernel => Directory.Exists(Path.Combine(PackageCache, "microsoft.dotnet-interactive", KernelVersion())),
            Browser => Chromium is not null,
            _ => throw new ArgumentOutOfRangeException(nameof(host), host, "No such host."),
        };

    private static string KernelVersion()
    {
        using var tools = JsonDocument.Parse(
            File.ReadAllText(Path.Combine(Repository.Root, ".config", "dotnet-tools.json"))
        );
        return tools
            .RootElement.GetProperty("tools")
            .GetProperty("microsoft.dotnet-interactive")
            .GetProperty("version")
            .GetString()!;
    }

    private static string? OnPath(string program) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "")
            .Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
            .Select(folder => Path.Combine(folder, program))
            .FirstOrDefault(File.Exists);
}
