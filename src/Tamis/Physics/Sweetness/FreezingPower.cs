namespace Tamis.Physics;

/// <summary>How much a solute lowers the freezing point beside as much sucrose: a matter of the number of its particles.</summary>
/// <remarks>A law of dilute solutions; good for ranking and for sucrose equivalents to about 40 % of sugar.</remarks>
public static class FreezingPower
{
    /// <summary>Freezing power of a substance, sucrose being 1, by mass of dry matter.</summary>
    /// <param name="molarMassGramsPerMole">Its molar mass, of the hydrate where it is weighed as one.</param>
    /// <param name="particles">Particles that a formula unit makes in water: 2 for table salt.</param>
    public static double Relative(double molarMassGramsPerMole, double particles = 1) => Molar.DisaccharideGramsPerMole * particles / molarMassGramsPerMole;

    /// <summary>Freezing power of the dry matter of a glucose syrup, from its dextrose equivalent.</summary>
    public static double OfGlucoseSyrup(double dextroseEquivalentPercent) => Relative(GlucoseSyrups.HundredGlucoseGramsPerMole / dextroseEquivalentPercent);

    /// <summary>Freezing power of a mixture by its solutes: the sum of mass times power, over the whole mass.</summary>
    /// <exception cref="ArgumentException">The lists differ in length, or the whole weighs nothing.</exception>
    public static double OfMixture(ReadOnlySpan<double> massGrams, ReadOnlySpan<double> powers, double totalGrams) => totalGrams > 0
        ? Sweetness.SucroseEquivalentGrams(massGrams, powers) / totalGrams
        : throw new ArgumentException(FormattableString.Invariant($"A mixture weighs more than nothing; found {totalGrams} g."), nameof(totalGrams));

    /// <summary>Freezing power of 1 g of a mixture as it is, sucrose being 1.</summary>
    public static Predicted Of(Balance balance, Solutes? table = null)
    {
        var solution = Solution.Of(balance, table: table).AllDissolved;
        var equation = solution.Table.Data.Equation("freezing power of a mixture");
        if (solution.Lacks.Count > 0) return Predicted.Unknown(equation, solution.Lacks);
        return Predicted.Computed(equation, solution.ParticleMoles * Molar.DisaccharideGramsPerMole / balance.FinishedGrams,
            () => [.. solution.Solutes.Select(each => new Working($"{each.Solute.Name}, as sucrose", each.Moles * each.Solute.Particles * Molar.DisaccharideGramsPerMole, "g", each.Solute.Source))]);
    }
}
