namespace Tamis.Physics;

/// <summary>A mass of dry matter with the water that it holds, whatever its shape.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Isotherm">How its water activity rises with its water.</param>
/// <param name="DryGrams">Dry matter, g, above 0.</param>
/// <param name="WaterGrams">Water, g, 0 or more.</param>
public sealed record WaterHolder(string Name, SorptionIsotherm Isotherm, double DryGrams, double WaterGrams)
{
    /// <summary>Its water activity.</summary>
    public double WaterActivity => Isotherm.WaterActivity(WaterGrams / DryGrams);

    /// <summary>So much dry matter with so much water.</summary>
    /// <exception cref="ArgumentException">A mass is outside its range.</exception>
    public static WaterHolder OfWater(string name, SorptionIsotherm isotherm, double dryGrams, double waterGrams)
    {
        if (!(dryGrams > 0 && double.IsFinite(dryGrams))) throw new ArgumentException(FormattableString.Invariant($"The dry matter of {name} is above 0 g, found {dryGrams:G6}."), nameof(dryGrams));
        if (!(waterGrams >= 0 && double.IsFinite(waterGrams))) throw new ArgumentException(FormattableString.Invariant($"The water of {name} is 0 g or more, found {waterGrams:G6}."), nameof(waterGrams));
        return isotherm.WaterActivity(waterGrams / dryGrams) < 1 ? new(name, isotherm, dryGrams, waterGrams)
            : throw new ArgumentException(FormattableString.Invariant($"{name} cannot hold {waterGrams / dryGrams:G4} g of water per g of dry matter by the isotherm of {isotherm.Name}, which reaches a water activity of 1 before."), nameof(waterGrams));
    }

    /// <summary>So much dry matter at a water activity from 0 to below 1.</summary>
    /// <exception cref="ArgumentException">The mass or the water activity is outside its range.</exception>
    public static WaterHolder OfActivity(string name, SorptionIsotherm isotherm, double dryGrams, double waterActivity) =>
        OfWater(name, isotherm, dryGrams, dryGrams * isotherm.WaterGramsPerGramDry(waterActivity));
}

/// <summary>What layers come to when they lie packed together for long: one water activity for all, and the water that each holds then.</summary>
/// <param name="WaterActivity">The common water activity.</param>
/// <param name="Layers">Each layer with the water that it holds then, in the order given; together they hold what they held before.</param>
public sealed record StackEquilibrium(Predicted WaterActivity, IReadOnlyList<WaterHolder> Layers)
{
    /// <summary>The equilibrium of layers in a close pack: no water leaves, nothing crystallises, no layer remembers whether it was wetter before.</summary>
    /// <exception cref="ArgumentException">There is no layer.</exception>
    public static StackEquilibrium Of(IReadOnlyList<WaterHolder> layers)
    {
        if (layers.Count == 0) throw new ArgumentException("An equilibrium needs at least one layer.", nameof(layers));
        var total = layers.Sum(layer => layer.WaterGrams);
        var common = CommonActivity(layers, total);
        double[] held = [.. layers.Select(layer => layer.DryGrams * layer.Isotherm.WaterGramsPerGramDry(common))];
        // The root is a double; what its last digit leaves over is shared out, so that no water comes or goes.
        var scale = held.Sum() is > 0 and var found ? total / found : 1;
        WaterHolder[] then = [.. layers.Select((layer, i) => layer with { WaterGrams = held[i] * scale })];
        var figure = Predicted.Computed(PhysicsData.Kit.Equation("stack equilibrium"), common, () => [.. layers.Select((layer, i) => Step(layer, then[i]))]);
        return new(figure with { Outside = [.. layers.SelectMany(layer => Outside(layer, common))] }, then);
    }

    /// <summary>Sentences on a layer whose isotherm was not made for the water activities that it passes through.</summary>
    internal static IEnumerable<string> Outside(WaterHolder layer, double common)
    {
        var (start, valid) = (layer.WaterActivity, layer.Isotherm.ValidWaterActivity);
        foreach (var (when, activity) in new[] { ("starts", start), ("ends", common) })
        {
            // A composition is asked at its own ends, where rounding must not make it a guess.
            if (activity < valid.Low - 1e-9 || activity > valid.High + 1e-9)
                yield return FormattableString.Invariant($"{layer.Name} {when} at a water activity of {activity:0.00}, its isotherm ({layer.Isotherm.Name}) holds from {valid.Low:0.00} to {valid.High:0.00}");
        }
    }

    private static double CommonActivity(IReadOnlyList<WaterHolder> layers, double total)
    {
        double low = layers.Min(layer => layer.WaterActivity), high = layers.Max(layer => layer.WaterActivity);
        for (var i = 0; i < 100 && high - low > 1e-16; i++)
        {
            var middle = low + (high - low) / 2;
            if (layers.Sum(layer => layer.DryGrams * layer.Isotherm.WaterGramsPerGramDry(middle)) < total) low = middle; else high = middle;
        }
        return low + (high - low) / 2;
    }

    private static Working Step(WaterHolder before, WaterHolder after) => new($"{before.Name}: water at equilibrium", after.WaterGrams, "g", before.Isotherm.Source)
    {
        From =
        [
            new($"{before.Name}: water before", before.WaterGrams, "g", before.Isotherm.Source),
            new($"{before.Name}: water activity before", before.WaterActivity, "", before.Isotherm.Source),
            new($"{before.Name}: dry matter", before.DryGrams, "g", before.Isotherm.Source),
        ],
    };
}
