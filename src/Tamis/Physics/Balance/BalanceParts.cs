namespace Tamis.Physics;

/// <summary>The words of the parts of a balance, and which of them belong together.</summary>
public static class BalanceParts
{
    private static readonly Dictionary<BalancePart, string> Spelt = new()
    {
        [BalancePart.UnsplitSugars] = "sugars not split by kind",
        [BalancePart.UnsplitPolyols] = "polyols not split by kind",
        [BalancePart.UnsplitFat] = "fat not split by kind",
        [BalancePart.MilkSolids] = "milk solids",
    };

    /// <summary>Every part but the rest, in the order of a balance.</summary>
    public static IReadOnlyList<BalancePart> Known { get; } = [.. Enum.GetValues<BalancePart>().Where(part => part != BalancePart.Rest)];

    /// <summary>The parts by their words, as sheets name them.</summary>
    public static IReadOnlyDictionary<string, BalancePart> ByWord { get; } = Known.ToDictionary(Word, part => part, Names.Comparer);

    /// <summary>Monosaccharides and disaccharides.</summary>
    public static IReadOnlyList<BalancePart> Sugars { get; } =
        [BalancePart.Sucrose, BalancePart.Glucose, BalancePart.Fructose, BalancePart.Galactose, BalancePart.Lactose, BalancePart.Maltose, BalancePart.Trehalose, BalancePart.UnsplitSugars];

    /// <summary>Sugar alcohols.</summary>
    public static IReadOnlyList<BalancePart> Polyols { get; } =
        [BalancePart.Sorbitol, BalancePart.Glycerol, BalancePart.Erythritol, BalancePart.Xylitol, BalancePart.Maltitol, BalancePart.Mannitol, BalancePart.UnsplitPolyols];

    /// <summary>Fats, whatever their kind.</summary>
    public static IReadOnlyList<BalancePart> Fats { get; } =
        [BalancePart.MilkFat, BalancePart.CocoaButter, BalancePart.NutFat, BalancePart.EggFat, BalancePart.OtherFat, BalancePart.UnsplitFat];

    /// <summary>Water and what is dissolved in it, as far as it dissolves: sugars, higher saccharides, polyols, salt, alcohol and acids. Proteins, gelling agents and solids that only swell are left out.</summary>
    public static IReadOnlyList<BalancePart> WaterPhase { get; } =
        [BalancePart.Water, .. Sugars, BalancePart.HigherSaccharides, .. Polyols, BalancePart.Salt, BalancePart.Alcohol, BalancePart.OrganicAcids];

    /// <summary>The word for a part, as a cook says it.</summary>
    public static string Word(BalancePart part) => Spelt.TryGetValue(part, out var spelt) ? spelt
        : string.Concat(part.ToString().Select((letter, i) => char.IsUpper(letter) ? (i == 0 ? "" : " ") + char.ToLowerInvariant(letter) : letter.ToString()));

    /// <summary>The part of a kind that is known by its total alone; null for a part that has no kinds.</summary>
    internal static BalancePart? TotalOf(BalancePart part) =>
        Sugars.Contains(part) ? BalancePart.UnsplitSugars : Polyols.Contains(part) ? BalancePart.UnsplitPolyols : Fats.Contains(part) ? BalancePart.UnsplitFat : null;
}
