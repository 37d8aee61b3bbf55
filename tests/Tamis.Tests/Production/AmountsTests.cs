using CsCheck;
using Tamis.Formulas;
using Tamis.Production;

namespace Tamis.Tests.Production;

public class AmountsTests
{
    // Base and top both take paste; 4 pieces of 25 g of base and 25 g of top.
    private const string Formula = "component,line,way,step,T1\nbase,paste,,1,30 g\nbase,flour,,1,70 g\npaste,sugar,,1,100 g\npaste,egg yolk,,2,2 yolks\npaste,bowl,out,3,10 %\ntop,paste,,1,20 g\ntop,milk,,2,80 g\ntop,water,out,2,10 g\n";

    private static readonly Source AnySource = new("equipment.csv", Evidence.Sheet, "row 2");

    private static AmountsRequest Request(int? pieces = 12) => new()
    {
        Batch = Kitchen.Batch(Formula),
        Pieces = pieces,
        PieceGrams = name => name switch { "base" => 25, "top" => 22.5, _ => 0 },
    };

    [Fact]
    public void Of_ComponentInTwoPlaces_AddsUp()
    {
        var amounts = Amounts.Of(Request());

        Assert.Equal((3.0, 1), (amounts.Find("base")!.FactorRatio, amounts.Find("base")!.Makes));
        Assert.Equal(150, amounts.Find("paste")!.InOthersGrams, 9);
        Assert.Equal(150, amounts.Find("paste")!.MadeGrams, 9);
        Assert.All(amounts.Components, component => Assert.Equal(0, component.LeftGrams, 9));
    }

    [Fact]
    public void Of_Reserve_IsMadeOfPiecesAndOfWhatGoesIntoThem()
    {
        var amounts = Amounts.Of(Request() with { ReserveShare = 0.1 });

        Assert.Equal(330, amounts.Find("base")!.MadeGrams, 9);
        Assert.Equal(165, amounts.Find("paste")!.MadeGrams, 9);
        Assert.Equal(30, amounts.Find("base")!.LeftGrams, 9);
    }

    [Fact]
    public void Of_BladeThatNeedsMore_IsMetAndTheRestIsLeftOver()
    {
        var amounts = Amounts.Of(Request() with { LimitsOf = name => name == "paste" ? [new("grinder", 2, 300, null, AnySource)] : [] });

        var paste = amounts.Find("paste")!;
        Assert.Equal(270, paste.MadeGrams, 9);
        Assert.Equal(120, paste.LeftGrams, 9);
        Assert.Equal(("the grinder needs 300 g", AnySource), (paste.WhyMore, paste.WhyOrigin));
    }

    [Fact]
    public void Of_BowlThatHoldsLess_ForcesFewestMakes()
    {
        var amounts = Amounts.Of(Request() with { LimitsOf = name => name == "top" ? [new("bowl", 2, null, 110, AnySource)] : [] });

        // 300 g in the pot at step 2, 110 g in a bowl.
        Assert.Equal(3, amounts.Find("top")!.Makes);
        Assert.Equal("the bowl holds 110 g", amounts.Find("top")!.WhySeveral);
        Assert.Equal(100, amounts.Find("top")!.Weighed.Sum(line => line.ExactGrams), 9);
    }

    [Fact]
    public void Of_LeastAndMostInSeveralMakes_NeedsWholeNumbers()
    {
        // 240 g wanted; a make is 100 to 110 g: two makes hold at most 220, three need 300.
        var amounts = Amounts.Of(Request(pieces: 4) with
        {
            PieceGrams = name => name == "top" ? 54 : 0,
            LimitsOf = name => name == "top" ? [new("bowl", 2, 100, 110, AnySource)] : [],
        });

        Assert.Equal((3, 3.0), (amounts.Find("top")!.Makes, amounts.Find("top")!.FactorRatio));
    }

    [Fact]
    public void Of_LessThanOneEgg_TakesAWholeOne()
    {
        var paste = Amounts.Of(Request(pieces: 1)).Find("paste")!;

        Assert.Equal((0.5, "one whole yolk"), (paste.FactorRatio, paste.WhyMore));
        Assert.Equal(1, paste.Weighed[1].Count);
    }

