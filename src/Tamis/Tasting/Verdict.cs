namespace Tamis.Tasting;

/// <summary>What a comparison of two trials can say.</summary>
public enum Verdict
{
    /// <summary>The interval, as printed, leaves zero: the difference is shown.</summary>
    Shown,
    /// <summary>One end of the interval prints as 0.0.</summary>
    AtEdge,
    /// <summary>The interval holds zero: the tasting cannot tell the trials apart. That is not 'the same'.</summary>
    NotShown,
    /// <summary>All that was scored agrees to the digit, so that nothing says how sure the difference is.</summary>
    NoSpread,
    /// <summary>Too few assessors, or the design links the trials too loosely to judge: notes, not evidence.</summary>
    TooFew,
    /// <summary>The trials were tasted together, but this was not asked then.</summary>
    NotAsked,
    /// <summary>No tasting served both, and no control links those that served one.</summary>
    NeverTogether,
}

/// <summary>How a printed interval reads.</summary>
public static class Verdicts
{
    /// <summary>Judges an interval of a difference as it is printed.</summary>
    /// <param name="lowPoints">The lower limit.</param>
    /// <param name="highPoints">The upper limit.</param>
    /// <param name="printedStepPoints">The step in which limits are printed, such as 0.1.</param>
    public static Verdict Of(double lowPoints, double highPoints, double printedStepPoints)
    {
        // A figure under half a step prints as zero.
        var half = printedStepPoints / 2;
        var lowIsZero = Math.Abs(lowPoints) < half;
        var highIsZero = Math.Abs(highPoints) < half;
        if (lowIsZero != highIsZero) return Verdict.AtEdge;
        return lowPoints >= half || highPoints <= -half ? Verdict.Shown : Verdict.NotShown;
    }
}
