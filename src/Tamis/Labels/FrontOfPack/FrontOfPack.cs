using System.Globalization;

namespace Tamis.Labels;

/// <summary>A figure of the front of a pack with what it was given.</summary>
/// <param name="Word">The figure.</param>
/// <param name="Amount">How much of it, in <paramref name="Unit"/>, on the scheme's basis; null where it is not known.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Given">The level, the points or the finding; <c>not known</c> where it cannot be said.</param>
/// <param name="Why">How it came to that.</param>
/// <param name="Origin">The rule; null where nothing could be given.</param>
public sealed record FrontOfPackFigure(string Word, double? Amount, string Unit, string Given, string Why, RuleOrigin? Origin)
{
    /// <summary>Whether the symbol must name it.</summary>
    public bool IsNamed { get; init; }
}

/// <summary>What a published scheme says of a food.</summary>
/// <param name="Title">The scheme in words.</param>
/// <param name="StandsOnPack">Whether what it gives is for print; points are not.</param>
/// <param name="Figures">Figure by figure.</param>
/// <param name="Verdict">What comes out, in a sentence.</param>
/// <param name="IsWhole">Whether every figure was known.</param>
public sealed record FrontOfPackScheme(string Title, bool StandsOnPack, IReadOnlyList<FrontOfPackFigure> Figures, string Verdict, bool IsWhole)
{
    /// <summary>Whether it asks for a symbol on the pack.</summary>
    public bool HasSymbol { get; init; }
}

/// <summary>The front-of-pack schemes of a rule set worked out for a food. Figures are those of the made formula before rounding.</summary>
public static class FrontOfPack
{
    private const string NotKnown = "not known";

    /// <summary>Every scheme that the rule set has; none where it has none.</summary>
    /// <param name="food">The food.</param>
    /// <param name="fruitPercent">Fruit, vegetables and nuts in it, in per cent; null where nobody stated it.</param>
    public static IReadOnlyList<FrontOfPackScheme> Of(ClaimedFood food, double? fruitPercent = null)
    {
        var rules = FrontOfPackRules.Of(food.Rules);
        List<FrontOfPackScheme> schemes = [];
        if (rules.HasColours) schemes.Add(Colours(food, rules));
        if (rules.HasProfile) schemes.Add(Profile(food, rules, fruitPercent));
        if (rules.HasSymbol) schemes.Add(Symbol(food, rules));
        return schemes;
    }

    private static FrontOfPackScheme Colours(ClaimedFood food, FrontOfPackRules rules)
    {
        var perMillilitre = food.IsLiquid ? food.DensityGramsPerMillilitre : 1;
        FrontOfPackFigure[] figures = [.. rules.Coloured.Select(each =>
        {
            if (perMillilitre is not { } times || AmountOf(food, each.Figure, each.Unit) is not { } per100Grams) return new FrontOfPackFigure(each.Word, null, each.Unit, NotKnown, "the figure is not known for all of the mass", null);
            var amount = per100Grams * times;
            var band = rules.ColourOf(each.Word, food.IsLiquid, RoundingTable.ToDecimal(amount))!;
            if (food.ServingGrams is { } portion && rules.PortionColourOf(each.Word, food.IsLiquid, portion, RoundingTable.ToDecimal(per100Grams * portion / 100)) is { } high)
                return new(each.Word, amount, each.Unit, high.Level, $"{Plain(per100Grams * portion / 100)} {each.Unit} in a portion of {Plain(portion)} g is above {Plain((double)high.Range.From)}, whatever 100 g hold", high.Origin);
            return new(each.Word, amount, each.Unit, band.Level, InWords(band.Range, each.Unit), band.Origin);
        })];
        return new("Colours for the front of a pack", true, figures, "Energy is never coloured and stands in kilojoules and kilocalories. The scheme is voluntary.", figures.All(figure => figure.Origin is not null));
    }

