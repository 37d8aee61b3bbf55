using System.Buffers;
using System.Numerics;
using System.Runtime.InteropServices;

namespace Tamis.Statistics.Uncertainty;

/// <summary>Quantiles of many numbers without sorting all of them: note the bucket of each, sort only the buckets that hold a quantile.</summary>
internal static class OrderStatistics
{
    private const int Buckets = 4_096;

    /// <summary>Quantiles between two neighbours in proportion (Hyndman and Fan 1996, type 7).</summary>
    /// <exception cref="ArgumentException">There are no values, one is no finite number, or a share is not from 0 to 1.</exception>
    public static void Quantiles(ReadOnlySpan<double> values, ReadOnlySpan<double> shares, Span<double> quantiles)
    {
        foreach (var share in shares) if (share is not (>= 0 and <= 1)) throw new ArgumentException($"A share is from 0 to 1, not {share}.", nameof(shares));
        var (low, high) = Ends(values);
        var perUnit = high > low ? (Buckets - 1) / (high - low) : 0;
        // Where the range is too narrow for its buckets to be told apart, everything stands in one.
        if (!double.IsFinite(perUnit)) perUnit = 0;
        var buckets = ArrayPool<ushort>.Shared.Rent(values.Length);
        var counts = ArrayPool<int>.Shared.Rent(Buckets);
        Array.Clear(counts);
        for (var i = 0; i < values.Length; i++)
        {
            var bucket = (ushort)((values[i] - low) * perUnit);
            buckets[i] = bucket;
            counts[bucket]++;
        }
        Dictionary<int, double[]> opened = [];
        for (var i = 0; i < shares.Length; i++)
        {
            var place = shares[i] * (values.Length - 1);
            var below = At(values, buckets, counts, (int)place, opened);
            var above = At(values, buckets, counts, Math.Min((int)place + 1, values.Length - 1), opened);
            quantiles[i] = below + (place - Math.Floor(place)) * (above - below);
        }
        ArrayPool<ushort>.Shared.Return(buckets);
        ArrayPool<int>.Shared.Return(counts);
    }

    private static double At(ReadOnlySpan<double> values, ushort[] buckets, int[] counts, int rank, Dictionary<int, double[]> opened)
    {
        var (bucket, first) = (0, 0);
        while (first + counts[bucket] <= rank) first += counts[bucket++];
        if (!opened.TryGetValue(bucket, out var sorted)) opened[bucket] = sorted = Sorted(values, buckets, (ushort)bucket, counts[bucket]);
        return sorted[rank - first];
    }

    private static double[] Sorted(ReadOnlySpan<double> values, ushort[] buckets, ushort bucket, int count)
    {
        var inside = new double[count];
        var at = 0;
        for (var i = 0; i < count; i++)
        {
            at += buckets.AsSpan(at, values.Length - at).IndexOf(bucket);
            inside[i] = values[at++];
        }
        Array.Sort(inside);
        return inside;
    }

    private static (double Low, double High) Ends(ReadOnlySpan<double> values)
    {
        if (values.Length == 0) throw new ArgumentException("No numbers have no quantiles.", nameof(values));
        var vectors = MemoryMarshal.Cast<double, Vector<double>>(values);
        var (lows, highs) = (new Vector<double>(values[0]), new Vector<double>(values[0]));
        foreach (var vector in vectors) (lows, highs) = (Vector.Min(lows, vector), Vector.Max(highs, vector));
        var (low, high) = (lows[0], highs[0]);
        for (var i = 0; i < Vector<double>.Count; i++) (low, high) = (Math.Min(low, lows[i]), Math.Max(high, highs[i]));
        foreach (var value in values[(vectors.Length * Vector<double>.Count)..]) (low, high) = (Math.Min(low, value), Math.Max(high, value));
        return double.IsFinite(low) && double.IsFinite(high) ? (low, high) : throw new ArgumentException("A value is no finite number.", nameof(values));
    }
}
