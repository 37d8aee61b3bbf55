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

    // As parts of a page the sheets have no title of their own, and say the same as on paper.
    [Fact]
    public void Paper_Demo_StandsUnderTheHeadingsOfThePage()
    {
        Html[] parts = [Show.ShoppingList(Tart, "T10"), Show.HaveReady(Tart, "T10"), Show.BatchSheet(Tart, "T10"), Show.BoxLabels(Tart, "T10"), Show.OnePageSpecification(Tart, "T10")];

        Assert.All(parts, part => Assert.DoesNotContain("<h1", part.Markup, StringComparison.Ordinal));
        Assert.Contains("12 pieces of T10", parts[0].ToPlainText(), StringComparison.Ordinal);
        Assert.Contains("ring 160x20", parts[1].ToPlainText(), StringComparison.Ordinal);
        Assert.Contains("hot sugar", parts[2].Markup, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("Keeps 30 days", parts[3].ToPlainText(), StringComparison.Ordinal);
        Assert.Contains("Putting together", parts[4].ToPlainText(), StringComparison.Ordinal);
    }

    [Fact]
    public void HaveReady_FewerMouldsThanPieces_SaysInHowManyRounds() =>
        Assert.Contains("14 × ring 160x20, in 2 rounds", Show.HaveReady(Tart, "T10", 24).ToPlainText(), StringComparison.Ordinal);

    [Fact]
    public void ShoppingList_WithoutAMontage_SaysWhatIsMissing() =>
        Assert.Contains("montage.csv", Show.ShoppingList(Kitchen("ingredient\nflour\n", null, pieces: false), "T1").ToPlainText(), StringComparison.Ordinal);

    [Fact]
    public void OutOfSeason_DemoOrderOfNovember_NamesTheDamsonsAndTheirMonths()
    {
        var text = Show.OutOfSeason(Tart, "T10").ToPlainText();

        Assert.Contains("In November 1 line of T10 is not fresh", text, StringComparison.Ordinal);
        Assert.Contains("September to October", text, StringComparison.Ordinal);
        Assert.Contains("common practice, no source", text, StringComparison.Ordinal);
        Assert.DoesNotContain("lemon zest", text, StringComparison.Ordinal);
        Assert.Contains("Nothing of T10", Show.OutOfSeason(Tart, "T10", 9).ToPlainText(), StringComparison.Ordinal);
    }

    [Fact]
    public void Substitutes_Demo_SaysDoseLabelWordAndSource()
    {
        var text = Show.Substitutes(Tart, "T10", "gel", "caster sugar").ToPlainText();

        Assert.Contains("On the list of ingredients “sugar” becomes “honey”", text, StringComparison.Ordinal);
        Assert.Contains("for a gram: as sweet", text, StringComparison.Ordinal);
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

    private Dessert Kitchen(string ingredients, string? prices, bool pieces = true)
    {
        Directory.CreateDirectory(Path.Combine(_folder, "store"));
        File.WriteAllText(Path.Combine(_folder, "formula.csv"), "component,line,way,step,T1\nx,flour,,1,75 g\nx,<b>herbs,,1,25 g\n");
        File.WriteAllText(Path.Combine(_folder, "dessert.csv"), $"key,value,trial,notes\n{(pieces ? "pieces,1,,\n" : "")}");
        File.WriteAllText(Path.Combine(_folder, "store", "ingredients.csv"), ingredients);
        if (prices is not null) File.WriteAllText(Path.Combine(_folder, "store", "prices.csv"), prices);
        return Dessert.Open(_folder);
    }
}
