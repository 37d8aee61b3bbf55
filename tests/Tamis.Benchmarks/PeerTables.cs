using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Text.Json;
using Tamis.Composition;
using Tamis.Statistics.Uncertainty;

namespace Tamis.Benchmarks;

/// <summary>Tables, panels and draws beside scripts of pandas, SciPy and NumPy, on the inputs that their own script writes, with the same checksums.</summary>
internal static class PeerTables
{
    // Four mixtures: their sums stay in the nearest cache.
    private const int Block = 4, Draws = 100_000, Rounds = 5, Again = 4;

    private const string AgainKey = " again";

    public static void Print(TextWriter output, string peers)
    {
        var inputs = Directory.CreateTempSubdirectory("tamis-peers-").FullName;
        Python(peers, "make_inputs.py", inputs);
        List<Dictionary<string, double>> theirs = [], ours = [];
        // Room for 400 MB of draws, which stays: its going would be collected while something else is measured.
        DrawnColumns? room = null;
        for (var round = 0; round <= Rounds; round++)
        {
            using var panels = JsonDocument.Parse(Python(peers, "pandas_panels.py", inputs));
            using var draws = JsonDocument.Parse(Python(peers, "numpy_montecarlo.py", inputs));
            theirs.Add(Seconds(panels.RootElement).Concat(Seconds(draws.RootElement)).Where(pair => pair.Key is not "total" and not "read").ToDictionary(pair => pair.Key, pair => pair.Value * 1000));
            theirs[^1]["whole"] = Seconds(panels.RootElement)["total"] * 1000;
            ours.Add(Ours(inputs, panels.RootElement.GetProperty("checksum"), draws.RootElement.GetProperty("checksum_agree_within_sampling_error"), ref room));
        }
        foreach (var (job, peer, mine, bound) in ((string, string[], string, string)[])
        [
            ("640,000 values read and pivoted", ["read_composition", "pivot"], "read", "bound by parsing numbers and finding keys; tokenising alone is an eighth of it"),
            ("panels of 100,000 formulas x 12 x 80 with coverage, one thread", ["panels"], "panels1", "bound by reading table rows from cache, 3.8 kB a formula as whole numbers, and by two steps a vector where all is known, four where not"),
            ("the same, two threads", ["panels"], "panels2", "the same bound, twice the caches"),
            ("the whole script, two threads", ["whole"], "whole", "bound by reading the formulas: 1,200,000 rows"),
            ("100,000 draws x 492 quantities, one thread", ["draw_and_mix"], "draw1", "bound by arithmetic: logarithm, root, sine and exponential of each normal pair"),
            ("the same, two threads", ["draw_and_mix"], "draw2", "the same bound, divided by the cores"),
            ("three percentiles of 40 x 100,000, one thread", ["percentiles"], "percentiles1", "bound by two passes over the draws, one of them counting into buckets"),
            ("the same, two threads", ["percentiles"], "percentiles2", "the same bound, divided by the cores"),
        ])
        {
            double[] their = [.. theirs.Select(round => peer.Sum(phase => round[phase]))];
            double[] our = [.. ours.Select(round => round[mine])];
            var warm = Median(our[1..]);
            // The first call in a round is a step of a whole run, between others; those after it find everything where they left it.
            var (again, first) = ours[0].ContainsKey(mine + AgainKey) ? (Median([.. ours.Skip(1).Select(round => round[mine + AgainKey])]), Text($"; {Median(their) / warm:0.0} times, {warm:0} ms, as one step of a whole run")) : (warm, "");
            output.WriteLine(Text($"{job}: warm {Median(their) / again:0.0} times ({Median(their):0} ms beside {again:0} ms{first}), cold {Median(their) / our[0]:0.0} times ({our[0]:0} ms); {bound}"));
        }
        Sizes(output, inputs);
        Directory.Delete(inputs, recursive: true);
    }

