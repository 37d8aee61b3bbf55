using Tamis.Costing;
using Tamis.Formulas;

namespace Tamis.Desserts;

/// <summary>A component in a piece.</summary>
/// <param name="Component">What the component costs.</param>
/// <param name="Grams">How much of it stands in the piece, finished.</param>
public sealed record PieceShare(ComponentCost Component, double Grams)
{
    /// <summary>What that costs.</summary>
    public Amount Cost => Component.PerGram * Grams;
}

/// <summary>An ingredient in the cost of a piece.</summary>
/// <param name="Line">A line that prices it.</param>
/// <param name="Grams">What is weighed of it for a piece, with its part of every loss.</param>
/// <param name="Piece">The cost of the whole piece.</param>
public sealed record IngredientShare(CostLine Line, double Grams, Amount Piece)
{
    /// <summary>Its name.</summary>
    public string Name => Line.Line.Name;

    /// <summary>What it costs in a piece; null where the price is not known.</summary>
    public double? Cost => Line.PerWeighedGram * Grams;

    /// <summary>Its part of the known cost of a piece, 0 to 1: a price that rises by one per cent moves that cost by so many per cent. Null where its price is not known.</summary>
    public double? Share => Piece.Known > 0 ? Cost / Piece.Known : null;
}

/// <summary>What a trial costs on a day: by component, piece, portion and 100 g, with hands and energy where they are given.</summary>
public sealed class DessertCosts
{
    private DessertCosts(Dessert dessert, string trial, DateOnly? day, string? montageSheet)
    {
        (Dessert, Trial, Day) = (dessert, dessert.Trial(trial).Trial, day);
        Currency = dessert.Prices.Currency ?? dessert.Facts.Text("currency") ?? "";
        Batch = BatchCost.Of(dessert.Trial(trial), PriceOf, Currency);
        BatchPieces = dessert.Facts.Number("pieces", Trial);
        var piece = dessert.PieceOf(Trial, montageSheet);
        var placed = dessert.Trial(trial).Formula.Placed;
        Unknown = [.. placed.Where(component => Batch.Find(component.Name) is null || piece is not null && piece.GramsOf(component.Name) is null).Select(component => component.Name)];
        Piece = piece is null && BatchPieces is null ? [] : [.. from component in Batch.Components
                  let grams = piece is not null ? piece.GramsOf(component.Name) : placed.Any(each => Names.Same(each.Name, component.Name)) ? component.Made.YieldGrams / BatchPieces : 0
                  where grams > 0
                  select new PieceShare(component, grams.Value)];
    }

    /// <summary>The costs of a trial.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="day">The day whose prices count; the last make of the trials sheet where null.</param>
    /// <param name="montageSheet">A montage sheet of other sizes in the dessert folder; null for the usual one.</param>
    /// <exception cref="Tables.TableException">A price must be mended first: every bad cell is named.</exception>
    public static DessertCosts Of(Dessert dessert, string trial, DateOnly? day = null, string? montageSheet = null) => new(dessert, trial, day ?? dessert.Store.AsOf, montageSheet);

    /// <summary>The dessert.</summary>
    public Dessert Dessert { get; }

    /// <summary>The trial.</summary>
    public string Trial { get; }

    /// <summary>The day whose prices count; null where the newest of all do.</summary>
    public DateOnly? Day { get; }

    /// <summary>The currency.</summary>
    public string Currency { get; }

    /// <summary>The batch as the formula makes it.</summary>
    public BatchCost Batch { get; }

    /// <summary>How many pieces the batch is for; null where nobody wrote it.</summary>
    public double? BatchPieces { get; }

    /// <summary>What stands in a piece, in the order of the formula; empty where nobody says.</summary>
    public IReadOnlyList<PieceShare> Piece { get; }

    /// <summary>Components of which nobody knows what they weigh: they are not in the cost of a piece.</summary>
    public IReadOnlyList<string> Unknown { get; }

    /// <summary>What a piece weighs, in grams.</summary>
    public double PieceGrams => Piece.Sum(share => share.Grams);

    /// <summary>What the ingredients of a piece cost, and for which mass a price is known.</summary>
    public Amount PieceCost => field == default ? field = Piece.Aggregate(default(Amount), (sum, share) => sum + share.Cost) : field;

