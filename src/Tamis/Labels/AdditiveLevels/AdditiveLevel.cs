using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>How much of an additive the law allows in a category of food.</summary>
/// <param name="Additives">The additives, by number; the limit is for all of them together.</param>
/// <param name="Categories">The categories that it holds for; <c>all</c> for every food.</param>
/// <param name="LimitMgPerKg">The limit; null where as much as is needed may be used, or none at all.</param>
/// <param name="IsPermitted">Whether it may be used at all.</param>
/// <param name="BySulphites">Whether the amount is the sulphites that the documents of the ingredients state (<c>sulphites_mg_kg</c>), and not the mass of the additive.</param>
/// <param name="ExpressedAs">As what the limit is expressed; empty where as the additive itself.</param>
/// <param name="Condition">What else the law asks, for a person to judge; empty where nothing.</param>
/// <param name="Origin">Where the row came from.</param>
public sealed record AdditiveLevel(IReadOnlyList<string> Additives, IReadOnlyList<string> Categories, decimal? LimitMgPerKg, bool IsPermitted, bool BySulphites, string ExpressedAs, string Condition, RuleOrigin Origin);

/// <summary>What can be said of an additive in a food.</summary>
public enum LevelVerdict
{
    /// <summary>The most that there can be is within the limit.</summary>
    Within,
    /// <summary>As much as is needed may be used.</summary>
    AsNeeded,
    /// <summary>It was allowed in the ingredient that it came in with, and is carried over.</summary>
    CarriedOver,
    /// <summary>The most that there can be is over the limit, or the amount is not known.</summary>
    CannotBeSaid,
    /// <summary>The kit's table has no row for it here.</summary>
    NoRow,
    /// <summary>A known amount is over the limit.</summary>
    Over,
    /// <summary>It may not be used.</summary>
    NotPermitted,
}

/// <summary>An additive held against the law's table.</summary>
/// <param name="Use">The additive and where it is.</param>
/// <param name="Category">The category that it was looked up in; empty where none is known.</param>
/// <param name="Level">The row; null where there is none.</param>
/// <param name="Verdict">What can be said.</param>
/// <param name="MostMgPerKg">The most that there can be, in the food or, where it is carried over, in the ingredient; null where nobody knows.</param>
/// <param name="Supply">What to supply or do; empty where nothing.</param>
public sealed record AdditiveCheck(AdditiveUse Use, string Category, AdditiveLevel? Level, LevelVerdict Verdict, decimal? MostMgPerKg, string Supply);

/// <summary>The levels of a rule set: <c>additive-levels.csv</c>. The kit's table holds what pastry meets and is not the law's whole list: a missing row says nothing.</summary>
public sealed class AdditiveLevels
{
    private AdditiveLevels(IReadOnlyList<AdditiveLevel> all) => All = all;

    /// <summary>Every row.</summary>
    public IReadOnlyList<AdditiveLevel> All { get; }

    /// <summary>The levels of a rule set.</summary>
    /// <exception cref="TableException">A cell cannot be read.</exception>
    public static AdditiveLevels Of(RuleSet rules) => rules.Folder.Table(Read);

    /// <summary>The row of an additive in a category: its own, or one for all categories; null where the table has none.</summary>
    public AdditiveLevel? For(string number, string category) =>
        All.FirstOrDefault(level => level.Additives.Contains(number, Names.Comparer) && level.Categories.Contains(category, Names.Comparer))
        ?? All.FirstOrDefault(level => level.Additives.Contains(number, Names.Comparer) && level.Categories.Contains(Everywhere, Names.Comparer));

    /// <summary>Whether so much in a kilogram is within the limit of a row.</summary>
    public static bool IsWithin(AdditiveLevel level, decimal mgPerKg) => level.IsPermitted && (level.LimitMgPerKg is not { } limit || mgPerKg <= limit);

    /// <summary>Holds every additive of a food against the table.</summary>
    /// <param name="uses">The additives.</param>
    /// <param name="finishedGrams">What the food weighs, in grams, above 0.</param>
    /// <param name="category">The category of the food; null where nobody said.</param>
    /// <param name="categories">The categories, by which an ingredient shows its own.</param>
    public IReadOnlyList<AdditiveCheck> Check(IReadOnlyList<AdditiveUse> uses, double finishedGrams, FoodCategory? category, FoodCategories categories) =>
        [.. uses.Select(use => Check(use, [.. uses.Where(other => other.IsOwn)], finishedGrams, category, categories))];

