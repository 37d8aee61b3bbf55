namespace Tamis.App.Tests.Browser;

/// <summary>A test that needs a browser on this machine. Without one it is skipped by name; in CI it runs all the same, and fails.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class BrowserFactAttribute : FactAttribute
{
    private static readonly string[] Names = ["chromium", "chromium-browser", "google-chrome", "chrome.exe", "msedge.exe"];

    public BrowserFactAttribute()
    {
        if (Path is null && Environment.GetEnvironmentVariable("CI") is null or "") Skip = "No Chromium was found on this machine.";
    }

    /// <summary>The browser's program: what TAMIS_BROWSER names, or the first of the usual names on the path; null where there is none.</summary>
    public static string? Path { get; } = Environment.GetEnvironmentVariable("TAMIS_BROWSER") is { Length: > 0 } said ? said
        : (Environment.GetEnvironmentVariable("PATH") ?? "").Split(System.IO.Path.PathSeparator)
            .SelectMany(folder => Names.Select(name => System.IO.Path.Combine(folder, name)))
            .FirstOrDefault(File.Exists);
}
