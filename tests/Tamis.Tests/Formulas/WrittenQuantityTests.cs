using CsCheck;
using Tamis.Formulas;
using Tamis.Tables;

namespace Tamis.Tests.Formulas;

public class WrittenQuantityTests
{
    private static readonly Ingredient Yolk = new() { Name = "egg yolk", Piece = "yolk", PieceGrams = 17.4, DensityGramsPerMillilitre = 1.03 };

    private static WrittenQuantity Parse(string text, char decimalMark = '.') =>
        WrittenQuantity.TryParse(text, decimalMark, out var quantity, out var expected) && quantity is not null ? quantity : throw new FormatException(expected);

    private static string Refused(string text, char decimalMark = '.')
    {
        Assert.False(WrittenQuantity.TryParse(text, decimalMark, out var quantity, out var expected));
        Assert.Null(quantity);
        return Assert.IsType<string>(expected);
    }

    [Theory]
    [InlineData("250 g", QuantityKind.Mass, 250, 250, "g")]
    [InlineData("250g", QuantityKind.Mass, 250, 250, "g")]
    [InlineData("250", QuantityKind.Mass, 250, 250, "")]
    [InlineData("0", QuantityKind.Mass, 0, 0, "")]
    [InlineData("1.2 kg", QuantityKind.Mass, 1200, 1200, "kg")]
    [InlineData("1 200 g", QuantityKind.Mass, 1200, 1200, "g")]
    [InlineData("1,234.5 g", QuantityKind.Mass, 1234.5, 1234.5, "g")]
    [InlineData("20-25 g", QuantityKind.Mass, 20, 25, "g")]
    [InlineData("20 – 25 g", QuantityKind.Mass, 20, 25, "g")]
    [InlineData("20 to 25 g", QuantityKind.Mass, 20, 25, "g")]
    [InlineData("20 g to 25 g", QuantityKind.Mass, 20, 25, "g")]
    [InlineData("1/2-1 tsp", QuantityKind.Volume, 2.5, 5, "tsp")]
    [InlineData("1 tbsp", QuantityKind.Volume, 15, 15, "tbsp")]
    [InlineData("2 Cups", QuantityKind.Volume, 500, 500, "cup")]
    [InlineData("1/2 pod", QuantityKind.Pieces, 0.5, 0.5, "pod")]
    [InlineData("1 1/2 lemons", QuantityKind.Pieces, 1.5, 1.5, "lemon")]
    [InlineData("1½ lemons", QuantityKind.Pieces, 1.5, 1.5, "lemon")]
    [InlineData("½", QuantityKind.Pieces, 0.5, 0.5, "")]
    [InlineData("1 leaf", QuantityKind.Pieces, 1, 1, "leaf")]
    [InlineData("3 leaves", QuantityKind.Pieces, 3, 3, "leaf")]
    [InlineData("half a pod", QuantityKind.Pieces, 0.5, 0.5, "pod")]
    [InlineData("a pinch", QuantityKind.Pieces, 1, 1, "pinch")]
    [InlineData("2 pinches", QuantityKind.Pieces, 2, 2, "pinch")]
    [InlineData("3 mars", QuantityKind.Pieces, 3, 3, "mar")]
    [InlineData("1 apricot", QuantityKind.Pieces, 1, 1, "apricot")]
    [InlineData("12 %", QuantityKind.Share, 12, 12, "%")]
    [InlineData("12.00%", QuantityKind.Share, 12, 12, "%")]
    [InlineData("10 to 12 %", QuantityKind.Share, 10, 12, "%")]
    [InlineData("rest", QuantityKind.Rest, 0, 0, "")]
    public void TryParse_AsCooksWrite_Read(string text, QuantityKind kind, double low, double high, string unit)
    {
        var quantity = Parse(text);

        Assert.Equal((kind, low, high, unit), (quantity.Kind, quantity.Range.Low, quantity.Range.High, quantity.Unit));
        Assert.Equal(text, quantity.Text);
    }

    [Theory]
    [InlineData("8 % of rye flakes", 8, "rye flakes")]
    [InlineData("100 % of water", 100, "water")]
    [InlineData("5% of type-55 flour", 5, "type-55 flour")]
    public void TryParse_ShareOfLine_NamesTheLine(string text, double percent, string line)
    {
        var quantity = Parse(text);

        Assert.Equal((QuantityKind.ShareOf, percent, line), (quantity.Kind, quantity.Range.Low, quantity.Of));
    }

