using Tamis.Physics;

namespace Tamis.Tests.Physics;

public class PredictedTests
{
    private static readonly Source Test = new("a test", Evidence.Estimate);
    private static readonly Equation Product = new("product", "product", "g", Test) { Valid = [new("left", Interval.Between(0, 10), "g"), new("right", Interval.Between(-1, 1), "")] };

    private static Given Left(double value, Interval? range = null) => new("left", value, "g", Test) { Range = range };

    private static Given Right(double value, Interval? range = null) => new("right", value, "", Test) { Range = range };

    private static Predicted Of(Given left, Given right) => Predicted.From(Product, [left, right], given => given[0] * given[1]);

    [Fact]
    public void From_InputsWithRanges_IsBoundedByTheirCorners()
    {
        var predicted = Of(Left(2, Interval.Between(1, 3)), Right(0.5, Interval.Between(-1, 1)));

        Assert.Equal(1, predicted.Value);
        Assert.Equal(Interval.Between(-3, 3), predicted.Range);
        Assert.True(predicted.IsSound);
    }

    [Fact]
    public void From_InputsWithoutRanges_PretendsNone() => Assert.Null(Of(Left(2), Right(1)).Range);

    [Fact]
    public void From_OutsideTheTestedRange_KeepsTheFigureAndNamesEachInput()
    {
        var predicted = Of(Left(12), Right(2));

        Assert.Equal(24, predicted.Value);
        Assert.Equal(["left is 12 g, the equation holds from 0 to 10 g", "right is 2, the equation holds from -1 to 1"], predicted.Outside);
        Assert.True(predicted is { IsKnown: true, IsSound: false });
    }

    [Fact]
    public void From_UnknownInput_HasNoFigureAndSaysWhatItLacks()
    {
        var predicted = Of(Left(double.NaN), Right(1));

        Assert.True(predicted is { IsKnown: false, Range: null });
        Assert.Equal(["left"], predicted.Lacks);
        Assert.Equal("product: not known without left", predicted.ToString());
    }

    [Fact]
    public void Working_OfAFigure_HoldsItsInputs()
    {
        var working = Of(Left(3), Right(1)).Working;

        Assert.Equal((3.0, "g"), (working.Value, working.Unit));
        Assert.Equal(["left", "right"], working.From.Select(step => step.Step));
    }

    [Fact]
    public void Unknown_OfAnEquation_NamesWhatIsLacking() => Assert.Equal(["a density"], Predicted.Unknown(Product, "a density").Lacks);
}
