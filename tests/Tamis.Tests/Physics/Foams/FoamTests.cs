using CsCheck;
using Tamis.Physics;

namespace Tamis.Tests.Physics;

public class FoamTests
{
    private static readonly Source Here = new("a test", Evidence.Estimate);

    // Goff, University of Guelph: a litre of mix 1090 g, a litre frozen 560 g.
    [Fact]
    public void OverrunPercent_LitresWeighed_AsPrinted() => Assert.Equal(94.6, Foam.OverrunPercent(1090, 560), 0.05);

    [Fact]
    public void AirVolumeShare_AgreesWithDensities() => Gen.Select(Gen.Double[0.8, 1.4], Gen.Double[0, 700]).Sample((liquid, overrun) =>
        Math.Abs(Foam.AirVolumeShareOfDensities(Foam.DensityGramsPerMillilitre(liquid, overrun), liquid) - Foam.AirVolumeShare(overrun)) < 1e-12
        && Math.Abs(Foam.OverrunPercentOfAir(Foam.AirVolumeShare(overrun)) - overrun) < 1e-9);

    [Fact]
    public void FoldedDensity_NothingLost_VolumesAdd() => Gen.Select(Gen.Double[1, 500], Gen.Double[1, 500], Gen.Double[0.2, 0.9]).Sample((baseGrams, foamGrams, foamDensity) =>
        Math.Abs(Foam.FoldedDensityGramsPerMillilitre(baseGrams, 1.05, new FoldedFoam(foamGrams, foamDensity, 1, 0)) - (baseGrams + foamGrams) / (baseGrams / 1.05 + foamGrams / foamDensity)) < 1e-9);

    [Fact]
    public void FoldedDensity_AllAirLost_IsTheDensityWithoutAir() =>
        Assert.Equal(Foam.DensityWithoutAirGramsPerMillilitre([300, 300], [1.05, 1.0]), Foam.FoldedDensityGramsPerMillilitre(300, 1.05, new FoldedFoam(300, 0.5, 1.0, 100)), 1e-12);

    // The demo's mousse: 422 g of custard and gelatine, 420 g of cream at 100 % overrun, 95 % of the air kept: 0.70 g/mL.
    [Fact]
    public void Folded_Mousse_HasTheDensityOfTheBench()
    {
        var density = Foam.Folded(new("custard", 422, "g", Here), new("density of the custard", 1.07, "g/mL", Here), new("cream", 420, "g", Here), new("density of cream", 0.99, "g/mL", Here), FoamKind.Named("whipped cream"));

        Assert.Equal(0.70, density.Value, 0.02);
        Assert.True(density.Range!.Value.Contains(density.Value));
        Assert.Equal(["air that outlives folding"], Foam.Folded(new("base", 1, "g", Here), new("d", 1, "g/mL", Here), new("foam", 1, "g", Here), new("d", 1, "g/mL", Here), FoamKind.Named("marshmallow")).Lacks);
    }

    [Fact]
    public void Overrun_PredictedFromWeighedCups_NamesItsSource() =>
        Assert.Contains("Guelph", Foam.Overrun(new("mix", 250, "g", Here), new("foam", 125, "g", Here)).Equation.Source.Key, StringComparison.Ordinal);
}
