namespace Tamis.Formulas;

/// <summary>The ingredients of a store, found by the names that formulas use.</summary>
public sealed class IngredientList
{
    private readonly Dictionary<string, Ingredient> _byName;

    /// <summary>Makes a list; each name stands once.</summary>
    public IngredientList(IEnumerable<Ingredient> ingredients)
    {
        All = [.. ingredients];
        _byName = All.ToDictionary(ingredient => ingredient.Name, Names.Comparer);
    }

    /// <summary>A kitchen without an ingredients sheet: every name is known by its name alone.</summary>
    public static IngredientList None { get; } = new([]);

    /// <summary>The ingredients in the order of the sheet.</summary>
    public IReadOnlyList<Ingredient> All { get; }

    /// <summary>The ingredient of a name, or null where the store does not have it.</summary>
    public Ingredient? Find(string name) => _byName.GetValueOrDefault(name);

    /// <summary>The ingredient of a name, or one of which nothing but the name is known.</summary>
    public Ingredient FindOrBare(string name) => Find(name) ?? new Ingredient { Name = name };
}
