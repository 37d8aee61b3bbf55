using System.Diagnostics;

namespace Tamis.App.Label;

/// <summary>A browser on this computer that can save a page as PDF. None is brought along, and none is needed but for that.</summary>
internal static class PrintBrowser
{
    private static readonly string[] Programs = ["chromium", "chromium-browser", "google-chrome", "chrome.exe", "msedge.exe"];
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);

    /// <summary>The browser's program: what TAMIS_BROWSER names, or the first of the usual names on the path; null where there is none.</summary>
    public static string? Program { get; } = Environment.GetEnvironmentVariable("TAMIS_BROWSER") is { Length: > 0 } said ? said
        : (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .SelectMany(folder => Programs.Select(name => Path.Combine(folder, name)))
            .FirstOrDefault(File.Exists);

    /// <summary>Saves a page as PDF, in the size that the page itself says.</summary>
    /// <param name="page">The page's file.</param>
    /// <param name="pdf">The file to write.</param>
    /// <returns>Whether it was written.</returns>
    public static bool SaveAsPdf(string page, string pdf)
    {
        if (Program is not { } program) return false;
        ProcessStartInfo start = new(program) { RedirectStandardError = true, RedirectStandardOutput = true };
        foreach (var argument in (string[])["--headless", "--disable-gpu", "--no-pdf-header-footer", $"--print-to-pdf={pdf}"]) start.ArgumentList.Add(argument);
        // Chromium refuses to run as the superuser with its sandbox on; the page is our own and asks for nothing.
        if (Environment.UserName == "root") start.ArgumentList.Add("--no-sandbox");
        start.ArgumentList.Add(new Uri(page).AbsoluteUri);
        using var browser = Process.Start(start)!;
        var said = Task.WhenAll(browser.StandardError.ReadToEndAsync(), browser.StandardOutput.ReadToEndAsync());
        if (!browser.WaitForExit(Patience))
        {
            browser.Kill(entireProcessTree: true);
            return false;
        }
        said.Wait(Patience);
        return browser.ExitCode == 0 && File.Exists(pdf);
    }
}
