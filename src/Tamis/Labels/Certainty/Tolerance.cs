namespace Tamis.Labels;

/// <summary>Whether a figure is the subject of a claim, and of which kind.</summary>
public enum ClaimSubject
{
    /// <summary>No claim is made of it.</summary>
    NoClaim,
    /// <summary>A claim that there is at least so much.</summary>
    AtLeast,
    /// <summary>A claim that there is at most so much.</summary>
    AtMost,
    /// <summary>It was added to the food, whatever is claimed of it.</summary>
    Added,
}

/// <summary>How a tolerance takes the uncertainty of a laboratory's measurement.</summary>
public enum MeasurementAllowance
{
    /// <summary>It is part of the tolerance: nothing comes on top.</summary>
    Included,
    /// <summary>It comes on top on both sides.</summary>
    Added,
    /// <summary>It comes on top above.</summary>
    AddedAbove,
}

/// <summary>How an official sample is taken.</summary>
/// <param name="Units">How many packs are put together; 1 or more.</param>
/// <param name="Analyses">How many analyses the result is the mean of; 1 or more.</param>
public readonly record struct OfficialSample(int Units, int Analyses);

/// <summary>How far an official sample may lie from a declared figure.</summary>
/// <param name="Figure">The figure, by its key.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Subject">Whether a claim is made of it.</param>
/// <param name="Declared">The range of declared figures that the row is for.</param>
/// <param name="Minus">How far below; null where no limit is set below.</param>
/// <param name="Plus">How far above; null where no limit is set above.</param>
/// <param name="IsPercent">Whether in per cent of the declared figure; otherwise in its unit.</param>
/// <param name="Measurement">How the uncertainty of the measurement is taken.</param>
/// <param name="Sample">How the sample is taken.</param>
/// <param name="Origin">Where the row came from.</param>
public sealed record Tolerance(string Figure, string Unit, ClaimSubject Subject, FigureBand Declared, double? Minus, double? Plus, bool IsPercent, MeasurementAllowance Measurement, OfficialSample Sample, RuleOrigin Origin)
{
    // The expanded uncertainty of a measurement: twice the standard uncertainty (JCGM 100:2008, 6.3.3).
    private const double CoverageFactor = 2;

    /// <summary>The lowest amount that is accepted, in the unit of the figure and never below 0; minus infinity where no limit is set below.</summary>
    /// <param name="declared">The declared figure.</param>
    /// <param name="measurementPercent">The standard uncertainty of a measurement, in per cent of the amount; 0 where nobody stated it.</param>
    public double Lowest(double declared, double measurementPercent = 0) => Minus is not { } minus ? double.NegativeInfinity
        : Math.Max(0, (IsPercent ? declared * (1 - minus / 100) : declared - minus) - (Measurement == MeasurementAllowance.Added ? Expanded(declared, measurementPercent) : 0));

    /// <summary>The highest amount that is accepted, in the unit of the figure; infinity where no limit is set above.</summary>
    /// <inheritdoc cref="Lowest"/>
    public double Highest(double declared, double measurementPercent = 0) => Plus is not { } plus ? double.PositiveInfinity
        : (IsPercent ? declared * (1 + plus / 100) : declared + plus) + (Measurement == MeasurementAllowance.Included ? 0 : Expanded(declared, measurementPercent));

    private static double Expanded(double declared, double percent) => CoverageFactor * declared * percent / 100;
}
