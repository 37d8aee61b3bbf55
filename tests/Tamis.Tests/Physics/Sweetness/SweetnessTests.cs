using CsCheck;
using Tamis.Physics;

namespace Tamis.Tests.Physics;

public class SweetnessTests
{
    [Fact]
    public void Of_SucroseAlone_IsItsMassWithoutARange()
    {
        var sweet = Sweetness.Of(Balance.FromGrams(200, (BalancePart.Water, 150), (BalancePart.Sucrose, 50)));

        Assert.Equal(25, sweet.Value, 9);
        Assert.True(sweet.Range!.Value.IsPoint);
    }

    [Fact]
    public void Of_AnyMixture_LiesBetweenTheLowestAndHighestFigures() => Gen.Select(Gen.Double[0, 20], Gen.Double[0, 20], Gen.Double[0, 20], Gen.Double[0, 20]).Sample((sucrose, fructose, lactose, sorbitol) =>
        Sweetness.Of(Balance.FromGrams(100, (BalancePart.Sucrose, sucrose), (BalancePart.Fructose, fructose), (BalancePart.Lactose, lactose), (BalancePart.Sorbitol, sorbitol))) is var sweet
        && sweet.Range!.Value.Low <= sweet.Value && sweet.Value <= sweet.Range.Value.High);

    // Dextrose is less sweet than sucrose and lowers the freezing point nearly twice as much.
    [Fact]
    public void FreezingPower_AndSweetness_MoveApart()
    {
        var dextrose = Balance.FromGrams(100, (BalancePart.Water, 80), (BalancePart.Glucose, 20));

        Assert.Equal(0.2 * 342.30 / 180.16, FreezingPower.Of(dextrose).Value, 1e-9);
        Assert.True(Sweetness.Of(dextrose).Value < 20);
    }

    [Fact]
    public void Of_UnknownSugars_SaysWhatToSupply() =>
        Assert.NotEmpty(Sweetness.Of(Balance.Of(Pantry.Mixture((new() { Name = "powder" }, 50)))).Lacks);

    [Fact]
    public void SucroseEquivalentGrams_UnevenLists_IsRefusedInWords() =>
        Assert.Contains("2 masses but 1", Assert.Throws<ArgumentException>(() => Sweetness.SucroseEquivalentGrams([1, 2], [1])).Message, StringComparison.Ordinal);
}
