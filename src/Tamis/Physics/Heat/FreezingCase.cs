namespace Tamis.Physics;

/// <summary>A piece of one mixture to be frozen, as the closed equations want it.</summary>
public sealed record FreezingCase
{
    private static readonly Source FromComposition = new("properties after Choi and Okos 1986", Evidence.Computed);

    /// <summary>Slab, roll or ball.</summary>
    public required ConductionShape Shape { get; init; }

    /// <summary>Whole thickness of a slab that is cooled on both faces, or diameter, mm.</summary>
    public required Given Thickness { get; init; }

    /// <summary>Heat transfer coefficient, W/(m²·K).</summary>
    public required Given Transfer { get; init; }

    /// <summary>Temperature of the air, °C.</summary>
    public required Given Air { get; init; }

    /// <summary>Where ice first forms, °C.</summary>
    public required Given FreezingPoint { get; init; }

    /// <summary>Latent heat of the food, kJ/kg.</summary>
    public required Given LatentHeat { get; init; }

    /// <summary>Conductivity when frozen, W/(m·K).</summary>
    public required Given FrozenConductivity { get; init; }

    /// <summary>Density when frozen, kg/m³.</summary>
    public required Given FrozenDensity { get; init; }

    /// <summary>Specific heat when frozen, kJ/(kg·K).</summary>
    public required Given FrozenSpecificHeat { get; init; }

    /// <summary>Density before freezing, kg/m³.</summary>
    public required Given Density { get; init; }

    /// <summary>Specific heat before freezing, kJ/(kg·K).</summary>
    public required Given SpecificHeat { get; init; }

    /// <summary>Temperature at the start, °C.</summary>
    public required Given Initial { get; init; }

    /// <summary>Temperature of the centre at the end, °C.</summary>
    public required Given Final { get; init; }

    /// <summary>Water in the mixture, %.</summary>
    public required Given Water { get; init; }

    /// <summary>The case of a mixture, with its properties at the start and at the final temperature.</summary>
    /// <param name="shape">Slab, roll or ball.</param>
    /// <param name="thickness">Whole thickness or diameter, mm.</param>
    /// <param name="mixture">The mixture.</param>
    /// <param name="transfer">Heat transfer coefficient, W/(m²·K).</param>
    /// <param name="air">The air, °C.</param>
    /// <param name="initial">Temperature at the start, °C.</param>
    /// <param name="final">Temperature of the centre at the end, °C.</param>
    public static FreezingCase Of(ConductionShape shape, Given thickness, ThermalMixture mixture, Given transfer, Given air, Given initial, Given final)
    {
        var latent = PhysicsData.Kit.Constant("latent heat of ice at 0 °C").Value;
        Given Property(string name, string unit, Func<double, double> at, Given when) =>
            new(name, when.IsKnown && CheckedPrediction.Impossible(when) is null ? at(when.Value) : double.NaN, unit, FromComposition);
        return new()
        {
            Shape = shape,
            Thickness = thickness,
            Transfer = transfer,
            Air = air,
            Initial = initial,
            Final = final,
            FreezingPoint = new("freezing point", mixture.FreezingPointCelsius ?? double.NaN, "°C", FromComposition),
            Water = new("water", mixture.Of.Water * 100, "%", FromComposition),
            LatentHeat = Property("latent heat", "kJ/kg", celsius => mixture.IceShare(celsius) * latent, final),
            FrozenConductivity = Property("conductivity when frozen", "W/(m·K)", mixture.ConductivityWPerMK, final),
            FrozenDensity = Property("density when frozen", "kg/m³", mixture.DensityKgPerM3, final),
            FrozenSpecificHeat = Property("specific heat when frozen", "kJ/(kg·K)", mixture.SpecificHeatKJPerKgK, final),
            Density = Property("density", "kg/m³", mixture.DensityKgPerM3, initial),
            SpecificHeat = Property("specific heat", "kJ/(kg·K)", mixture.SpecificHeatKJPerKgK, initial),
        };
    }

    /// <summary>Hours of the phase change alone, after Plank.</summary>
    public Predicted Plank() => CheckedPrediction.Of("freezing_time_plank",
        [
            Thickness.In("thickness", "mm"), Density.In("density", "kg/m³"), LatentHeat.In("latent heat", "kJ/kg"), FreezingPoint.In("freezing point", "°C"),
            Air.In("air temperature", "°C"), Transfer.In("heat transfer coefficient", "W/(m²·K)"), FrozenConductivity.In("conductivity when frozen", "W/(m·K)"),
        ],
        x => FreezingTimes.PlankSeconds(Shape, x[0] / 1000, x[1], x[2] * 1000, x[3], x[4], x[5], x[6]) / 3600,
        x => x[4] < x[3] ? null : "air colder than the freezing point");

    /// <summary>Hours from the start to the final temperature of the centre, after Pham.</summary>
    public Predicted Pham()
    {
        // Of figures that cannot be there is no Biot number, but what they lack is told by themselves.
        var ratio = Transfer.Value * Thickness.Value / 2000 / FrozenConductivity.Value;
        Given biot = new("Biot number", ratio, "", FromComposition);
        return CheckedPrediction.Of("freezing_time_pham",
            [
            Thickness.In("thickness", "mm"), Transfer.In("heat transfer coefficient", "W/(m²·K)"), FrozenConductivity.In("conductivity when frozen", "W/(m·K)"),
            Density.In("density", "kg/m³"), SpecificHeat.In("specific heat", "kJ/(kg·K)"), FrozenDensity.In("density when frozen", "kg/m³"),
            FrozenSpecificHeat.In("specific heat when frozen", "kJ/(kg·K)"), LatentHeat.In("latent heat", "kJ/kg"), Initial.In("initial temperature", "°C"),
            Final.In("final temperature", "°C"), Air.In("air temperature", "°C"), Water.In("water", "%"), biot,
        ],
            x => FreezingTimes.PhamSeconds(Shape, x[0] / 2000, x[1], x[2], x[3] * x[4] * 1000, x[5], x[6] * 1000, x[7] * 1000, x[8], x[9], x[10]) / 3600,
            x => FreezingTimes.PhamMeanFreezingCelsius(x[9], x[10]) is var mean && !(x[10] < x[9] && x[10] < mean) ? "air colder than the final temperature of the centre"
                : x[8] > mean ? null : "a start above the mean freezing temperature");
    }
}
