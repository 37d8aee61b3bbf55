using Tamis.Formulas;

namespace Tamis.Losses;

/// <summary>A line that two trials have in different amounts.</summary>
/// <param name="Component">The component.</param>
/// <param name="Line">The line.</param>
/// <param name="FromGrams">Its mass in the first trial, over all its rows; 0 where it is not in.</param>
/// <param name="ToGrams">Its mass in the second.</param>
/// <param name="FromShare">Its share of all that is weighed into the component, 0 to 1.</param>
/// <param name="ToShare">The same in the second.</param>
public sealed record LineDifference(string Component, string Line, double FromGrams, double ToGrams, double FromShare, double ToShare)
{
    /// <summary>How the first trial counts it in pieces, as written; empty where it is weighed.</summary>
    public string FromPieces { get; init; } = "";

    /// <summary>How the second trial counts it in pieces, as written; empty where it is weighed.</summary>
    public string ToPieces { get; init; } = "";

    /// <summary>The second mass less the first, in grams.</summary>
    public double ChangeGrams => ToGrams - FromGrams;

    /// <summary>Whether the cook wrote another mass; a share alone moves whenever a neighbour does.</summary>
    public bool MassChanged => Math.Abs(ChangeGrams) > 1e-9;
}

/// <summary>Something that leaves a component in another way.</summary>
/// <param name="Component">The component.</param>
/// <param name="Loss">The word for what leaves.</param>
/// <param name="From">How it was written in the first trial; null where nothing left so.</param>
/// <param name="To">How it is written in the second.</param>
public sealed record LossDifference(string Component, string Loss, string? From, string? To);

/// <summary>A line that goes in at another step.</summary>
public sealed record StepDifference(string Component, string Line, IReadOnlyList<int> FromSteps, IReadOnlyList<int> ToSteps);

/// <summary>What one trial has otherwise than another: grams, shares, losses, steps. Differences are taken before any rounding.</summary>
public sealed record BatchDifference
{
    /// <summary>The trial that is compared with.</summary>
    public required string From { get; init; }

    /// <summary>The trial that is looked at.</summary>
    public required string To { get; init; }

    /// <summary>Lines whose mass changed, component by component.</summary>
    public required IReadOnlyList<LineDifference> Lines { get; init; }

    /// <summary>Lines whose mass stayed while their share moved, because something else in the component changed.</summary>
    public required IReadOnlyList<LineDifference> SharesOnly { get; init; }

    /// <summary>Components made to another size with the same shares, with the factor.</summary>
    public required IReadOnlyList<(string Component, double Factor)> ScaledComponents { get; init; }

    /// <summary>What leaves otherwise.</summary>
    public required IReadOnlyList<LossDifference> Losses { get; init; }

    /// <summary>Lines that go in at another step.</summary>
    public required IReadOnlyList<StepDifference> Steps { get; init; }

    /// <summary>The components in which the cook changed anything.</summary>
    public IReadOnlyList<string> Components => [.. Lines.Select(line => line.Component)
        .Concat(Losses.Select(loss => loss.Component)).Concat(Steps.Select(step => step.Component)).Distinct(Names.Comparer)];

    /// <summary>Whether the two trials are made from the same masses in the same way.</summary>
    public bool IsNone => Components.Count == 0;

    /// <summary>The difference of two batches.</summary>
    public static BatchDifference Between(Batch from, Batch to)
    {
        List<LineDifference> lines = [], shares = [];
        List<(string, double)> scaled = [];
        List<LossDifference> losses = [];
        List<StepDifference> steps = [];
        foreach (var name in from.Components.Concat(to.Components).Select(component => component.Name).Distinct(Names.Comparer))
        {
            var (before, after) = (from.Find(name), to.Find(name));
            LineDifference[] all = [.. LinesOf(before).Concat(LinesOf(after)).Distinct(Names.Comparer).Select(line => new LineDifference(name, line,
                before?.LineGrams(line) ?? 0, after?.LineGrams(line) ?? 0, before?.LineShare(line) ?? 0, after?.LineShare(line) ?? 0)
                { FromPieces = PiecesOf(before, line), ToPieces = PiecesOf(after, line) })];
            if (FactorOf(all) is { } factor) scaled.Add((name, factor));
            lines.AddRange(all.Where(line => line.MassChanged));
            shares.AddRange(all.Where(line => !line.MassChanged && Math.Abs(line.FromShare - line.ToShare) > 1e-12));
            losses.AddRange(LossesOf(name, before, after));
            steps.AddRange(all.Where(line => line.FromGrams > 0 && line.ToGrams > 0)
                .Select(line => new StepDifference(name, line.Line, StepsOf(before!, line.Line), StepsOf(after!, line.Line)))
                .Where(step => !step.FromSteps.SequenceEqual(step.ToSteps)));
        }
        return new() { From = from.Trial, To = to.Trial, Lines = lines, SharesOnly = shares, ScaledComponents = scaled, Losses = losses, Steps = steps };
    }

    private static IEnumerable<string> LinesOf(ComponentBatch? batch) => batch?.Lines.Select(line => line.Name) ?? [];

    private static string PiecesOf(ComponentBatch? batch, string line) =>
        batch?.Lines.Where(each => Names.Same(each.Name, line)).ToArray() is [{ Quantity: { Kind: QuantityKind.Pieces } only }] ? only.Text : "";

    private static IReadOnlyList<int> StepsOf(ComponentBatch batch, string line) =>
        [.. batch.Lines.Where(each => Names.Same(each.Name, line)).Select(each => each.Step).Distinct().Order()];

    private static double? FactorOf(LineDifference[] lines)
    {
        if (lines.Length < 2 || lines.Any(line => line.FromGrams <= 0 || line.ToGrams <= 0)) return null;
        var factor = lines[0].ToGrams / lines[0].FromGrams;
        return Math.Abs(factor - 1) > 1e-9 && lines.All(line => Math.Abs(line.ToGrams / line.FromGrams - factor) < 1e-9) ? factor : null;
    }

    private static IEnumerable<LossDifference> LossesOf(string component, ComponentBatch? before, ComponentBatch? after)
    {
        var (first, second) = (Written(before), Written(after));
        foreach (var loss in first.Keys.Concat(second.Keys).Distinct())
            if (first.GetValueOrDefault(loss) is var a && second.GetValueOrDefault(loss) is var b && a != b)
                yield return new(component, loss, a, b);

        static Dictionary<string, string> Written(ComponentBatch? batch) => batch is null ? [] : batch.Losses
            .GroupBy(loss => Names.Key(loss.Name)).ToDictionary(group => group.Key, group => string.Join(" and ", group.Select(loss => loss.Written)));
    }
}
