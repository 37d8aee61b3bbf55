using Tamis.Desserts;
using Tamis.Tables;

namespace Tamis.Views.Tests.Desserts;

public sealed class ShowCostsTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("tamis-").FullName;

    private static Dessert Tart => Dessert.Open(Path.Combine(KitFolder.Data("desserts"), "damson-tart"));

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Costs_Demo_SaysPiecePortionAndWhereEachFigureStands()
    {
        var shown = Show.Costs(Tart, "T10");
        var text = shown.ToPlainText();

        Assert.Contains("cost 6.65" + Num.UnitSpace + "EUR, 0.83" + Num.UnitSpace + "EUR a portion", text, StringComparison.Ordinal);
        Assert.Contains("prices.csv, row 52, column price", text, StringComparison.Ordinal);
        Assert.Contains("dessert.csv, row 14, column value", text, StringComparison.Ordinal);
        Assert.Equal(shown.Markup, Show.Costs(Tart, "T10").Markup);
    }

    [Fact]
    public void Costs_WithoutPrices_SaysWhichSheetAndColumns() =>
        Assert.Contains("prices.csv", Show.Costs(Kitchen("ingredient\nflour\n", null), "T1").ToPlainText(), StringComparison.Ordinal);

    [Fact]
    public void Costs_OnePriceMissing_SaysAtLeastAndForWhichShare()
    {
        var text = Show.Costs(Kitchen("ingredient\nflour\n<b>herbs\n", "ingredient,supplier,pack,pack_g,price,currency,date\nflour,S1,sack,1000,2,EUR,2026-05-04\n"), "T1");

        Assert.Contains("at least 0.15", text.ToPlainText(), StringComparison.Ordinal);
        Assert.Contains("75" + Num.UnitSpace + "% of the mass", text.ToPlainText(), StringComparison.Ordinal);
        Assert.Contains("&lt;b&gt;herbs", text.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("<b>herbs", text.Markup, StringComparison.Ordinal);
        Assert.Contains("food cost", Show.Costs(Tart, "T10").ToPlainText(), StringComparison.Ordinal);
        Assert.DoesNotContain("food cost", text.ToPlainText(), StringComparison.Ordinal);
    }

    [Fact]
    public void Costs_NegativePrice_StopsWithTheCell()
    {
        var dessert = Kitchen("ingredient\nflour\n<b>herbs\n", "ingredient,supplier,pack,pack_g,price,currency,date\nflour,S1,sack,1000,-2,EUR,2026-05-04\n");

        Assert.Equal(("prices.csv", 2, "price"), Assert.Throws<TableException>(() => Show.Costs(dessert, "T1")).Problems.Select(each => (each.File, each.Row, each.Column)).Single());
    }

    [Fact]
    public void OneGramMore_Demo_NamesThePriceThatMovesMost() => Assert.Contains("dark chocolate 64 % moves a piece of T10 most", Show.OneGramMore(Tart, "T10").ToPlainText(), StringComparison.Ordinal);

    [Fact]
    public void CostHistory_Demo_DrawsTheCourse() => Assert.Contains("<svg ", Show.CostHistory(Tart, "T10").Markup, StringComparison.Ordinal);

    [Fact]
    public void Purchases_Demo_CountsWholePacks() => Assert.Contains("1 × box of 500 of 1 000", Show.Purchases(Tart, "T10", 12).ToPlainText().Replace('\u202f', ' '), StringComparison.Ordinal);

    [Fact]
    public void Substitutes_Demo_StartWhereTheMoneyLies() => Assert.Contains("dark chocolate 55 %", Show.Substitutes(Tart, "T10").ToPlainText(), StringComparison.Ordinal);

    [Fact]
    public void WithoutAllergen_Almond_NamesEveryLineAndNoAlmondInItsPlace()
    {
        var text = Show.WithoutAllergen(Tart, "T10", "almond").ToPlainText();

        Assert.Contains("ground almonds", text, StringComparison.Ordinal);
        Assert.Contains("look at the pack", text, StringComparison.Ordinal);
        Assert.Contains("holding peanut", Show.WithoutAllergen(Tart, "T10", "peanut").ToPlainText(), StringComparison.Ordinal);
    }

    private Dessert Kitchen(string ingredients, string? prices)
    {
        Directory.CreateDirectory(Path.Combine(_folder, "store"));
        File.WriteAllText(Path.Combine(_folder, "formula.csv"), "component,line,way,step,T1\nx,flour,,1,75 g\nx,<b>herbs,,1,25 g\n");
        File.WriteAllText(Path.Combine(_folder, "dessert.csv"), "key,value,trial,notes\npieces,1,,\n");
        File.WriteAllText(Path.Combine(_folder, "store", "ingredients.csv"), ingredients);
        if (prices is not null) File.WriteAllText(Path.Combine(_folder, "store", "prices.csv"), prices);
        return Dessert.Open(_folder);
    }
}