    private static Dictionary<string, double> Ours(string inputs, JsonElement panelSums, JsonElement drawSums, ref DrawnColumns? room)
    {
        Dictionary<string, double> milliseconds = [];
        var start = Stopwatch.GetTimestamp();
        var composition = Path.Combine(inputs, "composition.csv");
        var table = Timed(milliseconds, "read", () => PlainContents.Read(composition));
        var lines = table.ReadLines(Path.Combine(inputs, "formulas.csv"));
        var two = Timed(milliseconds, "panels2", () => Panels(table, lines, 2));
        milliseconds["whole"] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        TimedAgain(milliseconds, "read", () => PlainContents.Read(composition));
        TimedAgain(milliseconds, "panels2", () => Panels(table, lines, 2));
        var one = Timed(milliseconds, "panels1", () => Panels(table, lines, 1));
        TimedAgain(milliseconds, "panels1", () => Panels(table, lines, 1));
        foreach (var sum in (double[])[one, two]) Agree("panels", panelSums.GetProperty("sum").GetDouble(), sum, 1e-9);

        var means = Means(inputs);
        var before = room;
        var drawn = room = Timed(milliseconds, "draw1", () => means.Draw(Draws, seed: 7, threads: 1, before));
        var hash = Hash(drawn);
        drawn = Timed(milliseconds, "draw2", () => means.Draw(Draws, seed: 7, threads: 2, drawn));
        if (Hash(drawn) != hash) throw new InvalidOperationException("Two threads drew other numbers than one.");
        double[] shares = [0.025, 0.5, 0.975];
        var percentiles = Timed(milliseconds, "percentiles1", () => drawn.Quantiles(shares, threads: 1));
        Timed(milliseconds, "percentiles2", () => drawn.Quantiles(shares, threads: 2));
        Agree("means", drawSums.GetProperty("sum_of_means").GetDouble(), Enumerable.Range(0, drawn.Columns).Sum(column => drawn[column].Mean), 0.001);
        Agree("deviations", drawSums.GetProperty("sum_of_sds").GetDouble(), Enumerable.Range(0, drawn.Columns).Sum(column => drawn[column].StandardDeviation), 0.01);
        Agree("low percentiles", drawSums.GetProperty("sum_p2.5").GetDouble(), percentiles.Sum(column => column[0]), 0.01);
        Agree("high percentiles", drawSums.GetProperty("sum_p97.5").GetDouble(), percentiles.Sum(column => column[2]), 0.01);
        return milliseconds;
    }

    // Per 100 g and coverage of every formula and nutrient, a block at a time through room that stays; the sum of all figures. Each core has formulas that lie together, so that the next ones are its own.
    private static double Panels(PlainContents table, FormulaLines lines, int threads)
    {
        var sums = new double[threads];
        var stride = table.Matrix.Stride;
        Parallel.For(0, threads, new ParallelOptions { MaxDegreeOfParallelism = threads }, thread =>
        {
            double[] known = new double[Block * stride], covered = new double[Block * stride], totals = new double[Block];
            var (end, sum) = ((int)((long)lines.Count * (thread + 1) / threads), 0.0);
            for (var first = (int)((long)lines.Count * thread / threads); first < end; first += Block)
            {
                var count = Math.Min(Block, end - first);
                MixtureSums.SumMany(table.Matrix, lines.Starts.AsSpan(first, count + 1), lines.Rows, lines.MassGrams, known, covered, totals.AsSpan(0, count));
                sum += SumOf(known, totals.AsSpan(0, count), stride, table.Matrix.Columns);
            }
            sums[thread] = sum;
        });
        return sums.Sum();
    }

    // The script's figures are per gram of formula times the content in 100 g. Two sums side by side: one alone would wait for each addition in turn.
    private static double SumOf(ReadOnlySpan<double> known, ReadOnlySpan<double> totalGrams, int stride, int columns)
    {
        Vector512<double> first = default, second = default;
        var rest = 0.0;
        for (var formula = 0; formula < totalGrams.Length; formula++)
        {
            var factor = 100 / totalGrams[formula];
            var each = Vector512.Create(factor);
            var amounts = known.Slice(formula * stride, columns);
            var vectors = MemoryMarshal.Cast<double, Vector512<double>>(amounts);
            for (var at = 0; at + 1 < vectors.Length; at += 2)
            {
                first = Vector512.FusedMultiplyAdd(vectors[at], each, first);
                second = Vector512.FusedMultiplyAdd(vectors[at + 1], each, second);
            }
            foreach (var amount in amounts[(vectors.Length / 2 * 2 * Vector512<double>.Count)..]) rest += amount * factor;
        }
        return Vector512.Sum(first + second) + rest;
    }

