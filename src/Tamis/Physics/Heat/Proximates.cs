using System.Globalization;

namespace Tamis.Physics;

/// <summary>What a mixture is made of, in shares of its mass that sum to one: water, protein, fat, carbohydrate, fibre, ash.</summary>
public sealed record Proximates
{
    private static readonly string[] Words = ["water", "protein", "fat", "carbohydrate", "fibre", "ash"];

    private Proximates(double[] shares) => (Water, Protein, Fat, Carbohydrate, Fibre, Ash) = (shares[0], shares[1], shares[2], shares[3], shares[4], shares[5]);

    /// <summary>Water, frozen or not.</summary>
    public double Water { get; }

    /// <summary>Protein.</summary>
    public double Protein { get; }

    /// <summary>Fat.</summary>
    public double Fat { get; }

    /// <summary>Sugars and starch.</summary>
    public double Carbohydrate { get; }

    /// <summary>Fibre.</summary>
    public double Fibre { get; }

    /// <summary>Minerals.</summary>
    public double Ash { get; }

    /// <summary>From masses, of any total; the shares are of what is given.</summary>
    /// <exception cref="ArgumentException">A mass is negative or not a number, or there is nothing at all; every one is named.</exception>
    public static Proximates FromGrams(double water, double protein = 0, double fat = 0, double carbohydrate = 0, double fibre = 0, double ash = 0)
    {
        double[] grams = [water, protein, fat, carbohydrate, fibre, ash];
        string[] wrong = [.. grams.Select((mass, i) => double.IsFinite(mass) && mass >= 0 ? null : string.Create(CultureInfo.InvariantCulture, $"{Words[i]} is {mass:0.###} g")).OfType<string>()];
        if (wrong.Length > 0) throw new ArgumentException($"A mass is zero grams or more; {string.Join(", ", wrong)}.");
        var total = grams.Sum();
        return total > 0 ? new([.. grams.Select(mass => mass / total)]) : throw new ArgumentException("A mixture of nothing carries no heat; give at least one mass above zero.");
    }

    /// <summary>The share of one component before anything freezes; of ice none.</summary>
    public double Share(ThermalComponent component) => component switch
    {
        ThermalComponent.Water => Water,
        ThermalComponent.Protein => Protein,
        ThermalComponent.Fat => Fat,
        ThermalComponent.Carbohydrate => Carbohydrate,
        ThermalComponent.Fibre => Fibre,
        ThermalComponent.Ash => Ash,
        _ => 0,
    };
}
