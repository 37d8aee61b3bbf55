using Tamis.Formulas;

namespace Tamis.Verification;

/// <summary>Quantities as written, ratios and scaling, as check files ask for them.</summary>
public static class QuantityQuantities
{
    /// <summary>The quantities by name.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = new Dictionary<string, Func<CheckInputs, CheckValue>>(StringComparer.Ordinal)
    {
        ["quantity_mass_g"] = inputs => Written(inputs, resolved => resolved.MassGrams),
        ["quantity_low_g"] = inputs => Written(inputs, resolved => resolved.RangeGrams.Low),
        ["quantity_high_g"] = inputs => Written(inputs, resolved => resolved.RangeGrams.High),
        ["ratio"] = inputs => CheckValue.Of(Lines(inputs).Ratio(inputs.Text("of"), inputs.List("base"))),
        ["bakers_percentage"] = inputs => CheckValue.Of(Lines(inputs).BakersPercentage(inputs.Text("of"), inputs.List("base"))),
        ["scaled_mass_g"] = inputs => CheckValue.Of(Scaled(inputs).MassGrams(inputs.Text("of"))),
    };

    private static CheckValue Written(CheckInputs inputs, Func<ResolvedQuantity, double> figure)
    {
        var measures = KitchenMeasures.Named(inputs.OptionalText("measures") ?? "metric");
        if (!WrittenQuantity.TryParse(inputs.Text("text"), DecimalMark(inputs), out var quantity, out _, measures) || quantity is null) return CheckValue.Of("refused");
        var resolved = Resolved(quantity, inputs, out var gap);
        return resolved is not null ? CheckValue.Of(figure(resolved)) : CheckValue.Of(gap is { IsMistake: true } ? "refused" : "unknown");
    }

    private static ResolvedQuantity? Resolved(WrittenQuantity quantity, CheckInputs inputs, out QuantityGap? gap)
    {
        gap = null;
        switch (quantity.Kind)
        {
            case QuantityKind.Rest:
                var rest = inputs.Number("component_g") - inputs.Number("used_g");
                if (rest >= 0) return new(rest, Interval.At(rest), "");
                gap = new(true, "more was used than there is");
                return null;
            case QuantityKind.Share or QuantityKind.ShareOf:
                return quantity.OfMass(inputs.Number("of_g"));
            default:
                Ingredient ingredient = new()
                {
                    Name = "ingredient",
                    PieceGrams = inputs.OptionalNumber("piece_g"),
                    EdiblePercent = inputs.OptionalNumber("edible_percent") ?? 100,
                    DensityGramsPerMillilitre = inputs.OptionalNumber("density_g_ml"),
                };
                // In a check row, unlike in a sheet, a bare number beside a piece mass counts pieces.
                var counted = quantity is { Kind: QuantityKind.Mass, Unit: "" } && ingredient.PieceGrams is not null ? quantity with { Kind = QuantityKind.Pieces } : quantity;
                return counted.Resolve(ingredient, out gap);
        }
    }

    private static char DecimalMark(CheckInputs inputs) => inputs.OptionalText("decimal_mark") switch
    {
        null or "point" => '.',
        "comma" => ',',
        var other => throw new FormatException($"the input 'decimal_mark' is '{other}', not point or comma"),
    };

    private static WeighedLines Scaled(CheckInputs inputs)
    {
        var lines = Lines(inputs);
        return inputs.OptionalNumber("factor") is { } factor ? lines.Scaled(factor)
            : inputs.OptionalNumber("total_g") is { } total ? lines.ScaledToTotal(total)
            : inputs.OptionalNumber("finished_g") is { } finished ? lines.ScaledToFinished(finished, inputs.Number("water_lost_g"))
            : lines.ScaledToLine(inputs.Text("line"), inputs.Number("line_g"));
    }

    private static WeighedLines Lines(CheckInputs inputs) => new([.. inputs.Weighed("lines").Select(line => new WeighedLine(line.Name, line.MassGrams))]);
}
