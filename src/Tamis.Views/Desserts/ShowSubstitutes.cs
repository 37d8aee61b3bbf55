using Tamis.Desserts;
using Tamis.Formulas;
using Tamis.Physics;

namespace Tamis.Views;

public static partial class Show
{
    private const int MostOfStore = 8;

    /// <summary>What could stand in for an ingredient that must go: the nearest by composition, with what they change in the component.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="component">The component.</param>
    /// <param name="ingredient">The ingredient that goes.</param>
    /// <param name="farthestGrams">How far a food may lie from it, in grams of 100 g; the usual limit where null.</param>
    /// <param name="without">An allergen that what stands in must not hold; null for none.</param>
    /// <param name="freshInMonth">A month, 1 to 12: what has a season must be fresh then; null for any.</param>
    public static Html Substitutes(Dessert dessert, string trial, string component, string ingredient, double? farthestGrams = null, string? without = null, int? freshInMonth = null)
    {
        if (dessert.Store.Ingredients.FindOrBare(ingredient).Profile is null)
            return Notes.LookAt(Html.Of($"Neither a food nor a document gives figures for {ingredient}, so nobody can say what is near to it."));
        var found = Desserts.Substitutes.Of(dessert, trial, component, ingredient, farthestGrams, without, freshInMonth);
        var currency = dessert.Prices.Currency ?? "";
        Substitute[] shown = [.. found.Nearest.Where(each => each.IsInStore).Take(MostOfStore), .. found.Nearest.Where(each => !each.IsInStore)];
        return Notes.Paragraph(Verdict(found, currency)) + (shown.Length == 0 ? Html.Empty : Table(found, shown, currency) + Notes.Folded("What each would change in the component", Html.Join(shown.Select(each => Changes(each, found.Goes))))) + Limits(found);
    }

    /// <summary>What could stand in for the dearest ingredient of a piece, where it costs most.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    public static Html Substitutes(Dessert dessert, string trial) => NoPrices(dessert) is { } missing ? missing
        : Desserts.Substitutes.Dearest(DessertCosts.Of(dessert, trial)) is not { } dearest ? Notes.Small(Html.Of($"No line of a piece has both a price and figures, so there is nothing to compare."))
        : Notes.Paragraph(Html.Of($"What costs most in a piece is the <strong>{dearest.Ingredient}</strong> of the {dearest.Component}.")) + Substitutes(dessert, trial, dearest.Component, dearest.Ingredient);

    /// <summary>Every line that holds an allergen or may hold it, with the nearest that could stand in without it.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="allergen">The allergen, as the store's sheets name it.</param>
    public static Html WithoutAllergen(Dessert dessert, string trial, string allergen)
    {
        var batch = dessert.Trial(trial);
        var holding = Desserts.Substitutes.Holding(batch, allergen);
        var unseen = AllergensHeld.By(batch.Components.SelectMany(each => each.In.Parts).Select(part => part.Ingredient)).NotLookedAt;
        var doubt = unseen.Count == 0 ? Html.Empty : Notes.Caution(Html.Of($"Nobody looked for allergens in {string.Join(", ", unseen)}: {allergen} may be in there too."));
        if (holding.Count == 0) return Notes.Paragraph(Html.Of($"No line of {trial} is written down as holding {allergen}.")) + doubt;
        var table = new DataTable($"Without {allergen}",
            [Column.Words("Component"), Column.Words("must go"), Column.Words("nearest in the store"), Column.Words("nearest food of the table"), Column.Words("windows with the first of them")],
            [.. holding.Select(line => Line(dessert, trial, allergen, line.Component, line.Ingredient))]) { IsWide = true, LeastRem = 46 };
        return Notes.Paragraph(Html.Of($"<strong>{Capital(allergen)}</strong> stands in {Counted(holding.Count, "line")} of {trial}.")) + doubt + table.ToHtml()
            + Notes.Caution(Html.Of($"Of a food of the table nobody knows what its supplier’s pack holds: look at the pack and ask before anybody eats of it. Traces from the same bench, oven or grinder are not in this table."));
    }

    private static Row Line(Dessert dessert, string trial, string allergen, string component, Formulas.Ingredient goes)
    {
        if (goes.Profile is null) return new(component, goes.Name, "not known: it has no figures", "", "");
        var found = Desserts.Substitutes.Of(dessert, trial, component, goes.Name, without: allergen);
        var (own, food) = (found.Nearest.FirstOrDefault(each => each.IsInStore), found.Nearest.FirstOrDefault(each => !each.IsInStore));
        return new(component, goes.Name, Near(own), Near(food), (own ?? food) is { } first ? Windows(first) : "");
    }