    [Theory]
    [InlineData("~20 g")]
    [InlineData("ca. 20 g")]
    [InlineData("ca 20 g")]
    [InlineData("about 20 g")]
    [InlineData("About 20g")]
    public void TryParse_Estimate_SaysAbout(string text)
    {
        var resolved = Parse(text).Resolve(Yolk);

        Assert.Equal(20, resolved?.MassGrams);
        Assert.StartsWith("about", resolved?.Assumption, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("08.Dec")]
    [InlineData("12-Aug")]
    [InlineData("08. Dez")]
    [InlineData("Dec-25")]
    [InlineData("08-déc")]
    [InlineData("08/12/2026")]
    [InlineData("2026-12-08")]
    public void TryParse_RangeTurnedDate_SaysWhatTheSpreadsheetDid(string text) => Assert.Contains("the spreadsheet made a date", Refused(text), StringComparison.Ordinal);

    [Theory]
    [InlineData("-5 g")]
    [InlineData("−5 g")]
    public void TryParse_Negative_PointsToTheOutRow(string text) => Assert.Contains("'out'", Refused(text), StringComparison.Ordinal);

    [Theory]
    [InlineData("")]
    [InlineData("some")]
    [InlineData("to taste")]
    [InlineData("12 %%")]
    [InlineData("120 %")]
    [InlineData("1/0 pod")]
    [InlineData("25-20 g")]
    [InlineData("20 g - 1 kg")]
    [InlineData("12 % rye")]
    [InlineData("1.2.3 g")]
    [InlineData("250 g!")]
    [InlineData("1/2/3 pod")]
    [InlineData("#REF!")]
    [InlineData("NaN g")]
    [InlineData("2 fl oz")]
    public void TryParse_NoQuantity_SaysWhatWasExpected(string text) => Assert.NotEmpty(Refused(text));

    [Theory]
    [InlineData("27,5 g", '.')]
    [InlineData("27.5 g", ',')]
    [InlineData("1.234 g", ',')]
    [InlineData("1,234 g", '.')]
    public void TryParse_OtherMark_RefusedNotMisread(string text, char decimalMark) => Assert.Contains("decimal", Refused(text, decimalMark), StringComparison.Ordinal);

    [Fact]
    public void Resolve_Pieces_MassAsBoughtTimesEdibleShare()
    {
        Ingredient egg = new() { Name = "egg", Piece = "egg", PieceGrams = 58, EdiblePercent = 88 };

        var resolved = Parse("3 eggs").Resolve(egg);

        Assert.Equal(153.12, resolved?.MassGrams ?? 0, 9);
        Assert.Equal("3 eggs of 58\u202fg, 88\u202f% of it used", resolved?.Assumption);
    }

    [Fact]
    public void Resolve_Yolks_SayWhatOneWeighs()
    {
        var resolved = Parse("2 yolks").Resolve(Yolk);

        Assert.Equal(34.8, resolved?.MassGrams ?? 0, 9);
        Assert.Equal("2 yolks of 17.4\u202fg", resolved?.Assumption);
    }

    [Fact]
    public void Resolve_Spoon_SaysVolumeAndDensity()
    {
        Ingredient syrup = new() { Name = "glucose syrup", DensityGramsPerMillilitre = 1.42 };

        var resolved = Parse("1/2 tbsp").Resolve(syrup);

        Assert.Equal(10.65, resolved?.MassGrams ?? 0, 9);
        Assert.Equal("1/2 tbsp = 7.5\u202fml at 1.42\u202fg/ml", resolved?.Assumption);
    }

    [Fact]
    public void Resolve_Pinch_SaysThatItIsCommonPractice()
    {
        var resolved = Parse("a pinch").Resolve(new Ingredient { Name = "salt" });

        Assert.Equal((0.3, 0.2, 0.5), (resolved?.MassGrams, resolved?.RangeGrams.Low, resolved?.RangeGrams.High));
        Assert.Contains("common practice, no source", resolved?.Assumption, StringComparison.Ordinal);
    }

    [Fact]
    public void Resolve_Range_CarriesItsEnds()
    {
        var resolved = Parse("20-25 g").Resolve(Yolk);

        Assert.Equal((22.5, 20, 25), (resolved?.MassGrams, resolved?.RangeGrams.Low, resolved?.RangeGrams.High));
        Assert.Equal("middle of 20 to 25\u202fg", resolved?.Assumption);
    }

    [Theory]
    [InlineData("2 pods")]
    [InlineData("1 tbsp")]
    public void Resolve_NothingToComputeWith_IsAGapAndNoMistake(string text)
    {
        Assert.Null(Parse(text).Resolve(new Ingredient { Name = "vanilla" }, out var gap));
        Assert.False(gap?.IsMistake);
    }

    [Fact]
    public void Resolve_MistypedUnit_GapNamesTheUnit()
    {
        Parse("12 gramms").Resolve(new Ingredient { Name = "salt" }, out var gap);

        Assert.Contains("'gram", gap?.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Resolve_OtherPieceWord_IsAMistakeThatNamesThePiece()
    {
        Assert.Null(Parse("3 eggs").Resolve(Yolk, out var gap));
        Assert.True(gap?.IsMistake);
        Assert.Contains("a number of yolk", gap?.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Resolve_BareFraction_CountsPieces()
    {
        var resolved = Parse("1/2").Resolve(new Ingredient { Name = "lemon", Piece = "lemon", PieceGrams = 110 });

        Assert.Equal(55, resolved?.MassGrams);
        Assert.Equal("1/2 lemon of 110\u202fg", resolved?.Assumption);
    }

    [Fact]
    public void TryParse_AnyGrams_SameUnderBothMarksOrRefused() =>
        Gen.Double[0, 1e6].Select(Gen.Bool, Gen.Bool).Sample((grams, writesComma, readsComma) =>
        {
            var text = NumberText.Write(grams, writesComma ? ',' : '.') + " g";
            return !WrittenQuantity.TryParse(text, readsComma ? ',' : '.', out var quantity, out _) || quantity!.Range.Low == grams;
        });
}
