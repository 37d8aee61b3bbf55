using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Tamis.Statistics.MixedModels;
using Tamis.Statistics.Models;

namespace Tamis.Benchmarks;

/// <summary>A mixed model on 20,000 scores, and the same in R with lme4 and lmerTest by turns, where Rscript and these packages are there.</summary>
/// <remarks>
/// Seconds of fitting alone on both sides: reading, start of the process and loading of packages are not counted. The kit's criterion must not lie
/// more than 1e-6 above R's; where R's search stops earlier, R's is the higher one.
/// </remarks>
internal static class MixedScores
{
    private const int Rounds = 9;

    private static readonly (string Job, bool Whole, string Model, double Goal)[] Jobs =
    [
        ("balanced", true, "score ~ product + (1 | assessor) + (1 | assessor:product)", 100),
        ("unbalanced, nested", false, "score ~ product + (1 | assessor) + (1 | assessor:product)", 50),
        ("unbalanced, nested and crossed", false, "score ~ product + (1 | assessor) + (1 | assessor:product) + (1 | session)", 50),
        ("unbalanced, two large interactions", false, "score ~ product + (1 | assessor) + (1 | assessor:product) + (1 | session) + (1 | assessor:session)", 15),
    ];

    /// <summary>Prints how both sides stand.</summary>
    /// <param name="output">Where to.</param>
    /// <param name="scripts">A folder with lme4_scores.R and lmertest_scores.R, which are run too; null for none.</param>
    public static void Print(TextWriter output, string? scripts)
    {
        var folder = Directory.CreateTempSubdirectory("tamis-scores-").FullName;
        try
        {
            var whole = ScoreData.Whole();
            var part = whole.WithMissing();
            whole.Write(Path.Combine(folder, "scores.csv"));
            part.Write(Path.Combine(folder, "part.csv"));
            foreach (var (job, isWhole, model, goal) in Jobs)
            {
                var (first, warm, fit) = Timed(MixedFormula.Parse(model), (isWhole ? whole : part).Columns());
                output.WriteLine(Line($"{job}, {fit.RowCount} scores: first fit {first:0.0} ms, warm {warm:0.00} ms, criterion {fit.Criterion:0.0000000}"));
                if (Peer(FitScript(Path.Combine(folder, isWhole ? "scores.csv" : "part.csv"), model)) is not { } peer) continue;
                var (seconds, criterion) = (Figure(peer, "fit"), Figure(peer, "criterion"));
                if (fit.Criterion > criterion + 1e-6) throw new InvalidOperationException(Line($"{job}: R found a lower criterion, {criterion:R}, than the kit, {fit.Criterion:R}."));
                output.WriteLine(Line($"    R {seconds:0.000} s, criterion higher by {criterion - fit.Criterion:0.0e0}; {1000 * seconds / warm:0} times warm (goal {goal}), {1000 * seconds / first:0} times at the first call"));
            }
            PrintTests(output, whole, folder, scripts);
            if (scripts is not null) output.WriteLine($"    lme4_scores.R: {Run("Rscript", [Path.Combine(scripts, "lme4_scores.R"), folder])?.Trim()}");
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void PrintTests(TextWriter output, ScoreData whole, string folder, string? scripts)
    {
        var (formula, data) = (MixedFormula.Parse(Jobs[0].Model), whole.Columns());
        List<double> milliseconds = [];
        (double F, double Degrees, int Pairs, int Below) figures = default;
        for (var round = 0; round <= Rounds; round++)
        {
            var start = Stopwatch.GetTimestamp();
            var fit = MixedModel.Fit(formula, data).Required;
            var pairs = fit.PairwiseDifferences("product");
            figures = (fit.Tests[0].F, fit.Tests[0].DenominatorDegrees, pairs.Count, pairs.Count(pair => pair.AdjustedP < 0.05));
            milliseconds.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }
        var warm = milliseconds.Skip(1).Order().ElementAt(Rounds / 2);
        output.WriteLine(Line($"fit, F test and {figures.Pairs} adjusted differences: first {milliseconds[0]:0} ms, warm {warm:0.0} ms; F {figures.F:0.0000}, {figures.Degrees:0.000} degrees of freedom, {figures.Below} below 5 %"));
        if (scripts is null || Run("Rscript", [Path.Combine(scripts, "lmertest_scores.R"), folder]) is not { } text) return;
        output.WriteLine(Line($"    lmertest_scores.R: {text.Trim()}"));
        output.WriteLine(Line($"    {1000 * Figure(text, "total") / warm:0} times warm, {1000 * Figure(text, "total") / milliseconds[0]:0} times at the first call"));
    }

    private static (double First, double Warm, MixedFit Fit) Timed(MixedFormula formula, ModelData data)
    {
        MixedFit? fit = null;
        List<double> milliseconds = [];
        for (var round = 0; round <= Rounds; round++)
        {
            var start = Stopwatch.GetTimestamp();
            fit = MixedModel.Fit(formula, data).Required;
            milliseconds.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }
        return (milliseconds[0], milliseconds.Skip(1).Order().ElementAt(Rounds / 2), fit!);
    }

    // The median of three fits in one session.
    private static string FitScript(string file, string model) =>
        $"suppressPackageStartupMessages(library(lme4)); s <- read.csv('{file}', stringsAsFactors = TRUE); s$session <- factor(s$session); "
        + $"t <- sapply(1:3, function(i) system.time(m <<- suppressWarnings(lmer({model}, s)))[['elapsed']]); cat(sprintf('\"fit\": %.4f, \"criterion\": %.8f', median(t), REMLcrit(m)))";

    private static string? Peer(string script) => Run("Rscript", ["-e", script]);

    private static string? Run(string program, IEnumerable<string> arguments)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
            var errors = process.StandardError.ReadToEndAsync();
            var text = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0 ? text : throw new InvalidOperationException($"{program} ended with {process.ExitCode}: {errors.Result}");
        }
        catch (System.ComponentModel.Win32Exception)
        {
            // Nothing to compare with on this machine; the kit's own figures are printed all the same.
            return null;
        }
    }

    private static double Figure(string text, string name) => double.Parse(Regex.Match(text, $"\"{name}\": ([-0-9.]+)").Groups[1].Value, CultureInfo.InvariantCulture);

    private static string Line(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
