using CsCheck;
using Tamis.Costing;
using Tamis.Formulas;

namespace Tamis.Tests.Costing;

/// <summary>Money from purchase to plate to bin: what is bought is paid once, by what is left.</summary>
public class BatchCostTests
{
    private static readonly Dictionary<string, double?> PerKilogram = new(Names.Comparer) { ["flour"] = 1.2, ["butter"] = 8, ["sugar"] = 0, ["milk"] = 1.1, ["egg"] = 5, ["powder"] = null };

    [Fact]
    public void Cost_Egg_IsPaidWithItsShell()
    {
        // 88 g of egg are 100 g as bought at 5 a kilogram.
        var cost = CostOf("component,line,way,step,T1\nx,egg,,1,88 g\nx,bowl,out,1,20 %\n").Find("x")!;

        Assert.Equal(0.5, cost.Cost.Whole!.Value, 12);
        Assert.Equal(0.5 / 70.4, cost.PerGram.Whole!.Value, 12);
        Assert.Equal(100, cost.Lines[0].BoughtGrams, 9);
    }

    [Fact]
    public void Cost_UnknownPrice_IsNotTakenAsFree()
    {
        var cost = CostOf("component,line,way,step,T1\nx,flour,,1,75 g\nx,powder,,1,25 g\n").Find("x")!.Cost;

        Assert.Null(cost.Whole);
        Assert.Equal(0.75, cost.CoveredShare, 12);
        Assert.Equal(0.09, cost.Known, 12);
    }

    [Fact]
    public void Cost_PriceOfZero_IsKnown() => Assert.Equal(0, CostOf("component,line,way,step,T1\nx,sugar,,1,75 g\n").Find("x")!.Cost.Whole);

    [Fact]
    public void Working_NamesSheetRowAndColumn()
    {
        var steps = CostOf("component,line,way,step,T1\nx,egg,,1,88 g\n").Find("x")!.Working.Walk().Select(each => each.Step).ToArray();

        Assert.Contains(steps, step => step.Source.ToString() == "formula.csv, row 2, column T1" && step.Value == 88);
        Assert.Contains(steps, step => step.Source.Key == "prices.csv" && step.Source.Locator == "row 6, column price" && step.Value == 5);
        Assert.Contains(steps, step => step.Unit == "%" && step.Value == 88);
    }

    // What is left of the inner component, and what the outer takes, together pay for all that went in.
    [Fact]
    public void Money_IsConserved() => Gen.Select(Tenths(50, 900), Tenths(50, 900), Tenths(0, 30), Tenths(0, 30), Gen.Double[0.05, 0.95]).Sample((flour, butter, bowl, trim, share) =>
    {
        var innerGrams = (flour + butter) * (1 - bowl / 100);
        var text = FormattableString.Invariant($"component,line,way,step,T1\ninner,flour,,1,{flour} g\ninner,butter,,1,{butter} g\ninner,bowl,out,1,{bowl} %\nouter,inner,,1,{innerGrams * share} g\nouter,milk,,1,200 g\nouter,trim,out,2,{trim} %\n");
        var cost = CostOf(text);
        var (inner, outer) = (cost.Find("inner")!, cost.Find("outer")!);

        Near(inner.Cost.Known, inner.PerGram.Known * inner.Made.YieldGrams);
        Near(cost.Total.Known, outer.PerGram.Known * outer.Made.YieldGrams + inner.PerGram.Known * inner.Made.YieldGrams * (1 - share));
        Near(flour * share + butter * share + 200, outer.WeighedForAGram.Sum(each => each.Grams) * outer.Made.YieldGrams);
        Near(outer.PerGram.Known, outer.WeighedForAGram.Sum(each => each.Grams * each.Line.PerWeighedGram!.Value));
    });

    [Fact]
    public void Packs_MassAndMoneyAreConserved() => Gen.Select(Gen.Double[0, 5000], Gen.Double[1, 3000], Gen.Double[0, 90]).Sample((needed, pack, price) =>
    {
        var purchase = Purchase(needed, price, pack);

        Near(purchase.BoughtGrams!.Value, needed + purchase.LeftGrams!.Value);
        Near(purchase.PacksCost!.Value, purchase.UsedCost!.Value + purchase.LeftCost!.Value);
        Assert.InRange(purchase.LeftGrams.Value, 0, pack);
    });

    [Fact]
    public void Packs_WithoutPrice_AreNotFree()
    {
        Assert.Null(Purchase(100, null, 1000).PacksCost);
        Assert.Null(Purchase(100, null, 1000).UsedCost);
        Assert.Equal(0, Purchase(100, 0, null).PacksCost);
        Assert.Null(Purchase(100, 0, null).Packs);
    }

    [Theory]
    [InlineData(-1, 100)]
    [InlineData(10, 0)]
    [InlineData(10, 101)]
    public void BoughtGrams_NoSuchMassOrShare_IsRefused(double grams, double percent) => Assert.Throws<ArgumentOutOfRangeException>(() => EdibleYield.BoughtGrams(grams, percent));

    // As a sheet has them: a tenth of a gram or of a per cent.
    private static Gen<double> Tenths(int low, int high) => Gen.Int[low * 10, high * 10].Select(tenths => tenths / 10.0);

    private static PackPurchase Purchase(double needed, double? price, double? pack) =>
        new(new Ingredient { Name = "flour" }, needed, new(new("flour", price, pack, null, new("prices.csv", Evidence.Sheet)), false));

    private static BatchCost CostOf(string formula) => BatchCost.Of(Kitchen.Batch(formula),
        name => PerKilogram.TryGetValue(name, out var price) ? new(new(name, price, 1000, null, new("prices.csv", Evidence.Sheet, FormattableString.Invariant($"row {PerKilogram.Keys.ToList().IndexOf(name) + 2}, column price"))), false) : null, "EUR");

    private static void Near(double expected, double actual) => Assert.Equal(expected, actual, Math.Max(1e-9, Math.Abs(expected) * 1e-9));
}
