namespace Tamis.Physics;

/// <summary>Finds where a rising or falling function is zero.</summary>
internal static class Roots
{
    // Each step halves the bracket; after so many it is as narrow as doubles are.
    private const int MostSteps = 200;

    /// <summary>The place between two ends at which a function that rises or falls steadily is zero; NaN where both ends lie on one side of zero.</summary>
    public static double Bisect(Func<double, double> function, double low, double high)
    {
        var (atLow, atHigh) = (function(low), function(high));
        if (atLow == 0) return low;
        if (atHigh == 0) return high;
        if (!(Math.Sign(atLow) * Math.Sign(atHigh) < 0)) return double.NaN;
        for (var step = 0; step < MostSteps; step++)
        {
            var middle = low + (high - low) / 2;
            if (middle <= low || middle >= high) break;
            var at = function(middle);
            if (at == 0) return middle;
            if (Math.Sign(at) == Math.Sign(atLow)) low = middle;
            else high = middle;
        }
        return low + (high - low) / 2;
    }
}
