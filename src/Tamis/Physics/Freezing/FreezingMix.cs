namespace Tamis.Physics;

/// <summary>What decides how a mixture freezes: its water, its solutes as sucrose, and its milk solids for their salts.</summary>
/// <param name="WaterGrams">Water, above zero.</param>
/// <param name="SucroseEquivalentGrams">Solutes as grams of sucrose that lower the freezing point as much; lactose of milk is in it.</param>
/// <param name="MilkSolidsGrams">Milk solids not fat, lactose included, and whey solids: they bring salts.</param>
public sealed record FreezingMix(double WaterGrams, double SucroseEquivalentGrams, double MilkSolidsGrams)
{
    /// <summary>What must be known first; empty where enough is.</summary>
    public IReadOnlyList<string> Lacks { get; init; } = [];

    /// <summary>The solutes one by one, for the ice at low temperatures; null where the mix was given as sucrose equivalents.</summary>
    public Solution? Solution { get; init; }

    /// <summary>Sucrose equivalents to 100 g of water.</summary>
    public double SucroseGramsPer100GramsWater => 100 * SucroseEquivalentGrams / WaterGrams;

    /// <summary>The mix of a balance: every solute by its number of particles, with the milk salts apart.</summary>
    public static FreezingMix Of(Balance balance, PhysicsData? data = null)
    {
        data ??= PhysicsData.Kit;
        var solution = Solution.Of(balance).AllDissolved;
        // Lactose that was added as such brings no salts: milk solids hold so much of it and no more.
        var milk = Math.Min(balance[BalancePart.MilkSolids].Known + balance[BalancePart.Lactose].Known, balance[BalancePart.MilkSolids].Known / (1 - data.Constant("lactose in milk solids not fat").Value));
        return new(solution.WaterGrams, solution.ParticleMoles * Molar.DisaccharideGramsPerMole, milk) { Lacks = solution.Lacks, Solution = solution };
    }

    /// <summary>The mix of masses as a sheet of frozen desserts has them; in grams.</summary>
    /// <param name="waterGrams">Water, above zero.</param>
    /// <param name="disaccharidesGrams">Sucrose and other disaccharides, without the lactose of the milk solids.</param>
    /// <param name="milkSolidsGrams">Milk solids not fat.</param>
    /// <param name="wheySolidsGrams">Whey solids.</param>
    /// <param name="monosaccharidesGrams">Dextrose and fructose.</param>
    /// <param name="syrupSolidsGrams">Solids of glucose syrup.</param>
    /// <param name="syrupFactor">Sucrose equivalents of a gram of them.</param>
    /// <exception cref="ArgumentOutOfRangeException">A mass is negative, or there is no water.</exception>
    public static FreezingMix FromGrams(double waterGrams, double disaccharidesGrams, double milkSolidsGrams = 0, double wheySolidsGrams = 0, double monosaccharidesGrams = 0, double syrupSolidsGrams = 0, double syrupFactor = 0)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(waterGrams);
        foreach (var grams in (ReadOnlySpan<double>)[disaccharidesGrams, milkSolidsGrams, wheySolidsGrams, monosaccharidesGrams, syrupSolidsGrams, syrupFactor])
            if (!(grams >= 0) || !double.IsFinite(grams)) throw new ArgumentOutOfRangeException(nameof(disaccharidesGrams), grams, "A mass is zero grams or more.");
        var data = PhysicsData.Kit;
        var sucrose = data.Constant("lactose in milk solids not fat").Value * milkSolidsGrams + data.Constant("lactose in whey solids").Value * wheySolidsGrams
            + disaccharidesGrams + data.Constant("monosaccharide equivalent").Value * monosaccharidesGrams + syrupFactor * syrupSolidsGrams;
        return new(waterGrams, sucrose, milkSolidsGrams + wheySolidsGrams);
    }
}
