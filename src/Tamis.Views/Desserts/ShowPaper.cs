using Tamis.Desserts;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>What to buy for an order, by supplier and in whole packs, to tick off.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="pieces">How many; the ordered ones where null.</param>
    /// <exception cref="Tables.TableException">A cell must be mended.</exception>
    public static Html ShoppingList(Dessert dessert, string trial, int? pieces = null) => OfOrder(dessert, trial, pieces, purchases => KitchenPaper.Shopping(purchases, isPart: true));

    /// <summary>What to have out, weighed and at its temperature before work on an order begins, to tick off.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="pieces">How many; the ordered ones where null.</param>
    /// <exception cref="Tables.TableException">A cell must be mended.</exception>
    public static Html HaveReady(Dessert dessert, string trial, int? pieces = null) => OfOrder(dessert, trial, pieces, purchases => KitchenPaper.Ready(purchases.Amounts, isPart: true));

    /// <summary>What to weigh and do for an order, with the cautions beside the steps and room for the records; folded away, for it is as long as the work.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="pieces">How many; the ordered ones where null.</param>
    public static Html BatchSheet(Dessert dessert, string trial, int? pieces = null)
    {
        var sheet = WeighingPages.Of(dessert, dessert.Trial(trial).Trial, pieces ?? dessert.WantedPieces(trial), withCautions: true) with { IsPart = true };
        return Notes.Folded($"{sheet.Title}, {Counted(sheet.Components.Sum(component => component.Steps.Count), "step")}", sheet.ToHtml())
            + Html.Of($"<p class=\"paper-only\">It is long: <code>paper FOLDER</code> prints it on pages of its own.</p>\n");
    }

    /// <summary>A label for the box of every component, with room for the day.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    public static Html BoxLabels(Dessert dessert, string trial) => KitchenPaper.Labels(dessert, dessert.Trial(trial).Trial, isPart: true);

    /// <summary>The dessert on one page, for somebody who makes it for the first time.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    public static Html OnePageSpecification(Dessert dessert, string trial) => KitchenPaper.Specification(dessert, dessert.Trial(trial).Trial, isPart: true);

    private static Html OfOrder(Dessert dessert, string trial, int? pieces, Func<Purchases, Html> sheet) =>
        KitchenPaper.Bought(dessert, dessert.Trial(trial).Trial, pieces ?? (int)Math.Ceiling(dessert.WantedPieces(trial))) switch
        {
            ({ } purchases, _) => sheet(purchases),
            var (_, why) => Notes.LookAt(Html.Of($"This sheet cannot be made yet. {why}")),
        };
}
