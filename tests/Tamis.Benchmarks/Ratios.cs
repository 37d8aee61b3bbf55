using System.Diagnostics;
using System.Globalization;

namespace Tamis.Benchmarks;

/// <summary>Runs both sides of each comparison by turns in one process and prints how they stand: the first call and the median of the later ones.</summary>
/// <remarks>A ratio of one run on one machine; seconds of another machine say nothing here. Both sides must give the same answer before anything is printed.</remarks>
internal static class Ratios
{
    private const int Rounds = 7;

    /// <summary>All comparisons.</summary>
    /// <param name="output">Where they are printed.</param>
    /// <param name="peers">A folder of scripts that do the same jobs with other tools; null where there is none.</param>
    public static void Print(TextWriter output, string? peers = null)
    {
        // First, while nothing of the march has run yet: its first call is cold.
        var slab = new SlabFreezing();
        if (peers is not null) PrintFreezing(output, slab, peers);
        else Print(output, "slab of 200 cells frozen, 50,000 explicit steps beside 750 implicit ones", slab.Explicit, slab.Implicit, (left, right) => Math.Abs(left - right) < 0.03);
        var sums = new PanelSums();
        Print(output, "sums of 100,000 formulas x 12 lines x 80 nutrients, with coverage", sums.LineByLine, sums.Kit,
            (left, right) => Near(left.Known, right.Known) && Near(left.Covered, right.Covered));
        using var loading = new TableLoading();
        Print(output, "640,000 contents read into a table", loading.AsASheet, loading.AsATable, Near);
    }

    // The script times its own march, so that no start of Python counts.
    private static void PrintFreezing(TextWriter output, SlabFreezing slab, string peers)
    {
        using var script = new NumPySlab(peers);
        foreach (var (job, march, within) in ((string, Func<double>, double)[])[("explicit", slab.Explicit, 5e-7), ("implicit, steps of 1 s", slab.Implicit, 0.03)])
        {
            List<double> theirs = [], ours = [];
            for (var round = 0; round <= Rounds; round++)
            {
                var (expected, milliseconds) = script.Run();
                theirs.Add(milliseconds);
                var found = Timed(march, ours);
                if (Math.Abs(found - expected) > within) throw new InvalidOperationException($"{job}: the two sides disagree, {expected} and {found}.");
            }
            Line(output, $"slab of 200 cells frozen, {job}, beside 50,000 steps of the same scheme in NumPy", theirs, ours);
        }
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
        Line(output, job, plainMilliseconds, kitMilliseconds);
    }

    private static void Line(TextWriter output, string job, List<double> plainMilliseconds, List<double> kitMilliseconds)
    {
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
