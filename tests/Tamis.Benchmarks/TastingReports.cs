using System.Diagnostics;
using System.Globalization;
using Tamis.Tasting;

namespace Tamis.Benchmarks;

/// <summary>Everything that is worked out of one tasting of 12 assessors, 6 trials and 15 attributes: how long it takes, the first time and later.</summary>
internal static class TastingReports
{
    private const int Rounds = 5, Assessors = 12, Trials = 6, Intensities = 11;

    public static void Print(TextWriter output)
    {
        var log = Log();
        List<double> times = [];
        var figures = 0;
        for (var round = 0; round < Rounds; round++)
        {
            var clock = Stopwatch.StartNew();
            figures = Report(log);
            times.Add(clock.Elapsed.TotalMilliseconds);
        }
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"a report of {Assessors} assessors, {Trials} trials, {log.Attributes.Count} attributes ({figures} pairs, words and people): first {times[0]:0} ms, later {times[1..].Order().ElementAt(Rounds / 2 - 1):0} ms (aim: under 2 s)"));
    }

    // Scales, order alone, penalties, ticked words, maps, assessors, the tree over all: what the page of tastings shows.
    private static int Report(TastingLog log)
    {
        var (session, policy) = (log.Sessions[0], TastingPolicy.Kit);
        var report = TastingReport.Of(log, session);
        var orders = log.Attributes.Where(OrderModel.IsFor).Select(attribute => OrderModel.Of(log, session, attribute, policy)).ToArray();
        var penalties = Penalty.Of(log, session, policy);
        var ticks = TickTest.Of(log, session, log.Attributes.Single(attribute => attribute.Kind == AttributeKind.Words));
        var map = TrialMap.Of(log, session) ?? throw new InvalidOperationException("No map could be drawn.");
        var people = AssessorRecord.Of(log);
        var tree = log.Attributes.Where(attribute => attribute.IsScale).Select(attribute => TreeModel.Of(log, attribute)).Count(model => model.WhyNot.Length == 0);
        return report.Scales.Sum(scale => scale.Pairs.Count) + orders.Sum(order => order.Pairs.Count) + penalties.Count + ticks.Count + map.Trials.Count + people.Count + tree;
    }

    private static TastingLog Log()
    {
        Random random = new(20261125);
        SensoryAttribute[] attributes = [new("liking", AttributeKind.Liking) { HighPoints = 10 }, .. Enumerable.Range(1, Intensities).Select(at => new SensoryAttribute($"scale {at}", AttributeKind.Intensity) { HighPoints = 10 }),
            .. Enumerable.Range(1, 2).Select(at => new SensoryAttribute($"right {at}", AttributeKind.JustRight) { LowPoints = 1, HighPoints = 5 }), new("terms", AttributeKind.Words) { Words = ["nutty", "jammy", "sharp", "creamy", "woody", "toasted"] }];
        List<Serving> servings = [];
        List<Score> scores = [];
        List<Ticks> ticks = [];
        Source origin = new("drawn", Evidence.Estimate);
        for (var assessor = 0; assessor < Assessors; assessor++)
            for (var trial = 0; trial < Trials; trial++)
            {
                Serving serving = new("S1", $"A{assessor:00}", $"{101 + trial}", $"T{trial}", origin) { Position = (assessor + trial) % Trials + 1, Make = 1 };
                servings.Add(serving);
                foreach (var attribute in attributes)
                    if (attribute.Kind == AttributeKind.Words) ticks.Add(new(serving, attribute, [.. attribute.Words.Where(_ => random.Next(3) == 0)], origin));
                    else if (attribute.Kind == AttributeKind.JustRight) scores.Add(new(serving, attribute, 1 + random.Next(5), origin));
                    else scores.Add(new(serving, attribute, Math.Round(Math.Clamp(3 + trial * 0.3 + assessor % 4 + 3 * random.NextDouble(), 0, 10), 1), origin));
            }
        return new() { Attributes = attributes, Sessions = [new("S1") { Control = "T0", Seed = 1 }], Servings = servings, Tasted = servings, Scores = scores, Ticks = ticks };
    }
}
