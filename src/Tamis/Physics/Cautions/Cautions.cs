using Tamis.Formulas;

namespace Tamis.Physics;

/// <summary>A caution that applies.</summary>
/// <param name="Rule">The rule behind it.</param>
/// <param name="Component">The component.</param>
/// <param name="Step">The step that it belongs beside; null where it is about the component as such.</param>
/// <param name="Because">What in the sheets calls for it.</param>
public sealed record Caution(CautionRule Rule, string Component, MethodStep? Step, string Because);

/// <summary>Finds the cautions that belong to what is made and how.</summary>
public static class Cautions
{
    /// <summary>The cautions of a component and its steps, in the order of the rules.</summary>
    /// <param name="looked">The component with its method and what was measured.</param>
    /// <param name="rules">The rules; the kit's own where null.</param>
    public static IReadOnlyList<Caution> Of(Examined looked, IReadOnlyList<CautionRule>? rules = null) =>
        [.. (rules ?? CautionRule.Kit).SelectMany(rule => Of(looked, rule))];

    /// <summary>The cautions of steps that belong to no component, such as the assembly.</summary>
    public static IReadOnlyList<Caution> Of(string name, IReadOnlyList<MethodStep> steps, IReadOnlyList<CautionRule>? rules = null) =>
        [.. (rules ?? CautionRule.Kit).Where(rule => rule.IsOfStep && rule.Kinds.Count == 0 && rule.IngredientWords.Count == 0 && rule.Beside is null && rule.PhBelow is null && rule.AlcoholPercentAbove is null)
            .SelectMany(rule => steps.Where(step => Holds(rule, step)).Select(step => new Caution(rule, name, step, Because(step))))];

    private static IEnumerable<Caution> Of(Examined looked, CautionRule rule)
    {
        if (IngredientOf(looked, rule) is not { } because) yield break;
        if (rule.HottestBelowCelsius is { } below && looked.HottestCelsius >= below) yield break;
        if (rule.PhBelow is { } ph && !(Ph(looked) < ph)) yield break;
        if (rule.AlcoholPercentAbove is { } alcohol && !(Balance.Of(looked.Made.Out).PercentOf(BalancePart.Alcohol) > alcohol)) yield break;
        if (!rule.IsOfStep) yield return new(rule, looked.Made.Name, null, because);
        else
            foreach (var step in looked.Steps.Where(step => Holds(rule, step))) yield return new(rule, looked.Made.Name, step, Because(step));
    }

    // Null where an ingredient is wanted and is not there; empty where none is wanted.
    private static string? IngredientOf(Examined looked, CautionRule rule)
    {
        // What comes in with another component was looked at there, with the steps of that one.
        var ingredients = looked.Contents.Where(content => !content.Line.IsComponent).SelectMany(content => content.Content.Parts).Where(part => part.MassGrams > 0).Select(part => part.Ingredient).ToArray();
        var kind = rule.Kinds.Count == 0 ? "" : ingredients.FirstOrDefault(each => rule.Kinds.Contains(IngredientKinds.Kit.Of(each).Name, Names.Comparer))?.Name;
        var named = rule.IngredientWords.Count == 0 ? "" : ingredients.FirstOrDefault(each => rule.IngredientWords.Any(word => Names.HoldsBeginning(each.Name, word)))?.Name;
        var beside = rule.Beside is null ? "" : ingredients.FirstOrDefault(rule.Beside.Holds)?.Name;
        return kind is null || named is null || beside is null ? null : string.Join(" with ", new[] { kind, named, beside }.Where(name => name.Length > 0).Distinct());
    }

    private static bool Holds(CautionRule rule, MethodStep step)
    {
        var text = $"{step.Do} {step.Equipment} {step.Caution}";
        return (rule.StepWords.Count == 0 || rule.StepWords.Any(word => Names.HoldsBeginning(text, word)))
            && !rule.StepWithout.Any(word => Names.HoldsBeginning(text, word))
            && (rule.FromCelsius is not { } from || step.TemperatureCelsius >= from)
            && (rule.ToCelsius is not { } to || step.TemperatureCelsius <= to);
    }

    private static double? Ph(Examined looked) => looked.MeasuredOf("pH") is { IsKnown: true } measured ? measured.Value : null;

    private static string Because(MethodStep step) => step.TemperatureCelsius is { } celsius
        ? FormattableString.Invariant($"step {step.Step}, {celsius:0.#} °C").Replace('-', '−')
        : FormattableString.Invariant($"step {step.Step}");
}
