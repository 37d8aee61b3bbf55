using System.Globalization;
using Tamis.Losses;

namespace Tamis.Labels;

/// <summary>Holds the claims of a rule set against a food. Figures are those of the made formula before rounding.</summary>
public static class ClaimCheck
{
    /// <summary>The reference amount, in grams, up to which it counts as small: 21 CFR 101.60 to 101.62.</summary>
    private const double SmallReferenceGrams = 30;

    /// <summary>Holds one claim against a food.</summary>
    /// <param name="food">The food.</param>
    /// <param name="asked">The words of the claim.</param>
    public static ClaimVerdict Of(ClaimedFood food, string asked)
    {
        var rules = ClaimRules.Of(food.Rules);
        return rules.Find(asked) is { } claim ? Of(food, claim, asked, rules) : new(asked, null, ClaimState.NotAClaim, [], rules.Nearest(asked));
    }

    /// <summary>Every claim of the rule set that may be made of a food and needs no other to compare with.</summary>
    public static IReadOnlyList<ClaimVerdict> Available(ClaimedFood food)
    {
        var rules = ClaimRules.Of(food.Rules);
        return [.. rules.All.Where(claim => !claim.IsComparative).Select(claim => Of(food, claim, claim.Name, rules)).Where(verdict => verdict.State is ClaimState.Holds or ClaimState.HoldsWithinItsRange)];
    }

    /// <summary>The figure of a condition in 100 g of a mixture, with its coverage and its range.</summary>
    internal static (Amount Amount, Interval? Range) FigureOf(ClaimedFood food, Mixture mixture, string figure, string unit, RuleOrigin origin)
    {
        var declared = Declared(food.Rules, figure, unit, origin);
        var amount = FigureSum.Of(mixture, declared, food.Rules.ProteinFactor) * (100 / mixture.FinishedGrams);
        var spread = IsKnown(food, amount) ? FigureRange.Of(mixture, declared, food.Rules.ProteinFactor, amount.Known / 100 * mixture.FinishedGrams, 100) : null;
        return (amount, spread is { } found && found.KnownSpreadShare * 100 >= food.Rules.KnownSpreadPercent ? found.Range : null);
    }

    private static DeclaredFigure Declared(RuleSet rules, string figure, string unit, RuleOrigin origin) =>
        rules.Declaration.FirstOrDefault(line => Names.Same(line.Key, figure) && line.Unit == unit) ?? rules.Declaration.FirstOrDefault(line => Names.Same(line.Key, figure))
        ?? new DeclaredFigure { Key = figure, Term = figure, Indent = 0, Unit = unit, Summands = [new(figure, ContentFormula.Parse(figure)!, 1, origin)], IsEnergy = false, IsMandatory = false, Shown = LineShown.IfAsked, Origin = origin };

    private static ClaimVerdict Of(ClaimedFood food, ClaimRule claim, string asked, ClaimRules rules)
    {
        var ways = claim.Conditions.Where(condition => condition.IsForLiquids is null || condition.IsForLiquids == food.IsLiquid)
            .GroupBy(condition => condition.Way).Select(way => way.Select(condition => Result(food, condition, rules)).OfType<ConditionResult>().ToArray()).Where(way => way.Length > 0).ToArray();
        if (ways.Length == 0) return new(asked, claim, ClaimState.CannotBeSaid, [], []);
        var best = ways.OrderBy(way => StateOf(way)).First();
        return new(asked, claim, StateOf(best), best, []);
    }

    private static ClaimState StateOf(IReadOnlyList<ConditionResult> conditions) =>
        conditions.Any(condition => condition.Holds == false) ? ClaimState.Fails
        : conditions.Any(condition => condition.Holds is null) ? ClaimState.CannotBeSaid
        : conditions.Any(condition => condition.HoldsOverRange == false) ? ClaimState.HoldsWithinItsRange : ClaimState.Holds;

