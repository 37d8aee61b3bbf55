using System.Runtime.CompilerServices;
using Tamis.Composition;
using Tamis.Formulas;
using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>Finds the kind of an ingredient: by the food behind it, else by the words of its name, else by its function.</summary>
public sealed class IngredientKinds
{
    private static readonly Lazy<IngredientKinds> Shipped = new(() => Read(PhysicsData.Kit));
    private readonly Dictionary<string, IngredientKind> _byFood;
    private readonly IReadOnlyList<(string Words, IngredientKind Kind)> _byWords;
    private readonly ConditionalWeakTable<Ingredient, IngredientParts> _parts = [];

    private IngredientKinds(IReadOnlyList<IngredientKind> all, Dictionary<string, IngredientKind> byFood, IReadOnlyList<(string, IngredientKind)> byWords, GlucoseSyrups syrups) =>
        (All, _byFood, _byWords, Syrups) = (all, byFood, byWords, syrups);

    /// <summary>What the kit ships: <c>ingredient-kinds.csv</c> and <c>kind-of-food.csv</c> of <c>data/physics</c>.</summary>
    public static IngredientKinds Kit => Shipped.Value;

    /// <summary>Every kind.</summary>
    public IReadOnlyList<IngredientKind> All { get; }

    /// <summary>What glucose syrups are made of by their dextrose equivalent.</summary>
    internal GlucoseSyrups Syrups { get; }

    /// <summary>Reads the kinds of a physics folder.</summary>
    /// <exception cref="TableException">Something in it must be mended; every bad cell is named.</exception>
    public static IngredientKinds Read(PhysicsData data)
    {
        List<CellProblem> problems = [];
        Dictionary<string, IngredientKind> kinds = new(Names.Comparer);
        foreach (var row in data.Table("ingredient-kinds.csv").Rows)
            if (IngredientKind.Read(row, problems) is { } kind && !kinds.TryAdd(kind.Name, kind)) problems.Add(row.Problem("kind", "a name that no other row has"));
        Dictionary<string, IngredientKind> byFood = [];
        List<(string Words, IngredientKind Kind)> byWords = [];
        foreach (var row in data.Table("kind-of-food.csv").Rows)
        {
            var reader = new RowReader(row, problems);
            if (row["kind"].Length == 0) reader.Required("kind");
            if (reader.Named("kind", kinds) is not { } kind) continue;
            if (reader.Text("food") is { } food) byFood[FoodIndex.IdKey(food)] = kind;
            else if (reader.Required("words") is { Length: > 0 } words) byWords.Add(($" {WordsOf(words)} ", kind));
        }
        var syrups = GlucoseSyrups.Read(data.Table("glucose-syrups.csv"), problems);
        return problems.Count == 0
            ? new([.. kinds.Values], byFood, [.. byWords.OrderByDescending(each => each.Words.Length)], syrups)
            : throw new TableException(problems);
    }

    /// <summary>The kind of an ingredient; <see cref="IngredientKind.Unknown"/> where neither its food nor its name says it.</summary>
    public IngredientKind Of(Ingredient ingredient) =>
        ingredient.Food is { } food && _byFood.TryGetValue(FoodIndex.IdKey(food), out var kind) ? kind
        : ByWords(ingredient.Name) ?? (ingredient.Function is { } function ? ByWords(function) : null) ?? IngredientKind.Unknown;

    /// <summary>What is in 100 g of an ingredient by function; worked out once for each ingredient.</summary>
    public IngredientParts PartsOf(Ingredient ingredient) => _parts.GetValue(ingredient, each => IngredientParts.Of(each, Of(each), Syrups));

    // The longest words that stand in the name say most: 'milk chocolate' before 'milk'.
    private IngredientKind? ByWords(string name)
    {
        var words = $" {WordsOf(name)} ";
        foreach (var (held, kind) in _byWords)
            if (words.Contains(held, StringComparison.Ordinal)) return kind;
        return null;
    }

    private static string WordsOf(string name) => Names.Key(name.Replace('-', ' ').Replace(',', ' '));
}