    /// <summary>Every line that is out of season when the order is due, with what could stand in that is fresh then or keeps.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="month">A month, 1 to 12; that of the order, or of the last make, where null.</param>
    public static Html OutOfSeason(Dessert dessert, string trial, int? month = null)
    {
        if ((month ?? Desserts.Substitutes.DayOf(dessert)?.Month) is not { } then) return Notes.Paragraph(Html.Of($"Nobody said when it is made: write an order with its day in dessert.csv, or the days of the makes in trials.csv."));
        var region = Desserts.Substitutes.RegionOf(dessert, trial);
        var lines = Desserts.Substitutes.OutOfSeason(dessert.Trial(trial), region, then);
        var about = Notes.Small(Html.Of($"Seasons of {region}, by the name of the ingredient: {Costing.Season.All.First(season => Names.Same(season.Region, region)).Source}. What has no row has no season here. A puree or a fruit that was frozen in its season keeps: ask which it is. Another region is the row {"region"} in dessert.csv."));
        if (lines.Count == 0) return Notes.Paragraph(Html.Of($"Nothing of {trial} that the kit knows a season of is out of it in {Month(then)}.")) + about;
        var table = new DataTable($"Out of season in {Month(then)}",
            [Column.Words("Component"), Column.Words("out of season"), Column.Words("fresh"), Column.Words("nearest in the store"), Column.Words("nearest food of the table"), Column.Words("windows with the first of them")],
            [.. lines.Select(line => Fresh(dessert, trial, line.Component, line.Ingredient, Months(line.Season), then))]) { IsWide = true, LeastRem = 46 };
        return Notes.Paragraph(Html.Of($"In <strong>{Month(then)}</strong> {Counted(lines.Count, "line")} of {trial} {(lines.Count == 1 ? "is" : "are")} not fresh.")) + table.ToHtml() + about;
    }

    private static Row Fresh(Dessert dessert, string trial, string component, Formulas.Ingredient goes, string months, int month)
    {
        if (goes.Profile is null) return new(component, goes.Name, months, "not known: it has no figures", "", "");
        var found = Desserts.Substitutes.Of(dessert, trial, component, goes.Name, freshInMonth: month);
        var (own, food) = (found.Nearest.FirstOrDefault(each => each.IsInStore), found.Nearest.FirstOrDefault(each => !each.IsInStore));
        return new(component, goes.Name, months, Near(own), Near(food), (own ?? food) is { } first ? Windows(first) : "");
    }

    private static string Near(Substitute? each) => each is null ? "none so near"
        : $"{each.Ingredient.Name} ({Figures.Mass(each.Distance.ApartGrams).Text} of 100 apart{(each.Dose is { } dose ? $"; {Figures.Number(dose.Ratio, 2, "g").Text} for 1 g, {dose.Function}" : "")})";

    private static Html Verdict(Substitutes found, string currency)
    {
        var (goes, name) = (found.Goes.Name, found.Component.Name);
        var free = found.Without is { } allergen ? $" without {allergen}" : "";
        if (found.Nearest.Count == 0) return Html.Of($"No ingredient of the store and no food of the table{free} lies within {Figures.Mass(found.FarthestGrams).InText} in 100\u202fg of {goes}, or does the same in a dose that is not out of all proportion.");
        if (found.CheckUp.NoVerdict.Length > 0) return Html.Of($"Nobody can say which of them keeps the {name} as it is: {Typeset.Text(found.CheckUp.NoVerdict)}");
        if (found.CheapestThatKeeps is not { } cheapest) return Html.Of($"Nothing in the store{free} that is near to {goes}, or does the same, keeps every window of the {name} that holds now, brings in no allergen and has a price.");
        var before = found.Component.PerGram;
        var against = before.IsWhole ? Html.Of($", against {Figures.Money(before * 100, currency).InText} now") : Html.Empty;
        return Html.Of($"The cheapest in the store{free} that keeps every window of the {name} that holds now and brings in no allergen is <strong>{cheapest.Ingredient.Name}</strong>: 100\u202fg of {name} then cost {Figures.Money(cheapest.PerGram * 100, currency).InText}{against}.");
    }

