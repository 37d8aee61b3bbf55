namespace Tamis.Physics;

/// <summary>How the water activity of a layer rises with the water that it holds, at one temperature.</summary>
/// <remarks>It rises steadily from 0 for no water. A dry layer takes a GAB set, a syrup its measured points, a wet sugar-rich layer a function of its composition.</remarks>
public sealed class SorptionIsotherm
{
    private readonly Func<double, double> _waterActivity;
    private readonly Func<double, double>? _waterContent;

    private SorptionIsotherm(string name, Source source, Interval validWaterActivity, Func<double, double> waterActivity, Func<double, double>? waterContent) =>
        (Name, Source, ValidWaterActivity, _waterActivity, _waterContent) = (name, source, validWaterActivity, waterActivity, waterContent);

    /// <summary>What it is of (<c>biscuit and shortcrust</c>).</summary>
    public string Name { get; }

    /// <summary>Where its figures came from.</summary>
    public Source Source { get; }

    /// <summary>The water activities for which it was made; outside them it is a guess, and results say so.</summary>
    public Interval ValidWaterActivity { get; }

    /// <summary>Whether its figures only pass through plausible points and were not measured: never to be shown as published.</summary>
    public bool IsIllustrative { get; private init; }

    /// <summary>The temperature that it is for, °C; null where it holds at the kitchen's temperatures.</summary>
    public double? TemperatureCelsius { get; private init; }

    /// <summary>An isotherm by the equation of Guggenheim, Anderson and de Boer.</summary>
    public static SorptionIsotherm OfGab(string name, Gab gab, Interval validWaterActivity, Source source) =>
        new(name, source, validWaterActivity, gab.WaterActivity, gab.WaterGramsPerGramDry);

    /// <summary>An isotherm through measured points. Between them the water rises in a line with a/(1 − a), as it does in a syrup; so it goes on beyond them.</summary>
    /// <exception cref="ArgumentException">There are no points, or they do not rise.</exception>
    public static SorptionIsotherm OfPoints(string name, IReadOnlyList<(double WaterActivity, double WaterGramsPerGramDry)> points, Source source)
    {
        if (points.Count == 0) throw new ArgumentException($"The isotherm of {name} has no points; give at least one.", nameof(points));
        (double Activity, double Water) before = (0, 0);
        foreach (var (activity, water) in points)
        {
            if (!(activity > before.Activity && activity < 1 && water > before.Water && double.IsFinite(water)))
                throw new ArgumentException(FormattableString.Invariant($"The points of the isotherm of {name} must rise in both water activity (below 1) and water; found {water:G6} g per g at {activity:G6} after {before.Water:G6} g per g at {before.Activity:G6}."), nameof(points));
            before = (activity, water);
        }
        double[] ratio = [0, .. points.Select(point => point.WaterActivity / (1 - point.WaterActivity))], held = [0, .. points.Select(point => point.WaterGramsPerGramDry)];
        return new(name, source, Interval.Between(points[0].WaterActivity, points[^1].WaterActivity),
            water => FromRatio(Along(held, ratio, water)), activity => Along(ratio, held, activity / (1 - activity)));
    }

    /// <summary>An isotherm by a function of the composition, such as the water activity that a mixture has when it holds more or less water.</summary>
    /// <param name="name">The layer.</param>
    /// <param name="waterActivity">The water activity for a water content in g per g of dry solids; rising.</param>
    /// <param name="waterGramsPerGramDry">The water contents for which the function may be asked. Beyond them a/(1 − a) stays in proportion to the water.</param>
    /// <param name="source">The model behind the function.</param>
    /// <exception cref="ArgumentException">The function does not rise between 0 and 1 over its water contents.</exception>
    public static SorptionIsotherm OfComposition(string name, Func<double, double> waterActivity, Interval waterGramsPerGramDry, Source source)
    {
        var (low, high) = (waterGramsPerGramDry.Low, waterGramsPerGramDry.High);
        if (!(low > 0 && high > low)) throw new ArgumentException($"The isotherm of {name} needs water contents from above zero to something more; found {low} to {high} g per g of dry solids.", nameof(waterGramsPerGramDry));
        const int Looks = 33;
        var last = 0.0;
        for (var i = 0; i < Looks; i++)
        {
            var water = low * Math.Pow(high / low, (double)i / (Looks - 1));
            var activity = waterActivity(water);
            if (!(activity > last && activity < 1))
                throw new ArgumentException(FormattableString.Invariant($"The water activity of {name} must rise with its water and stay below 1; at {water:G4} g per g of dry solids it is {activity:G6} after {last:G6}."), nameof(waterActivity));
            last = activity;
        }
        var (atLow, atHigh) = (waterActivity(low), waterActivity(high));
        return new(name, source, Interval.Between(atLow, atHigh), Within, null);

        double Within(double water) => water < low ? FromRatio(atLow / (1 - atLow) * water / low)
            : water > high ? FromRatio(atHigh / (1 - atHigh) * water / high)
            : waterActivity(water);
    }

    /// <summary>The same isotherm, marked as illustrative or measured, and with its temperature in °C.</summary>
    public SorptionIsotherm Marked(bool isIllustrative, double? temperatureCelsius) =>
        new(Name, Source, ValidWaterActivity, _waterActivity, _waterContent) { IsIllustrative = isIllustrative, TemperatureCelsius = temperatureCelsius };

    /// <summary>The water activity of the layer when it holds so much water, g per g of dry solids (0 or more).</summary>
    public double WaterActivity(double waterGramsPerGramDry) => waterGramsPerGramDry <= 0 ? 0 : _waterActivity(waterGramsPerGramDry);

    /// <summary>The water that the layer holds at a water activity from 0 to below 1, g per g of dry solids.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The water activity is not from 0 to below 1.</exception>
    public double WaterGramsPerGramDry(double waterActivity)
    {
        if (!(waterActivity >= 0 && waterActivity < 1)) throw new ArgumentOutOfRangeException(nameof(waterActivity), waterActivity, $"The water activity of {Name} is a number from 0 to below 1.");
        if (waterActivity == 0) return 0;
        return _waterContent is { } direct ? direct(waterActivity) : Inverted(waterActivity);
    }

    /// <summary>How fast the water activity rises with water, per g of water per g of dry solids; above zero.</summary>
    public double SlopePerGramPerGram(double waterGramsPerGramDry)
    {
        var step = Math.Max(waterGramsPerGramDry, 1e-6) * 1e-4;
        var low = Math.Max(waterGramsPerGramDry - step, 0);
        var high = waterGramsPerGramDry + step;
        return (WaterActivity(high) - WaterActivity(low)) / (high - low);
    }

    private double Inverted(double waterActivity)
    {
        double low = 0, high = 1;
        while (WaterActivity(high) < waterActivity) (low, high) = (high, high * 2);
        // A double has no more than 53 halvings in it, and some for the first interval.
        for (var i = 0; i < 80 && high - low > 1e-15 * high; i++)
        {
            var middle = low + (high - low) / 2;
            if (WaterActivity(middle) < waterActivity) low = middle; else high = middle;
        }
        return low + (high - low) / 2;
    }

    private static double FromRatio(double ratio) => ratio / (1 + ratio);

    private static double Along(double[] from, double[] to, double at)
    {
        var last = from.Length - 1;
        // Beyond the last point in proportion, so that the activity never reaches 1.
        if (at >= from[last]) return to[last] * at / from[last];
        var i = 1;
        while (from[i] < at) i++;
        return to[i - 1] + (to[i] - to[i - 1]) * (at - from[i - 1]) / (from[i] - from[i - 1]);
    }
}
