using System.Numerics;
using System.Runtime.InteropServices;

namespace Tamis.Statistics.Uncertainty;

/// <summary>Mean and standard deviation of many numbers, in two passes, so that a large mean costs no digits.</summary>
internal static class Moments
{
    public static (double Mean, double StandardDeviation) Of(ReadOnlySpan<double> values)
    {
        if (values.Length < 2) throw new ArgumentException("A standard deviation needs two numbers.", nameof(values));
        var mean = Sum(values, 0, isSquared: false) / values.Length;
        return (mean, Math.Sqrt(Sum(values, mean, isSquared: true) / (values.Length - 1)));
    }

    private static double Sum(ReadOnlySpan<double> values, double origin, bool isSquared)
    {
        var vectors = MemoryMarshal.Cast<double, Vector<double>>(values);
        var (sums, from) = (Vector<double>.Zero, new Vector<double>(origin));
        if (isSquared) foreach (var vector in vectors) sums += (vector - from) * (vector - from);
        else foreach (var vector in vectors) sums += vector - from;
        var sum = Vector.Sum(sums);
        foreach (var value in values[(vectors.Length * Vector<double>.Count)..]) sum += isSquared ? (value - origin) * (value - origin) : value - origin;
        return sum;
    }
}
