namespace Tamis.Physics;

/// <summary>Marches heat through a round piece in long explicit steps of many stages (Runge–Kutta–Legendre, second order in the step).</summary>
/// <remarks>Meyer, Balsara and Aslam 2014: s stages bear a step of (s² + s − 2)/4 times the plain explicit one. Every stage moves heat from cell to cell, so none is lost. One thread, the same order of sums: the same digits wherever it runs.</remarks>
internal sealed class PieceStepper : IHeatStepper
{
    public const double UsualStepSeconds = 10;

    private const int FewestStages = 3, MostStages = 61;
    private readonly PieceCells _cells;
    private readonly double[] _first, _rate;
    private double[] _now, _before, _before2;

    public PieceStepper(MouldedPiece piece)
    {
        _cells = new(piece);
        _now = _cells.StartEnthalpy();
        _cells.Read(_now);
        (_before, _before2, _first, _rate) = (new double[_now.Length], new double[_now.Length], new double[_now.Length], new double[_now.Length]);
    }

    public ReadOnlySpan<double> EnthalpyJPerKg => _now;

    public ReadOnlySpan<double> Celsius => _cells.Celsius;

    public ReadOnlySpan<double> MassKg => _cells.MassKg;

    public double HeatInJoules { get; private set; }

    public double LongestStepSeconds(HeatStage stage) => _cells.LongestStepSeconds(stage) * Factor(MostStages);

    public void Advance(HeatStage stage, double stepSeconds, int steps)
    {
        var explicitStep = _cells.LongestStepSeconds(stage);
        var stages = FewestStages;
        while (stages < MostStages && Factor(stages) * explicitStep < stepSeconds) stages += 2;
        for (var step = 0; step < steps; step++) Step(stage, stepSeconds, stages);
        _cells.Read(_now);
    }

    private static double Factor(int stages) => (stages * stages + stages - 2) / 4.0;

    private void Step(HeatStage stage, double dt, int stages)
    {
        var start = _now;
        var (before, before2) = (_before, _before2);
        var width = 4.0 / (stages * stages + stages - 2);
        var firstHeat = _cells.Rates(start, stage, _first);
        // Heat through the faces goes through the same sums as the cells do; it is what they gained in the end.
        var (heat, heatBefore, heatBefore2) = (0.0, 0.0, 0.0);
        var first = B(1) * width * dt;
        start.CopyTo(before2, 0);
        for (var i = 0; i < start.Length; i++) before[i] = start[i] + first * _first[i];
        heatBefore = first * firstHeat;
        for (var j = 2; j <= stages; j++)
        {
            var mu = (2.0 * j - 1) / j * B(j) / B(j - 1);
            var nu = -(j - 1.0) / j * B(j) / B(j - 2);
            var (stay, take, back) = (1 - mu - nu, mu * width * dt, -(1 - B(j - 1)) * mu * width * dt);
            var rateHeat = _cells.Rates(before, stage, _rate);
            heat = mu * heatBefore + nu * heatBefore2 + take * rateHeat + back * firstHeat;
            for (var i = 0; i < start.Length; i++) before2[i] = mu * before[i] + nu * before2[i] + stay * start[i] + take * _rate[i] + back * _first[i];
            (before, before2) = (before2, before);
            (heatBefore2, heatBefore) = (heatBefore, heat);
        }
        HeatInJoules += heat;
        (_now, _before, _before2) = (before, start, before2);
    }

    private static double B(int stage) => stage < 2 ? 1.0 / 3 : (stage * stage + stage - 2.0) / (2.0 * stage * (stage + 1));
}