    private static FrontOfPackScheme Profile(ClaimedFood food, FrontOfPackRules rules, double? fruitPercent)
    {
        List<FrontOfPackFigure> figures = [];
        List<int?> bad = [];
        int? fruit = null, fibre = null, protein = null;
        foreach (var (part, word, figure, unit) in rules.Scored)
        {
            // Fibre has two scales, one a method; the tables of foods state the one that the declaration uses.
            if (figure.Length == 0 && unit != "%") continue;
            var amount = figure.Length == 0 ? fruitPercent : AmountOf(food, figure, unit);
            var band = amount is { } known ? rules.PointsBandOf(word, RoundingTable.ToDecimal(known)) : null;
            figures.Add(new(word, amount, unit, band is null ? NotKnown : $"{band.Points} {(part == "A" ? "against" : "for")} it",
                band is null ? figure.Length == 0 ? "give fruit_percent in dessert.csv, 0 where there is none" : "the figure is not known for all of the mass" : InWords(band.Range, unit), band?.Origin));
            if (part == "A") bad.Add(band?.Points);
            else if (figure.Length == 0) fruit = band?.Points;
            else if (Names.Same(word, "protein")) protein = band?.Points;
            else fibre = band?.Points;
        }
        if (bad.Contains(null) || fruit is not { } fruits || fibre is not { } fibres || protein is not { } proteins)
            return new("Nutrient profile", false, figures, "No score: a figure is not known.", false);
        var against = bad.Sum(points => points!.Value);
        var score = rules.Score(against, fruits, fibres, proteins);
        var counted = rules.ProteinCounts(against, fruits) ? "" : $"; the {proteins} of protein do not count at {against} points against";
        return new("Nutrient profile", false, figures, $"Score {score}: {against} against, {fruits} for fruit, {fibres} for fibre, {proteins} for protein{counted}. {(score >= rules.LessHealthyFrom(food.IsLiquid) ? "Counts as less healthy" : "Does not count as less healthy")} ({rules.LessHealthyFrom(food.IsLiquid).ToString(CultureInfo.InvariantCulture)} points or more).", true);
    }

    private static FrontOfPackScheme Symbol(ClaimedFood food, FrontOfPackRules rules)
    {
        List<FrontOfPackFigure> figures = [];
        var grams = new[] { food.ReferenceAmountGrams, food.ServingGrams }.Max();
        foreach (var (word, figure) in rules.Symbols)
        {
            var line = food.Rules.Declaration.First(each => Names.Same(each.Key, figure));
            if (grams is not { } basis || food.ReferenceAmountGrams is not { } reference || AmountOf(food, figure, line.Unit) is not { } per100Grams || food.Rules.Reference(figure, line.Unit) is not { } daily || rules.SymbolThreshold(word, reference) is not { } threshold)
            {
                figures.Add(new(word, null, "%", NotKnown, food.ReferenceAmountGrams is null ? "the law’s reference amount is not known: give reference_amount_g in dessert.csv" : "the figure is not known for all of the mass", null));
                continue;
            }
            var percent = per100Grams * basis / 100 / daily.Value * 100;
            figures.Add(new(word, percent, "%", percent >= threshold.Percent ? "named in the symbol" : "not named", $"{Plain(per100Grams * basis / 100)} {line.Unit} in {Plain(basis)} g are {Plain(percent)} % of the daily value; named from {Plain(threshold.Percent)} %", threshold.Origin) { IsNamed = percent >= threshold.Percent });
        }
        string[] named = [.. figures.Where(figure => figure.IsNamed).Select(figure => figure.Word)];
        var isWhole = figures.All(figure => figure.Origin is not null);
        return new("Nutrition symbol", true, figures, !isWhole ? "Whether the symbol must stand cannot be said." : named.Length == 0 ? "No symbol is needed." : $"The symbol must stand on the front and name {PanelWords.List(named)}, in both languages.", isWhole) { HasSymbol = true };
    }

    // In 100 g; null where it is known for too little of the mass.
    private static double? AmountOf(ClaimedFood food, string figure, string unit)
    {
        var (amount, _) = ClaimCheck.FigureOf(food, food.Mixture, figure, unit, new("front-of-pack.csv", "", RuleStrength.Guidance, false));
        return ClaimCheck.IsKnown(food, amount) ? amount.Known : null;
    }

    private static string InWords(FigureBand range, string unit) => (range.From, range.To) switch
    {
        (0, { } to) => $"{(range.IncludesTo ? "up to" : "below")} {Plain((double)to)} {unit}",
        (var from, { } to) => $"above {Plain((double)from)} {(range.IncludesTo ? "up to" : "to below")} {Plain((double)to)} {unit}",
        (var from, null) => $"above {Plain((double)from)} {unit}",
    };

    private static string Plain(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);
}
