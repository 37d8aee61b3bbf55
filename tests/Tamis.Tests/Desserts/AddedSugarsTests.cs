using Tamis.Composition;
using Tamis.Desserts;

namespace Tamis.Tests.Desserts;

public class AddedSugarsTests
{
    private static Dessert Loaf { get; } = Dessert.Open(Repository.Path("data", "desserts", "travel-loaf"));

    private static Content Of(string ingredient) => Loaf.Store.Ingredients.Find(ingredient)!.Profile!["SUGAD"];

    // 21 CFR 101.9(c)(6)(iii): sugars, syrups and honey are added sugars; what is naturally in milk and flour is not.
    [Theory]
    [InlineData("caster sugar"), InlineData("honey"), InlineData("glucose syrup")]
    public void Over_SugarSyrupAndHoney_CountAllTheirSugars(string ingredient) =>
        Assert.Equal(Loaf.Store.Ingredients.Find(ingredient)!.Profile!["SUGAR"].Per100Grams, Of(ingredient).Per100Grams);

    [Theory]
    [InlineData("whole milk"), InlineData("rye flour"), InlineData("lemon juice"), InlineData("butter")]
    public void Over_SingleFoodThatIsNoSugar_HasNone(string ingredient) => Assert.Equal((ContentState.AssumedZero, 0.0), (Of(ingredient).State, Of(ingredient).Per100Grams));

    [Fact]
    public void Over_MixtureThatStatesThem_KeepsItsOwnFigure() => Assert.Equal(54, Of("cocoa-flavoured chips").Per100Grams);

    // The list names sugar and the pack does not say how much: nobody can say.
    [Fact]
    public void Over_MixtureThatNamesASugar_StaysUnknown() => Assert.False(Of("dark chocolate 64 %").IsKnown);

    [Fact]
    public void Over_AnyIngredient_HasNoMoreThanItsSugars() => Assert.All(Loaf.Store.Ingredients.All.Where(each => each.Profile is { } profile && profile["SUGAD"].IsKnown && profile["SUGAR"].IsKnown),
        each => Assert.True(each.Profile!["SUGAD"].Per100Grams <= each.Profile["SUGAR"].Per100Grams + 1e-9, each.Name));

    // V1: sugar 180, honey 340, candied peel 250 g of 71 %, a slice of 40 g: the line is printed and no longer missing.
    [Fact]
    public void Panel_LoafInTheUnitedStates_DeclaresThem()
    {
        var panel = DessertPanels.Of(Loaf, "V1", "us");

        Assert.NotNull(panel.Line("added sugars").Value);
        Assert.True(panel.Line("added sugars").Value <= panel.Line("total sugars").Value);
        Assert.DoesNotContain(panel.Missing, figure => figure.Line.Key == "added sugars");
    }
}
