namespace Tamis.Physics;

/// <summary>How the water activity of a layer rises with the water that it holds, at one temperature.</summary>
/// <remarks>It rises steadily from 0 for no water. A dry layer takes a GAB set, a syrup its measured points, a wet sugar-rich layer a function of its composition.</remarks>
public sealed class SorptionIsotherm
{
    // The function of a composition is looked at in so many places; between two of them ln(a/(1 − a)) runs straight in ln(water), as it does in a syrup.
    private const int Looks = 193;

    private readonly Func<double, double> _waterActivity;
    private readonly Func<double, double> _waterContent;

    private SorptionIsotherm(string name, Source source, Interval validWaterActivity, Func<double, double> waterActivity, Func<double, double> waterContent) =>
        (Name, Source, ValidWaterActivity, _waterActivity, _waterContent) = (name, source, validWaterActivity, waterActivity, waterContent);

    /// <summary>What it is of (<c>biscuit and shortcrust</c>).</summary>
    public string Name { get; }

    /// <summary>Where its figures came from.</summary>
    public Source Source { get; }

    /// <summary>The water activities for which it was made; outside them it is a guess, and results say so.</summary>
    public Interval ValidWaterActivity { get; }

    /// <summary>Whether its figures were not measured on such a layer: they pass through plausible points, or are put together from its parts. Never to be shown as published.</summary>
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
    /// <param name="waterGramsPerGramDry">The water contents for which the function may be asked. Beyond them a/(1 − a) stays in proportion to the water, and between the places where it is asked nearly so.</param>
    /// <param name="source">The model behind the function.</param>
    /// <exception cref="ArgumentException">The function does not rise between 0 and 1 over its water contents.</exception>
    public static SorptionIsotherm OfComposition(string name, Func<double, double> waterActivity, Interval waterGramsPerGramDry, Source source)
    {
        var (low, high) = (waterGramsPerGramDry.Low, waterGramsPerGramDry.High);
        if (!(low > 0 && high > low)) throw new ArgumentException($"The isotherm of {name} needs water contents from above zero to something more; found {low} to {high} g per g of dry solids.", nameof(waterGramsPerGramDry));
        double[] ratio = new double[Looks];
        for (var i = 0; i < Looks; i++)
        {
            var water = low * Math.Pow(high / low, (double)i / (Looks - 1));
            var activity = waterActivity(water);
            var before = i == 0 ? 0 : FromRatio(Math.Exp(ratio[i - 1]));
            if (!(activity > before && activity < 1))
                throw new ArgumentException(FormattableString.Invariant($"The water activity of {name} must rise with its water and stay below 1; at {water:G4} g per g of dry solids it is {activity:G6} after {before:G6}."), nameof(waterActivity));
            ratio[i] = Math.Log(activity / (1 - activity));
        }
        return new(name, source, Interval.Between(waterActivity(low), waterActivity(high)), Activity, Water);

        // A function of a whole composition is asked some hundred times here and never again: a march asks a hundred thousand times.
        double Activity(double water)
        {
            if (water < low) return FromRatio(Math.Exp(ratio[0]) * water / low);
            if (water > high) return FromRatio(Math.Exp(ratio[^1]) * water / high);
            var at = Math.Log(water / low) / Math.Log(high / low) * (Looks - 1);
            var i = Math.Min((int)at, Looks - 2);
            return FromRatio(Math.Exp(ratio[i] + (ratio[i + 1] - ratio[i]) * (at - i)));
        }

        double Water(double activity)
        {
            var wanted = Math.Log(activity / (1 - activity));
            if (wanted < ratio[0]) return low * Math.Exp(wanted - ratio[0]);
            if (wanted > ratio[^1]) return high * Math.Exp(wanted - ratio[^1]);
            var i = Array.BinarySearch(ratio, wanted) is var found && found >= 0 ? Math.Min(found, Looks - 2) : ~found - 1;
            return low * Math.Pow(high / low, (i + (wanted - ratio[i]) / (ratio[i + 1] - ratio[i])) / (Looks - 1));
        }
    }

    /// <summary>An isotherm of dry matter of which only a part holds water: that part takes up its own, what is beside it (fat, sugar in crystals) takes none.</summary>
    /// <param name="name">The layer.</param>
    /// <param name="part">The isotherm of the part that holds water.</param>
    /// <param name="shareOfDry">The share of the dry matter that it is, above 0 to 1.</param>
    /// <remarks>Each solid of a mixture takes up its own water at the common water activity (Lang and Steinberg 1980). It was not measured on the layer, so it counts as illustrative.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The share is not above 0 and at most 1.</exception>
    public static SorptionIsotherm OfPart(string name, SorptionIsotherm part, double shareOfDry) => shareOfDry is > 0 and <= 1
        ? new(name, part.Source, part.ValidWaterActivity, water => part.WaterActivity(water / shareOfDry), activity => shareOfDry * part.WaterGramsPerGramDry(activity)) { IsIllustrative = true, TemperatureCelsius = part.TemperatureCelsius }
        : throw new ArgumentOutOfRangeException(nameof(shareOfDry), shareOfDry, $"The part of {name} that holds water is above 0 and at most all of its dry matter.");

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
        return _waterContent(waterActivity);
    }

    /// <summary>How fast the water activity rises with water, per g of water per g of dry solids; above zero.</summary>
    public double SlopePerGramPerGram(double waterGramsPerGramDry)
    {
        var step = Math.Max(waterGramsPerGramDry, 1e-6) * 1e-4;
        var low = Math.Max(waterGramsPerGramDry - step, 0);
        var high = waterGramsPerGramDry + step;
        return (WaterActivity(high) - WaterActivity(low)) / (high - low);
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