    // Null where the condition does not apply.
    private static ConditionResult? Result(ClaimedFood food, ClaimCondition condition, ClaimRules rules)
    {
        if (condition.Comparison == ClaimComparison.NoneAdded) return NoneAdded(food, condition, rules);
        if (condition.Basis == ClaimBasis.FiftyGramsIfSmall && food.ReferenceAmountGrams is > SmallReferenceGrams) return null;
        if (condition.Basis == ClaimBasis.OtherFood) return Compared(food, condition);
        var (amount, range) = FigureOf(food, food.Mixture, condition.Figure, condition.Unit, condition.Origin);
        if (!IsKnown(food, amount)) return new(condition, null, null, null, $"{condition.Word} is {PanelWords.Coverage(amount)}");
        if (FactorOf(food, condition) is not (var factor, var lacks)) return null;
        if (factor is not { } times) return new(condition, null, null, null, lacks);
        var value = amount.Known * times;
        // What is summed in binary fractions is compared at the figures that it holds.
        return new(condition, value, range is { } found ? Interval.Between(found.Low * times, found.High * times) : null, Meets(RoundingTable.ToDecimal(value), condition), $"{condition.Word} {Plain(value)} {UnitOf(condition)} {InWords(condition)}");
    }

    // What the figure in 100 g is multiplied by to stand on the basis of the condition; null with what is lacking.
    private static (double? Factor, string Lacks)? FactorOf(ClaimedFood food, ClaimCondition condition)
    {
        switch (condition.Basis)
        {
            case ClaimBasis.Per100Millilitres: return food.DensityGramsPerMillilitre is { } density ? (density, "") : (null, "the density of the food is not known: give density_g_ml");
            case ClaimBasis.ReferenceAmount: return Of(food.ReferenceAmountGrams, 1, "the law’s reference amount is not known: give serving_category in dessert.csv");
            case ClaimBasis.Serving: return Of(food.ServingGrams, 1, "the serving is not known: give portion_g in dessert.csv");
            case ClaimBasis.FiftyGramsIfSmall: return food.ReferenceAmountGrams is null ? (null, "the law’s reference amount is not known: give serving_category in dessert.csv") : (0.5, "");
            case ClaimBasis.Per100Kilocalories: return Energy(food) is { } energy and > 0 ? (100 / energy, "") : (null, "the energy is not known");
            case ClaimBasis.EnergyShare: return Energy(food) is { } kilocalories and > 0 ? (condition.KilocaloriesPerGram * 100 / kilocalories, "") : (null, "the energy is not known");
            case ClaimBasis.FattyAcidShare:
                var fat = FigureOf(food, food.Mixture, "FASAT + FAMS + FAPU", "g", condition.Origin).Amount;
                return IsKnown(food, fat) && fat.Known > 0 ? (100 / fat.Known, "") : (null, "the fatty acids are not all known");
            case ClaimBasis.ReferenceValuePer100Grams: return Reference(food, condition) is { } value ? (100 / value, "") : (null, $"the rule set has no reference value of {condition.Word} in {condition.Unit}");
            case ClaimBasis.ReferenceValuePerReferenceAmount:
                return Reference(food, condition) is not { } daily ? (null, $"the rule set has no reference value of {condition.Word} in {condition.Unit}")
                    : Of(food.ReferenceAmountGrams, 100 / daily, "the law’s reference amount is not known: give serving_category in dessert.csv");
            default: return (1, "");
        }

        static (double?, string) Of(double? grams, double times, string lacks) => grams is { } found ? (found / 100 * times, "") : (null, lacks);
    }

    private static double? Reference(ClaimedFood food, ClaimCondition condition) =>
        (food.Rules.Reference(condition.Figure, condition.Unit) ?? food.Rules.ReferenceValues.FirstOrDefault(value => Names.Same(value.Key, condition.Figure)))?.Value;

    private static double? Energy(ClaimedFood food)
    {
        if (food.Rules.Declaration.FirstOrDefault(line => line.IsEnergy && !line.Unit.StartsWith("kJ", StringComparison.Ordinal)) is not { } line) return null;
        var amount = FigureSum.Of(food.Mixture, line, food.Rules.ProteinFactor) * (100 / food.Mixture.FinishedGrams);
        return IsKnown(food, amount) ? amount.Known : null;
    }

