namespace Tamis.Physics;

/// <summary>Something that goes into a mixture warm or cold.</summary>
/// <param name="Mass">How much, g.</param>
/// <param name="SpecificHeat">Its specific heat, kJ/(kg·K).</param>
/// <param name="Temperature">Its temperature, °C.</param>
public sealed record MixedPart(Given Mass, Given SpecificHeat, Given Temperature)
{
    /// <summary>Fat of it that is solid now and melts in the mixture, g; null where none does.</summary>
    public Given? MeltingFat { get; init; }

    /// <summary>The melting heat of that fat, J/g.</summary>
    public Given? MeltingHeat { get; init; }
}

/// <summary>What things come to when they are mixed, and what an oven has to give.</summary>
public static class HeatBalance
{
    /// <summary>The temperature of a mixture: heat that one part gives, the others take. Nothing is lost to bowl or air.</summary>
    /// <param name="parts">What is mixed; the melting heat of fat is taken where a part has it.</param>
    public static Predicted MixingTemperature(params IReadOnlyList<MixedPart> parts)
    {
        var key = parts.Any(part => part.MeltingFat is not null) ? "mixing_temperature_melting" : "mixing_temperature";
        Given[] given = [.. parts.SelectMany(part => (Given[])[part.Mass.In("mass", "g"), part.SpecificHeat.In("specific heat", "kJ/(kg·K)"), part.Temperature.In("temperature", "°C"),
            (part.MeltingFat ?? None("g")).In("melting fat", "g"), (part.MeltingHeat ?? None("J/g")).In("melting heat", "J/g")])];
        if (parts.Any(part => part.MeltingFat is not null && part.MeltingHeat is null)) return Predicted.Unknown(PhysicsData.Kit.Equation(key), "the melting heat of the fat");
        return CheckedPrediction.Of(key, given, Temperature, x => Enumerable.Range(0, parts.Count).Sum(i => x[5 * i]) <= 0 ? "a mass above 0 g"
            : parts.Where((_, i) => x[5 * i + 3] > x[5 * i]).Select(part => $"no more melting fat than the mass it is in ({part.Mass.Source})").FirstOrDefault());
    }

    /// <summary>The heat to bring a mass to a temperature while some of its water evaporates, kJ.</summary>
    public static Predicted HeatToBake(Given mass, Given specificHeat, Given from, Given to, Given evaporated) => CheckedPrediction.Of("heat_to_bake",
        [mass.In("mass", "g"), specificHeat.In("specific heat", "kJ/(kg·K)"), from.In("temperature before", "°C"), to.In("temperature after", "°C"), evaporated.In("water that evaporates", "g"), PhysicsData.Kit.Constant("latent heat of evaporation at 100 °C")],
        x => x[0] / 1000 * x[1] * (x[3] - x[2]) + x[4] / 1000 * x[5],
        x => x[4] <= x[0] ? null : "no more evaporated water than there is mass");

    /// <summary>Temperature on bare numbers: five for each part, mass g, specific heat kJ/(kg·K), °C, melting fat g, melting heat J/g.</summary>
    internal static double Temperature(double[] x)
    {
        double heat = 0, capacity = 0;
        for (var i = 0; i + 4 < x.Length; i += 5)
        {
            capacity += x[i] * x[i + 1];
            heat += x[i] * x[i + 1] * x[i + 2] - x[i + 3] * x[i + 4];
        }
        return heat / capacity;
    }

    private static Given None(string unit) => new("nothing", 0, unit, new("nothing melts", Evidence.Computed));
}