    private static Html Table(Substitutes found, Substitute[] shown, string currency) => new DataTable($"In place of {found.Goes.Name}",
        [Column.Words("In its place"), Column.Numbers("of 100 g are something else", "g"), Column.Words("weigh for 1 g"), Column.Words("windows that no longer hold"), Column.Words("allergens in"), Column.Words("allergens out"), Column.Numbers("100 g cost", currency)],
        [new Row([$"{found.Goes.Name}, as it is", Num.Said(""), Function(shown), found.CheckUp.NoVerdict.Length > 0 ? "no windows" : $"{found.CheckUp.Inside.Count} hold", "", "", Figures.Money(found.Component.PerGram * 100, "")]) { Kind = RowKind.Chosen },
         .. shown.Select(each => new Row([
            $"{each.Ingredient.Name}{(each.Season is { } season ? $" (fresh {Months(season)})" : "")}", Figures.Mass(each.Distance.ApartGrams).WithoutUnit(), Weigh(each), Windows(each),
            !each.IsLookedAt ? "nobody looked" : each.AllergensAdded.Count == 0 ? "none" : string.Join(", ", each.AllergensAdded),
            each.AllergensGone.Count == 0 ? "" : string.Join(", ", each.AllergensGone), Figures.Money(each.PerGram * 100, "")]))])
    { IsWide = true, IsLong = true, LeastRem = 48, Caption = Html.Of($"In place of {found.Goes.Name} in the {found.Component.Name}, by the dose that does the same where that is known; those without a price are foods of the composition table or have none in the sheet") }.ToHtml();

    private static string Windows(Substitute each) => each.Made is null ? $"cannot be made so: {each.CannotBeMade}"
        : each.CheckUp!.NoVerdict.Length > 0 ? "no windows" : each.Lost.Count == 0 ? "all hold"
        : string.Join("; ", each.Lost.Select(line => $"{line.Window.Figure}{line.Verdict switch { WindowVerdict.TooLow => " too little", WindowVerdict.TooHigh => " too much", _ => " not known" }}"));

    private static string Weigh(Substitute each) => each.Dose is null ? "1 g" : Figures.Number(each.GramsForAGram, 2, "g").Text;

    private static string Function(IEnumerable<Substitute> shown) => shown.Select(each => each.Dose?.Function).OfType<string>().Distinct().ToArray() is { Length: > 0 } functions ? string.Join(", ", functions) : "gram for gram";

    private static string Months(Costing.Season season) => season.FromMonth == season.ToMonth ? Month(season.FromMonth) : $"{Month(season.FromMonth)} to {Month(season.ToMonth)}";

    private static string Month(int month) => System.Globalization.CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(month);

    private static Html Changes(Substitute each, Formulas.Ingredient goes)
    {
        if (each.Made is null) return Html.Empty;
        var moved = each.Moved.Select(part => $"{BalanceParts.Word(part.Part)} {Figures.Number(part.BeforePercent, 1).Text} to {Figures.Number(part.AfterPercent, 1, "%").Text}").ToArray();
        var nutrients = each.Ingredient.Profile!.Nutrients;
        var eaten = each.Nutrition.Where(line => Math.Abs(line.After - line.Before) > 0.01 * Math.Abs(line.Before)).Select(line => $"{nutrients[line.Tag].Word} {Figures.Significant(line.Before).Text} to {Figures.Significant(line.After, nutrients[line.Tag].Unit).Text}").ToArray();
        var word = Names.Same(each.LabelWord, goes.LabelName ?? goes.Name) ? $"On the list of ingredients its word stays “{each.LabelWord}”" : $"On the list of ingredients “{goes.LabelName ?? goes.Name}” becomes “{each.LabelWord}”";
        var dose = each.Dose is { } same ? Html.Of($" {Figures.Number(same.Ratio, 2, "g").InText} for a gram: {same.Function} ({same.Source}).") : Html.Empty;
        return Notes.Small(Html.Of($"<b>{Capital(each.Ingredient.Name)}.</b>{dose} {word}. Of the component: {(moved.Length == 0 ? "nothing that is known moves" : string.Join(", ", moved))}. In 100\u202fg: {(eaten.Length == 0 ? "no nutrient that is known moves" : string.Join(", ", eaten))}."));
    }

    private static Html Limits(Substitutes found) =>
        (found.Without is { } allergen && found.Nearest.Any(each => !each.IsLookedAt) ? Notes.Caution(Html.Of($"Where nobody looked, nobody knows whether {allergen} is in it, or another allergen: look at the pack, and ask the supplier, before anybody eats of it.")) : Html.Empty)
        + Notes.Small(Html.Of($"How near two foods are: the grams in 100\u202fg of one that would have to be something else, by function (half the sum of the differences of their balances). Further ingredients of the store that lie farther off are there by what they do, where the dose is not out of all proportion. It says nothing of taste, colour or grain, and such a dose is where a trial begins, not where it ends.{(found.WithoutFigures.Count == 0 ? "" : $" Not compared, for nobody gave figures: {string.Join(", ", found.WithoutFigures)}.")}"));
}
