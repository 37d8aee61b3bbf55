namespace Tamis.Physics;

/// <summary>Figures that come from the method or from measuring.</summary>
internal static class MethodFigures
{
    public static IEnumerable<IFigure> All =>
    [
        new OtherFigure("density", "g/mL", (_, _) => Unknown("density", "g/mL", "the density of a weighed cup (measured.csv: density)")),
        new OtherFigure("air", "% by volume", Air),
        new OtherFigure("water activity", "", (_, _) => Unknown("water activity", "", "a measured water activity (measured.csv: water activity)")),
        new OtherFigure("freezing power", "g sucrose in 100 g", (_, _) => Unknown("freezing power", "g sucrose in 100 g", "the freezing power of its sugars (measured.csv: freezing power)")),
        Temperature("cooking temperature", null),
        Temperature("spraying temperature", "spray"),
        Temperature("pouring temperature", "pour"),
    ];

    private static Predicted Air(Examined examined, WindowBase on) =>
        examined.MeasuredOf("density") is not { } density || examined.MeasuredOf("density without air") is not { } without
            ? Unknown("air", "% by volume", "the density with and without air (measured.csv: density; density without air)")
            : Predicted.From(PhysicsData.Kit.Equation("air share of densities") with { Name = "air" }, [density, without], at => 100 * Foam.AirVolumeShareOfDensities(at[0], at[1]));

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

    private static Predicted Unknown(string name, string unit, string lacks) => Predicted.Unknown(PhysicsData.Kit.Equation("measured") with { Name = name, Unit = unit }, lacks);
}
