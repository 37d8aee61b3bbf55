using Tamis.Statistics;

namespace Tamis.Tasting;

/// <summary>How many servings would settle a question.</summary>
public static class ServingsNeeded
{
    private const int Most = 10_000;

    /// <summary>How many assessors must taste both of two trials once, so that a gap is seen as often as wanted.</summary>
    /// <param name="platePoints">The standard deviation of an assessor's mark from plate to plate, in points, more than 0.</param>
    /// <param name="gapPoints">The gap to see, in points, more than 0.</param>
    /// <param name="policy">The risks: of a false alarm, and of missing the gap.</param>
    /// <returns>The number, at least 2; null where more than ten thousand would be needed.</returns>
    /// <remarks>The fewest n with (t(1 − α/2) + t(1 − β)) × s × √(2/n) no more than the gap, t with n − 1 degrees of freedom: the usual reckoning for paired servings.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The spread or the gap is not more than zero.</exception>
    public static int? ToSee(double platePoints, double gapPoints, TastingPolicy policy)
    {
        if (!(platePoints > 0) || !double.IsFinite(platePoints)) throw new ArgumentOutOfRangeException(nameof(platePoints), platePoints, "The spread is more than zero points.");
        if (!(gapPoints > 0)) throw new ArgumentOutOfRangeException(nameof(gapPoints), gapPoints, "The gap is more than zero points.");
        var fewest = Reach(count => Tails.NormalTwoSided(policy.ConfidenceShare) + Tails.NormalTwoSided(2 * policy.WantedPowerShare - 1), 2);
        return fewest is { } start ? Reach(count => Tails.StudentTwoSided(policy.ConfidenceShare, count - 1) + Tails.StudentTwoSided(2 * policy.WantedPowerShare - 1, count - 1), start) : null;

        int? Reach(Func<int, double> widths, int from)
        {
            for (var count = from; count <= Most; count++)
                if (widths(count) * platePoints * Math.Sqrt(2.0 / count) <= gapPoints) return count;
            return null;
        }
    }
}
