using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>A change that heat makes in egg, by itself or in a custard.</summary>
/// <param name="What">What happens, in a cook's words.</param>
/// <param name="AtCelsius">Where it happens without sugar, in °C.</param>
/// <param name="Source">Where the figure comes from.</param>
public sealed record EggSetting(string What, Interval AtCelsius, Source Source)
{
    /// <summary>The changes that the kit knows, coolest first.</summary>
    public static IReadOnlyList<EggSetting> All { get; } = ReadAll(PhysicsData.Kit.Table("egg-setting.csv"));

    /// <summary>The change of a name.</summary>
    /// <exception cref="KeyNotFoundException">There is none of this name.</exception>
    public static EggSetting Named(string what) => All.FirstOrDefault(change => Names.Same(change.What, what))
        ?? throw new KeyNotFoundException($"No change of egg is called '{what}'; known are {string.Join(", ", All.Select(change => change.What))}.");

    /// <summary>Where it happens with sugar in the water phase, in °C.</summary>
    /// <param name="withoutSugarCelsius">Where it happens without.</param>
    /// <param name="sugarOfWaterPhasePercent">Sugars in per cent of sugars and water together, 0 to 50.</param>
    /// <param name="riseAt50Kelvin">The rise at 50 % sugar; the rise grows in proportion.</param>
    public static double WithSugarCelsius(double withoutSugarCelsius, double sugarOfWaterPhasePercent, double riseAt50Kelvin) =>
        withoutSugarCelsius + riseAt50Kelvin * sugarOfWaterPhasePercent / 50;

    /// <summary>Where it happens in a mixture, in °C, with its range.</summary>
    /// <param name="sugarOfWaterPhase">Sugars in per cent of sugars and water together.</param>
    /// <remarks>Dilution with milk lifts it too, acid and salt lower it: by how much no figure is at hand.</remarks>
    public Predicted In(Given sugarOfWaterPhase)
    {
        Given without = new($"{What}, without sugar", AtCelsius.Middle, "°C", Source) { Range = AtCelsius };
        return Predicted.From(PhysicsData.Kit.Equation("egg setting with sugar"), [without, sugarOfWaterPhase with { Name = "sugar of the water phase" }, PhysicsData.Kit.Constant("egg setting rise at 50 % sugar")],
            at => WithSugarCelsius(at[0], at[1], at[2]));
    }

    private static IReadOnlyList<EggSetting> ReadAll(Sheet sheet)
    {
        List<CellProblem> problems = [];
        EggSetting[] changes = [.. sheet.Rows.Select(row => new RowReader(row, problems)).Select(row => new EggSetting(
            row.Required("what"), row.RequiredRange("low_c", "high_c", 40, 120), PhysicsData.SourceOf(row.Row, problems))).OrderBy(change => change.AtCelsius.Low)];
        return problems is [] ? changes : throw new TableException(problems);
    }
}
