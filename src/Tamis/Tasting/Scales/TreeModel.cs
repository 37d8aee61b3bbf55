using Tamis.Statistics;
using Tamis.Statistics.MixedModels;
using Tamis.Statistics.Models;

namespace Tamis.Tasting;

/// <summary>One trial less another over all tastings that link them, as formulas: the make is the unit.</summary>
/// <param name="Trial">The trial.</param>
/// <param name="Against">The trial that it is compared with.</param>
/// <param name="Points">The difference, in points.</param>
/// <param name="Range">Its interval; null where nothing says how sure it is.</param>
/// <param name="P">The probability of so large a difference if there were none; null where nothing says it.</param>
public sealed record TreeDifference(string Trial, string Against, double Points, Interval? Range, double? P);

/// <summary>One scale over all tastings of a dessert: what a formula does, with batches as a sample of what it can turn out as.</summary>
/// <remarks>points = trial + tasting + assessor + assessor on the day + make + plate. Trials and tastings are fixed, so that trials are compared only within a
/// tasting or by way of trials that several tastings served; assessors, days and makes are samples. A make that is the only one of its trial says nothing of how
/// makes differ.</remarks>
public sealed class TreeModel
{
    private const string Points = "points", Trial = "trial", Tasting = "tasting", Assessor = "assessor", Make = "make";

    private readonly MixedFit? _fit;
    private readonly TastingPolicy _policy;

    private TreeModel(SensoryAttribute attribute, TastingPolicy policy, MixedFit? fit, string whyNot, int makeComparisons)
    {
        (Attribute, _policy, _fit, WhyNot, MakeComparisons) = (attribute, policy, fit, whyNot, makeComparisons);
        Spread = fit is null ? [] : SpreadPart.Of(fit);
        Trials = fit?.Levels(Trial) ?? [];
    }

    /// <summary>The scale.</summary>
    public SensoryAttribute Attribute { get; }

    /// <summary>Why nothing can be said, as a sentence; empty where the model was fitted.</summary>
    public string WhyNot { get; }

    /// <summary>The trials that were scored, sorted by character code.</summary>
    public IReadOnlyList<string> Trials { get; }

    /// <summary>Where the spread of the marks comes from.</summary>
    public IReadOnlyList<SpreadPart> Spread { get; }

    /// <summary>How many independent comparisons tell one make of a trial from another; 0 where formula and batch cannot be parted at all.</summary>
    public int MakeComparisons { get; }

    /// <summary>Whether the spread from make to make is in the intervals.</summary>
    public bool HasMakes => Spread.Any(part => part.From == SpreadFrom.Make);

    /// <summary>Fits the model to every tasting that asked for the scale.</summary>
    public static TreeModel Of(TastingLog log, SensoryAttribute attribute, TastingPolicy? policy = null)
    {
        policy ??= TastingPolicy.Kit;
        var bench = log.Sessions.Where(session => session.IsBench).Select(session => session.Name).ToHashSet();
        Score[] scores = [.. log.Scores.Where(score => score.Attribute == attribute && !bench.Contains(score.Serving.Tasting))];
        if (scores.Length == 0) return new(attribute, policy, null, $"{attribute.Name} was never scored.", 0);
        if (scores.Select(score => score.Serving.Assessor).Distinct().Count() < policy.FewestAssessors) return new(attribute, policy, null, $"Fewer than {policy.FewestAssessors} people ever scored {attribute.Name}: notes, not evidence.", 0);
        if (scores.Select(score => score.Serving.Trial).Distinct().Count() == 1) return new(attribute, policy, null, $"One trial only was ever scored for {attribute.Name}.", 0);
        var comparisons = ComparisonsOfMakes(scores);
        var several = scores.Select(score => score.Serving.Tasting).Distinct().Count() > 1;
        var data = ModelData.Empty
            .WithNumbers(Points, [.. scores.Select(score => score.Points)])
            .WithFactor(Trial, [.. scores.Select(score => score.Serving.Trial)])
            .WithFactor(Tasting, [.. scores.Select(score => score.Serving.Tasting)])
            .WithFactor(Assessor, [.. scores.Select(score => score.Serving.Assessor)])
            .WithFactor(Make, [.. scores.Select(MakeOf)]);
        string[] parts = [$"(1 | {Assessor})", .. several ? [$"(1 | {Assessor}:{Tasting})"] : Array.Empty<string>(), .. comparisons > 0 ? [$"(1 | {Make})"] : Array.Empty<string>()];
        var outcome = Fitted(parts);
        // What cannot be told apart is left out, the last named first kept: makes matter more than days.
        if (outcome.Fit is null && several) outcome = Fitted([.. parts.Where(part => !part.Contains(':', StringComparison.Ordinal))]);
        if (outcome.Fit is null) outcome = Fitted([parts[0]]);
        return new(attribute, policy, outcome.Fit, outcome.Fit is null ? $"The marks of {attribute.Name} cannot carry a comparison: {outcome.Reason}" : "", comparisons);

        MixedOutcome Fitted(string[] random) => MixedModel.Fit(MixedFormula.Parse($"{Points} ~ {Trial}{(several ? $" + {Tasting}" : "")} + {string.Join(" + ", random)}"), data);
    }

    /// <summary>One trial less another; null where no tasting and no trial in common links them, or one was not scored.</summary>
    public TreeDifference? Difference(string trial, string against)
    {
        if (_fit is null || Spelt(trial) is not { } first || Spelt(against) is not { } second || first == second) return null;
        if (_fit.Difference(Trial, first, second) is not { } estimate || !double.IsFinite(estimate.Value)) return null;
        var range = Ranges.Of(estimate, _policy, Attribute.LengthPoints);
        return new(first, second, estimate.Value, range, range is null ? null : Tails.StudentBeyond(estimate.Value / estimate.StandardError, estimate.Degrees));
    }

    private string? Spelt(string trial) => Trials.FirstOrDefault(each => Names.Same(each, trial));

    private static string MakeOf(Score score) => $"{score.Serving.Trial}, make {(score.Serving.Make is { } make ? make.ToString(System.Globalization.CultureInfo.InvariantCulture) : $"of {score.Serving.Tasting}")}";

    // Makes as they were served, less what trials and tastings take up: what is left over compares makes of one trial.
    private static int ComparisonsOfMakes(Score[] scores)
    {
        var cells = scores.Select(score => (score.Serving.Trial, Make: MakeOf(score), score.Serving.Tasting)).Distinct().ToArray();
        if (cells.GroupBy(cell => cell.Trial).All(trial => trial.Select(cell => cell.Make).Distinct().Count() == 1)) return 0;
        // Trials and tastings that hang together share one level of height.
        Dictionary<string, string> groups = [];
        foreach (var (trial, _, tasting) in cells) Join($"trial {trial}", $"tasting {tasting}");
        var nodes = cells.Select(cell => $"trial {cell.Trial}").Concat(cells.Select(cell => $"tasting {cell.Tasting}")).Distinct().ToArray();
        var heights = nodes.Select(Root).Distinct().Count();
        return Math.Max(0, cells.Select(cell => (cell.Make, cell.Tasting)).Distinct().Count() - (nodes.Length - heights));

        string Root(string node) => groups.TryGetValue(node, out var above) && above != node ? Root(above) : node;
        void Join(string left, string right) => groups[Root(left)] = Root(right);
    }
}
