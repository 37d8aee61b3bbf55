using Tamis.Desserts;
using Tamis.Montage;
using Tamis.Physics;

namespace Tamis.Tests.Desserts;

public class PieceHeatTests
{
    private static readonly Dessert Tart = Dessert.Open(Path.Combine(KitFolder.Data("desserts"), "damson-tart"));

    [Fact]
    public void DemoTart_FromItsSheets_FreezesAndConservesHeat()
    {
        var heat = PieceHeat.Of(Tart, "T10", _ => 12, cellMillimetres: 2);
        Assert.Empty(heat.Lacks);
        Assert.NotNull(heat.Piece);
        var history = heat.Piece.March([HeatStage.AllRound(300, Surroundings.Air(-35, 30))], new() { FieldsAtMinutes = [60] });
        Assert.InRange(history.MinutesUntilAllBelow(-18) ?? double.NaN, 30, 240);
        Assert.InRange(history.EnergyMissShare, 0, 1e-9);
        var layers = heat.Piece.ByDisc(history.Fields.Single()).Select(layer => layer.Name).ToArray();
        Assert.Equal(["shell", "almond cream", "ganache", "coat", "mousse", "bound crumble", "gel"], layers);
    }

    [Fact]
    public void DemoTart_CutIntoCells_WeighsWhatTheMontageSays()
    {
        var heat = PieceHeat.Of(Tart, "T10", _ => 12);
        var piece = Tart.PieceOf("T10")!;
        var axes = heat.Piece!.Axes;
        var grams = 0.0;
        for (var cell = 0; cell < heat.Piece.Cells; cell++)
        {
            if (heat.Piece.DiscOfCell[cell] == MouldedPiece.Air) continue;
            var (ring, floor) = (cell % axes.Rings, cell / axes.Rings);
            var volume = Math.PI * (axes.RadiusMillimetres[ring + 1] * axes.RadiusMillimetres[ring + 1] - axes.RadiusMillimetres[ring] * axes.RadiusMillimetres[ring]) * (axes.HeightMillimetres[floor + 1] - axes.HeightMillimetres[floor]);
            grams += volume * heat.Piece.Discs[heat.Piece.DiscOfCell[cell]].Material!.DensityKgPerM3 * 1e-6;
        }
        // The montage counts the film as area times thickness, without its edge, and a few densities lie above those of the solid.
        var expected = piece.Layers.Where(layer => layer.As != Placing.Piece).Sum(layer => layer.MassGrams!.Value);
        Assert.Equal(1, grams / expected, 0.02);
    }

    [Fact]
    public void Dessert_WithoutAMontage_SaysWhatIsWanted() =>
        Assert.Contains("montage.csv", PieceHeat.Of(Dessert.Open(Path.Combine(KitFolder.Data("desserts"), "first")), "T1", _ => 12).Lacks.Single());
}
