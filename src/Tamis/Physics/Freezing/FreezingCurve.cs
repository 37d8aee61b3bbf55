using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>A point of a freezing curve.</summary>
/// <param name="Celsius">The temperature.</param>
/// <param name="IceShareOfWater">The share of the water that is ice, 0 to 1.</param>
/// <param name="IsByTable">Whether the table of sucrose reaches so far; beyond it the water activity of the unfrozen solution is used.</param>
public sealed record IcePoint(double Celsius, double IceShareOfWater, bool IsByTable);

/// <summary>How much of a mixture's water is ice at each temperature.</summary>
/// <remarks>Ice forms until the solution left is strong enough to stay liquid: its freezing point, by Leighton's sucrose equivalents and the salts of milk, is the temperature.
/// Below the end of his table (−13.7 °C by sugars) the shape follows from the water activity beside ice, joined to the table where it ends. Water in the most concentrated solution never freezes.</remarks>
public sealed class FreezingCurve
{
    private static readonly Source Balanced = new("balance of the mixture", Evidence.Computed);

    private readonly PhysicsData _data;
    private readonly ColumnTable _table;
    private readonly double _saltFactor;

    private FreezingCurve(FreezingMix mix, PhysicsData data)
    {
        (Mix, _data) = (mix, data);
        _table = ColumnTable.Read(data.Table("sucrose-freezing-point.csv"), "g_100g_water", "depression_c");
        _saltFactor = data.Constant("milk salts factor").Value;
    }

    /// <summary>What freezes.</summary>
    public FreezingMix Mix { get; }

    /// <summary>The curve of a balance.</summary>
    public static FreezingCurve Of(Balance balance, PhysicsData? data = null) => Of(FreezingMix.Of(balance, data), data);

    /// <summary>The curve of a mix.</summary>
    public static FreezingCurve Of(FreezingMix mix, PhysicsData? data = null) => new(mix, data ?? PhysicsData.Kit);

    /// <summary>The fall of the freezing point by sugar, in °C, straight between the rows of the table; NaN beyond it.</summary>
    /// <param name="sucroseGramsPer100GramsWater">Sucrose equivalents to 100 g of water.</param>
    public double SugarDepression(double sucroseGramsPer100GramsWater) => _table.Linear(sucroseGramsPer100GramsWater);

    /// <summary>The temperature at which the first ice forms.</summary>
    public Predicted InitialFreezingPoint
    {
        get
        {
            var equation = _data.Equation("initial freezing point");
            return Mix.Lacks.Count > 0 ? Predicted.Unknown(equation, Mix.Lacks) : Predicted.From(equation,
                [new("sucrose to water", Mix.SucroseGramsPer100GramsWater, "g/100 g water", Balanced), new("milk solids not fat", Mix.MilkSolidsGrams, "g", Balanced), new("water", Mix.WaterGrams, "g", Balanced), _data.Constant("milk salts factor")],
                given => -(SugarDepression(given[0]) + FreezingEquations.MilkSaltsDepression(given[1], given[2], given[3])));
        }
    }

    /// <summary>The share of the water that is ice at a temperature, 0 to 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies below absolute zero.</exception>
    public Predicted IceShareAt(double celsius)
    {
        Given temperature = Temperature.Given(celsius);
        if (Mix.Lacks.Count > 0) return Predicted.Unknown(_data.Equation("frozen water"), Mix.Lacks);
        if (PointAt(celsius) is not { } point)
            return Predicted.Unknown(_data.Equation("frozen water"), "the solutes one by one: the table of sucrose ends at 180 g to 100 g of water");
        var equation = _data.Equation(point.IsByTable ? "frozen water" : "frozen water by water activity");
        return Predicted.Computed(equation, point.IceShareOfWater, () => [temperature.Working, new("sucrose to water", Mix.SucroseGramsPer100GramsWater, "g/100 g water", Balanced), new("milk solids not fat", Mix.MilkSolidsGrams, "g", Balanced), new("water", Mix.WaterGrams, "g", Balanced)])
            with { Outside = [.. equation.Valid.Where(range => Names.Same(range.Of, "temperature")).Select(range => range.Outside(celsius)).OfType<string>().Where(_ => celsius < 0)] };
    }

