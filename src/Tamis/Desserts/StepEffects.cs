using Tamis.Statistics.Comparisons;
using Tamis.Tasting;

namespace Tamis.Desserts;

/// <summary>One step of the tree on one scale: as it was tasted, and as a formula.</summary>
/// <param name="Step">The step: a trial and its parent, with what was changed.</param>
/// <param name="Attribute">The scale.</param>
/// <param name="Formula">The difference of the formulas over all tastings; null where nothing links them.</param>
/// <param name="StandsAmongAll">Whether it stands when chance is counted over every step and scale together (Holm 1979).</param>
public sealed record StepEffect(TrialStep Step, SensoryAttribute Attribute, TreeDifference? Formula, bool StandsAmongAll);

/// <summary>What every step of the tree did to every scale, with makes as the unit.</summary>
public sealed record StepEffects
{
    /// <summary>The models behind the effects, one a scale.</summary>
    public required IReadOnlyList<TreeModel> Models { get; init; }

    /// <summary>Every step on every scale, in the order of the log.</summary>
    public required IReadOnlyList<StepEffect> Effects { get; init; }

    /// <summary>The trials that were tasted from one make only.</summary>
    public required IReadOnlyList<string> OneMake { get; init; }

    /// <summary>The steps of a dessert with the scores; null where nobody has scored.</summary>
    public static StepEffects? Of(Dessert dessert, TastingPolicy? policy = null)
    {
        if (dessert.Analysis is not { } analysis) return null;
        policy ??= TastingPolicy.Kit;
        TreeModel[] models = [.. analysis.Scales.Select(scale => TreeModel.Of(analysis.Log, scale, policy))];
        StepEffect[] effects = [.. from step in dessert.Steps from model in models select new StepEffect(step, model.Attribute, model.Difference(step.To.Name, step.From.Name), false)];
        return new()
        {
            Models = models,
            Effects = Counted(effects, policy.FalseAlarmShare),
            OneMake = [.. models.SelectMany(model => model.Trials).Distinct().Where(trial => analysis.Log.MakesOf(trial).Count < 2)],
        };
    }

    private static StepEffect[] Counted(StepEffect[] effects, double risk)
    {
        var adjusted = SeveralTests.Holm([.. effects.Select(effect => effect.Formula?.P ?? double.NaN)]);
        return [.. effects.Select((effect, at) => effect with { StandsAmongAll = adjusted[at] < risk })];
    }
}
