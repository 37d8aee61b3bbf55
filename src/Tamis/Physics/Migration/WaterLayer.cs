namespace Tamis.Physics;

/// <summary>One layer of a stack, as water sees it.</summary>
/// <remarks>Its dry matter stays where it is; a layer that swells or melts is not described.</remarks>
public sealed record WaterLayer
{
    private WaterLayer(string name, SorptionIsotherm isotherm, double thicknessMillimetres, double dryGramsPerMillilitre, double waterGramsPerGramDry, Given diffusivity) =>
        (Name, Isotherm, ThicknessMillimetres, DryGramsPerMillilitre, WaterGramsPerGramDry, Diffusivity) = (name, isotherm, thicknessMillimetres, dryGramsPerMillilitre, waterGramsPerGramDry, diffusivity);

    /// <summary>What it is (<c>shell</c>).</summary>
    public string Name { get; }

    /// <summary>How its water activity rises with its water.</summary>
    public SorptionIsotherm Isotherm { get; }

    /// <summary>Thickness, mm, above 0.</summary>
    public double ThicknessMillimetres { get; }

    /// <summary>Dry matter in its volume, g/mL, above 0: its density less its water.</summary>
    public double DryGramsPerMillilitre { get; }

    /// <summary>The water that it starts with, g per g of dry matter.</summary>
    public double WaterGramsPerGramDry { get; }

    /// <summary>How fast water moves in it, m²/s, with range and source.</summary>
    public Given Diffusivity { get; private init; }

    /// <summary>The water activity that it must not pass; null where it has none.</summary>
    public WaterLimit? Limit { get; init; }

    /// <summary>The water activity that it starts with.</summary>
    public double WaterActivity => Isotherm.WaterActivity(WaterGramsPerGramDry);

    /// <summary>Its dry matter over a square centimetre, g.</summary>
    public double DryGramsPerSquareCentimetre => DryGramsPerMillilitre * ThicknessMillimetres / 10;

    /// <summary>What it holds over a square centimetre, for the equilibrium of a stack.</summary>
    public WaterHolder Holder => WaterHolder.OfWater(Name, Isotherm, DryGramsPerSquareCentimetre, DryGramsPerSquareCentimetre * WaterGramsPerGramDry);

    /// <summary>A layer of known water activity.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="isotherm">Its isotherm.</param>
    /// <param name="thicknessMillimetres">Thickness, mm.</param>
    /// <param name="densityGramsPerMillilitre">Density with its water and its air, g/mL.</param>
    /// <param name="waterActivity">Water activity at the start, from 0 to below 1.</param>
    /// <param name="diffusivity">How fast water moves in it, m²/s.</param>
    /// <exception cref="ArgumentException">A figure is outside its range; all that are wrong are named.</exception>
    public static WaterLayer OfActivity(string name, SorptionIsotherm isotherm, double thicknessMillimetres, double densityGramsPerMillilitre, double waterActivity, Given diffusivity)
    {
        List<string> wrong = Wrong(thicknessMillimetres, densityGramsPerMillilitre, diffusivity);
        if (!(waterActivity is >= 0 and < 1)) wrong.Add(FormattableString.Invariant($"its water activity is from 0 to below 1, found {waterActivity:G6}"));
        Refuse(name, wrong);
        var water = isotherm.WaterGramsPerGramDry(waterActivity);
        return new(name, isotherm, thicknessMillimetres, densityGramsPerMillilitre / (1 + water), water, diffusivity);
    }

    /// <summary>A layer of known water content.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="isotherm">Its isotherm.</param>
    /// <param name="thicknessMillimetres">Thickness, mm.</param>
    /// <param name="densityGramsPerMillilitre">Density with its water and its air, g/mL.</param>
    /// <param name="waterPercent">Water in 100 g of it, from 0 to below 100.</param>
    /// <param name="diffusivity">How fast water moves in it, m²/s.</param>
    /// <exception cref="ArgumentException">A figure is outside its range; all that are wrong are named.</exception>
    public static WaterLayer OfWater(string name, SorptionIsotherm isotherm, double thicknessMillimetres, double densityGramsPerMillilitre, double waterPercent, Given diffusivity)
    {
        List<string> wrong = Wrong(thicknessMillimetres, densityGramsPerMillilitre, diffusivity);
        if (!(waterPercent is >= 0 and < 100)) wrong.Add(FormattableString.Invariant($"its water is from 0 to below 100 %, found {waterPercent:G6}"));
        Refuse(name, wrong);
        var layer = new WaterLayer(name, isotherm, thicknessMillimetres, densityGramsPerMillilitre * (1 - waterPercent / 100), waterPercent / (100 - waterPercent), diffusivity);
        return layer.WaterActivity < 1 ? layer
            : throw new ArgumentException(FormattableString.Invariant($"The layer {name} cannot hold {waterPercent:G4} % of water by the isotherm of {isotherm.Name}, which reaches a water activity of 1 before."), nameof(waterPercent));
    }

    /// <summary>The same layer where water moves at another speed.</summary>
    /// <exception cref="ArgumentException">The diffusivity is not above 0.</exception>
    public WaterLayer WithDiffusivity(Given diffusivity)
    {
        Refuse(Name, Wrong(ThicknessMillimetres, DryGramsPerMillilitre, diffusivity));
        return this with { Diffusivity = diffusivity };
    }

    private static List<string> Wrong(double thicknessMillimetres, double densityGramsPerMillilitre, Given diffusivity)
    {
        List<string> wrong = [];
        if (!(thicknessMillimetres > 0 && double.IsFinite(thicknessMillimetres))) wrong.Add(FormattableString.Invariant($"its thickness is above 0 mm, found {thicknessMillimetres:G6}"));
        if (!(densityGramsPerMillilitre > 0 && double.IsFinite(densityGramsPerMillilitre))) wrong.Add(FormattableString.Invariant($"its density is above 0 g/mL, found {densityGramsPerMillilitre:G6}"));
        if (!(diffusivity.Value > 0 && double.IsFinite(diffusivity.Value))) wrong.Add(FormattableString.Invariant($"its diffusivity is above 0 m²/s, found {diffusivity.Value:G6}"));
        return wrong;
    }

    private static void Refuse(string name, List<string> wrong)
    {
        if (wrong.Count > 0) throw new ArgumentException($"The layer {name} cannot be: {string.Join("; ", wrong)}.");
    }
}
