using CsCheck;
using Tamis.Physics;

namespace Tamis.Tests.Physics.Migration;

public class StackEquilibriumTests
{
    private static readonly SorptionIsotherm[] Isotherms = [.. MigrationData.Kit.Isotherms.Values];

    private static readonly Gen<WaterHolder[]> GenLayers = Gen.Select(Gen.Int[0, Isotherms.Length - 1], Gen.Double[0.01, 500], Gen.Double[0, 0.97])
        .Select((isotherm, dry, activity) => WaterHolder.OfActivity($"layer", Isotherms[isotherm], dry, activity)).Array[1, 7];

    [Fact]
    public void Of_AnyStack_ConservesWaterAndComesToOneActivity() => GenLayers.Sample(layers =>
    {
        var then = StackEquilibrium.Of(layers);
        var before = layers.Sum(layer => layer.WaterGrams);
        return Math.Abs(then.Layers.Sum(layer => layer.WaterGrams) - before) <= 1e-9 * before
            && then.Layers.All(layer => Math.Abs(layer.WaterActivity - then.WaterActivity.Value) < 1e-9);
    });

    [Fact]
    public void Of_AnyStack_LiesBetweenItsDriestAndItsWettest() => GenLayers.Sample(layers =>
        StackEquilibrium.Of(layers).WaterActivity.Value is var common && common >= layers.Min(layer => layer.WaterActivity) - 1e-12 && common <= layers.Max(layer => layer.WaterActivity) + 1e-12);

    [Fact]
    public void Of_BiscuitAndSponge_TakesTheSpongesActivity()
    {
        // Worked by another program from the mass balance and the two illustrative sets: 0.789, and 0.0812 and 0.1918 g per g.
        var then = StackEquilibrium.Of([
            WaterHolder.OfActivity("biscuit", MigrationData.Kit.Isotherm("biscuit and shortcrust"), 100, 0.25),
            WaterHolder.OfActivity("sponge", MigrationData.Kit.Isotherm("sponge"), 100, 0.85)]);

        Assert.Equal(0.789, then.WaterActivity.Value, 3);
        Assert.Equal(8.12, then.Layers[0].WaterGrams, 2);
        Assert.Equal(19.18, then.Layers[1].WaterGrams, 2);
        Assert.Contains(then.WaterActivity.Working.From[0].From, step => step.Step == "biscuit: water before");
    }

    [Fact]
    public void Of_ALayerBeyondItsIsotherm_SaysSo()
    {
        var then = StackEquilibrium.Of([
            WaterHolder.OfActivity("shell", MigrationData.Kit.Isotherm("biscuit and shortcrust"), 10, 0.05),
            WaterHolder.OfActivity("gel", MigrationData.Kit.Isotherm("sucrose, amorphous"), 1000, 0.97)]);

        Assert.False(then.WaterActivity.IsSound);
        Assert.Contains(then.WaterActivity.Outside, sentence => sentence.StartsWith("shell starts at a water activity of 0.05, its isotherm (biscuit and shortcrust) holds from 0.10 to 0.85", StringComparison.Ordinal));
        Assert.Contains(then.WaterActivity.Outside, sentence => sentence.StartsWith("gel ends", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(0, 1, "dry matter of x is above 0 g")]
    [InlineData(10, -1, "water of x is 0 g or more, found -1")]
    [InlineData(10, 20, "reaches a water activity of 1 before")]
    public void OfWater_OutOfRange_IsRefusedInASentence(double dry, double water, string sentence) =>
        Assert.Contains(sentence, Assert.Throws<ArgumentException>(() => WaterHolder.OfWater("x", MigrationData.Kit.Isotherm("sponge"), dry, water)).Message, StringComparison.Ordinal);
}
