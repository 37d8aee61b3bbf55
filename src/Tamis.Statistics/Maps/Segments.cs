using MathNet.Numerics.Random;

namespace Tamis.Statistics.Maps;

/// <summary>Rows parted into groups about their means (k-means).</summary>
/// <param name="Of">The group of each row, from 0; groups are numbered by their first row.</param>
/// <param name="Centres">The mean of each group.</param>
/// <param name="SquaresWithin">The sum of squared distances from the centres.</param>
public sealed record Segments(IReadOnlyList<int> Of, IReadOnlyList<double[]> Centres, double SquaresWithin)
{
    /// <summary>The best of several starts, each with centres far apart (Arthur and Vassilvitskii 2007), then Lloyd's steps.</summary>
    /// <param name="rows">Rows of finite numbers of equal length.</param>
    /// <param name="count">How many groups, 1 to the number of different rows.</param>
    /// <param name="starts">How many starts.</param>
    /// <param name="seed">The seed; the same seed gives the same groups.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are fewer different rows than groups, or no start.</exception>
    public static Segments Find(IReadOnlyList<double[]> rows, int count, int starts, int seed)
    {
        var different = rows.Select(row => string.Join(' ', row)).Distinct(StringComparer.Ordinal).Count();
        if (count < 1 || count > different) throw new ArgumentOutOfRangeException(nameof(count), count, $"There are {different} different rows; as many groups at most.");
        ArgumentOutOfRangeException.ThrowIfLessThan(starts, 1);
        MersenneTwister random = new(seed);
        return Enumerable.Range(0, starts).Select(_ => Settle(rows, FarApart(rows, count, random))).MinBy(found => found.SquaresWithin)!;
    }

    private static double[][] FarApart(IReadOnlyList<double[]> rows, int count, MersenneTwister random)
    {
        List<double[]> centres = [rows[random.Next(rows.Count)]];
        while (centres.Count < count)
        {
            double[] apart = [.. rows.Select(row => centres.Min(centre => Square(row, centre)))];
            var left = random.NextDouble() * apart.Sum();
            // Rounding may leave a rest behind the last row; then the farthest row is taken.
            var chosen = Array.FindIndex(apart, square => square > 0 && (left -= square) < 0);
            centres.Add(rows[chosen >= 0 ? chosen : Array.IndexOf(apart, apart.Max())]);
        }
        return [.. centres];
    }

    private static Segments Settle(IReadOnlyList<double[]> rows, double[][] centres)
    {
        var of = Nearest(rows, centres);
        for (var before = double.PositiveInfinity; ;)
        {
            centres = [.. centres.Select((centre, k) => Mean([.. rows.Where((_, i) => of[i] == k)]) ?? centre)];
            of = Nearest(rows, centres);
            var squares = rows.Select((row, i) => Square(row, centres[of[i]])).Sum();
            if (!(squares < before)) return Numbered(of, centres, squares);
            before = squares;
        }
    }

    private static Segments Numbered(int[] of, double[][] centres, double squares)
    {
        int[] order = [.. of.Distinct(), .. Enumerable.Range(0, centres.Length).Except(of)];
        return new([.. of.Select(k => Array.IndexOf(order, k))], [.. order.Select(k => centres[k])], squares);
    }

    private static int[] Nearest(IReadOnlyList<double[]> rows, double[][] centres) =>
        [.. rows.Select(row => Enumerable.Range(0, centres.Length).MinBy(k => Square(row, centres[k])))];

    private static double[]? Mean(double[][] rows) => rows.Length == 0 ? null : [.. Enumerable.Range(0, rows[0].Length).Select(j => rows.Average(row => row[j]))];

    private static double Square(double[] left, double[] right) => left.Zip(right, (a, b) => (a - b) * (a - b)).Sum();
}
