namespace Tamis.Physics;

/// <summary>Water activity of a solution of one salt of single ions (sodium chloride), 25 °C, from its osmotic coefficient φ: ln a = −2 · m · φ · 0.018015.</summary>
public static class Salts
{
    private const double KilogramsPerMoleOfWater = 0.018015;
    private const double Ions = 2;

    /// <summary>The osmotic coefficient by Pitzer (Pitzer &amp; Mayorga 1973), to about 6 mol/kg.</summary>
    /// <param name="molality">Salt, mol to a kilogram of water, zero or more.</param>
    /// <param name="beta0">β0 of the salt, kg/mol.</param>
    /// <param name="beta1">β1 of the salt, kg/mol.</param>
    /// <param name="c">C of the salt, kg²/mol².</param>
    public static double PitzerOsmoticCoefficient(double molality, double beta0, double beta1, double c)
    {
        // A = 0.3915 and b = 1.2 are the equation's own at 25 °C, α = 2 its own for ions of one charge.
        var root = Math.Sqrt(molality);
        return 1 - 0.3915 * root / (1 + 1.2 * root) + molality * (beta0 + beta1 * Math.Exp(-2 * root)) + molality * molality * c;
    }

    /// <summary>Water activity by Pitzer.</summary>
    /// <inheritdoc cref="PitzerOsmoticCoefficient"/>
    public static double PitzerWaterActivity(double molality, double beta0, double beta1, double c) =>
        WaterActivity(molality, PitzerOsmoticCoefficient(molality, beta0, beta1, c));

    /// <summary>The osmotic coefficient by Bromley (1973), to about 6 mol/kg, for a salt of single charges.</summary>
    /// <param name="molality">Salt, mol to a kilogram of water, above zero.</param>
    /// <param name="b">Bromley's B of the salt, kg/mol.</param>
    public static double BromleyOsmoticCoefficient(double molality, double b)
    {
        const double a = 0.511, charges = 1, slope = 1.5 / charges;
        var root = Math.Sqrt(molality);
        var sigma = 3 / (root * root * root) * (1 + root - 1 / (1 + root) - 2 * Math.Log(1 + root));
        var x = slope * molality;
        var psi = 2 / x * ((1 + 2 * x) / ((1 + x) * (1 + x)) - Math.Log(1 + x) / x);
        return 1 - Math.Log(10) * (a * charges * (root / 3) * sigma - (0.06 + 0.6 * b) * charges * (molality / 2) * psi - b * molality / 2);
    }

    /// <summary>Water activity by Bromley.</summary>
    /// <inheritdoc cref="BromleyOsmoticCoefficient"/>
    public static double BromleyWaterActivity(double molality, double b) => WaterActivity(molality, BromleyOsmoticCoefficient(molality, b));

    private static double WaterActivity(double molality, double osmoticCoefficient) => Math.Exp(-Ions * molality * osmoticCoefficient * KilogramsPerMoleOfWater);
}
