using MathNet.Numerics.LinearAlgebra;

namespace Tamis.Statistics.MixedModels;

/// <summary>Finds the relative factors at which a mixed model's criterion is least.</summary>
/// <remarks>
/// Newton steps on differences of the gradient, with updates in between (Nocedal and Wright 2006, Numerical Optimization, 3.4 and 6.1), until
/// a step would gain less than rounding leaves. The criterion does not change when an effect's factor changes sign, so that zero is a stationary
/// point of it: where a search ends there, the other side is tried before zero is believed.
/// </remarks>
internal sealed class VarianceSearch
{
    private const double LeastGain = 1e-12, NearZero = 1e-4, Away = 0.05;
    private const int StepLimit = 100, FreshEvery = 5;

    // Beyond this the residual is nothing beside the random effects.
    public const double LargestFactor = 1e5;

    private readonly MixedCriterion _criterion;
    private readonly bool[] _fixedAtZero;

    private VarianceSearch(MixedCriterion criterion)
    {
        _criterion = criterion;
        _fixedAtZero = new bool[criterion.Factors.Count];
    }

    public double[] Parameters { get; private set; } = [];

    public double Value { get; private set; }

    public bool Converged { get; private set; }

    public int Evaluations { get; private set; }

    /// <summary>The effects of which the variance is nil.</summary>
    public IReadOnlyList<bool> FixedAtZero => _fixedAtZero;

    public static VarianceSearch Run(MixedCriterion criterion, double[] start)
    {
        var search = new VarianceSearch(criterion) { Parameters = [.. start] };
        for (var round = 0; round < 10; round++)
        {
            search.Descend();
            if (!search.SettleAtZero()) break;
        }
        criterion.Factors.MakeDiagonalPositive(search.Parameters);
        search.Value = search.ValueAt(search.Parameters);
        return search;
    }

    private int[] Free => [.. Enumerable.Range(0, Parameters.Length).Where(i => !_fixedAtZero[i])];

    private double ValueAt(double[] parameters)
    {
        Evaluations++;
        return _criterion.Value(parameters);
    }

    private double[] GradientAt(double[] parameters, int[] free)
    {
        ValueAt(parameters);
        var whole = _criterion.Gradient(parameters);
        return [.. free.Select(i => whole[i])];
    }

    private void Descend()
    {
        var free = Free;
        Converged = true;
        if (free.Length == 0) { Value = ValueAt(Parameters); return; }
        Value = ValueAt(Parameters);
        var whole = _criterion.Gradient(Parameters);
        double[] gradient = [.. free.Select(i => whole[i])];
        Matrix<double>? curvature = null;
        for (var step = 0; step < StepLimit; step++)
        {
            if (curvature is null || step % FreshEvery == 0) curvature = Curvature(free, gradient);
            var move = Move(curvature, gradient, free);
            var gain = -free.Select((_, i) => gradient[i] * move[i]).Sum() / 2;
            if (gain < LeastGain) return;
            var (share, next, value) = (1.0, Moved(free, move, 1), 0.0);
            // A rise within the rounding of the criterion is none: near the end only the gradient still tells.
            while ((value = ValueAt(next)) > Value - 1e-4 * share * gain + 1e-11 * Math.Abs(Value) && share > 1e-8)
                next = Moved(free, move, share /= 2);
            whole = _criterion.Gradient(next);
            double[] after = [.. free.Select(i => whole[i])];
            curvature = Updated(curvature, [.. move.Select(part => part * share)], [.. after.Select((slope, i) => slope - gradient[i])]);
            (Parameters, Value, gradient) = (next, value, after);
            if (Parameters.Any(parameter => Math.Abs(parameter) > LargestFactor)) return;
        }
        Converged = false;
    }

    private Matrix<double> Curvature(int[] free, double[] gradient)
    {
        var curvature = Matrix<double>.Build.Dense(free.Length, free.Length);
        for (var j = 0; j < free.Length; j++)
        {
            var width = 1e-4 * Math.Max(0.1, Math.Abs(Parameters[free[j]]));
            var there = Moved([free[j]], [width], 1);
            var slope = GradientAt(there, free);
            for (var i = 0; i < free.Length; i++) curvature[i, j] = (slope[i] - gradient[i]) / width;
        }
        return (curvature + curvature.Transpose()) / 2;
    }

    // Downhill in every direction whatever the curvature's sign, and never further than about the parameters' own size.
    private double[] Move(Matrix<double> curvature, double[] gradient, int[] free)
    {
        var parts = curvature.Evd(Symmetricity.Symmetric);
        var slope = Vector<double>.Build.Dense(gradient);
        var largest = parts.EigenValues.Select(value => Math.Abs(value.Real)).Max();
        var move = Vector<double>.Build.Dense(gradient.Length);
        for (var i = 0; i < gradient.Length; i++)
        {
            var direction = parts.EigenVectors.Column(i);
            var bend = Math.Max(Math.Abs(parts.EigenValues[i].Real), 1e-10 * Math.Max(largest, 1e-10));
            move -= direction * (direction.DotProduct(slope) / bend);
        }
        var limit = 0.5 + free.Max(i => Math.Abs(Parameters[i]));
        var length = move.L2Norm();
        return [.. length > limit ? move * (limit / length) : move];
    }

    private double[] Moved(int[] free, double[] move, double share)
    {
        double[] moved = [.. Parameters];
        for (var i = 0; i < free.Length; i++) moved[free[i]] += share * move[i];
        return moved;
    }

    private static Matrix<double>? Updated(Matrix<double> curvature, double[] move, double[] change)
    {
        var s = Vector<double>.Build.Dense(move);
        var y = Vector<double>.Build.Dense(change);
        var bent = curvature * s;
        var (along, whole) = (s.DotProduct(bent), s.DotProduct(y));
        if (whole <= 1e-10 * s.L2Norm() * y.L2Norm() || along <= 0) return null;
        return curvature - bent.OuterProduct(bent) / along + y.OuterProduct(y) / whole;
    }

    // Returns whether the search has to go on.
    private bool SettleAtZero()
    {
        var again = false;
        foreach (var i in Free)
        {
            if (!_criterion.Factors.IsDiagonal(i) || Math.Abs(Parameters[i]) > NearZero) continue;
            double[] zero = [.. Parameters], away = [.. Parameters];
            (zero[i], away[i]) = (0, Away);
            var (atZero, atAway) = (ValueAt(zero), ValueAt(away));
            if (atAway < atZero - 1e-10 * Math.Abs(atZero))
            {
                Parameters = away;
                return true;
            }
            if (atZero > Value + 1e-10 * Math.Abs(Value)) continue;
            Parameters = zero;
            Value = atZero;
            _fixedAtZero[i] = true;
            again = true;
        }
        return again;
    }
}
