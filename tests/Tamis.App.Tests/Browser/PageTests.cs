using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Tamis.App.Tests.Browser;

/// <summary>The demo's pages in a real browser with its network off.</summary>
public sealed class PageTests(DemoPages pages) : IClassFixture<DemoPages>
{
    private static readonly (int Width, ColorScheme Scheme)[] Looks =
        [(1280, ColorScheme.Light), (1280, ColorScheme.Dark), (390, ColorScheme.Light), (390, ColorScheme.Dark)];

    [BrowserFact]
    public async Task Page_AnyLook_HasNoErrorNoRequestNoEmptyChartAndNoSidewaysScroll()
    {
        List<string> faults = [];
        var charts = 0;
        foreach (var (width, scheme) in Looks)
        {
            await using var context = await pages.Browser.NewContextAsync(new() { ViewportSize = new() { Width = width, Height = 900 }, ColorScheme = scheme, Offline = true });
            foreach (var address in pages.Addresses)
            {
                var where = $"{Path.GetFileName(address)} at {width} {scheme}";
                var page = await context.NewPageAsync();
                page.PageError += (_, error) => faults.Add($"{where}: {error}");
                page.Console += (_, message) => { if (message.Type is "error" or "warning") faults.Add($"{where}: {message.Text}"); };
                page.Request += (_, request) => { if (request.Url != address && !request.Url.StartsWith("data:", StringComparison.Ordinal) && !IsBeside(request.Url)) faults.Add($"{where} asks for {request.Url}"); };
                await page.GotoAsync(address, new() { WaitUntil = WaitUntilState.Load });
                var live = await page.Locator(".chart .live").CountAsync();
                charts += live;
                for (var i = 0; i < live; i++)
                {
                    // Charts may be drawn when they come into view.
                    await page.Locator(".chart").Nth(i).ScrollIntoViewIfNeededAsync();
                    if (!await Appears(page.Locator(".chart").Nth(i).Locator(".live .main-svg").First)) faults.Add($"{where}: chart {i + 1} is empty");
                }
                if (await page.EvaluateAsync<bool>("document.documentElement.scrollWidth > document.documentElement.clientWidth + 1")) faults.Add($"{where} scrolls sideways");
                await page.CloseAsync();
            }
        }
        Assert.Empty(faults);
        Assert.NotEqual(0, charts);
    }

    // axe-core's own grades: deque.com/axe, impact "serious" and "critical".
    [BrowserFact]
    public async Task Page_AllDetailsOpen_HasNoSeriousAxeFinding()
    {
        List<string> faults = [];
        // Contrast does not depend on the width nor the order of headings on the colours: two looks hold both widths and both schemes.
        foreach (var (width, scheme) in new[] { Looks[0], Looks[^1] })
        {
            await using var context = await pages.Browser.NewContextAsync(new() { ViewportSize = new() { Width = width, Height = 900 }, ColorScheme = scheme, Offline = true });
            var page = await context.NewPageAsync();
            // Weighing sheets differ in their figures alone: every one is looked at once, one of them twice.
            foreach (var address in (width, scheme) == Looks[0] ? pages.Addresses : pages.Addresses.DistinctBy(KindOf))
            {
                await page.GotoAsync(address);
                await page.EvaluateAsync("document.querySelectorAll('details').forEach(each => each.open = true)");
                var found = await page.RunAxe(new AxeRunOptions { ResultTypes = [ResultType.Violations] });
                faults.AddRange(found.Violations.Where(violation => violation.Impact is "serious" or "critical")
                    .Select(violation => $"{Path.GetFileName(address)} at {width} {scheme}: {violation.Id}, {violation.Nodes.Length} times, {violation.Nodes[0].Html[..Math.Min(160, violation.Nodes[0].Html.Length)]}"));
            }
        }
        Assert.Empty(faults);
    }

    [BrowserFact]
    public async Task Page_WithoutScripts_ShowsItsTextAndItsStills()
    {
        await using var context = await pages.Browser.NewContextAsync(new() { JavaScriptEnabled = false, Offline = true });
        var page = await context.NewPageAsync();
        foreach (var address in pages.Addresses)
        {
            await page.GotoAsync(address);
            Assert.True(await page.Locator("h1").First.IsVisibleAsync(), $"{Path.GetFileName(address)} shows no heading");
            foreach (var still in await page.Locator(".chart:not(details:not([open]) *) .still").AllAsync())
                Assert.True(await still.IsVisibleAsync(), $"{Path.GetFileName(address)} hides a still");
        }
    }

    [BrowserFact]
    public async Task Page_OnPaper_BecomesAPdf()
    {
        await using var context = await pages.Browser.NewContextAsync(new() { Offline = true });
        var page = await context.NewPageAsync();
        foreach (var address in pages.Addresses)
        {
            await page.GotoAsync(address);
            var pdf = await page.PdfAsync(new() { PreferCSSPageSize = true, Format = "A4" });
            Assert.True(pdf.AsSpan().StartsWith("%PDF"u8), $"{Path.GetFileName(address)} does not print");
            // Page objects, not the tree that holds them: ISO 32000-1, 7.7.3.
            var sheets = System.Text.RegularExpressions.Regex.Count(System.Text.Encoding.Latin1.GetString(pdf), @"/Type\s*/Page\b(?!s)");
            if (Path.GetFileName(address).StartsWith("weighing-", StringComparison.Ordinal)) Assert.InRange(sheets, 1, 4);
        }
    }

    private static string KindOf(string address) => Path.GetFileName(address) is var name && name.StartsWith("weighing-", StringComparison.Ordinal) ? "weighing sheet" : name;

    private bool IsBeside(string address) => address.StartsWith(new Uri(pages.Folder + "/").AbsoluteUri, StringComparison.Ordinal);

    private static async Task<bool> Appears(ILocator part)
    {
        try
        {
            await part.WaitForAsync(new() { State = WaitForSelectorState.Visible, Timeout = 10_000 });
            return true;
        }
        catch (TimeoutException)
        {
            return false;
        }
    }
}
