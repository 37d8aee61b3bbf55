namespace Tamis.Physics;

/// <summary>Takes readings while a march goes on.</summary>
internal sealed class HistoryKeeper(IHeatStepper stepper, FieldAxes axes)
{
    private readonly double[] _start = stepper.EnthalpyJPerKg.ToArray();
    private readonly List<TemperatureReading> _readings = [];
    private readonly List<TemperatureField> _fields = [];

    public void Read(double seconds, bool keepField)
    {
        var celsius = stepper.Celsius;
        var (warmest, coldest, sum, mass) = (double.NegativeInfinity, double.PositiveInfinity, 0.0, 0.0);
        for (var i = 0; i < celsius.Length; i++)
        {
            if (stepper.MassKg[i] == 0) continue;
            (warmest, coldest) = (Math.Max(warmest, celsius[i]), Math.Min(coldest, celsius[i]));
            sum += celsius[i] * stepper.MassKg[i];
            mass += stepper.MassKg[i];
        }
        _readings.Add(new(seconds / 60, warmest, coldest, sum / mass, celsius[axes.Floors / 2 * axes.Rings]));
        if (keepField) _fields.Add(Field());
    }

    public TemperatureHistory History()
    {
        var gained = 0.0;
        for (var i = 0; i < _start.Length; i++) gained += stepper.MassKg[i] * (stepper.EnthalpyJPerKg[i] - _start[i]);
        return new()
        {
            Readings = _readings,
            Fields = _fields,
            End = Field(),
            EndEnthalpyJPerKg = stepper.EnthalpyJPerKg.ToArray(),
            HeatInJoules = stepper.HeatInJoules,
            HeatGainedJoules = gained,
        };
    }

    // Where nothing stands there is no temperature.
    private TemperatureField Field()
    {
        var celsius = stepper.Celsius.ToArray();
        for (var i = 0; i < celsius.Length; i++)
            if (stepper.MassKg[i] == 0) celsius[i] = double.NaN;
        return new(_readings[^1].Minutes, axes, celsius);
    }
}
