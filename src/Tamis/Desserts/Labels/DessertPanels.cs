using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>The nutrition panel of a trial, on the basis that each law asks for.</summary>
public static class DessertPanels
{
    /// <summary>The panel of all that is put together in a trial: per serving where the law wants that and the kitchen names a portion, otherwise per 100 g.</summary>
    /// <exception cref="TableException">The masses of the trial are not all known.</exception>
    public static NutritionPanel Of(Dessert dessert, string trial, string rules)
    {
        var set = KitData.Rules(rules);
        return NutritionPanel.Of(dessert.Whole(trial), set, BasisOf(dessert, trial, set), set.InForce.To);
    }

    /// <summary>The serving that a law makes of a trial: from its reference amount where <c>dessert.csv</c> names the kind of food (<c>serving_category</c>), otherwise the stated portion; null where neither is known.</summary>
    /// <exception cref="ArgumentException">Something is missing that the law needs, or the portion is larger than the package; the message says what to supply.</exception>
    /// <exception cref="KeyNotFoundException">The law has no such kind of food; the message names the nearest.</exception>
    public static Serving? ServingOf(Dessert dessert, string trial, RuleSet rules)
    {
        PackedFood food = new()
        {
            Category = dessert.Facts.Text("serving_category", trial),
            NetGrams = dessert.Facts.Number("net_g", trial),
            UnitGrams = dessert.Facts.Number("portion_g", trial),
            UnitWord = dessert.Facts.Text("portion_word", trial) ?? "piece",
            StatedGrams = dessert.Facts.Number("portion_g", trial),
            DensityGramsPerMillilitre = dessert.Facts.Number("density_g_ml", trial),
        };
        return food.StatedGrams is null || rules.Servings.Count > 0 && food.Category is null ? null : ServingMaker.Of(rules, food);
    }

    private static PanelBasis BasisOf(Dessert dessert, string trial, RuleSet rules)
    {
        if (!rules.IsPerServing) return PanelBasis.Per100Grams;
        if (rules.Servings.Count > 0 && ServingOf(dessert, trial, rules) is { } serving) return serving.Basis;
        return dessert.Facts.Number("portion_g", trial) is { } portion ? PanelBasis.Serving(portion) : PanelBasis.Per100Grams;
    }

    /// <summary>How sure the panel of a trial is, as the kitchen varies and with the claims that are asked for.</summary>
    public static LabelCertainty CertaintyOf(Dessert dessert, string trial, string rules) =>
        LabelCertainty.Of(Of(dessert, trial, rules), KitchenVariations.Of(dessert, trial), ClaimSubjects(dessert, trial, rules));

    /// <summary>The figures that claims of a trial are made of, each with the kind of claim.</summary>
    public static IReadOnlyDictionary<string, ClaimSubject> ClaimSubjects(Dessert dessert, string trial, string rules)
    {
        Dictionary<string, ClaimSubject> subjects = new(Names.Comparer);
        foreach (var condition in DessertClaims.Asked(dessert, trial, rules).SelectMany(each => each.Verdict.Conditions).Select(result => result.Condition).Where(condition => condition.Figure.Length > 0))
            subjects[condition.Figure] = condition.Comparison is ClaimComparison.AtMost or ClaimComparison.Below ? ClaimSubject.AtMost : ClaimSubject.AtLeast;
        return subjects;
    }
}
