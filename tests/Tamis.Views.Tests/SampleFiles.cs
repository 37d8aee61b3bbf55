namespace Tamis.Views.Tests;

/// <summary>Writes the invented pages for a person to look at, where <c>TAMIS_SAMPLES</c> names a folder.</summary>
public class SampleFiles
{
    private static readonly string? Folder = Environment.GetEnvironmentVariable("TAMIS_SAMPLES");

    public static TheoryData<string> Names => [.. Samples.Pages.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Render_Sample_IsAWholePage(string name)
    {
        var text = PageShell.Render(Samples.Pages[name]);

        Assert.StartsWith("<!DOCTYPE html>\n", text, StringComparison.Ordinal);
        Assert.EndsWith("</html>\n", text, StringComparison.Ordinal);
        if (Folder is not null) File.WriteAllText(Path.Combine(Directory.CreateDirectory(Folder).FullName, name + ".html"), text);
    }

    [Fact]
    public void NotebookSetup_InASomebodyElsesPage_LeavesThatPageAlone()
    {
        // Every rule of the sheet stands under the kit's one class, or sets nothing but the names of roles.
        var setup = NotebookSetup.Html().Markup;
        var sheet = setup[(setup.IndexOf("<style>", StringComparison.Ordinal) + 7)..setup.IndexOf("</style>", StringComparison.Ordinal)];

        Assert.DoesNotContain("body {", sheet, StringComparison.Ordinal);
        Assert.DoesNotContain("@page", sheet, StringComparison.Ordinal);
        Assert.DoesNotContain("prefers-color-scheme", sheet, StringComparison.Ordinal);
        Assert.All(TopLevelSelectors(sheet), selector => Assert.True(selector == ":root" || selector.StartsWith(".tamis", StringComparison.Ordinal), selector));
        if (Folder is not null)
            File.WriteAllText(Path.Combine(Directory.CreateDirectory(Folder).FullName, "notebook.html"),
                $"<!DOCTYPE html><meta charset=utf-8><body style='font:20px monospace;background:#eee'><script>window.define=function(){{throw 'define was called'}};define.amd=1;window.require=define;</script><h2>A notebook</h2><div id=c>{setup}</div>"
                + $"<template id=t>{NotebookSetup.Framed(Samples.Differences.ToHtml() + Samples.Changes.ToHtml() + Samples.MadeOfBars.ToHtml()).Markup}</template><script>setTimeout(function(){{document.body.append(document.getElementById('t').content.cloneNode(true))}},300)</script>");
    }

    private static IEnumerable<string> TopLevelSelectors(string sheet)
    {
        var depth = 0;
        var at = 0;
        sheet = System.Text.RegularExpressions.Regex.Replace(sheet, @"/\*.*?\*/", "", System.Text.RegularExpressions.RegexOptions.Singleline);
        for (var i = 0; i < sheet.Length; i++)
        {
            if (sheet[i] == '{' && depth++ == 0) yield return sheet[at..i].Trim();
            if (sheet[i] == '}' && --depth == 0) at = i + 1;
        }
    }
}
