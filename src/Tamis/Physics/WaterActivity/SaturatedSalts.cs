using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>The humidity over saturated salts: what a water activity meter is calibrated with.</summary>
public static class SaturatedSalts
{
    /// <summary>Relative humidity in per cent by a polynomial of third degree in the temperature (Greenspan 1977).</summary>
    public static double GreenspanPercent(double celsius, double a0, double a1, double a2, double a3) => a0 + celsius * (a1 + celsius * (a2 + celsius * a3));

    /// <summary>Relative humidity in per cent by A · exp(B/T), T in kelvin, good to 2 %.</summary>
    public static double ExponentialPercent(double celsius, double aPercent, double bKelvin) => aPercent * Math.Exp(bKelvin / (celsius + 273.15));

    /// <summary>The humidity over a saturated salt of <c>saturated-salts.csv</c>.</summary>
    /// <param name="salt">Its name, <c>sodium chloride</c>.</param>
    /// <param name="celsius">The temperature.</param>
    /// <param name="data">The sheets; the kit's own where null.</param>
    /// <exception cref="KeyNotFoundException">The sheet has no such salt.</exception>
    /// <exception cref="TableException">Its row must be mended.</exception>
    public static Predicted Humidity(string salt, double celsius, PhysicsData? data = null)
    {
        data ??= PhysicsData.Kit;
        List<CellProblem> problems = [];
        var sheet = data.Table("saturated-salts.csv");
        var row = sheet.Rows.FirstOrDefault(each => Names.Same(each["salt"], salt))
            ?? throw new KeyNotFoundException($"{sheet.File} has no salt '{salt}'; it has {string.Join(", ", sheet.Rows.Select(each => each["salt"]))}.");
        var reader = new RowReader(row, problems);
        double[] a = [reader.RequiredNumber("a0"), reader.RequiredNumber("a1"), reader.RequiredNumber("a2"), reader.RequiredNumber("a3")];
        var source = PhysicsData.SourceOf(row, problems);
        if (problems.Count > 0) throw new TableException(problems);
        return Predicted.From(data.Equation("greenspan") with { Source = source }, [new("temperature", celsius, "°C", new("given", Evidence.Sheet))], given => GreenspanPercent(given[0], a[0], a[1], a[2], a[3]));
    }
}
