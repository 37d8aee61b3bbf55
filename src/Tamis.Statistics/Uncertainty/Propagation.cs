using MathNet.Numerics.Distributions;

namespace Tamis.Statistics.Uncertainty;

/// <summary>The law of propagation of uncertainty (JCGM 100:2008, clause 5).</summary>
public static class Propagation
{
    /// <summary>The combined standard uncertainty from sensitivities and standard uncertainties: first order, with one correlation between every pair of inputs.</summary>
    /// <param name="sensitivities">How far the result moves with each input.</param>
    /// <param name="uncertainties">The standard uncertainty of each input.</param>
    /// <param name="correlation">Between every pair of inputs, −1 to 1; JCGM 100:2008 (13).</param>
    /// <exception cref="ArgumentException">The lists differ in length, or the variance comes out below zero: no such correlation can be.</exception>
    public static double Combined(ReadOnlySpan<double> sensitivities, ReadOnlySpan<double> uncertainties, double correlation = 0)
    {
        if (sensitivities.Length != uncertainties.Length)
            throw new ArgumentException($"{sensitivities.Length} sensitivities but {uncertainties.Length} uncertainties; give one of each an input.", nameof(uncertainties));
        double squares = 0, sum = 0;
        for (var i = 0; i < sensitivities.Length; i++)
        {
            var part = sensitivities[i] * uncertainties[i];
            squares += part * part;
            sum += part;
        }
        var variance = (1 - correlation) * squares + correlation * sum * sum;
        return variance >= 0 ? Math.Sqrt(variance) : throw new ArgumentException($"No inputs can be correlated by {correlation} pair by pair.", nameof(correlation));
    }

    /// <summary>A model's value and its uncertainty from independent inputs: first order, sensitivities by central differences.</summary>
    /// <param name="model">The model, a function of the inputs.</param>
    /// <param name="inputs">The inputs, in the order of the model.</param>
    public static Propagated FirstOrder(Func<double[], double> model, IReadOnlyList<UncertainNumber> inputs)
    {
        double[] at = [.. inputs.Select(input => input.Value)];
        var value = model(at);
        var sensitivities = new double[at.Length];
        for (var i = 0; i < at.Length; i++)
        {
            // A step of the uncertainty's own size says how far the result moves where it matters (JCGM 100:2008, 5.1.3 note 2).
            var step = inputs[i].StandardUncertainty > 0 ? inputs[i].StandardUncertainty / 10 : 0;
            if (step == 0) continue;
            (at[i], var middle) = (at[i] + step, at[i]);
            var up = model(at);
            at[i] = middle - step;
            sensitivities[i] = (up - model(at)) / (2 * step);
            at[i] = middle;
        }
        return new(value, sensitivities, [.. inputs.Select(input => input.StandardUncertainty)]);
    }

    /// <summary>The effective degrees of freedom of a combined uncertainty (Welch–Satterthwaite, JCGM 100:2008, G.2b).</summary>
    /// <param name="contributions">What each input contributes, sensitivity times uncertainty.</param>
    /// <param name="degreesOfFreedom">The degrees of freedom of each; infinite where the uncertainty itself is certain.</param>
    public static double EffectiveDegreesOfFreedom(ReadOnlySpan<double> contributions, ReadOnlySpan<double> degreesOfFreedom)
    {
        if (contributions.Length != degreesOfFreedom.Length)
            throw new ArgumentException($"{contributions.Length} contributions but {degreesOfFreedom.Length} degrees of freedom.", nameof(degreesOfFreedom));
        double variance = 0, weighted = 0;
        for (var i = 0; i < contributions.Length; i++)
        {
            var square = contributions[i] * contributions[i];
            variance += square;
            weighted += square * square / degreesOfFreedom[i];
        }
        return variance * variance / weighted;
    }

    /// <summary>The factor from a standard uncertainty to the half-width that covers a share of cases: t of whole degrees of freedom, truncated (JCGM 100:2008, G.4.1 note 1).</summary>
    /// <param name="coverage">The share, 0 to 1.</param>
    /// <param name="degreesOfFreedom">Effective degrees of freedom; infinite for a normal.</param>
    public static double CoverageFactor(double coverage, double degreesOfFreedom = double.PositiveInfinity) => double.IsInfinity(degreesOfFreedom)
        ? Normal.InvCDF(0, 1, (1 + coverage) / 2)
        : StudentT.InvCDF(0, 1, Math.Floor(degreesOfFreedom), (1 + coverage) / 2);
}

/// <summary>A value with the uncertainty that its inputs leave it.</summary>
/// <param name="Value">The model's value at the inputs' best estimates.</param>
/// <param name="Sensitivities">How far the value moves with each input.</param>
/// <param name="Uncertainties">The standard uncertainty of each input.</param>
public sealed record Propagated(double Value, IReadOnlyList<double> Sensitivities, IReadOnlyList<double> Uncertainties)
{
    /// <summary>The combined standard uncertainty of the value.</summary>
    public double StandardUncertainty => Propagation.Combined([.. Sensitivities], [.. Uncertainties]);

    /// <summary>The share of the variance that each input brings, 0 to 1; all zero where nothing is uncertain.</summary>
    public IReadOnlyList<double> VarianceShares
    {
        get
        {
            double[] squares = [.. Sensitivities.Zip(Uncertainties, (sensitivity, uncertainty) => Math.Pow(sensitivity * uncertainty, 2))];
            var all = squares.Sum();
            return [.. squares.Select(square => all > 0 ? square / all : 0)];
        }
    }

    /// <summary>The ends of the interval that covers a share of cases, where the value is normal.</summary>
    public (double Low, double High) Interval(double coverage = 0.95)
    {
        var half = Propagation.CoverageFactor(coverage) * StandardUncertainty;
        return (Value - half, Value + half);
    }
}
