using Tamis.Formulas;
using Tamis.Labels;

namespace Tamis.Desserts;

/// <summary>As what a reserved name is printed.</summary>
public enum PrintedAs
{
    /// <summary>The name of the food.</summary>
    Food,
    /// <summary>A claim on the pack.</summary>
    Claim,
    /// <summary>An ingredient in the list.</summary>
    Ingredient,
}

/// <summary>A reserved name that a pack would print.</summary>
/// <param name="Where">What prints it: <c>the name of the dessert</c>, <c>a claim</c>, <c>the label name of butter</c>.</param>
/// <param name="Text">The whole text.</param>
/// <param name="Said">The reserved words in it.</param>
/// <param name="Checks">The ingredients that it may mean, each held against the name; the best first. Empty where the trial has none that could be meant.</param>
/// <param name="Origin">The cell; null where the name is that of the folder.</param>
/// <param name="As">As what it is printed.</param>
public sealed record PrintedName(string Where, string Text, NameInText Said, IReadOnlyList<NameCheck> Checks, Source? Origin, PrintedAs As)
{
    /// <summary>What can be said: of the best ingredient that may be meant; refused where there is none.</summary>
    public NameVerdict Verdict => Checks.Count == 0 ? NameVerdict.Refused : Checks[0].Verdict;
}

/// <summary>Every reserved name that a trial would print, held against what is in it.</summary>
public static class TrialNames
{
    /// <summary>The reserved names in the dessert's name, in the claims of the trial and in the label names of its ingredients.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="rules">The rule set's folder name.</param>
    /// <param name="day">The day whose rules count; with no day, those that have no end.</param>
    /// <exception cref="Tables.TableException">The masses of the trial are not all known, a cell that states a figure holds none, or a rule file cannot be read.</exception>
    public static IReadOnlyList<PrintedName> Of(Dessert dessert, string trial, string rules, DateOnly? day = null)
    {
        var batch = dessert.Trial(trial);
        var names = ReservedNames.Of(KitData.Rules(rules), day ?? LabelAsked.Day(dessert, batch.Trial));
        IngredientFigures figures = new(dessert);
        Ingredient[] ingredients = [.. dessert.Whole(trial).Parts.Where(part => part.MassGrams > 0).Select(part => part.Ingredient).DistinctBy(each => each.Name, Names.Comparer)];
        var category = dessert.Facts.Text("food_category", batch.Trial);
        NamedFood FoodOf(Ingredient ingredient) => new(ingredient.Name, term => figures.Of(ingredient, term), ingredient.SupplierList, category);

        List<PrintedName> printed = [];
        foreach (var said in names.In(dessert.Name))
            printed.Add(new("the name of the dessert", dessert.Name, said, MeantBy(said), dessert.Facts.OriginOf("name", batch.Trial), PrintedAs.Food));
        foreach (var (claim, _, row) in DessertClaims.RowsOf(dessert, batch.Trial))
            foreach (var said in names.In(claim))
                printed.Add(new($"a claim{(row["notes"].Length > 0 ? $", {row["notes"]}" : "")}", claim, said, MeantBy(said), row.Origin("value"), PrintedAs.Claim));
        foreach (var ingredient in ingredients)
            foreach (var said in names.In(ingredient.LabelName ?? ingredient.Name))
                printed.Add(new($"the label name of {ingredient.Name}", ingredient.LabelName ?? ingredient.Name, said, [said.Name.Check(FoodOf(ingredient))], ingredient.Origin, PrintedAs.Ingredient));
        return printed;

        // Of 'chocolate chips' the chips are meant; else whatever bears the name; else whatever states the figure that the name hangs on.
        IReadOnlyList<NameCheck> MeantBy(NameInText said)
        {
            bool BearsIt(Ingredient ingredient) => said.Words.Split(' ').Any(word => Holds(ingredient, word));
            bool HasTheFigure(Ingredient ingredient) => said.Name.Conditions.Where(condition => condition is { Figure: not null, Test: LimitTest.AtLeast or LimitTest.Above }).Take(1)
                .Any(condition => condition.Figure!.Of(term => figures.Of(ingredient, term)) is { Value: > 0 } found && found.From.All(each => !each.Figure.IsOfRecord));
            Ingredient[] pointed = [.. ingredients.Where(each => said.Rest.Any(word => Holds(each, word)) && (BearsIt(each) || HasTheFigure(each)))];
            Ingredient[] bearing = pointed.Length > 0 ? pointed : [.. ingredients.Where(BearsIt)];
            Ingredient[] meant = bearing.Length > 0 ? bearing : [.. ingredients.Where(HasTheFigure)];
            return [.. meant.Select(each => said.Name.Check(FoodOf(each))).OrderBy(check => check.Verdict)];
        }
    }

    private static bool Holds(Ingredient ingredient, string word) => WordsOf(ingredient.Name).Concat(WordsOf(ingredient.LabelName ?? "")).Contains(word, Names.Comparer);

    private static string[] WordsOf(string text) => text.Split([' ', ',', ';', '-', '/'], StringSplitOptions.RemoveEmptyEntries);
}
