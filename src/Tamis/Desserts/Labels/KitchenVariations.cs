using System.Globalization;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>How a kitchen varies: as <c>dessert.csv</c> states it, and for drying, where it does not, from yields weighed in several makes.</summary>
public static class KitchenVariations
{
    private const string Weighing = "weighing_g", Drying = "drying_percent", PieceDrying = "piece_drying_percent", LeftBehind = "left_behind_percent", Analysis = "analysis_percent";

    /// <summary>The keys of <c>dessert.csv</c> by which a kitchen states how it varies.</summary>
    public static IReadOnlyList<string> Keys { get; } = [Weighing, Drying, PieceDrying, LeftBehind, Analysis];

    /// <summary>How the kitchen varies in a trial.</summary>
    /// <exception cref="TableException">A figure is no number of 0 or more; every one is named.</exception>
    public static KitchenVariation Of(Dessert dessert, string trial)
    {
        List<CellProblem> problems = [];
        List<string> origins = [];
        var (weighing, drying, piece, left, analysis) = (Stated(Weighing), Stated(Drying), Stated(PieceDrying), Stated(LeftBehind), Stated(Analysis));
        if (drying is null && OfYields(dessert, trial) is var (percent, words)) (drying, origins) = (percent, [.. origins, words]);
        return problems is []
            ? new KitchenVariation(weighing ?? 0, drying ?? 0, left ?? 0) { PieceWaterPercent = piece ?? 0, MeasurementPercent = analysis ?? 0, Origins = origins }
            : throw new TableException(problems);

        double? Stated(string key)
        {
            if (dessert.Facts.Number(key, trial) is not { } number)
            {
                problems.AddRange(dessert.Facts.RowsOf(key, trial).Where(row => row.Value.Length > 0).Select(row => row.Row.Problem("value", "a number of 0 or more")));
                return null;
            }
            origins.Add(string.Create(CultureInfo.InvariantCulture, $"{key} {number:0.###} ({dessert.Facts.OriginOf(key, trial)})"));
            return number;
        }
    }

    // Two makes of a component that weigh differently in the end dried differently: what else left is in the formula. The spread of all its makes, over the water that left by the formula.
    private static (double Percent, string Words)? OfYields(Dessert dessert, string trial)
    {
        var batch = dessert.Trial(trial);
        double variance = 0, water = 0;
        List<string> names = [];
        foreach (var component in batch.Components)
        {
            double[] yields = [.. dessert.Measured.Where(measured => Names.Same(measured.Trial, batch.Trial) && Names.Same(measured.Component, component.Name) && Names.Same(measured.What, "yield") && measured.Unit == "g" && measured.Value > 0)
                .GroupBy(measured => measured.Make).Select(make => make.Average(measured => measured.Value))];
            if (yields.Length < 2 || !(component.Out.WaterLostGrams > 0)) continue;
            var mean = yields.Average();
            variance += yields.Sum(grams => (grams - mean) * (grams - mean)) / (yields.Length - 1);
            water += component.Out.WaterLostGrams;
            names.Add($"{component.Name}, {yields.Length} makes");
        }
        return names.Count == 0 ? null : (Math.Sqrt(variance) / water * 100, string.Create(CultureInfo.InvariantCulture, $"drying {Math.Sqrt(variance) / water * 100:0.#} %, from the weighed yields of {string.Join("; ", names)} (measured.csv)"));
    }
}
