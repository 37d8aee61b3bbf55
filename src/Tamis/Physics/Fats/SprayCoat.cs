namespace Tamis.Physics;

/// <summary>What happens when melted fat meets a frozen piece.</summary>
/// <remarks>At the moment of contact the surface between two bodies stands at a temperature between theirs, weighed by their effusivities √(k·ρ·c), and keeps it while both are thick (Carslaw and Jaeger 1959, Conduction of Heat in Solids).
/// Fat that is chilled below the melting point of cocoa butter's lowest form sets as it lands, drop by drop: velvet. What stays above it runs together first.</remarks>
public static class SprayCoat
{
    /// <summary>The temperature of the surface between two bodies at the moment of contact, in °C.</summary>
    /// <param name="firstCelsius">One body.</param>
    /// <param name="firstEffusivity">Its √(k·ρ·c), in W·s^½/(m²·K).</param>
    /// <param name="secondCelsius">The other body.</param>
    /// <param name="secondEffusivity">Its effusivity, in the same unit.</param>
    public static double ContactCelsius(double firstCelsius, double firstEffusivity, double secondCelsius, double secondEffusivity) =>
        (firstEffusivity * firstCelsius + secondEffusivity * secondCelsius) / (firstEffusivity + secondEffusivity);

    /// <summary>The mean thickness of a coat, in millimetres.</summary>
    /// <param name="coatGrams">What lands on the piece.</param>
    /// <param name="areaSquareCentimetres">The area that it covers.</param>
    /// <param name="densityGramsPerMillilitre">The density of the coat.</param>
    public static double ThicknessMillimetres(double coatGrams, double areaSquareCentimetres, double densityGramsPerMillilitre) => 10 * coatGrams / densityGramsPerMillilitre / areaSquareCentimetres;

    /// <summary>The heat that a coat gives off until it is as cold as the piece, in joules to a square centimetre.</summary>
    /// <param name="coatGramsPerSquareCentimetre">The coat.</param>
    /// <param name="fatShare">Its fat, 0 to 1.</param>
    /// <param name="coolingKelvin">From gun to piece.</param>
    /// <param name="specificHeatJoulesPerGramKelvin">Of the melted coat.</param>
    /// <param name="latentHeatJoulesPerGram">Of the fat.</param>
    public static double HeatJoulesPerSquareCentimetre(double coatGramsPerSquareCentimetre, double fatShare, double coolingKelvin, double specificHeatJoulesPerGramKelvin, double latentHeatJoulesPerGram) =>
        coatGramsPerSquareCentimetre * (specificHeatJoulesPerGramKelvin * coolingKelvin + fatShare * latentHeatJoulesPerGram);

    /// <summary>The temperature at which spray and piece meet, in °C.</summary>
    /// <param name="spray">The spray as it lands, in °C.</param>
    /// <param name="surface">The surface of the piece, in °C.</param>
    public static Predicted Contact(Given spray, Given surface) => Predicted.From(PhysicsData.Kit.Equation("contact temperature"),
        [spray with { Name = "spray" }, PhysicsData.Kit.Constant("effusivity of melted cocoa butter"), surface with { Name = "surface" }, PhysicsData.Kit.Constant("effusivity of a frozen mousse")],
        at => ContactCelsius(at[0], at[1], at[2], at[3]));

    /// <summary>What one sees, from the temperature at which spray and piece meet.</summary>
    public static SprayFinish Finish(Predicted contact)
    {
        var lowest = CocoaButter.MeltingPoint("I").Value;
        var margin = PhysicsData.Kit.Constant("undercooling for fat to set as it lands").Value;
        return !contact.IsKnown ? SprayFinish.NotKnown : contact.Value > lowest ? SprayFinish.Runs : contact.Value > lowest - margin ? SprayFinish.Patchy : SprayFinish.Velvet;
    }
}

/// <summary>How a sprayed coat looks.</summary>
public enum SprayFinish
{
    /// <summary>A temperature is missing.</summary>
    NotKnown,
    /// <summary>Sets drop by drop as it lands.</summary>
    Velvet,
    /// <summary>Some drops run together first.</summary>
    Patchy,
    /// <summary>Runs together, shines, drips.</summary>
    Runs,
}
