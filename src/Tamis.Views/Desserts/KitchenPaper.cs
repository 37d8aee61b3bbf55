using System.Globalization;
using Tamis.Costing;
using Tamis.Desserts;
using Tamis.Formulas;
using Tamis.Production;
using Tamis.Tables;

namespace Tamis.Views;

/// <summary>The paper of an order, all from the same sheets: what to buy, what to have ready, what to weigh and do, labels for boxes, and one page for somebody who makes it for the first time.</summary>
public static class KitchenPaper
{
    private static readonly Figures Figures = Figures.English;

    /// <summary>Whole pages for an order, each with its file name.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="pieces">How many, 1 or more.</param>
    /// <exception cref="Tables.TableException">A sheet must be mended first.</exception>
    public static IReadOnlyList<(string FileName, PageModel Page)> AllOf(Dessert dessert, string trial, int pieces)
    {
        var name = dessert.Trial(trial).Trial;
        var (purchases, why) = Bought(dessert, name, pieces);
        return
        [
            Page("shopping", "Shopping list", purchases is null ? Not("Shopping list", why) : Shopping(purchases)),
            Page("ready", "Have ready", purchases is null ? Not("Have ready", why) : Ready(purchases.Amounts)),
            Page("batch", "Batch sheet", WeighingPages.Of(dessert, name, pieces, withCautions: true).ToHtml()),
            Page("labels", "Labels for boxes", Labels(dessert, name)),
            Page("specification", "Specification", Specification(dessert, name)),
        ];

        (string, PageModel) Page(string file, string title, Html content) => ($"{file}-{WeighingPages.Slug(dessert.FolderName)}-{WeighingPages.Slug(name)}.html",
            new PageModel($"{title}: {dessert.Name}, {name}", content) { Running = dessert.Name, IsSheet = true, Description = $"{title} for {pieces} pieces of {name}, {dessert.Name}." });
    }

    // Without a montage nobody knows what a piece takes; the sheets that do not need it are made all the same. A bad cell is named, and nothing is printed.
    internal static (Purchases? Purchases, string WhyNot) Bought(Dessert dessert, string trial, int pieces)
    {
        try
        {
            return (Purchases.Of(dessert, trial, pieces), "");
        }
        catch (Exception missing) when (missing is OrderException || missing is TableException bad && bad.Problems.All(problem => problem.Row == 0))
        {
            return (null, missing.Message);
        }
    }

    private static Html Not(string title, string why) => Head(title, [], isPart: false) + Notes.LookAt(Html.Of($"This sheet cannot be made yet. {why}"));

    /// <summary>What to buy, by supplier and in whole packs; what nobody has a price or a pack for is named.</summary>
    /// <param name="purchases">What is bought.</param>
    /// <param name="isPart">Whether it stands under a heading of a longer page, and needs no title of its own.</param>
    public static Html Shopping(Purchases purchases, bool isPart = false)
    {
        var bySupplier = purchases.Packs.GroupBy(pack => pack.Price?.Price.Supplier is { Length: > 0 } supplier ? supplier : "no supplier known", Names.Comparer).OrderBy(group => group.Key, StringComparer.Ordinal);
        var money = purchases.WholePacks;
        return Head($"Shopping list: {Pieces(purchases.Amounts)}", [.. isPart ? [Pieces(purchases.Amounts)] : Array.Empty<string>(), $"whole packs {Figures.Money(money, purchases.Currency).Text}"], isPart)
            + Html.Join(bySupplier.Select(supplier => Html.Of($"<section class=\"make\"><header><h2>{Show.Capital(supplier.Key)}</h2></header>{BuyTable(supplier.Key, [.. supplier], purchases)}</section>\n")));
    }

