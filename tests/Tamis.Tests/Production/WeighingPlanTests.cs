using Tamis.Production;

namespace Tamis.Tests.Production;

public class WeighingPlanTests
{
    private const string Formula = "component,line,way,step,T1\nbase,paste,,1,30 g\nbase,flour,,1,70 g\npaste,sugar,,1,100 g\npaste,egg yolk,,2,2 yolks\npaste,bowl,out,3,10 %\ntop,paste,,1,20 g\ntop,milk,,2,80 g\n";

    [Fact]
    public void For_ComponentInTwoPlaces_IsMadeInTheMassThatBothNeed()
    {
        var plan = WeighingPlan.For(Kitchen.Batch(Formula), 12, 4, _ => []);

        var paste = plan.Components.Single(component => component.Name == "paste");
        Assert.Equal(150, paste.TakenInGrams, 9);
        Assert.Equal(150, paste.ExpectedYieldGrams, 9);
        Assert.Equal(150 / (134.8 * 0.9), paste.Factor, 9);
        Assert.All(plan.Components.Where(component => component.Name != "paste"), component => Assert.Equal(3, component.Factor, 9));
    }

    [Fact]
    public void For_InnerComponents_StandBeforeThoseThatTakeThemIn() =>
        Assert.Equal(["paste", "base", "top"], WeighingPlan.For(Kitchen.Batch(Formula), 1, null, _ => []).Components.Select(component => component.Name));

    [Fact]
    public void For_Pieces_AreCountedAndWeighed()
    {
        var yolks = WeighingPlan.For(Kitchen.Batch("component,line,T1\ncream,egg yolk,2 yolks\n"), 3, 1, _ => []).Components[0].Steps[0].Lines[0];

        Assert.Equal((6, "yolk"), (yolks.Count, yolks.Piece));
        Assert.Equal(104.4, yolks.MassGrams, 9);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-2)]
    [InlineData(double.NaN)]
    public void For_NoPieces_IsRefused(double pieces) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => WeighingPlan.For(Kitchen.Batch(Formula), pieces, 4, _ => []));
}