    private static WeightedMeans Means(string inputs)
    {
        var masses = File.ReadLines(Path.Combine(inputs, "mc_masses.csv")).Skip(1).Select(line => line.Split(',')).Select(cells => new UncertainNumber(Number(cells[1]), Number(cells[2])));
        var values = File.ReadLines(Path.Combine(inputs, "mc_values.csv")).Skip(1).Select(line => line.Split(',')).Select(cells => new UncertainNumber(Number(cells[3]), Number(cells[4]), cells[2] == "lognormal" ? DrawShape.Lognormal : DrawShape.Normal));
        return new([.. masses], [.. values]);
    }

    // Cost against size: time a formula, and a draw, as the number of them grows.
    private static void Sizes(TextWriter output, string inputs)
    {
        var table = PlainContents.Read(Path.Combine(inputs, "composition.csv"));
        var lines = table.ReadLines(Path.Combine(inputs, "formulas.csv"));
        var means = Means(inputs);
        output.WriteLine("cost against size, one thread:");
        foreach (var size in (int[])[1_000, 10_000, 100_000])
        {
            var some = lines with { Starts = lines.Starts[..(size + 1)] };
            DrawnColumns? room = null;
            var panel = Enumerable.Range(0, 4).Min(_ => Timed(() => Panels(table, some, 1)));
            var draw = Enumerable.Range(0, 4).Min(_ => Timed(() => room = means.Draw(size, seed: 7, threads: 1, room)));
            output.WriteLine(Text($"  {size,7:N0}: panels {panel:0.00} ms, {panel / size * 1e6:0} ns a formula {Bar(panel / size * 1e6 / 20)}; draws {draw:0.00} ms, {draw / size * 1e6:0} ns a draw {Bar(draw / size * 1e6 / 100)}"));
        }
    }

    private static string Bar(double length) => new('#', Math.Clamp((int)length, 1, 60));

    private static ulong Hash(DrawnColumns drawn)
    {
        var hash = 14695981039346656037UL;
        for (var column = 0; column < drawn.Columns; column++)
            foreach (var value in drawn[column].Draws) hash = (hash ^ (ulong)BitConverter.DoubleToInt64Bits(value)) * 1099511628211UL;
        return hash;
    }

    private static string Python(string peers, string script, string inputs)
    {
        using var process = Process.Start(new ProcessStartInfo("python3", [Path.Combine(peers, script), inputs]) { RedirectStandardOutput = true }) ?? throw new InvalidOperationException("python3 cannot be started.");
        var printed = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0 ? printed : throw new InvalidOperationException($"{script} failed; the python3 that is found first needs NumPy, SciPy and pandas.");
    }

    private static Dictionary<string, double> Seconds(JsonElement root) => root.GetProperty("seconds").EnumerateObject().ToDictionary(phase => phase.Name, phase => phase.Value.GetDouble());

    private static void Agree(string what, double expected, double found, double relative)
    {
        if (Math.Abs(found - expected) > relative * Math.Abs(expected)) throw new InvalidOperationException(Text($"{what}: the two sides disagree, {expected} and {found}."));
    }

    private static T Timed<T>(Dictionary<string, double> milliseconds, string job, Func<T> work)
    {
        var start = Stopwatch.GetTimestamp();
        var result = work();
        milliseconds[job] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        return result;
    }

    private static void TimedAgain<T>(Dictionary<string, double> milliseconds, string job, Func<T> work) =>
        milliseconds[job + AgainKey] = Median([.. Enumerable.Range(0, Again).Select(_ => Timed(work))]);

    private static double Timed<T>(Func<T> work)
    {
        var start = Stopwatch.GetTimestamp();
        work();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    private static double Median(IReadOnlyCollection<double> values) => values.Order().ElementAt(values.Count / 2);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
