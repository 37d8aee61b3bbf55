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
        var document = dessert.Specifications.On(ingredient.Name, dessert.Store.AsOf);
        if (Both.TryGetValue(term, out var own)) return own(ingredient) is { } value ? new((decimal)value, OriginOf(ingredient, document, term)) : null;
        if (term.All(letter => !char.IsAsciiLetterLower(letter)))
            return ingredient.Profile?[term] is { IsKnown: true } content ? new((decimal)content.Per100Grams, content.Source ?? new(ingredient.Profile.Name, Evidence.Published)) : null;
        if (document is null || document.Row[term].Length == 0) return null;
        List<CellProblem> problems = [];
        var stated = new RowReader(document.Row, problems).Number(term, 0);
        return problems.Count > 0 ? throw new TableException(problems) : stated is { } figure ? new((decimal)figure, document.Row.Origin(term) with { Evidence = Evidence.Supplier }) : null;
    }

    // A filled cell of the document counts before that of the ingredients sheet; of cocoa it has two names.
    private static Source OriginOf(Ingredient ingredient, Specification? document, string term) =>
        document is not null && new[] { term, term == "cocoa_percent" ? "cocoa_dry_solids_percent" : term }.FirstOrDefault(column => document.Row[column].Length > 0) is { } filled
            ? document.Row.Origin(filled) with { Evidence = Evidence.Supplier }
            : ingredient.Origin is { } row ? row with { Locator = row.Locator.Replace("column ingredient", $"column {term}", StringComparison.Ordinal) } : new("ingredients.csv", Evidence.Sheet);
}
