using System.Text.Json;
using Tamis.Desserts;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Tests.Labels;

public class PanelExportTests
{
    private static Dessert Loaf { get; } = Dessert.Open(Repository.Path("data", "desserts", "travel-loaf"));

    public static TheoryData<string> RuleSetNames => [.. RuleSets.NamesIn(LabelKit.Folder)];

    [Fact]
    public void Figures_EveryFigure_HasItsRawAndRoundedFormAndItsRule()
    {
        var figures = PanelExport.Figures(Loaf, "V1", "eu");

        var fat = figures.Single(figure => figure is { Figure: "fat", Basis: "per 100 g" });
        Assert.Equal((14.09, "14 g", 14m), (Math.Round(fat.Amount, 2), fat.Declared, fat.Rounded));
        Assert.Contains("nearest 1 g", fat.Rounding, StringComparison.Ordinal);
        Assert.Equal((11.2, 16.8), (fat.AcceptedLow, fat.AcceptedHigh));
        Assert.Equal(["per 100 g", "per portion (1 slice, 40 g)"], figures.Select(figure => figure.Basis).Distinct());
        Assert.Equal(fat.Amount * 0.4, figures.Single(figure => figure.Figure == "fat" && figure != fat).Amount, 1e-6);
        Assert.Equal(figures.Count, JsonDocument.Parse(PanelExport.ToJson(figures)).RootElement.GetArrayLength());
    }

    // What the short panel leaves off is computed all the same, and the row says what is printed in its place.
    [Fact]
    public void Figures_ShortPanel_SaysWhatIsLeftOffAndWhatIsSaidInItsPlace()
    {
        using TemporaryFolder folder = new();
        var sweet = Sweet(folder, "short");
        var left = PanelExport.Figures(sweet, "T1", "ca").Where(figure => figure.IsLeftOff).ToArray();

        Assert.Contains("cholesterol", left.Select(figure => figure.Figure));
        Assert.DoesNotContain("calories", left.Select(figure => figure.Figure));
        Assert.All(left, figure => Assert.True(figure.InItsPlace.Contains("Not a significant source of", StringComparison.Ordinal) && figure.InItsPlace.Contains("Source négligeable de", StringComparison.Ordinal) && figure.LeftOffSource.Contains("B.01.401(6)", StringComparison.Ordinal)));
        Assert.DoesNotContain(PanelExport.Figures(Sweet(folder, "full"), "T1", "ca"), figure => figure.IsLeftOff || figure.InItsPlace.Length > 0);
        Assert.Contains("is_left_off", PanelExport.ToTable(left).Columns);
    }

    [Fact]
    public void Figures_PanelFormIsNeither_NamesTheCell()
    {
        using TemporaryFolder folder = new();

        Assert.Equal("dessert.csv, row 3, column 'value': found 'shrt', expected one of: full, short, energy alone, energy + 4.", Assert.Single(Assert.Throws<TableException>(() => PanelExport.Figures(Sweet(folder, "shrt"), "T1", "us")).Problems).ToString());
    }

    private static Dessert Sweet(TemporaryFolder folder, string form)
    {
        Directory.CreateDirectory(Path.Combine(folder.Path, "store"));
        folder.Write("store/ingredients.csv", "ingredient,food,allergens\nsugar,SR28 19335,none\n");
        folder.Write("formula.csv", "component,line,T1\nsweet,sugar,100\n");
        folder.Write("dessert.csv", $"key,value\nportion_g,8\npanel_form,{form}\n");
        return Dessert.Open(folder.Path);
    }

    [Fact]
    public void ToTable_Figures_HasAColumnForEachAndNumbersWithAPoint()
    {
        var (columns, rows) = PanelExport.ToTable(PanelExport.Figures(Loaf, "V1", "eu"));

        Assert.Equal(["product", "trial", "rules", "rules_day", "basis", "figure", "term", "unit", "amount"], columns.Take(9));
        Assert.All(rows, row => Assert.Equal(columns.Count, row.Count));
        Assert.Contains(rows, row => row[columns.ToList().IndexOf("amount")].Contains('.', StringComparison.Ordinal));
    }

    // The Canadian table of daily values has another value of potassium from 2026 on; the day that was asked for comes before that of the sheet.
    [Fact]
    public void Figures_OfADay_CarryIt()
    {
        using TemporaryFolder folder = new();
        var sheets = Sweet(folder, "full");
        folder.Write("dessert.csv", "key,value\nportion_g,8\nrules_day,2026-02-01\n");
        var by = Dessert.Open(folder.Path);

        Assert.All(PanelExport.Figures(sheets, "T1", "ca"), figure => Assert.Null(figure.RulesDay));
        Assert.All(PanelExport.Figures(by, "T1", "ca"), figure => Assert.Equal(new DateOnly(2026, 2, 1), figure.RulesDay));
        Assert.Equal(3400, PanelExport.Figures(by, "T1", "ca").Single(figure => figure.Figure == "potassium").ReferenceValue);
        var earlier = PanelExport.Figures(by.ByRulesOf(new(2025, 12, 31)), "T1", "ca");
        Assert.Equal(4700, earlier.Single(figure => figure.Figure == "potassium").ReferenceValue);
        Assert.All(PanelExport.Working(by.ByRulesOf(new(2025, 12, 31)), "T1", "ca"), line => Assert.Equal(new DateOnly(2025, 12, 31), line.RulesDay));
        var (columns, rows) = PanelExport.ToTable(earlier);
        Assert.All(rows, row => Assert.Equal("2025-12-31", row[columns.ToList().IndexOf("rules_day")]));
        Assert.Contains("\"rulesDay\": \"2025-12-31\"", PanelExport.ToJson(earlier), StringComparison.Ordinal);
    }

    // Text that a spreadsheet would take for a formula is written so that it is none.
    [Fact]
    public void ToTable_TextLikeAFormula_IsWrittenAsText()
    {
        var (columns, rows) = PanelExport.ToTable([PanelExport.Figures(Loaf, "V1", "eu")[0] with { Product = "=1+1" }]);

        var text = System.Text.Encoding.UTF8.GetString(SheetWriter.Bytes(SheetDialect.Shipped, columns, rows));

        Assert.DoesNotContain("\n=1+1", text, StringComparison.Ordinal);
        Assert.Contains("'=1+1", text, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(RuleSetNames))]
    public void Working_EveryFigure_AddsUpToItsAmount(string rules)
    {
        var panel = DessertPanels.Of(Loaf, "V1", rules);
        var rows = PanelExport.Working(Loaf, "V1", rules);

        Assert.All(panel.Lines, line =>
        {
            var own = rows.Where(row => row.Figure == line.Key && row.Unit == line.Unit).ToArray();
            Assert.Equal(line.Amount.Known, own.Sum(row => row.Gives ?? 0) * own[0].BasisG / own[0].FinishedG, 1e-6 * Math.Max(1, line.Amount.Known));
            Assert.All(own, row => Assert.Contains("formula.csv", row.Cell, StringComparison.Ordinal));
        });
    }
}