    private AdditiveCheck Check(AdditiveUse use, IReadOnlyList<AdditiveUse> own, double finishedGrams, FoodCategory? category, FoodCategories categories)
    {
        var number = use.Additive.Number;
        // Sulphites of a compound are known by its document; what is in the whole food follows from that.
        var isSulphite = All.Any(row => row.BySulphites && row.Additives.Contains(number, Names.Comparer));
        var inIngredient = isSulphite ? (decimal?)use.Ingredient.SulphitesMgPerKg : use.MostGrams < use.IngredientGrams ? (decimal)(use.MostGrams / use.IngredientGrams * 1e6) : null;
        if (!use.IsOwn && categories.Shown(use.Ingredient.LabelName ?? use.Ingredient.Name) is { } compound && For(number, compound.Name) is { } carried && carried.IsPermitted)
        {
            return carried.LimitMgPerKg is null || inIngredient <= carried.LimitMgPerKg ? new(use, compound.Name, carried, LevelVerdict.CarriedOver, inIngredient, "")
                : inIngredient is null ? new(use, compound.Name, carried, LevelVerdict.CannotBeSaid, null, $"how much of it is in {use.Ingredient.Name}, from the supplier")
                : new(use, compound.Name, carried, LevelVerdict.Over, inIngredient, $"another {use.Ingredient.Name}, or the supplier’s word that the figure is wrong");
        }
        var name = category?.Name ?? Everywhere;
        if (For(number, name) is not { } level)
            return category is null ? new(use, "", null, LevelVerdict.CannotBeSaid, null, $"food_category in dessert.csv: one of {string.Join(", ", categories.All.Select(each => each.Name))}")
                : new(use, name, null, LevelVerdict.NoRow, null, use.IsOwn ? "look in the law’s own list" : "ask the supplier whether it is allowed in the compound, or look in the law’s own list");
        if (!level.IsPermitted) return new(use, name, level, LevelVerdict.NotPermitted, null, "something else in its place");
        if (level.LimitMgPerKg is not { } limit) return new(use, name, level, LevelVerdict.AsNeeded, use.IsOwn ? (decimal)(use.MostGrams / finishedGrams * 1e6) : null, "");
        // The limit is for all of the row together; of a bought mixture only the sum is known.
        var together = isSulphite && inIngredient is { } sulphites ? sulphites * (decimal)(use.IngredientGrams / finishedGrams)
            : (decimal)(own.Where(other => level.Additives.Contains(other.Additive.Number, Names.Comparer)).DistinctBy(other => other.Ingredient.Name, Names.Comparer).Sum(other => other.MostGrams) + (use.IsOwn ? 0 : use.MostGrams)) / (decimal)finishedGrams * 1_000_000m;
        return together <= limit ? new(use, name, level, LevelVerdict.Within, together, "")
            : isSulphite ? new(use, name, level, LevelVerdict.Over, together, "less of it")
            : new(use, name, level, LevelVerdict.CannotBeSaid, together, $"how much of {use.Ingredient.Name} is {use.Additive.Name}{(level.ExpressedAs.Length > 0 ? $", as {level.ExpressedAs}" : "")}: all of it taken as such would be over the limit");
    }

    private const string Everywhere = "all";

    private static AdditiveLevels Read(RuleFolder folder, List<CellProblem> problems) => new([.. folder.RowsIfAny("additive-levels.csv", ["additives", "categories", "limit_mg_kg", "measured", "expressed_as", "condition"], problems).Select(row =>
    {
        var text = row.Cells.Required("limit_mg_kg");
        var isAsNeeded = Names.Same(text, "quantum satis");
        var isForbidden = Names.Same(text, "not permitted");
        if (row.Cells.Words("additives").Count == 0) row.Cells.Note("additives", "numbers such as E 200; E 202");
        foreach (var unknown in row.Cells.Words("additives").Where(number => Additives.Of(folder).Find(number) is null)) row.Cells.Note("additives", $"numbers of additives.csv; '{unknown}' is none");
        var categories = FoodCategories.Of(folder);
        if (row.Cells.Words("categories").Count == 0) row.Cells.Note("categories", "a category of food-categories.csv, or all");
        foreach (var unknown in row.Cells.Words("categories").Where(name => !Names.Same(name, Everywhere) && categories.Find(name) is null)) row.Cells.Note("categories", $"categories of food-categories.csv; '{unknown}' is none");
        if (row.Cells.Text("measured") is { } measured && measured != "sulphites_mg_kg") row.Cells.Note("measured", "a blank, or sulphites_mg_kg");
        return new AdditiveLevel(row.Cells.Words("additives"), row.Cells.Words("categories"), isAsNeeded || isForbidden ? null : row.Decimal("limit_mg_kg"), !isForbidden,
            row.Cells.Text("measured") is not null, row.Cells.Text("expressed_as") ?? "", row.Cells.Text("condition") ?? "", row.Origin());
    })]);
}
