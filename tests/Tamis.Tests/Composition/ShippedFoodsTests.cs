using System.Globalization;
using System.Text.RegularExpressions;
using Tamis.Composition;
using Tamis.Tables;

namespace Tamis.Tests.Composition;

public partial class ShippedFoodsTests
{
    private const double RoundingOfSixDigits = 2e-5;

    private static readonly CompositionTable Table = CompositionTable.Load(KitFolder.Data("composition"));

    private static IEnumerable<SheetRow> Contents { get; } = SheetFile.Read(Path.Combine(KitFolder.Data("composition"), "contents.csv")).Rows;

    [Fact]
    public void Table_HoldsThePastryFoodsAndNutrients()
    {
        Assert.True(Table.Foods.Count >= 280 && Table.Nutrients.Count >= 40, $"{Table.Foods.Count} foods, {Table.Nutrients.Count} nutrients");
        Assert.All(Table.Foods, food => Assert.True(Table.Profile(food.Id)["WATER"].IsKnown, food.Name));
    }

    [Fact]
    public void Estimates_AllSayHow() =>
        Assert.DoesNotContain(Contents, row => row["state"] is "estimated" or "assumed zero" && row["method"].Length == 0);

    [Fact]
    public void ByRecipe_EveryFigure_IsTheSumOfItsFoods()
    {
        var rows = Contents.Where(row => row["method"].StartsWith("by recipe: ", StringComparison.Ordinal)).ToArray();
        Assert.True(rows.Length > 300, $"{rows.Length} rows");
        Assert.All(rows, row =>
        {
            var parts = Part().Matches(row["method"]);
            Assert.Equal(100, parts.Sum(part => Number(part.Groups["percent"].Value)), 9);
            var sum = parts.Sum(part => Number(part.Groups["percent"].Value) / 100 * Content(part.Groups["food"].Value, row["tag"]));
            Assert.Equal(sum, Number(row["value"]), sum * RoundingOfSixDigits + 1e-9);
        });
    }

    [Fact]
    public void ByAnalogy_EveryFigure_IsThatOfTheLikeFood()
    {
        var rows = Contents.Where(row => row["method"].StartsWith("by analogy: as in ", StringComparison.Ordinal)).ToArray();
        Assert.True(rows.Length > 200, $"{rows.Length} rows");
        Assert.All(rows, row => Assert.Equal(Content(row["method"]["by analogy: as in ".Length..], row["tag"]), Number(row["value"]), 1e-9));
    }

    // CIQUAL states carbohydrate without fibre.
    private static double Content(string food, string tag) => Table.Content(food, tag) is { IsKnown: true } own ? own.Per100Grams
        : tag == "CHOCDF" ? Table.Content(food, "CHOAVLDF").Per100Grams + Table.Content(food, "FIBTG").Per100Grams : double.NaN;

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"(?<percent>[\d.]+) % (?<food>[A-Z0-9]+ \d+)")]
    private static partial Regex Part();

    [Fact]
    public void DensityOf_Milk_IsThatOfItsQuart()
    {
        // SR28 01078, 1 quart = 976 g; a quart of the United States is 946.353 ml (NIST Handbook 44, from memory).
        var milk = Table.DensityOf("SR28 01078")!;
        Assert.Equal(1.0313, milk.GramsPerMillilitre, 4);
        Assert.True(milk.Range.Contains(976 / 946.353) && milk.Range.Width < 0.0011);
        Assert.Null(Table.DensityOf("TAMIS 22"));
    }
}
