using AngleSharp.Html.Parser;
using Tamis.Composition;

namespace Tamis.Views.Tests.Desserts;

public sealed class ShowAuditTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("tamis-audit-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Audit_ShippedTable_SaysThatNothingIsOpen()
    {
        var text = new HtmlParser().ParseDocument(Show.Audit(CompositionTable.Load(KitFolder.Data("composition"))).Markup).Body!.TextContent;

        Assert.Contains("No finding is open.", text, StringComparison.Ordinal);
        Assert.Contains("findings that were looked up", text, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Audit_AFaultInAHostileTable_IsShownFirstAndEscaped()
    {
        const string hostile = "<img src=x onerror=alert(1)>";
        File.WriteAllText(Path.Combine(_folder, "sources.csv"), "key,evidence,title\nlab,published,Our laboratory\n");
        File.WriteAllText(Path.Combine(_folder, "nutrients.csv"), "tag,word,unit\nFAT,fat,g\nFASAT,saturates,g\n");
        File.WriteAllText(Path.Combine(_folder, "foods.csv"), $"food,name,group,source\nLAB 1,{hostile},{hostile},lab\n");
        File.WriteAllText(Path.Combine(_folder, "contents.csv"), "food,tag,state,value,source\nLAB 1,FAT,,3,lab\nLAB 1,FASAT,,30,lab\n");

        var page = new HtmlParser().ParseDocument(Show.Audit(CompositionTable.Load(_folder)).Markup);

        Assert.Empty(page.QuerySelectorAll("img"));
        Assert.Contains("1 figure to look up: 1 cannot be so", page.QuerySelector("p.lead")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("at most 3.02\u202fg", page.QuerySelector("tbody")!.TextContent, StringComparison.Ordinal);
    }
}
