namespace Tamis.Views;

/// <summary>Maps values of an axis to units of a picture, in a straight line.</summary>
/// <param name="Low">The value at <paramref name="From"/>.</param>
/// <param name="High">The value at <paramref name="To"/>.</param>
/// <param name="From">Where the low value stands.</param>
/// <param name="To">Where the high value stands.</param>
internal readonly record struct Scale(double Low, double High, double From, double To)
{
    /// <summary>Where a value stands.</summary>
    public double At(double value) => High == Low ? (From + To) / 2 : From + (value - Low) / (High - Low) * (To - From);

    /// <summary>The value that stands at a place.</summary>
    public double Back(double place) => To == From ? Low : Low + (place - From) / (To - From) * (High - Low);

    /// <summary>Where a value stands, held within the frame.</summary>
    public double Within(double value) => At(Math.Clamp(value, Low, High));

    /// <summary>Round values to mark on the axis: at most five steps of 1, 2 or 5 times a power of ten.</summary>
    public IReadOnlyList<double> Ticks()
    {
        if (High <= Low) return [Low];
        var step = Step(High - Low, most: 5);
        List<double> ticks = [];
        for (var count = (long)Math.Ceiling(Low / step - 1e-9); count * step <= High + step * 1e-9; count++) ticks.Add(Math.Round(count * step, 10) + 0.0);
        return ticks;
    }

    /// <summary>The decimals that the marks need.</summary>
    public int TickDecimals() => Math.Clamp((int)Math.Ceiling(-Math.Log10(Step(High - Low, most: 5)) - 1e-9), 0, 6);

    private static double Step(double width, int most)
    {
        if (width <= 0) return 1;
        var power = Math.Pow(10, Math.Floor(Math.Log10(width / most)));
        foreach (var factor in (double[])[1, 2, 5]) if (width / (factor * power) <= most + 1e-9) return factor * power;
        return 10 * power;
    }
}
