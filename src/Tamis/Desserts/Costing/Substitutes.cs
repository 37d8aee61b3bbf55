using Tamis.Costing;
using Tamis.Formulas;
using Tamis.Losses;
using Tamis.Physics;

namespace Tamis.Desserts;

/// <summary>What could stand in for an ingredient of a component, the nearest by composition first.</summary>
public sealed record Substitutes
{
    private const string RegionKey = "region";
    private const int MostOfTable = 4;
    private static readonly string[] Tags = ["ENERC_KCAL", "FAT", "FASAT", "SUGAR", "PROCNT", "FIBTG", "NA"];

    /// <summary>The trial as it is.</summary>
    public required Batch Before { get; init; }

    /// <summary>The component as it is.</summary>
    public required ComponentCost Component { get; init; }

    /// <summary>The ingredient that goes.</summary>
    public required Ingredient Goes { get; init; }

    /// <summary>The component as it is beside its windows; what was measured of it is left out, for it was not measured of the others.</summary>
    public required CheckUp CheckUp { get; init; }

    /// <summary>The nearest ones of the store and, behind them, of the composition table.</summary>
    public required IReadOnlyList<Substitute> Nearest { get; init; }

    /// <summary>Ingredients of the store without figures: nobody can say how near they are.</summary>
    public required IReadOnlyList<string> WithoutFigures { get; init; }

    /// <summary>The cheapest of the store that keeps every window that held, and brings in no allergen; null where none does.</summary>
    public Substitute? CheapestThatKeeps => Nearest.Where(each => each.IsInStore && each.Keeps && each.PerGram.IsWhole).MinBy(each => each.PerGram.Known);

    /// <summary>How far a food might lie from the one that goes, in grams of 100 g.</summary>
    public required double FarthestGrams { get; init; }

    /// <summary>The allergen that what stands in must not hold; null for none.</summary>
    public string? Without { get; init; }

    /// <summary>The month of which only fresh things stand in, 1 to 12; null for any.</summary>
    public int? FreshInMonth { get; init; }

    /// <summary>What could stand in for an ingredient of a component, by the dose that does the same where the balance can tell, else gram for gram.</summary>
    /// <remarks>Near by composition, or of the store and with a dose of the same function that is not out of all proportion.</remarks>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="component">The component.</param>
    /// <param name="ingredient">The ingredient that goes.</param>
    /// <param name="farthestGrams">How far a food may lie from the one that goes, in grams of 100 g; the usual limit where null.</param>
    /// <param name="without">An allergen that must not come in by what stands in: what holds or may hold it, or is named after it, is left out; null for none.</param>
    /// <param name="freshInMonth">A month, 1 to 12: what has a season and is out of it then is left out; null for any.</param>
    /// <exception cref="KeyNotFoundException">There is no such trial, component or line; the message names those that are there.</exception>
    /// <exception cref="InvalidOperationException">The ingredient has no figures, so that nothing is near to it.</exception>
    public static Substitutes Of(Dessert dessert, string trial, string component, string ingredient, double? farthestGrams = null, string? without = null, int? freshInMonth = null)
    {
        var farthest = farthestGrams ?? SubstitutionLimits.Kit.FarthestGrams;
        var batch = dessert.Trial(trial);
        var goes = dessert.Store.Ingredients.FindOrBare(ingredient);
        // Asks at once whether the component and the line are there.
        Swap.Of(batch, component, ingredient, goes, dessert.Store.Ingredients, []);
        if (goes.Profile is null) throw new InvalidOperationException($"Neither a food nor a document gives figures for {goes.Name}, so nobody can say what is near to it.");
        var costs = DessertCosts.Of(dessert, trial);
        var before = new Substitutes
        {
            Before = batch, Goes = goes, Component = costs.Batch.Find(component)!, CheckUp = CheckUpOf(dessert, trial, batch, component), Nearest = [], FarthestGrams = farthest, Without = without, FreshInMonth = freshInMonth,
            WithoutFigures = [.. dessert.Store.Ingredients.All.Where(each => each.Profile is null).Select(each => each.Name)],
        };
        return before with { Nearest = [.. Candidates(dessert, trial, batch, goes, farthest, without, freshInMonth).Select(candidate => before.With(dessert, trial, candidate, costs))] };
    }

