namespace Tamis.Views.Tests;

/// <summary>Writes the invented pages for a person to look at, where <c>TAMIS_SAMPLES</c> names a folder.</summary>
public class SampleFiles
{
    [Fact]
    public void Samples_AreWholePages()
    {
        var folder = Environment.GetEnvironmentVariable("TAMIS_SAMPLES");
        foreach (var (name, page) in ((string, PageModel)[])[("index", Samples.Index), ("chef", Samples.Chef), ("label", Samples.Label), ("sheet", Samples.Sheet)])
        {
            var text = PageShell.Render(page);
            Assert.StartsWith("<!DOCTYPE html>\n", text, StringComparison.Ordinal);
            Assert.EndsWith("</html>\n", text, StringComparison.Ordinal);
            if (folder is not null) File.WriteAllText(Path.Combine(Directory.CreateDirectory(folder).FullName, name + ".html"), text);
        }
    }
}
