using Tamis.Desserts;
using Tamis.Production;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>How much to make of everything for a number of pieces, why, what is left over and where all mass goes.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="pieces">How many; the ordered ones where null.</param>
    /// <param name="reservePercent">What is made beyond the need, in per cent; null for what <c>dessert.csv</c> says, or none.</param>
    /// <param name="montageSheet">A montage sheet of other sizes in the dessert folder; null for the usual one.</param>
    public static Html Amounts(Dessert dessert, string trial, int? pieces = null, double? reservePercent = null, string? montageSheet = null)
    {
        var amounts = DessertAmounts.Of(dessert, trial, pieces ?? (int)Math.Ceiling(dessert.WantedPieces(trial)), reservePercent, montageSheet);
        var reserve = amounts.Amounts.Request.ReserveShare;
        var size = amounts.MontageSheet is { } sheet ? Html.Of($" as {sheet} puts them together") : Html.Empty;
        var lead = Html.Of($"For <strong>{Counted(amounts.Amounts.Pieces, "piece")}</strong> of {trial}{size}: {Figures.Mass(amounts.Amounts.Account.InPieces).InText} of finished components, {Figures.Mass(amounts.Amounts.Account.Bought).InText} bought{(reserve > 0 ? Html.Of($", with {Figures.WholeShare(reserve).InText} in reserve") : Html.Of($"; no reserve was chosen"))}.");
        return Notes.Paragraph(lead) + Tables(amounts);
    }

    /// <summary>How many pieces come of what there is of one component, all others made as they are needed.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="component">The component.</param>
    /// <param name="grams">How much of it there is.</param>
    /// <param name="montageSheet">A montage sheet of other sizes in the dessert folder; null for the usual one.</param>
    public static Html HowManyPieces(Dessert dessert, string trial, string component, double grams, string? montageSheet = null)
    {
        var amounts = DessertAmounts.From(dessert, trial, component, grams, montageSheet);
        var had = amounts.Amounts.Find(component)!;
        var lead = Html.Of($"{Figures.Mass(grams).InText} of {had.Name} are enough for <strong>{Counted(amounts.Amounts.Pieces, "piece")}</strong> of {trial}; {Figures.Mass(had.LeftGrams).InText} of it are left over.");
        return Notes.Paragraph(lead) + (amounts.Amounts.Pieces == 0 ? Html.Empty : Tables(amounts));
    }

    private static Html Tables(DessertAmounts amounts) =>
        Html.Join(amounts.Remarks.Select(remark => Notes.LookAt(Html.Of($"{remark}."))))
        + Made(amounts.Amounts) + LeftOver(amounts)
        + Notes.Folded("What to buy for it", Bought(amounts.Amounts)) + Notes.Folded("Where all the mass goes", Account(amounts.Amounts));

    private static Html Made(Amounts amounts) => new DataTable("How much to make",
        [Column.Words("Component"), Column.Words("formula"), Column.Numbers("made", "g"), Column.Numbers("in pieces", "g"), Column.Numbers("in others", "g"), Column.Numbers("left over", "g"), Column.Words("why more than is needed, or in parts")],
        [.. amounts.Components.Where(each => each.MadeGrams + each.HaveGrams > 0).Select(each => new Row([
            each.Name, Factor(each), ((Cell)Figures.Mass(each.MadeGrams).WithoutUnit()).Tracked($"{each.Name}, made, g"), Figures.Mass(each.InPiecesGrams).WithoutUnit(), Figures.Mass(each.InOthersGrams).WithoutUnit(),
            Figures.Mass(each.LeftGrams).WithoutUnit(), Why(each)]))])
    { IsWide = true, LeastRem = 44, Caption = Html.Of($"How much to make: finished masses, by the written losses; those that others take in stand first") }.ToHtml();

    private static Html Factor(ComponentAmount amount) => amount.Makes == 0 ? Html.Of($"is there")
        : amount.Makes == 1 ? Html.Of($"× {Figures.Part(amount.FactorRatio).Text}")
        : Html.Of($"{amount.Makes} makes of × {Figures.Part(amount.FactorRatio / amount.Makes).Text}");

    private static Cell Why(ComponentAmount amount)
    {
        string[] reasons = [.. new[] { amount.WhyMore, amount.WhySeveral, amount.ReserveGrams > 0 ? $"{Figures.Mass(amount.ReserveGrams).Text} of it in reserve" : null }.OfType<string>()];
        return ((Cell)Typeset.Text(string.Join("; ", reasons))) with { From = amount.WhyOrigin?.ToString() };
    }

    private static Html LeftOver(DessertAmounts amounts)
    {
        if (amounts.LeftOvers.Count == 0 && amounts.Trim.Count == 0) return Notes.Small(Html.Of($"Nothing is left over but what stays in bowls."));
        var left = amounts.LeftOvers.Count == 0 ? Html.Empty : new DataTable("What is left over",
            [Column.Words("Left over"), Column.Numbers("mass", "g"), Column.Words("contains"), Column.Words("keeps"), Column.Words("can go into")],
            [.. amounts.LeftOvers.Select(each => new Row([
                each.Amount.Name, Figures.Mass(each.Amount.LeftGrams).WithoutUnit(), Allergens(each), Keeps(each),
                each.TakenBy.Count == 0 ? (Cell)"nothing in this store’s desserts" : (Cell)string.Join("; ", each.TakenBy.Select(taker => $"{taker.Component}{(taker.Dessert is { } other ? $" of {other}" : "")} ({Figures.Mass(taker.Grams).Text} a formula)"))]))])
        { Caption = Html.Of($"What is left over when all goes as written") , LeastRem = 40 }.ToHtml();
        return left + (amounts.Trim.Count == 0 ? Html.Empty : Notes.List(amounts.Trim.Select(trim =>
            Html.Of($"{trim.Component}, {trim.Loss.Name}: {Figures.Mass(trim.Grams).InText}; the sheet notes: {Typeset.Text(trim.Note)}."))));
    }

    private static string Allergens(LeftOver left) => (left.Contains, left.NotLookedAt) switch
    {
        ({ Count: 0 }, { Count: 0 }) => "no declared allergen",
        ({ Count: 0 }, _) => $"not known: nobody looked at {string.Join(", ", left.NotLookedAt)}",
        (_, { Count: 0 }) => string.Join(", ", left.Contains),
        _ => $"{string.Join(", ", left.Contains)}; nobody looked at {string.Join(", ", left.NotLookedAt)}",
    };

    internal static string Keeps(LeftOver left) => left.HoldHours is not { } hours ? "nobody said"
        : KitchenTime.InWords(hours * 60) + (left.HoldCelsius is { } celsius ? $" at {Figures.Celsius(celsius).Text}" : "");

    private static Html Bought(Amounts amounts) => new DataTable("What to buy for it",
        [Column.Words("Ingredient"), Column.Numbers("weighed", "g"), Column.Words("whole pieces"), Column.Numbers("as bought", "g")],
        [.. amounts.Ingredients.Select(each => new Row([
            each.Ingredient.Name, Figures.Mass(each.WeighedGrams).WithoutUnit(),
            each.Pieces is { } pieces ? $"{pieces} {(pieces == 1 ? each.Piece : Formulas.PieceWord.Plural(each.Piece ?? "piece"))}{(each.LeftOfPieceGrams >= 1 ? $", {Figures.Mass(each.LeftOfPieceGrams).Text} left of them" : "")}" : "",
            Figures.Mass(each.BoughtGrams).WithoutUnit()]))]) { IsLong = true }.ToHtml();

    private static Html Account(Amounts amounts)
    {
        var account = amounts.Account;
        List<Row> rows = [new("bought", Num(account.Bought))];
        if (account.Had > 0) rows.Add(new("components that were there", Num(account.Had)));
        if (account.NotEdible > 0) rows.Add(new("shell and peel", Num(-account.NotEdible)));
        if (account.LeftOfPieces >= 0.05) rows.Add(new("left of whole pieces", Num(-account.LeftOfPieces)));
        rows.AddRange(account.Lost.Select(lost => new Row(lost.Name, Num(-lost.Grams))));
        rows.Add(new("components left over", Num(-account.Left)));
        if (Math.Abs(account.Rounding) >= 0.5) rows.Add(new("steps of the scales", Num(-account.Rounding)));
        rows.Add(new Row("in the pieces", Num(account.InPieces)) { Kind = RowKind.Total });
        return new DataTable("Where all the mass goes", [Column.Words("From purchase to plate and bin"), Column.Numbers("mass", "g")], rows) { Fits = true }.ToHtml();

        static Num Num(double grams) => Figures.Number(grams, 0);
    }

    private static string Counted(int count, string word) => $"{Figures.Count(count).Text} {(count == 1 ? word : Formulas.PieceWord.Plural(word))}";
}
