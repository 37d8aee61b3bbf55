using Tamis.Tasting;

namespace Tamis.Tests.Tasting;

/// <summary>A panel whose truth is known: mark = 5 + assessor + trial + noise, all normal, from a stated seed.</summary>
internal static class SimulatedPanel
{
    public static readonly SensoryAttribute Liking = new("liking", AttributeKind.Liking) { LowPoints = -100, HighPoints = 100 };

    /// <summary>A log of one tasting, S1; the trials that an assessor is served are those for which <paramref name="served"/> says so.</summary>
    public static TastingLog Log(int assessors, double[] trialPoints, double assessorSpread, double noise, int seed, Func<int, int, bool>? served = null)
    {
        var random = new Random(seed);
        List<Score> scores = [];
        for (var assessor = 0; assessor < assessors; assessor++)
        {
            var level = assessorSpread * Normal();
            for (var trial = 0; trial < trialPoints.Length; trial++)
            {
                var points = 5 + level + trialPoints[trial] + noise * Normal();
                if (served?.Invoke(assessor, trial) ?? true) scores.Add(Score("S1", $"A{assessor:00}", $"T{trial}", points));
            }
        }
        return Log(scores, new TastingSession("S1"));

        // Box and Muller (1958).
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
    }

    public static TastingLog Log(IReadOnlyList<Score> scores, params TastingSession[] sessions)
    {
        Serving[] servings = [.. scores.Select(score => score.Serving).Distinct()];
        return new() { Attributes = [Liking], Sessions = sessions, Servings = servings, Tasted = servings, Scores = scores };
    }

    public static Score Score(string tasting, string assessor, string trial, double points, string code = "", int? make = null) =>
        new(new(tasting, assessor, code.Length > 0 ? code : trial, trial, Origin) { Make = make }, Liking, points, Origin);

    private static Source Origin { get; } = new("simulated", Evidence.Estimate);
}
