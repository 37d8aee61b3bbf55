using Tamis.Desserts;
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
    /// <param name="farthestGrams">How far a food may lie from it, in grams of 100 g.</param>
    /// <param name="without">An allergen that what stands in must not hold; null for none.</param>
    public static Html Substitutes(Dessert dessert, string trial, string component, string ingredient, double farthestGrams = Desserts.Substitutes.UsualGrams, string? without = null)
    {
        if (dessert.Store.Ingredients.FindOrBare(ingredient).Profile is null)
            return Notes.LookAt(Html.Of($"Neither a food nor a document gives figures for {ingredient}, so nobody can say what is near to it."));
        var found = Desserts.Substitutes.Of(dessert, trial, component, ingredient, farthestGrams, without);
        var currency = dessert.Prices.Currency ?? "";
        Substitute[] shown = [.. found.Nearest.Where(each => each.IsInStore).Take(MostOfStore), .. found.Nearest.Where(each => !each.IsInStore)];
        return Notes.Paragraph(Verdict(found, currency)) + (shown.Length == 0 ? Html.Empty : Table(found, shown, currency) + Notes.Folded("What each would change in the component", Html.Join(shown.Select(Changes)))) + Limits(found);
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
        var unseen = batch.Components.SelectMany(each => each.In.Parts).Select(part => part.Ingredient).Where(each => each.Allergens is null).Select(each => each.Name).Distinct(Names.Comparer).ToArray();
        var doubt = unseen.Length == 0 ? Html.Empty : Notes.Caution(Html.Of($"Nobody looked for allergens in {string.Join(", ", unseen)}: {allergen} may be in there too."));
        if (holding.Count == 0) return Notes.Paragraph(Html.Of($"No line of {trial} is written down as holding {allergen}.")) + doubt;
        var table = new DataTable($"Without {allergen}",
            [Column.Words("Component"), Column.Words("must go"), Column.Words("nearest in the store"), Column.Words("nearest food of the table"), Column.Words("windows with the first of them")],
            [.. holding.Select(line => Line(dessert, trial, allergen, line.Component, line.Ingredient))]) { IsWide = true, LeastRem = 46 };
        return Notes.Paragraph(Html.Of($"<strong>{Capital(allergen)}</strong> stands in {Counted(holding.Count, "line")} of {trial}.")) + doubt + table.ToHtml()
            + Notes.Caution(Html.Of($"Of a food of the table nobody knows what its supplier's pack holds: look at the pack and ask before anybody eats of it. Traces from the same bench, oven or grinder are not in this table."));
    }

    private static Row Line(Dessert dessert, string trial, string allergen, string component, Formulas.Ingredient goes)
    {
        if (goes.Profile is null) return new(component, goes.Name, "not known: it has no figures", "", "");
        var found = Desserts.Substitutes.Of(dessert, trial, component, goes.Name, without: allergen);
        var (own, food) = (found.Nearest.FirstOrDefault(each => each.IsInStore), found.Nearest.FirstOrDefault(each => !each.IsInStore));
        return new(component, goes.Name, Named(own), Named(food), (own ?? food) is { } first ? Windows(first) : "");

        static string Named(Substitute? each) => each is null ? "none so near" : $"{each.Ingredient.Name} ({Figures.Mass(each.Distance.ApartGrams).Text} of 100 apart)";
    }

    private static Html Verdict(Substitutes found, string currency)
    {
        var (goes, name) = (found.Goes.Name, found.Component.Name);
        var free = found.Without is { } allergen ? $" without {allergen}" : "";
        if (found.Nearest.Count == 0) return Html.Of($"No ingredient of the store and no food of the table{free} lies within {Figures.Mass(found.FarthestGrams).InText} in 100\u202fg of {goes}.");
        if (found.CheckUp.NoVerdict.Length > 0) return Html.Of($"Nobody can say which of them keeps the {name} as it is: {Typeset.Text(found.CheckUp.NoVerdict)}");
        if (found.CheapestThatKeeps is not { } cheapest) return Html.Of($"Nothing in the store{free} within {Figures.Mass(found.FarthestGrams).InText} in 100\u202fg of {goes} keeps every window of the {name} that holds now, brings in no allergen and has a price.");
        var before = found.Component.PerGram;
        var against = before.IsWhole ? Html.Of($", against {Figures.Money(before * 100, currency).InText} now") : Html.Empty;
        return Html.Of($"The cheapest in the store{free} that keeps every window of the {name} that holds now and brings in no allergen is <strong>{cheapest.Ingredient.Name}</strong>: 100\u202fg of {name} then cost {Figures.Money(cheapest.PerGram * 100, currency).InText}{against}.");
    }

    private static Html Table(Substitutes found, Substitute[] shown, string currency) => new DataTable($"In place of {found.Goes.Name}",
        [Column.Words("In its place"), Column.Numbers("of 100 g are something else", "g"), Column.Words("kind"), Column.Words("windows that no longer hold"), Column.Words("allergens in"), Column.Words("allergens out"), Column.Numbers("100 g cost", currency)],
        [new Row([$"{found.Goes.Name}, as it is", Num.Said(""), "", found.CheckUp.NoVerdict.Length > 0 ? "no windows" : $"{found.CheckUp.Inside.Count} hold", "", "", Figures.Money(found.Component.PerGram * 100, "")]) { Kind = RowKind.Chosen },
         .. shown.Select(each => new Row([
            each.Ingredient.Name, Figures.Mass(each.Distance.ApartGrams).WithoutUnit(), each.IsSameKind ? "the same" : "another", Windows(each),
            !each.IsLookedAt ? "nobody looked" : each.AllergensAdded.Count == 0 ? "none" : string.Join(", ", each.AllergensAdded),
            each.AllergensGone.Count == 0 ? "" : string.Join(", ", each.AllergensGone), Figures.Money(each.PerGram * 100, "")]))])
    { IsWide = true, IsLong = true, LeastRem = 48, Caption = Html.Of($"In place of {found.Goes.Name} in the {found.Component.Name}, gram for gram; those without a price are foods of the composition table or have none in the sheet") }.ToHtml();

    private static string Windows(Substitute each) => each.Made is null ? $"cannot be made so: {each.CannotBeMade}"
        : each.CheckUp!.NoVerdict.Length > 0 ? "no windows" : each.Lost.Count == 0 ? "all hold"
        : string.Join("; ", each.Lost.Select(line => $"{line.Window.Figure}{line.Verdict switch { WindowVerdict.TooLow => " too little", WindowVerdict.TooHigh => " too much", _ => " not known" }}"));

    private static Html Changes(Substitute each)
    {
        if (each.Made is null) return Html.Empty;
        var moved = each.Moved.Select(part => $"{BalanceParts.Word(part.Part)} {Figures.Number(part.BeforePercent, 1).Text} to {Figures.Number(part.AfterPercent, 1, "%").Text}").ToArray();
        var nutrients = each.Ingredient.Profile!.Nutrients;
        var eaten = each.Nutrition.Where(line => Math.Abs(line.After - line.Before) > 0.01 * Math.Abs(line.Before)).Select(line => $"{nutrients[line.Tag].Word} {Figures.Significant(line.Before).Text} to {Figures.Significant(line.After, nutrients[line.Tag].Unit).Text}").ToArray();
        return Notes.Small(Html.Of($"<b>{Capital(each.Ingredient.Name)}.</b> Of the component: {(moved.Length == 0 ? "nothing that is known moves" : string.Join(", ", moved))}. In 100\u202fg: {(eaten.Length == 0 ? "no nutrient that is known moves" : string.Join(", ", eaten))}."));
    }

    private static Html Limits(Substitutes found) =>
        (found.Without is { } allergen && found.Nearest.Any(each => !each.IsLookedAt) ? Notes.Caution(Html.Of($"Where nobody looked, nobody knows whether {allergen} is in it, or another allergen: look at the pack, and ask the supplier, before anybody eats of it.")) : Html.Empty)
        + Notes.Small(Html.Of($"How near two foods are: the grams in 100\u202fg of one that would have to be something else, by function (half the sum of the differences of their balances). It says nothing of taste, colour, grain or how a gel sets, and gram for gram is where a trial begins, not where it ends.{(found.WithoutFigures.Count == 0 ? "" : $" Not compared, for nobody gave figures: {string.Join(", ", found.WithoutFigures)}.")}"));
}
