using System.Globalization;
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
    [InlineData("1,mousse,moulded,,ring,,,,,,400", "mass_g", "at most what ring holds, 461.8 ml; this is 571.4 ml")]
    [InlineData("1,gel,lining,,ring,,,,,,520", "mass_g", "leaves a hollow in ring")]
    [InlineData("1,mystery,lining,,ring,,,,,,100", "component", "without it a mass has no volume")]
    [InlineData("1,mousse,moulded,,ring,,,,,,\n2,mystery,insert,mousse,,100,,,,,30", "component", "without it a mass has no volume")]
    [InlineData("1,mousse,moulded,,ring,,,,,,\n2,gel,insert,mousse,,,,,,,30", "diameter_mm", "two of diameter, thickness and mass")]
    [InlineData("1,mousse,moulded,,ring,,,,,,\n2,mystery,film,mousse,,,,,,,12", "component", "without it a mass has no volume")]
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

    // Every place forth and back: what a thickness weighs, weighed, is as thick.
    [Theory]
    [InlineData("1,gel,lining,,ring,,{0},,,,{1}", 3)]
    [InlineData("1,gel,lining,,ring,,{0},,,{2},", 5)]
    [InlineData("1,mousse,moulded,,ring,,,,,,\n2,gel,insert,mousse,,100,{0},8,,,{1}", 7)]
    [InlineData("1,mousse,moulded,,ring,,,,,,\n2,gel,film,mousse,,,{0},,,,{1}", 0.4)]
    [InlineData("1,mousse,moulded,,ring,,,,,,\n2,gel,film,mousse,,,{0},,,{2},", 0.4)]
    [InlineData("1,gel,lining,,ring,,3,,,,\n2,mousse,fill,gel,,,{0},,,,{1}", 12)]
    [InlineData("1,gel,piece,,,60,{0},,4,,{1}", 2.5)]
    public void Assemble_MassInPlaceOfThickness_GivesTheThicknessBack(string rows, double thickness)
    {
        var forth = Piece(string.Format(CultureInfo.InvariantCulture, rows, thickness, "", ""));
        var grams = forth.Layers[^1].MassGrams!.Value / forth.Layers[^1].Count;
        var back = Piece(string.Format(CultureInfo.InvariantCulture, rows, "", grams.ToString("R", CultureInfo.InvariantCulture), grams.ToString("R", CultureInfo.InvariantCulture)));

        Assert.Equal(thickness, back.Layers[^1].ThicknessMillimetres, thickness * 1e-6);
        Assert.Equal(forth.MassGrams!.Value, back.MassGrams!.Value, 6);
        Assert.Empty(back.Remarks);
    }

    // π/4 × 100² × 5 mm³ at 1.1 g/mL are 43.197 g.
    [Fact]
    public void Assemble_ThicknessAndMass_GiveTheDiameter() =>
        Assert.Equal(100, Piece("1,mousse,moulded,,ring,,,,,,\n2,gel,insert,mousse,,,5,8,,,43.1969").Layers[1].Outer.WidestHalfMillimetres * 2, 0.001);

    // 0.7 g/mL: 161.635 g are half of the 461.81 ml of a ring 140 x 30.
    [Fact]
    public void Assemble_MouldFilledByMass_StandsAsHighAsThat()
    {
        var piece = Piece("1,mousse,moulded,,ring,,,,,,161.635\n2,gel,film,mousse,,,1,,,,");

        Assert.Equal(15, piece.Layers[0].ThicknessMillimetres, 0.001);
        // Top and half of the wall: π/4 × 14² + π × 14 × 1.5 = 219.9 cm².
        Assert.Equal(21.99, piece.Layers[1].VolumeMillilitres, 0.01);
    }

    // A hemisphere is filled through its flat side, so half a fill is its upper part: the cap of half the volume of a hemisphere of 30 mm is 19.59 mm high.
    [Fact]
    public void FilledWith_Hemisphere_KeepsItsTop()
    {
        var whole = new SphericalCap(60, 30);
        var half = whole.FilledWith(whole.VolumeMillilitres / 2)!;

        Assert.Equal(19.59, half.HeightMillimetres, 0.01);
        Assert.Equal(0, half.HalfWidthAt(half.HeightMillimetres), 1e-3);
        Assert.Equal(whole.VolumeMillilitres / 2, half.VolumeMillilitres, 6);
        Assert.Equal(2 * Math.PI * 30 * half.HeightMillimetres / 100, half.CoatedSquareCentimetres, 9);
        Assert.Null(whole.FilledWith(whole.VolumeMillilitres * 1.01));
    }

    [Fact]
    public void Assemble_MassBesideAThickness_IsComparedWithIt()
    {
        Assert.Contains("gel: 30 g fill 27 ml, but there are 79 ml for it", Assert.Single(Piece("1,mousse,moulded,,ring,,,,,,\n2,gel,insert,mousse,,100,10,8,,,30").Remarks), StringComparison.Ordinal);
        // The ring less a gel of 78.5 ml holds 383 ml, 268 g: 300 g of mousse do not fit in, and stay 300 g.
        var full = Piece("1,mousse,moulded,,ring,,,,,,300\n2,gel,insert,mousse,,100,10,8,,,");
        Assert.Equal(300, full.GramsOf("mousse")!.Value, 9);
        Assert.Contains("mousse: 300 g fill 429 ml, but there are 383 ml for it", Assert.Single(full.Remarks), StringComparison.Ordinal);
    }

    private static AssembledPiece Piece(string rows)
    {
        List<CellProblem> problems = [];
        var moulds = Mould.ReadAll(Parse("moulds.csv", Moulds), problems);
        var montage = MontageSheet.Read(Parse("montage.csv", "order,component,as,inside,mould,diameter_mm,thickness_mm,above_mm,count,raw_g,mass_g\n" + rows), problems);
        var piece = Assembler.Assemble(montage.RowsOf(["T1"]), moulds, FactsOf, problems);
        Assert.Empty(problems);
        return piece!;
    }

    private static Sheet Parse(string file, string text) => SheetFile.Parse(file, Encoding.UTF8.GetBytes(text));

    private static LayerFacts? FactsOf(string component) => component switch
    {
        "mousse" => new(0.7, 0.7, 1),
        "gel" or "nut" => new(1.1, 1.1, 1),
        "mystery" => new(null, null, 1),
        _ => null,
    };
}