    /// <summary>The curve in steps, from the warm end down; points that nothing can be said of are left out.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The step is not above zero.</exception>
    public IReadOnlyList<IcePoint> Points(double fromCelsius = 0, double toCelsius = -25, double stepCelsius = 0.5)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(stepCelsius);
        if (Mix.Lacks.Count > 0) return [];
        var steps = (int)Math.Floor((fromCelsius - toCelsius) / stepCelsius + 1e-9);
        return [.. Enumerable.Range(0, steps + 1).Select(step => PointAt(fromCelsius - step * stepCelsius)).OfType<IcePoint>()];
    }

    /// <summary>The temperature at which so much of the water is ice; NaN where it never is, above −60 °C.</summary>
    /// <param name="iceShareOfWater">Above 0 and under 1.</param>
    public double CelsiusAtIceShare(double iceShareOfWater) => Mix.Lacks.Count > 0 ? double.NaN
        : Roots.Bisect(celsius => (PointAt(celsius)?.IceShareOfWater ?? double.NaN) - iceShareOfWater, -60, 0);

    /// <summary>How hard it is at a serving temperature, by its ice alone: common practice. Fat, air and gelatine harden or soften it beside.</summary>
    /// <exception cref="TableException">The sheet of hardness must be mended.</exception>
    public Hardness? HardnessAt(double celsius)
    {
        var ice = IceShareAt(celsius);
        return ice.IsKnown ? Hardness.Of(ice, _data) : null;
    }

    private IcePoint? PointAt(double celsius)
    {
        if (celsius >= 0 || Mix.WaterGrams <= 0) return new(celsius, 0, true);
        // The least water that the table can speak of, where its last row stands.
        var least = 100 * Mix.SucroseEquivalentGrams / _table.Range.High;
        if (least >= Mix.WaterGrams) return BeyondTable(celsius, Mix.WaterGrams, 0);
        if (Depression(Mix.WaterGrams) >= -celsius) return new(celsius, 0, true);
        if (least <= 0 && Mix.MilkSolidsGrams <= 0) return new(celsius, 1, true);
        if (Depression(Math.Max(least, Mix.WaterGrams * 1e-9)) >= -celsius)
            return new(celsius, 1 - Roots.Bisect(water => Depression(water) + celsius, Math.Max(least, Mix.WaterGrams * 1e-9), Mix.WaterGrams) / Mix.WaterGrams, true);
        return BeyondTable(celsius, least, 1 - least / Mix.WaterGrams);
    }

    private double Depression(double waterGrams) =>
        SugarDepression(Math.Min(100 * Mix.SucroseEquivalentGrams / waterGrams, _table.Range.High)) + FreezingEquations.MilkSaltsDepression(Mix.MilkSolidsGrams, waterGrams, _saltFactor);

    // The table ends where so much water is left; from there on the water left shrinks as the water activity beside ice says, down to what never freezes.
    private IcePoint? BeyondTable(double celsius, double waterAtEnd, double iceAtEnd)
    {
        if (Mix.Solution is not { } solution) return null;
        var end = iceAtEnd > 0 ? -Depression(waterAtEnd) : FreezingCelsiusOf(solution);
        if (celsius >= end) return new(celsius, iceAtEnd, false);
        var ratio = WaterLeft(solution, celsius) / WaterLeft(solution, Math.Min(end, -1e-3));
        var never = Math.Min(_data.Constant("unfrozen water at most concentration").Value * solution.SoluteGrams, waterAtEnd);
        return new(celsius, 1 - Math.Max(waterAtEnd * Math.Min(ratio, 1), never) / Mix.WaterGrams, false);
    }

    private double FreezingCelsiusOf(Solution solution) => FreezingEquations.FreezingCelsius(NorrishModel.Compute(solution), Linear, Quadratic);

    private double WaterLeft(Solution solution, double celsius) => NorrishModel.WaterGramsAt(solution, FreezingEquations.WaterActivityOfIce(celsius, Linear, Quadratic));

    private static WaterActivityModel NorrishModel => WaterActivityModel.All.First(model => model.Name == "Norrish");

    private double Linear => _data.Constant("ice balance linear term").Value;

    private double Quadratic => _data.Constant("ice balance quadratic term").Value;
}
