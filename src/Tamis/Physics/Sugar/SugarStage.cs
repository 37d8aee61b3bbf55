using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>A stage of cooked sugar: plain sucrose and water at sea level.</summary>
/// <param name="Name">Its name, <c>soft ball</c>.</param>
/// <param name="Celsius">From when to when it lasts, in °C.</param>
/// <param name="SucrosePercent">About how strong the syrup is, per cent by mass.</param>
/// <param name="Use">What it is for.</param>
/// <param name="Source">Who says so.</param>
public sealed record SugarStage(string Name, Interval Celsius, double SucrosePercent, string Use, Source Source)
{
    private static readonly Lazy<IReadOnlyList<SugarStage>> Shipped = new(() => ReadAll(PhysicsData.Kit));

    /// <summary>What must stand beside hot sugar.</summary>
    public const string Caution = "Hot sugar burns deeply and sticks: long sleeves, cold water beside the pan, nobody else near, and no water into caramel without stepping back.";

    /// <summary>The kit's own stages, coolest first: <c>sugar-stages.csv</c>.</summary>
    public static IReadOnlyList<SugarStage> Kit => Shipped.Value;

    /// <summary>The stages of a temperature read on the thermometer at an altitude; none between two stages.</summary>
    public static IReadOnlyList<SugarStage> At(double celsius, double altitudeMetres = 0)
    {
        var atSeaLevel = Temperature.Require(celsius, nameof(celsius)) - AirPressure.StageShift(altitudeMetres).Value;
        return [.. Kit.Where(stage => stage.Celsius.Contains(atSeaLevel))];
    }

    /// <summary>What the thermometer reads at this stage at an altitude, in °C.</summary>
    public Interval CelsiusAt(double altitudeMetres)
    {
        var shift = AirPressure.StageShift(altitudeMetres).Value;
        return Interval.Between(Celsius.Low + shift, Celsius.High + shift);
    }

    /// <summary>Reads the stages of a physics folder.</summary>
    /// <exception cref="TableException">Something in it must be mended.</exception>
    public static IReadOnlyList<SugarStage> ReadAll(PhysicsData data)
    {
        List<CellProblem> problems = [];
        List<SugarStage> stages = [];
        foreach (var row in data.Table("sugar-stages.csv").Rows)
        {
            var reader = new RowReader(row, problems);
            var (low, high) = (reader.RequiredNumber("low_c", 0, 300), reader.RequiredNumber("high_c", 0, 300));
            if (low > high) reader.Note("high_c", "at least the number under low_c");
            if (low <= high) stages.Add(new(reader.Required("stage"), Interval.Between(low, high), reader.RequiredNumber("sucrose_percent", 0, 100), row["use"], PhysicsData.SourceOf(row, problems)));
        }
        return problems.Count == 0 ? [.. stages.OrderBy(stage => stage.Celsius.Low)] : throw new TableException(problems);
    }
}
