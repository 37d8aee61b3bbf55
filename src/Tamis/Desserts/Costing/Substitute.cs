using Tamis.Costing;
using Tamis.Formulas;
using Tamis.Losses;
using Tamis.Physics;

namespace Tamis.Desserts;

/// <summary>One ingredient in the place of another, and what that changes in the component.</summary>
/// <param name="Ingredient">What comes in.</param>
/// <param name="Distance">How far the two lie apart by composition.</param>
/// <param name="IsInStore">Whether the store has it; else it is a food of the composition table, without a price or allergens.</param>
/// <param name="IsSameKind">Whether both are of one kind of food (flour, nut, chocolate).</param>
public sealed record Substitute(Ingredient Ingredient, FoodDistance Distance, bool IsInStore, bool IsSameKind)
{
    /// <summary>How much of it does the same; null where it is taken gram for gram, because nobody knows by what it is dosed.</summary>
    public FunctionDose? Dose { get; init; }

    /// <summary>Grams of it for a gram of what goes.</summary>
    public double GramsForAGram => Dose?.Ratio ?? 1;

    /// <summary>When it is fresh; null for what has no season, or of which the kit knows none.</summary>
    public Season? Season { get; init; }

    /// <summary>Its word on the list of ingredients; its name where the store gives none.</summary>
    public string LabelWord => Ingredient.LabelName ?? Ingredient.Name;

    /// <summary>The component with it; null where it cannot be made so.</summary>
    public ComponentBatch? Made { get; init; }

    /// <summary>Why it cannot be made so; empty where it can.</summary>
    public string CannotBeMade { get; init; } = "";

    /// <summary>What a gram of the finished component costs with it.</summary>
    public Amount PerGram { get; init; }

    /// <summary>The component with it beside the windows of its family; null where it cannot be made.</summary>
    public CheckUp? CheckUp { get; init; }

    /// <summary>Windows that held before and do not any more, or cannot be worked out any more.</summary>
    public IReadOnlyList<CheckUpLine> Lost { get; init; } = [];

    /// <summary>Allergens that come into the component, meant or as traces.</summary>
    public IReadOnlyList<string> AllergensAdded { get; init; } = [];

    /// <summary>Allergens that the component no longer holds; nobody knows of any that has gone while somebody has to look.</summary>
    public IReadOnlyList<string> AllergensGone { get; init; } = [];

    /// <summary>Whether somebody looked for its allergens.</summary>
    public bool IsLookedAt => Ingredient.Allergens is not null;

    /// <summary>What the finished component is made of that moved most, in per cent of it before and after.</summary>
    public IReadOnlyList<(BalancePart Part, double BeforePercent, double AfterPercent)> Moved { get; init; } = [];

    /// <summary>Nutrients in 100 g of the finished component, before and after, where both are known.</summary>
    public IReadOnlyList<(string Tag, double Before, double After)> Nutrition { get; init; } = [];

    /// <summary>Whether it can be made, every window that held still holds, and no allergen comes in.</summary>
    public bool Keeps => CheckUp is { NoVerdict.Length: 0, Lines.Count: > 0 } && Lost.Count == 0 && IsLookedAt && AllergensAdded.Count == 0;
}
