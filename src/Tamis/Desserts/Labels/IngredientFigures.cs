using Tamis.Formulas;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>What is stated of an ingredient: by its row and its document, and by the record of its food.</summary>
internal sealed class IngredientFigures(Dessert dessert)
{
    // The columns that both sheets have: a filled cell of the document has won already when the store was read.
    private static readonly Dictionary<string, Func<Ingredient, double?>> Both = new(Names.Comparer)
    {
        ["cocoa_percent"] = ingredient => ingredient.CocoaPercent,
        ["cocoa_butter_percent"] = ingredient => ingredient.CocoaButterPercent,
        ["milk_fat_percent"] = ingredient => ingredient.MilkFatPercent,
        ["solids_percent"] = ingredient => ingredient.SolidsPercent,
        ["dextrose_equivalent"] = ingredient => ingredient.DextroseEquivalentPercent,
        ["brix"] = ingredient => ingredient.BrixPercent,
    };

    /// <summary>A figure by the name of its column or by a tagname; null where nobody states it.</summary>
    /// <exception cref="TableException">The cell of the document holds no number.</exception>
    public StatedFigure? Of(Ingredient ingredient, string term)
    {
        if (Both.TryGetValue(term, out var own)) return own(ingredient) is { } value ? new((decimal)value, ingredient.Origin ?? new("ingredients.csv", Evidence.Sheet)) : null;
        if (term.All(letter => !char.IsAsciiLetterLower(letter)))
            return ingredient.Profile?[term] is { IsKnown: true } content ? new((decimal)content.Per100Grams, content.Source ?? new(ingredient.Profile.Name, Evidence.Published)) : null;
        if (dessert.Specifications.On(ingredient.Name, dessert.Store.AsOf) is not { } document || document.Row[term].Length == 0) return null;
        List<CellProblem> problems = [];
        var stated = new RowReader(document.Row, problems).Number(term, 0);
        return problems.Count > 0 ? throw new TableException(problems) : stated is { } figure ? new((decimal)figure, document.Row.Origin(term) with { Evidence = Evidence.Supplier }) : null;
    }
}
