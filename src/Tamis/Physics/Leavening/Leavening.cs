namespace Tamis.Physics;

/// <summary>How baking soda gives up its gas.</summary>
public enum SodaReaction
{
    /// <summary>With enough acid: NaHCO₃ + H⁺ → Na⁺ + H₂O + CO₂.</summary>
    WithAcid,
    /// <summary>By heat alone: 2 NaHCO₃ → Na₂CO₃ + H₂O + CO₂; the carbonate that stays tastes of soap.</summary>
    ByHeat,
}

/// <summary>Gas from soda, acids, ammonium bicarbonate and yeast.</summary>
public static class Leavening
{
    private const double GasConstant = 8.3145;                 // J/(mol K)
    private const double ZeroCelsiusKelvin = 273.15;
    private const double CarbonDioxideGramsPerMole = 44.0095;  // molar masses from IUPAC atomic weights
    private const double SodaGramsPerMole = 84.0066;
    private const double AmmoniaGramsPerMole = 17.0305;
    private const double AmmoniumBicarbonateGramsPerMole = 79.0553;

    /// <summary>Carbon dioxide from baking soda, in grams.</summary>
    public static double CarbonDioxideGrams(double sodaGrams, SodaReaction reaction) =>
        sodaGrams * CarbonDioxideGramsPerMole / SodaGramsPerMole / (reaction == SodaReaction.WithAcid ? 1 : 2);

    /// <summary>Ammonia and carbon dioxide together from ammonium bicarbonate, in grams. For thin, dry goods only: the ammonia must get out.</summary>
    public static double GasGramsOfAmmoniumBicarbonate(double massGrams) => massGrams * (AmmoniaGramsPerMole + CarbonDioxideGramsPerMole) / AmmoniumBicarbonateGramsPerMole;

    /// <summary>The acid that uses up the soda, in grams.</summary>
    /// <param name="sodaGrams">The soda.</param>
    /// <param name="neutralisingValue">Grams of soda that 100 g of the acid use up.</param>
    public static double AcidGrams(double sodaGrams, double neutralisingValue) => 100 * sodaGrams / neutralisingValue;

    /// <summary>The acid that uses up the soda, in grams, from molar masses.</summary>
    public static double AcidGramsByMoles(double sodaGrams, double acidGramsPerMole, double sodaGramsPerMole, double acidProtons) => sodaGrams / sodaGramsPerMole * acidGramsPerMole / acidProtons;

    /// <summary>Carbon dioxide of soda and acid together, in grams: the scarcer of the two decides.</summary>
    public static double CarbonDioxideGrams(double sodaGrams, double acidGrams, double neutralisingValue) =>
        CarbonDioxideGrams(Math.Min(sodaGrams, acidGrams * neutralisingValue / 100), SodaReaction.WithAcid);

    /// <summary>Soda that no acid uses up, in grams; negative where acid is left over (as the soda that it lacks).</summary>
    public static double SodaLeftGrams(double sodaGrams, double acidGrams, double neutralisingValue) => sodaGrams - acidGrams * neutralisingValue / 100;

    /// <summary>The volume of carbon dioxide as an ideal gas, in millilitres.</summary>
    public static double CarbonDioxideMillilitres(double carbonDioxideGrams, double temperatureCelsius, double pressureKilopascals) =>
        carbonDioxideGrams / CarbonDioxideGramsPerMole * GasConstant * (temperatureCelsius + ZeroCelsiusKelvin) / pressureKilopascals * 1000;

    /// <summary>How warm the water of a dough must be, in °C, so that the dough comes out as wished.</summary>
    /// <param name="doughCelsius">The wish.</param>
    /// <param name="frictionKelvin">What kneading adds, as the baker reckons it.</param>
    /// <param name="partsCelsius">All that goes in or around beside the water: flour, room, and a preferment if there is one.</param>
    public static double DoughWaterCelsius(double doughCelsius, double frictionKelvin, params ReadOnlySpan<double> partsCelsius)
    {
        var sum = frictionKelvin;
        foreach (var part in partsCelsius) sum += part;
        return (partsCelsius.Length + 1) * doughCelsius - sum;
    }

    /// <summary>Carbon dioxide that yeast makes of glucose, in grams: C₆H₁₂O₆ → 2 C₂H₅OH + 2 CO₂.</summary>
    public static double CarbonDioxideGramsOfGlucose(double glucoseGrams) => glucoseGrams * 2 * CarbonDioxideGramsPerMole / GlucoseGramsPerMole;

    private const double GlucoseGramsPerMole = 180.156;

    /// <summary>Gas of soda with an acid, in grams of carbon dioxide.</summary>
    public static Predicted Gas(Given soda, Given acid, LeaveningAcid kind) =>
        Predicted.From(PhysicsData.Kit.Equation("gas of soda and acid"), [soda, acid, kind.Value], at => CarbonDioxideGrams(at[0], at[1], at[2]));

    /// <summary>The acid for an amount of soda, in grams.</summary>
    public static Predicted Acid(Given soda, LeaveningAcid kind) =>
        Predicted.From(PhysicsData.Kit.Equation("acid for soda"), [soda, kind.Value], at => AcidGrams(at[0], at[1]));

    /// <summary>The water temperature of a dough, in °C, by the rule of three.</summary>
    public static Predicted DoughWater(Given dough, Given flour, Given room, Given friction) =>
        Predicted.From(PhysicsData.Kit.Equation("dough water temperature"), [dough, flour, room, friction], at => DoughWaterCelsius(at[0], at[3], at[1], at[2]));

    /// <summary>Dried yeast in place of fresh, in grams, with the range of practice.</summary>
    /// <param name="freshYeast">Fresh yeast, in grams.</param>
    /// <param name="kind">The dried yeast: <c>active dry</c> or <c>instant</c>.</param>
    public static Predicted DriedYeast(Given freshYeast, string kind) =>
        Predicted.From(PhysicsData.Kit.Equation("dried yeast for fresh"), [freshYeast, PhysicsData.Kit.Constant($"{kind} yeast for a gram of fresh")], at => at[0] * at[1]);
}
