using System.Globalization;
using CsCheck;
using Tamis.Composition;

namespace Tamis.Views.Tests.Numbers;

public class FiguresTests
{
    private static readonly Figures Figures = Figures.English;

    [Theory]
    [InlineData(39, "39")]
    [InlineData(0.1, "0.1")]
    [InlineData(2273.5, "2\u202f273.5")]
    [InlineData(0.025 * 400, "10")]
    [InlineData(1.0 / 3, "0.333")]
    [InlineData(123456, "123\u202f456")]
    [InlineData(0, "0")]
    public void AsStated_AnyFigure_HasTheDigitsThatItWasStatedWith(double value, string expected) => Assert.Equal(expected, Figures.AsStated(value).Text);

    [Theory]
    [InlineData(4.04, "4.0\u202fg")]
    [InlineData(9.94, "9.9\u202fg")]
    [InlineData(9.96, "10\u202fg")]
    [InlineData(104.5, "105\u202fg")]
    [InlineData(1260, "1\u202f260\u202fg")]
    [InlineData(0.0, "0.0\u202fg")]
    public void Mass_Grams_HasOneDecimalUnderTenGramsAndNoneAbove(double grams, string expected) => Assert.Equal(expected, Figures.Mass(grams).Text);

    [Fact]
    public void Number_NotKnown_IsSaidAndNeverZero()
    {
        Assert.Equal("not known", Figures.Mass(null).Text);
        Assert.Equal("not known", Figures.Share(double.NaN).Text);
        Assert.Equal("not known", Figures.Kilojoules(double.PositiveInfinity).Text);
    }

    [Fact]
    public void Number_ByQuantity_HasItsDecimals()
    {
        Assert.Equal("17.2\u202f%", Figures.Share(0.1722).Text);
        Assert.Equal("0.92\u202f%", Figures.Dose(0.00917).Text);
        Assert.Equal("0.98", Figures.WaterActivity(0.9812).Text);
        Assert.Equal("\u221218\u202f°C", Figures.Celsius(-18).Text);
        Assert.Equal("1\u202f557\u202fkJ", Figures.Kilojoules(1557.4).Text);
        Assert.Equal("13 to 15\u202fmin", Figures.Minutes(Interval.Between(13, 15)));
        Assert.Equal("8\u202fmin", Figures.Minutes(Interval.At(8)));
        Assert.Equal("2\u202f:\u202f1\u202f:\u202f0.8\u202f:\u202f0.42", Figures.Ratio(2, 1, 0.8, 0.42));
    }

    [Theory]
    [InlineData(2.675, 2, "2.68")]
    [InlineData(-2.675, 2, "\u22122.68")]
    [InlineData(0.05, 1, "0.1")]
    [InlineData(-0.04, 1, "0.0")]
    [InlineData(1557, -1, "1\u202f560")]
    public void Number_Halves_AreRoundedAwayFromZeroAsWritten(double value, int decimals, string expected) => Assert.Equal(expected, Figures.Number(value, decimals).Text);

    [Theory]
    [InlineData(0.84, "+0.8")]
    [InlineData(-0.84, "\u22120.8")]
    [InlineData(0.04, "0.0")]
    [InlineData(-0.04, "0.0")]
    public void Difference_Sign_IsWrittenUnlessItPrintsAsZero(double value, string expected) => Assert.Equal(expected, Figures.Difference(value, 1).Text);

    [Theory]
    [InlineData(2.58, 1.13, 4.03, "2.6 (1.1 to 4.0)")]
    [InlineData(5.31, 4.81, 5.81, "5.3 (4.8 to 5.8)")]
    [InlineData(1557, 1490, 1620, "1\u202f560 (1\u202f490 to 1\u202f620)")]
    [InlineData(0.92, 0.903, 0.937, "0.920 (0.903 to 0.937)")]
    public void Estimate_Interval_IsShownToOneOrTwoSignificantDigits(double value, double low, double high, string expected) =>
        Assert.Equal(expected, Figures.Estimate(value, Interval.Between(low, high)).Text);

    [Fact]
    public void Estimate_WithoutInterval_ShowsNone()
    {
        var shown = Figures.Estimate(809.4, null, "g");

        Assert.False(shown.HasInterval);
        Assert.Equal("809\u202fg", shown.Text);
    }

    [Fact]
    public void Sum_PartlyKnown_IsALowerBoundInWords()
    {
        Assert.Equal("at least 2.3\u202fg", Figures.Sum(new Amount(2.31, 89, 100), 1, "g").Text);
        Assert.Equal("2.3\u202fg", Figures.Sum(new Amount(2.31, 100, 100), 1, "g").Text);
        Assert.Equal("not known", Figures.Sum(new Amount(0, 0, 100), 1, "g").Text);
    }

    [Fact]
    public void Content_EveryState_IsToldFromZero()
    {
        Source table = new("SR28", Evidence.Published);

        Assert.Equal("not known", Figures.Content(Content.Unknown, 1, "g").Text);
        Assert.Equal("trace", Figures.Content(new(ContentState.Trace, 0, null, table), 1, "g").Text);
        Assert.Equal("0\u202fg", Figures.Content(new(ContentState.Zero, 0, null, table), 1, "g").Text);
        Assert.Equal("under 0.1\u202fg", Figures.Content(Content.Below(0.1, table), 1, "g").Text);
        Assert.Equal("11.8\u202fg", Figures.Content(new(ContentState.Measured, 11.8, null, table), 1, "g").Text);
    }

    [Fact]
    public void Number_OtherLanguage_HasItsMarks()
    {
        var german = new Figures(new Language { Tag = "de", DecimalMark = ",", GroupMark = "." });

        Assert.Equal("1.557,3\u202fg", german.Number(1557.26, 1, "g").Text);
    }

    [Fact]
    public void Number_Anything_ReadsBackWithinHalfAUnitOfTheLastPlace() =>
        Gen.Select(Gen.Double[-1e6, 1e6], Gen.Int[0, 4]).Sample((value, decimals) =>
        {
            var shown = Figures.Number(value, decimals).Text.Replace("\u2212", "-", StringComparison.Ordinal).Replace("\u202f", "", StringComparison.Ordinal);
            Assert.InRange(double.Parse(shown, CultureInfo.InvariantCulture) - value, -0.5000001 * Math.Pow(10, -decimals), 0.5000001 * Math.Pow(10, -decimals));
            Assert.DoesNotContain('-', Figures.Number(value, decimals).Text);
        });
}
