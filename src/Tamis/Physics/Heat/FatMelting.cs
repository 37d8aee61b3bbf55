namespace Tamis.Physics;

/// <summary>The heat that fat takes to melt, and gives when it sets.</summary>
/// <param name="FatShareOfMass">Fat in the mixture, 0 to 1.</param>
/// <param name="MeltingHeatKJPerKg">Heat to melt all of that fat, kJ/kg of fat.</param>
/// <param name="SolidShareOfFat">The solid share of the fat at a temperature in °C, 0 to 1, falling as it warms.</param>
/// <remarks>Fat counts as set as soon as it is cold enough. In truth it undercools and sets on for hours, so that fresh chocolate work gives this heat later than the march says.</remarks>
public sealed record FatMelting(double FatShareOfMass, double MeltingHeatKJPerKg, Func<double, double> SolidShareOfFat)
{
    private const string CocoaButterCurves = "cocoa butter";

    /// <summary>The fat of a balance: cocoa butter and milk fat set, other fats are liquid oils. Null where there is neither, or something of them is unknown.</summary>
    public static FatMelting? Of(Balance balance)
    {
        if (!balance.Fat.IsWhole || !(balance.FinishedGrams > 0)) return null;
        var (cocoa, milk) = (balance[BalancePart.CocoaButter].Known, balance[BalancePart.MilkFat].Known);
        if (!(cocoa + milk > 0)) return null;
        var phase = new FatPhase(cocoa, milk, Math.Max(0, balance.Fat.Known - cocoa - milk));
        var heat = (cocoa * PhysicsData.Kit.Constant("latent heat of cocoa butter, form V").Value + milk * PhysicsData.Kit.Constant("latent heat of milk fat").Value) / (cocoa + milk);
        SolidFatCurve[] cocoaButters = [.. SolidFatCurve.All.Where(curve => curve.Fat.StartsWith(CocoaButterCurves, StringComparison.Ordinal))];
        var milkFat = SolidFatCurve.Named("milk fat");
        return new(phase.TotalGrams / balance.FinishedGrams, heat, celsius => cocoaButters.Average(each => phase.SolidShare(celsius, each, milkFat)));
    }

    /// <summary>The heat of what is solid at a temperature, kJ/kg of mixture: what it lacks against the melted state.</summary>
    public double BoundKJPerKg(double celsius) => FatShareOfMass * MeltingHeatKJPerKg * SolidShareOfFat(celsius);
}
