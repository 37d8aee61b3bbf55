namespace Tamis.Physics;

/// <summary>The same gel from a gelatine of another strength, by both rules of the trade.</summary>
/// <param name="Linear">By mass times strength, as most chefs' tables have it, in grams.</param>
/// <param name="SquareRoot">By mass times the root of the strength, as gelatine makers have it, in grams.</param>
public sealed record BloomConversion(Predicted Linear, Predicted SquareRoot)
{
    /// <summary>What the root rule asks for beyond the linear one, in grams; negative where it asks for less.</summary>
    public double DifferenceGrams => SquareRoot.Value - Linear.Value;

    /// <summary>The difference in per cent of the linear rule's mass.</summary>
    public double DifferencePercent => DifferenceGrams / Linear.Value * 100;
}

/// <summary>Gelatine: from one strength to another, what soaked leaves carry in, and the dose.</summary>
/// <remarks>All masses are dry gelatine. Strength is in grams Bloom: the force on a plunger of 12.7 mm that dents a gel of 6.67 % by 4 mm after a night at 10 °C.</remarks>
public static class Gelatine
{
    /// <summary>The strength in which the windows of the kit state a dose, in grams Bloom.</summary>
    public static double ReferenceBloom => PhysicsData.Kit.Constant("reference gelatine strength").Value;

    /// <summary>Mass that sets as firm, by mass times strength. 80 to 260 g Bloom.</summary>
    /// <remarks>m₂ = m₁·B₁/B₂; Myhrvold, Young and Bilet 2011.</remarks>
    public static double LinearEquivalentGrams(double massGrams, double bloomFromGrams, double bloomToGrams) => massGrams * bloomFromGrams / bloomToGrams;

    /// <summary>Mass that sets as firm, by mass times the root of the strength: gel strength grows with the square of the concentration. 80 to 260 g Bloom.</summary>
    /// <remarks>m₂ = m₁·√(B₁/B₂); gelatine makers' handbooks.</remarks>
    public static double SquareRootEquivalentGrams(double massGrams, double bloomFromGrams, double bloomToGrams) => massGrams * Math.Sqrt(bloomFromGrams / bloomToGrams);

    /// <summary>Gelatine with the water that it soaked up, in grams.</summary>
    /// <param name="gelatineGrams">Dry gelatine.</param>
    /// <param name="waterPerGelatineRatio">Water taken up to a gram of gelatine, usually 5 to 6.</param>
    public static double HydratedMassGrams(double gelatineGrams, double waterPerGelatineRatio) => gelatineGrams * (1 + waterPerGelatineRatio);

    /// <summary>Gelatine in per cent of a mass: of the mixture, or of all its water.</summary>
    public static double DosePercent(double gelatineGrams, double ofGrams) => gelatineGrams / ofGrams * 100;

    /// <summary>The mass of another strength that sets as firm, by both rules.</summary>
    /// <param name="mass">The gelatine, in grams.</param>
    /// <param name="bloomFrom">Its strength, in grams Bloom.</param>
    /// <param name="bloomTo">The strength of the other, in grams Bloom.</param>
    public static BloomConversion Convert(Given mass, Given bloomFrom, Given bloomTo)
    {
        Given[] given = [mass, bloomFrom with { Name = "strength from" }, bloomTo with { Name = "strength to" }];
        return new(
            Predicted.From(PhysicsData.Kit.Equation("bloom linear"), given, at => LinearEquivalentGrams(at[0], at[1], at[2])),
            Predicted.From(PhysicsData.Kit.Equation("bloom square root"), given, at => SquareRootEquivalentGrams(at[0], at[1], at[2])));
    }

    /// <summary>The water that soaked gelatine carries into a mixture, in grams, with the range of what leaves take up.</summary>
    /// <param name="gelatine">The dry gelatine, in grams.</param>
    public static Predicted WaterCarriedIn(Given gelatine) =>
        Predicted.From(PhysicsData.Kit.Equation("gelatine soaking water"), [gelatine, PhysicsData.Kit.Constant("water taken up by gelatine")], at => HydratedMassGrams(at[0], at[1]) - at[0]);

    /// <summary>The dose against the whole mixture, in per cent.</summary>
    public static Predicted DoseOfMixture(Given gelatine, Given mixture) =>
        Predicted.From(PhysicsData.Kit.Equation("gelatine dose"), [gelatine, mixture], at => DosePercent(at[0], at[1]));

    /// <summary>The dose against all the water of the mixture, in per cent: what carries from one recipe to another.</summary>
    public static Predicted DoseOfWater(Given gelatine, Given water) =>
        Predicted.From(PhysicsData.Kit.Equation("gelatine dose of water"), [gelatine, water], at => DosePercent(at[0], at[1]));
}
