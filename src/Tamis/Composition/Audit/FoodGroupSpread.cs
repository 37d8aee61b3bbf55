using Tamis.Statistics;

namespace Tamis.Composition;

/// <summary>How the contents of one nutrient lie within one food group, in powers of ten and by robust measures.</summary>
/// <remarks>Contents are spread by ratios, not by differences, so their logarithms are compared; zeros and unknowns say nothing of a ratio and are left out.</remarks>
/// <param name="Median">The median of log10 of the contents in 100 g.</param>
/// <param name="Deviation">A standard deviation that outliers do not move: 1.4826 times the median distance from the median (Hampel 1974).</param>
/// <param name="Foods">How many foods it rests on.</param>
internal readonly record struct FoodGroupSpread(double Median, double Deviation, int Foods)
{
    public static FoodGroupSpread Of(IEnumerable<double> per100Grams)
    {
        double[] logs = [.. per100Grams.Where(value => value > 0).Select(Math.Log10)];
        if (logs.Length == 0) return default;
        var (median, deviation) = RobustSpread.Of(logs);
        return new(median, deviation, logs.Length);
    }

    /// <summary>How far a content lies from the middle of its group, in robust standard deviations.</summary>
    public double Distance(double per100Grams, double leastDeviation) => (Math.Log10(per100Grams) - Median) / Math.Max(Deviation, leastDeviation);

    /// <summary>The power of ten by which a content would have to be divided to lie in the middle of its group; null where none does.</summary>
    public int? Tens(double per100Grams, double leastDeviation)
    {
        var far = Math.Log10(per100Grams) - Median;
        var tens = (int)Math.Round(far);
        return tens is not 0 && Math.Abs(far - tens) <= Math.Max(Deviation, leastDeviation) ? tens : null;
    }

    /// <summary>The content that lies so many robust standard deviations from the middle.</summary>
    public double At(double distance, double leastDeviation) => Math.Pow(10, Median + distance * Math.Max(Deviation, leastDeviation));
}
