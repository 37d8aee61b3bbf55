using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>A band of a front-of-pack scheme: a range of a figure with its level or its points.</summary>
/// <param name="Scheme">The scheme: colour, profile or symbol.</param>
/// <param name="Part">The part of the scheme: food, drink, portion; A or C points.</param>
/// <param name="Figure">The figure by its key in the declaration, or a tag; empty where it comes from no food table.</param>
/// <param name="Word">The word for it.</param>
/// <param name="Level">The level; empty where the band has points.</param>
/// <param name="Points">The points; 0 where the band has a level.</param>
/// <param name="Range">The range.</param>
/// <param name="Unit">The unit of the figure.</param>
/// <param name="Origin">Where the band came from.</param>
public sealed record FrontOfPackBand(string Scheme, string Part, string Figure, string Word, string Level, int Points, FigureBand Range, string Unit, RuleOrigin Origin);

/// <summary>The schemes for the front of a pack that a government has published: <c>front-of-pack.csv</c> and <c>front-of-pack-rules.csv</c>.</summary>
public sealed class FrontOfPackRules
{
    private const string Colour = "colour", Profile = "profile", Symbol = "symbol";

    private readonly IReadOnlyDictionary<string, double> _numbers;

    private FrontOfPackRules(IReadOnlyList<FrontOfPackBand> bands, IReadOnlyDictionary<string, double> numbers) => (Bands, _numbers) = (bands, numbers);

    /// <summary>Every band.</summary>
    public IReadOnlyList<FrontOfPackBand> Bands { get; }

    /// <summary>Whether the rule set has colours.</summary>
    public bool HasColours => Bands.Any(band => band.Scheme == Colour);

    /// <summary>Whether it has profile points.</summary>
    public bool HasProfile => Bands.Any(band => band.Scheme == Profile);

    /// <summary>Whether it has a nutrition symbol.</summary>
    public bool HasSymbol => Bands.Any(band => band.Scheme == Symbol);

    /// <summary>The schemes of a rule set; empty ones where its folder has none.</summary>
    /// <exception cref="TableException">A cell cannot be read.</exception>
    public static FrontOfPackRules Of(RuleSet rules) => rules.Folder.Table(Read);

    /// <summary>The level of a figure in 100 g or 100 ml: <c>red</c>; null where the scheme has no such figure.</summary>
    public FrontOfPackBand? ColourOf(string word, bool isDrink, decimal amount) => Bands.FirstOrDefault(band => band.Scheme == Colour && band.Part == (isDrink ? "drink" : "food") && Names.Same(band.Word, word) && band.Range.Takes(amount));

    /// <summary>The level that a large portion has whatever 100 g of it have; null where none applies.</summary>
    public FrontOfPackBand? PortionColourOf(string word, bool isDrink, double portion, decimal amountInPortion) =>
        portion > Number(isDrink ? "portion_from_ml" : "portion_from_g")
            ? Bands.FirstOrDefault(band => band.Scheme == Colour && band.Part == (isDrink ? "drink portion" : "food portion") && Names.Same(band.Word, word) && band.Range.Takes(amountInPortion)) : null;

    /// <summary>The figures that have a colour.</summary>
    public IReadOnlyList<(string Word, string Figure, string Unit)> Coloured => [.. Bands.Where(band => band is { Scheme: Colour, Part: "food" }).Select(band => (band.Word, band.Figure, band.Unit)).Distinct()];

    /// <summary>The figures that score points.</summary>
    public IReadOnlyList<(string Part, string Word, string Figure, string Unit)> Scored => [.. Bands.Where(band => band.Scheme == Profile).Select(band => (band.Part, band.Word, band.Figure, band.Unit)).Distinct()];

    /// <summary>The figures that the symbol may name.</summary>
    public IReadOnlyList<(string Word, string Figure)> Symbols => [.. Bands.Where(band => band.Scheme == Symbol).Select(band => (band.Word, band.Figure)).Distinct()];

    /// <summary>From what percentage of the daily value the symbol must name a figure, for a food of this reference amount in grams.</summary>
    public (double Percent, RuleOrigin Origin)? SymbolThreshold(string word, double referenceGrams) =>
        Bands.FirstOrDefault(band => band.Scheme == Symbol && Names.Same(band.Word, word) && band.Range.Takes(RoundingTable.ToDecimal(referenceGrams))) is { } band
            ? (double.Parse(band.Level, System.Globalization.CultureInfo.InvariantCulture), band.Origin) : null;

    /// <summary>The points of a figure.</summary>
    /// <exception cref="KeyNotFoundException">The scheme scores no such figure.</exception>
    public int PointsOf(string word, decimal amount) => PointsBandOf(word, amount).Points;

    /// <summary>The band that gives a figure its points; an amount below zero counts as zero.</summary>
    /// <exception cref="KeyNotFoundException">The scheme scores no such figure.</exception>
    internal FrontOfPackBand PointsBandOf(string word, decimal amount) => Bands.FirstOrDefault(band => band.Scheme == Profile && Names.Same(band.Word, word) && band.Range.Takes(Math.Max(0, amount)))
        ?? throw new KeyNotFoundException($"The scheme scores no '{word}'; it scores {string.Join(", ", Scored.Select(each => each.Word))}.");

    /// <summary>The score of a food from its points.</summary>
    /// <param name="badPoints">Points of energy, saturates, sugars and sodium together.</param>
    /// <param name="fruitPoints">Points of fruit, vegetables and nuts.</param>
    /// <param name="fibrePoints">Points of fibre.</param>
    /// <param name="proteinPoints">Points of protein, which may not count.</param>
    public int Score(int badPoints, int fruitPoints, int fibrePoints, int proteinPoints) =>
        badPoints - fruitPoints - fibrePoints - (ProteinCounts(badPoints, fruitPoints) ? proteinPoints : 0);

    /// <summary>Whether the points of protein count.</summary>
    public bool ProteinCounts(int badPoints, int fruitPoints) => badPoints < Number("protein_limit_points") || fruitPoints >= Number("protein_exempt_points");

    /// <summary>From what score a food counts as less healthy.</summary>
    public double LessHealthyFrom(bool isDrink) => Number(isDrink ? "less_healthy_drink" : "less_healthy_food");

    private double Number(string key) => _numbers.TryGetValue(key, out var number) ? number : throw new KeyNotFoundException($"front-of-pack-rules.csv has no row '{key}'.");

    private static FrontOfPackRules Read(RuleFolder folder, List<CellProblem> problems)
    {
        string[] schemes = [Colour, Profile, Symbol];
        FrontOfPackBand[] bands = [.. folder.RowsIfAny("front-of-pack.csv", ["scheme", "part", "figure", "word", "level", "points", "from", "from_inclusive", "to", "to_inclusive", "unit", "basis"], problems).Select(row =>
        {
            var scheme = row.Cells.Required("scheme");
            if (!schemes.Contains(scheme)) row.Cells.Note("scheme", $"one of: {string.Join(", ", schemes)}");
            return new FrontOfPackBand(scheme, row.Cells.Required("part"), row.Cells.Text("figure") ?? "", row.Cells.Required("word"), row.Cells.Text("level") ?? "", row.Cells.Whole("points", 0) ?? 0,
                row.Band(), row.Cells.Text("unit") ?? "", row.Origin());
        })];
        return new(bands, folder.RowsIfAny("front-of-pack-rules.csv", ["key", "value"], problems).ToDictionary(row => row.Cells.Required("key"), row => row.Cells.RequiredNumber("value", 0), Names.Comparer));
    }
}
