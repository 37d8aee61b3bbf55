namespace Tamis.Physics;

/// <summary>How much of a solute water holds.</summary>
public static class Solubility
{
    /// <summary>Sucrose in water, per cent by mass: a polynomial of third degree in the temperature (Charles 1960, Vavrinecz 1962; the basis of the ICUMSA line), −13 to 100 °C.</summary>
    public static double SucrosePercent(double celsius, double a0, double a1, double a2, double a3) => a0 + celsius * (a1 + celsius * (a2 + celsius * a3));

    /// <summary>Grams to 100 g of water from per cent by mass.</summary>
    /// <param name="percent">Per cent by mass of the solution, 0 to under 100.</param>
    public static double Per100GramsWater(double percent) => 100 * percent / (100 - percent);

    /// <summary>Per cent by mass from grams to 100 g of water.</summary>
    public static double Percent(double gramsPer100GramsWater) => 100 * gramsPer100GramsWater / (100 + gramsPer100GramsWater);

    /// <summary>Sucrose in water at a temperature, in per cent by mass.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies below absolute zero.</exception>
    public static Predicted Sucrose(double celsius, PhysicsData? data = null)
    {
        data ??= PhysicsData.Kit;
        var (a0, a1, a2, a3) = SucroseConstants(data);
        return Predicted.From(data.Equation("sucrose solubility"), [Temperature.Given(celsius)], given => SucrosePercent(given[0], a0, a1, a2, a3));
    }

    /// <summary>Grams of sucrose that 100 g of water hold, by the older table, which lies a little above the polynomial.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies below absolute zero.</exception>
    public static Predicted SucroseByTable(double celsius, PhysicsData? data = null)
    {
        data ??= PhysicsData.Kit;
        var table = ColumnTable.Read(data.Table("sucrose-solubility.csv"), "temperature_c", "g_100g_water");
        return Predicted.From(data.Equation("sucrose solubility table"), [Temperature.Given(celsius)], given => table.Linear(given[0]));
    }

    /// <summary>Grams of a solute that 100 g of water hold at a temperature; null where nothing limits it that the kit knows. Outside the table the nearest row counts.</summary>
    internal static double? GramsPer100GramsWater(Solute solute, double celsius, PhysicsData data)
    {
        if (solute.Part is BalancePart.Sucrose)
        {
            var (a0, a1, a2, a3) = SucroseConstants(data);
            var valid = data.Equation("sucrose solubility").Valid[0].Range;
            return Per100GramsWater(SucrosePercent(Math.Clamp(celsius, valid.Low, valid.High), a0, a1, a2, a3));
        }
        return solute.Solubility.Count == 0 ? null : Between(solute.Solubility, celsius);
    }

    internal static double Between(IReadOnlyList<(double X, double Y)> rows, double x)
    {
        if (x <= rows[0].X) return rows[0].Y;
        for (var i = 1; i < rows.Count; i++)
            if (x <= rows[i].X) return rows[i - 1].Y + (rows[i].Y - rows[i - 1].Y) * (x - rows[i - 1].X) / (rows[i].X - rows[i - 1].X);
        return rows[^1].Y;
    }

    private static (double, double, double, double) SucroseConstants(PhysicsData data) =>
        (data.Constant("sucrose solubility a0").Value, data.Constant("sucrose solubility a1").Value, data.Constant("sucrose solubility a2").Value, data.Constant("sucrose solubility a3").Value);
}
