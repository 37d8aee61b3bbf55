using Tamis.Formulas;
using Tamis.Labels;
using Tamis.Losses;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>From a made formula to its list of ingredients.</summary>
internal static class ListedUses
{
    /// <summary>What went into all that is put together in a trial, each with the brackets that <c>components.csv</c> asks for.</summary>
    public static IReadOnlyList<ListedUse> Of(Dessert dessert, Batch batch)
    {
        var line = dessert.LineOf(batch.Trial).ToArray();
        var componentOf = batch.Components.SelectMany(component => component.Lines.Select(each => (each.Origin, component.Name)))
            .DistinctBy(each => each.Origin).ToDictionary(each => each.Origin, each => each.Name);
        string? BracketOf(string component) => dessert.Components.Of(component, line)?.OnLabel;
        return [.. from placed in batch.Placed
                   from part in placed.Out.Parts
                   let inner = componentOf.GetValueOrDefault(part.Origin)
                   let brackets = new[] { BracketOf(placed.Name), Names.Same(inner, placed.Name) || inner is null ? null : BracketOf(inner) }
                   select new ListedUse(part.Ingredient, part.MassGrams, [.. brackets.OfType<string>()], part.Origin)];
    }

    /// <summary>What the sheets wish of a list.</summary>
    public static ListWishes WishesOf(Dessert dessert, string trial)
    {
        // 'citrus: lemon juice; lemon zest' says which ingredients a word of the name speaks of.
        var rows = dessert.Facts.RowsOf("emphasis", trial).Select(row => row.Value.Split(':', 2, StringSplitOptions.TrimEntries)).ToArray();
        // The list has names of labels; a kitchen writes either.
        string[] dwelt = [.. rows.SelectMany(row => DweltIn(row[^1])).Select(word => dessert.Store.Ingredients.Find(word)?.LabelName ?? word)];
        return new()
        {
            Emphasised = [.. WordsOf(dessert.Name), .. dwelt],
            Dwelt = dwelt,
            Explained = [.. rows.Where(row => row.Length == 2).Select(row => row[0])],
            Summarises = LabelAsked.SummarisesCompounds(dessert, trial),
            Numbers = LabelAsked.NumbersAdditives(dessert, trial),
            CrossContact = [.. dessert.Facts.WordsOf("cross_contact", trial)],
            Translate = dessert.Words.In,
        };
    }

    /// <summary>The rows <c>emphasis</c> of a trial that name an ingredient which no item of a list is called.</summary>
    /// <exception cref="TableException">The masses of the trial are not all known.</exception>
    public static IEnumerable<CellProblem> UnmetEmphasis(Dessert dessert, string trial, RuleSet rules)
    {
        var unmet = dessert.IngredientList(trial, rules.Name, "en").Unmet;
        return from each in dessert.Facts.RowsOf("emphasis", trial)
               from word in DweltIn(each.Value.Split(':', 2)[^1])
               where unmet.Contains(dessert.Store.Ingredients.Find(word)?.LabelName ?? word, Names.Comparer)
               select each.Row.Problem("value", $"for '{word}' the name of an ingredient of {trial} as the list has it, or under trial the trials that it is for");
    }

    private static string[] DweltIn(string ingredients) => ingredients.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    // Words of two letters and the small words between are no ingredients.
    private static IEnumerable<string> WordsOf(string name) =>
        name.Split([' ', ',', '-', ';', '/'], StringSplitOptions.RemoveEmptyEntries).Where(word => word.Length > 2 && !Names.Same(word, "and") && !Names.Same(word, "with"));
}
