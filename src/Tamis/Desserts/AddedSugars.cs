using Tamis.Composition;
using Tamis.Formulas;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>Added sugars of an ingredient, where its nature says how much of its sugars are added: <c>adds.csv</c> beside the rule sets.</summary>
/// <remarks>21 CFR 101.9(c)(6)(iii): sugars added in processing or packaged as such, syrups and honey with them. A sugar, a syrup, honey: all. A single food that is none of these: none.
/// A mixture whose list names one of them, or a compound without a list: nobody can say without its document, and the content stays unknown.</remarks>
internal static class AddedSugars
{
    private const string Tag = "SUGAD", Sugars = "SUGAR", What = "sugars";

    private static readonly Lazy<IReadOnlyList<(string Word, bool IsWhole)>> Words = new(() =>
        [.. SheetFile.Read(Path.Combine(KitFolder.Data("rules"), "adds.csv")).Rows.Where(row => row["what"] == What).Select(row => (row["word"], row["whole"] == "yes"))]);

    /// <summary>The profile with its added sugars where they follow from what the ingredient is; the same profile where they are stated, or do not follow.</summary>
    public static NutrientProfile Over(NutrientProfile profile, Ingredient ingredient)
    {
        if (profile.Nutrients.IndexOf(Tag) < 0 || profile[Tag].IsKnown) return profile;
        var named = Words.Value.Where(each => Names.Holds(ingredient.Name, each.Word) || ingredient.LabelName is { } label && Names.Holds(label, each.Word)).ToArray();
        Content? content = named.Length > 0
            ? named.All(each => each.IsWhole) && profile[Sugars] is { IsKnown: true } sugars ? new(ContentState.Estimated, sugars.Per100Grams, sugars.Range, From("all its sugars count as added")) : null
            : ingredient.SupplierList is null ? ingredient.Food is null || ingredient.Compound is { IsCompound: true } ? null : None("a single food, with no sugars added")
            : Words.Value.Any(each => Names.Holds(ingredient.SupplierList, each.Word)) ? null : None("its list names nothing that adds sugars");
        return content is null ? profile : profile.WithDerived(Tag, content.Value);
    }

    private static Content None(string why) => new(ContentState.AssumedZero, 0, null, From(why));

    private static Source From(string why) => new("21 CFR 101.9", Evidence.Law, $"(c)(6)(iii): {why}");
}
