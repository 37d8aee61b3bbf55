using MathNet.Numerics.Integration;
using Tamis.Montage;

namespace Tamis.Tests.Montage;

public class ShapeTests
{
    public static TheoryData<Shape> Shapes =>
    [
        new Cylinder(140, 30), new Frustum(180, 200, 25), new SphericalCap(60, 30), new SphericalCap(40, 12), new Dome(60, 45), new Torus(60, 20, IsHalf: false),
        new Torus(50, 30, IsHalf: true), new Cuboid(270, 270, 4), new HalfCylinder(70, 250), new Stadium(300, 80, 40), new Ellipsoid(70, 30), new Leaf(80, 25, 1), new MeasuredShape(84, 38),
    ];

    // Outside the formula: the level sections added up by another method, the trapezoid rule on 20 000 steps.
    [Theory]
    [MemberData(nameof(Shapes))]
    public void Volume_EveryShape_IsTheSumOfItsLevels(Shape shape)
    {
        var summed = NewtonCotesTrapeziumRule.IntegrateComposite(shape.AreaAt, 0, shape.HeightMillimetres, 20_000) / 1000;
        Assert.Equal(summed, shape.VolumeMillilitres, shape.VolumeMillilitres * 1e-5);
    }

    [Theory]
    [MemberData(nameof(Shapes))]
    public void HeightOf_AnyPartOfTheVolume_ComesBack(Shape shape)
    {
        foreach (var share in new[] { 0, 0.1, 0.5, 0.93, 1 })
        {
            var height = shape.HeightOf(share * shape.VolumeMillilitres)!.Value;
            Assert.Equal(share * shape.VolumeMillilitres, shape.VolumeBelow(height), shape.VolumeMillilitres * 1e-6);
        }
        Assert.Null(shape.HeightOf(shape.VolumeMillilitres * 1.01));
    }

    [Theory]
    [MemberData(nameof(Shapes))]
    public void HollowOf_AnyThickness_IsSmallerAndItsLiningHasTheRestOfTheVolume(Shape shape)
    {
        if (shape.HollowOf(3) is not { } hollow) return;
        Assert.Equal(shape.HeightMillimetres - 3, hollow.HeightMillimetres, 9);
        Assert.InRange(hollow.VolumeMillilitres, 1, shape.VolumeMillilitres - 1);
        Assert.Null(shape.HollowOf(shape.HeightMillimetres + 1));
    }

    [Fact]
    public void HollowOf_Frustum_KeepsTheLiningAsThickAsSaidSquareToTheWall()
    {
        var (outer, hollow) = (new Frustum(180, 200, 25), (Frustum)new Frustum(180, 200, 25).HollowOf(4)!);
        // Distance between two parallel slants = horizontal gap × height / slant.
        var gap = outer.HalfWidthAt(4) - hollow.HalfWidthAt(0);
        Assert.Equal(4, gap * outer.Height / outer.SlantMillimetres, 9);
        Assert.Equal(outer.HalfWidthAt(25) - hollow.HalfWidthAt(21), gap, 9);
    }
}
