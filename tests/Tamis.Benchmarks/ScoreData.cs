using System.Globalization;
using Tamis.Statistics.Models;

namespace Tamis.Benchmarks;

/// <summary>20,000 scores from a fixed seed: 100 assessors × 20 products × 10 sessions, whole or with about a third missing.</summary>
internal sealed class ScoreData
{
    private readonly List<(string Assessor, string Product, string Session, double Score)> _scores;

    private ScoreData(List<(string Assessor, string Product, string Session, double Score)> scores) => _scores = scores;

    public int Count => _scores.Count;

    public static ScoreData Whole()
    {
        var random = new Random(20260926);
        double[] products = Draws(20, 0.6), assessors = Draws(100, 0.9), sessions = Draws(10, 0.3);
        List<(string, string, string, double)> scores = [];
        for (var a = 0; a < assessors.Length; a++)
        {
            var days = Draws(10, 0.25);
            for (var p = 0; p < products.Length; p++)
            {
                var own = Normal(random) * 0.5;
                for (var s = 0; s < sessions.Length; s++)
                    scores.Add((Text($"A{a:000}"), Text($"P{p:00}"), Text($"{s + 1}"),
                        Math.Round(Math.Clamp(6 + products[p] + assessors[a] + own + sessions[s] + days[s] + 1.1 * Normal(random), 0, 12), 2)));
            }
        }
        return new(scores);

        double[] Draws(int count, double deviation) => [.. Enumerable.Range(0, count).Select(_ => deviation * Normal(random))];
    }

    public ScoreData WithMissing()
    {
        var random = new Random(7);
        return new([.. _scores.Where(_ => random.NextDouble() < 0.69)]);
    }

    public ModelData Columns() => ModelData.Empty
        .WithNumbers("score", [.. _scores.Select(one => one.Score)])
        .WithFactor("assessor", [.. _scores.Select(one => one.Assessor)])
        .WithFactor("product", [.. _scores.Select(one => one.Product)])
        .WithFactor("session", [.. _scores.Select(one => one.Session)]);

    public void Write(string path) => File.WriteAllLines(path, _scores.Select(one => Text($"{one.Assessor},{one.Product},{one.Session},{one.Score}")).Prepend("assessor,product,session,score"));

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
