using Tamis.Statistics.Comparisons;

namespace Tamis.Tasting;

/// <summary>Everything that the scales of one tasting say, with chance counted over all of them together.</summary>
/// <param name="Session">The tasting.</param>
/// <param name="Scales">One model a scale that was asked, in the order of the sheet.</param>
public sealed record TastingReport(TastingSession Session, IReadOnlyList<ScaleModel> Scales)
{
    /// <summary>The report of a tasting.</summary>
    public static TastingReport Of(TastingLog log, TastingSession session, TastingPolicy? policy = null)
    {
        RangeQuantiles quantiles = new();
        ScaleModel[] scales = [.. log.Attributes.Where(attribute => attribute.IsScale && log.Asked(session.Name, attribute)).Select(attribute => ScaleModel.Of(log, session, attribute, policy ?? TastingPolicy.Kit, quantiles))];
        var adjusted = SeveralTests.Holm([.. scales.Select(scale => scale.TrialP ?? double.NaN)]);
        return new(session, [.. scales.Select((scale, at) => scale with { TrialPAmongAll = double.IsNaN(adjusted[at]) ? null : adjusted[at] })]);
    }
}
