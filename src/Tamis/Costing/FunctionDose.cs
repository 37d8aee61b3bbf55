using Tamis.Formulas;
using Tamis.Physics;
using Tamis.Tables;

namespace Tamis.Costing;

/// <summary>How much of one ingredient does what another does.</summary>
/// <param name="Function">What stays the same: as sweet, as much fat, as firm a gel.</param>
/// <param name="Ratio">Grams of what comes in for a gram of what goes, above 0.</param>
/// <param name="Before">The figure of what goes, in 100 g of it (Bloom grams for a gel).</param>
/// <param name="After">The same of what comes in.</param>
/// <param name="Source">Who says that it is dosed by this.</param>
public sealed record FunctionDose(string Function, double Ratio, double Before, double After, Source Source)
{
    private const string Bloom = "bloom";
    private static readonly Dictionary<string, Func<Ingredient, double?>> Figures = new(Names.Comparer)
    {
        [Bloom] = ingredient => ingredient.BloomGrams,
        ["cocoa butter"] = ingredient => FoodDistance.BalanceOf(ingredient).PercentOf(BalancePart.CocoaButter),
        ["fat"] = ingredient => Percent(ingredient, balance => balance.Fat),
        ["sweetness"] = ingredient => Sweetness.Of(FoodDistance.BalanceOf(ingredient)) is { IsKnown: true } sweet ? sweet.Value : null,
        ["starch"] = ingredient => FoodDistance.BalanceOf(ingredient).PercentOf(BalancePart.Starch),
        ["egg yolk"] = ingredient => Percent(ingredient, balance => balance.EggYolkSolidsWithFat),
        ["dry matter"] = ingredient => Percent(ingredient, balance => balance.Solids),
    };

    private static double? Percent(Ingredient ingredient, Func<Balance, Amount> amount) => FoodDistance.BalanceOf(ingredient) is var balance ? balance.PercentOf(amount(balance)) : null;

    private static readonly Lazy<IReadOnlyList<Rule>> Shipped = new(() => ReadAll(SheetFile.Read(Path.Combine(KitFolder.Data("costing"), "doses.csv"))));

    /// <summary>By what an ingredient of a kind is dosed.</summary>
    /// <param name="Function">In words.</param>
    /// <param name="Kinds">The kinds of food.</param>
    /// <param name="Figure">The figure that stays the same.</param>
    /// <param name="LeastPercent">What the ingredient that goes has of it at least.</param>
    /// <param name="Source">Who says so.</param>
    public sealed record Rule(string Function, IReadOnlyList<string> Kinds, string Figure, double LeastPercent, Source Source);

    /// <summary>The rules that the kit ships, in their order: the first that fits counts. Data, in <c>data/costing/doses.csv</c>.</summary>
    public static IReadOnlyList<Rule> Rules => Shipped.Value;

    /// <summary>The dose that keeps what an ingredient is there for; null where no rule fits, or a figure of one of the two is not known or nothing.</summary>
    /// <param name="goes">The ingredient that goes.</param>
    /// <param name="instead">The one that comes in.</param>
    public static FunctionDose? Of(Ingredient goes, Ingredient instead)
    {
        var kind = IngredientKinds.Kit.Of(goes).Name;
        var fitting = from rule in Rules
                      where rule.Kinds.Contains(kind, Names.Comparer)
                      let before = Figures[rule.Figure](goes)
                      where before is > 0 && before >= rule.LeastPercent
                      select (rule, before.Value);
        if (fitting.FirstOrDefault() is not ({ } by, var was) || Figures[by.Figure](instead) is not (> 0 and var comes)) return null;
        return new(by.Function, Names.Same(by.Figure, Bloom) ? Gelatine.SquareRootEquivalentGrams(1, was, comes) : was / comes, was, comes, by.Source);
    }

    /// <summary>Reads rules.</summary>
    /// <exception cref="TableException">A cell must be mended; all are named.</exception>
    public static IReadOnlyList<Rule> ReadAll(Sheet sheet)
    {
        List<CellProblem> problems = [];
        Rule[] rules = [.. sheet.Rows.Select(row => new RowReader(row, problems)).Select(reader => new Rule(
            reader.Required("function"), reader.Words("kinds"), reader.Named("figure", Figures.Keys.ToDictionary(key => key, Names.Comparer)) ?? "", reader.RequiredNumber("least_percent", 0, 100), PhysicsData.SourceOf(reader.Row, problems)))];
        return problems.Count == 0 ? rules : throw new TableException(problems);
    }
}
