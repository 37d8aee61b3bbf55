using Tamis.Formulas;
using Tamis.Losses;

namespace Tamis.Labels;

/// <summary>An additive in a mixture.</summary>
/// <param name="Additive">The additive.</param>
/// <param name="Ingredient">The ingredient that it is, or that it came in with.</param>
/// <param name="Class">The class that the sheet or the supplier's list gives it (<c>humectant</c>); null where none is given.</param>
/// <param name="IngredientGrams">How much of that ingredient is in the mixture, in grams.</param>
/// <param name="MostGrams">The most that there can be of the additive itself, in grams: the ingredient's mass, or the share that its list states.</param>
/// <param name="IsOwn">Whether the kitchen weighs it as such; otherwise it came in with a compound.</param>
public sealed record AdditiveUse(Additive Additive, Ingredient Ingredient, string? Class, double IngredientGrams, double MostGrams, bool IsOwn)
{
    /// <summary>Whether <see cref="MostGrams"/> is what the list of the ingredient states, and not its whole mass for want of a share.</summary>
    public bool IsShareKnown { get; private init; } = IsOwn;

    /// <summary>Every additive of a mixture: those that the kitchen weighs, and those that the lists of its compounds name.</summary>
    public static IReadOnlyList<AdditiveUse> In(Mixture mixture, RuleSet rules)
    {
        var (additives, words) = (Additives.Of(rules), LabelWords.Of(rules.Folder));
        List<AdditiveUse> uses = [];
        foreach (var same in mixture.Parts.Where(part => part.MassGrams > 0).GroupBy(part => part.Ingredient.Name, Names.Comparer))
        {
            var ingredient = same.First().Ingredient;
            var grams = same.Sum(part => part.MassGrams);
            var ownClass = ingredient.Function is { } function ? words.ClassOf(function)?.Class ?? function : null;
            foreach (var additive in ingredient.AdditiveNumbers.Select(additives.Find).OfType<Additive>()) uses.Add(new(additive, ingredient, ownClass, grams, grams, true));
            // What a mixture of additives lists again is the same additive.
            if (ingredient.NamedWithin is { } list)
                foreach (var part in All(SupplierList.Read(list, additives, words, [])))
                    if (additives.Find(part.Name) is { } additive && !uses.Any(use => use.Additive == additive && use.Ingredient == ingredient))
                        uses.Add(new(additive, ingredient, part.Class, grams, part.Percent is { } percent ? grams * percent / 100 : grams, false) { IsShareKnown = part.Percent is not null });
        }
        return uses;
    }

    /// <summary>What stands in a mixture as an additive and is none that the kit knows, with the ingredient: a number of a sheet, or a name behind a class in a supplier's list.</summary>
    public static IReadOnlyList<(Ingredient Ingredient, string Named)> UnknownIn(Mixture mixture, RuleSet rules)
    {
        var (additives, words) = (Additives.Of(rules), LabelWords.Of(rules.Folder));
        List<(Ingredient, string)> found = [];
        foreach (var ingredient in mixture.Parts.Where(part => part.MassGrams > 0).Select(part => part.Ingredient).DistinctBy(each => each.Name, Names.Comparer))
        {
            found.AddRange(ingredient.AdditiveNumbers.Where(number => additives.Find(number) is null).Select(number => (ingredient, number)));
            List<string> unknown = [];
            if (ingredient.NamedWithin is { } list) SupplierList.Read(list, additives, words, unknown);
            found.AddRange(unknown.Select(name => (ingredient, name)));
        }
        return found;
    }

    private static IEnumerable<SupplierPart> All(IEnumerable<SupplierPart> parts) => parts.SelectMany(part => All(part.Parts).Prepend(part));
}
