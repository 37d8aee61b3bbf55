using System.Globalization;
using Tamis.Composition;
using Tamis.Tables;
using Tamis.Tests.Composition;
using Tamis.Verification;

namespace Tamis.Tests.Verification;

public class CompositionQuantitiesTests
{
    private static readonly IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> Quantities = CompositionQuantities.Of(ShippedTable.Table);

    // Each row names its source: USDA Standard Reference release 28, sums computed from it, Anses CIQUAL 2020.
    [Fact]
    public void Of_EveryPublishedRow_IsMetWithinItsTolerance()
    {
        var rows = SheetFile.Read(Repository.Path("data", "published", "composition.csv")).Rows;

        Assert.True(rows.Count >= 174);
        Assert.Empty(rows.Where(row => !IsMet(row)).Select(row => $"row {row.Number}: {row["inputs"]} is {Compute(row)}, expected {row["expected"]}"));
    }

    [Fact]
    public void FoodNutrient_AssumedZeroOfTheKit_IsUnknown()
    {
        Assert.Equal(ContentState.AssumedZero, ShippedTable.Table.Content("SR28 20078", "ALC").State);
        Assert.Equal("unknown", Quantities["food_nutrient_per_100g"](Inputs("food=SR28 20078;nutrient=ALC")).Text);
    }

    [Fact]
    public void Mixture_ALineThatIsNoFoodAndMass_IsRefused() =>
        Assert.Throws<FormatException>(() => Quantities["mixture_nutrient_per_100g"](Inputs("lines=SR28 01145;water_lost_g=0;nutrient=FAT")));

    private static bool IsMet(SheetRow row)
    {
        var value = Compute(row);
        return value.Number is { } number
            ? Math.Abs(number - Number(row["expected"])) <= Number(row["tolerance"])
            : row["expected"].Split('|', StringSplitOptions.TrimEntries).Contains(value.Text);
    }

    private static CheckValue Compute(SheetRow row) => Quantities[row["quantity"]](Inputs(row["inputs"]));

    private static CheckInputs Inputs(string text) => new(text.Split(';').Select(part => part.Split('=', 2)).ToDictionary(part => part[0], part => part[1]), "");

    private static double Number(string text) => double.TryParse(text, CultureInfo.InvariantCulture, out var number) ? number : double.NaN;
}
