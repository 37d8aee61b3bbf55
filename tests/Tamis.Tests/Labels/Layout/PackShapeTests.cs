using CsCheck;
using Tamis.Labels;

namespace Tamis.Tests.Labels.Layout;

public class PackShapeTests
{
    [Fact]
    public void Box_InAnyOrder_LiesOnItsLargestFace()
    {
        var pack = PackShape.Box(75, 65, 185);

        Assert.Equal((185, 75), (pack.FaceWidthMillimetres, pack.FaceHeightMillimetres));
        Assert.Equal(138.75, pack.LargestSquareCentimetres, 9);
        // Two faces each of 138.75, 120.25 and 48.75 cm².
        Assert.Equal(615.5, pack.TotalSquareCentimetres, 9);
    }

    [Fact]
    public void OnFace_AnotherFace_IsPrintedAndTheLargestStillCounts()
    {
        var end = PackShape.Box(185, 75, 65).OnFace(65, 75)!;

        Assert.Equal((65, 75), (end.FaceWidthMillimetres, end.FaceHeightMillimetres));
        Assert.Equal((138.75, 615.5), (end.LargestSquareCentimetres, end.TotalSquareCentimetres));
        Assert.Equal((75, 75), (end.Measure(PackMeasure.VerticalSpace, null), end.Measure(PackMeasure.LongestSide, null)));
        Assert.Equal(PackShape.Box(185, 75, 65), end.OnFace(185, 75));
    }

    [Theory]
    [InlineData(185, 185)]
    [InlineData(75, 75)]
    [InlineData(184, 75)]
    public void OnFace_NoFaceOfTheBox_Null(double width, double height) => Assert.Null(PackShape.Box(185, 75, 65).OnFace(width, height));

    [Fact]
    public void OnFace_SidesAreNotKnown_Null() => Assert.Null(PackShape.Surface(64).OnFace(80, 80));

    [Theory]
    [InlineData("185 x 75 x 65")]
    [InlineData("185x75x65")]
    [InlineData("65 × 185 × 75")]
    public void Parse_AsPeopleWriteIt_Box(string text) => Assert.Equal(PackShape.Box(185, 75, 65), PackShape.Parse(text));

    [Theory]
    [InlineData("")]
    [InlineData("185 x 75")]
    [InlineData("185 x 75 x 0")]
    [InlineData("185 x 75 x -3")]
    [InlineData("185 x 75 x 65 x 4")]
    [InlineData("a x b x c")]
    public void Parse_NoBox_Null(string text) => Assert.Null(PackShape.Parse(text));

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void Surface_NoArea_Refused(double squareCentimetres) => Assert.Throws<ArgumentOutOfRangeException>(() => PackShape.Surface(squareCentimetres));

    [Fact]
    public void Surface_OfAFace_IsASquareAndSaysSo()
    {
        var pack = PackShape.Surface(64);

        Assert.Equal(80, pack.FaceWidthMillimetres, 9);
        Assert.False(pack.IsBox);
        Assert.Contains("a square stands for it", pack.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Box_AnySides_NoFaceIsLargerThanTheLargest() => Gen.Select(Gen.Double[1, 500], Gen.Double[1, 500], Gen.Double[1, 500]).Sample((first, second, third) =>
    {
        var pack = PackShape.Box(first, second, third);
        double[] faces = [first * second / 100, second * third / 100, first * third / 100];
        // Within a tolerance, as two roundings to so many decimals may part at a tie.
        Assert.Equal(faces.Max(), pack.LargestSquareCentimetres, 1e-6);
        Assert.Equal(2 * faces.Sum(), pack.TotalSquareCentimetres, 1e-6);
        Assert.True(pack.FaceWidthMillimetres >= pack.FaceHeightMillimetres);
    });
}
