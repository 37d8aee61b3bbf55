using Tamis.Composition;

namespace Tamis.Formulas;

/// <summary>What the kitchen buys and weighs, as the store's ingredients sheet has it. Everything but the name may be unknown.</summary>
public sealed record Ingredient
{
    /// <summary>The name by which formulas call it.</summary>
    public required string Name { get; init; }

    /// <summary>The food behind it, dataset and number (<c>SR28 01145</c>); null where none was given.</summary>
    public string? Food { get; init; }

    /// <summary>The word for one piece (<c>egg</c>, <c>leaf</c>); null where it is not counted.</summary>
    public string? Piece { get; init; }

    /// <summary>The mass of a piece as bought, in grams.</summary>
    public double? PieceGrams { get; init; }

    /// <summary>Its density, in grams a millilitre.</summary>
    public double? DensityGramsPerMillilitre { get; init; }

    /// <summary>The share of what was bought that is used, in per cent, above 0 to 100; 100 where the sheet is blank.</summary>
    public double EdiblePercent { get; init; } = 100;

    /// <summary>The word that a label prints; null where none was given.</summary>
    public string? LabelName { get; init; }

    /// <summary>The allergens in it: null = nobody looked, empty = somebody looked and there are none.</summary>
    public IReadOnlyList<string>? Allergens { get; init; }

    /// <summary>Allergens that may be there unintended: null = nobody looked.</summary>
    public IReadOnlyList<string>? MayContain { get; init; }

    /// <summary>The additive class or function; null where it does not apply.</summary>
    public string? Function { get; init; }

    /// <summary>The numbers of the additives that it is (<c>E 440</c>); empty where it is none.</summary>
    public IReadOnlyList<string> AdditiveNumbers { get; init; } = [];

    /// <summary>The list of ingredients on its own document or pack; null where there is none.</summary>
    public string? SupplierList { get; init; }

    /// <summary>The additives that are in it, as its pack names them (<c>emulsifier: lecithins</c>), where its whole list is not at hand: null = nobody looked, empty = somebody looked and there are none.</summary>
    public string? AdditiveList { get; init; }

    /// <summary>What its pack or document names of what is in it: its list, else its additives; null where neither is known.</summary>
    public string? NamedWithin => SupplierList ?? (AdditiveList is { Length: > 0 } additives ? additives : null);

    /// <summary>Whether it is a single food or a compound, by the food behind it or by its name; null where nothing says it.</summary>
    public CompoundStatement? Compound { get; init; }

    /// <summary>Whose document its figures are from; null where the kitchen wrote them down itself, or there is no document.</summary>
    public string? Supplier { get; init; }

    /// <summary>Sulphites in it as sulphur dioxide, in mg a kilogram; null where nobody stated it.</summary>
    public double? SulphitesMgPerKg { get; init; }

    /// <summary>Gel strength of a gelatine, in grams Bloom.</summary>
    public double? BloomGrams { get; init; }

    /// <summary>Dextrose equivalent of a syrup, per cent of dry matter.</summary>
    public double? DextroseEquivalentPercent { get; init; }

    /// <summary>Cocoa in a chocolate or cocoa product: fat-free cocoa solids with cocoa butter, per cent.</summary>
    public double? CocoaPercent { get; init; }

    /// <summary>Cocoa butter, per cent.</summary>
    public double? CocoaButterPercent { get; init; }

    /// <summary>Milk fat, per cent.</summary>
    public double? MilkFatPercent { get; init; }

    /// <summary>All that is not water, per cent.</summary>
    public double? SolidsPercent { get; init; }

    /// <summary>What a refractometer reads on it, in °Brix.</summary>
    public double? BrixPercent { get; init; }

    /// <summary>Its acidity, as pH.</summary>
    public double? PH { get; init; }

    /// <summary>What is in 100 g of the edible portion; null where neither a food nor a document gives figures.</summary>
    public NutrientProfile? Profile { get; init; }

    /// <summary>The kitchen's own remark.</summary>
    public string Notes { get; init; } = "";

    /// <summary>Where the ingredient was read; null for one that only a formula names.</summary>
    public Source? Origin { get; init; }
}
