using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Tamis.Statistics.MixedModels;

/// <summary>Sums over neighbouring numbers, several at a time.</summary>
/// <remarks>These and the other loops of a fit are compiled in full at once: a kitchen fits a model once, before the runtime would have found them busy.</remarks>
internal static class Dense
{
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static double Dot(ReadOnlySpan<double> left, ReadOnlySpan<double> right)
    {
        double sum = 0;
        var done = 0;
        if (left.Length >= Vector<double>.Count)
        {
            var a = MemoryMarshal.Cast<double, Vector<double>>(left);
            var b = MemoryMarshal.Cast<double, Vector<double>>(right);
            var sums = Vector<double>.Zero;
            for (var i = 0; i < a.Length; i++) sums += a[i] * b[i];
            sum = Vector.Sum(sums);
            done = a.Length * Vector<double>.Count;
        }
        for (; done < left.Length; done++) sum += left[done] * right[done];
        return sum;
    }

    /// <summary>Adds a multiple of one row to another.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void AddScaled(Span<double> target, double factor, ReadOnlySpan<double> row)
    {
        var done = 0;
        if (row.Length >= Vector<double>.Count)
        {
            var to = MemoryMarshal.Cast<double, Vector<double>>(target);
            var from = MemoryMarshal.Cast<double, Vector<double>>(row);
            var factors = new Vector<double>(factor);
            for (var i = 0; i < from.Length; i++) to[i] += factors * from[i];
            done = from.Length * Vector<double>.Count;
        }
        for (; done < row.Length; done++) target[done] += factor * row[done];
    }

    /// <summary>target = factor × row × scale, number by number.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Multiply(Span<double> target, double factor, ReadOnlySpan<double> row, ReadOnlySpan<double> scale)
    {
        var done = 0;
        if (row.Length >= Vector<double>.Count)
        {
            var to = MemoryMarshal.Cast<double, Vector<double>>(target);
            var from = MemoryMarshal.Cast<double, Vector<double>>(row);
            var scales = MemoryMarshal.Cast<double, Vector<double>>(scale);
            var factors = new Vector<double>(factor);
            for (var i = 0; i < from.Length; i++) to[i] = factors * from[i] * scales[i];
            done = from.Length * Vector<double>.Count;
        }
        for (; done < row.Length; done++) target[done] = factor * row[done] * scale[done];
    }

    /// <summary>The derivatives of <see cref="Multiply"/>: adds those of the scale and returns that of the factor.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static double ReverseMultiply(ReadOnlySpan<double> bar, double factor, ReadOnlySpan<double> row, ReadOnlySpan<double> scale, Span<double> scaleBar)
    {
        double sum = 0;
        var done = 0;
        if (row.Length >= Vector<double>.Count)
        {
            var bars = MemoryMarshal.Cast<double, Vector<double>>(bar);
            var from = MemoryMarshal.Cast<double, Vector<double>>(row);
            var scales = MemoryMarshal.Cast<double, Vector<double>>(scale);
            var to = MemoryMarshal.Cast<double, Vector<double>>(scaleBar);
            var factors = new Vector<double>(factor);
            var sums = Vector<double>.Zero;
            for (var i = 0; i < from.Length; i++)
            {
                var product = bars[i] * from[i];
                sums += product * scales[i];
                to[i] += product * factors;
            }
            sum = Vector.Sum(sums);
            done = from.Length * Vector<double>.Count;
        }
        for (; done < row.Length; done++)
        {
            var product = bar[done] * row[done];
            sum += product * scale[done];
            scaleBar[done] += product * factor;
        }
        return sum;
    }
}
