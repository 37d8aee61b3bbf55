using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>A starch as a thickener.</summary>
/// <param name="Name">Its plant or trade name.</param>
/// <param name="GelatinisesAtCelsius">The range over which it swells in water alone, in °C.</param>
/// <param name="AmylosePercent">Amylose in the starch, per cent; null where nobody says.</param>
/// <param name="CustardDosePercent">The usual dose in a custard, in per cent of the liquid.</param>
/// <param name="Gel">How it sets, in words.</param>
/// <param name="Source">Where the figures come from.</param>
public sealed record Starch(string Name, Interval GelatinisesAtCelsius, Interval? AmylosePercent, Interval CustardDosePercent, string Gel, Source Source)
{
    /// <summary>The starches of the kit.</summary>
    public static IReadOnlyList<Starch> All { get; } = ReadAll(PhysicsData.Kit.Table("starches.csv"));

    /// <summary>The starch of a name.</summary>
    /// <exception cref="KeyNotFoundException">There is none of this name.</exception>
    public static Starch Named(string name) => All.FirstOrDefault(starch => Names.Same(starch.Name, name))
        ?? throw new KeyNotFoundException($"No starch is called '{name}'; known are {string.Join(", ", All.Select(starch => starch.Name))}.");

    /// <summary>How far sugar lifts gelatinisation, in kelvin: nothing without sugar, then straight to the stated rise at 40 %, and straight on to that at 60 %.</summary>
    /// <param name="sugarOfWaterPhasePercent">Sugars in per cent of sugars and water together, 0 to 60.</param>
    /// <param name="riseAt40Kelvin">The rise at 40 % sugar.</param>
    /// <param name="riseAt60Kelvin">The rise at 60 % sugar.</param>
    public static double SugarRiseKelvin(double sugarOfWaterPhasePercent, double riseAt40Kelvin, double riseAt60Kelvin) => sugarOfWaterPhasePercent <= 40
        ? riseAt40Kelvin * sugarOfWaterPhasePercent / 40
        : riseAt40Kelvin + (riseAt60Kelvin - riseAt40Kelvin) * (sugarOfWaterPhasePercent - 40) / 20;

    /// <summary>The temperature that a mixture must pass before the starch has swollen, in °C, with the range from first to last granule.</summary>
    /// <param name="sugarOfWaterPhase">Sugars in per cent of sugars and water together.</param>
    public Predicted Gelatinisation(Given sugarOfWaterPhase)
    {
        Given end = new($"gelatinisation of {Name}", GelatinisesAtCelsius.High, "°C", Source) { Range = GelatinisesAtCelsius };
        return Predicted.From(PhysicsData.Kit.Equation("starch gelatinisation with sugar"),
            [sugarOfWaterPhase with { Name = "sugar of the water phase" }, end, PhysicsData.Kit.Constant("starch gelatinisation rise at 40 % sugar"), PhysicsData.Kit.Constant("starch gelatinisation rise at 60 % sugar")],
            at => at[1] + SugarRiseKelvin(at[0], at[2], at[3]));
    }

    private static IReadOnlyList<Starch> ReadAll(Sheet sheet)
    {
        List<CellProblem> problems = [];
        Starch[] starches = [.. sheet.Rows.Select(row => new RowReader(row, problems)).Select(row => new Starch(
            row.Required("starch"), row.RequiredRange("gelatinises_low_c", "gelatinises_high_c", 30, 120), row.Range("amylose_low_percent", "amylose_high_percent", 0, 100),
            row.RequiredRange("custard_dose_low_percent", "custard_dose_high_percent", 0, 30), row.Required("gel"), PhysicsData.SourceOf(row.Row, problems)))];
        return problems is [] ? starches : throw new TableException(problems);
    }
}