    /// <summary>The dearest line of a piece that can be compared: its component and its name; null where nothing has both a price and figures.</summary>
    public static (string Component, string Ingredient)? Dearest(DessertCosts costs) =>
        (from share in costs.Piece
         from line in share.Component.Lines
         where line.Ingredient?.Profile is not null && line.PerWeighedGram is not null && share.Component.Made.YieldGrams > 0
         orderby line.Cost.Known * share.Grams / share.Component.Made.YieldGrams descending
         select ((string, string)?)(share.Component.Name, line.Line.Name)).FirstOrDefault();

    /// <summary>Every line of a trial that holds an allergen or may hold it, with its component, in the order of the formula.</summary>
    public static IReadOnlyList<(string Component, Ingredient Ingredient)> Holding(Batch batch, string allergen) =>
        [.. from made in batch.Components
            from line in made.Lines
            where !line.IsComponent
            let ingredient = made.In.Parts.First(part => Names.Same(part.Ingredient.Name, line.Name)).Ingredient
            where WrittenOf(ingredient).Contains(allergen, Names.Comparer)
            group ingredient by (made.Name, ingredient.Name) into once
            select (once.Key.Item1, once.First())];

    /// <summary>The region whose seasons count: <c>region</c> of <c>dessert.csv</c>, or else the first that the kit knows.</summary>
    /// <exception cref="Tables.TableException">The kit knows no seasons of the region.</exception>
    public static string RegionOf(Dessert dessert, string trial) => dessert.Facts.Text(RegionKey, trial) is not { } region ? Season.Regions[0]
        : Season.Regions.Contains(region, Names.Comparer) ? region
        : throw new Tables.TableException([dessert.Facts.Problem(RegionKey, trial, $"a region whose seasons are known: {string.Join(", ", Season.Regions)}")]);

    /// <summary>The day for which it is made: when the order is due, or else the day whose documents count; null where nobody said.</summary>
    public static DateOnly? DayOf(Dessert dessert) => OrderText.Due(dessert) is { } due ? DateOnly.FromDateTime(due) : dessert.Store.AsOf;

    /// <summary>Every line of a trial that has a season and is out of it in a month, with its component, in the order of the formula.</summary>
    /// <param name="batch">The trial.</param>
    /// <param name="region">Whose seasons.</param>
    /// <param name="month">1 to 12.</param>
    public static IReadOnlyList<(string Component, Ingredient Ingredient, Season Season)> OutOfSeason(Batch batch, string region, int month) =>
        [.. from made in batch.Components
            from ingredient in made.In.Parts.Select(part => part.Ingredient).DistinctBy(each => each.Name, Names.Comparer)
            where made.Lines.Any(line => !line.IsComponent && Names.Same(line.Name, ingredient.Name))
            let season = Season.Of(ingredient.Name, region)
            where season is not null && !season.Holds(month)
            select (made.Name, ingredient, season)];

    private static IEnumerable<Substitute> Candidates(Dessert dessert, string trial, Batch batch, Ingredient goes, double farthestGrams, string? without, int? freshInMonth)
    {
        var region = RegionOf(dessert, trial);
        var most = SubstitutionLimits.Kit.MostTimes;
        var isAromatic = SubstitutionLimits.Kit.IsAromatic(goes.Name);
        var kind = IngredientKinds.Kit.Of(goes);
        Substitute[] own = [.. Near(dessert.Store.Ingredients.All.Where(each => !Names.Same(each.Name, goes.Name) && batch.Formula.Find(each.Name) is null), int.MaxValue, isInStore: true)];
        var foods = dessert.Store.Ingredients.All.Select(each => each.Food).OfType<string>().ToHashSet(StringComparer.OrdinalIgnoreCase);
        var table = KitData.Composition;
        var others = table.Foods.Where(food => !foods.Contains(food.Id) && batch.Formula.Find(food.Name) is null && dessert.Store.Ingredients.Find(food.Name) is null)
            .Select(food => new Ingredient { Name = food.Name, Food = food.Id, Profile = table.Profile(food.Id), EdiblePercent = food.EdiblePercent ?? 100 });
        return own.Concat(Near(others, MostOfTable, isInStore: false));

        IEnumerable<Substitute> Near(IEnumerable<Ingredient> pool, int take, bool isInStore) =>
            from each in (from candidate in pool
                          where without is null || !Holds(candidate, without)
                          where SubstitutionLimits.Kit.IsAromatic(candidate.Name) == isAromatic
                          let season = Season.Of(candidate.Name, region)
                          where freshInMonth is not { } month || season?.Holds(month) != false
                          let distance = FoodDistance.Of(goes, candidate)
                          where distance is not null
                          let dose = FunctionDose.Of(goes, candidate) is { } same && same.Ratio <= most && same.Ratio >= 1 / most ? same : null
                          where distance.ApartGrams <= farthestGrams || isInStore && dose is not null
                          orderby distance.ApartGrams, candidate.Name
                          select (candidate, distance, dose, season)).Take(take)
            select new Substitute(each.candidate, each.distance, isInStore, kind != IngredientKind.Unknown && IngredientKinds.Kit.Of(each.candidate) == kind) { Dose = each.dose, Season = each.season };
    }

