using Tamis.Formulas;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>What can be said of an allergen group in a dessert.</summary>
public enum CounterMark
{
    /// <summary>Somebody looked at every ingredient, and it is in none.</summary>
    None,
    /// <summary>It may have got in.</summary>
    MayContain,
    /// <summary>Nobody has written down the allergens of every ingredient: it may be in.</summary>
    NotLookedAt,
    /// <summary>It is in.</summary>
    Contains,
}

/// <summary>An allergen group in a dessert.</summary>
/// <param name="Mark">What can be said.</param>
/// <param name="Substances">The substances of the group that are in or may be, as printed.</param>
public sealed record CounterCell(CounterMark Mark, IReadOnlyList<string> Substances);

/// <summary>A dessert of the counter.</summary>
/// <param name="Dessert">Its name.</param>
/// <param name="Trial">The trial that is served.</param>
/// <param name="Cells">A cell a group, in the order of the law's list.</param>
/// <param name="NotLookedAt">Ingredients whose allergens nobody has written down.</param>
public sealed record CounterDessert(string Dessert, string Trial, IReadOnlyList<CounterCell> Cells, IReadOnlyList<string> NotLookedAt);

/// <summary>The allergens of every dessert of a store, for a sale without packs.</summary>
/// <param name="Groups">The groups of the law's list.</param>
/// <param name="Desserts">The desserts.</param>
/// <param name="Unread">Dessert folders whose sheets must be mended first, with the reason: they are not on the table and may not be sold by it.</param>
public sealed record CounterAllergens(IReadOnlyList<string> Groups, IReadOnlyList<CounterDessert> Desserts, IReadOnlyList<(string Folder, string Why)> Unread)
{
    /// <summary>The table of a store: all dessert folders beside it, each with the trial that the kitchen means to serve.</summary>
    /// <param name="storeFolder">The store's folder.</param>
    /// <param name="rules">The rule set's folder name.</param>
    /// <param name="language">The language of the words.</param>
    public static CounterAllergens Of(string storeFolder, string rules, string language = "en")
    {
        var allergens = AllergenRules.Of(KitData.Rules(rules));
        List<CounterDessert> desserts = [];
        List<(string, string)> unread = [];
        foreach (var dessert in IngredientReach.Desserts(storeFolder))
        {
            try
            {
                desserts.Add(DessertOf(dessert, allergens, language));
            }
            catch (TableException error)
            {
                unread.Add((dessert.FolderName, string.Join("; ", error.Problems)));
            }
        }
        return new(allergens.Groups, desserts, unread);
    }

    private static CounterDessert DessertOf(Dessert dessert, AllergenRules allergens, string language)
    {
        var batch = dessert.Trial(dessert.Candidate);
        // Every line counts, also one that is strained out again.
        Ingredient[] used = [.. batch.Formula.Components.SelectMany(component => component.Lines).Where(line => line.Quantity is { Kind: QuantityKind.Rest } or { Range.High: > 0 }).Select(line => line.Name).Distinct(Names.Comparer)
            .Where(name => batch.Formula.Find(name) is null).Select(dessert.Store.Ingredients.FindOrBare)];
        var sulphites = batch.Whole is { FinishedGrams: > 0 } whole && whole.Parts.All(part => part.Ingredient.SulphitesMgPerKg is not null || part.Ingredient.Allergens is null || part.Ingredient.Allergens.All(word => allergens.For(word)?.ThresholdMgPerKg is null))
            ? whole.Parts.Sum(part => (part.Ingredient.SulphitesMgPerKg ?? 0) * part.MassGrams) / whole.FinishedGrams : double.PositiveInfinity;
        string[] crossContact = [.. dessert.Facts.WordsOf("cross_contact", batch.Trial)];
        AllergenRule[] inIt = [.. RulesOf(used.SelectMany(each => (each.Allergens ?? []).Where(word => !IsExempt(each, word)))).Where(rule => rule.Counts(sulphites))];
        AllergenRule[] mayBe = [.. RulesOf(used.SelectMany(each => each.MayContain ?? []).Concat(crossContact))];
        // A word that the kit does not know may be any of them.
        string[] unlooked = [.. used.Where(each => each.Allergens is null || each.Allergens.Any(word => allergens.Words.SubstanceOf(word) is null)).Select(each => each.Name)];
        return new(dessert.Name, batch.Trial, [.. allergens.Groups.Select(group =>
        {
            AllergenRule[] contains = [.. inIt.Where(rule => rule.Group == group)], may = [.. mayBe.Where(rule => rule.Group == group)];
            return contains.Length > 0 ? new CounterCell(CounterMark.Contains, Printed(contains)) : unlooked.Length > 0 ? new(CounterMark.NotLookedAt, []) : may.Length > 0 ? new(CounterMark.MayContain, Printed(may)) : new(CounterMark.None, []);
        })], unlooked);

        IEnumerable<AllergenRule> RulesOf(IEnumerable<string> words) => words.Select(allergens.For).OfType<AllergenRule>().Distinct();
        bool IsExempt(Ingredient ingredient, string word) => allergens.For(word)?.ExemptIn(ingredient.LabelName ?? ingredient.Name) is not null;
        string[] Printed(IEnumerable<AllergenRule> found) => [.. found.Select(rule => allergens.Print(rule, language) ?? rule.Substance)];
    }
}
