using Tamis.Composition;
using Tamis.Desserts;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>Where figures of a food come from: each with what kind of statement it is, its record, its samples and its interval.</summary>
    /// <param name="table">Any composition table.</param>
    /// <param name="food">The food's name or number.</param>
    /// <param name="tags">The nutrients; every one that is known where none is given.</param>
    public static Html WhereFrom(CompositionTable table, string food, params IReadOnlyList<string> tags)
    {
        var known = table.Find(food);
        var factors = known.EnergyFactors is { } energy
            ? Html.Of($" Its energy was worked out with {Figures.English.Significant(energy.ProteinKilocaloriesPerGram).Text}, {Figures.English.Significant(energy.FatKilocaloriesPerGram).Text} and {Figures.English.Significant(energy.CarbohydrateKilocaloriesPerGram).Text} kcal to a gram of protein, fat and carbohydrate.") : Html.Empty;
        return Notes.Lead(Html.Of($"<strong>{known.Name}</strong> is {known.Id} of {known.Source.Key}{(known.PublishedName.Length > 0 ? $" (there: {known.PublishedName})" : "")}.{ProteinFactor(known.NitrogenFactor)}{factors}"))
            + (known.Notes.Length > 0 ? Notes.Small(Html.Text(known.Notes)) : Html.Empty)
            + OriginsOf(table.Profile(known.Id), tags);
    }

    /// <summary>Where figures of an ingredient of the store come from: the supplier's document with its cell, or the food behind it.</summary>
    /// <param name="dessert">The dessert whose day decides which document counts.</param>
    /// <param name="ingredient">The ingredient.</param>
    /// <param name="tags">The nutrients; every one that is known where none is given.</param>
    public static Html WhereFrom(Dessert dessert, string ingredient, params IReadOnlyList<string> tags)
    {
        if (dessert.Store.Ingredients.Find(ingredient) is not { } known)
            return Notes.LookAt(Html.Of($"The store has no ingredient '{ingredient}'; near ones: {string.Join(", ", Names.Nearest(ingredient, dessert.Store.Ingredients.All.Select(each => each.Name)))}."));
        if (known.Profile is not { } profile) return Notes.LookAt(Html.Of($"Neither a food nor a document gives figures for {known.Name}: it is a gap in what is known."));
        var counts = dessert.Specifications.On(known.Name, dessert.Store.AsOf);
        var others = dessert.Specifications.Of(known.Name).Where(document => document != counts).Select(document => document.InWords).ToArray();
        return Notes.Lead(Html.Of($"<strong>{Capital(known.Name)}</strong> rests on {(known.Food is { } food ? $"the food {food}" : "no food")}{(counts is null ? "" : $" and on {counts.InWords}")}.{ProteinFactor(profile.NitrogenFactor)}"))
            + (others.Length > 0 ? Notes.Small(Html.Of($"Superseded, or later than the last make: {string.Join("; ", others)}.")) : Html.Empty)
            + OriginsOf(profile, tags);
    }

    private static Html OriginsOf(NutrientProfile profile, IReadOnlyList<string> tags)
    {
        Nutrient[] nutrients = [.. tags.Count > 0 ? tags.Select(tag => profile.Nutrients[tag]) : profile.Nutrients.All.Where(nutrient => profile[nutrient.Tag].IsKnown)];
        return new DataTable($"Where the figures of {profile.Name} come from",
            [Column.Words("In 100 g"), Column.Numbers("Figure"), Column.Words("Interval"), Column.Words("What it is"), Column.Words("Samples"), Column.Words("Where it comes from")],
            [.. nutrients.Select(nutrient => OriginOf(nutrient, profile[nutrient.Tag]))])
        { IsWide = true, IsLong = nutrients.Length > 5, LeastRem = 52, Caption = Html.Of($"An interval from samples is where one further lot will lie in 95 of 100 cases; one of a declaration is what the figure was before it was rounded, with the tolerance where the document names one.") }.ToHtml();
    }

    private static Row OriginOf(Nutrient nutrient, Content content)
    {
        var figures = Figures.English;
        var unit = nutrient.Unit == "ug" ? "µg" : nutrient.Unit;
        var value = content.State switch
        {
            ContentState.Unknown => figures.NotKnown,
            ContentState.Trace => Num.Said("trace"),
            ContentState.BelowLimit => Num.Said($"below {figures.AsStated(content.Range?.High ?? content.Per100Grams, unit).Text}"),
            _ => figures.AsStated(content.Per100Grams, unit),
        };
        var interval = ContentInterval.Of(content) is { } known
            ? $"{figures.AsStated(known.Range.Low).Text} to {figures.AsStated(known.Range.High, unit).Text}, {InWords(known.Basis)}" : "none given";
        var samples = content.Samples is { } number
            ? content.StandardDeviation is { } deviation ? $"{number}, s = {figures.Significant(deviation, unit).Text}" : $"{number}" : "not said";
        return new(Capital(nutrient.Word), value, content.IsKnown ? interval : "", InWords(content), content.IsKnown ? samples : "", content.Source is { } source ? Html.Text(Sources.InWords(source)) : (Cell)"nobody has a figure");
    }

    private static Html ProteinFactor(double? factor) => factor is { } known
        ? Html.Of($" Its protein is nitrogen times {Figures.English.Significant(known).Text}{(known == 6.25 ? "" : "; a European label wants 6.25")}.") : Html.Of($" By which factor its protein was made from nitrogen is not said.");

    private static string InWords(Content content) => content.State switch
    {
        ContentState.Unknown => "unknown",
        ContentState.Zero => "zero, as stated",
        ContentState.Trace => "there, too little for a figure",
        ContentState.BelowLimit => "below a stated limit",
        ContentState.Estimated => "an estimate",
        ContentState.AssumedZero => "zero by the nature of the food",
        _ => content.Source?.Evidence switch { Evidence.Supplier => "declared by the supplier", Evidence.Computed => "follows from other figures", _ => "the publisher’s figure" },
    };

    private static string InWords(IntervalBasis basis) => basis switch
    {
        IntervalBasis.Lots => "from its samples",
        IntervalBasis.Mean => "of the mean",
        IntervalBasis.Declaration => "from its declaration",
        IntervalBasis.Limit => "under the limit",
        IntervalBasis.FoodGroup => "from its food group",
        _ => "its bounds",
    };
}
