using Microsoft.Playwright;
using Tamis.App.Pages;
using Tamis.Notebooks;

namespace Tamis.App.Tests.Browser;

/// <summary>The pages of the clone's own notebooks, made once, and a browser to open them with.</summary>
public sealed class DemoPages : IAsyncLifetime
{
    private readonly ScratchFolder _scratch = new();
    private IPlaywright? _playwright;

    /// <summary>The folder of the pages.</summary>
    public string Folder => _scratch["pages"];

    /// <summary>The browser.</summary>
    public IBrowser Browser { get; private set; } = null!;

    /// <summary>The addresses of all pages.</summary>
    public IEnumerable<string> Addresses => Directory.EnumerateFiles(Folder, "*.html").Order(StringComparer.Ordinal).Select(path => new Uri(path).AbsoluteUri);

    public async Task InitializeAsync()
    {
        if (BrowserFactAttribute.Path is not { } program) return;
        var result = await new PagesRun(new(Path.Combine(CloneFolder.Find(), "notebooks"), Folder), new Silent()).RunAsync();
        Assert.Empty(result.Failed);
        _playwright = await Playwright.CreateAsync();
        Browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = program, Args = ["--no-sandbox"] });
    }

    public async Task DisposeAsync()
    {
        if (Browser is not null) await Browser.DisposeAsync();
        _playwright?.Dispose();
        _scratch.Dispose();
    }

    private sealed class Silent : IRunReport
    {
        public void Start(string notebook, int cells)
        {
        }

        public void Cell(string notebook, int cell)
        {
        }

        public void End(string notebook, CellFailure? failure)
        {
        }
    }
}
