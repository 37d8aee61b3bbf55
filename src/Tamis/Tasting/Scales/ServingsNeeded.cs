using Tamis.Statistics.Designs;

namespace Tamis.Tasting;

/// <summary>How many servings would settle a question.</summary>
public static class ServingsNeeded
{
    /// <summary>How many assessors must taste both of two trials once, so that a gap is seen as often as wanted.</summary>
    /// <param name="servingPoints">The standard deviation of one serving about what trial and assessor explain, in points, more than 0.</param>
    /// <param name="gapPoints">The gap to see, in points, more than 0.</param>
    /// <param name="policy">The risks: of a false alarm, and of missing the gap.</param>
    /// <returns>The number, at least 2; null where more than ten thousand would be needed.</returns>
    /// <remarks>The power of the paired t-test by the non-central distribution; see <see cref="CrossedDesign"/>.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The spread or the gap is not more than zero.</exception>
    public static int? ToSee(double servingPoints, double gapPoints, TastingPolicy policy) =>
        new CrossedDesign(2, 2, 2).BlocksNeeded(gapPoints, servingPoints, 0, policy.WantedPowerShare, policy.ConfidenceShare);

    /// <summary>How many servings of each trial a tasting laid out as this one was needs, so that a gap between two of its trials is seen as often as wanted, all pairs counted together.</summary>
    /// <param name="scale">The scale, fitted.</param>
    /// <param name="gapPoints">The gap to see, in points, more than 0.</param>
    /// <param name="policy">The risks: of a false alarm, and of missing the gap.</param>
    /// <returns>The number; null without a fit, without spread, or where more than ten thousand assessors would be needed.</returns>
    public static int? ToSee(ScaleModel scale, double gapPoints, TastingPolicy policy) =>
        scale is { Design: { } design, PlatePoints: { } plate } && plate > Ranges.SmallestErrorShare * scale.Attribute.LengthPoints
            && design.BlocksNeeded(gapPoints, plate, scale.OwnPoints, policy.WantedPowerShare, policy.ConfidenceShare) is { } assessors
            ? (int)Math.Ceiling((design with { Blocks = assessors }).Repeats * design.Times) : null;
}
