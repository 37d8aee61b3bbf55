using Tamis.Formulas;
using Tamis.Losses;
using Tamis.Tables;

namespace Tamis.Costing;

/// <summary>One ingredient of one component in place of another, gram for gram or by a dose.</summary>
public static class Swap
{
    /// <summary>The batch with an ingredient of a component replaced; null where it cannot be made so.</summary>
    /// <param name="batch">The batch as it is.</param>
    /// <param name="component">The component.</param>
    /// <param name="ingredient">The ingredient that goes.</param>
    /// <param name="instead">The ingredient that comes in its place.</param>
    /// <param name="ingredients">The store's ingredients.</param>
    /// <param name="problems">Receives why it cannot be made: more water leaving than there is.</param>
    /// <param name="gramsForAGram">How much comes in for a gram of what goes, edible part, above 0.</param>
    /// <exception cref="KeyNotFoundException">The batch has no such component with known masses, or the component no such line.</exception>
    public static Batch? Of(Batch batch, string component, string ingredient, Ingredient instead, IngredientList ingredients, List<CellProblem> problems, double gramsForAGram = 1)
    {
        var made = batch.Find(component) ?? throw new KeyNotFoundException($"{batch.Trial} has no component '{component}' with known masses; it has {string.Join(", ", batch.Components.Select(each => each.Name))}.");
        if (!made.Lines.Any(line => !line.IsComponent && Names.Same(line.Name, ingredient)))
            throw new KeyNotFoundException($"{made.Name} has no line '{ingredient}'; it has {string.Join(", ", made.Lines.Where(line => !line.IsComponent).Select(line => line.Name).Distinct(Names.Comparer))}.");
        var before = problems.Count;
        var formula = new Formula(batch.Formula.Trial, [.. batch.Formula.Components.Select(each => Names.Same(each.Name, component) ? Replaced(each, made, ingredient, instead.Name, gramsForAGram) : each)]);
        var known = ingredients.Find(instead.Name) is null ? new IngredientList([.. ingredients.All, instead]) : ingredients;
        var swapped = Batch.Of(formula, known, problems);
        return problems.Count == before && swapped.Find(component) is not null ? swapped : null;
    }

    /// <summary>What all lines of a component bring in, those of inner components with them: also what is strained out again.</summary>
    public static IReadOnlyList<Ingredient> IngredientsOf(Batch batch, string component)
    {
        if (batch.Find(component) is not { } made) return [];
        return [.. made.Lines.SelectMany(line => line.IsComponent ? IngredientsOf(batch, line.Name) : [made.In.Parts.First(part => Names.Same(part.Ingredient.Name, line.Name)).Ingredient])
            .DistinctBy(each => each.Name, Names.Comparer)];
    }

    private static Component Replaced(Component component, ComponentBatch made, string ingredient, string instead, double gramsForAGram) => component with
    {
        WeighedYield = null,
        Lines = [.. component.Lines.Select(line => !Names.Same(line.Name, ingredient) ? line : line with
        {
            Name = instead,
            Quantity = WrittenQuantity.OfGrams(made.Lines.FirstOrDefault(each => each.Origin == line.Origin)?.MassGrams * gramsForAGram ?? 0),
        })],
        Leaving = [.. component.Leaving.Select(line => Names.Same(line.Quantity.Of, ingredient) ? line with { Quantity = line.Quantity with { Of = instead } } : line)],
    };
}