    private static ConditionResult Compared(ClaimedFood food, ClaimCondition condition)
    {
        if (food.Other is not { } other) return new(condition, null, null, null, "there is no other food to compare with: the trial stands behind the claim, as in reduced fat; T1");
        var (mine, theirs) = (FigureOf(food, food.Mixture, condition.Figure, condition.Unit, condition.Origin).Amount, FigureOf(food, other, condition.Figure, condition.Unit, condition.Origin).Amount);
        if (!IsKnown(food, mine) || !IsKnown(food, theirs)) return new(condition, null, null, null, $"{condition.Word} is not known of both foods");
        if (theirs.Known <= 0) return new(condition, null, null, null, $"the other food has no {condition.Word}");
        var change = (theirs.Known - mine.Known) / theirs.Known * 100 * (condition.Comparison == ClaimComparison.LessBy ? 1 : -1);
        return new(condition, change, null, Meets(RoundingTable.ToDecimal(change), condition), $"{condition.Word} {Plain(mine.Known)} against {Plain(theirs.Known)} {condition.Unit} in 100 g: {Plain(Math.Abs(change))} % {(change >= 0 == (condition.Comparison == ClaimComparison.LessBy) ? "less" : "more")}");
    }

    private static ConditionResult NoneAdded(ClaimedFood food, ClaimCondition condition, ClaimRules rules)
    {
        string[] words = [.. rules.Added[condition.Word]];
        string[] adding = [.. food.Mixture.Parts.Where(part => part.MassGrams > 0).Select(part => part.Ingredient).DistinctBy(each => each.Name, Names.Comparer)
            .Where(each => words.Any(word => Names.Holds(each.LabelName ?? each.Name, word) || Names.Holds(each.Name, word) || each.NamedWithin is { } list && Names.Holds(list, word))).Select(each => each.LabelName ?? each.Name).Distinct(Names.Comparer)];
        return new(condition, null, null, adding.Length == 0, adding.Length == 0 ? $"no ingredient adds {condition.Word}" : $"{PanelWords.List(adding)} add{(adding.Length == 1 ? "s" : "")} {condition.Word}");
    }

    private static bool Meets(decimal amount, ClaimCondition condition) => condition.Test.Passes(amount, RoundingTable.ToDecimal(condition.Limit));

    /// <summary>Whether an amount is known for as much of the mass as the rule set asks.</summary>
    internal static bool IsKnown(ClaimedFood food, Amount amount) => amount.IsWhole || amount.CoveredShare * 100 >= food.Rules.KnownSharePercent;

    private static string UnitOf(ClaimCondition condition) => condition.Basis is ClaimBasis.EnergyShare or ClaimBasis.FattyAcidShare or ClaimBasis.ReferenceValuePer100Grams or ClaimBasis.ReferenceValuePerReferenceAmount or ClaimBasis.OtherFood ? "%" : condition.Unit;

    /// <summary>The limit of a condition in words: <c>at least 3 g in 100 g</c>.</summary>
    public static string LimitInWords(ClaimCondition condition) => condition.Comparison switch
    {
        ClaimComparison.NoneAdded => $"no {condition.Word} added",
        ClaimComparison.LessBy => $"at least {Plain(condition.Limit)} % less than the other food",
        ClaimComparison.MoreBy => $"at least {Plain(condition.Limit)} % more than the other food",
        _ => $"{condition.Test.InWords} {Plain(condition.Limit)} {UnitOf(condition)} {InWords(condition)}",
    };

    private static string InWords(ClaimCondition condition) => condition.Basis switch
    {
        ClaimBasis.Per100Grams => "in 100 g",
        ClaimBasis.Per100Millilitres => "in 100 ml",
        ClaimBasis.Per100Kilocalories => "in 100 kcal",
        ClaimBasis.EnergyShare => "of the energy",
        ClaimBasis.FattyAcidShare => "of the fatty acids",
        ClaimBasis.ReferenceAmount => "in the reference amount",
        ClaimBasis.Serving => "in a serving",
        ClaimBasis.FiftyGramsIfSmall => "in 50 g",
        ClaimBasis.ReferenceValuePer100Grams => "of the reference value, in 100 g",
        ClaimBasis.ReferenceValuePerReferenceAmount => "of the reference value, in the reference amount",
        _ => "",
    };

    /// <summary>A number as the sentences on claims say it: two decimals at most below 10, one above.</summary>
    public static string Plain(double number) => number.ToString(Math.Abs(number) < 10 ? "0.##" : "0.#", CultureInfo.InvariantCulture);
}
