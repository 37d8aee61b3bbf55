using Tamis.Desserts;
using Tamis.Losses;
using Kind = Tamis.Views.MadeOf;

namespace Tamis.Views;

public static partial class Show
{
    private static readonly BarPart[] Parts =
    [
        new(Kind.Water, "water"), new(Kind.Sugars, "sugars"), new(Kind.Fat, "fat"), new(Kind.Protein, "protein"), new(Kind.Fibre, "fibre"), new(Kind.Other, "starch, cocoa, minerals"),
    ];

    private static readonly string[] PartTags = ["WATER", "SUGAR", "FAT", "PROCNT", "FIBTG"];

    /// <summary>What each component of a trial is made of, finished, and the whole of what is put together.</summary>
    public static Html MadeOf(Dessert dessert, string trial)
    {
        var batch = dessert.Trial(trial);
        ComponentBatch[] components = [.. batch.Components.Where(component => component.YieldGrams > 0)];
        if (components.All(component => component.Out.Parts.All(part => part.Ingredient.Profile is null)))
            return Notes.Small(Says.English.MissingSheet("ingredients.csv", "what each mixture is made of"));
        List<Bar> bars = [.. components.Select(component => BarOf(component.Name, component.Out))];
        if (batch.Whole is { FinishedGrams: > 0 } whole) bars.Add(BarOf("all that is put together", whole) with { IsTotal = true });
        return CompositionBars.Of("Share of each component, % by mass, finished", Parts, bars, CoverageCaption(components), "g a batch").ToHtml()
            + Html.Join(batch.Gaps.Select(gap => Notes.LookAt(Html.Of($"Left out: {gap}"))));
    }

    /// <summary>What every trial is made of, all that is put together: a row a trial.</summary>
    public static Html MadeOfAll(Dessert dessert)
    {
        var rows = dessert.Batches.Select(batch => (batch, whole: batch.Whole)).Where(each => each.whole is { FinishedGrams: > 0 } whole && HasFigures(whole)).ToArray();
        if (rows.Length == 0) return Html.Empty;
        return new DataTable("What every trial is made of",
            [Column.Words("Trial"), Column.Numbers("mass", "g a batch"), .. Parts.Take(PartTags.Length).Select(part => Column.Numbers(part.Name, "%")), Column.Words("known for")],
            [.. rows.Select(row => new Row([
                row.batch.Trial, Figures.Mass(row.whole!.FinishedGrams).WithoutUnit(),
                .. PartTags.Select(tag => ((Cell)Share(row.whole, tag)).Tracked($"{row.batch.Trial}, {tag.ToLowerInvariant()} of all, %")),
                Marks.Known(PartTags.Min(tag => row.whole.Amount(tag).CoveredShare))])
            { Kind = Names.Same(row.batch.Trial, dessert.Candidate) ? RowKind.Chosen : RowKind.Line })])
        { IsWide = true, Caption = Html.Of($"All components that are put together, finished, as if all of each were used.") }.ToHtml();
    }

    // With less than a hundredth of the mass unknown a sum to one decimal stands without 'at least'; the column beside it says for how much it is known.
    private const double EnoughCoveredShare = 0.99;

    private static Num Share(Mixture mixture, string tag)
    {
        var amount = mixture.Amount(tag) * (100 / mixture.FinishedGrams);
        return amount.CoveredShare >= EnoughCoveredShare ? Figures.Number(amount.Known, 1) : Figures.Sum(amount, 1, "");
    }

    private static Bar BarOf(string name, Mixture mixture)
    {
        double[] known = [.. PartTags.Select(tag => Math.Max(0, mixture.Amount(tag).Known) / mixture.FinishedGrams)];
        // Mass whose contents are not all known is the mesh; only what is left after it and the known parts is the rest.
        var unknown = 1 - PartTags.Min(tag => mixture.Amount(tag).CoveredShare);
        return new(name, [.. known.Select(share => (double?)share), Math.Max(0, 1 - known.Sum() - unknown)]) { MassGrams = mixture.FinishedGrams };
    }

    private static Html CoverageCaption(IReadOnlyList<ComponentBatch> components)
    {
        var all = Mixture.Of(components.Select(component => component.Out));
        var whole = PartTags.Where(tag => all.Amount(tag).IsWhole).ToArray();
        if (whole.Length == PartTags.Length) return Html.Of($"Every figure is known for all of the mass. Water is what the foods hold less what leaves.");
        var gaps = PartTags.Zip(Parts).Where(pair => !all.Amount(pair.First).IsWhole)
            .Select(pair => Html.Of($"{pair.Second.Name} for {Marks.Known(all.Amount(pair.First).CoveredShare)} of it"));
        return Html.Of($"Figures are known for all of the mass, but {Html.Join(gaps, ", ")}. The mesh is mass that nobody has figures for; what is not known is not counted as nothing.");
    }
}
