namespace Tamis.Physics;

/// <summary>Water activity by the short equations: Raoult, Ross, Money and Born, Grover, Chen.</summary>
public static class SimpleModels
{
    private const double WaterKilogramsPerMole = 0.018;

    /// <summary>Raoult: the mole fraction of water. Ideal; near 1, or above about 0.97.</summary>
    /// <param name="waterMoles">Water, above zero.</param>
    /// <param name="particleMoles">Everything dissolved; a salt counts once for each ion.</param>
    public static double Raoult(double waterMoles, double particleMoles) => waterMoles / (waterMoles + particleMoles);

    /// <summary>Ross (1975): the product of the water activities of each solute alone in all the water. Good above 0.75; the error is usually under 0.01 above 0.85.</summary>
    public static double Ross(ReadOnlySpan<double> alone)
    {
        var product = 1.0;
        foreach (var activity in alone) product *= activity;
        return product;
    }

    /// <summary>Money and Born (1951): 1/(1 + 0.27 · n). Jams, fondant, above 0.75.</summary>
    /// <param name="molesPer100GramsWater">Moles of sugar to 100 g of water.</param>
    /// <param name="factor">0.27 in the paper, 100 g water/mol.</param>
    public static double MoneyAndBorn(double molesPer100GramsWater, double factor) => 1 / (1 + factor * molesPer100GramsWater);

    /// <summary>Grover (1947): c0 − c1 · E + c2 · E². For E from about 1 to 10, not for dilute mixtures.</summary>
    /// <param name="sucroseEquivalent">E: grams of each solid times its factor, to a gram of all the water.</param>
    /// <param name="constant">c0, 1.04 in the paper.</param>
    /// <param name="linear">c1, 0.10 in the paper.</param>
    /// <param name="quadratic">c2, 0.0045 in the paper.</param>
    public static double Grover(double sucroseEquivalent, double constant, double linear, double quadratic) =>
        constant - linear * sucroseEquivalent + quadratic * sucroseEquivalent * sucroseEquivalent;

    /// <summary>Chen (1989): 1/(1 + 0.018 · m · (β + B · m^n)), to 6 mol/kg.</summary>
    /// <param name="molality">Solute, mol to a kilogram of water.</param>
    /// <param name="beta">β of the solute.</param>
    /// <param name="b">B of the solute.</param>
    /// <param name="n">n of the solute.</param>
    public static double Chen(double molality, double beta, double b, double n) => 1 / (1 + WaterKilogramsPerMole * molality * (beta + b * Math.Pow(molality, n)));
}
