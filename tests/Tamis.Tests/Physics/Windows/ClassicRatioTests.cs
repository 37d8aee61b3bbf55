using Tamis.Desserts;
using Tamis.Physics;

namespace Tamis.Tests.Physics;

public class ClassicRatioTests
{
    private static readonly RatioIngredients Ingredients = RatioIngredients.Read(KitData.Composition);

    /// <summary>Every ratio; one with open parts at both their ends too.</summary>
    public static TheoryData<string, double> Ratios()
    {
        TheoryData<string, double> all = [];
        foreach (var ratio in ClassicRatio.All)
            foreach (var at in ratio.Parts.Any(part => !part.Parts.IsPoint) ? new[] { 0, 0.5, 1 } : [0.5]) all.Add(ratio.Name, at);
        return all;
    }

    // The ratios and their windows come from different texts; a ratio outside its own window would make one of them wrong.
    [Theory]
    [MemberData(nameof(Ratios))]
    public void CheckUp_EveryClassicRatio_LiesInsideItsOwnWindows(string name, double at)
    {
        var check = ClassicRatio.Named(name).CheckUp(Ingredients, at);

        Assert.Equal("", check.NoVerdict);
        Assert.NotEmpty(check.Inside);
        // The ratios leave the pinch of salt to the cook, and a predicted water activity that may as well lie inside decides nothing.
        Assert.Empty(check.Outside.Where(line => line.Window.Figure != "salt" && !(line.Window.Figure == "water activity" && !line.IsSure)).Select(line => line.InWords));
    }

    [Fact]
    public void All_NamesAndParts_AreKnown()
    {
        Assert.Equal(71, ClassicRatio.All.Count);
        Assert.Equal(ClassicRatio.All.Count, ClassicRatio.All.Select(ratio => ratio.Name).Distinct().Count());
        Assert.DoesNotContain(ClassicRatio.All.SelectMany(ratio => ratio.Parts), part => Ingredients.List.Find(part.Name) is null && Ingredients.RatioBehind(part.Name) is null);
    }

    // Ruhlman 2009: pie dough 3 : 2 : 1, choux 2 : 1 : 1 : 2.
    [Theory]
    [InlineData("pie dough", 900, "flour", 450)]
    [InlineData("choux", 600, "egg", 200)]
    public void Masses_OfATotal_FollowTheParts(string ratio, double total, string part, double grams) =>
        Assert.Equal(grams, ClassicRatio.Named(ratio).Masses(total).Single(each => each.Name == part).Grams, 1e-9);

    [Fact]
    public void Made_WithFinalWater_LeavesThatMuch()
    {
        var baked = ClassicRatio.Named("tuile").Made(Ingredients);

        Assert.Equal(2.25, baked.Made.Out.Per100Grams("WATER")!.Value, 1e-6);
    }
}
