using Tamis.Labels;
using Tamis.Physics;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>The statements that a trial's pack must bear, its additives held against the law's levels, and the workshop's own cautions.</summary>
public static class TrialParticulars
{
    private static readonly Lazy<IReadOnlyList<CautionRule>> OfLabels = new(() => CautionRule.ReadAll(SheetFile.Read(Path.Combine(KitFolder.Data("cautions"), "label-cautions.csv"))));

    /// <summary>Every statement of the rule set with what can be said of it, in the order of its file.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="rules">The rule set's folder name.</param>
    /// <param name="day">The day whose rules count; with no day, those that have no end.</param>
    /// <exception cref="TableException">The masses of the trial are not all known, an exemption or a category is none, or a rule file cannot be read.</exception>
    public static IReadOnlyList<Particular> Of(Dessert dessert, string trial, string rules, DateOnly? day = null)
    {
        var (set, name) = (KitData.Rules(rules), dessert.Trial(trial).Trial);
        IngredientFigures figures = new(dessert);
        return Particulars.Of(new()
        {
            Mixture = dessert.Whole(trial),
            ServingGrams = () => DessertPanels.ServingOf(dessert, name, set)?.Grams,
            Category = LabelAsked.Category(dessert, name, set)?.Name,
            Says = key => dessert.Facts.Text(key, name) ?? (key == PanelKey ? PanelNeed.WhyNone(dessert, name, set, DessertPanels.ColumnsOf(dessert, name, rules)) is null ? "yes" : "none" : null),
            Asked = IsThawed(dessert, name) ? ["thawed"] : [],
            Stated = figures.Of,
            IsLiquid = Names.Same(dessert.Facts.Text("state", name), "liquid"),
            DensityGramsPerMillilitre = dessert.Facts.Number("density_g_ml", name),
            Exemptions = LabelAsked.Exemptions(dessert, name),
        }, set, day ?? LabelAsked.Day(dessert, name));
    }

    // What a statement may hang on and no row need say: whether the pack bears a nutrition panel.
    private const string PanelKey = "nutrition_panel";

    /// <summary>Every additive of a trial held against the levels of the rule set.</summary>
    /// <exception cref="TableException">The masses of the trial are not all known, a category is none, or a rule file cannot be read.</exception>
    public static IReadOnlyList<AdditiveCheck> Additives(Dessert dessert, string trial, string rules)
    {
        var set = KitData.Rules(rules);
        var whole = dessert.Whole(trial);
        return AdditiveLevels.Of(set).Check(AdditiveUse.In(whole, set), whole.FinishedGrams, LabelAsked.Category(dessert, dessert.Trial(trial).Trial, set), FoodCategories.Of(set));
    }

    /// <summary>What a trial has as an additive that the kit does not know, with the ingredient: nothing can be said of it, neither of its level nor of a statement that it may trigger.</summary>
    public static IReadOnlyList<(Formulas.Ingredient Ingredient, string Named)> UnknownAdditives(Dessert dessert, string trial, string rules) => AdditiveUse.UnknownIn(dessert.Whole(trial), KitData.Rules(rules));

    /// <summary>The workshop's own cautions for those who eat: raw egg, choking, alcohol. They are no statement of the law.</summary>
    public static IReadOnlyList<Caution> Own(Dessert dessert, string trial)
    {
        CautionRule[] rules = [.. CautionRule.Kit.Where(rule => rule is { Of: CautionOf.People, IsOfStep: false }), .. OfLabels.Value];
        return [.. dessert.Physics(trial).Components.SelectMany(component => Cautions.Of(component.Looked, rules)).DistinctBy(caution => (caution.Rule.Hazard, caution.Because))];
    }

    // A step that speaks of thawing: then somebody must say whether it is sold so.
    private static bool IsThawed(Dessert dessert, string trial) =>
        dessert.Method is { } method && dessert.Formulas.First(formula => Names.Same(formula.Trial, trial)).Components.Select(component => component.Name).Append(Formulas.MethodStep.Assembly)
            .SelectMany(component => method.StepsOf(component, dessert.LineOf(trial))).Any(step => step.Do.Contains("thaw", StringComparison.OrdinalIgnoreCase));
}
