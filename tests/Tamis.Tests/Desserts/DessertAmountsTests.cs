using Tamis.Desserts;
using Tamis.Tables;

namespace Tamis.Tests.Desserts;

public class DessertAmountsTests
{
    private static Dessert Tart => Dessert.Open(Path.Combine(KitFolder.Data("desserts"), "damson-tart"));

    [Fact]
    public void Of_TwelveTarts_MakesWhatThePieceWeighs()
    {
        var amounts = DessertAmounts.Of(Tart, "T10", 12);

        Assert.Equal(12 * Tart.PieceOf("T10")!.MassGrams!.Value, amounts.Amounts.Account.InPieces, 6);
        Assert.Equal(0, amounts.Amounts.Account.UnaccountedGrams, 6);
        Assert.Equal(amounts.Amounts.Find("bound crumble")!.Formula.LineGrams("rye paste") * amounts.Amounts.Find("bound crumble")!.FactorRatio
            + amounts.Amounts.Find("ganache")!.Formula.LineGrams("rye paste") * amounts.Amounts.Find("ganache")!.FactorRatio, amounts.Amounts.Find("rye paste")!.MadeGrams, 6);
    }

    [Fact]
    public void Of_TwoTarts_LeavesPasteOverWithItsAllergensAndWhereItCanGo()
    {
        var paste = DessertAmounts.Of(Tart, "T10", 2).LeftOvers.Single(left => left.Amount.Name == "rye paste");

        Assert.Equal(["almond", "rye"], paste.Contains);
        Assert.Equal((2160, 18), (paste.HoldHours, paste.HoldCelsius));
        Assert.Equal(["bound crumble", "ganache"], paste.TakenBy.Where(taker => taker.Dessert is null).Select(taker => taker.Component));
        Assert.Equal("the grinder needs 300 g", paste.Amount.WhyMore);
    }

    [Fact]
    public void Of_OtherSizes_TakesTheOtherMontageSheet()
    {
        var amounts = DessertAmounts.Of(Tart, "T10", 48, montageSheet: "montage-domes.csv");

        Assert.Equal(48 * Tart.PieceOf("T10", "montage-domes.csv")!.MassGrams!.Value, amounts.Amounts.Account.InPieces, 6);
        Assert.Contains(amounts.Remarks, remark => remark.StartsWith("shell", StringComparison.Ordinal));
        Assert.Equal(0, amounts.Amounts.Find("ganache")!.MadeGrams);
    }

    [Fact]
    public void From_Paste_MakesWholeTartsAndNoPaste()
    {
        var amounts = DessertAmounts.From(Tart, "T10", "rye paste", 400).Amounts;

        Assert.Equal(8, amounts.Pieces);
        Assert.InRange(amounts.Find("rye paste")!.LeftGrams, 0, 400.0 / 8);
        Assert.Equal(0, amounts.Find("rye paste")!.MadeGrams);
    }

    [Theory]
    [InlineData("montage-dome.csv", "montage-domes.csv")]
    [InlineData("../store/moulds.csv", "the file")]
    public void PieceOf_UnknownMontageSheet_IsNamed(string sheet, string expected) =>
        Assert.Contains(expected, Assert.Single(Kitchen.ProblemsOf(() => Tart.PieceOf("T10", sheet))).Expected, StringComparison.Ordinal);
}
