namespace Tamis.Composition;

/// <summary>A column of a composition table, named by its INFOODS tagname.</summary>
/// <param name="Tag">The tagname, <c>FAT</c>.</param>
/// <param name="Word">The word that a page says, <c>fat</c>.</param>
/// <param name="Unit">The unit of its contents in 100 g of edible portion: g, mg, ug, kJ, kcal, or 1.</param>
public sealed record Nutrient(string Tag, string Word, string Unit)
{
    /// <summary>The family it belongs to: proximate, sugars, fats, minerals, vitamins, other, energy; empty where the table does not say.</summary>
    public string Kind { get; init; } = "";

    /// <summary>The most that 100 g can hold of it, in its unit: 100 g. Infinite where the unit is none of mass.</summary>
    internal double MostPer100Grams => Unit switch { "g" => 100, "mg" => 1e5, "ug" => 1e8, _ => double.PositiveInfinity };

    /// <summary>What the figure is, in a sentence.</summary>
    public string Meaning { get; init; } = "";

    /// <summary>How the column follows from others where a food does not state it (<c>CHOCDF - FIBTG</c>); null where it does not.</summary>
    public Derivation? Derived { get; init; }
}

/// <summary>The nutrients of a table in the order of its columns.</summary>
public sealed class NutrientList
{
    private readonly Dictionary<string, int> _index;

    /// <summary>Makes a list; tags may stand once only.</summary>
    public NutrientList(IEnumerable<Nutrient> nutrients)
    {
        All = [.. nutrients];
        _index = All.Select((nutrient, index) => (nutrient.Tag, index)).ToDictionary(pair => pair.Tag, pair => pair.index, StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>The nutrients in column order.</summary>
    public IReadOnlyList<Nutrient> All { get; }

    /// <summary>How many there are.</summary>
    public int Count => All.Count;

    /// <summary>The column of a tag, or −1.</summary>
    public int IndexOf(string tag) => _index.TryGetValue(tag, out var index) ? index : -1;

    /// <summary>The nutrient of a tag.</summary>
    /// <exception cref="KeyNotFoundException">No column has this tag.</exception>
    public Nutrient this[string tag] => IndexOf(tag) is var i and >= 0
        ? All[i]
        : throw new KeyNotFoundException($"No nutrient is called '{tag}'; near ones: {string.Join(", ", Names.Nearest(tag, All.Select(n => n.Tag)))}.");
}
