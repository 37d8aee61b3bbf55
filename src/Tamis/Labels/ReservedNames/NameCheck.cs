namespace Tamis.Labels;

/// <summary>What can be said of a food that bears a reserved name.</summary>
public enum NameVerdict
{
    /// <summary>It meets every condition.</summary>
    Allowed,
    /// <summary>The law does not bind it here.</summary>
    DoesNotBind,
    /// <summary>A figure is missing, or the only one that there is belongs to another sample of the food.</summary>
    CannotBeSaid,
    /// <summary>It fails a condition.</summary>
    Refused,
}

/// <summary>A condition of a reserved name held against a food.</summary>
/// <param name="Condition">The condition.</param>
/// <param name="Value">The figure of the food; null where it is not known or the condition has none.</param>
/// <param name="Holds">Whether it holds; null where nobody can say.</param>
/// <param name="From">What the figure was worked out from.</param>
/// <param name="Listed">Words in the food's own list that may not stand there.</param>
/// <param name="Binds">Whether the law binds the food here.</param>
public sealed record NameConditionCheck(NameCondition Condition, decimal? Value, bool? Holds, IReadOnlyList<(string Term, StatedFigure Figure)> From, IReadOnlyList<string> Listed, bool Binds)
{
    /// <summary>By how much it holds, in the unit of the limit; negative where it fails; null where there is no figure.</summary>
    public decimal? Margin => Value is { } value ? Condition.Test.Margin(value, Condition.Limit) : null;

    /// <summary>Whether the figure is that of a composition table, so that it says nothing sure of what was bought.</summary>
    public bool IsOfRecord => From.Any(each => each.Figure.IsOfRecord);

    /// <summary>What to supply; null where nothing is missing.</summary>
    public string? Supply => Condition.Figure is not { } figure ? Holds is null ? "the list of ingredients of its document (ingredient_list in specifications.csv)" : null
        : Holds is null || Holds == false && IsOfRecord ? figure.Supply : null;
}

/// <summary>A food held against a reserved name.</summary>
/// <param name="Name">The name.</param>
/// <param name="Food">The food in the kitchen's words.</param>
/// <param name="Conditions">Every condition.</param>
public sealed record NameCheck(ReservedName Name, string Food, IReadOnlyList<NameConditionCheck> Conditions)
{
    /// <summary>What can be said. A figure of a composition table lets a name pass and never refuses it: the record is of another sample.</summary>
    public NameVerdict Verdict =>
        Conditions.All(each => !each.Binds) ? NameVerdict.DoesNotBind
        : Binding.Any(each => each.Holds == false && !each.IsOfRecord) ? NameVerdict.Refused
        : Binding.Any(each => each.Holds != true) ? NameVerdict.CannotBeSaid
        : NameVerdict.Allowed;

    /// <summary>What to supply so that it can be said; empty where nothing is missing.</summary>
    public IReadOnlyList<string> Supply => [.. Binding.Select(each => each.Supply).OfType<string>().Distinct()];

    private IEnumerable<NameConditionCheck> Binding => Conditions.Where(each => each.Binds);
}
