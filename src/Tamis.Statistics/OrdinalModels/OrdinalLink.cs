using MathNet.Numerics;

namespace Tamis.Statistics.OrdinalModels;

/// <summary>The distribution by which a cumulative-link model turns a distance from a threshold into a probability.</summary>
public abstract class OrdinalLink
{
    private OrdinalLink() { }

    /// <summary>The logistic distribution: coefficients are logarithms of cumulative odds ratios.</summary>
    public static OrdinalLink Logit { get; } = new LogitLink();

    /// <summary>The standard normal distribution: coefficients are in standard deviations of a hidden impression.</summary>
    public static OrdinalLink Probit { get; } = new ProbitLink();

    /// <summary>The probability below a distance.</summary>
    public abstract double Below(double distance);

    /// <summary>The density at a distance.</summary>
    public abstract double Density(double distance);

    /// <summary>A coefficient beyond which a probability is 0 or 1 for every practical purpose: the classes separate perfectly.</summary>
    internal abstract double Beyond { get; }

    internal abstract double Slope(double distance);

    internal abstract double Distance(double probability);

    /// <summary>The probability between two distances, without loss of digits in the upper tail.</summary>
    internal double Between(double low, double high) => low > 0 ? Below(-low) - Below(-high) : Below(high) - Below(low);

    private sealed class LogitLink : OrdinalLink
    {
        internal override double Beyond => 20;

        public override double Below(double distance) => distance < 0 ? Math.Exp(distance) / (1 + Math.Exp(distance)) : 1 / (1 + Math.Exp(-distance));

        public override double Density(double distance) => Below(distance) * Below(-distance);

        internal override double Slope(double distance) => double.IsInfinity(distance) ? 0 : Density(distance) * (1 - 2 * Below(distance));

        internal override double Distance(double probability) => Math.Log(probability / (1 - probability));
    }

    private sealed class ProbitLink : OrdinalLink
    {
        internal override double Beyond => 8;

        public override double Below(double distance) => SpecialFunctions.Erfc(-distance / Constants.Sqrt2) / 2;

        public override double Density(double distance) => Math.Exp(-distance * distance / 2) / Constants.Sqrt2Pi;

        internal override double Slope(double distance) => double.IsInfinity(distance) ? 0 : -distance * Density(distance);

        internal override double Distance(double probability) => -Constants.Sqrt2 * SpecialFunctions.ErfcInv(2 * probability);
    }
}
