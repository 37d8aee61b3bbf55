using Tamis.Desserts;
using Tamis.Tables;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>What hands cost a piece in orders of several sizes: what is done once for a make is shared by more pieces.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="orders">How many pieces, each 1 or more.</param>
    public static Html HandsBySize(Dessert dessert, string trial, params int[] orders)
    {
        var rate = dessert.Facts.Number("labour_per_hour", trial);
        var currency = dessert.Facts.Text("currency", trial) ?? "";
        List<Html> not = [];
        List<(int Pieces, int Minutes)> known = [];
        foreach (var pieces in orders)
        {
            try
            {
                known.Add((pieces, Desserts.PlanOfWork.HandsMinutes(dessert, trial, pieces)));
            }
            catch (TableException missing)
            {
                not.Add(Html.Of($"{Counted(pieces, "piece")} cannot be worked out: {string.Join("; ", missing.Problems.Select(problem => $"{problem.File}, {problem.Column}: {problem.Expected}"))}."));
            }
        }
        var lead = known.Count < 2 ? Html.Empty : Notes.Paragraph(Html.Of($"A piece takes {Figures.Number((double)known[0].Minutes / known[0].Pieces, 0, "min").InText} of hands where {known[0].Pieces} {(known[0].Pieces == 1 ? "is" : "are")} made, and {Figures.Number((double)known[^1].Minutes / known[^1].Pieces, 0, "min").InText} where it is {known[^1].Pieces}: every step at its longest written time; mixing, cooking and setting up are once a make, cutting and filling grow with the pieces (common practice, no source)."));
        return lead + (known.Count == 0 ? Html.Empty : new DataTable("Hands by size of order",
            [Column.Words("Pieces"), Column.Numbers("hands in all", "min"), Column.Numbers("a piece", "min"), Column.Numbers("costs a piece", currency)],
            [.. known.Select(each => new Row([Figures.Count(each.Pieces), Figures.Count(each.Minutes), Figures.Number((double)each.Minutes / each.Pieces, 1), rate is { } hour ? Figures.Money(each.Minutes * hour / 60 / each.Pieces, "") : Figures.NotKnown]))]).ToHtml())
            + (not.Count == 0 ? Html.Empty : Notes.List(not)) + (rate is null ? Notes.Paragraph(Html.Of($"Write labour_per_hour in dessert.csv to see what that costs.")) : Html.Empty);
    }
}
