using Tamis.Statistics.Comparisons;
using Tamis.Tasting;

namespace Tamis.Desserts;

/// <summary>A kitchen figure that varies over the tree, and what the scales did with it.</summary>
/// <param name="Component">The component.</param>
/// <param name="Figure">The figure.</param>
/// <param name="Low">The lowest of the trials that were scored.</param>
/// <param name="High">The highest.</param>
/// <param name="Effect">What one scale did from the lowest to the highest.</param>
/// <param name="StandsAmongAll">Whether it stands when chance is counted over all figures and scales (Holm 1979).</param>
/// <param name="MovesWith">Other figures that rose and fell with it over these trials: nothing tells which of them did it.</param>
public sealed record FigureEffect(string Component, KitchenFigure Figure, double Low, double High, DoseEffect Effect, bool StandsAmongAll, IReadOnlyList<string> MovesWith)
{
    // Two figures whose correlation over the trials is stronger than this cannot be parted.
    private const double Inseparable = 0.8;

    /// <summary>Every figure with three values or more over the scored trials, on every scale; none without tastings.</summary>
    /// <remarks>Each figure by itself, a straight line with trials as the unit: with a dozen trials no model could hold several at once.</remarks>
    public static IReadOnlyList<FigureEffect> Of(Dessert dessert, TastingPolicy? policy = null)
    {
        if (dessert.Analysis is not { } analysis) return [];
        policy ??= TastingPolicy.Kit;
        string[] trials = [.. analysis.Log.Scores.Select(score => score.Serving.Trial).Distinct()];
        var varying = (from component in dessert.Batches.SelectMany(batch => batch.Components).Select(component => component.Name).Distinct(Names.Comparer)
                       from figure in KitchenFigure.Kit
                       let values = trials.ToDictionary(trial => trial, trial => dessert.Trial(trial).Find(component) is { } made && figure.Of(made) is { } known ? (double?)Math.Round(known, figure.Decimals) : null)
                       where values.Values.OfType<double>().Distinct().Count() >= 3
                       select (component, figure, values)).ToArray();
        var found = (from each in varying
                     from scale in analysis.Scales
                     let effect = DoseEffect.Of(analysis.Log, scale, trial => each.values.GetValueOrDefault(trial), policy)
                     where effect is not null
                     select (each, effect)).ToArray();
        var adjusted = SeveralTests.Holm([.. found.Select(pair => pair.effect.P ?? double.NaN)]);
        return [.. found.Select((pair, at) => new FigureEffect(pair.each.component, pair.each.figure, pair.each.values.Values.OfType<double>().Min(), pair.each.values.Values.OfType<double>().Max(), pair.effect, adjusted[at] < policy.FalseAlarmShare,
            [.. varying.Where(other => (other.component, other.figure) != (pair.each.component, pair.each.figure) && Math.Abs(Correlation(pair.each.values, other.values)) > Inseparable).Select(other => $"{other.figure.Name} of the {other.component}")]))];
    }

    private static double Correlation(Dictionary<string, double?> left, Dictionary<string, double?> right)
    {
        var pairs = left.Keys.Where(trial => left[trial] is not null && right[trial] is not null).Select(trial => (X: left[trial]!.Value, Y: right[trial]!.Value)).ToArray();
        if (pairs.Length < 3) return 0;
        var (mx, my) = (pairs.Average(pair => pair.X), pairs.Average(pair => pair.Y));
        double xx = pairs.Sum(pair => (pair.X - mx) * (pair.X - mx)), yy = pairs.Sum(pair => (pair.Y - my) * (pair.Y - my));
        return xx > 0 && yy > 0 ? pairs.Sum(pair => (pair.X - mx) * (pair.Y - my)) / Math.Sqrt(xx * yy) : 0;
    }
}
