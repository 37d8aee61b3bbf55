namespace Tamis.Physics;

/// <summary>The sorption equation of Guggenheim, Anderson and de Boer: how much water a solid holds at a water activity.</summary>
/// <remarks>One temperature, one branch (taking up or giving off). With <see cref="K"/> = 1 it is the equation of Brunauer, Emmett and Teller, to be used below a water activity of 0.5. Source: equations-migration.csv, <c>gab water content</c>.</remarks>
public readonly record struct Gab
{
    private Gab(double monolayerGramsPerGram, double c, double k) => (MonolayerGramsPerGram, C, K) = (monolayerGramsPerGram, c, k);

    /// <summary>Water in the first layer of molecules, g per g of dry solids.</summary>
    public double MonolayerGramsPerGram { get; }

    /// <summary>How much harder the first layer is bound than the next ones, a pure number above zero.</summary>
    public double C { get; }

    /// <summary>How the further layers differ from free water, a pure number above 0, at most 1.</summary>
    public double K { get; }

    /// <summary>A set of parameters.</summary>
    /// <exception cref="ArgumentException">One of them is outside its range; all that are wrong are named.</exception>
    public static Gab Of(double monolayerGramsPerGram, double c, double k)
    {
        List<string> wrong = [];
        if (!(monolayerGramsPerGram > 0 && monolayerGramsPerGram < 1)) wrong.Add(FormattableString.Invariant($"the first layer of water is above 0 and below 1 g per g of dry solids, found {monolayerGramsPerGram:G6}"));
        if (!(c > 0 && double.IsFinite(c))) wrong.Add(FormattableString.Invariant($"C is a number above 0, found {c:G6}"));
        if (!(k > 0 && k <= 1)) wrong.Add(FormattableString.Invariant($"K is above 0 and at most 1, found {k:G6}"));
        return wrong.Count == 0 ? new(monolayerGramsPerGram, c, k) : throw new ArgumentException($"A GAB isotherm cannot be made: {string.Join("; ", wrong)}.");
    }

    /// <summary>Water held at a water activity, g per g of dry solids.</summary>
    public double WaterGramsPerGramDry(double waterActivity) => WaterGramsPerGramDry(waterActivity, MonolayerGramsPerGram, C, K);

    /// <summary>The water activity at a water content; the other way round of <see cref="WaterGramsPerGramDry(double)"/>.</summary>
    public double WaterActivity(double waterGramsPerGramDry) => WaterActivity(waterGramsPerGramDry, MonolayerGramsPerGram, C, K);

    /// <summary>Water held at a water activity from 0 to below 1/<paramref name="k"/>, g per g of dry solids.</summary>
    public static double WaterGramsPerGramDry(double waterActivity, double monolayerGramsPerGram, double c, double k)
    {
        var ka = k * waterActivity;
        return monolayerGramsPerGram * c * ka / ((1 - ka) * (1 - ka + c * ka));
    }

    /// <summary>The water activity at a water content of 0 or more, from the quadratic that the equation is in K·a.</summary>
    public static double WaterActivity(double waterGramsPerGramDry, double monolayerGramsPerGram, double c, double k)
    {
        var x = waterGramsPerGramDry;
        var b = monolayerGramsPerGram * c - (c - 2) * x;
        var root = Math.Sqrt(b * b + 4 * (c - 1) * x * x);
        // The root that starts at zero, in the form that does not take one large number from another. A negative b needs c above 2.
        var ka = b >= 0 ? 2 * x / (b + root) : (root - b) / (2 * (c - 1) * x);
        return ka / k;
    }
}
