using System.Globalization;
using Tamis.Costing;
using Tamis.Desserts;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>What a trial costs: a piece by component, a portion, 100 g, hands and energy where they are given, and what remains of the selling price.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="montageSheet">A montage sheet of other sizes in the dessert folder; null for the usual one.</param>
    public static Html Costs(Dessert dessert, string trial, string? montageSheet = null)
    {
        if (NoPrices(dessert) is { } missing) return missing;
        var costs = DessertCosts.Of(dessert, trial, montageSheet: montageSheet);
        if (costs.Piece.Count == 0) return Notes.LookAt(Html.Of($"Nobody says how much of each component stands in a piece: fill montage.csv, or 'pieces' in dessert.csv. One batch costs {Figures.Money(costs.Batch.Total, costs.Currency).InText}."));
        return Notes.Paragraph(Lead(costs)) + Doubts(costs) + ByComponent(costs) + Whole(costs)
            + WorkingView.Of(costs.Working, summary: "How the cost of the ingredients was worked out: sheet, row and column");
    }

    /// <summary>What one gram more of each ingredient costs, what its price does to a piece, and which price moves it most.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    public static Html OneGramMore(Dessert dessert, string trial)
    {
        if (NoPrices(dessert) is { } missing) return missing;
        var costs = DessertCosts.Of(dessert, trial);
        var table = new DataTable("One gram more",
            [Column.Words("Ingredient"), Column.Numbers("one gram more on the scale", costs.Currency), Column.Numbers("one gram more in each of 100 pieces", costs.Currency), Column.Numbers("weighed for a piece", "g"), Column.Numbers("costs in a piece", costs.Currency), Column.Numbers("part of its cost", "%"), Column.Numbers("price up 10 %: the piece", costs.Currency)],
            [.. costs.Ingredients.Select(share => new Row([
                ((Cell)share.Name) with { From = share.Line.Price?.Price.Origin.ToString() }, Figures.SmallMoney(share.Line.PerWeighedGram, ""), Figures.Money(share.Line.PerWeighedGram * 100, ""),
                Figures.Mass(share.Grams).WithoutUnit(), ((Cell)Figures.Money(share.Cost, "")).Tracked($"{costs.Trial}, {share.Name} in a piece, {costs.Currency}"), Figures.Share(share.Share).WithoutUnit(), Figures.Difference(share.Cost * 0.1, 2)]))])
        { IsWide = true, IsLong = true, LeastRem = 48, Notes = [Html.Of($"On the scale: the edible part, with shell and peel paid for. For a piece: with its part of what stays in bowls, is trimmed or strained out.")] };
        var lead = costs.Ingredients.FirstOrDefault() is { Cost: not null } first
            ? Html.Of($"The price of <strong>{first.Name}</strong> moves a piece of {costs.Trial} most: it is {Figures.WholeShare(first.Share).InText} of what the ingredients cost.") : Html.Of($"No price of an ingredient is known.");
        return Notes.Paragraph(lead) + table.ToHtml();
    }

    /// <summary>What has to be bought in whole packs for a number of pieces, by supplier, and what is left of them.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="pieces">How many; the ordered ones where null.</param>
    public static Html Purchases(Dessert dessert, string trial, int? pieces = null)
    {
        if (NoPrices(dessert) is { } missing) return missing;
        var count = pieces ?? (int)Math.Ceiling(dessert.WantedPieces(trial));
        var purchases = Desserts.Purchases.Of(dessert, trial, count);
        var lead = Html.Of($"For <strong>{Counted(count, "piece")}</strong> of {trial}, ingredients for {Figures.Money(purchases.Used, purchases.Currency).InText} are used; whole packs cost {Figures.Money(purchases.WholePacks, purchases.Currency).InText} where the larder is empty.{Known(purchases.Used)}");
        var table = new DataTable("What to buy",
            [Column.Words("Supplier"), Column.Words("Ingredient"), Column.Numbers("needed as bought", "g"), Column.Words("packs"), Column.Numbers("left in them", "g"), Column.Numbers("packs cost", purchases.Currency), Column.Numbers("of it used", purchases.Currency)],
            [.. purchases.Packs.OrderBy(each => each.Price?.Price.Supplier ?? "\uffff", StringComparer.Ordinal).ThenBy(each => each.Ingredient.Name, StringComparer.Ordinal).Select(each => new Row([
                each.Price?.Price.Supplier is { Length: > 0 } supplier ? supplier : "not known", ((Cell)each.Ingredient.Name) with { From = each.Price?.Price.Origin.ToString() }, Figures.Mass(each.NeededGrams).WithoutUnit(),
                Packs(each), Figures.Mass(each.LeftGrams).WithoutUnit(), Figures.Money(each.PacksCost, ""), Figures.Money(each.UsedCost, "")])),
             new Row(["", "together", "", "", "", Figures.Money(purchases.WholePacks, ""), Figures.Money(purchases.Used, "")]) { Kind = RowKind.Total }])
        { IsWide = true, IsLong = true, LeastRem = 48 };
        return Notes.Paragraph(lead) + table.ToHtml();
    }

    private static Html? NoPrices(Dessert dessert) => dessert.Prices.All.Count > 0 ? null
        : Notes.LookAt(Html.Of($"There is no price yet: fill prices.csv of the store (ingredient, supplier, pack, pack_g, price, currency, date) to see what a piece costs."));

    private static Html Lead(DessertCosts costs)
    {
        var portion = costs.PortionCost is { } each ? Html.Of($", {Figures.Money(each, costs.Currency).InText} a portion") : Html.Empty;
        var day = costs.Day is { } date ? string.Create(CultureInfo.InvariantCulture, $"by the prices of {date:d MMMM yyyy}") : "by the newest prices";
        return Html.Of($"The ingredients of one piece of {costs.Trial} cost {Marks.Tracked($"{costs.Trial}, ingredients of a piece, {costs.Currency}", Html.Of($"<strong>{Figures.Money(costs.PieceCost, costs.Currency).InText}</strong>"))}{portion} and {Figures.Money(costs.Per100Grams, costs.Currency).InText} for 100\u202fg, {day}.{Known(costs.PieceCost)}");
    }

    private static Html Known(Amount cost) => cost.IsWhole ? Html.Empty : Html.Of($" A price is known for {Figures.WholeShare(cost.CoveredShare).InText} of the mass.");

    private static Html Doubts(DessertCosts costs)
    {
        List<Html> doubts = [];
        if (costs.WithoutPrice.Count > 0) doubts.Add(Html.Of($"No price is known of {string.Join(", ", costs.WithoutPrice)}: that part is not counted, and not taken as free."));
        if (costs.PricedLater.Count > 0) doubts.Add(Html.Of($"No price is as old as the day for {string.Join(", ", costs.PricedLater)}: the first one is used."));
        if (costs.Unknown.Count > 0) doubts.Add(Html.Of($"Nobody knows what {string.Join(", ", costs.Unknown)} weighs in a piece: it is not in the cost."));
        return Html.Join(doubts.Select(doubt => Notes.LookAt(doubt)));
    }

    private static Html ByComponent(DessertCosts costs) => new DataTable("What a piece costs",
        [Column.Words("Component"), Column.Numbers("in a piece", "g"), Column.Numbers("costs", costs.Currency), Column.Numbers("part of it", "%"), Column.Numbers("100 g cost", costs.Currency), Column.Words("a price is known for")],
        [.. costs.Piece.Select(share => new Row([
            share.Component.Name, Figures.Mass(share.Grams).WithoutUnit(), ((Cell)Figures.Money(share.Cost, "")).Tracked($"{costs.Trial}, {share.Component.Name} in a piece, {costs.Currency}"),
            costs.PieceCost.Known > 0 ? Figures.Share(share.Cost.Known / costs.PieceCost.Known).WithoutUnit() : Num.Said(""), Figures.Money(share.Component.PerGram * 100, ""), Marks.Known(share.Cost.CoveredShare)])),
         new Row([$"ingredients of a piece", Figures.Mass(costs.PieceGrams).WithoutUnit(), Figures.Money(costs.PieceCost, ""), "", Figures.Money(costs.Per100Grams, ""), Marks.Known(costs.PieceCost.CoveredShare)]) { Kind = RowKind.Total }])
    { IsWide = true, LeastRem = 40, Caption = Html.Of($"What a piece costs: finished masses; bowl, trim and water are paid for by what is left") }.ToHtml();

    private static Html Whole(DessertCosts costs)
    {
        var (labour, energy, selling) = (costs.LabourPerPiece, costs.EnergyPerPiece, costs.Selling);
        List<Row> rows = [new("ingredients", Figures.Money(costs.PieceCost, ""), From(costs.PieceCost.IsWhole ? "every price is known" : "as far as prices are known"))];
        rows.Add(labour is { } hands
            ? new("hands", (Cell)Num.Said(Figures.Between(hands, 2, "")), From($"{Figures.Minutes(costs.Labour.Aggregate(default(Interval), (sum, each) => sum + each.HandsMinutes))} for {Figures.Part(costs.BatchPieces).Text} pieces at {Figures.Money(costs.LabourPerHour, costs.Currency).Text} an hour{(costs.IsLabourWhole ? "" : "; some steps have no time")}", costs.Dessert.Facts.OriginOf("labour_per_hour", costs.Trial)))
            : new("hands", Figures.NotKnown, From("write labour_per_hour and pieces in dessert.csv, and the minutes of steps.csv")));
        rows.Add(new("energy", Figures.Money(energy, ""), energy is null ? From("write energy_kwh (one batch) and energy_per_kwh in dessert.csv") : From($"{Figures.Part(costs.Dessert.Facts.Number("energy_kwh", costs.Trial)).Text} kWh a batch", costs.Dessert.Facts.OriginOf("energy_kwh", costs.Trial))));
        var known = labour is null && energy is null ? null : costs.PieceCost.Whole + (labour?.Middle ?? 0) + (energy ?? 0);
        if (known is not null) rows.Add(new Row("all that is known of it", Figures.Money(known, ""), From(labour is null ? "without hands" : energy is null ? "without energy" : "hands in the middle of their range")) { Kind = RowKind.Total });
        if (selling is null) rows.Add(new("selling price without tax", Figures.NotKnown, From("write price (of a piece, tax in it) and tax_percent in dessert.csv; 0 is a tax")));
        else
        {
            rows.Add(new("selling price without tax", Figures.Money(selling.WithoutTax, ""), From($"{Figures.Money(selling.WithTax, costs.Currency).Text} with {Figures.Part(selling.TaxPercent).Text} % tax in it", costs.Dessert.Facts.OriginOf("price", costs.Trial))));
            rows.Add(new("food cost", Figures.Number(selling.FoodCostPercent(costs.PieceCost), 1, "%"), From("ingredients, in per cent of the price without tax")));
            rows.Add(new("margin after the ingredients", Figures.Money(selling.Margin(costs.PieceCost.Whole), ""), From("price without tax, less the ingredients")));
            if (known is not null) rows.Add(new("margin after all that is known", Figures.Money(selling.Margin(known), ""), From("rent, packing and what is thrown away unsold are not in it")));
        }
        return new DataTable("What remains of a piece", [Column.Words("One piece"), Column.Numbers("money", costs.Currency), Column.Words("by")], rows) { LeastRem = 34 }.ToHtml();

        static Cell From(string text, Source? origin = null) => ((Cell)text) with { From = origin?.ToString() };
    }

    private static string Packs(PackPurchase purchase) => purchase.Packs is not { } packs ? "not known"
        : $"{packs} \u00d7 {(purchase.Price!.Price.Pack is { Length: > 0 } pack ? pack : "pack")} of {Figures.Mass(purchase.Price.Price.PackGrams).Text}";
}
