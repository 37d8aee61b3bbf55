namespace Tamis.Physics;

/// <summary>Figures that come from the method or from measuring.</summary>
internal static class MethodFigures
{
    public static IEnumerable<IFigure> All =>
    [
        new OtherFigure("density", "g/mL", (_, _) => Unknown("density", "g/mL", "the density of a weighed cup (measured.csv: density)")),
        new OtherFigure("air", "% by volume", Air),
        new OtherFigure("water activity", "", WaterActivity),
        new OtherFigure("freezing power", "g sucrose in 100 g", FreezingPower),
        Temperature("cooking temperature", null),
        Temperature("spraying temperature", "spray"),
        Temperature("pouring temperature", "pour"),
    ];

    // From a weighed cup and what the mixture would weigh without its air.
    private static Predicted Air(Examined examined, WindowBase on)
    {
        if (examined.MeasuredOf("density") is not { } density) return Unknown("air", "% by volume", "the density of a weighed cup (measured.csv: density)");
        var makeup = HeatMakeup.Of(examined.MixtureOn(on));
        if (makeup.Shares is not { } shares) return Unknown("air", "% by volume", [.. makeup.Lacks]);
        var equation = PhysicsData.Kit.Equation("density_choi_okos");
        Given without = new("density without air at 20 °C", ThermalMixture.Make(shares).DensityKgPerM3(20) / 1000, "g/mL", equation.Source);
        return Predicted.From(PhysicsData.Kit.Equation("air share of densities") with { Name = "air" }, [density, without], at => 100 * Foam.AirVolumeShareOfDensities(at[0], at[1]));
    }

    // A prediction outside the range of every model gives no verdict: measure it.
    private static Predicted WaterActivity(Examined examined, WindowBase on)
    {
        var estimate = WaterActivityEstimate.Of(Balance.Of(examined.MixtureOn(on)));
        if (!estimate.Predicted.IsSound) return Unknown("water activity", "", "a measured water activity (measured.csv: water activity)");
        // As far as the models differ, and as far down as cocoa, starch and proteins may bind water of their own.
        Interval[] doubts = [Interval.At(estimate.Predicted.Value), .. new[] { estimate.Spread, estimate.IfSolidsBindWater }.OfType<Interval>()];
        return estimate.Predicted with { Range = Interval.Between(doubts.Min(range => range.Low), doubts.Max(range => range.High)) };
    }

    private static Predicted FreezingPower(Examined examined, WindowBase on)
    {
        var power = Physics.FreezingPower.Of(Balance.Of(examined.MixtureOn(on)));
        return power.IsKnown ? Predicted.Computed(power.Equation with { Name = "freezing power", Unit = "g sucrose in 100 g" }, 100 * power.Value, () => [power.Working])
            : Unknown("freezing power", "g sucrose in 100 g", [.. power.Lacks]);
    }

    // The temperature of a step that says the word, or the last one before it; without a word the hottest of the method.
    private static OtherFigure Temperature(string name, string? word) => new(name, "°C", (examined, _) =>
    {
        var steps = examined.Steps;
        var at = word is null ? steps.Count - 1 : steps.ToList().FindIndex(step => step.Do.Contains(word, StringComparison.OrdinalIgnoreCase));
        var before = steps.Take(at + 1).Where(step => step.TemperatureCelsius is not null);
        var found = word is null ? before.MaxBy(step => step.TemperatureCelsius) : before.LastOrDefault();
        return found?.TemperatureCelsius is { } celsius
            ? Predicted.From(PhysicsData.Kit.Equation("stated in the method") with { Name = name, Unit = "°C" }, [new($"step {found.Step}: {found.Do}", celsius, "°C", found.Origin)], given => given[0])
            : Unknown(name, "°C", word is null ? "a temperature in the method (steps.csv)" : $"a step that says '{word}' with a temperature (steps.csv)");
    });

    private static Predicted Unknown(string name, string unit, params string[] lacks) => Predicted.Unknown(PhysicsData.Kit.Equation("measured") with { Name = name, Unit = unit }, lacks);
}
