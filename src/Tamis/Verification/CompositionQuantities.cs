using System.Globalization;
using Tamis.Composition;
using Tamis.Formulas;
using Tamis.Losses;

namespace Tamis.Verification;

/// <summary>What the composition room lends to the published checks: figures of foods and sums over mixtures.</summary>
/// <remarks>Checks speak of the published record: a content that the kit filled in (an assumed zero, an estimate) counts as unknown here.
/// <list type="bullet">
/// <item><c>food_nutrient_per_100g</c>: <c>food</c> (dataset and number), <c>nutrient</c> (tagname).</item>
/// <item><c>mixture_nutrient_per_100g</c>: <c>lines</c> (<c>food:grams|food:grams</c>, as weighed in), <c>water_lost_g</c>, <c>nutrient</c>; in 100 g of finished mass, <c>unknown</c> as soon as one line is.</item>
/// <item><c>mixture_known_nutrient_per_100g</c>: the same over the lines whose content is known, a lower bound.</item>
/// <item><c>mixture_known_share_percent</c>: the same inputs; mass of the lines whose content is known over the mass of all lines, as weighed in.</item>
/// </list></remarks>
public static class CompositionQuantities
{
    private const string Unknown = "unknown";

    /// <summary>The quantities by name, computed from the table that the kit ships.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = Of(new(() => CompositionTable.Load(KitFolder.Data("composition"))));

    /// <summary>The quantities by name, computed from a composition table that is read when the first of them is asked for.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> Of(Lazy<CompositionTable> table) => new Dictionary<string, Func<CheckInputs, CheckValue>>
    {
        ["food_nutrient_per_100g"] = inputs => Figure(Recorded(table.Value, inputs.Text("food"))[Tag(table.Value, inputs)]),
        ["mixture_nutrient_per_100g"] = inputs => MixtureOf(table.Value, inputs).Per100Grams(Tag(table.Value, inputs)) is { } whole ? CheckValue.Of(whole) : CheckValue.Of(Unknown),
        ["mixture_known_nutrient_per_100g"] = inputs => LowerBound(MixtureOf(table.Value, inputs), Tag(table.Value, inputs)),
        ["mixture_known_share_percent"] = inputs => CheckValue.Of(KnownFor(MixtureOf(table.Value, inputs).Amount(Tag(table.Value, inputs)))),
    };

    private static CheckValue Figure(Content content) => content.IsKnown ? CheckValue.Of(content.Per100Grams) : CheckValue.Of(Unknown);

    private static CheckValue LowerBound(Mixture mixture, string tag) => CheckValue.Of(mixture.Amount(tag).Known / mixture.FinishedGrams * 100);

    // Decimal arithmetic, so that a tie is a tie: 12.25 is 12.3 here.
    private static string KnownFor(Amount amount) =>
        string.Create(CultureInfo.InvariantCulture, $"known for {Math.Round((decimal)(amount.CoveredShare * 100), 1, MidpointRounding.AwayFromZero):0.0} %");

    private static string Tag(CompositionTable table, CheckInputs inputs) => table.Nutrients[inputs.Text("nutrient")].Tag;

    /// <summary>The mixture of the inputs <c>lines</c> and <c>water_lost_g</c>, of the record alone.</summary>
    internal static Mixture MixtureOf(CompositionTable table, CheckInputs inputs) => new()
    {
        Parts = [.. inputs.Table("lines").Select(line => Part(table, line))],
        EvaporatedGrams = inputs.Number("water_lost_g"),
    };

    private static MixturePart Part(CompositionTable table, IReadOnlyList<string> line)
    {
        if (line.Count < 2 || !double.TryParse(line[^1], NumberStyles.Float, CultureInfo.InvariantCulture, out var massGrams))
            throw new FormatException($"the line '{string.Join(':', line)}' is not a food and its grams, such as SR28 01145:125");
        var profile = Recorded(table, string.Join(':', line.Take(line.Count - 1)));
        return new(new Ingredient { Name = profile.Name, Profile = profile }, massGrams, 0, new("check row", Evidence.Sheet));
    }

    private static NutrientProfile Recorded(CompositionTable table, string food)
    {
        var profile = table.Profile(food);
        return new(profile.Name, profile.Nutrients, [.. profile.Nutrients.All.Select(nutrient => profile[nutrient.Tag] is { IsOfRecord: true } content ? content : Content.Unknown)], profile.NitrogenFactor);
    }
}
