using System.Globalization;

namespace Tamis.Labels;

/// <summary>How much of a finished mass a nutrition panel speaks of.</summary>
public sealed record PanelBasis
{
    private PanelBasis(string words, double? massGrams, bool isServing) => (Words, MassGrams, IsServing) = (words, massGrams, isServing);

    /// <summary>The basis in words: <c>per 100 g</c>, <c>per slice (40 g)</c>.</summary>
    public string Words { get; }

    /// <summary>The mass in grams; null for the whole of the mixture.</summary>
    public double? MassGrams { get; }

    /// <summary>Whether it is a portion, a serving or a piece: what one person eats.</summary>
    public bool IsServing { get; }

    /// <summary>The law's reference amount of the food in grams, against which some conditions are held; null where it is not known or the law has none.</summary>
    public double? ReferenceGrams { get; init; }

    /// <summary>Its volume in millilitres where it is a serving of what is sold by volume; null otherwise.</summary>
    public double? Millilitres { get; private init; }

    /// <summary>Whether it is a volume, weighed by its density.</summary>
    public bool IsVolume { get; private init; }

    /// <summary>Whether it is all that is in one package.</summary>
    public bool IsPackage { get; private init; }

    /// <summary>Whether it is one of several units in a package, more than what one person eats at once.</summary>
    public bool IsUnit { get; private init; }

    /// <summary>Whether it is another amount of the food beside the serving: <c>2 slices</c>.</summary>
    public bool IsOtherAmount { get; private init; }

    /// <summary>The household measure of another amount; empty for what is none.</summary>
    public string Household { get; private init; } = "";

    /// <summary>Whether its column shows the energy and percentages alone, where a law has no more of another amount.</summary>
    public bool IsPercentOnly { get; init; }

    /// <summary>100 g of finished mass.</summary>
    public static PanelBasis Per100Grams { get; } = new("per 100 g", 100, false);

    /// <summary>100 ml of what is sold by volume.</summary>
    /// <param name="densityGramsPerMillilitre">The density of the food as sold, in g/ml, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The density is not above 0.</exception>
    public static PanelBasis Per100Millilitres(double densityGramsPerMillilitre) => double.IsFinite(densityGramsPerMillilitre) && densityGramsPerMillilitre > 0
        ? new("per 100 ml", 100 * densityGramsPerMillilitre, false) { IsVolume = true }
        : throw new ArgumentOutOfRangeException(nameof(densityGramsPerMillilitre), densityGramsPerMillilitre, "A panel per 100 ml needs a density above 0 g/ml: weigh a known volume of the food as sold.");

    /// <summary>All of the finished mass.</summary>
    public static PanelBasis Whole { get; } = new("in the whole", null, false);

    /// <summary>A serving with its household measure: <c>Serving(40, "1 slice")</c>; of a liquid with its volume.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not above 0.</exception>
    public static PanelBasis Serving(double massGrams, string household = "", double? millilitres = null) =>
        new($"per serving ({Measured(massGrams, household, millilitres)})", Checked(massGrams), true) { Millilitres = millilitres };

    /// <summary>A portion of so many grams, with its household measure where it has one; of a liquid with its volume.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not above 0.</exception>
    public static PanelBasis Portion(double massGrams, string household = "", double? millilitres = null) =>
        new($"per portion ({Measured(massGrams, household, millilitres)})", Checked(massGrams), true) { Millilitres = millilitres };

    /// <summary>All that is in one package.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not above 0.</exception>
    public static PanelBasis Package(double massGrams) => new($"per package ({Written(massGrams)} g)", Checked(massGrams), false) { IsPackage = true };

    /// <summary>One of several units in a package, where the serving is a part of it: <c>Unit(240, "loaf")</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not above 0.</exception>
    public static PanelBasis Unit(double massGrams, string word) => new($"per {word} ({Written(massGrams)} g)", Checked(massGrams), false) { IsUnit = true };

    /// <summary>Another amount of the food beside the serving: <c>OtherAmount(80, "2 slices")</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not above 0.</exception>
    public static PanelBasis OtherAmount(double massGrams, string household) => new($"per {household} ({Written(massGrams)} g)", Checked(massGrams), false) { IsOtherAmount = true, Household = household };

    /// <summary>A piece by its word: <c>Piece(101, "tart slice")</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not above 0.</exception>
    public static PanelBasis Piece(double massGrams, string word) => new($"per {word} ({Written(massGrams)} g)", Checked(massGrams), true);

    private static double Checked(double massGrams) => double.IsFinite(massGrams) && massGrams > 0
        ? massGrams
        : throw new ArgumentOutOfRangeException(nameof(massGrams), massGrams, "A portion weighs more than 0 g.");

    private static string Measured(double massGrams, string household, double? millilitres) =>
        $"{(household.Length > 0 ? $"{household}, " : "")}{(millilitres is { } volume ? $"{Written(volume)} ml" : $"{Written(massGrams)} g")}";

    private static string Written(double grams) => grams.ToString("0.#", CultureInfo.InvariantCulture);
}
