using Tamis.Labels;

namespace Tamis.Desserts;

/// <summary>The keys of <c>dessert.csv</c> that anything reads: those of the kit, and those that a row of a rule set asks for.</summary>
public static class DessertKeys
{
    // A test holds this list against what the library reads.
    private static readonly string[] Own =
    [
        "about", "additives", "box_mm", "business", "claim", "compounds", "cooling_rule", "cross_contact", "currency", "date_kind", "date_order", "decimal_mark", "declare", "density_g_ml", "drink", "emphasis",
        "energy_kwh", "energy_per_kwh", "exemption", "face", "food_category", "form_of_sale", "fortified_with", "fruit_percent", "ground_colour", "household", "instructions", "keep", "labour_per_hour", "lot", "market", "name", "net_g", "net_ml",
        "order", "origin", "other_amount", "panel_form", "pieces", "portion_g", "portion_word", "portions", "price", "print_colour", "reference_amount_g", "region", "reserve_percent", "retention", "rules_day", "serving_category", "shelf_days", "state", "surface_cm2", "swap_by", "symbol_artwork", "tax_percent",
    ];

    private static readonly Lazy<IReadOnlyList<string>> Every = new(() =>
        [.. Own.Concat(KitchenVariations.Keys).Concat(KitData.RuleSetNames.Select(KitData.Rules).SelectMany(OfRules)).Distinct(Names.Comparer).Order(StringComparer.Ordinal)]);

    /// <summary>Every key, in alphabetical order.</summary>
    public static IReadOnlyList<string> All => Every.Value;

    /// <summary>The keys of a dessert's sheet that nothing reads, each with the nearest that something does; null where none is near.</summary>
    public static IReadOnlyList<(string Key, string? Near)> Unread(DessertFacts facts) =>
        [.. facts.Keys.Except(All, Names.Comparer).Select(key => (key, Names.Nearest(key, All).FirstOrDefault()))];

    private static IEnumerable<string> OfRules(RuleSet rules) => ParticularRules.Of(rules).All.SelectMany(rule => rule.NamedKeys.Concat(rule.Says is { } says ? [says.Key] : []))
        .Concat(SaleRules.Of(rules).All.SelectMany(row => row.FactKeys)).Concat(LimitedPanels.Of(rules).All.Select(row => row.Says?.Key).OfType<string>());
}
