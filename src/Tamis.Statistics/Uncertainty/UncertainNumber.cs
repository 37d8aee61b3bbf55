namespace Tamis.Statistics.Uncertainty;

/// <summary>The shape of what is known of a number.</summary>
public enum DrawShape
{
    /// <summary>Normal: many small causes.</summary>
    Normal,
    /// <summary>Lognormal with the given mean and standard deviation: cannot be below zero, spreads by ratios.</summary>
    Lognormal,
    /// <summary>Anywhere between two limits with equal chance: rounding, a stated bound.</summary>
    Rectangular,
}

/// <summary>A number with its standard uncertainty (JCGM 100:2008, 2.3.1).</summary>
/// <param name="Value">The best estimate: the mean of the distribution.</param>
/// <param name="StandardUncertainty">Its standard deviation, zero or more, in the unit of the value.</param>
/// <param name="Shape">The shape of the distribution.</param>
public readonly record struct UncertainNumber(double Value, double StandardUncertainty, DrawShape Shape = DrawShape.Normal)
{
    /// <summary>A number that lies between two limits with equal chance: half the width over the root of three (JCGM 100:2008, 4.3.7).</summary>
    /// <exception cref="ArgumentException">The limits stand the wrong way round.</exception>
    public static UncertainNumber Between(double low, double high) => low <= high
        ? new((low + high) / 2, (high - low) / 2 / Math.Sqrt(3), DrawShape.Rectangular)
        : throw new ArgumentException("The lower limit comes first.", nameof(low));

    /// <summary>A number known as exactly as it is written.</summary>
    public static implicit operator UncertainNumber(double value) => new(value, 0);

    /// <summary>The mean and the standard deviation of the logarithm behind a lognormal of this mean and standard deviation.</summary>
    public (double Mean, double Deviation) OfLogarithm
    {
        get
        {
            var variance = Math.Log(1 + Math.Pow(StandardUncertainty / Value, 2));
            return (Math.Log(Value) - variance / 2, Math.Sqrt(variance));
        }
    }

    /// <summary>Throws where the number cannot be drawn: not finite, a negative uncertainty, a lognormal that is not above zero or too wide to hold.</summary>
    internal void Check(string name)
    {
        if (!double.IsFinite(Value) || !double.IsFinite(StandardUncertainty) || StandardUncertainty < 0)
            throw new ArgumentException($"{Value} ± {StandardUncertainty} is no number with an uncertainty of zero or more.", name);
        if (Shape != DrawShape.Lognormal) return;
        // 8.5 standard deviations are the farthest that a draw can lie; e^700 is the largest number.
        if (!(Value > 0) || OfLogarithm is var (mean, deviation) && Math.Abs(mean) + 8.5 * deviation > 700)
            throw new ArgumentException($"{Value} ± {StandardUncertainty} is no lognormal: its mean must be above zero and its spread within e^700.", name);
    }
}
