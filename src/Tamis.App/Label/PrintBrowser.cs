using System.ComponentModel;
using System.Diagnostics;

namespace Tamis.App.Label;

/// <summary>A browser on this computer that can save a page as PDF. None is brought along, and none is needed but for that.</summary>
/// <param name="program">Its program.</param>
internal sealed class PrintBrowser(string program)
{
    /// <summary>The variable that names the program.</summary>
    public const string Variable = "TAMIS_BROWSER";

    private static readonly string[] Programs = ["chromium", "chromium-browser", "google-chrome", "chrome.exe", "msedge.exe"];
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);

    /// <summary>The browser that the variable names, or the first of the usual names on the path; null where there is none.</summary>
    /// <exception cref="InvalidOperationException">The variable names what is no program on this computer.</exception>
    public static PrintBrowser? OfThisComputer() => Find(Environment.GetEnvironmentVariable(Variable), Environment.GetEnvironmentVariable("PATH"));

    /// <summary>The browser that is named, by its file or by its name on the path, or else the first of the usual names there; null where there is none.</summary>
    /// <param name="named">What the variable says; may be empty.</param>
    /// <param name="path">The folders of programs.</param>
    /// <exception cref="InvalidOperationException">It is named, and is no program on this computer.</exception>
    public static PrintBrowser? Find(string? named, string? path)
    {
        if (named is not { Length: > 0 }) return OnPath(Programs) is { } usual ? new(usual) : null;
        return (File.Exists(named) ? Path.GetFullPath(named) : OnPath([named])) is { } file ? new(file) : throw NoProgram(named);

        string? OnPath(string[] names) => (path ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
            .SelectMany(folder => names.Select(name => Path.Combine(folder, name))).FirstOrDefault(File.Exists);
    }

    /// <summary>A page as PDF, in the size that the page itself says; null where the browser did not make it.</summary>
    /// <param name="page">The page, with all that it shows.</param>
    /// <exception cref="InvalidOperationException">The program cannot be started.</exception>
    public byte[]? Pdf(string page)
    {
        var folder = Directory.CreateTempSubdirectory("tamis-print-");
        try
        {
            var (from, to) = (Path.Combine(folder.FullName, "page.html"), Path.Combine(folder.FullName, "page.pdf"));
            File.WriteAllText(from, page);
            return Save(from, to) ? File.ReadAllBytes(to) : null;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private bool Save(string page, string pdf)
    {
        ProcessStartInfo start = new(program) { RedirectStandardError = true, RedirectStandardOutput = true };
        foreach (var argument in (string[])["--headless", "--disable-gpu", "--no-pdf-header-footer", $"--print-to-pdf={pdf}"]) start.ArgumentList.Add(argument);
        // Chromium refuses to run as the superuser with its sandbox on; the page is our own and asks for nothing.
        if (Environment.UserName == "root") start.ArgumentList.Add("--no-sandbox");
        start.ArgumentList.Add(new Uri(page).AbsoluteUri);
        using var browser = Started(start);
        var said = Task.WhenAll(browser.StandardError.ReadToEndAsync(), browser.StandardOutput.ReadToEndAsync());
        if (!browser.WaitForExit(Patience))
        {
            browser.Kill(entireProcessTree: true);
            return false;
        }
        said.Wait(Patience);
        return browser.ExitCode == 0 && File.Exists(pdf);
    }

    private Process Started(ProcessStartInfo start)
    {
        try
        {
            return Process.Start(start)!;
        }
        catch (Win32Exception)
        {
            throw NoProgram(program);
        }
    }

    private static InvalidOperationException NoProgram(string named) =>
        new($"'{named}' is no browser that this computer can start: let {Variable} name the program of Chromium, Chrome or Edge, or leave it empty, and the usual places are looked through.");
}
