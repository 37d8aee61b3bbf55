using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>What a preparation usually loses in the oven.</summary>
/// <param name="Preparation">Bread dough, sponge, choux …</param>
/// <param name="LossPercent">The usual loss, % of the mass before.</param>
/// <param name="MoisturePercent">Water in it afterwards, %.</param>
/// <param name="Source">Where the range comes from.</param>
public sealed record UsualLoss(string Preparation, Interval LossPercent, Interval MoisturePercent, Source Source);

/// <summary>What leaves in the oven: the loss, its course, and what it makes of the rest.</summary>
public static class BakingLoss
{
    private static readonly Lazy<IReadOnlyList<UsualLoss>> Shipped = new(() => ReadUsual(PhysicsData.Kit.Table("baking-losses.csv")));

    /// <summary>The usual losses that the kit ships.</summary>
    public static IReadOnlyList<UsualLoss> Usual => Shipped.Value;

    /// <summary>The loss, % of the mass before.</summary>
    public static Predicted Percent(Given before, Given after) => CheckedPrediction.Of("bake_loss_percent", [before.In("mass before", "g"), after.In("mass after", "g")],
        x => (x[0] - x[1]) / x[0] * 100, x => x[0] > 0 ? x[1] <= x[0] ? null : $"a mass after the oven of no more than before ({after.Source})" : $"a mass before the oven above 0 g ({before.Source})");

    /// <summary>Water that is left after some time, g: first-order drying towards an equilibrium.</summary>
    public static Predicted WaterAfter(Given water, Given equilibriumWater, Given ratePerMinute, Given minutes) => CheckedPrediction.Of("water_after_drying",
        [water.In("water", "g"), equilibriumWater.In("water at equilibrium", "g"), ratePerMinute.In("drying rate", "1/min"), minutes.In("time", "min")], x => x[1] + (x[0] - x[1]) * Math.Exp(-x[2] * x[3]),
        x => x[1] <= x[0] ? null : "no more water at equilibrium than at the start");

    /// <summary>The drying rate from the water at two times, per minute.</summary>
    public static Predicted Rate(Given water1, Given water2, Given equilibriumWater, Given minutesBetween) => CheckedPrediction.Of("drying_rate",
        [water1.In("water first", "g"), water2.In("water later", "g"), equilibriumWater.In("water at equilibrium", "g"), minutesBetween.In("time between", "min")], x => Math.Log((x[0] - x[2]) / (x[1] - x[2])) / x[3],
        x => x[0] >= x[1] && x[1] > x[2] && x[3] > 0 ? null : "water that falls towards the equilibrium and does not reach it, over some minutes");

    /// <summary>Water in the baked mass, %.</summary>
    /// <param name="waterPercent">Water before, %.</param>
    /// <param name="lossPercent">The loss, all of it water, % of the mass before.</param>
    public static Predicted WaterPercentAfter(Given waterPercent, Given lossPercent) => CheckedPrediction.Of("water_after_loss",
        [waterPercent.In("water", "%"), lossPercent.In("loss", "%")], x => (x[0] - x[1]) / (100 - x[1]) * 100, x => MoreThanThere(x[1], x[0], lossPercent));

    /// <summary>Anything but water in the baked mass, %: it grows as water leaves.</summary>
    /// <param name="contentPercent">The content before, %.</param>
    /// <param name="lossPercent">The loss, all of it water, % of the mass before.</param>
    /// <param name="waterPercent">Water before, %.</param>
    public static Predicted ContentPercentAfter(Given contentPercent, Given lossPercent, Given waterPercent) => CheckedPrediction.Of("content_after_loss",
        [contentPercent.In("content", "%"), lossPercent.In("loss", "%"), waterPercent.In("water", "%")], x => x[0] / (100 - x[1]) * 100,
        x => MoreThanThere(x[1], x[2], lossPercent) ?? (x[0] + x[2] <= 100 + 1e-9 ? null : $"a content that leaves room for the water ({contentPercent.Source})"));

    /// <summary>Reads usual losses.</summary>
    /// <exception cref="TableException">A cell cannot be read; all are named.</exception>
    public static IReadOnlyList<UsualLoss> ReadUsual(Sheet sheet)
    {
        List<CellProblem> problems = [];
        List<UsualLoss> all = [];
        foreach (var row in sheet.Rows)
        {
            var reader = new RowReader(row, problems);
            var loss = reader.RequiredRange("loss_low_percent", "loss_high_percent", 0, 100);
            all.Add(new(reader.Required("preparation"), loss, reader.RequiredRange("moisture_low_percent", "moisture_high_percent", 0, 100), PhysicsData.SourceOf(row, problems)));
        }
        return problems.Count == 0 ? all : throw new TableException(problems);
    }

    private static string? MoreThanThere(double loss, double water, Given lossPercent) =>
        loss <= water && loss < 100 ? null : $"a loss of no more than the water there is ({lossPercent.Source})";
}
