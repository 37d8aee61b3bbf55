namespace Tamis.Physics;

/// <summary>A foam that is folded into something.</summary>
/// <param name="MassGrams">Its mass.</param>
/// <param name="DensityGramsPerMillilitre">Its density as whipped.</param>
/// <param name="LiquidDensityGramsPerMillilitre">The density of what was whipped, without its air.</param>
/// <param name="AirLossPercent">The share of its air that folding costs, per cent.</param>
public readonly record struct FoldedFoam(double MassGrams, double DensityGramsPerMillilitre, double LiquidDensityGramsPerMillilitre, double AirLossPercent);

/// <summary>Air in mixtures: overrun, density, air share, and what folding costs.</summary>
/// <remarks>Overrun is the volume of air in per cent of the volume without it (Goff, dairy science text of the University of Guelph).</remarks>
public static class Foam
{
    /// <summary>Overrun in per cent from the masses of equal volumes.</summary>
    public static double OverrunPercent(double liquidGrams, double foamGrams) => 100 * (liquidGrams - foamGrams) / foamGrams;

    /// <summary>The density of a foam in g/mL from that of its liquid and the overrun.</summary>
    public static double DensityGramsPerMillilitre(double liquidDensityGramsPerMillilitre, double overrunPercent) => liquidDensityGramsPerMillilitre / (1 + overrunPercent / 100);

    /// <summary>The share of a foam's volume that is air, 0 to 1.</summary>
    public static double AirVolumeShare(double overrunPercent) => overrunPercent / (100 + overrunPercent);

    /// <summary>The overrun in per cent that belongs to a share of air.</summary>
    public static double OverrunPercentOfAir(double airVolumeShare) => 100 * airVolumeShare / (1 - airVolumeShare);

    /// <summary>The share of air from the densities with and without it, 0 to 1.</summary>
    public static double AirVolumeShareOfDensities(double density, double densityWithoutAir) => 1 - density / densityWithoutAir;

    /// <summary>The density in g/mL of a base with foams folded in: volumes add, and folding costs each foam a share of its air.</summary>
    public static double FoldedDensityGramsPerMillilitre(double baseGrams, double baseDensityGramsPerMillilitre, params ReadOnlySpan<FoldedFoam> foams)
    {
        var (massGrams, millilitres) = (baseGrams, baseGrams > 0 ? baseGrams / baseDensityGramsPerMillilitre : 0);
        foreach (var foam in foams)
        {
            massGrams += foam.MassGrams;
            var liquid = foam.MassGrams / foam.LiquidDensityGramsPerMillilitre;
            millilitres += liquid + (foam.MassGrams / foam.DensityGramsPerMillilitre - liquid) * (1 - foam.AirLossPercent / 100);
        }
        return massGrams / millilitres;
    }

    /// <summary>The density without air in g/mL of substances that do not mix their volumes: total mass over the sum of the volumes.</summary>
    /// <param name="massGrams">The mass of each.</param>
    /// <param name="densityGramsPerMillilitre">The density of each.</param>
    /// <exception cref="ArgumentException">The two lists differ in length.</exception>
    public static double DensityWithoutAirGramsPerMillilitre(ReadOnlySpan<double> massGrams, ReadOnlySpan<double> densityGramsPerMillilitre)
    {
        if (massGrams.Length != densityGramsPerMillilitre.Length) throw new ArgumentException($"{massGrams.Length} masses but {densityGramsPerMillilitre.Length} densities; give one density a mass.", nameof(densityGramsPerMillilitre));
        double grams = 0, millilitres = 0;
        for (var i = 0; i < massGrams.Length; i++) (grams, millilitres) = (grams + massGrams[i], millilitres + massGrams[i] / densityGramsPerMillilitre[i]);
        return grams / millilitres;
    }

    /// <summary>Overrun from two weighed cups of the same volume.</summary>
    public static Predicted Overrun(Given liquid, Given foam) => Predicted.From(PhysicsData.Kit.Equation("overrun"), [liquid, foam], at => OverrunPercent(at[0], at[1]));

    /// <summary>Density of a foam, in g/mL.</summary>
    public static Predicted Density(Given liquidDensity, Given overrun) => Predicted.From(PhysicsData.Kit.Equation("foam density"), [liquidDensity, overrun with { Name = "overrun" }], at => DensityGramsPerMillilitre(at[0], at[1]));

    /// <summary>Air of a foam, in per cent by volume.</summary>
    public static Predicted Air(Given overrun) => Predicted.From(PhysicsData.Kit.Equation("air share"), [overrun with { Name = "overrun" }], at => 100 * AirVolumeShare(at[0]));

    /// <summary>Density of a base with a foam folded in, in g/mL, with the range of overrun and of what folding costs.</summary>
    /// <param name="baseMass">Mass of the base, in grams.</param>
    /// <param name="baseDensity">Its density, in g/mL.</param>
    /// <param name="foamMass">Mass of the foam, in grams.</param>
    /// <param name="foamLiquidDensity">The density of the foam's liquid, in g/mL.</param>
    /// <param name="kind">Which foam it is: its usual overrun and survival.</param>
    public static Predicted Folded(Given baseMass, Given baseDensity, Given foamMass, Given foamLiquidDensity, FoamKind kind) => Predicted.From(
        PhysicsData.Kit.Equation("folded density"), [baseMass, baseDensity, foamMass, foamLiquidDensity, kind.Overrun, kind.AirKept],
        at => FoldedDensityGramsPerMillilitre(at[0], at[1], new FoldedFoam(at[2], DensityGramsPerMillilitre(at[3], at[4]), at[3], 100 - at[5])));
}
