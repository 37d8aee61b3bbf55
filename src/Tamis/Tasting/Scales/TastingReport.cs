using Tamis.Statistics.Comparisons;

namespace Tamis.Tasting;

/// <summary>Everything that the scales of one tasting say, with chance counted over all of them together.</summary>
/// <param name="Session">The tasting.</param>
/// <param name="Scales">One model a scale that was asked, in the order of the sheet.</param>
public sealed record TastingReport(TastingSession Session, IReadOnlyList<ScaleModel> Scales)
{
    /// <summary>The report of a tasting.</summary>
    /// <remarks>What is shown is counted by Holm's rule, which keeps the risk of even one false call over all scales below what was wanted, however the scales hang together:
    /// a kitchen acts on each call by itself. Benjamini and Hochberg's rule lets a share of the calls be false; it says what is worth asking again.</remarks>
    public static TastingReport Of(TastingLog log, TastingSession session, TastingPolicy? policy = null)
    {
        RangeQuantiles quantiles = new();
        ScaleModel[] scales = [.. log.Attributes.Where(attribute => attribute.IsScale && log.Asked(session.Name, attribute)).Select(attribute => ScaleModel.Of(log, session, attribute, policy ?? TastingPolicy.Kit, quantiles))];
        double[] alone = [.. scales.Select(scale => scale.TrialP ?? double.NaN)];
        var (adjusted, shares) = (SeveralTests.Holm(alone), SeveralTests.BenjaminiHochberg(alone));
        return new(session, [.. scales.Select((scale, at) => double.IsNaN(alone[at]) ? scale : scale with { TrialPAmongAll = adjusted[at], FalseShareAmongAll = shares[at] })]);
    }
}
