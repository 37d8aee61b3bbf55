using System.Globalization;

namespace Tamis.Formulas;

/// <summary>What a written quantity counts.</summary>
public enum QuantityKind
{
    /// <summary>A mass, in grams.</summary>
    Mass,
    /// <summary>A volume, in millilitres.</summary>
    Volume,
    /// <summary>A number of pieces.</summary>
    Pieces,
    /// <summary>A share of everything, in per cent.</summary>
    Share,
    /// <summary>A share of one named line, in per cent.</summary>
    ShareOf,
    /// <summary>All that is left.</summary>
    Rest,
}

/// <summary>A quantity as a cook writes it: <c>250 g</c>, <c>2 eggs</c>, <c>20-25 g</c>, <c>1/2 tbsp</c>, <c>a pinch</c>, <c>rest</c>, <c>8 % of rye flakes</c>.</summary>
public sealed record WrittenQuantity
{
    /// <summary>The text as written, blanks at its ends taken off.</summary>
    public required string Text { get; init; }

    /// <summary>What it counts.</summary>
    public required QuantityKind Kind { get; init; }

    /// <summary>The amount: grams, millilitres, pieces or per cent by its kind; a point unless a range was written; 0 for the rest.</summary>
    public required Interval Range { get; init; }

    /// <summary>The unit as written, one of it (<c>g</c>, <c>tbsp</c>, <c>yolk</c>, <c>%</c>); empty for a bare number and the rest.</summary>
    public string Unit { get; init; } = "";

    /// <summary>The line that a share is of; null where it is of everything or no share.</summary>
    public string? Of { get; init; }

    /// <summary>Whether it was written as an estimate: <c>about 20 g</c>, <c>~20 g</c>.</summary>
    public bool IsAbout { get; init; }

    /// <summary>Reads a quantity.</summary>
    /// <param name="text">The text of the cell.</param>
    /// <param name="decimalMark">Point or comma, as the sheet has it.</param>
    /// <param name="quantity">The quantity; null where it is none.</param>
    /// <param name="expected">What was expected instead, in words; null where it was read.</param>
    /// <param name="measures">What spoons and cups hold; metric where null.</param>
    public static bool TryParse(string text, char decimalMark, out WrittenQuantity? quantity, out string? expected, KitchenMeasures? measures = null) =>
        (quantity = QuantityGrammar.Read(text.Trim(), decimalMark, measures ?? KitchenMeasures.Metric, out expected)) is not null;

    /// <summary>A plain mass, as a cook would write it.</summary>
    /// <param name="grams">The mass, zero or more.</param>
    public static WrittenQuantity OfGrams(double grams) => new() { Text = $"{Number(grams)} g", Kind = QuantityKind.Mass, Range = Interval.At(grams), Unit = "g" };

    /// <summary>What it weighs of an ingredient; null where that is not known.</summary>
    public ResolvedQuantity? Resolve(Ingredient ingredient) => Resolve(ingredient, out _);

    /// <summary>What it weighs of an ingredient; null where that is not known or the sheet must be mended.</summary>
    /// <param name="ingredient">What is weighed: its piece, density and edible share.</param>
    /// <param name="gap">Why it has no mass; null where it has one.</param>
    public ResolvedQuantity? Resolve(Ingredient ingredient, out QuantityGap? gap)
    {
        gap = null;
        return Kind switch
        {
            QuantityKind.Mass => Weighed(1, Range.IsPoint ? "" : $"middle of {Written(Range)}\u202fg"),
            QuantityKind.Volume => OfVolume(ingredient, ref gap),
            QuantityKind.Pieces => OfPieces(ingredient, ref gap),
            _ => Fail(ref gap, true, $"a quantity: '{Text}' says nothing about {ingredient.Name} alone"),
        };
    }

    /// <summary>A share as a mass of what it is a share of.</summary>
    /// <param name="baseGrams">The mass that it is a share of, in grams.</param>
    /// <exception cref="InvalidOperationException">It is no share.</exception>
    public ResolvedQuantity OfMass(double baseGrams) => Kind is QuantityKind.Share or QuantityKind.ShareOf
        ? Weighed(baseGrams / 100, $"{Written(Range)}\u202f% of {Number(baseGrams)}\u202fg")
        : throw new InvalidOperationException($"'{Text}' is not a share.");

    private ResolvedQuantity? OfVolume(Ingredient ingredient, ref QuantityGap? gap) =>
        ingredient.DensityGramsPerMillilitre is { } density
            ? Weighed(density, $"{WithoutAbout} = {Written(Range)}\u202fml at {Number(density)}\u202fg/ml")
            : Fail(ref gap, false, $"the density of {ingredient.Name} is not known: fill density_g_ml, or weigh it");

    private ResolvedQuantity? OfPieces(Ingredient ingredient, ref QuantityGap? gap)
    {
        if (ingredient.Piece is { } piece && Unit.Length > 0 && !PieceWord.Same(Unit, piece))
        {
            return Unit == "pinch" ? Pinch()
                : Fail(ref gap, true, $"grams, or a number of {piece}: {ingredient.Name} is counted by the {piece}, not by the {Unit}");
        }
        if (ingredient.PieceGrams is { } grams)
        {
            var edible = ingredient.EdiblePercent == 100 ? "" : $", {Number(ingredient.EdiblePercent)}\u202f% of it used";
            var counted = Unit.Length > 0 ? WithoutAbout : $"{WithoutAbout} {ingredient.Piece ?? "piece"}";
            return Weighed(grams * ingredient.EdiblePercent / 100, $"{counted} of {Number(grams)}\u202fg{edible}");
        }
        if (Unit == "pinch") return Pinch();
        if (Unit.Length == 0 && ingredient.Piece is null) return Fail(ref gap, true, $"a unit behind '{Text}': {ingredient.Name} has no piece that could be counted");
        var near = ingredient.Piece is null ? Names.Nearest(Unit, WrittenUnit.Words, 1) : [];
        var hint = Unit.Length > 4 && near is [var unit] ? $" (is '{unit}' meant?)" : "";
        return Fail(ref gap, false, $"the mass of one {(Unit.Length > 0 ? Unit : ingredient.Piece)} of {ingredient.Name} is not known: fill piece and piece_g, or weigh it{hint}");
    }

    private ResolvedQuantity Pinch() => new(Range.Middle * KitchenMeasures.PinchGrams,
        Interval.Between(Range.Low * KitchenMeasures.PinchRangeGrams.Low, Range.High * KitchenMeasures.PinchRangeGrams.High),
        $"a pinch is about {Number(KitchenMeasures.PinchGrams)}\u202fg, {Written(KitchenMeasures.PinchRangeGrams)}\u202fg (common practice, no source)");

    private ResolvedQuantity Weighed(double gramsEach, string assumption) => new(Range.Middle * gramsEach, Range * gramsEach,
        !IsAbout ? assumption : assumption.Length == 0 ? "about, as written" : $"about; {assumption}");

    private string WithoutAbout => QuantityGrammar.TrimAbout(Text);

    private static ResolvedQuantity? Fail(ref QuantityGap? gap, bool isMistake, string reason)
    {
        gap = new(isMistake, reason);
        return null;
    }

    private static string Written(Interval range) => range.IsPoint ? Number(range.Low) : $"{Number(range.Low)} to {Number(range.High)}";

    private static string Number(double value) => value.ToString(value < 10 ? "0.##" : "0.#", CultureInfo.InvariantCulture);
}
