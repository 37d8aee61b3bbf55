using CsCheck;
using Tamis.Physics;

namespace Tamis.Tests.Physics;

public class SugarTests
{
    private static readonly Gen<double> Percent = Gen.Double[1, 79];

    [Fact]
    public void PercentFromDensity_AndBack_IsTheSame() => Percent.Sample(percent => Near(SucroseSolution.PercentFromDensity(SucroseSolution.Density(percent).Value), percent, 1e-9));

    [Fact]
    public void Brix_OfItsRefractiveIndex_IsTheSame() => Percent.Sample(percent => Near(SucroseSolution.BrixFromRefractiveIndex(SucroseSolution.RefractiveIndex(percent).Value).Value, percent, 1e-6));

    [Fact]
    public void PercentFromBaume_AndBack_IsTheSame() => Percent.Sample(percent => Near(SucroseSolution.PercentFromBaume(SucroseSolution.BaumeOf(percent).Value), percent, 1e-9));

    [Fact]
    public void Boiling_OfStrongerSyrup_IsHotterAndTheWayBackLeadsHome() => Gen.Select(Gen.Double[21, 95], Gen.Double[0.1, 3], Gen.Double[60, 105]).Sample((percent, more, pressure) =>
        Boiling.OfSucroseByTable(percent + more).Value > Boiling.OfSucroseByTable(percent).Value
        && Near(Boiling.PercentByTable(Boiling.OfSucroseByTable(percent).Value), percent, 1e-6)
        && (percent > 85 || Boiling.OfSucrose(percent + more, pressure).Value > Boiling.OfSucrose(percent, pressure).Value
            && Near(Boiling.PercentByNorrish(Boiling.OfSucrose(percent, pressure).Value, pressure), percent, 1e-6)));

    // "30 °Bé" is about 55 Brix: a confectionery textbook's rule.
    [Fact]
    public void PercentFromBaume_ThirtyDegrees_IsAboutFiftyFiveBrix() => Assert.Equal(55, SucroseSolution.PercentFromBaume(30), 0.4);

    // 1000 g of sucrose with 350 g of water: 100 g leave to 80 %, 238.9 g to 90 % (by the mass balance).
    [Theory]
    [InlineData(80, 100)]
    [InlineData(90, 238.889)]
    [InlineData(70, -78.571)]
    public void WaterToDriveOff_ToAConcentration_FollowsTheMassBalance(double percent, double expected) =>
        Assert.Equal(expected, CookingDown.WaterToDriveOffGrams(1000, 350, percent), 0.001);

    [Fact]
    public void Minutes_OfAKilogramOnAKilowatt_FollowTheHeatOfEvaporation() => Assert.Equal(2257 / 60.0, CookingDown.Minutes(1000, 1000), 9);

    [Fact]
    public void Of_SyrupWithGlucose_BoilsHotterThanWithSucroseAlone()
    {
        // By mass glucose has nearly twice the particles.
        var sucrose = Boiling.Of(Solution.OfGrams(30, ("sucrose", 70)));
        var mixed = Boiling.Of(Solution.OfGrams(30, ("sucrose", 50), ("glucose", 20)));

        Assert.Equal(Boiling.OfSucrose(70).Value, sucrose.Value, 6);
        Assert.True(mixed.Value > sucrose.Value);
    }

    [Fact]
    public void Of_Outside_KeepsTheFigureAndSaysSo()
    {
        Assert.Contains("sucrose is 92 %", Assert.Single(Boiling.OfSucrose(92).Outside), StringComparison.Ordinal);
        Assert.False(Boiling.OfSucroseByTable(10).IsKnown);
    }

    [Theory]
    [InlineData(0, 114, "soft ball")]
    [InlineData(1220, 110, "soft ball")]
    [InlineData(0, 150, "hard crack")]
    public void At_AltitudeAndTemperature_IsTheStageOfTheSea(double altitude, double celsius, string stage) =>
        Assert.Contains(SugarStage.At(celsius, altitude), each => each.Name == stage);

    [Theory]
    [InlineData(100, 100, "none")]
    [InlineData(220, 100, "low")]
    [InlineData(270, 100, "middle")]
    [InlineData(600, 100, "high")]
    public void Graining_OfSucroseInWaterAtTwentyDegrees_RisesWithSupersaturation(double sucrose, double water, string risk)
    {
        var graining = Graining.Of(sucrose, water, 20);

        Assert.Equal(risk, graining.Risk);
        Assert.Equal(sucrose / (100 * 66.60 / 33.40), graining.SupersaturationRatio.Value, 0.002);
    }

    [Fact]
    public void Solubility_Warmer_IsMore() => Gen.Select(Gen.Double[0, 95], Gen.Double[0.5, 5]).Sample((celsius, more) => Solubility.Sucrose(celsius + more).Value > Solubility.Sucrose(celsius).Value);

    // The standard atmosphere at 1000 and 3000 m: 89.87 and 70.11 kPa (ISO 2533, from memory).
    [Theory]
    [InlineData(1000, 89.87)]
    [InlineData(3000, 70.11)]
    public void AirPressure_AtAltitude_IsThatOfTheStandardAtmosphere(double metres, double expected) => Assert.Equal(expected, AirPressure.At(metres).Value, 0.02);

    [Fact]
    public void Impossible_IsRefusedInWords()
    {
        Assert.Contains("between 0 and 100", Assert.Throws<ArgumentOutOfRangeException>(() => SucroseSolution.Density(120)).Message, StringComparison.Ordinal);
        Assert.Contains("above zero", Assert.Throws<ArgumentOutOfRangeException>(() => Boiling.OfSucrose(50, -1)).Message, StringComparison.Ordinal);
        Assert.Contains("above 0 and at most", Assert.Throws<ArgumentOutOfRangeException>(() => CookingDown.WaterToDriveOffGrams(1, 1, 0)).Message, StringComparison.Ordinal);
        Assert.Contains("absolute zero", Assert.Throws<ArgumentOutOfRangeException>(() => Boiling.PercentByTable(-500)).Message, StringComparison.Ordinal);
    }

    private static bool Near(double left, double right, double within) => Math.Abs(left - right) <= within;
}
