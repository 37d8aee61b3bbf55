using CsCheck;
using Tamis.Desserts;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Tests.Labels;

public class NetQuantityTests
{
    // The shortfall never falls as the pack grows, and is never a greater share of a larger pack but for what rounding up to 0.1 g adds.
    [Fact]
    public void Shortfall_Union_GrowsWithThePackAndShrinksAsAShare()
    {
        var rules = NetQuantityRules.Of(LabelKit.Eu);
        Gen.Int[5, 9999].Sample(grams =>
        {
            var (less, more) = (rules.Shortfall(grams)!.Value.Grams, rules.Shortfall(grams + 1)!.Value.Grams);
            return less <= more && more / (grams + 1) <= less / grams + 0.1m / grams;
        });
    }

    [Fact]
    public void Shortfall_OutsideTheTable_IsNone() => Assert.Null(NetQuantityRules.Of(LabelKit.Eu).Shortfall(4));

    [Fact]
    public void Of_Loaf_ComparesTheWeighedPieceWithThePack()
    {
        var net = NetQuantity.Of(Dessert.Open(KitFolder.Data("desserts/travel-loaf")), "V1", "eu");

        Assert.Equal(9.6m, net.ShortfallGrams);
        Assert.Equal(1952 / 6.0, net.PieceGrams!.Value, 9);
        Assert.Empty(net.Problems);
    }

    [Theory]
    [InlineData("net_g,90,,\nportion_g,100,,\n", "more than the 90 g of the pack")]
    [InlineData("net_g,90,,\nportion_g,40,,\nportions,3,,\n", "3 portions of 40 g are 120 g")]
    [InlineData("net_g,120,,\npieces,1,,\n", "the mean must not be less")]
    public void Of_SheetsThatDoNotAgree_SayWhatToMend(string facts, string expected)
    {
        using TemporaryFolder folder = new();
        Directory.CreateDirectory(Path.Combine(folder.Path, "cake"));
        File.WriteAllText(Path.Combine(folder.Path, "cake", "formula.csv"), "component,line,way,step,T1\ncake,flour,,1,100\n");
        File.WriteAllText(Path.Combine(folder.Path, "cake", "dessert.csv"), "key,value,trial,notes\n" + facts);

        Assert.Contains(expected, Assert.Single(NetQuantity.Of(Dessert.Open(Path.Combine(folder.Path, "cake")), "T1", "eu").Problems), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_BandsThatDoNotJoin_AreNamed()
    {
        using RuleFolderCopy copy = new();
        copy.Change("eu", "net-quantity-errors.csv", "\n50,100,,4.5", "\n60,100,3,4.5");

        Assert.Equal(["from_g", "percent"], Assert.Throws<TableException>(() => NetQuantityRules.Of(copy.Load("eu"))).Problems.Select(problem => problem.Column).Order(StringComparer.Ordinal));
    }
}
