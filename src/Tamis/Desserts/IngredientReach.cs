using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>Where an ingredient is used.</summary>
/// <param name="Dessert">The dessert.</param>
/// <param name="Component">The component whose line it is.</param>
/// <param name="Trials">The trials whose formula has it there.</param>
public sealed record IngredientUse(string Dessert, string Component, IReadOnlyList<string> Trials);

/// <summary>Every dessert of a store that an ingredient goes into: the store's neighbours, each a folder with a formula.</summary>
/// <param name="Uses">Where it is used, dessert by dessert.</param>
/// <param name="Unread">Dessert folders whose formula cannot be read: nobody can say whether they use it.</param>
public sealed record IngredientReach(IReadOnlyList<IngredientUse> Uses, IReadOnlyList<string> Unread)
{
    /// <summary>Opens the desserts of a store: the folders beside it that hold a <c>formula.csv</c>.</summary>
    public static IReadOnlyList<Dessert> Desserts(string storeFolder) => Path.GetDirectoryName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(storeFolder))) is not { } kitchen ? []
        : [.. Directory.EnumerateDirectories(kitchen).Append(kitchen).Where(folder => File.Exists(Path.Combine(folder, "formula.csv"))).Order(StringComparer.Ordinal).Select(folder => Dessert.Open(folder))];

    /// <summary>Where an ingredient is used in desserts that were opened.</summary>
    public static IngredientReach Of(string ingredient, IReadOnlyList<Dessert> desserts)
    {
        List<IngredientUse> uses = [];
        List<string> unread = [];
        foreach (var dessert in desserts)
        {
            try
            {
                uses.AddRange(dessert.Formulas
                    .SelectMany(formula => formula.Components.Where(component => component.Lines.Any(line => Names.Same(line.Name, ingredient))).Select(component => (component.Name, formula.Trial)))
                    .GroupBy(use => use.Name, Names.Comparer)
                    .Select(use => new IngredientUse(dessert.Name, use.Key, [.. use.Select(each => each.Trial).Distinct(Names.Comparer)])));
            }
            catch (TableException)
            {
                // Its own pages say which cells; here it counts that nobody can tell.
                unread.Add(dessert.FolderName);
            }
        }
        return new(uses, unread);
    }
}