    /// <summary>The same for 100 g of the piece.</summary>
    public Amount Per100Grams => PieceGrams > 0 ? PieceCost * (100 / PieceGrams) : default;

    /// <summary>How many portions a piece gives; null where nobody wrote it.</summary>
    public double? Portions => Dessert.Facts.Number("portions", Trial);

    /// <summary>The cost of a portion; null where nobody wrote how many there are.</summary>
    public Amount? PortionCost => Portions is { } portions ? PieceCost * (1 / portions) : null;

    /// <summary>What an hour of hands costs; null where nobody wrote it.</summary>
    public double? LabourPerHour => Dessert.Facts.Number("labour_per_hour", Trial);

    /// <summary>The time of hands for the batch, by component, the putting together last.</summary>
    public IReadOnlyList<Labour> Labour => field ??= [.. Batch.Components.Select(component => component.Name).Append(MethodStep.Assembly)
        .Select(name => Costing.Labour.Of(name, Dessert.Method?.StepsOf(name, Dessert.LineOf(Trial)) ?? [])).OfType<Labour>()];

    /// <summary>What hands cost for one piece of a batch of this size; null without a rate, a method or a number of pieces.</summary>
    public Interval? LabourPerPiece => LabourPerHour is { } rate && BatchPieces is { } pieces && Labour.Count > 0
        ? Labour.Aggregate(default(Interval), (sum, labour) => sum + labour.Cost(rate)) * (1 / pieces) : null;

    /// <summary>Whether the time of every step is known.</summary>
    public bool IsLabourWhole => Labour.Count > 0 && Labour.All(labour => labour.WithoutTime.Count == 0);

    /// <summary>What energy costs for one piece of the batch; null without <c>energy_kwh</c>, <c>energy_per_kwh</c> or a number of pieces.</summary>
    public double? EnergyPerPiece => Dessert.Facts.Number("energy_kwh", Trial) * Dessert.Facts.Number("energy_per_kwh", Trial) / BatchPieces;

    /// <summary>The selling price of a piece; null where price or tax is not written.</summary>
    public Selling? Selling => Dessert.Facts.Number("price", Trial) is { } price && Dessert.Facts.Number("tax_percent", Trial) is { } tax ? new(price, tax) : null;

    /// <summary>Every ingredient in the cost of a piece, the dearest first; those without a price last.</summary>
    public IReadOnlyList<IngredientShare> Ingredients => field ??= [.. Piece.SelectMany(share => share.Component.WeighedForAGram.Select(each => (each.Line, Grams: each.Grams * share.Grams)))
        .GroupBy(each => each.Line.Line.Name, Names.Comparer).Select(group => new IngredientShare(group.First().Line, group.Sum(each => each.Grams), PieceCost))
        .OrderByDescending(share => share.Cost ?? -1).ThenBy(share => share.Name, StringComparer.Ordinal)];

    /// <summary>Ingredients of the trial whose first price is later than the day.</summary>
    public IReadOnlyList<string> PricedLater => [.. NamesWhere(price => price?.IsLater == true)];

    /// <summary>Ingredients of the trial of which no price is known.</summary>
    public IReadOnlyList<string> WithoutPrice => [.. NamesWhere(price => price?.Price.PerGram is null)];

    /// <summary>How the cost of a piece was worked out.</summary>
    public Working Working => new($"ingredients of a piece of {Trial}", PieceCost.CoveredMassGrams > 0 ? PieceCost.Known : double.NaN, Currency, new("sum over what stands in the piece", Evidence.Computed))
    {
        From = [.. Piece.Select(share => new Working(FormattableString.Invariant($"{share.Grams:0.#} g of {share.Component.Name}"), share.Cost.CoveredMassGrams > 0 ? share.Cost.Known : double.NaN, Currency,
            new("mass in the piece times cost of a gram", Evidence.Computed)) { From = [share.Component.Working] })],
    };

    private PriceInUse? PriceOf(string ingredient) => Dessert.Prices.On(ingredient, Day);

    private IEnumerable<string> NamesWhere(Func<PriceInUse?, bool> holds) =>
        Batch.Components.SelectMany(component => component.Lines).Where(line => line.Inner is null && holds(line.Price)).Select(line => line.Line.Name).Distinct(Names.Comparer);
}
