using Tamis.Statistics.Designs;

namespace Tamis.Tasting;

/// <summary>Whether what was tasted just before can be evened out of a comparison, and is.</summary>
public enum CarryOverStanding
{
    /// <summary>Nothing says in which order the plates came, or everybody had one plate.</summary>
    OrderUnknown,
    /// <summary>By this order nothing tells what a trial leaves behind from what it is: everybody tasted in one order, or nearly so.</summary>
    CannotBeTold,
    /// <summary>It could be evened out, but intervals would grow by more than it is worth.</summary>
    CostsTooMuch,
    /// <summary>It is evened out of every mean and difference.</summary>
    EvenedOut,
}

/// <summary>What evening out the plate before does to the comparisons of a tasting.</summary>
/// <param name="Standing">Whether it is done.</param>
/// <param name="WiderShare">By what part intervals grow for it, at equal spread: 0.04 is by a twenty-fifth; null where it cannot be told.</param>
public sealed record CarryOver(CarryOverStanding Standing, double? WiderShare)
{
    /// <summary>What the tasting's order allows, whatever the marks.</summary>
    /// <remarks>First-order carry-over: what the plate just before leaves on the tongue, alike under whatever comes next; the first plate has nothing before it and an effect of its own
    /// (Williams 1949, Australian Journal of Scientific Research A2). What it costs is counted within assessors.</remarks>
    internal static CarryOver Of(Score[] scores, IReadOnlyList<string?> before, TastingPolicy policy)
    {
        if (scores.Any(score => score.Serving.Position is null) || scores.Select(score => score.Serving.Position).Distinct().Count() < 2) return new(CarryOverStanding.OrderUnknown, null);
        string[] left = [.. before.OfType<string>().Distinct().Order(StringComparer.Ordinal)];
        if (left.Length < 2) return new(CarryOverStanding.CannotBeTold, null);
        var cost = AdjustmentCost.Of([.. scores.Select((score, at) => new DesignRow(score.Serving.Assessor, score.Serving.Trial, [score.Serving.Position!.Value],
            [before[at] is null ? 1 : 0, .. left.Select(trial => trial == before[at] ? 1.0 : 0)]))]);
        if (cost is not { } known || known.AdjustedDegrees < 1) return new(CarryOverStanding.CannotBeTold, null);
        var wider = known.WidthRatio(policy.ConfidenceShare) - 1;
        return new(wider <= policy.WiderForCarryOverShare ? CarryOverStanding.EvenedOut : CarryOverStanding.CostsTooMuch, wider);
    }

    /// <summary>What was on the plate that the same assessor tasted just before, in the order asked; null where it was the first, or the order is not known. A plate that was not tasted leaves nothing.</summary>
    internal static string?[] BeforeEach(TastingLog log, TastingSession session, Score[] scores)
    {
        Dictionary<Serving, string?> before = [];
        foreach (var own in log.Tasted.Where(serving => Names.Same(serving.Tasting, session.Name) && serving.Position is not null).GroupBy(serving => serving.Assessor))
        {
            string? last = null;
            foreach (var serving in own.OrderBy(serving => serving.Position)) (before[serving], last) = (last, serving.Trial);
        }
        return [.. scores.Select(score => before.GetValueOrDefault(score.Serving))];
    }
}