    private static bool Holds(Ingredient ingredient, string allergen) =>
        WrittenOf(ingredient).Contains(allergen, Names.Comparer) || PieceWord.WordsOf(ingredient.Name).Contains(PieceWord.Singular(Names.Key(allergen)));

    private static IEnumerable<string> WrittenOf(Ingredient ingredient) => (ingredient.Allergens ?? []).Concat(ingredient.MayContain ?? []);

    private Substitute With(Dessert dessert, string trial, Substitute candidate, DessertCosts costs)
    {
        List<Tables.CellProblem> problems = [];
        if (Swap.Of(Before, Component.Name, Goes.Name, candidate.Ingredient, dessert.Store.Ingredients, problems, candidate.GramsForAGram) is not { } after)
            return candidate with { CannotBeMade = problems.Count > 0 ? problems[0].Expected : "its masses are not known then" };
        var made = after.Find(Component.Name)!;
        var checkUp = CheckUpOf(dessert, trial, after, Component.Name);
        var (old, now) = (AllergensOf(Before), AllergensOf(after));
        return candidate with
        {
            Made = made,
            CheckUp = checkUp,
            Lost = [.. CheckUp.Lines.Zip(checkUp.Lines).Where(pair => pair.First.Verdict == WindowVerdict.Inside && pair.Second.Verdict != WindowVerdict.Inside).Select(pair => pair.Second)],
            PerGram = BatchCost.Of(after, name => dessert.Prices.On(name, costs.Day), costs.Currency).Find(Component.Name)!.PerGram,
            AllergensAdded = [.. now.Except(old, Names.Comparer)],
            AllergensGone = candidate.IsLookedAt ? [.. old.Except(now, Names.Comparer)] : [],
            Moved = Moves(Component.Made.Out, made.Out),
            Nutrition = [.. from tag in Tags
                            let was = Component.Made.Out.Per100Grams(tag)
                            let now100 = made.Out.Per100Grams(tag)
                            where was is not null && now100 is not null
                            select (tag, was.Value, now100.Value)],
        };

        string[] AllergensOf(Batch batch) => [.. Swap.IngredientsOf(batch, Component.Name).SelectMany(WrittenOf).Distinct(Names.Comparer).Order(StringComparer.Ordinal)];
    }

    private static CheckUp CheckUpOf(Dessert dessert, string trial, Batch batch, string component)
    {
        var note = dessert.Components.Of(component, dessert.LineOf(trial));
        var examined = Examined.Of(batch, component) with { Steps = dessert.Method?.StepsOf(component, dessert.LineOf(trial)) ?? [] };
        return CheckUp.Of(examined, note?.Family, note?.Use, dessert.Windows);
    }

    private static (BalancePart, double, double)[] Moves(Mixture before, Mixture after)
    {
        var (old, now) = (Balance.Of(before), Balance.Of(after));
        return [.. (from part in BalanceParts.Known
                    let was = old.PercentOf(part)
                    let then = now.PercentOf(part)
                    where was is not null && then is not null && Math.Abs(then.Value - was.Value) >= 0.05
                    orderby Math.Abs(then.Value - was.Value) descending
                    select (part, was.Value, then.Value)).Take(4)];
    }
}
