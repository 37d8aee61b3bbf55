using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>What is solid of a fat at each temperature, from a table.</summary>
/// <param name="Fat">The fat's name.</param>
/// <param name="Points">Temperature in °C and solid share in per cent, coldest first.</param>
/// <param name="Source">Where the points come from.</param>
public sealed record SolidFatCurve(string Fat, IReadOnlyList<(double Celsius, Interval SolidPercent)> Points, Source Source)
{
    /// <summary>The curves of the kit.</summary>
    public static IReadOnlyList<SolidFatCurve> All { get; } = ReadAll(PhysicsData.Kit.Table("solid-fat.csv"));

    /// <summary>The curve of a fat.</summary>
    /// <exception cref="KeyNotFoundException">There is none of this name.</exception>
    public static SolidFatCurve Named(string fat) => All.FirstOrDefault(curve => Names.Same(curve.Fat, fat))
        ?? throw new KeyNotFoundException($"No curve of solid fat is called '{fat}'; known are {string.Join(", ", All.Select(curve => curve.Fat))}.");

    /// <summary>The temperatures that the table covers, in °C.</summary>
    public Interval Celsius => Interval.Between(Points[0].Celsius, Points[^1].Celsius);

    /// <summary>The solid share in per cent at a temperature, straight between the points; above the last point as there, below the first one NaN.</summary>
    public double SolidPercent(double temperatureCelsius) => At(temperatureCelsius, point => point.Middle);

    /// <summary>The solid share in per cent at a temperature, with the range of the table.</summary>
    public Predicted Solid(Given temperature)
    {
        var equation = PhysicsData.Kit.Equation("solid fat table");
        if (!temperature.IsKnown) return Predicted.Unknown(equation, temperature.Name);
        if (temperature.Value < Celsius.Low) return Predicted.Unknown(equation, FormattableString.Invariant($"a point of the curve of {Fat} at {temperature.Value:G4} °C; it begins at {Celsius.Low:G4} °C"));
        var (low, high) = (At(temperature.Value, point => point.Low), At(temperature.Value, point => point.High));
        return Predicted.Computed(equation, SolidPercent(temperature.Value), () => [temperature.Working, new($"curve of {Fat}", SolidPercent(temperature.Value), "%", Source)]) with
        {
            Range = low < high ? Interval.Between(low, high) : null,
        };
    }

    private double At(double celsius, Func<Interval, double> of)
    {
        if (celsius < Points[0].Celsius) return double.NaN;
        for (var i = 1; i < Points.Count; i++)
        {
            var (from, to) = (Points[i - 1], Points[i]);
            if (celsius <= to.Celsius) return of(from.SolidPercent) + (of(to.SolidPercent) - of(from.SolidPercent)) * (celsius - from.Celsius) / (to.Celsius - from.Celsius);
        }
        return of(Points[^1].SolidPercent);
    }

    private static IReadOnlyList<SolidFatCurve> ReadAll(Sheet sheet)
    {
        List<CellProblem> problems = [];
        var rows = sheet.Rows.Select(row => new RowReader(row, problems))
            .Select(row => (Fat: row.Required("fat"), Celsius: row.RequiredNumber("temperature_c", -40, 80), Solid: row.RequiredRange("solid_low_percent", "solid_high_percent", 0, 100), Source: PhysicsData.SourceOf(row.Row, problems)))
            .ToArray();
        if (problems.Count > 0) throw new TableException(problems);
        return [.. rows.GroupBy(row => row.Fat, Names.Comparer).Select(fat => new SolidFatCurve(fat.Key, [.. fat.OrderBy(row => row.Celsius).Select(row => (row.Celsius, row.Solid))], fat.First().Source))];
    }
}
