namespace Tamis.Physics;

/// <summary>Water activity of solutions of non-electrolytes: ln a = ln x(water) + K · x(solute)², mole fractions, K negative, 25 °C.</summary>
/// <remarks>Norrish 1966; constants in natural logarithms. The original paper writes decimal ones: K(ln) = 2.303 · K(log10). Sucrose is good down to about 0.75 (0.70 at 80 % by mass), polyols to about 0.6.</remarks>
public static class Norrish
{
    /// <summary>One solute in water.</summary>
    /// <param name="waterMoles">Water, above zero.</param>
    /// <param name="soluteMoles">Solute, zero or more.</param>
    /// <param name="constant">K of the solute, zero or negative.</param>
    public static double WaterActivity(double waterMoles, double soluteMoles, double constant)
    {
        var solute = soluteMoles / (waterMoles + soluteMoles);
        return (1 - solute) * Math.Exp(constant * solute * solute);
    }

    /// <summary>Several solutes, square-root form: ln a = ln x(water) − (Σ √|K| · x)² (Norrish 1966).</summary>
    /// <param name="waterMoles">Water, above zero.</param>
    /// <param name="soluteMoles">Moles of each solute.</param>
    /// <param name="constants">K of each solute.</param>
    /// <exception cref="ArgumentException">The lists differ in length.</exception>
    public static double SquareRoot(double waterMoles, ReadOnlySpan<double> soluteMoles, ReadOnlySpan<double> constants)
    {
        RequireOneConstantASolute(soluteMoles.Length, constants.Length);
        double solutes = 0, roots = 0;
        for (var i = 0; i < soluteMoles.Length; i++)
        {
            solutes += soluteMoles[i];
            roots += Math.Sqrt(Math.Abs(constants[i])) * soluteMoles[i];
        }
        var all = waterMoles + solutes;
        roots /= all;
        return waterMoles / all * Math.Exp(-roots * roots);
    }

    /// <summary>Several solutes with a mean constant: ln a = ln x(water) + K(mean) · x(solutes)², the constants weighed by moles (Ferro Fontán, Chirife &amp; Boquet 1981).</summary>
    /// <inheritdoc cref="SquareRoot"/>
    public static double MeanConstant(double waterMoles, ReadOnlySpan<double> soluteMoles, ReadOnlySpan<double> constants)
    {
        RequireOneConstantASolute(soluteMoles.Length, constants.Length);
        double solutes = 0, weighed = 0;
        for (var i = 0; i < soluteMoles.Length; i++)
        {
            solutes += soluteMoles[i];
            weighed += constants[i] * soluteMoles[i];
        }
        return solutes > 0 ? WaterActivity(waterMoles, solutes, weighed / solutes) : 1;
    }

    internal static void RequireOneConstantASolute(int solutes, int constants)
    {
        if (solutes != constants) throw new ArgumentException($"{solutes} solutes but {constants} constants; give one constant a solute.", nameof(constants));
    }
}
