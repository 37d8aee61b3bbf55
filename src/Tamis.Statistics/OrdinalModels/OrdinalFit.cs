using MathNet.Numerics.LinearAlgebra;
using Tamis.Statistics.MixedModels;

namespace Tamis.Statistics.OrdinalModels;

/// <summary>A threshold between two neighbouring classes.</summary>
/// <param name="Lower">The class below, as the data write it.</param>
/// <param name="Upper">The class above.</param>
/// <param name="Estimate">The estimate on the scale of the link.</param>
/// <param name="StandardError">Its standard error.</param>
public sealed record OrdinalThreshold(double Lower, double Upper, double Estimate, double StandardError);

/// <summary>A coefficient of a cumulative-link model; a positive one means higher classes.</summary>
/// <param name="Name">A factor's name followed by its level, or the column's name for a number.</param>
/// <param name="Estimate">The estimate on the scale of the link.</param>
/// <param name="StandardError">Its standard error, from the observed information.</param>
public sealed record OrdinalCoefficient(string Name, double Estimate, double StandardError)
{
    /// <summary>The interval of Wald, by the normal distribution.</summary>
    /// <param name="confidence">Above 0 and below 1.</param>
    public ConfidenceLimits Limits(double confidence = 0.95)
    {
        var half = Tails.NormalTwoSided(confidence) * StandardError;
        return new(Estimate - half, Estimate + half);
    }

    /// <summary>The probability of an estimate farther from nil if there were no effect, by Wald's test.</summary>
    public double P => Tails.ChiSquareAbove(Estimate / StandardError * (Estimate / StandardError), 1);
}

/// <summary>A fitted cumulative-link model: P(y ≤ j) = F(threshold j − η).</summary>
/// <param name="RowCount">How many rows were used.</param>
/// <param name="Thresholds">Thresholds, rising.</param>
/// <param name="Coefficients">Coefficients, in the order of the model.</param>
/// <param name="LogLikelihood">The largest log likelihood.</param>
/// <param name="GroupVariance">The variance of the random intercept, on the squared scale of the link; null without one, 0 where the data show none.</param>
/// <param name="ParameterCount">How many parameters were estimated.</param>
/// <param name="Note">What a reader must know of the fit, in words; empty if nothing.</param>
public sealed record OrdinalFit(
    int RowCount,
    IReadOnlyList<OrdinalThreshold> Thresholds,
    IReadOnlyList<OrdinalCoefficient> Coefficients,
    double LogLikelihood,
    double? GroupVariance,
    int ParameterCount,
    string Note)
{
    /// <summary>The covariance of the coefficients, in their order.</summary>
    internal Matrix<double> Covariance { get; init; } = Matrix<double>.Build.Dense(1, 1);

    /// <summary>A weighted sum of coefficients, such as one level less another.</summary>
    /// <param name="weights">The weight of each coefficient by its name; those not named weigh nothing.</param>
    /// <exception cref="ArgumentException">The model has no coefficient of a name.</exception>
    public OrdinalCoefficient Contrast(IReadOnlyDictionary<string, double> weights)
    {
        foreach (var name in weights.Keys) Coefficient(name);
        double[] each = [.. Coefficients.Select(one => weights.GetValueOrDefault(one.Name))];
        var sum = each.Zip(Coefficients, (weight, one) => weight * one.Estimate).Sum();
        var vector = Vector<double>.Build.Dense(each);
        return new(string.Join(" ", weights.Select(weight => $"{weight.Value:+0.##;-0.##} {weight.Key}")), sum, Math.Sqrt(Math.Max(0, vector.DotProduct(Covariance * vector))));
    }

    /// <summary>The coefficient of this name.</summary>
    /// <exception cref="ArgumentException">The model has none of this name.</exception>
    public OrdinalCoefficient Coefficient(string name) => Coefficients.FirstOrDefault(one => string.Equals(one.Name, name, StringComparison.Ordinal))
        ?? throw new ArgumentException($"The model has no coefficient '{name}'; it has {string.Join(", ", Coefficients.Select(one => one.Name))}.", nameof(name));

    /// <summary>The likelihood-ratio test against a model that is a part of this one, fitted to the same rows.</summary>
    /// <exception cref="ArgumentException">The other model has other rows, or no fewer parameters.</exception>
    public LikelihoodRatio Against(OrdinalFit smaller)
    {
        if (smaller.RowCount != RowCount || smaller.ParameterCount >= ParameterCount)
            throw new ArgumentException($"The smaller model has {smaller.RowCount} rows and {smaller.ParameterCount} parameters, this one {RowCount} and {ParameterCount}; it must have the same rows and fewer parameters.", nameof(smaller));
        var chiSquare = Math.Max(0, 2 * (LogLikelihood - smaller.LogLikelihood));
        var degrees = ParameterCount - smaller.ParameterCount;
        return new(chiSquare, degrees, Tails.ChiSquareAbove(chiSquare, degrees));
    }
}
