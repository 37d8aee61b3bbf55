namespace Tamis.Labels;

/// <summary>What can be said of a claim.</summary>
public enum ClaimState
{
    /// <summary>Every figure meets its limit, with all of its range.</summary>
    Holds,
    /// <summary>The figures meet their limits, but a range reaches over one.</summary>
    HoldsWithinItsRange,
    /// <summary>A figure does not meet its limit.</summary>
    Fails,
    /// <summary>A figure is not known.</summary>
    CannotBeSaid,
    /// <summary>It is no claim of this rule set.</summary>
    NotAClaim,
}

/// <summary>A condition held against a food.</summary>
/// <param name="Condition">The condition.</param>
/// <param name="Amount">The figure on the condition's basis, not rounded; null where it is not known or there is none.</param>
/// <param name="Range">How far it may lie from there; null where the data give no range.</param>
/// <param name="Holds">Whether it is met; null where that cannot be said.</param>
/// <param name="Words">The finding in words.</param>
public sealed record ConditionResult(ClaimCondition Condition, double? Amount, Interval? Range, bool? Holds, string Words)
{
    /// <summary>How far the figure is on the right side of its limit, in the unit of the limit; below 0 where it is on the wrong one.</summary>
    public double? Margin => Amount is not { } amount ? null : (double)Condition.Test.Margin(RoundingTable.ToDecimal(amount), RoundingTable.ToDecimal(Condition.Limit));

    /// <summary>Whether the whole range meets the limit; null where there is no range.</summary>
    public bool? HoldsOverRange => Range is not { } range ? null
        : Condition.Test.Passes(RoundingTable.ToDecimal(Condition.Test.IsUpper ? range.High : range.Low), RoundingTable.ToDecimal(Condition.Limit));
}

/// <summary>A claim held against a food.</summary>
/// <param name="Asked">The words that were asked for.</param>
/// <param name="Rule">The claim; null where the rule set has none of these words.</param>
/// <param name="State">What can be said.</param>
/// <param name="Conditions">Its conditions, those of the best way.</param>
/// <param name="Nearest">Where it is no claim, the nearest ones.</param>
public sealed record ClaimVerdict(string Asked, ClaimRule? Rule, ClaimState State, IReadOnlyList<ConditionResult> Conditions, IReadOnlyList<string> Nearest)
{
    /// <summary>Whether the claim may not be made as things stand.</summary>
    public bool IsRefused => State is ClaimState.Fails or ClaimState.CannotBeSaid;
}

/// <summary>A food that claims are held against.</summary>
/// <param name="Mixture">What it is made of.</param>
/// <param name="Rules">The rule set, on its day.</param>
public sealed record ClaimedFood(Losses.Mixture Mixture, RuleSet Rules)
{
    /// <summary>Whether it is a liquid.</summary>
    public bool IsLiquid { get; init; }

    /// <summary>Its density in grams a millilitre; null where nobody stated it.</summary>
    public double? DensityGramsPerMillilitre { get; init; }

    /// <summary>The serving on the label, in grams; null where there is none.</summary>
    public double? ServingGrams { get; init; }

    /// <summary>The law's reference amount, in grams; null where it is not known.</summary>
    public double? ReferenceAmountGrams { get; init; }

    /// <summary>The food that a comparative claim compares with; null where there is none.</summary>
    public Losses.Mixture? Other { get; init; }
}
