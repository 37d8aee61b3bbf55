using System.Diagnostics;
using System.Globalization;

namespace Tamis.Benchmarks;

/// <summary>Runs both sides of each comparison by turns in one process and prints how they stand: the first call and the median of the later ones.</summary>
/// <remarks>A ratio of one run on one machine; seconds of another machine say nothing here. Both sides must give the same answer before anything is printed.</remarks>
internal static class Ratios
{
    private const int Rounds = 7;

    public static void Print(TextWriter output)
    {
        var sums = new PanelSums();
        Print(output, "sums of 100,000 formulas x 12 lines x 80 nutrients, with coverage", sums.LineByLine, sums.Kit,
            (left, right) => Near(left.Known, right.Known) && Near(left.Covered, right.Covered));
        using var loading = new TableLoading();
        Print(output, "640,000 contents read into a table", loading.AsASheet, loading.AsATable, Near);
    }

    private static void Print<T>(TextWriter output, string job, Func<T> plain, Func<T> kit, Func<T, T, bool> agree)
    {
        List<double> plainMilliseconds = [], kitMilliseconds = [];
        for (var round = 0; round <= Rounds; round++)
        {
            var expected = Timed(plain, plainMilliseconds);
            var found = Timed(kit, kitMilliseconds);
            if (!agree(expected, found)) throw new InvalidOperationException($"{job}: the two sides disagree, {expected} and {found}.");
        }
        var (plainWarm, kitWarm) = (Median(plainMilliseconds.Skip(1)), Median(kitMilliseconds.Skip(1)));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{job}: warm {plainWarm / kitWarm:0.0} times ({plainWarm:0} ms beside {kitWarm:0} ms), first call {plainMilliseconds[0] / kitMilliseconds[0]:0.0} times ({plainMilliseconds[0]:0} ms beside {kitMilliseconds[0]:0} ms)"));
    }

    private static T Timed<T>(Func<T> work, List<double> milliseconds)
    {
        var start = Stopwatch.GetTimestamp();
        var result = work();
        milliseconds.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        return result;
    }

    private static bool Near(double left, double right) => Math.Abs(left - right) <= 1e-9 * Math.Abs(left);

    private static double Median(IEnumerable<double> values) => values.Order().ElementAt(Rounds / 2);
}
