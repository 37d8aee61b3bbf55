using Tamis.Composition;
using Tamis.Formulas;
using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>The usual ingredients behind the words of classic ratios, each with its food and its functional data.</summary>
public sealed class RatioIngredients
{
    private readonly Dictionary<string, string> _ratios;

    private RatioIngredients(IngredientList list, Dictionary<string, string> ratios) => (List, _ratios) = (list, ratios);

    /// <summary>The ingredients by the words of the ratios.</summary>
    public IngredientList List { get; }

    /// <summary>The ratio that a word stands for (praline paste, baked crumble), or null.</summary>
    public (string Name, ClassicRatio Ratio)? RatioBehind(string part) => _ratios.TryGetValue(part, out var name) ? (part, ClassicRatio.Named(name)) : null;

    /// <summary>Reads <c>data/windows/ratio-ingredients.csv</c>: part, food or ratio, and the functional data that the food does not state.</summary>
    /// <exception cref="TableException">Something in it must be mended.</exception>
    public static RatioIngredients Read(CompositionTable table)
    {
        List<CellProblem> problems = [];
        List<Ingredient> ingredients = [];
        Dictionary<string, string> ratios = new(Names.Comparer);
        foreach (var row in SheetFile.Read(Path.Combine(KitFolder.Data("windows"), "ratio-ingredients.csv")).Rows.Select(row => new RowReader(row, problems)))
        {
            var part = row.Required("part");
            PhysicsData.SourceOf(row.Row, problems);
            if (row.Text("ratio") is { } ratio) ratios[part] = ratio;
            else if (table.Seek(row.Required("food")) is not { } food) row.Note("food", "a food of the composition table, dataset and number");
            else ingredients.Add(new Ingredient
            {
                Name = part, Food = food.Id, Profile = table.Profile(food.Id), BloomGrams = row.Number("bloom", 10, 400),
                CocoaPercent = row.Number("cocoa_percent", 0, 100), CocoaButterPercent = row.Number("cocoa_butter_percent", 0, 100), MilkFatPercent = row.Number("milk_fat_percent", 0, 100),
                DextroseEquivalentPercent = row.Number("dextrose_equivalent", 0, 100), Origin = row.Row.Origin("part"),
            });
        }
        return problems is [] ? new(new(ingredients), ratios) : throw new TableException(problems);
    }
}
