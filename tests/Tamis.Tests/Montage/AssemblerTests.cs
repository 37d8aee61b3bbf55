using System.Text;
using CsCheck;
using Tamis.Desserts;
using Tamis.Montage;
using Tamis.Tables;

namespace Tamis.Tests.Montage;

public class AssemblerTests
{
    private static readonly Dessert Tart = Dessert.Open(Path.Combine(KitFolder.Data("desserts"), "damson-tart"));

    // Masses of one tart of T1, worked out by a second program from the same sheets; it counts the shell's corner twice (97.7 g), the hollow here does not.
    [Theory]
    [InlineData("almond cream", 125.55)]
    [InlineData("ganache", 174.34)]
    [InlineData("bound crumble", 58.40)]
    [InlineData("gel", 124.41)]
    [InlineData("mousse", 206.94)]
    [InlineData("coat", 12.01)]
    public void PieceOf_Demo_WeighsEachComponentAsTheSecondProgramDoes(string component, double grams)
    {
        Assert.Equal(grams, Tart.PieceOf("T1")!.GramsOf(component)!.Value, 0.02);
    }

    [Fact]
    public void PieceOf_Demo_StacksToTheHeightOfItsLayers()
    {
        var piece = Tart.PieceOf("T1")!;
        Assert.Equal(48.6, piece.HeightMillimetres, 9);
        Assert.Equal(160, piece.WidthMillimetres, 9);
        Assert.Empty(piece.Remarks);
        // π/4 × (160² × 20 − 154² × 17) mm³ at 1.08 g/mL.
        Assert.Equal(85.48 * 1.08, piece.GramsOf("shell")!.Value, 0.02);
    }

    [Fact]
    public void PieceOf_Loaf_WeighsTheBakedMassOfItsRawBatter()
    {
        var piece = Dessert.Open(Path.Combine(KitFolder.Data("desserts"), "travel-loaf")).PieceOf("V1")!;
        Assert.InRange(piece.MassGrams!.Value, 320, 335);
    }

    private const string Moulds = """
        mould,shape,diameter_mm,top_diameter_mm,length_mm,width_mm,height_mm,places,count,measured_ml
        ring,ring,140,,,,30,1,4,
        small,ring,120,,,,10,1,4,
        stone,measured,,,,,38,12,2,84
        """;

    [Theory]
    [InlineData("1,mousse,moulded,,ring,,,,,,,", null, "")]
    [InlineData("1,mousse,moulded,,rings,,,,,,,", "mould", "near ones: ring")]
    [InlineData("1,mousse,moulded,,,,,,,,,", "mould", "the mould that it fills")]
    [InlineData("1,mousse,moulded,,ring,,,,,,,\n2,gel,insert,mousse,,160,10,8,,,,", "diameter_mm", "160 mm wide")]
    [InlineData("1,mousse,moulded,,ring,,,,,,,\n2,gel,insert,mousse,small,,,25,,,,", "mould", "reaches 35 mm")]
    [InlineData("1,mousse,moulded,,ring,,,,,,,\n2,gel,insert,mousse,small,,,8,,,,\n3,nut,insert,mousse,,100,4,10,,,,", "above_mm", "from 8 to 18 mm")]
    [InlineData("1,mystery,moulded,,stone,,,,,,,", "component", "a density of mystery under density_g_ml")]
    [InlineData("1,cream,moulded,,ring,,,,,,,", "component", "a component of formula.csv")]
    [InlineData("1,mousse,lining,,ring,,80,,,,,", "thickness_mm", "leaves a hollow")]
    [InlineData("1,mousse,fill,shell,,,8,,,,,", "inside", "a lining that stands before it")]
    [InlineData("1,mousse,heaped,,ring,,,,,,,", "as", "lining")]
    [InlineData("1,mousse,moulded,,ring,-140,,,,,,", "diameter_mm", "")]
    public void Assemble_WhatATiredPersonWrites_NamesTheCell(string rows, string? column, string expected)
    {
        List<CellProblem> problems = [];
        var moulds = Mould.ReadAll(Parse("moulds.csv", Moulds), problems);
        var montage = MontageSheet.Read(Parse("montage.csv", "order,component,as,inside,mould,diameter_mm,thickness_mm,above_mm,count,raw_g,mass_g,trial\n" + rows), problems);
        var piece = Assembler.Assemble(montage.RowsOf(["T1"]), moulds, FactsOf, problems);
        if (column is null)
        {
            Assert.Empty(problems);
            Assert.NotNull(piece);
            return;
        }
        var found = Assert.Single(problems);
        Assert.Equal(column, found.Column);
        Assert.Contains(expected, found.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void Assemble_Insert_DisplacesWhatSurroundsIt() =>
        Gen.Select(Gen.Double[20, 139], Gen.Double[1, 15], Gen.Double[0, 15]).Sample((diameter, thickness, above) =>
        {
            List<CellProblem> problems = [];
            var moulds = Mould.ReadAll(Parse("moulds.csv", Moulds), problems);
            var montage = MontageSheet.Read(Parse("montage.csv", FormattableString.Invariant(
                $"order,component,as,inside,mould,diameter_mm,thickness_mm,above_mm\n1,mousse,moulded,,ring,,,\n2,gel,insert,mousse,,{diameter:R},{thickness:R},{above:R}")), problems);
            var piece = Assembler.Assemble(montage.RowsOf(["T1"]), moulds, FactsOf, problems)!;
            Assert.Equal(new Cylinder(140, 30).VolumeMillilitres, piece.Layers.Sum(layer => layer.VolumeMillilitres), 6);
            Assert.Equal(piece.MassGrams!.Value, piece.GramsOf("mousse")!.Value + piece.GramsOf("gel")!.Value, 9);
        });

    private static Sheet Parse(string file, string text) => SheetFile.Parse(file, Encoding.UTF8.GetBytes(text));

    private static LayerFacts? FactsOf(string component) => component switch
    {
        "mousse" => new(0.7, 0.7, 1),
        "gel" or "nut" => new(1.1, 1.1, 1),
        "mystery" => new(null, null, 1),
        _ => null,
    };
}
