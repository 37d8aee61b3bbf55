namespace Tamis.Physics;

/// <summary>Air pressure by altitude, and what it does to boiling.</summary>
public static class AirPressure
{
    /// <summary>Pressure of the standard atmosphere in kPa, to 11 km.</summary>
    /// <param name="altitudeMetres">Above the sea, in metres.</param>
    /// <param name="seaLevelKilopascals">101.325.</param>
    /// <param name="factorPerMetre">2.25577e-5 in the standard.</param>
    /// <param name="exponent">5.25588 in the standard.</param>
    public static double Kilopascals(double altitudeMetres, double seaLevelKilopascals, double factorPerMetre, double exponent) =>
        seaLevelKilopascals * Math.Pow(1 - factorPerMetre * altitudeMetres, exponent);

    /// <summary>Air pressure at an altitude.</summary>
    public static Predicted At(double altitudeMetres, PhysicsData? data = null)
    {
        data ??= PhysicsData.Kit;
        return Predicted.From(data.Equation("altitude pressure"),
            [Altitude(altitudeMetres), data.Constant("pressure at sea level"), data.Constant("pressure altitude factor"), data.Constant("pressure altitude exponent")],
            given => Kilopascals(given[0], given[1], given[2], given[3]));
    }

    /// <summary>By how much a sugar stage shifts at an altitude, in °C: below zero above the sea.</summary>
    public static Predicted StageShift(double altitudeMetres, PhysicsData? data = null)
    {
        data ??= PhysicsData.Kit;
        return Predicted.From(data.Equation("stage shift"), [Altitude(altitudeMetres), data.Constant("metres a degree of boiling point")], given => -given[0] / given[1]);
    }

    private static Given Altitude(double metres) => new("altitude", metres, "m", new("as asked", Evidence.Sheet));
}