    /// <summary>Everything to have out, weighed and at its temperature before work begins.</summary>
    /// <param name="amounts">What is made.</param>
    /// <param name="isPart">Whether it stands under a heading of a longer page.</param>
    public static Html Ready(DessertAmounts amounts, bool isPart = false)
    {
        var (dessert, line) = (amounts.Dessert, amounts.Dessert.LineOf(amounts.Trial).ToArray());
        MethodStep[] steps = [.. amounts.Amounts.Components.SelectMany(component => dessert.Method?.StepsOf(component.Name, line) ?? []), .. dessert.Method?.StepsOf(MethodStep.Assembly, line) ?? []];
        var tools = steps.Where(step => step.Equipment is not null).GroupBy(step => step.Equipment!, Names.Comparer)
            .Select(group => (Name: group.Key, For: string.Join(", ", group.Select(step => step.Component).Distinct(Names.Comparer)), Heat: string.Join(" and ", group.Select(step => step.TemperatureCelsius).OfType<double>().Distinct().Select(celsius => Figures.Celsius(celsius).Text)))).ToArray();
        var moulds = (dessert.Montage?.RowsOf(line) ?? []).Where(row => row.Mould is not null).GroupBy(row => (row.Mould, row.Component)).Select(same => (same.Key.Component, Words: MouldWords(dessert, same.Key.Mould!, amounts.Amounts.Pieces * same.Sum(row => row.Count)))).ToArray();
        return Head($"Have ready: {Pieces(amounts)}", isPart ? [Pieces(amounts)] : [], isPart)
            + Section("Ingredients", "at the temperature that the first step asks for", amounts.Amounts.Ingredients.Select(needed => Tick(
                needed.Pieces is { } count ? Html.Of($"<b>{Figures.Number(count, 0).Text}</b> × {needed.Ingredient.Name}") : Html.Of($"<b>{WeighingSheet.OnScale(needed.WeighedGrams).Text}</b> {needed.Ingredient.Name}"),
                Allergens(needed.Ingredient))))
            + Section("Equipment", "clean, dry, and set", tools.Select(tool => Tick(Html.Of($"<b>{tool.Name}</b>{(tool.Heat.Length > 0 ? $", {tool.Heat}" : "")}"), tool.For)))
            + Section("Moulds", "counted", moulds.Select(mould => Tick(mould.Words, mould.Component)))
            + Section("Left over in the end", "when all goes as written; labelled and put away, or not made", amounts.LeftOvers.Select(left => Tick(Html.Of($"<b>{WeighingSheet.OnScale(left.Amount.LeftGrams).Text}</b> {left.Amount.Name}"), LeftNote(left))));
    }

    private static string LeftNote(LeftOver left) => string.Join("; ", new[]
    {
        left.Contains.Count > 0 ? $"contains {string.Join(", ", left.Contains)}" : left.NotLookedAt.Count > 0 ? null : "no listed allergen",
        left.NotLookedAt.Count > 0 ? $"nobody has looked at {string.Join(", ", left.NotLookedAt)} for allergens" : null,
        left.HoldHours is null ? "how long it keeps is not written" : $"keeps {Show.Keeps(left)}",
        left.TakenBy.Count > 0 ? $"can go into {string.Join(", ", left.TakenBy.Select(taker => taker.Dessert is { } other ? $"{taker.Component} of {other}" : taker.Component))}" : "goes into nothing else of this store",
    }.OfType<string>());

    private static Html MouldWords(Dessert dessert, string name, int places)
    {
        if (dessert.Moulds.FirstOrDefault(each => Names.Same(each.Name, name)) is not { } mould) return Html.Of($"<b>{name}</b>");
        var needed = (places + mould.Places - 1) / mould.Places;
        return mould.Owned is { } owned and > 0 && needed > owned
            ? Html.Of($"<b>{Figures.Number(owned, 0).Text}</b> × {name}, in {Figures.Number((needed + owned - 1) / owned, 0).Text} rounds")
            : Html.Of($"<b>{Figures.Number(needed, 0).Text}</b> × {name}");
    }

