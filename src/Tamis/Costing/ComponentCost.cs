using Tamis.Formulas;
using Tamis.Losses;

namespace Tamis.Costing;

/// <summary>What one line of a component costs: an ingredient as bought, or another component by what a gram of it costs.</summary>
/// <param name="Line">The line.</param>
/// <param name="Currency">The currency of its cost.</param>
public sealed record CostLine(BatchLine Line, string Currency)
{
    /// <summary>The ingredient; null where the line is another component.</summary>
    public Ingredient? Ingredient { get; init; }

    /// <summary>The price that counts; null where there is none.</summary>
    public PriceInUse? Price { get; init; }

    /// <summary>The other component; null where the line is an ingredient.</summary>
    public ComponentCost? Inner { get; init; }

    /// <summary>What has to be bought for it, in grams; 0 where it is another component.</summary>
    public double BoughtGrams => Ingredient is { } ingredient ? EdibleYield.BoughtGrams(Line.MassGrams, ingredient.EdiblePercent) : 0;

    /// <summary>What a gram of it costs on the scale; null where the price is not known.</summary>
    public double? PerWeighedGram => Ingredient is { } ingredient && Price?.Price.PerGram is { } perGram ? EdibleYield.EdiblePricePerGram(perGram, ingredient.EdiblePercent) : null;

    /// <summary>What it costs, and for which mass of it a price is known.</summary>
    public Amount Cost => Inner is { } inner ? inner.PerGram * Line.MassGrams
        : PerWeighedGram is { } each ? new(each * Line.MassGrams, Line.MassGrams, Line.MassGrams) : new(0, 0, Line.MassGrams);

    /// <summary>How its cost was worked out.</summary>
    public Working Working => Inner is { } inner
        ? new($"{Line.Name}, by what a gram of it costs", Shown(Cost), Currency, new("mass times cost of a gram", Evidence.Computed)) { From = [Weighed, inner.Working] }
        : new($"{Line.Name}{(Price is null ? ": no price" : Price.IsLater ? ", at its first price, which is later than the day" : "")}", Shown(Cost), Currency, new("mass as bought times price of a gram", Evidence.Computed))
        {
            From = [Weighed, .. Edible, .. Priced],
        };

    private Working Weighed => new("weighed", Line.MassGrams, "g", Line.Origin);

    private IEnumerable<Working> Edible => Ingredient is { EdiblePercent: < 100 } ingredient
        ? [new("used of what is bought", ingredient.EdiblePercent, "%", ingredient.Origin is { } origin ? origin with { Locator = origin.Locator.Replace("column ingredient", "column edible_percent", StringComparison.Ordinal) } : Line.Origin)] : [];

    private IEnumerable<Working> Priced => Price?.Price is not { } price ? []
        : [new($"price of a {(price.Pack.Length > 0 ? price.Pack : "pack")}{(price.PackGrams is { } grams ? FormattableString.Invariant($" of {grams:0.##} g") : "")}", price.PackPrice ?? double.NaN, Currency, price.Origin)];

    internal static double Shown(Amount cost) => cost.CoveredMassGrams > 0 ? cost.Known : double.NaN;
}

/// <summary>What a component costs as it is made.</summary>
/// <param name="Made">The component as it is made.</param>
/// <param name="Lines">Its lines, in the order of the sheet.</param>
/// <param name="Currency">The currency of its cost.</param>
public sealed record ComponentCost(ComponentBatch Made, IReadOnlyList<CostLine> Lines, string Currency)
{
    /// <summary>Its name.</summary>
    public string Name => Made.Name;

    /// <summary>What all that went in costs, and for which mass of it, as weighed in, a price is known.</summary>
    public Amount Cost => Lines.Aggregate(default(Amount), (sum, line) => sum + line.Cost);

    /// <summary>What a gram of the finished component costs; what left was paid for too. Nothing is known where nothing is left.</summary>
    public Amount PerGram => Made.YieldGrams > 0 ? Cost * (1 / Made.YieldGrams) : default;

    /// <summary>What is weighed of every ingredient for one gram of the finished component, in grams, with the line that prices it.</summary>
    public IEnumerable<(CostLine Line, double Grams)> WeighedForAGram => Made.YieldGrams <= 0 ? []
        : Lines.SelectMany(line => line.Inner is { } inner
            ? inner.WeighedForAGram.Select(each => (each.Line, Grams: each.Grams * line.Line.MassGrams / Made.YieldGrams))
            : [(Line: line, Grams: line.Line.MassGrams / Made.YieldGrams)]);

    /// <summary>How its cost was worked out.</summary>
    public Working Working => new($"{Name}, as made", CostLine.Shown(Cost), Currency, new("sum over its lines", Evidence.Computed))
    {
        From = [.. Lines.Select(line => line.Working), new("left of it when it is finished", Made.YieldGrams, "g", new("what was weighed in, less what left", Evidence.Computed)),
            new("a gram of it", CostLine.Shown(PerGram), Currency, new("cost over what is left", Evidence.Computed))],
    };
}
