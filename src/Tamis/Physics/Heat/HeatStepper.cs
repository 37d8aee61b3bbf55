namespace Tamis.Physics;

/// <summary>Moves heat through the cells of a piece, step by step.</summary>
internal interface IHeatStepper
{
    /// <summary>Heat content of each cell, J/kg.</summary>
    ReadOnlySpan<double> EnthalpyJPerKg { get; }

    /// <summary>Temperature of each cell, °C.</summary>
    ReadOnlySpan<double> Celsius { get; }

    /// <summary>Mass of each cell, kg; 0 where nothing stands.</summary>
    ReadOnlySpan<double> MassKg { get; }

    /// <summary>Heat that came in through the faces since the start, J; less what left.</summary>
    double HeatInJoules { get; }

    /// <summary>The longest step that this way of stepping bears, s; infinite where any step is stable.</summary>
    double LongestStepSeconds(HeatStage stage);

    /// <summary>Takes steps of one length in one surroundings.</summary>
    void Advance(HeatStage stage, double stepSeconds, int steps);
}
