using Tamis.Composition;
using Tamis.Composition.Import;

namespace Tamis.Verification;

/// <summary>What the composition table lends beside its figures: energy by a record's own factors, named conversions, densities, retention factors.</summary>
/// <remarks><list type="bullet">
/// <item><c>energy_by_specific_factors_kcal_per_100g</c>: <c>food</c>; its protein, fat and carbohydrate by the factors of its record, and alcohol by 6.93 kcal/g.</item>
/// <item><c>converted_content</c>: <c>conversion</c> (its name in <c>conversions.csv</c>) and the contents that it needs, by tag; <c>XN</c> for a nitrogen factor.</item>
/// <item><c>density_g_per_ml</c>: <c>food</c>; by its largest measure of volume.</item>
/// <item><c>retention_percent</c>: <c>retention</c>, <c>nutrient</c>.</item>
/// </list></remarks>
public static class CompositionTableQuantities
{
    // Merrill and Watt (USDA Agriculture Handbook 74, 1973, from memory): the general factor of alcohol, which SR28 takes for every record.
    private const double AlcoholKilocaloriesPerGram = 6.93;

    private static readonly Lazy<CompositionTable> Table = new(() => CompositionTable.Load(Folder));

    private static readonly Lazy<IReadOnlyList<Conversion>> Conversions = new(() => Conversion.ReadAll(Folder));

    private static readonly Lazy<RetentionTable> Retentions = new(() => RetentionTable.Load(Folder));

    private static string Folder => KitFolder.Data("composition");

    /// <summary>The quantities by name.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = new Dictionary<string, Func<CheckInputs, CheckValue>>(StringComparer.Ordinal)
    {
        ["energy_by_specific_factors_kcal_per_100g"] = inputs => Number(Energy(Table.Value, inputs.Text("food"))),
        ["converted_content"] = Converted,
        ["density_g_per_ml"] = inputs => Number(Table.Value.DensityOf(inputs.Text("food"))?.GramsPerMillilitre ?? double.NaN),
        ["retention_percent"] = inputs => Number(Retentions.Value.Find(inputs.Text("retention")).KeptShare(inputs.Text("nutrient")) * 100 ?? double.NaN),
    };

    private static double Energy(CompositionTable table, string food)
    {
        var (profile, factors) = (table.Profile(food), table.Find(food).EnergyFactors);
        var alcohol = profile["ALC"] is { IsKnown: true } content ? content.Per100Grams : 0;
        return factors is null ? double.NaN : profile["PROCNT"].Per100Grams * factors.ProteinKilocaloriesPerGram + profile["FAT"].Per100Grams * factors.FatKilocaloriesPerGram
            + profile["CHOCDF"].Per100Grams * factors.CarbohydrateKilocaloriesPerGram + alcohol * AlcoholKilocaloriesPerGram;
    }

    private static CheckValue Converted(CheckInputs inputs)
    {
        var name = inputs.Text("conversion");
        var conversion = Conversions.Value.FirstOrDefault(each => Names.Same(each.Name, name))
            ?? throw new KeyNotFoundException($"there is no conversion '{name}'; near ones: {string.Join(", ", Names.Nearest(name, Conversions.Value.Select(each => each.Name)))}");
        return Number(conversion.Of(tag => inputs.OptionalNumber(tag) ?? double.NaN, inputs.OptionalNumber("XN")));
    }

    private static CheckValue Number(double value) => double.IsNaN(value) ? CheckValue.Of("unknown") : CheckValue.Of(value);
}
