using Tamis.Composition;
using Tamis.Tests.Composition;
using Tamis.Verification;

namespace Tamis.Tests.Verification;

public class CompositionQuantitiesTests
{
    [Fact]
    public void FoodNutrient_AssumedZeroOfTheKit_IsUnknown()
    {
        Assert.Equal(ContentState.AssumedZero, ShippedTable.Table.Content("SR28 20078", "ALC").State);
        Assert.Equal("unknown", CompositionQuantities.All["food_nutrient_per_100g"](Inputs("food=SR28 20078;nutrient=ALC")).Text);
    }

    [Fact]
    public void Mixture_ALineThatIsNoFoodAndMass_IsRefused() =>
        Assert.Throws<FormatException>(() => CompositionQuantities.All["mixture_nutrient_per_100g"](Inputs("lines=SR28 01145;water_lost_g=0;nutrient=FAT")));

    private static CheckInputs Inputs(string text) => CheckInputs.Parse(text, "");
}
