namespace Tamis.Labels;

/// <summary>One thing that a food must meet to bear a reserved name.</summary>
public sealed record NameCondition
{
    /// <summary>The figure, by its key in <c>name-figures.csv</c>; null where the food's own list is looked at.</summary>
    public required NameFigure? Figure { get; init; }

    /// <summary>How it is held against the limit.</summary>
    public required LimitTest Test { get; init; }

    /// <summary>The limit, in <see cref="Unit"/>; 0 where the test has none.</summary>
    public required decimal Limit { get; init; }

    /// <summary>The unit of the limit.</summary>
    public required string Unit { get; init; }

    /// <summary>What the figure is a part of, where it is not the whole food: <c>of its dry matter</c>.</summary>
    public required string Basis { get; init; }

    /// <summary>Words that may not stand in the food's own list.</summary>
    public required IReadOnlyList<string> NotListed { get; init; }

    /// <summary>Categories of food in which the condition does not bind a food that is used as an ingredient.</summary>
    public required IReadOnlyList<string> NotFor { get; init; }

    /// <summary>Where the row came from.</summary>
    public required RuleOrigin Origin { get; init; }

    /// <summary>When it is in force.</summary>
    public required InForce InForce { get; init; }
}

/// <summary>A name that the law keeps for foods of a composition.</summary>
/// <param name="Name">The name: <c>milk chocolate</c>.</param>
/// <param name="Words">The words by which it is met in a text, the name itself first.</param>
/// <param name="NotIn">Longer words in which it means something else: <c>butter</c> in <c>peanut butter</c>.</param>
/// <param name="Conditions">All that a food must meet.</param>
public sealed record ReservedName(string Name, IReadOnlyList<string> Words, IReadOnlyList<string> NotIn, IReadOnlyList<NameCondition> Conditions)
{
    /// <summary>Holds a food against the name.</summary>
    /// <param name="food">What is stated of the food.</param>
    public NameCheck Check(NamedFood food) => new(this, food.Called, [.. Conditions.Select(condition => ConditionCheckOf(condition, food))]);

    private static NameConditionCheck ConditionCheckOf(NameCondition condition, NamedFood food)
    {
        var binds = food.UsedIn is not { } category || !condition.NotFor.Contains(category, Names.Comparer);
        if (condition.Figure is { } figure)
        {
            return figure.Of(food.Stated) is { } found
                ? new(condition, found.Value, condition.Test.Passes(found.Value, condition.Limit), found.From, [], binds)
                : new(condition, null, null, [], [], binds);
        }
        if (food.OwnList is not { } list) return new(condition, null, null, [], [], binds);
        string[] met = [.. condition.NotListed.Where(word => Names.HoldsBeginning(list, word))];
        return new(condition, null, met.Length == 0, [], met, binds);
    }
}

/// <summary>A food that bears a name, with what is stated of it.</summary>
/// <param name="Called">The food in the kitchen's words.</param>
/// <param name="Stated">What is stated, by the name of a column or a tag; null where nobody states it.</param>
/// <param name="OwnList">The list of ingredients on its own document or pack; null where there is none.</param>
/// <param name="UsedIn">The category of the food that it is an ingredient of; null where it is sold as such.</param>
public sealed record NamedFood(string Called, Func<string, StatedFigure?> Stated, string? OwnList = null, string? UsedIn = null);
