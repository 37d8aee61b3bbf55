namespace Tamis.Physics;

/// <summary>Sucrose in water at 20 °C: density, refractive index, Brix and Baumé, each way.</summary>
public static class SucroseSolution
{
    private static readonly Source Asked = new("as asked", Evidence.Sheet);

    /// <summary>Density in g/mL at 20 °C: a polynomial of fourth degree in per cent by mass, 0 to 85 %.</summary>
    public static double DensityGramsPerMillilitre(double sucrosePercent, double d0, double d1, double d2, double d3, double d4) =>
        d0 + sucrosePercent * (d1 + sucrosePercent * (d2 + sucrosePercent * (d3 + sucrosePercent * d4)));

    /// <summary>Baumé degrees of a liquid heavier than water: m − m/s, m being 145.</summary>
    /// <param name="specificGravity">Density over that of water, both at 20 °C.</param>
    /// <param name="modulus">145 of the scale in use.</param>
    public static double Baume(double specificGravity, double modulus) => modulus - modulus / specificGravity;

    /// <summary>Specific gravity from Baumé degrees.</summary>
    public static double SpecificGravity(double baume, double modulus) => modulus / (modulus - baume);

    /// <summary>Density of a sucrose solution of so many per cent by mass.</summary>
    public static Predicted Density(double sucrosePercent, PhysicsData? data = null)
    {
        data ??= PhysicsData.Kit;
        return Predicted.From(data.Equation("sucrose density"), [Sucrose(sucrosePercent)], given => DensityAt(given[0], data));
    }

    /// <summary>Sucrose in per cent by mass from a density at 20 °C; no value outside the table.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The density is not above zero.</exception>
    public static double PercentFromDensity(double gramsPerMillilitre, PhysicsData? data = null)
    {
        data ??= PhysicsData.Kit;
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(gramsPerMillilitre);
        var range = data.Equation("sucrose density").Valid[0].Range;
        return Roots.Bisect(percent => DensityAt(percent, data) - gramsPerMillilitre, range.Low, range.High);
    }

    /// <summary>Refractive index of a sucrose solution at 589 nm.</summary>
    public static Predicted RefractiveIndex(double sucrosePercent, PhysicsData? data = null)
    {
        data ??= PhysicsData.Kit;
        var table = ColumnTable.Read(data.Table("sucrose-20c.csv"), "sucrose_percent", "refractive_index");
        return Predicted.From(data.Equation("refractive index"), [Sucrose(sucrosePercent)], given => table.Cubic(given[0]));
    }

    /// <summary>What a refractometer reads as °Brix: the sucrose solution of that refractive index. Glucose syrup, acid and salt refract otherwise than sucrose.</summary>
    public static Predicted BrixFromRefractiveIndex(double refractiveIndex, PhysicsData? data = null)
    {
        data ??= PhysicsData.Kit;
        var table = ColumnTable.Read(data.Table("sucrose-20c.csv"), "sucrose_percent", "refractive_index");
        return Predicted.From(data.Equation("brix"), [new("refractive index", refractiveIndex, "", Asked)], given => Roots.Bisect(percent => table.Cubic(percent) - given[0], table.Range.Low, table.Range.High));
    }

    /// <summary>Baumé degrees of a sucrose solution.</summary>
    public static Predicted BaumeOf(double sucrosePercent, PhysicsData? data = null)
    {
        data ??= PhysicsData.Kit;
        var (water, modulus) = (data.Constant("water density at 20 °C"), data.Constant("baume modulus"));
        Given gravity = new("specific gravity", DensityAt(sucrosePercent, data) / water.Value, "", new("density over that of water", Evidence.Computed));
        return Predicted.From(data.Equation("baume"), [gravity, modulus], given => Baume(given[0], given[1]));
    }

    /// <summary>Sucrose in per cent by mass of a syrup of so many Baumé degrees.</summary>
    public static double PercentFromBaume(double baume, PhysicsData? data = null)
    {
        data ??= PhysicsData.Kit;
        return PercentFromDensity(SpecificGravity(baume, data.Constant("baume modulus").Value) * data.Constant("water density at 20 °C").Value, data);
    }

    internal static Given Sucrose(double percent) => percent >= 0 && percent <= 100 ? new("sucrose", percent, "%", Asked)
        : throw new ArgumentOutOfRangeException(nameof(percent), percent, "A concentration lies between 0 and 100 per cent by mass.");

    private static double DensityAt(double percent, PhysicsData data) => DensityGramsPerMillilitre(percent,
        data.Constant("sucrose density d0").Value, data.Constant("sucrose density d1").Value, data.Constant("sucrose density d2").Value, data.Constant("sucrose density d3").Value, data.Constant("sucrose density d4").Value);
}
