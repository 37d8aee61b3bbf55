namespace Tamis.Labels;

/// <summary>How a kitchen varies from one make to the next, and a laboratory from one result to the next. What nobody stated is 0 and counts as exact.</summary>
/// <param name="WeighingGrams">The standard uncertainty of each line as weighed into the batch, in grams.</param>
/// <param name="WaterLossPercent">The standard deviation, from make to make, of the water that leaves, in per cent of it.</param>
/// <param name="LeftBehindPercent">The standard deviation of what trim and bowl take of each line, in per cent of the line.</param>
public sealed record KitchenVariation(double WeighingGrams = 0, double WaterLossPercent = 0, double LeftBehindPercent = 0)
{
    /// <summary>The standard deviation of the water that leaves from piece to piece of one make, in per cent of it: what a sample of several packs averages out.</summary>
    public double PieceWaterPercent { get; init; }

    /// <summary>The standard uncertainty of a laboratory's result, in per cent of it.</summary>
    public double MeasurementPercent { get; init; }

    /// <summary>Where each figure came from, in words; empty where nothing was stated.</summary>
    public IReadOnlyList<string> Origins { get; init; } = [];

    /// <summary>Whether anything of the kitchen was stated.</summary>
    public bool IsStated => WeighingGrams > 0 || WaterLossPercent > 0 || LeftBehindPercent > 0 || PieceWaterPercent > 0;

    /// <summary>The water that leaves a sample of so many packs of one make: its standard deviation in per cent.</summary>
    internal double WaterPercentOf(int packs) => Math.Sqrt(WaterLossPercent * WaterLossPercent + PieceWaterPercent * PieceWaterPercent / packs);
}
