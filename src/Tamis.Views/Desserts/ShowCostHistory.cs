using System.Globalization;
using Tamis.Desserts;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>What a piece would have cost by the prices of each day in the prices sheet, and which prices moved it.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    public static Html CostHistory(Dessert dessert, string trial)
    {
        if (NoPrices(dessert) is { } missing) return missing;
        var history = Desserts.CostHistory.Of(dessert, trial);
        var currency = history.Costs.Currency;
        var known = history.Days.Where(day => day.Cost.CoveredMassGrams > 0).ToArray();
        if (known.Length < 2) return Notes.Small(Html.Of($"Prices stand under fewer than two dates: there is no course to show."));
        var table = new DataTable("A piece by the prices of each day",
            [Column.Words("Prices of"), Column.Numbers("ingredients of a piece", currency), Column.Words("a price is known for"), Column.Words("counted at a later first price")],
            [.. history.Days.Select(day => new Row(Date(day.Day), Figures.Money(day.Cost, ""), Marks.Known(day.Cost.CoveredShare), day.PricedLater.Count == 0 ? "" : day.PricedLater.Count <= 4 ? string.Join(", ", day.PricedLater) : $"{day.PricedLater.Count} ingredients"))]) { LeastRem = 34 };
        var (dearest, cheapest) = (known.MaxBy(day => day.Cost.Known)!, known.MinBy(day => day.Cost.Known)!);
        var lead = Html.Of($"By the prices of {Date(cheapest.Day)} a piece of {trial} cost {Figures.Money(cheapest.Cost, currency).InText}, by those of {Date(dearest.Day)} {Figures.Money(dearest.Cost, currency).InText}.{Moved(history, currency)}");
        return Notes.Paragraph(lead) + Chart(history, known, currency).ToHtml() + table.ToHtml() + Swings(history, currency);
    }

    private static ChartView Chart(CostHistory history, CostOnDay[] days, string currency)
    {
        var first = days[0].Day;
        var points = days.Select(day => ((double)(day.Day.DayNumber - first.DayNumber), day.Cost.Known)).ToArray();
        // A price holds until the next one: the course is a stair, and the last step goes on for a while.
        var stair = points.SelectMany((point, at) => at == 0 ? [point] : new[] { (point.Item1, points[at - 1].Known), point }).Append((points[^1].Item1 * 1.1, points[^1].Known)).ToArray();
        return CurveChart.Of([new("Cost of a piece over time", new($"days since {Date(first)}"), new($"ingredients of a piece, {currency}") { Decimals = 2 },
            [new(history.Costs.Trial, stair) { IsChosen = true }]) { Description = $"From {Figures.Money(points[0].Known, currency).Text} to {Figures.Money(points[^1].Known, currency).Text}" }],
            Html.Of($"The formula of {history.Costs.Trial} as it is, by the prices of each day; a price holds until a newer one is written."));
    }

    private static Html Moved(CostHistory history, string currency) => history.Swings.Count == 0 ? Html.Empty
        : Html.Of($" The price of {history.Swings[0].Ingredient.Name} moved it most: between its lowest and its highest lie {Figures.Money(history.Swings[0].PieceCost.Width, currency).InText} a piece.");

    private static Html Swings(CostHistory history, string currency) => history.Swings.Count == 0 ? Html.Empty : Notes.Folded("Which prices moved", new DataTable("Which prices moved",
        [Column.Words("Ingredient"), Column.Numbers("lowest price: in a piece", currency), Column.Numbers("highest price: in a piece", currency), Column.Numbers("between them", currency)],
        [.. history.Swings.Select(swing => new Row(swing.Ingredient.Name, Figures.Money(swing.PieceCost.Low, ""), Figures.Money(swing.PieceCost.High, ""), Figures.Money(swing.PieceCost.Width, "")))]) { IsLong = true }.ToHtml());

    private static string Date(DateOnly day) => day.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);
}
