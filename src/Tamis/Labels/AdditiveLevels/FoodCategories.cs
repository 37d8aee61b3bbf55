using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>A category of food as the law on additives parts them.</summary>
/// <param name="Name">Its name: <c>fine bakery wares</c>.</param>
/// <param name="Number">Its number in the law; empty where it has none.</param>
/// <param name="Words">Words by which the name of an ingredient shows that it belongs there: <c>candied</c>.</param>
/// <param name="Origin">Where the row came from.</param>
public sealed record FoodCategory(string Name, string Number, IReadOnlyList<string> Words, RuleOrigin Origin);

/// <summary>The categories of a rule set: <c>food-categories.csv</c>.</summary>
public sealed class FoodCategories
{
    private FoodCategories(IReadOnlyList<FoodCategory> all) => All = all;

    /// <summary>All of them; none where the rule set has no such file.</summary>
    public IReadOnlyList<FoodCategory> All { get; }

    /// <summary>The categories of a rule set.</summary>
    /// <exception cref="TableException">A cell cannot be read.</exception>
    public static FoodCategories Of(RuleSet rules) => Of(rules.Folder);

    internal static FoodCategories Of(RuleFolder folder) => folder.Table(Read);

    /// <summary>A category by its name or number; null where there is none.</summary>
    public FoodCategory? Find(string? text) => text is null ? null : All.FirstOrDefault(each => Names.Same(each.Name, text) || each.Number.Length > 0 && Names.Same(each.Number, text));

    /// <summary>The category that the name of an ingredient shows; null where none does.</summary>
    public FoodCategory? Shown(string name) => All.FirstOrDefault(each => each.Words.Any(word => Names.HoldsBeginning(name, word)));

    private static FoodCategories Read(RuleFolder folder, List<CellProblem> problems) => new([.. folder.RowsIfAny("food-categories.csv", ["category", "number", "words"], problems)
        .Select(row => new FoodCategory(row.Cells.Required("category"), row.Cells.Text("number") ?? "", row.Cells.Words("words"), row.Origin()))]);
}
