namespace Tamis.Physics;

/// <summary>The fats of a mixture that decide how firm it is, in grams.</summary>
/// <param name="CocoaButterGrams">Cocoa butter.</param>
/// <param name="MilkFatGrams">Milk fat.</param>
/// <param name="OilGrams">Oils that are liquid in the kitchen: nut oil, rapeseed, sunflower.</param>
public readonly record struct FatPhase(double CocoaButterGrams, double MilkFatGrams, double OilGrams)
{
    /// <summary>All fat, in grams.</summary>
    public double TotalGrams => CocoaButterGrams + MilkFatGrams + OilGrams;

    /// <summary>The solid share of the fat at a temperature, 0 to 1; NaN without fat or below the curves.</summary>
    /// <param name="temperatureCelsius">The temperature, 15 to 40 °C.</param>
    /// <param name="cocoaButter">The solid fat of the cocoa butter alone.</param>
    /// <param name="milkFat">The solid fat of the milk fat alone.</param>
    /// <remarks>Cocoa butter dissolves in the rest by the ideal solubility law, less what the pure cocoa butter melts by its own table.
    /// The two fats do not share crystals: up to half milk fat the milk fat's own crystals are not counted (the eutectic dip), from there
    /// they come back in proportion until milk fat stands alone. A method of the kit, for trends.</remarks>
    public double SolidShare(double temperatureCelsius, SolidFatCurve cocoaButter, SolidFatCurve milkFat)
    {
        if (TotalGrams <= 0) return double.NaN;
        var solidCocoaButter = CocoaButter.SolidShare(CocoaButterGrams / TotalGrams, temperatureCelsius) * ClampedPercent(cocoaButter, temperatureCelsius) / 100;
        // Milk fat against cocoa butter alone decides which crystals rule; oil only thins them.
        var crystallising = CocoaButterGrams + MilkFatGrams;
        var rule = crystallising > 0 ? Math.Clamp(2 * MilkFatGrams / crystallising - 1, 0, 1) : 0;
        var solidMilkFat = MilkFatGrams / TotalGrams * ClampedPercent(milkFat, temperatureCelsius) / 100 * rule;
        return Math.Min(1, solidCocoaButter + solidMilkFat);
    }

    /// <summary>The solid fat in per cent of a whole mixture, with the spread between cocoa butters of several origins.</summary>
    /// <param name="massGrams">The mass of the mixture.</param>
    /// <param name="temperature">The temperature, in °C.</param>
    public Predicted SolidOfMixture(double massGrams, Given temperature)
    {
        var equation = PhysicsData.Kit.Equation("solid fat of a mixture");
        if (!temperature.IsKnown || !(massGrams > 0) || !(TotalGrams >= 0)) return Predicted.Unknown(equation, temperature.IsKnown ? "the masses of the fats" : temperature.Name);
        var milkFat = SolidFatCurve.Named("milk fat");
        var self = this;
        double[] each = [.. SolidFatCurve.All.Where(curve => curve.Fat.StartsWith("cocoa butter", StringComparison.Ordinal)).Select(Percent).Order()];
        var milkOfCrystallising = CocoaButterGrams + MilkFatGrams > 0 ? 100 * MilkFatGrams / (CocoaButterGrams + MilkFatGrams) : 0;
        return Predicted.Computed(equation, each.Average(), () => [temperature.Working,
            new("cocoa butter in the fat", 100 * self.CocoaButterGrams / self.TotalGrams, "%", equation.Source), new("milk fat in the fat", 100 * self.MilkFatGrams / self.TotalGrams, "%", equation.Source)]) with
        {
            Range = Interval.Between(each[0], each[^1]),
            Outside = [.. equation.Valid.Select(range => range.Of == "milk fat of the crystallising fats" ? range.Outside(milkOfCrystallising) : range.Outside(temperature.Value)).OfType<string>()],
        };

        double Percent(SolidFatCurve cocoaButter) => self.TotalGrams > 0 ? 100 * self.TotalGrams / massGrams * self.SolidShare(temperature.Value, cocoaButter, milkFat) : 0;
    }

    // Below its first point a curve only rises; the first point is the least that is solid there.
    private static double ClampedPercent(SolidFatCurve curve, double celsius) => curve.SolidPercent(Math.Max(celsius, curve.Celsius.Low));
}