    /// <summary>A label for the box of every component: what it is, when it was made, until when it keeps and how cold, and what is in it.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="isPart">Whether it stands under a heading of a longer page.</param>
    public static Html Labels(Dessert dessert, string trial, bool isPart = false)
    {
        var line = dessert.LineOf(trial).ToArray();
        return Head($"Labels for boxes: {dessert.Name}, {trial}", ["Hours are the kitchen’s own from components.csv; local rules on storage come first"], isPart)
            + Html.Of($"<div class=\"box-labels\">{dessert.Trial(trial).Components.Select(component =>
            {
                var note = dessert.Components.Of(component.Name, line);
                var ingredients = component.Out.Parts.Select(part => part.Ingredient).DistinctBy(each => each.Name, Names.Comparer).ToArray();
                return Html.Of($"<section><h2>{Show.Capital(component.Name)}</h2><p>{dessert.Name}, {trial}</p><p>Made on {Fill} at {Fill}</p><p>{Keeps(note)} until {Fill}</p><p class=\"contains\">{Contains(ingredients)}</p></section>\n");
            })}</div>\n");
    }

    /// <summary>The dessert on one page: what it is made of, how it is put together, what was measured, for somebody who makes it for the first time.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="isPart">Whether it stands under a heading of a longer page.</param>
    public static Html Specification(Dessert dessert, string trial, bool isPart = false)
    {
        var (batch, line) = (dessert.Trial(trial), dessert.LineOf(trial).ToArray());
        var piece = dessert.Montage is null ? null : dessert.PieceOf(trial);
        var made = dessert.LoggedTrial(trial).MadeOn;
        return Head($"{dessert.Name}: specification of {batch.Trial}",
            [.. made.Count > 0 ? [$"made {string.Join(", ", made.Select(day => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture)))}"] : Array.Empty<string>(), .. piece?.MassGrams is { } mass ? [$"a piece {Figures.Mass(mass).Text}, {Figures.Millimetres(piece.HeightMillimetres).Text} high"] : Array.Empty<string>()], isPart)
            + Html.Of($"<p class=\"caution\">{Contains(batch.Components.SelectMany(component => component.Out.Parts).Select(part => part.Ingredient))}</p>\n")
            + Html.Of($"<div class=\"spec\">{(piece is null ? Html.Empty : Html.Of($"<div class=\"spec-section\">{CrossSection.PictureOf($"{dessert.Name}, {trial}", piece)}</div>"))}{batch.Components.Select(component => SpecOf(dessert, batch, component, piece, line))}{AssemblyOf(dessert, line)}</div>\n");
    }

    private static Html SpecOf(Dessert dessert, Losses.Batch batch, Losses.ComponentBatch component, Montage.AssembledPiece? piece, string[] line)
    {
        var weighed = component.Lines.GroupBy(each => each.Name, Names.Comparer).Select(same => $"{same.Key} {WeighingSheet.OnScale(same.Sum(each => each.MassGrams)).Text}");
        var heat = dessert.Method?.StepsOf(component.Name, line).Where(step => step.TemperatureCelsius is not null).Select(HeatOf) ?? [];
        var measured = dessert.Measured.Where(each => Names.Same(each.Trial, batch.Trial) && Names.Same(each.Component, component.Name) && each.At is null)
            .GroupBy(each => each.What).Select(same => $"{same.Key} {string.Join(" and ", same.Select(ValueOf).Distinct())}");
        var inPiece = piece?.GramsOf(component.Name) is { } grams and > 0 ? $", {Figures.Mass(grams).Text} in a piece" : "";
        return Html.Of($"<section><h3>{Show.Capital(component.Name)}</h3><p><small>yields {Figures.Mass(component.YieldGrams).Text}{inPiece}</small></p><p>{string.Join("; ", weighed)}.</p>{Paragraph("", heat)}{Paragraph("Measured: ", measured)}</section>\n");
    }

    // The temperature is not said again where the words of the step say it.
    private static string HeatOf(MethodStep step)
    {
        var celsius = step.Do.Contains($"{step.TemperatureCelsius:0} °C", StringComparison.Ordinal) ? null : Figures.Celsius(step.TemperatureCelsius).Text;
        var minutes = step.Minutes is { } known ? Figures.Minutes(known) : null;
        string[] facts = [.. ((string?[])[celsius, minutes]).OfType<string>()];
        return $"{Typeset.Text(step.Do.TrimEnd('.', ' '))}{(facts.Length > 0 ? $" ({string.Join(", ", facts)})" : "")}";
    }

    private static string ValueOf(Measurement measured) =>
        $"{measured.Value.ToString("0.###", CultureInfo.InvariantCulture)}{(measured.Unit.Length > 0 ? $"\u202f{measured.Unit}" : "")}";

    private static Html AssemblyOf(Dessert dessert, string[] line)
    {
        var steps = dessert.Method?.StepsOf(MethodStep.Assembly, line) ?? [];
        return steps.Count == 0 ? Html.Empty : Html.Of($"<section><h3>Putting together</h3><ol>{steps.Select(step => Html.Of($"<li>{Typeset.Text(step.Do)}{(step.TemperatureCelsius is { } celsius ? $" {Figures.Celsius(celsius).Text}." : "")}</li>"))}</ol></section>\n");
    }

    private static Html Paragraph(string head, IEnumerable<string> parts) => parts.ToArray() is { Length: > 0 } words ? Html.Of($"<p>{head}{string.Join("; ", words)}.</p>") : Html.Empty;

    private static Html BuyTable(string supplier, IReadOnlyList<PackPurchase> packs, Purchases purchases) => new DataTable($"To buy: {supplier}",
        [Column.Words("Buy"), Column.Numbers("Packs"), Column.Words("Pack"), Column.Numbers("Needed"), Column.Numbers("Left in the pack"), Column.Numbers("Cost")],
        [.. packs.Select(pack => new Row([
            Html.Of($"<span class=\"box\" role=\"img\" aria-label=\"tick\"></span><span class=\"ticked\">{Typeset.Text(pack.Ingredient.Name)}</span>"),
            pack.Packs is { } count ? Num.Said(count.ToString(CultureInfo.InvariantCulture)) : Num.Said("?"),
            pack.Price is { } price ? $"{price.Price.Pack}{(price.Price.PackGrams is { } grams ? $"{(price.Price.Pack.Length > 0 ? ", " : "")}{Figures.Mass(grams).Text}" : "")}{(price.IsLater ? "; a later price stands in" : "")}" : "no price: give a row in prices.csv",
            Figures.Mass(pack.NeededGrams), pack.LeftGrams is { } left ? Figures.Mass(left) : Num.Said("not known"), pack.PacksCost is { } cost ? Figures.Money(cost, purchases.Currency) : Num.Said("not known")]))])
    { IsWide = true }.ToHtml();

    private static Html Section(string title, string note, IEnumerable<Html> ticks) => ticks.ToArray() is { Length: > 0 } all
        ? Html.Of($"<section class=\"make\"><header><h2>{title}</h2><p>{note}</p></header><ul class=\"ticks\">{all}</ul></section>\n") : Html.Empty;

    private static Html Tick(Html words, string note) => Html.Of($"<li><span class=\"box\" role=\"img\" aria-label=\"tick\"></span><span>{words}{(note.Length > 0 ? Html.Of($" <small>{note}</small>") : Html.Empty)}</span></li>\n");

    private static string Allergens(Ingredient ingredient) => ingredient.Allergens switch { null => "allergens not looked at", [] => "", var known => string.Join(", ", known) };

    // What nobody has looked at may contain anything: a blank is no 'none'.
    private static Html Contains(IEnumerable<Ingredient> ingredients)
    {
        var (contains, _, unseen) = AllergensHeld.By(ingredients);
        return Html.Of($"<b>Contains</b> {(contains.Count > 0 ? string.Join(", ", contains) : unseen.Count > 0 ? "not known" : "no listed allergen")}{(unseen.Count > 0 ? Html.Of($". Nobody has looked at {string.Join(", ", unseen)}.") : Html.Empty)}");
    }

    private static string Keeps(ComponentNote? note) => note?.HoldHours is { } hours
        ? $"Keeps {(hours >= 72 ? $"{Figures.Number(hours / 24, 0).Text} days" : $"{Figures.Number(hours, 0).Text} hours")}{(note.HoldCelsius is { } celsius ? $" at {Figures.Celsius(celsius).Text}" : "")},"
        : "How long it keeps is not written:";

    private static string Pieces(DessertAmounts amounts) => $"{Figures.Number(amounts.Amounts.Pieces, 0).Text} {(amounts.Amounts.Pieces == 1 ? "piece" : "pieces")} of {amounts.Trial}";

    private static Html Head(string title, IReadOnlyList<string> facts, bool isPart) =>
        Html.Of($"{(isPart ? Html.Empty : Html.Of($"<h1>{title}</h1>\n"))}<ul class=\"facts\">{facts.Select(fact => Html.Of($"<li>{fact}</li>"))}<li>Date {Fill}</li></ul>\n");

    private static Html Fill => Html.Of($"<span class=\"fill\">\u00a0</span>");
}