    [Fact]
    public void Of_LimitsThatExcludeEachOther_AreNamed()
    {
        var impossible = Assert.Throws<OrderException>(() => Amounts.Of(Request() with
        {
            LimitsOf = name => name == "paste" ? [new("grinder", 2, 500, null, AnySource), new("cup", 2, null, 200, AnySource)] : [],
        }));

        Assert.Contains("paste: the grinder needs 500 g, which is more than the cup holds (200 g)", impossible.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_Reverse_MakesAsManyPiecesAsThereIsPasteFor()
    {
        // A piece takes 7.5 g of paste in its base and 5 g in its top.
        var amounts = Amounts.Of(Request(pieces: null) with { Have = new Dictionary<string, double> { ["paste"] = 400 } });

        Assert.Equal(32, amounts.Pieces);
        Assert.Equal(0, amounts.Find("paste")!.LeftGrams, 9);
        Assert.Equal(0, amounts.Find("paste")!.MadeGrams);
        Assert.Equal(31, Amounts.Of(Request(pieces: null) with { Have = new Dictionary<string, double> { ["paste"] = 399 } }).Pieces);
    }

    [Fact]
    public void Of_WhatIsThere_IsToppedUpForAsManyPiecesAsAreWanted() =>
        Assert.Equal(100, Amounts.Of(Request() with { Have = new Dictionary<string, double> { ["Paste"] = 50 } }).Find("paste")!.MadeGrams, 9);

    // The sentence stands on the paper of a cook: it is all of the message, and no name of the code.
    [Fact]
    public void Of_UnknownMassInAPiece_IsRefusedByName() =>
        Assert.Equal("Nobody knows what top weighs in a piece: it needs a density in components.csv or a mass in montage.csv.", Assert.Throws<OrderException>(() => Amounts.Of(Request() with { PieceGrams = name => name == "top" ? null : 1 })).Message);

    [Fact]
    public void Of_ReverseFromUnknownComponent_NamesThoseThereAre() =>
        Assert.Contains("base", Assert.Throws<ArgumentException>(() => Amounts.Of(Request(pieces: null) with { Have = new Dictionary<string, double> { ["glaze"] = 400 } })).Message, StringComparison.Ordinal);

    [Fact]
    public void Of_Scales_RoundEachMassToTheStepOfTheFinestThatBearsIt()
    {
        var amounts = Amounts.Of(Request(pieces: 12 * 7) with { Scales = [(500, 0.1), (6000, 1)] });

        var flour = amounts.Find("base")!.Weighed[1];
        Assert.Equal((1470, 1470), (flour.ExactGrams, flour.WeighedGrams));
        Assert.All(amounts.Components.SelectMany(component => component.Weighed), line =>
            Assert.Equal(0, Math.IEEERemainder(line.WeighedGrams, line.ExactGrams <= 500 ? 0.1 : 1), 6));
    }

    [Fact]
    public void Account_AnyPiecesReserveAndLimits_ConservesMassFromPurchaseToPlateAndBin() =>
        Gen.Select(Gen.Int[1, 500], Gen.Double[0, 0.5], Gen.Double[70, 2000], Gen.Double[10, 80], Gen.Bool).Sample((pieces, reserve, least, grams, scaled) =>
        {
            var amounts = Amounts.Of(Request(pieces) with
            {
                ReserveShare = reserve,
                PieceGrams = name => name switch { "base" => grams, "top" => 22.5, "paste" => 3, _ => 0 },
                LimitsOf = name => name == "paste" ? [new("grinder", 2, least, least * 3, AnySource)] : [],
                Scales = scaled ? [(500, 0.1), (6000, 1)] : [],
            });
            Assert.Equal(0, amounts.Account.UnaccountedGrams, 6);
            Assert.Equal(pieces * (grams + 22.5 + 3), amounts.Account.InPieces, 6);
            Assert.All(amounts.Components, component => Assert.True(component.MadeGrams >= component.InPiecesGrams + component.InOthersGrams + component.ReserveGrams - 1e-6));
            Assert.True(amounts.Account.LeftOfPieces >= -1e-9);
        }, iter: 100);
}
