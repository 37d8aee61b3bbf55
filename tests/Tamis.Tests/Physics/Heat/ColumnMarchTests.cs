using Tamis.Physics;

namespace Tamis.Tests.Physics.Heat;

public class ColumnMarchTests
{
    // Same scheme in NumPy: the middle cell after every 10,000 steps, then the outermost cell and the mean at the end.
    private static readonly double[] CoreEvery10000Steps = [19.749505991529876, 16.3240856254966, 9.602549391515057, 2.039189491960017, -2.435140244362032];

    private static readonly MarchSettings EveryTwoAndAHalfMinutes = new() { StepSeconds = SlabCase.StepSeconds, FieldsAtMinutes = [2.5, 5, 7.5, 10] };

    [Fact]
    public void Explicit_SlabOf200Cells_IsWhatTheSameSchemeGivesInNumPy()
    {
        var history = HeatMarch.Explicit(SlabCase.Column(), [SlabCase.Stage], EveryTwoAndAHalfMinutes);
        double[] core = [.. history.Fields.Append(history.End).Select(field => field.Celsius[SlabCase.Cells / 2])];
        Assert.Equal(CoreEvery10000Steps, core, Within(1e-6));
        Assert.Equal(-41.21545671338039, history.End.Celsius[0], 1e-6);
        Assert.Equal(-18.392993889129517, history.End.Celsius.Average(), 1e-6);
        Assert.Equal(175281.53913867727, history.EndEnthalpyJPerKg.Average(), 1e-2);
        Assert.Equal(-369699.1771715033, history.End.Celsius.Select((celsius, i) => celsius * (i + 1)).Sum(), 1e-2);
    }

    [Fact]
    public void Implicit_SlabInSecondSteps_AgreesWithTheExplicitMarch()
    {
        var history = HeatMarch.Implicit(SlabCase.Column(), [SlabCase.Stage], EveryTwoAndAHalfMinutes with { StepSeconds = 1 });
        Assert.Equal(CoreEvery10000Steps, [.. history.Fields.Append(history.End).Select(field => field.Celsius[SlabCase.Cells / 2])], Within(0.03));
    }

    private static Comparer Within(double tolerance) => new(tolerance);

    private sealed class Comparer(double tolerance) : IEqualityComparer<double>
    {
        public bool Equals(double x, double y) => Math.Abs(x - y) <= tolerance;

        public int GetHashCode(double value) => 0;
    }
}
