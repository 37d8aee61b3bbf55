namespace Tamis.Physics;

/// <summary>Cocoa butter: its crystal forms, and how liquid oil dissolves it.</summary>
/// <remarks>The ideal solubility law (Hildebrand) takes cocoa butter of form V as one substance; the lever rule then says what stays solid, mass shares standing for mole shares.</remarks>
public static class CocoaButter
{
    private const double GasConstant = 8.3145;      // J/(mol K), CODATA, five digits
    private const double ZeroCelsiusKelvin = 273.15;

    /// <summary>The share of cocoa butter that liquid oil holds dissolved at a temperature, 0 to 1.</summary>
    /// <remarks>ln x = (ΔH/R)·(1/Tm − 1/T).</remarks>
    public static double IdealSolubilityShare(double temperatureCelsius, double fusionKilojoulesPerMole, double meltingPointCelsius) =>
        Math.Min(1, Math.Exp(fusionKilojoulesPerMole * 1000 / GasConstant * (1 / (meltingPointCelsius + ZeroCelsiusKelvin) - 1 / (temperatureCelsius + ZeroCelsiusKelvin))));

    /// <summary>The solid share of a mixture of cocoa butter and liquid oil, 0 to 1, by the lever rule.</summary>
    /// <param name="cocoaButterShare">Cocoa butter in the fat, 0 to 1.</param>
    /// <param name="temperatureCelsius">The temperature.</param>
    /// <param name="fusionKilojoulesPerMole">Its heat of melting.</param>
    /// <param name="meltingPointCelsius">Its melting point.</param>
    public static double SolidShare(double cocoaButterShare, double temperatureCelsius, double fusionKilojoulesPerMole, double meltingPointCelsius)
    {
        var dissolved = IdealSolubilityShare(temperatureCelsius, fusionKilojoulesPerMole, meltingPointCelsius);
        return dissolved >= 1 ? 0 : Math.Max(0, (cocoaButterShare - dissolved) / (1 - dissolved));
    }

    /// <summary>The solid share with the kit's constants of form V, 0 to 1.</summary>
    public static double SolidShare(double cocoaButterShare, double temperatureCelsius) =>
        SolidShare(cocoaButterShare, temperatureCelsius, PhysicsData.Kit.Constant("cocoa butter heat of melting, form V").Value, MeltingPoint("V").Value);

    /// <summary>The melting point of a crystal form, in °C.</summary>
    /// <param name="form">The form, <c>I</c> to <c>VI</c>.</param>
    /// <exception cref="KeyNotFoundException">There is no such form.</exception>
    public static Given MeltingPoint(string form) => PhysicsData.Kit.Constant($"cocoa butter melting point, form {form}");

    /// <summary>The solid share of a mixture of cocoa butter with liquid oil, in per cent of the fat.</summary>
    public static Predicted Solid(Given cocoaButterOfFat, Given temperature) => Predicted.From(PhysicsData.Kit.Equation("cocoa butter in oil"),
        [cocoaButterOfFat, temperature with { Name = "temperature" }, PhysicsData.Kit.Constant("cocoa butter heat of melting, form V"), MeltingPoint("V")],
        at => 100 * SolidShare(at[0] / 100, at[1], at[2], at[3]));
}
