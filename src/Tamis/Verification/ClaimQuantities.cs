using Tamis.Composition;
using Tamis.Formulas;
using Tamis.Labels;
using Tamis.Losses;

namespace Tamis.Verification;

/// <summary>What claims and front-of-pack schemes lend to the published checks.</summary>
/// <remarks><list type="bullet">
/// <item><c>claim_allowed</c>: <c>rule_set</c>, <c>claim</c>, grams in 100 g (<c>fat_g</c>, <c>saturates_g</c>, <c>trans_g</c>, <c>sugars_g</c>, <c>fibre_g</c>, <c>protein_g</c>) and <c>sodium_mg</c>, <c>cholesterol_mg</c>, what is not given is none;
/// <c>energy_kcal</c> or <c>energy_kj</c>, made up with carbohydrate; <c>reference_g</c>, <c>serving_g</c>, <c>state</c> (liquid; its density is 1), <c>added</c> (an ingredient more). allowed or refused.</item>
/// <item><c>front_of_pack_colour</c>: <c>rule_set</c>, <c>nutrient</c>, <c>amount_per_100g</c>; <c>portion_g</c> and <c>state</c> where they matter.</item>
/// <item><c>nutrient_profile_score</c>: <c>rule_set</c>, <c>energy_kj</c>, <c>saturates_g</c>, <c>sugars_g</c>, <c>sodium_mg</c>, <c>fruit_percent</c>, <c>fibre_aoac_g</c> or <c>fibre_nsp_g</c>, <c>protein_g</c>.</item>
/// <item><c>nutrition_symbol</c>: <c>rule_set</c>, <c>nutrient</c>, <c>percent</c> (of the daily value), <c>reference_g</c>; named or not named.</item>
/// </list></remarks>
public static class ClaimQuantities
{
    private static readonly (string Input, string Tag, string Unit)[] Contents =
    [
        ("fat_g", "FAT", "g"), ("saturates_g", "FASAT", "g"), ("trans_g", "FATRN", "g"), ("sugars_g", "SUGAR", "g"), ("fibre_g", "FIBTG", "g"), ("protein_g", "PROCNT", "g"),
        ("sodium_mg", "NA", "mg"), ("cholesterol_mg", "CHOLE", "mg"), ("polyols_g", "POLYL", "g"), ("organic_acids_g", "OA", "g"), ("alcohol_g", "ALC", "g"),
        ("mono_g", "FAMS", "g"), ("poly_g", "FAPU", "g"), ("calcium_mg", "CA", "mg"), ("iron_mg", "FE", "mg"),
    ];

    /// <summary>The quantities by name.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = new Dictionary<string, Func<CheckInputs, CheckValue>>(StringComparer.Ordinal)
    {
        ["claim_allowed"] = inputs => CheckValue.Of(ClaimCheck.Of(Food(inputs), inputs.Text("claim")).State switch
        {
            ClaimState.Holds or ClaimState.HoldsWithinItsRange => "allowed",
            ClaimState.Fails => "refused",
            ClaimState.NotAClaim => "not a claim",
            _ => "not known",
        }),
        ["front_of_pack_colour"] = inputs => CheckValue.Of(Colour(inputs)),
        ["nutrient_profile_score"] = inputs => CheckValue.Of(Score(inputs).ToString(System.Globalization.CultureInfo.InvariantCulture)),
        ["nutrition_symbol"] = inputs => CheckValue.Of(FrontOfPackRules.Of(CheckedRules.Of(inputs)).SymbolThreshold(inputs.Text("nutrient"), inputs.Number("reference_g")) is { } threshold && inputs.Number("percent") >= threshold.Percent ? "named" : "not named"),
    };

    private static string Colour(CheckInputs inputs)
    {
        var (rules, isDrink) = (FrontOfPackRules.Of(CheckedRules.Of(inputs)), inputs.OptionalText("state") == "liquid");
        var per100 = inputs.Number("amount_per_100g");
        var portion = inputs.OptionalNumber("portion_g") is { } grams ? rules.PortionColourOf(inputs.Text("nutrient"), isDrink, grams, RoundingTable.ToDecimal(per100 * grams / 100)) : null;
        return (portion ?? rules.ColourOf(inputs.Text("nutrient"), isDrink, RoundingTable.ToDecimal(per100)) ?? throw new KeyNotFoundException($"no colour for '{inputs.Text("nutrient")}'")).Level;
    }

    private static int Score(CheckInputs inputs)
    {
        var rules = FrontOfPackRules.Of(CheckedRules.Of(inputs));
        int Points(string word, string input) => rules.PointsOf(word, RoundingTable.ToDecimal(inputs.Number(input)));
        return rules.Score(Points("energy", "energy_kj") + Points("saturates", "saturates_g") + Points("sugars", "sugars_g") + Points("sodium", "sodium_mg"), Points("fruit, vegetables and nuts", "fruit_percent"),
            inputs.OptionalNumber("fibre_nsp_g") is null ? Points("fibre AOAC", "fibre_aoac_g") : Points("fibre NSP", "fibre_nsp_g"), Points("protein", "protein_g"));
    }

    private static ClaimedFood Food(CheckInputs inputs)
    {
        var rules = CheckedRules.Of(inputs);
        var carbohydrate = 0.0;
        if (rules.Declaration.Where(line => line.IsEnergy).Select(line => (line.Unit, Wanted: inputs.OptionalNumber(line.Unit == "kJ" ? "energy_kj" : "energy_kcal"))).FirstOrDefault(line => line.Wanted is not null) is { Wanted: { } wanted, Unit: var unit })
        {
            double Energy(double grams) => NutritionPanel.Of(Mixture(inputs, rules, grams), rules, rules.IsPerServing ? PanelBasis.Serving(100) : PanelBasis.Per100Grams).Lines.First(line => line.IsEnergy && line.Unit == unit).Amount.Known;
            carbohydrate = (wanted - Energy(0)) / (Energy(1) - Energy(0));
        }
        return new(Mixture(inputs, rules, carbohydrate), rules)
        {
            IsLiquid = inputs.OptionalText("state") == "liquid",
            DensityGramsPerMillilitre = 1,
            ReferenceAmountGrams = inputs.OptionalNumber("reference_g"),
            ServingGrams = inputs.OptionalNumber("serving_g"),
        };
    }

    private static Mixture Mixture(CheckInputs inputs, RuleSet rules, double carbohydrate)
    {
        NutrientList nutrients = new([.. Contents.Select(each => new Nutrient(each.Tag, each.Input, each.Unit)), new("CHOAVLDF", "carbohydrate", "g")]);
        Source source = new("check row", Evidence.Sheet);
        Content[] contents = [.. Contents.Select(each => inputs.OptionalNumber(each.Input) ?? 0).Append(carbohydrate).Select(amount => new Content(ContentState.Measured, amount, null, source))];
        MixturePart base100 = new(new Ingredient { Name = "check row", LabelName = "check row", Profile = new("check row", nutrients, contents, rules.ProteinFactor ?? 6.25) }, 100, 0, source);
        if (inputs.OptionalText("added") is not { } added) return new() { Parts = [base100] };
        var nothing = contents.Select(content => content with { Per100Grams = 0 }).ToArray();
        return new() { Parts = [base100, new(new Ingredient { Name = added, LabelName = added, Profile = new(added, nutrients, nothing, 6.25) }, 1e-9, 0, source)] };
    }
}
